/** Any test as a form: lines that turn, lists, and the test it stands for. */
import { expect, test } from 'vitest';
import type { Test } from '../../../src/circuit/test.ts';
import {
  clippedIn,
  entered,
  formOfTest,
  markedBy,
  plugToggled,
  TEST_LINES,
  testForm,
  testLineWords,
  testOfForm,
  turned,
} from '../../../src/ui/screens/any-test-form-state.ts';
import { setupOf } from '../../circuit/setup.ts';
import { shipped } from '../../circuit/shipped.ts';

const hall = shipped('hall-module-fed');
const words = (id: string) => `words of ${id}`;

const TESTS: readonly Test[] = [
  {
    setup: setupOf({ state: 'cranking', target: 'moving' }),
    probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
  },
  { setup: setupOf(), probe: { kind: 'counts', input: 'module.signal' } },
  { setup: setupOf({ unplugged: ['sensor'] }), probe: { kind: 'inspect', of: 'connector.sensor' } },
  {
    setup: setupOf({
      bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: { ohms: 470 } }],
      sensor: 'spare',
    }),
    probe: { kind: 'volts', plus: 'sensor.signal', minus: 'sensor.ground' },
    wiggle: true,
  },
];

test.each(TESTS)('a test put into the form comes out the same: %j', (one) => {
  expect(testOfForm(formOfTest(testForm(hall), one))).toEqual(one);
});

test('a harness that is left alone is not spoken of', () => {
  expect('wiggle' in testOfForm(testForm(hall))).toBe(false);
});

test('every line turns on and back, and the engine moves the wheel', () => {
  const form = testForm(hall);
  for (const line of TEST_LINES) {
    const there = turned(form, line, 1, hall);
    const back = turned(there, line, -1, hall);
    expect(testLineWords(back, line, words)).toBe(testLineWords(form, line, words));
  }
  const cranking = turned(turned(form, 'state', 1, hall), 'state', 1, hall);
  expect(cranking.setup).toMatchObject({ state: 'cranking', target: 'moving' });
});

test('an instrument that cannot be where the lead is takes it where it can', () => {
  const form = { ...testForm(hall), red: 'sensor.feed', instrument: 'amps' as const };
  const live = turned(turned(form, 'instrument', 1, hall), 'red', 1, hall);
  expect(live.instrument).toBe('counts');
  expect(testOfForm(live).probe).toEqual({ kind: 'counts', input: 'module.signal' });
});

test('the marked line stays in the form', () => {
  const form = testForm(hall);
  expect(markedBy(form, 'up').marked).toBe(0);
  expect(markedBy({ ...form, marked: 8 }, 'down').marked).toBe(8);
  expect(markedBy(form, 'left')).toBe(form);
});

test('Enter opens a list, asks what is clipped in, and takes it off again', () => {
  const form = testForm(hall);
  expect(entered(form, 'red')).toBe('red');
  expect(entered(form, 'state')).toBeNull();
  expect(entered(form, 'clipped-in')).toBe('clip');
  const clipped = clippedIn(form, 'sensor.signal battery.negative 470 ohm', hall);
  if ('words' in clipped) throw new Error(clipped.words);
  expect(clipped.setup.bridges).toHaveLength(1);
  expect(entered(clipped, 'clipped-in')).toEqual(form);
  expect(clippedIn(form, 'sensor.signal battery.negative spoon', hall)).toMatchObject({
    words: expect.stringContaining('"spoon" cannot be clipped in'),
  });
});

test('a connector comes off and goes on again', () => {
  const off = plugToggled(testForm(hall), 'sensor');
  expect(off.setup.unplugged).toEqual(['sensor']);
  expect(plugToggled(off, 'sensor').setup.unplugged).toEqual([]);
});
