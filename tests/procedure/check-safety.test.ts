/** Sentences of repairs that leave something out. Common practice, no source. */
import { expect, test } from 'vitest';
import { repairFlaws } from '../../src/procedure/check-safety.ts';

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
