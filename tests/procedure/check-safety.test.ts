/** Cranking before the timing is looked at, and sentences of repairs that leave something out. Common practice, no source. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { repairFlaws } from '../../src/procedure/check-safety.ts';
import { link, tree } from '../proof/library.ts';

const NONE: readonly string[] = [];
const RELEARN = ['missing-relearn'];
const BATTERY = ['battery-off-bare'];

test.each([
  ['Replace the sensor and retest at once.', RELEARN],
  ['Set the gap; replace the wheel if a tooth is damaged.', RELEARN],
  ['Replace the pedal unit.', RELEARN],
  ['Replace the pedal unit. Let the module learn both ends.', NONE],
  ['Replace the terminals of this sensor.', NONE],
  ["Replace the seal of the sensor's plug.", NONE],
  ['Replace nothing. Look at the sensor again.', NONE],
  ['Test the plug before the sensor is replaced.', NONE],
  ['Battery off, open the plug.', BATTERY],
  ['Disconnect the battery, open the plug.', BATTERY],
  ['Battery off, open the plug. Before that: ignition off, modules asleep.', NONE],
  ['The battery is weak.', NONE],
] as const)('%s', (repair, codes) => {
  expect(repairFlaws({ id: 'end', repair }).map(({ code }) => code)).toEqual(codes);
});

test.each([
  ['as it ships', 'unseen: timing-unseen', []],
  ['where the marks cannot be seen', 'unseen: code', ['timing-unseen']],
])('a Hall tree that cranks: %s', (_, unseen, codes) => {
  const text = readFileSync('procedures/hall-no-signal.yaml', 'utf8');
  const { issues } = link(tree(text.replace('unseen: timing-unseen', unseen)), 4);
  const errors = issues.filter(({ severity }) => severity === 'error');
  expect([...new Set(errors.map(({ code }) => code))]).toEqual(codes);
});
