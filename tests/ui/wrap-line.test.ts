import { expect, it } from 'vitest';
import { columnsOfStream, wrapLine } from '../../src/ui/plain/wrap-line.ts';

const LONG = `Red lead on the signal, black lead on battery negative, ${'with the plug on, '.repeat(4)}end.`;

it('breaks a line at blanks to the width of the terminal, 80 where it says none', () => {
  for (const [columns, width] of [
    [40, 40],
    [0, 80],
  ] as const) {
    const lines = wrapLine(LONG, columns).split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(width);
    expect(lines.join(' ')).toBe(LONG);
  }
});

it('keeps the words of a list below each other', () => {
  expect(wrapLine('  1  the signal wire is broken', 20)).toBe(
    '  1  the signal wire\n     is broken',
  );
});

it('leaves lines to a pipe as they are', () => {
  expect(wrapLine(LONG, columnsOfStream({}))).toBe(LONG);
  expect(columnsOfStream({ isTTY: true, columns: 60 })).toBe(60);
  expect(columnsOfStream({ isTTY: true })).toBe(0);
});
