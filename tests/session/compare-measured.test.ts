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

  // by hand: 2 % of the larger swing of 50 V are 1 V
  test.each<[string, [number, number], [number, number], string]>([
    // low and high before, and after
    ['stays within 2 % of the swing before', [-25, 25], [-24, 25], ''],
    ['stays within 2 % of the swing after', [-24, 25], [-25, 25], ''],
    ['moves up beyond', [-25, 25], [-23.75, 25], '1.25 V more'],
    ['moves down beyond', [-23.75, 25], [-25, 25], '1.25 V less'],
  ])('a level %s', (_, [low, high], [lowAfter, highAfter], change) => {
    const before = { ...GOOD, low, high };
    const rows = compareMeasured(before, { ...GOOD, low: lowAfter, high: highAfter });
    expect(rows.find(({ name }) => name === 'low')?.change).toBe(change);
  });

  test.each<[string, number | null, number | null, string]>([
    ['of one point more is the same', 52, 53, ''],
    ['of more than one point is another', 52, 53.25, '1.25 % more'],
    ['that was not there is compared with nothing', null, 52, ''],
    ['that went away is compared with nothing', 52, null, ''],
  ])('a duty %s', (_, duty, dutyAfter, change) => {
    const rows = compareMeasured({ ...GOOD, duty }, { ...GOOD, duty: dutyAfter });
    expect(rows.find(({ name }) => name === 'duty')?.change).toBe(change);
  });

  test('every measure has a row, in four digits, and none that neither capture has', () => {
    const all = compareMeasured({ ...GOOD, hertz: 193.34, low: 0.12344 }, GOOD);
    expect(all.map(({ name, before }) => `${name} ${before}`)).toEqual([
      'signal switched',
      'low 0.1234 V',
      'high 4.9 V',
      'frequency 193.3 Hz',
      'duty 52 %',
      'speed 200 rpm',
    ]);
    const flat = { ...GOOD, hertz: null, duty: null, rpm: null };
    expect(compareMeasured(flat, flat).map(({ name }) => name)).toEqual(['signal', 'low', 'high']);
  });

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
