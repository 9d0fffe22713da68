/** A test as a person arranges it by words: state, connectors, clips, spare sensor, target, moving the harness, then the reading. */
import { nearestName } from '../source/nearest-name.ts';
import type { Circuit } from './circuit.ts';
import { parseBridge, parseMeasure } from './parse-measure.ts';
import { type Setup, TEST_STATES, type Test, type VehicleState } from './test.ts';

/** Everything but the reading. */
export interface Arrangement {
  readonly setup: Setup;
  /** Harness and connectors are moved while the instrument is watched. */
  readonly wiggle: boolean;
}

/** Key off, everything plugged in, nothing clipped in. */
export const ARRANGEMENT: Arrangement = {
  setup: { state: 'key-off', unplugged: [], bridges: [], sensor: 'fitted', target: 'still' },
  wiggle: false,
};

/** The arrangement that the words make, or why they make none. */
export type Arranged = { readonly arrangement: Arrangement } | { readonly words: string };

/** What the words for arranging are, for help. */
export const ARRANGING_WORDS: readonly string[] = [
  'state STATE            key-off, key-on, cranking or running',
  'unplug PART            unplug a connector: sensor, module or a neighbour',
  'plug PART              plug it back in; without PART, everything',
  'clip FROM TO WHAT      clip in a lead, test-light, lamp or ohms such as 470 ohm',
  'unclip                 remove everything clipped in',
  "spare, fitted          plug in a good spare sensor, or the vehicle's own",
  'moving, still          the target passes the sensor, or stands still',
  'wiggle, quiet          wiggle harness and connectors while reading, or not',
];

/** One word with what stands behind it. */
type Arrange = (before: Arrangement, rest: readonly string[], circuit: Circuit) => Arranged;

/** A map, since any word may be typed, `constructor` too. */
const ARRANGING = new Map<string, Arrange>([
  ['state', inState],
  ['unplug', unplugged],
  ['plug', plugged],
  ['clip', clipped],
  ['unclip', (before) => changed(before, { bridges: [] })],
  ['spare', (before) => changed(before, { sensor: 'spare' })],
  ['fitted', (before) => changed(before, { sensor: 'fitted' })],
  ['moving', (before) => changed(before, { target: 'moving' })],
  ['still', (before) => changed(before, { target: 'still' })],
  ['wiggle', (before) => ({ arrangement: { ...before, wiggle: true } })],
  ['quiet', (before) => ({ arrangement: { ...before, wiggle: false } })],
]);

/** The arrangement after a line; null when the line arranges nothing. */
export function arrangedBy(before: Arrangement, line: string, circuit: Circuit): Arranged | null {
  const [word = '', ...rest] = line.trim().split(/\s+/);
  return ARRANGING.get(word)?.(before, rest, circuit) ?? null;
}

function changed(before: Arrangement, change: Partial<Setup>): Arranged {
  return { arrangement: { ...before, setup: { ...before.setup, ...change } } };
}

function inState(before: Arrangement, rest: readonly string[], circuit: Circuit): Arranged {
  const state = TEST_STATES.find((one) => one === rest.join('-'));
  if (!state) return { words: `the states are: ${TEST_STATES.join(', ')}` };
  return changed(before, { state, target: targetIn(circuit, state, before.setup.target) });
}

function unplugged(before: Arrangement, rest: readonly string[], circuit: Circuit): Arranged {
  const known = circuit.connectors.filter(({ unplugs }) => unplugs).map(({ part }) => part);
  const odd = rest.find((part) => !known.includes(part));
  if (odd === undefined && rest.length > 0)
    return changed(before, {
      unplugged: [...new Set([...before.setup.unplugged, ...rest])].sort(),
    });
  const near = odd === undefined ? null : nearestName(odd, known);
  const way = near ? `did you mean "${near}"?` : `these can be unplugged: ${known.join(', ')}`;
  return { words: odd === undefined ? way : `"${odd}" has no connector; ${way}` };
}

function plugged(before: Arrangement, rest: readonly string[]): Arranged {
  const off = before.setup.unplugged;
  const odd = rest.find((part) => !off.includes(part));
  if (odd !== undefined) return { words: `"${odd}" is not unplugged` };
  return changed(before, {
    unplugged: off.filter((part) => rest.length > 0 && !rest.includes(part)),
  });
}

function clipped(before: Arrangement, rest: readonly string[]): Arranged {
  const bridge = parseBridge(rest.join(' '));
  return 'words' in bridge
    ? bridge
    : changed(before, { bridges: [...before.setup.bridges, bridge.value] });
}

/** The engine moves a wheel on it, and stopping it stops the wheel. */
export function targetIn(
  circuit: Circuit,
  state: VehicleState,
  before: Setup['target'],
): Setup['target'] {
  const turns = circuit.target !== null && circuit.target.turns > 0;
  if (!turns) return before;
  return state === 'cranking' || state === 'running' ? 'moving' : 'still';
}

/** A whole test from a line such as `volts sensor.feed battery.negative`. */
export function testFrom(
  arrangement: Arrangement,
  line: string,
): { readonly test: Test } | { readonly words: string } {
  const probe = parseMeasure(line);
  return 'words' in probe ? probe : { test: arrangedTest(arrangement, probe.value) };
}

/** An arrangement with its reading. */
export function arrangedTest({ setup, wiggle }: Arrangement, probe: Test['probe']): Test {
  return { setup, probe, ...(wiggle ? { wiggle: true } : {}) };
}

/** How everything is arranged for a test. */
export function arrangementOf({ setup, wiggle }: Test): Arrangement {
  return { setup, wiggle: wiggle === true };
}

/** Terminals for leads on this circuit: the battery's posts first, then the harness side, then pins behind a connector. */
export function leadPlaces(circuit: Circuit): readonly { id: string; words: string }[] {
  const order = { post: 0, harness: 1, part: 2 } as const;
  return [...circuit.terminals]
    .sort((a, b) => order[a.side] - order[b.side])
    .map(({ id, words }) => ({ id, words }));
}
