/** A test as a file writes it: a measurement in words with what is arranged for it, or the name of a standard test. */
import { nameFix } from '../source/nearest-name.ts';
import { targetIn } from './arrange-test.ts';
import type { Circuit } from './circuit.ts';
import { parseBridge, parseMeasure } from './parse-measure.ts';
import { standardTests } from './standard-tests.ts';
import type { Bridge, Test, VehicleState } from './test.ts';

/** The keys of a test in a file of answers or of actions; all but one of the first three may be missing. */
export interface TestDraft {
  readonly measure?: string;
  readonly capture?: string;
  readonly test?: string;
  readonly state?: VehicleState;
  readonly unplug?: readonly string[];
  readonly bridges?: readonly string[];
  readonly spare?: boolean;
  readonly moving?: boolean;
  readonly wiggle?: boolean;
}

/** Why it is no test, without a full stop. */
export interface NoTest {
  readonly code: 'no-test' | 'unknown-test' | 'bad-test';
  readonly words: string;
  readonly fix: string;
}

/** Whether a draft names a test at all. */
export function isTestDraft(draft: TestDraft): boolean {
  return draft.measure !== undefined || draft.capture !== undefined || draft.test !== undefined;
}

/** The test of a draft on this circuit; whether the circuit allows it is another question. */
export function draftedTest(draft: TestDraft, circuit: Circuit): Test | NoTest {
  const moved = draft.wiggle ? ({ wiggle: true } as const) : {};
  if (draft.test !== undefined) {
    const all = standardTests(circuit);
    const found = all.find(({ id }) => id === draft.test);
    if (found) return { ...found.test, ...moved };
    const words = `there is no test "${draft.test}"`;
    return {
      code: 'unknown-test',
      words,
      fix: nameFix(
        draft.test,
        all.map(({ id }) => id),
      ),
    };
  }
  const measured = draft.capture === undefined ? draft.measure : `pattern ${draft.capture}`;
  if (measured === undefined)
    return {
      code: 'no-test',
      words: 'this names no test',
      fix: 'give one of: measure, capture, test',
    };
  const probe = parseMeasure(measured);
  if ('words' in probe) return bad(probe.words);
  const bridges: Bridge[] = [];
  for (const text of draft.bridges ?? []) {
    const bridge = parseBridge(text);
    if ('words' in bridge) return bad(bridge.words);
    bridges.push(bridge.value);
  }
  const state = draft.state ?? 'key-on';
  const setup = {
    state,
    unplugged: [...new Set(draft.unplug ?? [])].sort(),
    bridges,
    sensor: draft.spare ? ('spare' as const) : ('fitted' as const),
    target: draft.moving ? ('moving' as const) : targetIn(circuit, state, 'still'),
  };
  return { setup, probe: probe.value, ...moved };
}

function bad(words: string): NoTest {
  return { code: 'bad-test', words, fix: 'correct it here' };
}
