import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { readSessionLog } from '../../src/log/read-session.ts';
import {
  eventsOf,
  makePlace,
  type Place,
  PROGRAM,
  runProgram,
  sessionFiles,
  timeless,
} from '../commands/program.ts';
import { type Program, startProgram } from './pty.ts';

const BENCH = ['run', 'hall-no-signal', '--bench', 'wire.signal.open', '--seed', '7'];
const TURNS_MAX = 120;

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

/** Does on the screen what a person would: acknowledges, takes over what the vehicle shows, accepts. */
async function walkOnScreen(program: Program): Promise<void> {
  for (let turn = 0; turn < TURNS_MAX; turn += 1) {
    const before = (await program.screen()).join('\n');
    if (before.includes('Saved: ')) return;
    if (before.includes('[y] ')) program.type('y');
    else if (/Enter\] done/.test(before)) program.press('return');
    else if (before.includes('The simulated vehicle')) {
      program.press('tab');
      program.press('return');
    } else program.press('return');
    await changed(program, before);
  }
  throw new Error(`no end after ${TURNS_MAX} turns:\n${(await program.screen()).join('\n')}`);
}

/** Waits until the screen is another one; a key that came too early for a caution is pressed again by the caller. */
async function changed(program: Program, before: string): Promise<void> {
  for (let wait = 0; wait < 40; wait += 1) {
    await new Promise((resolve) => setTimeout(resolve, 25));
    if ((await program.screen()).join('\n') !== before) return;
  }
}

it('a whole session at 80x24 ends saved, with the same events as without a screen', async () => {
  const program = startProgram({
    file: PROGRAM,
    args: BENCH,
    columns: 80,
    rows: 24,
    cwd: place.home,
    env: place.env,
  });
  await program.waitFor('Hall');
  await walkOnScreen(program);
  const { code } = await program.exit;
  expect(code).toBe(0);
  const [path] = sessionFiles(place);
  const log = readSessionLog(readFileSync(path!));
  expect(log.verdict).toBe('whole');
  const shown = eventsOf(path!);
  expect(shown.find(({ type }) => type === 'concluded')).toMatchObject({
    faults: expect.arrayContaining(['wire.signal.open']),
  });
  expect(readFileSync(path!.replace('.jsonl', '.md'), 'utf8')).toContain('Conclusion');

  const other = makePlace();
  try {
    runProgram(other, [...BENCH, '--unattended']);
    const plain = eventsOf(sessionFiles(other)[0]!);
    expect(timeless(shown)).toEqual(timeless(plain));
  } finally {
    other.remove();
  }
}, 60_000);

it('the start screen offers a simulated vehicle and leaves cleanly', async () => {
  const program = startProgram({
    file: PROGRAM,
    args: [],
    columns: 80,
    rows: 24,
    cwd: place.home,
    env: place.env,
  });
  await program.waitFor('simulated vehicle');
  program.type('q');
  expect((await program.exit).code).toBe(0);
});
