/** The line that says how far a command is: on a terminal, after a second, and taken away again. */
import { expect, test } from 'vitest';
import { progressOn } from '../../src/commands/progress.ts';

/** A progress with a clock of its own; `columns` null is no terminal. */
function shown(columns: number | null, env: Record<string, string> = {}) {
  let time = 0;
  const said: string[] = [];
  const progress = progressOn(
    {
      out: () => {},
      err: (text) => void said.push(text),
      env,
      cwd: '.',
      ...(columns === null ? {} : { terminal: { columns: () => columns } }),
    },
    () => time,
  );
  const at = (ms: number, what: string, share: number) => {
    time = ms;
    progress.at(what, share);
  };
  return { said, at, end: progress.end };
}
const FRESH = '\r\u001b[K';

test('what takes less than a second says nothing', () => {
  const { said, at, end } = shown(80);
  at(0, 'proving a', 0);
  at(999, 'proving a', 0.9);
  end();
  expect(said).toEqual([]);
});

test('what takes longer says what it does and how much is done, ten times a second at most', () => {
  const { said, at, end } = shown(80);
  at(1000, 'proving a.yaml (1 of 2)', 0.256);
  at(1099, 'proving a.yaml (1 of 2)', 0.3);
  at(1100, 'proving b.yaml (2 of 2)', 1);
  end();
  expect(said).toEqual([
    `${FRESH}proving a.yaml (1 of 2) 25 %`,
    `${FRESH}proving b.yaml (2 of 2) 100 %`,
    FRESH,
  ]);
});

test('the second counts anew after an end', () => {
  const { said, at, end } = shown(80);
  at(5000, 'proving a', 0.5);
  end();
  at(5900, 'proving a', 0.5);
  expect(said).toHaveLength(2);
});

test('a pipe, and a terminal that cannot take a line back, get nothing', () => {
  for (const { said, at, end } of [shown(null), shown(80, { TERM: 'dumb' })]) {
    at(9000, 'proving a', 0.5);
    end();
    expect(said).toEqual([]);
  }
});

test('a line never fills the terminal, and what it names cannot command it', () => {
  const { said, at } = shown(20);
  at(2000, `proving ${'a'.repeat(99)}`, 0.5);
  expect(said).toEqual([`${FRESH}${'proving aaaaaaaaaaaaaa'.slice(0, 14)} 50 %`]);
  const evil = shown(80);
  evil.at(2000, 'proving \u001b[2Ja', 0.5);
  expect(evil.said[0]!.slice(FRESH.length)).not.toContain('\u001b');
});
