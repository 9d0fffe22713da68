/** The minutes of a test from how things stand at the vehicle, how they stand after it, and what rules a test out. */
import { describe, expect, test } from 'vitest';
import type { VehicleState } from '../../src/circuit/test.ts';
import type { TableTest } from '../../src/suspects/prediction-table.ts';
import {
  COSTS,
  canDo,
  type Means,
  type Situation,
  situationAfter,
  testCost,
} from '../../src/suspects/test-cost.ts';
import { simpleTest } from './tables.ts';

const { accessMinutes, plugMinutes, keyMinutes, engineMinutes, arrangeMinutes, aloneMinutes } =
  COSTS;
const READING_MINUTES = 2;
const FEED = simpleTest('feed', { minutes: READING_MINUTES, reaches: ['sensor'] });
/** From here the feed costs its reading and nothing else. */
const AT_SENSOR: Situation = { state: 'key-on', unplugged: [], reached: ['sensor'] };

/** Minutes beyond the reading, of the feed changed by `test`, from the sensor changed by `from`. */
function extraMinutes(
  test: Partial<TableTest>,
  from: Partial<Situation>,
  { helper = true } = {},
): number {
  const cost = testCost({ ...FEED, ...test }, { ...AT_SENSOR, ...from }, COSTS, helper);
  return cost.minutes - READING_MINUTES;
}

// By hand from the named costs: after cranking the key is on and the engine stands; cranking costs each time.
test.each<[from: VehicleState, to: VehicleState, minutes: number]>([
  ['key-off', 'key-off', 0],
  ['key-off', 'key-on', keyMinutes],
  ['key-off', 'cranking', keyMinutes + engineMinutes],
  ['key-off', 'running', keyMinutes + engineMinutes],
  ['key-on', 'key-off', keyMinutes],
  ['key-on', 'key-on', 0],
  ['cranking', 'key-off', keyMinutes],
  ['cranking', 'key-on', 0],
  ['cranking', 'cranking', engineMinutes],
  ['cranking', 'running', engineMinutes],
  ['running', 'key-off', keyMinutes + engineMinutes],
  ['running', 'key-on', engineMinutes],
  ['running', 'cranking', engineMinutes],
  ['running', 'running', 0],
])('from %s to %s', (from, to, minutes) => {
  expect(extraMinutes({ state: to }, { state: from })).toBeCloseTo(minutes, 12);
});

test.each<[what: string, test: Partial<TableTest>, from: Partial<Situation>, minutes: number]>([
  ['a place to get at', {}, { reached: [] }, accessMinutes],
  ['a place named twice', { reaches: ['sensor', 'sensor'] }, { reached: [] }, accessMinutes],
  [
    'one connector to take off and another to put on',
    { unplugged: ['sensor'] },
    { unplugged: ['module'] },
    2 * plugMinutes,
  ],
  ['a connector that is off', { unplugged: ['sensor'] }, { unplugged: ['sensor'] }, 0],
  ['clips to put on', { arrangement: 'bridge' }, {}, arrangeMinutes],
  ['clips to take off', {}, { arrangement: 'bridge' }, arrangeMinutes],
  ['clips that are on', { arrangement: 'bridge' }, { arrangement: 'bridge' }, 0],
])('%s', (_, changed, from, minutes) => {
  expect(extraMinutes(changed, from)).toBeCloseTo(minutes, 12);
});

describe('alone', () => {
  const alone = { helper: false };
  test.each<VehicleState>(['key-on', 'running'])(
    'a change to %s costs the walk to the seat as well, once',
    (state) => {
      const from: Partial<Situation> = { state: 'key-off' };
      const walk = extraMinutes({ state }, from, alone) - extraMinutes({ state }, from);
      expect(walk).toBeCloseTo(aloneMinutes, 12);
    },
  );
  test('there is no walk without a change', () => {
    expect(extraMinutes({}, {}, alone)).toBe(0);
    expect(extraMinutes({}, { reached: [] }, alone)).toBe(accessMinutes);
  });
});

test('minutes are told by what they go into', () => {
  const far = simpleTest('far', {
    minutes: 2,
    state: 'running',
    unplugged: ['plug', 'other'],
    reaches: ['sensor', 'module', 'plug'],
    arrangement: 'bridge',
  });
  const now: Situation = { state: 'key-off', unplugged: ['third'], reached: ['module'] };
  // by hand: key 0.5, engine 1.5 and the walk 0.5; three plugs of 1, two places of 3, clips 0.5
  expect(testCost(far, now, COSTS, false)).toEqual({
    minutes: 14,
    reading: 2,
    state: 2.5,
    plugs: 3,
    access: 6,
    arrange: 0.5,
  });
});

describe('after a test', () => {
  test('its state, connectors and clips stand, and every place reached so far', () => {
    const plugsOff = simpleTest('plugs-off', {
      state: 'running',
      unplugged: ['sensor', 'module'],
      reaches: ['sensor'],
      arrangement: 'clips',
    });
    const before: Situation = { ...AT_SENSOR, reached: ['module'], arrangement: 'other' };
    expect(situationAfter(plugsOff, before)).toEqual({
      state: 'running',
      unplugged: ['module', 'sensor'],
      reached: ['module', 'sensor'],
      arrangement: 'clips',
    });
  });
  test('what it does not need is as at the start again', () => {
    const before: Situation = {
      state: 'running',
      unplugged: ['module', 'sensor'],
      reached: ['module', 'sensor'],
      arrangement: 'clips',
    };
    expect(situationAfter(simpleTest('plain'), before)).toEqual({
      state: 'key-on',
      unplugged: [],
      reached: ['module', 'sensor'],
    });
  });
  test('a place that was reached before is not there twice', () => {
    const both = simpleTest('both', { reaches: ['module', 'sensor'] });
    expect(situationAfter(both, AT_SENSOR).reached).toEqual(['module', 'sensor']);
  });
});

describe('a test is ruled out', () => {
  const PATTERN = simpleTest('pattern', { needs: ['scope', 'helper'], state: 'cranking' });
  const missing = (means: Means) => canDo(PATTERN, means).missing;
  test('by every instrument, hand and state that cannot be had', () => {
    expect(canDo(PATTERN, { has: ['meter'], helper: false, without: ['cranking'] })).toEqual({
      can: false,
      missing: ['scope', 'helper', 'cranking'],
    });
  });
  test('by a helper who is not there, though all instruments are', () => {
    expect(missing({ has: null, helper: false, without: [] })).toEqual(['helper']);
    expect(canDo(PATTERN, { has: null, helper: true, without: [] }).can).toBe(true);
  });
  test('by no state that it does not need', () => {
    expect(canDo(PATTERN, { has: ['scope'], helper: true, without: ['running'] })).toEqual({
      can: true,
      missing: [],
    });
  });
});
