/** How a captured signal looks hangs on this car: what its module counts by follows what its pull-up leads to. */
import { expect, it } from 'vitest';
import { expectedSignal, signalTest } from '../../src/circuit/expected-signal.ts';
import type { Test } from '../../src/circuit/test.ts';
import type { Session } from '../../src/session/session.ts';
import { setupOf } from '../circuit/setup.ts';
import { after, shopFor } from './walk-library.ts';

const { model, advisor, begun } = shopFor('hall-no-signal');
const SCOPE = signalTest(model.circuit, setupOf({ state: 'cranking' }))!;
/** The open level of the pull-up, and the battery. */
const OPEN: Test = {
  setup: setupOf({ unplugged: ['sensor'] }),
  probe: { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' },
};
const BATTERY: Test = {
  setup: setupOf(),
  probe: { kind: 'volts', plus: 'battery.positive', minus: 'battery.negative' },
};

function read(session: Session, test: Test, value: number): Session {
  const shown = { kind: 'number', value, unit: 'V' } as const;
  return after(session, {
    ...{ type: 'record-test', test, typed: `${value} V`, shown, expected: null },
  });
}

it.each([
  // By hand from the circuit file: 30 and 70 % of what the pull-up leads to.
  ['the reference', 5, 1.5, 3.5],
  ['8 V', 8, 2.4, 5.6],
])(
  'an open level of a pull-up to %s says what the module calls low and high',
  (_, open, low, high) => {
    const session = read(read(begun, BATTERY, 12.5), OPEN, open);
    const { expected } = expectedSignal(model, SCOPE, advisor.diagnosis(session).carsLeft!);
    expect(expected.lowBelow).toBeCloseTo(low, 1);
    expect(expected.highAbove).toBeCloseTo(high, 1);
  },
);

it('where nothing was read yet, it is that of the pull-up that most cars have', () => {
  const { expected } = expectedSignal(model, SCOPE);
  expect(expected.lowBelow).toBeGreaterThan(1.4);
  expect(expected.lowBelow).toBeLessThan(1.6);
  expect(expected.lowBelow).toBeLessThan(expected.highAbove!);
});
