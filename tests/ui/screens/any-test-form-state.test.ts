/** Any test as a form: lines that turn, lists, and the test it stands for. */
import { expect, test } from 'vitest';
import type { Test } from '../../../src/circuit/test.ts';
import { terminalWords } from '../../../src/procedure/bind-text.ts';
import { emptyJob } from '../../../src/procedure/job.ts';
import { thingWords } from '../../../src/procedure/test-words.ts';
import type { OpenedSession } from '../../../src/ui/app-services.ts';
import {
  clippedIn,
  entered,
  formOfTest,
  markedBy,
  plugToggled,
  TEST_LINES,
  type TestForm,
  testForm,
  testLineWords,
  testOfForm,
  turned,
} from '../../../src/ui/screens/any-test-form-state.ts';
import { choiceList } from '../../../src/ui/screens/any-test-pages.ts';
import { setupOf } from '../../circuit/setup.ts';
import { shipped } from '../../circuit/shipped.ts';
import { sessionAfter } from '../../session/sample-tree.ts';

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
    expect(testLineWords(back, line, words, words)).toBe(testLineWords(form, line, words, words));
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

test('lines and lists say things by their words, and a list finds them by their names too', () => {
  const form = { ...testForm(hall), red: 'sensor.feed', black: 'battery.negative' };
  const thing = (name: string) => thingWords(name, hall);
  const at = (id: string) => terminalWords(id, emptyJob(''), hall);
  const off = { ...form, setup: { ...form.setup, unplugged: ['sensor', 'module'] } };
  expect(testLineWords(off, 'red', at, thing)).toBe('feed at the crankshaft position sensor');
  expect(testLineWords(off, 'unplugged', at, thing)).toBe(
    'crankshaft position sensor, engine control module',
  );
  const look = { ...form, instrument: 'inspect' as const, red: 'connector.sensor' };
  expect(testLineWords(look, 'red', at, thing)).toBe(
    'the connector of the crankshaft position sensor',
  );
  const opened = { terminalWords: at, bind: (text: string) => text } as unknown as OpenedSession;
  const session = sessionAfter([], null, { circuit: hall });
  const listed = (of: 'red' | 'unplugged', shown: TestForm) =>
    choiceList(
      {
        opened,
        state: { session, over: [{ name: 'any-test', form: shown }], message: null, half: null },
      },
      of,
    ).items;
  expect(listed('red', form).find(({ id }) => id === 'sensor.feed')).toMatchObject({
    ...{ text: 'feed at the crankshaft position sensor', also: 'sensor.feed' },
    about: 'Typed as: sensor.feed',
  });
  expect(listed('unplugged', off).map(({ text }) => text)).toContain(
    'crankshaft position sensor  (off)',
  );
  for (const { text } of [
    ...listed('red', form),
    ...listed('red', look),
    ...listed('unplugged', off),
  ])
    expect(text).not.toMatch(/^[a-z-]+\.[a-z-]+/);
});
