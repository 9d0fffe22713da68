/** Captures before and after a repair, by what was kept of them. */
import { describe, expect, test } from 'vitest';
import { compareMeasured } from '../../src/session/compare-measured.ts';
import type { CaptureMeasured } from '../../src/session/events.ts';

const GOOD: CaptureMeasured = {
  kind: 'switched',
  unit: 'V',
  samples: 1000,
  seconds: 1,
  low: 0.1,
  high: 4.9,
  hertz: 200,
  duty: 52,
  rpm: 200,
};
const changes = (before: Partial<CaptureMeasured>, after: Partial<CaptureMeasured> = {}) =>
  compareMeasured({ ...GOOD, ...before }, { ...GOOD, ...after })
    .filter(({ change }) => change !== '')
    .map(({ name, change }) => [name, change]);

describe('before and after', () => {
  test.each<[string, Partial<CaptureMeasured>, string[][]]>([
    ['the same', {}, []],
    // 2 % of 4.8 V are 96 mV.
    ['a level that moved less than the noise of a scope', { low: 0.19 }, []],
    ['a level that came down', { low: 1.9 }, [['low', '1.8 V less']]],
    ['a level that came up', { high: 3.9 }, [['high', '1 V more']]],
    ['another speed', { hertz: 300, rpm: 300 }, []],
    ['another duty', { duty: 60 }, [['duty', '8 % less']]],
  ])('%s', (_, before, expected) => expect(changes(before)).toEqual(expected));

  test('a line that was dead toggles again', () => {
    const dead = { kind: 'steady', low: 5, high: 5, hertz: null, duty: null, rpm: null } as const;
    const rows = compareMeasured({ ...GOOD, ...dead }, GOOD);
    expect(rows[0]).toEqual({
      name: 'signal',
      before: 'a flat line',
      after: 'switched',
      change: 'another kind of signal',
    });
    expect(rows.find(({ name }) => name === 'speed')).toMatchObject({
      before: 'none',
      after: '200 rpm',
      change: '',
    });
  });

  test('volts and amperes are not compared', () => {
    expect(changes({ unit: 'A', low: 0.007, high: 0.014 })).toEqual([]);
  });
});
