/** Times against RFC 3339. */
import { describe, expect, it } from 'vitest';
import { isRfc3339 } from '../../src/log/event-line.ts';

describe('RFC 3339, section 5.8', () => {
  // The five examples of the section; from memory.
  it.each([
    '1985-04-12T23:20:50.52Z',
    '1996-12-19T16:39:57-08:00',
    '1990-12-31T23:59:60Z',
    '1990-12-31T15:59:60-08:00',
    '1937-01-01T12:00:27.87+00:20',
  ])('%s is a time', (text) => expect(isRfc3339(text)).toBe(true));
});

describe('the grammar of section 5.6 and the limits of 5.7 refuse', () => {
  it.each([
    ['no offset', '1996-12-19T16:39:57'],
    ['no seconds', '1996-12-19T16:39Z'],
    ['offset without colon', '1996-12-19T16:39:57-0800'],
    ['blank for T', '1996-12-19 16:39:57Z'],
    ['month 13', '1996-13-19T16:39:57Z'],
    ['day 0', '1996-12-00T16:39:57Z'],
    ['30 February', '1996-02-30T16:39:57Z'],
    ['29 February of a common year', '1900-02-29T16:39:57Z'],
    ['hour 24', '1996-12-19T24:00:00Z'],
    ['second 61', '1996-12-19T16:39:61Z'],
    ['dot without digits', '1996-12-19T16:39:57.Z'],
    ['a line feed behind', '1996-12-19T16:39:57Z\n'],
  ])('%s', (_what, text) => expect(isRfc3339(text)).toBe(false));
  // 5.7: February has 29 days in leap years; 2000 is one, 1900 is not (appendix C).
  it('but not 29 February 2000', () => expect(isRfc3339('2000-02-29T00:00:00+14:00')).toBe(true));
});
