/**
 * What a test costs in minutes: the reading itself, and getting from how things are to how the test needs them.
 * All numbers are common practice, no source; a shop may set its own.
 */
import type { VehicleState } from '../circuit/test.ts';
import type { TableTest } from './prediction-table.ts';

/** The minutes that single actions take. */
export interface CostModel {
  /** Getting at a terminal or connector for the first time in this job: covers, brackets, back-probing. */
  readonly accessMinutes: number;
  /** The same at a control module: under a cover, behind the glove box, in the wheel arch. */
  readonly moduleAccessMinutes: number;
  /** Taking one connector off, or putting it on again. */
  readonly plugMinutes: number;
  /** Turning the key on or off, with the wait for modules to wake or to sleep. */
  readonly keyMinutes: number;
  /** Starting or stopping the engine, with a look around first. */
  readonly engineMinutes: number;
  /** Other clips: bridges, a spare sensor, the target by hand. */
  readonly arrangeMinutes: number;
  /** Working alone: the walk to the seat and back at each change of the vehicle's state. */
  readonly aloneMinutes: number;
}

export const COSTS: CostModel = {
  accessMinutes: 3,
  moduleAccessMinutes: 6,
  plugMinutes: 1,
  keyMinutes: 0.5,
  engineMinutes: 1.5,
  arrangeMinutes: 0.5,
  aloneMinutes: 0.5,
};

/** How things are at the vehicle now. */
export interface Situation {
  readonly state: VehicleState;
  readonly unplugged: readonly string[];
  /** Terminals or connectors already got at. */
  readonly reached: readonly string[];
  readonly arrangement?: string;
}

/** What the person can do. */
export interface Means {
  /** Instruments at hand; `null` when all are. */
  readonly has: readonly string[] | null;
  readonly helper: boolean;
  /** Vehicle states that are unsafe or can't be had now. */
  readonly without: readonly VehicleState[];
}

/** Everything at hand and every state to be had, alone. */
export const ALL_MEANS: Means = { has: null, helper: false, without: [] };
/** What `needs` calls a second person. */
const HELPER = 'helper';

/** Minutes of a test, by what they go into. */
export interface TestCost {
  readonly minutes: number;
  readonly reading: number;
  readonly state: number;
  readonly plugs: number;
  readonly access: number;
  readonly arrange: number;
}

/** Minutes for `test` from `now`. Cranking is no state to stay in, so it costs each time. */
export function testCost(
  test: TableTest,
  now: Situation,
  costs: CostModel,
  helper: boolean,
): TestCost {
  const changes = stateChanges(now.state, test.state);
  const walk = changes.key + changes.engine > 0 && !helper ? costs.aloneMinutes : 0;
  const state = changes.key * costs.keyMinutes + changes.engine * costs.engineMinutes + walk;
  const plugs =
    costs.plugMinutes *
    (test.unplugged.filter((part) => !now.unplugged.includes(part)).length +
      now.unplugged.filter((part) => !test.unplugged.includes(part)).length);
  const places = new Set(test.reaches.filter((place) => !now.reached.includes(place)));
  const access = [...places].reduce(
    (sum, place) =>
      sum +
      (test.access?.[place] ??
        (place === test.module ? costs.moduleAccessMinutes : costs.accessMinutes)),
    0,
  );
  const arrange = (test.arrangement ?? '') === (now.arrangement ?? '') ? 0 : costs.arrangeMinutes;
  const minutes = test.minutes + state + plugs + access + arrange;
  return { minutes, reading: test.minutes, state, plugs, access, arrange };
}

function stateChanges(from: VehicleState, to: VehicleState): { key: number; engine: number } {
  if (to === 'cranking') return { key: from === 'key-off' ? 1 : 0, engine: 1 };
  if (from === to) return { key: 0, engine: 0 };
  // After cranking the key is on and the engine stands.
  const engine = from === 'running' || to === 'running' ? 1 : 0;
  const key = from === 'key-off' || to === 'key-off' ? 1 : 0;
  return { key, engine };
}

/** How things are after `test`. */
export function situationAfter(test: TableTest, now: Situation): Situation {
  const reached = [...new Set([...now.reached, ...test.reaches])].sort();
  const after = { state: test.state, unplugged: [...test.unplugged].sort(), reached };
  return test.arrangement ? { ...after, arrangement: test.arrangement } : after;
}

/** Whether the person can do `test` at all, and if not, what is missing. */
export function canDo(
  test: TableTest,
  means: Means,
): { readonly can: boolean; readonly missing: readonly string[] } {
  const has = means.has;
  const missing = test.needs.filter((need) =>
    need === HELPER ? !means.helper : has !== null && !has.includes(need),
  );
  if (means.without.includes(test.state)) missing.push(test.state);
  return { can: missing.length === 0, missing };
}
