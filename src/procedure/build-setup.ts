/** How the vehicle and the leads stand for a step: state, what is unplugged, what is clipped where, which instrument looks. */

import { inspectable } from '../circuit/instruments/eyes.ts';
import { INSTRUMENTS, PROBE_KINDS } from '../circuit/instruments.ts';
import type { Bridge, Probe, Setup, VehicleState } from '../circuit/test.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Path } from '../source/yaml-source.ts';
import type { Measure } from './generated/procedure.mjs';
import type { StepDraftReader } from './step-draft-reader.ts';

const MOVING_PROBES: readonly string[] = PROBE_KINDS.filter(
  (kind) => INSTRUMENTS[kind].needsMotion,
);

/** The setup of a step; `measure` is what it measures, null when nothing is. */
export function setupOf(at: StepDraftReader, measure: Measure | null): Setup {
  const { draft } = at;
  const state = draft.state ?? 'key-off';
  const kind = measure ? (Object.keys(measure)[0] ?? '') : '';
  tellState(at, kind);
  const turning = state === 'cranking' || state === 'running';
  const unplugged = (draft.unplug ?? []).map((part, index) => unpluggable(at, part, index));
  return {
    state,
    unplugged: [...new Set(unplugged)].sort(),
    bridges: bridges(at),
    sensor: draft.spare ? 'spare' : 'fitted',
    target: turning || draft.moving || MOVING_PROBES.includes(kind) ? 'moving' : 'still',
  };
}

/** Tests that are done with the key off unless the step says otherwise; the others need a state. */
const STATELESS: readonly string[] = [
  ...['', 'reading'],
  ...PROBE_KINDS.filter((kind) => INSTRUMENTS[kind].isForDeadCircuit),
];
/** Words in which a person is told to bring the vehicle into a state, and the states in which they are right. */
const STATE_WORDS: readonly { readonly words: RegExp; readonly states: readonly VehicleState[] }[] =
  [
    { words: /\bcrank(?:ing|s)?\b/i, states: ['cranking'] },
    {
      words: /\b(?:start|run) the engine\b|\bengine (?:runs|running)\b/i,
      states: ['running', 'driving'],
    },
    { words: /\bkey on\b|\bignition on\b/i, states: ['key-on', 'cranking', 'running', 'driving'] },
    {
      words: /(?:^|[.;:] )(?:(?:turn|switch) )?(?:the )?(?:key|ignition) off\b/i,
      states: ['key-off'],
    },
    { words: /\bdrive (?:slowly|the vehicle|it|off)\b|\broad test\b/i, states: ['driving'] },
  ];

/** The cautions hang on the state, so one that is left out, or is not that of the words, is told. */
function tellState(at: StepDraftReader, kind: string): void {
  const { state, say = '' } = at.draft;
  if (state === undefined && !STATELESS.includes(kind)) {
    at.add(
      'missing-state',
      ['measure'],
      'this step does not give the vehicle state, and its cautions depend on that',
      'add the key "state": key-off, key-on, cranking or running',
      'key',
    );
    return;
  }
  if (state === 'driving' && kind !== '' && kind !== 'reading')
    at.add(
      'road-test-read',
      ['measure'],
      'nobody reads an instrument while driving',
      'ask with "outcomes" what the second person or the recording shows, or read a number from the recording',
      'key',
    );
  const found = STATE_WORDS.map(({ words, states }) => ({ said: words.exec(say)?.[0], states }));
  const other = found.find(
    ({ said, states }) => said !== undefined && !states.includes(state ?? 'key-off'),
  );
  const fits = found.some(
    ({ said, states }) => said !== undefined && states.includes(state ?? 'key-off'),
  );
  if (!other || fits) return;
  const needed = other.states[0]!;
  // Nobody is warned of an engine that stands and of circuits that are dead.
  const missing = needed === 'key-off' ? '' : `: the cautions for ${needed} are missing`;
  at.warn(
    'state-in-words',
    ['say'],
    `the text says "${other.said!.replace(/^[.;:] /, '')}", but the state is ${state ?? 'key-off, since none is given'}${missing}`,
    `write "state: ${other.states[0]}", or reword it`,
  );
}

/** A part that can be unplugged; one that cannot is told where its name was written, and read as the one meant. */
function unpluggable(at: StepDraftReader, value: string, index: number): string {
  const name = at.fill(value, ['unplug', index]);
  const { circuit } = at.linker;
  if (!circuit || at.lacks(value)) return name;
  const known = circuit.connectors.filter(({ unplugs }) => unplugs).map(({ part }) => part);
  return known.includes(name)
    ? name
    : at.unknown('unknown-part', name, at.writtenAt(value, ['unplug', index]), {
        words: `"${name}" is not a part that can be unplugged`,
        known,
      });
}

function bridges(at: StepDraftReader): Bridge[] {
  const { bridge } = at.draft;
  if (bridge === undefined) return [];
  const single = !Array.isArray(bridge);
  return (single ? [bridge] : bridge).map((one, index) => {
    const path = single ? ['bridge'] : ['bridge', index];
    return {
      from: at.terminal(one.from, [...path, 'from']),
      to: at.terminal(one.to, [...path, 'to']),
      through: through(at, one.through ?? 'lead', [...path, 'through']),
    };
  });
}

function through(at: StepDraftReader, value: string, path: Path): Bridge['through'] {
  if (value === 'lead' || value === 'test-light' || value === 'lamp') return value;
  const ohms = parseQuantity(value);
  if (ohms?.unit === 'ohm' && ohms.value > 0) return { ohms: ohms.value };
  at.add(
    'bad-value',
    path,
    `"${value}" is not something to clip between two terminals`,
    'one of: lead, test-light, lamp, or a resistance such as 1 kohm',
  );
  return 'lead';
}

/** What eyes and fingers look at; what is not there is told where its name was written. */
function inspected(at: StepDraftReader, value: string, path: Path): string {
  const name = at.fill(value, path);
  const { circuit } = at.linker;
  if (!circuit || at.lacks(value)) return name;
  const known = inspectable(circuit);
  return known.includes(name)
    ? name
    : at.unknown('unknown-sight', name, at.writtenAt(value, path), {
        words: `there is no "${name}" to look at`,
        known,
      });
}

/** Where the instrument looks; null for a number that the circuit knows nothing of. `path` is that of `measure` in its step. */
export function probeOf(
  at: StepDraftReader,
  measure: Measure,
  path: Path = ['measure'],
): Probe | null {
  const kind = Object.keys(measure)[0] as keyof Measure;
  if (kind === 'counts') return { kind, input: at.terminal(measure.counts!, [...path, kind]) };
  if (kind === 'inspect') return { kind, of: inspected(at, measure.inspect!, [...path, kind]) };
  if (kind === 'reading') return null;
  const [plus, minus] = measure[kind] as readonly string[];
  return {
    kind,
    plus: at.terminal(plus!, [...path, kind, 0]),
    minus: at.terminal(minus!, [...path, kind, 1]),
  };
}
