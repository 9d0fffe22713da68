import { describe, expect, it } from 'vitest';
import {
  sessionFileName,
  sessionPart,
  sessionPartName,
  slugOf,
} from '../../src/files/safe-name.ts';
import fc from '../seeded-check.ts';

const AT = '2031-05-06T09:08:09.5+02:00';

describe('a session file name', () => {
  it('has UTC time, words, and 8 hex digits', () => {
    expect(sessionFileName(AT, 'Hall sensor: no signal!', '0badcafe')).toBe(
      '20310506T070809Z-hall-sensor-no-signal-0badcafe.jsonl',
    );
  });
  it('takes a leap second and its own random digits', () => {
    expect(sessionFileName('1990-12-31T23:59:60Z', 'x')).toMatch(
      /^19901231T235959Z-x-[0-9a-f]{8}\.jsonl$/,
    );
    expect(sessionFileName(AT, 'x')).not.toBe(sessionFileName(AT, 'x'));
  });
  it('throws on a time or digits that are none, our bug', () => {
    expect(() => sessionFileName('yesterday', 'x')).toThrow('no time');
    expect(() => sessionFileName(AT, 'x', '../../aa')).toThrow('hex');
  });
  it('whatever the words, it is portable and reads back', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (words) => {
        const name = sessionFileName(AT, words, '00000001');
        expect(name).toMatch(/^[0-9]{8}T[0-9]{6}Z-[a-z0-9-]{1,40}-00000001\.jsonl$/);
        expect(sessionPart(name)).toEqual({ stem: name.slice(0, -6), part: 1 });
      }),
      { numRuns: 1000, seed: 9 },
    );
  });
  it.each([
    ['Ünïcödé Motor 1,8 l', 'unicode-motor-1-8-l'],
    ['../../etc/passwd', 'etc-passwd'],
    ['CON', 'x-con'],
    ['lpt1', 'x-lpt1'],
    ['\u202e\u0000;rm -rf', 'rm-rf'],
    ['', 'session'],
    ['🚗', 'session'],
    [`${'a'.repeat(39)} b`, 'a'.repeat(39)],
  ])('the words %j become %s', (words, slug) => expect(slugOf(words)).toBe(slug));
  it('parts are numbered from 2 and other names are none of ours', () => {
    const name = sessionFileName(AT, 'x', '00000001');
    const { stem } = sessionPart(name)!;
    expect(sessionPartName(stem, 1)).toBe(name);
    expect(sessionPart(sessionPartName(stem, 12))).toEqual({ stem, part: 12 });
    for (const other of [
      'x.jsonl',
      `../${name}`,
      `${stem}.part1.jsonl`,
      `${name}.tmp`,
      `${name}\n`,
    ])
      expect(sessionPart(other)).toBeNull();
  });
});
