/** A procedure without a tree: only a circuit and a start. The program proposes each test, the person concludes. */
import { parseYaml } from '../source/parse-yaml.ts';
import type { ProcedureDraft } from './generated/procedure.mjs';
import type { ParsedProcedure } from './parse-procedure.ts';

/** Names of such procedures: this and the circuit's name. */
const GUIDED_PREFIX = 'guided-';

/** What tells it from the procedures with a fixed order. */
const TITLE_BEGINS = 'Free order of tests: ';
/** As for a title that an author writes. */
const TITLE_SIGNS_MAX = 120;

/**
 * The guided procedure of a circuit, made as if an author had written it. The circuit may still turn out to be of no
 * use, which linking tells.
 */
export function guidedProcedure(circuit: {
  readonly name: string;
  readonly title: string;
}): ParsedProcedure {
  const name = `${GUIDED_PREFIX}${circuit.name}`;
  const draft: ProcedureDraft = {
    procedure: name,
    title: [...`${TITLE_BEGINS}${circuit.title}`].slice(0, TITLE_SIGNS_MAX).join(''),
    about:
      'No fixed order: the program proposes the tests that tell most now, with what you have at hand, and you choose.',
    circuit: circuit.name,
    start: 'guided',
    steps: {
      guided: {
        title: 'Do the test that tells most',
        test: 'interview',
        say: 'Ask for the best tests (F6, or the word "next"), do one of them, enter what it shows, and come back here. Look at the suspects (F5, or "suspects") in between.',
        why: 'Each test is chosen for what it tells in its minutes, after all that was read so far.',
        minutes: 1,
        outcomes: {
          enough: { words: 'one suspect stands out, or no test would tell more', go: 'conclude' },
        },
      },
      conclude: {
        title: 'No fault found now',
        conclude: [],
        say: 'Accept this only if everything was right. Else name your own conclusion from the suspects.',
        repair: 'Nothing to repair yet. Do not replace parts on this result.',
        customer: 'The fault does not show at the moment.',
      },
    },
  };
  const { value: source } = parseYaml(JSON.stringify(draft), name);
  if (!source) throw new Error('guidedProcedure: JSON is YAML');
  return { draft, source };
}
