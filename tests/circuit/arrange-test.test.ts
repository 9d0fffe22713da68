/** A test arranged by words. */
import { expect, test } from 'vitest';
import {
  ARRANGEMENT,
  arrangedBy,
  arrangementOf,
  testFrom,
} from '../../src/circuit/arrange-test.ts';
import { shipped } from './shipped.ts';

const circuit = shipped('hall-module-fed');

/** The connectors that are off after the lines, or what is said to the first line that does not fit. */
function after(...lines: string[]): readonly string[] | string {
  let arrangement = ARRANGEMENT;
  for (const line of lines) {
    const arranged = arrangedBy(arrangement, line, circuit)!;
    if ('words' in arranged) return arranged.words;
    arrangement = arranged.arrangement;
  }
  return arrangement.setup.unplugged;
}

test.each<[string[], readonly string[] | string]>([
  [['unplug sensor module'], ['module', 'sensor']],
  [['unplug sensor module', 'plug sensor'], ['module']],
  [['unplug sensor module', 'plug'], []],
  [['plug'], []],
  [['unplug snsor'], '"snsor" has no connector; did you mean "sensor"?'],
  [['unplug sensor', 'plug snsor'], '"snsor" is not unplugged'],
  [['plug sensor'], '"sensor" is not unplugged'],
])('after %o', (lines, expected) => {
  expect(after(...lines)).toEqual(expected);
});

/** The arrangement after the lines; all of them fit. */
function arranged(...lines: string[]) {
  return lines.reduce((before, line) => {
    const next = arrangedBy(before, line, circuit);
    if (!next || 'words' in next) throw new Error(line);
    return next.arrangement;
  }, ARRANGEMENT);
}

test('an arrangement and a measurement are a test, and a test gives its arrangement back', () => {
  const arrangement = arranged(
    'state cranking',
    'spare',
    'wiggle',
    'clip sensor.signal battery.negative 470 ohm',
  );
  const made = testFrom(arrangement, 'volts sensor.signal battery.negative');
  expect(made).toEqual({
    test: {
      setup: {
        state: 'cranking',
        unplugged: [],
        bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: { ohms: 470 } }],
        sensor: 'spare',
        // The engine turns the wheel of this circuit.
        target: 'moving',
      },
      probe: { kind: 'volts', plus: 'sensor.signal', minus: 'battery.negative' },
      wiggle: true,
    },
  });
  if ('test' in made) expect(arrangementOf(made.test)).toEqual(arrangement);
});

test('a harness that is left alone is not spoken of', () => {
  expect(testFrom(arranged('wiggle', 'quiet'), 'counts module.signal')).toEqual({
    test: { setup: ARRANGEMENT.setup, probe: { kind: 'counts', input: 'module.signal' } },
  });
});

test.each(['constructor', 'toString', '__proto__', 'volts'])('"%s" arranges nothing', (word) => {
  expect(arrangedBy(ARRANGEMENT, word, circuit)).toBeNull();
});
