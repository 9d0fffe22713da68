/** Bytes as lines. */
import { expect, it } from 'vitest';
import { lineSplitter, type SplitLine } from '../../src/ui/rpc/line-splitter.ts';
import fc from '../seeded-check.ts';

/** All lines of these pieces of a stream. */
function linesOf(pieces: readonly Uint8Array[], most = 1000): SplitLine[] {
  const splitter = lineSplitter(most);
  const lines = pieces.flatMap((piece) => splitter.push(piece));
  const last = splitter.end();
  return last ? [...lines, last] : lines;
}
const bytes = (text: string) => new TextEncoder().encode(text);

it('the lines of a text are the same however it arrives', () => {
  const text = fc.string({ unit: 'grapheme' });
  fc.assert(
    fc.property(fc.array(text), fc.array(fc.nat(40)), (parts, cuts) => {
      const whole = parts.map((part) => part.replaceAll('\r', '')).join('\n');
      const all = bytes(whole);
      let from = 0;
      const pieces = cuts.map((cut) => {
        const piece = all.subarray(from, from + cut);
        from += cut;
        return piece;
      });
      const wanted = whole.split('\n');
      if (wanted.at(-1) === '') wanted.pop();
      expect(linesOf([...pieces, all.subarray(from)], 1e6)).toEqual(
        wanted.map((line) => ({ text: line })),
      );
    }),
  );
});

it('only a line feed ends a line, with or without a carriage return before it', () => {
  expect(linesOf([bytes('a\u2028b\rc\r\nd')])).toEqual([{ text: 'a\u2028b\rc' }, { text: 'd' }]);
});

it('a line that is too long is told once, and the next one is whole again', () => {
  const long = bytes('x'.repeat(7));
  expect(linesOf([long, long, bytes('\n12345678\n123456789\nok')], 8)).toEqual([
    { odd: 'too-long' },
    { text: '12345678' },
    { odd: 'too-long' },
    { text: 'ok' },
  ]);
});

it('bytes that are no UTF-8 are told', () => {
  expect(linesOf([Uint8Array.of(0x22, 0xc3, 0x28, 0x0a, 0x31)])).toEqual([
    { odd: 'no-text' },
    { text: '1' },
  ]);
});

it('memory that the stream uses again does no harm', () => {
  const splitter = lineSplitter(100);
  const memory = bytes('abc');
  splitter.push(memory);
  memory.fill(0x7a);
  expect(splitter.push(bytes('\n'))).toEqual([{ text: 'abc' }]);
});
