/** A long line read by its short values; what is compared with is `JSON.parse` over the whole line. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { outlineJson } from '../../src/files/outline-json.ts';

const LONG = 'x'.repeat(10_000);
const outlined = (text: string) => outlineJson(Buffer.from(text));

describe('a line of JSON', () => {
  it.each<[string, object]>([
    ['a short one', { a: 1, b: [1, { c: null }], d: 'é "q" \\ {', e: { f: {} } }],
    ['an empty one', {}],
  ])('%s is read whole', (_, value) => {
    expect(outlined(JSON.stringify(value))).toEqual(value);
  });

  it('keeps the short values beside a long one, whatever signs stand in either', () => {
    const hard = '}]",{"[: \\" 漢 \u2028';
    const value = {
      at: hard,
      b: { [hard]: [hard, { c: hard }] },
      list: [LONG, hard],
      long: `${hard}${LONG}${hard}\\`,
      z: -1.5e-7,
    };
    expect(outlined(JSON.stringify(value))).toEqual({ at: hard, b: value.b, z: -1.5e-7 });
  });

  it('looks into a long object for its short values, and into none within it', () => {
    const value = { tree: { steps: { s1: LONG, s2: 'short' }, title: 'No signal' } };
    expect(outlined(JSON.stringify(value))).toEqual({ tree: { title: 'No signal' } });
  });

  it('has its keys as they are written, that of a prototype too', () => {
    const read = outlined(`{"__proto__":{"a":1},"\\"k\\"":2,"long":"${LONG}"}`) as object;
    expect(Object.entries(read)).toEqual([
      ['__proto__', { a: 1 }],
      ['"k"', 2],
    ]);
    expect(Object.getPrototypeOf(read)).toBe(Object.prototype);
  });

  it.each([
    ['cut within a text', `{"a":1,"long":"${LONG}`],
    ['cut behind a value', `{"a":1,"long":"${LONG}"`],
    ['cut within a list', `{"a":1,"long":["${LONG}",`],
    ['with more behind it', `{"a":1,"long":"${LONG}"}{`],
    ['with a short value that is none', `{"a":tru,"long":"${LONG}"}`],
  ])('%s is none', (_, text) => {
    expect(() => outlined(text)).toThrow(SyntaxError);
  });

  it('gives of the first lines of sessions what lists show, as the whole line has it', () => {
    for (const name of readdirSync('sessions').filter((one) => one.endsWith('.jsonl'))) {
      const file = readFileSync(join('sessions', name));
      const line = file.subarray(0, file.indexOf('\n'));
      const whole = JSON.parse(line.toString('utf8'));
      const read = outlineJson(line) as typeof whole;
      for (const key of ['at', 'type', 'job', 'vehicle', 'person', 'seq', 'prev'])
        expect(read[key]).toEqual(whole[key]);
      expect(read.procedure?.title).toEqual(whole.procedure?.title);
      expect(read.circuit?.title).toEqual(whole.circuit?.title);
    }
  });
});
