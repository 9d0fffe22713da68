/** A suspect that one reading put out and the next one brings back is as likely as if it had never been out. */
import { expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { after, shopFor } from './walk-library.ts';

const AT_REST = KEY_ON;
const PRESSED = { ...KEY_ON, target: 'moving' } as const;
const volts = (plus: string, minus: string, setup: Test['setup'] = AT_REST): Test => ({
  setup,
  probe: { kind: 'volts', plus, minus },
});
/** A pedal whose second track lies a little lower, which shows with the last reading only. Drawn by the bench of cars. */
const READ: readonly (readonly [Test, number])[] = [
  [volts('battery.positive', 'battery.negative'), 12.75],
  [volts('sensor.feed-1', 'sensor.ground-1'), 4.92],
  [volts('sensor.signal-1', 'sensor.ground-1'), 0.836],
  [volts('sensor.feed-1', 'sensor.signal-1', PRESSED), 0.869],
  [volts('sensor.feed-2', 'sensor.ground-2'), 5.062],
  [volts('sensor.signal-2', 'sensor.ground-2'), 0.3991],
  [volts('sensor.feed-2', 'sensor.signal-2', PRESSED), 1.359],
];

it('an input that nobody has looked at yet', () => {
  const { advisor, begun } = shopFor('pedal-position');
  const session = READ.reduce(
    (now, [test, value]) =>
      after(now, {
        ...{ type: 'record-test', test, typed: `${value} V`, expected: null },
        shown: { kind: 'number', value, unit: 'V' },
      }),
    begun,
  );
  const chances = (at: typeof begun) =>
    new Map(
      advisor.suspects(at).rows.flatMap(({ faults }) => faults.map((one) => [one.id, one.chance])),
    );
  const [before, now] = [chances(begun), chances(session)];
  // Of all that a meter shows at the sensor a dead input changes nothing.
  const beside = (of: typeof now) => of.get('module.signal-1.input-dead')! / of.get(HEALTHY)!;
  expect(beside(now) / beside(before)).toBeGreaterThan(1 / 3);
  expect(beside(now) / beside(before)).toBeLessThan(3);
});
