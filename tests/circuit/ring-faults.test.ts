/** A ring on a wheel bearing fails in ways of its own, each with a look that finds it. */
import { describe, expect, it } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import type { Test } from '../../src/circuit/test.ts';
import { setupOf } from './setup.ts';
import { look, METER, modelOf, shipped, textOf } from './shipped.ts';

const model = modelOf('current-two-wire', 64);
const SAMPLES = Array.from({ length: 64 }, (_, sample) => sample);
const moving = setupOf({ target: 'moving' });
const picture: Test = {
  setup: moving,
  probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
};
const seen = (of: string): Test => ({
  setup: setupOf({ state: 'key-off' }),
  probe: { kind: 'inspect', of },
});
const looksOf = (fault: string, test: Test, of = model) =>
  new Set(SAMPLES.map((sample) => look(of, fault, test, sample)));
const faulty = (fault: string, of: string) =>
  SAMPLES.filter((sample) => look(model, fault, seen(of), sample) === 'faulty').length / 64;

describe('the signal', () => {
  it('is flat with a ring on the wrong side, as without one', () => {
    for (const fault of ['target.reversed', 'target.missing'])
      expect(
        [...looksOf(fault, picture)].every((one) => one.startsWith('flat')),
        fault,
      ).toBe(true);
  });
  it('of a weak ring, or with rust under the sensor, is flat in some cars and uneven in others', () => {
    for (const fault of ['target.weak', 'target.gap-wide']) {
      const looks = looksOf(fault, picture);
      expect(looks.has('uneven'), fault).toBe(true);
      expect(
        [...looks].some((one) => one.startsWith('flat')),
        fault,
      ).toBe(true);
    }
  });
  it('of a ring that runs out of true is uneven', () => {
    expect([...looksOf('target.runout', picture)]).toEqual(['uneven']);
  });
});

describe('the look that finds it', () => {
  // Common practice, no source: magnets are seen by a magnet card and by no eye.
  it.each<[string, string, readonly string[]]>([
    ['rust under the sensor', 'target.gap-wide', ['target', 'target.seat']],
    ['a ring on the wrong side', 'target.reversed', ['target.ring']],
    ['a weak ring', 'target.weak', ['target.ring']],
    ['a torn ring', 'target.damaged', ['target', 'target.ring']],
    ['a worn bearing', 'target.runout', ['target', 'target.turning']],
  ])('of %s', (_, fault, places) => {
    const all = ['target', 'target.seat', 'target.ring', 'target.turning'];
    expect(all.filter((of) => faulty(fault, of) > 0.3)).toEqual(places);
    expect(all.filter((of) => faulty(fault, of) > 0)).toEqual(places);
  });
});

it('what is done differs between seat, ring and bearing, and together they weigh as much as the sensor or more', () => {
  const circuit = shipped('current-two-wire');
  const repairs = new Map(
    circuit.faults.filter((one) => one.class === 'target').map((one) => [one.id, one.repair]),
  );
  expect(Object.fromEntries(repairs)).toEqual({
    'target.damaged': 'target.replace',
    'target.gap-wide': 'target.gap',
    'target.missing': 'target.replace',
    'target.reversed': 'target.replace',
    'target.weak': 'target.replace',
    'target.runout': 'target.bearing',
  });
  const weight = (of: string) =>
    circuit.faults.reduce((sum, one) => sum + (one.class === of ? one.weight : 0), 0);
  expect(weight('target')).toBeGreaterThan(weight('sensor'));
});

it('a ring of teeth has no magnets, and a wheel of the engine no bearing', () => {
  const text = textOf('current-two-wire')
    .replace('ring: either', 'ring: teeth')
    .replace(/ {2}target\.(reversed|weak):\n.*\n/g, '');
  const { value, issues } = loadCircuit(text, 'teeth.yaml');
  expect(issues).toEqual([]);
  const ids = value!.faults.map(({ id }) => id).filter((id) => id.startsWith('target.'));
  expect(ids).toEqual(['target.damaged', 'target.gap-wide', 'target.missing', 'target.runout']);
  expect(
    looksOf('target.runout', picture, createModel(value!, { samples: 64, seed: 1, meter: METER })),
  ).toContain('uneven');
  const engine = shipped('hall-relay-fed').faults.map(({ id }) => id);
  expect(engine).not.toContain('target.reversed');
  expect(engine).not.toContain('target.runout');
});
