/** What an expert would do at five cars: each test can be done there, shows what is written, and is priced as the program prices. */
import { describe, expect, test } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import { NOMINAL } from '../../src/circuit/samples.ts';
import type { Shown } from '../../src/circuit/test.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { type Asked, type ExpertList, minutesOf, readExpertLists } from './expert-lists.ts';

const { meter } = STANDARD_SETTINGS;
const LISTS = readExpertLists();

describe.each(LISTS)('$name', (list) => {
  const tests = testsOf(list);

  test('each test can be done there, and shows on a sound car and on this one what is written', () => {
    const model = createModel(list.circuit, { samples: 1, seed: 1, meter });
    const fault = list.car.fault!;
    const wrong = tests.flatMap(({ words, test: asked, good, programShows }) => {
      expect(model.refusal(asked), words).toBeNull();
      const { wiggle, ...still } = asked;
      // What comes and goes shows to who moves the harness, and to the eyes.
      const isThere = !list.car.intermittent || wiggle === true || asked.probe.kind === 'inspect';
      const onThisCar = model.shows(isThere ? fault : HEALTHY, still, NOMINAL);
      return [
        ...differing(words, good, model.shows(HEALTHY, still, NOMINAL)),
        ...differing(words, programShows, onThisCar),
      ];
    });
    expect(wrong).toEqual([]);
  });

  test('at least three tests prove it, and each rests on something else', () => {
    const rests = tests.flatMap(({ restsOn }) => (restsOn === null ? [] : [restsOn]));
    expect(rests.length).toBeGreaterThanOrEqual(3);
    expect(rests).toEqual([...new Set(rests)]);
  });

  test('no plug is opened twice', () => {
    const opened = tests.flatMap(({ test: { setup } }, index) => {
      const before = tests[index - 1]?.test.setup.unplugged ?? [];
      return setup.unplugged.filter((part) => !before.includes(part));
    });
    expect(opened).toEqual([...new Set(opened)]);
  });
});

describe('what the tests take, each from how the one before it left the car, in minutes', () => {
  test('signal-wire-open-behind-connector', () => {
    expect(priced('signal-wire-open-behind-connector')).toMatchInlineSnapshot(`
      "3.5 counts module.signal cranking
      4 volts sensor.feed sensor.ground
      2 volts sensor.signal battery.negative --unplug sensor
      4 volts bulkhead.signal.pin battery.negative --unplug sensor
      7 volts module.signal battery.negative --unplug sensor
      1.5 volts module.signal battery.negative --unplug sensor --bridge sensor.signal battery.negative 470 ohm
      1.5 volts module.signal battery.negative --unplug sensor --bridge module.signal battery.negative 470 ohm
      8.5 counts module.signal cranking --bridge bulkhead.signal.pin module.signal lead
      32 in tests, 34 in all"
    `);
  });

  test('ground-wire-resistive', () => {
    expect(priced('ground-wire-resistive')).toMatchInlineSnapshot(`
      "2.5 counts module.signal --moving
      4.5 volts sensor.feed sensor.ground
      1 volts sensor.ground battery.negative
      1.5 volts sensor.ground battery.negative --wiggle
      11.5 counts module.signal --bridge sensor.ground module.ground lead --moving
      2.5 volts sensor.ground module.ground --unplug sensor --bridge battery.positive sensor.ground test-light
      23.5 in tests, 25.5 in all"
    `);
  });

  test('wheel-slipped', () => {
    expect(priced('wheel-slipped')).toMatchInlineSnapshot(`
      "3.5 counts module.signal running
      8 timing sensor.signal battery.negative running
      7.5 timing sensor.signal battery.negative --moving
      9.5 inspect target key-off
      28.5 in tests, 31.5 in all"
    `);
  });

  test('pull-up-dead', () => {
    expect(priced('pull-up-dead')).toMatchInlineSnapshot(`
      "3.5 counts module.signal cranking
      4 volts sensor.feed sensor.ground
      2 volts sensor.signal battery.negative --unplug sensor
      7 volts module.signal battery.negative --unplug sensor
      1.5 volts module.signal battery.negative --unplug sensor --bridge sensor.feed sensor.signal 2.2 kohm --bridge sensor.feed battery.negative 330 ohm
      1.5 volts module.ground battery.negative --unplug sensor
      4.5 counts module.signal cranking --bridge sensor.feed sensor.signal 2.2 kohm
      3 counts module.signal cranking --bridge sensor.feed sensor.signal 2.2 kohm
      5.5 inspect connector.module key-off --unplug module
      32.5 in tests, 34.5 in all"
    `);
  });

  test('contact-comes-and-goes', () => {
    expect(priced('contact-comes-and-goes')).toMatchInlineSnapshot(`
      "3.5 counts module.signal-plus running
      1.5 counts module.signal-plus running --wiggle
      6.5 volts sensor.minus battery.negative --bridge sensor.plus battery.negative 10 kohm
      1.5 volts sensor.minus battery.negative --bridge sensor.plus battery.negative 10 kohm --wiggle
      1.5 volts sensor.plus battery.negative --bridge sensor.plus battery.negative 10 kohm --wiggle
      5.5 inspect connector.sensor key-off --unplug sensor
      2.5 ohms sensor.plus.pin sensor.minus.pin key-off --unplug sensor --wiggle
      22.5 in tests, 24.5 in all"
    `);
  });
});

function testsOf({ entries }: ExpertList): Asked[] {
  return entries.flatMap((entry) => (entry.kind === 'test' ? [entry] : []));
}

function differing(words: string, text: string, shown: Shown) {
  return isWithin(shown, text) ? [] : [{ words, text, shown }];
}

function isWithin(shown: Shown, text: string): boolean {
  if (shown.kind === 'look') return text === shown.look;
  const [low, high] = text.split(' to ').map(parseQuantity);
  if (low?.unit !== shown.unit || high?.unit !== shown.unit) return false;
  return shown.value >= low.value && shown.value <= high.value;
}

/** Each test after its minutes; then the minutes of all of them, and with what is asked and looked at. */
function priced(name: string): string {
  const list = LISTS.find((one) => one.name === name)!;
  const minutes = minutesOf(list, meter);
  const isTest = (at: number) => list.entries[at]!.kind === 'test';
  const lines = list.entries.map(({ words }, at) => `${minutes[at]} ${words}`);
  const tests = sum(minutes.filter((_, at) => isTest(at)));
  return [...lines.filter((_, at) => isTest(at)), `${tests} in tests, ${sum(minutes)} in all`].join(
    '\n',
  );
}

function sum(all: readonly number[]): number {
  return all.reduce((before, one) => before + one, 0);
}
