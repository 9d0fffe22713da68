/** Trees broken on purpose: the check must notice. */
import { describe, expect, test } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import type { LinkedProcedure } from '../../src/procedure/link-procedure.ts';
import { walkFaults } from '../../src/proof/walk-faults.ts';
import type { Issue } from '../../src/source/issue.ts';
import { checkTree, LIBRARY, modelFor, TREES } from './library.ts';
import { mutants } from './mutate.ts';

const LONG = process.env['OHMWARD_LONG'] === '1';
const MUTANTS = LONG ? 200 : 48;
const SAMPLES = LONG ? 64 : 24;
/** Of the mutants that are not equivalent. */
const NOTICED_SHARE_MIN = 0.95;

const total = { broken: 0, noticed: 0 };

describe.each(TREES)('%s', (name, parsed) => {
  test(`at least ${NOTICED_SHARE_MIN * 100} % of its broken copies are noticed`, () => {
    const circuit = LIBRARY.circuits.get(parsed.draft.circuit ?? '');
    if (!circuit) throw new Error(`${name} has no circuit`);
    const model = modelFor(circuit, SAMPLES);
    const sound = checkTree(parsed, SAMPLES);
    if (!sound.linked) throw new Error(`${name} cannot be linked`);
    const known = new Set(sound.issues.map(printOf));
    const ways = waysOf(sound.linked, model);
    const all = mutants(parsed.draft, circuit, MUTANTS, 20);
    expect(all.length).toBeGreaterThanOrEqual(40);
    const survivors: string[] = [];
    let equivalent = 0;
    for (const { words, draft } of all) {
      const { linked, issues } = checkTree({ draft, source: parsed.source }, SAMPLES);
      const fresh = issues.filter((issue) => !known.has(printOf(issue)));
      if (fresh.length > 0) total.noticed += 1;
      else if (linked && waysOf(linked, model) === ways) {
        equivalent += 1;
        continue;
      } else survivors.push(words);
      total.broken += 1;
    }
    const broken = all.length - equivalent;
    const share = (broken - survivors.length) / broken;
    console.log(`${name}: ${broken} broken, ${survivors.length} not noticed, ${equivalent} equivalent`);
    for (const words of survivors) console.log(`  not noticed: ${words}`);
    expect(broken).toBeGreaterThanOrEqual(30);
    expect(share).toBeGreaterThanOrEqual(NOTICED_SHARE_MIN);
  });
});

/** What a finding is about, without its numbers: a share that moves by some per cent is the same finding. */
function printOf({ code, at, words }: Issue): string {
  return `${code} ${at.file}:${at.line} ${words.replace(/[\d.]+/g, '#')}`;
}

/**
 * The rule for equivalence: in every sample every fault and the healthy circuit leave the same steps by the same
 * outcomes and come to a conclusion with the same repairs and the same retests. Then nothing that a vehicle with this
 * circuit can show makes the two trees differ.
 */
function waysOf({ procedure, circuit }: LinkedProcedure, model: Model): string {
  const repairs = new Map(circuit?.faults.map(({ id, repair }) => [id, repair]));
  return JSON.stringify(
    walkFaults(procedure, model).map(({ fault, samples, visits, end }) => {
      const last = procedure.steps[end.step];
      const concluded =
        last?.kind === 'conclude'
          ? [[...new Set(last.faults.map((id) => repairs.get(id)))].sort(), last.retest]
          : [];
      return [fault, samples, visits, end, concluded];
    }),
  );
}
