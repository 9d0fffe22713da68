/** What a signal should be like: numbers of the circuit files, and shares of the healthy levels as the source names them. */
import { describe, expect, test } from 'vitest';
import { expectedSignal, signalTest } from '../../src/circuit/expected-signal.ts';
import { pairId } from '../../src/circuit/model.ts';
import type { Test } from '../../src/circuit/test.ts';
import { knownModel } from './known-car.ts';
import { setupOf } from './setup.ts';
import { testOf, volts } from './shipped.ts';

const models = {
  hall: knownModel('hall-module-fed', 2),
  coil: knownModel('reluctor-two-wire', 2),
  current: knownModel('current-two-wire', 2),
  travel: knownModel('throttle-potentiometer', 2),
};
type Name = keyof typeof models;
const scope = (name: Name): Test =>
  signalTest(models[name].circuit, setupOf({ state: 'cranking' }))!;
const known = (name: Name, test: Test = scope(name)) => expectedSignal(models[name], test);

describe('the signal at the first input', () => {
  test.each<[Name, string, string]>([
    ['hall', 'module.signal', 'battery.negative'],
    ['coil', 'module.signal-plus', 'module.signal-minus'], // against the other side of the coil
  ])('of the %s is looked at from %s to %s while the target moves', (name, plus, minus) => {
    expect(scope(name)).toEqual({
      setup: setupOf({ state: 'cranking', target: 'moving' }),
      probe: { kind: 'pattern', plus, minus },
    });
  });

  test.each<[Name, object, number | null, boolean]>([
    // teeth and turns as the files have them; a potentiometer has no wheel
    ['hall', { wheel: { teeth: 60, missing: 2 } }, 1, false],
    ['coil', { wheel: { teeth: 60, missing: 2 } }, 1, false],
    ['current', { wheel: { teeth: 48, missing: 0 } }, null, false], // it does not turn with the crankshaft
    ['travel', {}, null, true],
  ])('of the %s has the wheel of its file', (name, measure, ratio, isTravel) => {
    expect(known(name)).toMatchObject({ ratio, isTravel });
    expect(known(name).measure).toEqual(measure);
  });

  test('has to pass the thresholds of its input where the healthy one does', () => {
    expect(known('hall').expected).toEqual({
      wheel: { teeth: 60, missing: 2 },
      lowBelow: 1.5,
      highAbove: 3.5,
    });
    const sensor = models.hall.circuit.parts.find(({ name }) => name === 'sensor')!;
    expect(sensor.kind).toBe('hall-switch');
    // where the leads are not at the input there is nothing to pass
    expect(known('hall', volts('sensor.feed')).expected).not.toHaveProperty('lowBelow');
  });

  test('of a coil has to swing by 55 % of the healthy swing', () => {
    const { expected, levels } = known('coil');
    expect(expected.leastPeakToPeak).toBeCloseTo(0.55 * (levels.high - levels.low), 9);
    expect(known('hall').expected).not.toHaveProperty('leastPeakToPeak');
  });

  test('of a current switch has the two currents of its file', () => {
    expect(known('current').expected.currents).toEqual({ low: 0.007, high: 0.014 });
    expect(known('coil').expected).not.toHaveProperty('currents');
  });
});

describe('the healthy levels', () => {
  test('of the Hall switch are near ground and near the reference', () => {
    const { levels, flat } = known('hall');
    expect(levels.low).toBeGreaterThanOrEqual(0);
    expect(levels.low).toBeLessThan(0.6);
    expect(levels.high).toBeCloseTo(5, 1);
    const swing = levels.high - levels.low;
    // below a twentieth of the swing a line is flat; its lowest quarter is low, its highest high
    expect(flat.swing).toBeCloseTo(0.05 * swing, 9);
    expect(flat.lowBelow).toBeCloseTo(levels.low + swing / 4, 9);
    expect(flat.highAbove).toBeCloseTo(levels.high - swing / 4, 9);
  });
  test('are those of the plain circuit, whatever is unplugged or clipped in', () => {
    const plain = known('hall');
    const asked = scope('hall');
    const setup = {
      ...asked.setup,
      unplugged: ['sensor'],
      sensor: 'spare' as const,
      target: 'still' as const,
      bridges: [{ from: 'module.signal', to: 'battery.negative', through: { ohms: 470 } }],
    };
    expect(known('hall', { ...asked, setup })).toEqual(plain);
  });
  test('are told for a fault as well, and flat for an open wire', () => {
    const at = (fault: string) => models.hall.levels(fault, scope('hall'), -1);
    expect(at('healthy')).toEqual(known('hall').levels);
    const open = at('wire.signal.open');
    expect(open.high - open.low).toBeLessThan(0.01);
    // live data has one lead; the other end is battery negative
    const counts = { ...scope('hall'), probe: { kind: 'counts', input: 'module.signal' } } as const;
    expect(models.hall.levels('healthy', counts, -1)).toEqual(at('healthy'));
  });
});

test('two faults are shown together unless they sit in the same thing; the harness is no thing', () => {
  const { faults } = models.hall.circuit;
  const fault = (id: string) => faults.find((one) => one.id === id)!;
  const pair = (a: string, b: string) => pairId(fault(a), fault(b));
  expect(pair('wire.signal.open', 'wire.feed.open')).toBe('wire.feed.open+wire.signal.open');
  expect(pair('wire.feed.open', 'wire.signal.open')).toBe('wire.feed.open+wire.signal.open');
  expect(pair('wire.feed.open', 'wire.feed.resistive')).toBeNull();
  expect(pair('sensor.dead', 'sensor.stuck-low')).toBeNull();
});

test('looks of a healthy circuit are told with their chances, the likeliest first', () => {
  const expected = models.hall.expected(scope('hall'));
  expect(expected).toEqual({ kind: 'looks', looks: [{ look: 'full', chance: 1 }] });
  const visible = models.hall.expected(
    testOf({ kind: 'inspect', of: 'wire.feed' }, { state: 'key-off' }),
    'wire.feed.open',
  );
  if (visible.kind !== 'looks') throw new Error('eyes see looks');
  const chances = visible.looks.map(({ chance }) => chance);
  expect(chances.reduce((a, b) => a + b)).toBeCloseTo(1, 12);
  expect(chances).toEqual([...chances].sort((a, b) => b - a));
});

test('where the module has no input there is no signal to look at', () => {
  const { circuit } = models.hall;
  const parts = circuit.parts.map((part) =>
    part.kind === 'module'
      ? { ...part, inside: part.inside.map((pin) => ({ ...pin, input: null })) }
      : part,
  );
  expect(signalTest({ ...circuit, parts }, setupOf())).toBeNull();
});
