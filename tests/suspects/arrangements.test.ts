/** How things stand at the vehicle, numbered as a search comes across it. */
import { expect, test } from 'vitest';
import { arrangements } from '../../src/suspects/arrangements.ts';
import type { TableTest } from '../../src/suspects/prediction-table.ts';
import { COSTS, type Situation } from '../../src/suspects/test-cost.ts';
import { simpleTest } from './tables.ts';

const KEY_ON: Situation = { state: 'key-on', unplugged: [], reached: [] };
const moves = (start: Situation, ...more: Partial<TableTest>[]) =>
  arrangements(
    more.map((one, index) => simpleTest(`t${index}`, one)),
    start,
    COSTS,
    false,
  );

test('what is reached in two ways is one place, and each step costs what it takes from there', () => {
  const move = moves(KEY_ON, { reaches: ['a'] }, { reaches: ['b'], minutes: 2 });
  const [first, second] = [move(0, 0), move(0, 1)];
  expect([first.minutes, second.minutes]).toEqual([
    1 + COSTS.accessMinutes,
    2 + COSTS.accessMinutes,
  ]);
  expect(new Set([0, first.place, second.place]).size).toBe(3);
  const both = move(first.place, 1);
  expect(both.minutes).toBe(2 + COSTS.accessMinutes);
  expect(move(second.place, 0).place).toBe(both.place);
  expect(move(both.place, 1)).toEqual({ place: both.place, minutes: 2 }); // all is in place
  expect(move(0, 0)).toEqual(first);
});

test('from nowhere only the reading counts', () => {
  const move = moves(KEY_ON, { reaches: ['a'], minutes: 2, state: 'running' });
  expect(move(-1, 0)).toEqual({ place: -1, minutes: 2 });
});

test('places are the same in whatever order their plugs and terminals are named', () => {
  const start: Situation = { state: 'key-on', unplugged: ['y', 'x'], reached: ['b', 'a'] };
  const move = moves(
    start,
    { unplugged: ['x', 'y'], reaches: ['a'] },
    { unplugged: ['x'] },
    { unplugged: ['x', 'y'], state: 'key-off' },
    { unplugged: ['x', 'y'], arrangement: 'bridge' },
    { unplugged: ['x', 'y'], arrangement: 'spare' },
  );
  expect(move(0, 0)).toEqual({ place: 0, minutes: 1 });
  const others = [1, 2, 3, 4].map((one) => move(0, one).place);
  expect(new Set([0, ...others]).size).toBe(5);
  const back = others.map((place) => move(place, 0).place);
  expect(back).toEqual([0, 0, 0, 0]);
});
