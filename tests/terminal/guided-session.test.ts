import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { readSessionLog } from '../../src/log/read-session.ts';
import { QUIET_MS } from '../../src/ui/screens/deliberate-state.ts';
import { LONG } from '../campaign.ts';
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

// The circuit on which a session takes least.
const BENCH = ['run', 'reluctor-no-signal', '--bench', 'wire.plus.open', '--vehicle', '7'];
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
    // A session begun on the start screen ends there.
    if (before.includes('What would you like to do?')) {
      program.type('q');
      return;
    }
    if (before.includes('-- more below')) program.press('page-down');
    else if (before.includes('[y] ')) program.type('y');
    else if (/Enter\] done/.test(before)) program.press('return');
    else if (before.includes('The simulated vehicle')) {
      program.press('tab');
      program.press('return');
    } else program.press('return');
    await changed(program, before);
  }
  throw new Error(`no end after ${TURNS_MAX} turns:\n${(await program.screen()).join('\n')}`);
}

/**
 * Waits until the screen is another one, or so long that a key that came too early for a deliberate answer counts when
 * the caller presses it again.
 */
async function changed(program: Program, before: string): Promise<void> {
  const end = performance.now() + QUIET_MS + 50;
  while (performance.now() < end) {
    await new Promise((resolve) => setTimeout(resolve, 20));
    if ((await program.screen()).join('\n') !== before) return;
  }
}

// In every run the session from the start screen, below; here the same against a run without a screen.
it.runIf(LONG)(
  'a whole session at 80x24 ends saved, with the same events as without a screen',
  async () => {
    const program = startProgram({
      file: PROGRAM,
      args: BENCH,
      columns: 80,
      rows: 24,
      cwd: place.home,
      env: place.env,
    });
    await program.waitFor('Before you go on');
    await walkOnScreen(program);
    const { code } = await program.exit;
    expect(code).toBe(0);
    const [path] = sessionFiles(place);
    const log = readSessionLog(readFileSync(path!));
    expect(log.verdict).toBe('whole');
    const shown = eventsOf(path!);
    expect(shown.find(({ type }) => type === 'concluded')).toMatchObject({
      faults: expect.arrayContaining(['wire.plus.open']),
    });
    expect(readFileSync(path!.replace('.jsonl', '.md'), 'utf8')).toContain('Conclusion');

    const other = makePlace();
    try {
      await runProgram(other, [...BENCH, '--unattended']);
      const plain = eventsOf(sessionFiles(other)[0]!);
      expect(timeless(shown)).toEqual(timeless(plain));
    } finally {
      other.remove();
    }
  },
  60_000,
);

it('from the start screen to the saved transcript: a demo vehicle with an open signal wire', async () => {
  const program = startProgram({
    file: PROGRAM,
    args: [],
    columns: 80,
    rows: 24,
    cwd: place.home,
    env: place.env,
  });
  await program.waitFor('simulated vehicle');
  program.type('2');
  await choose(program, 'Which simulated vehicle', 'Akerlund');
  await choose(program, 'What is wrong', 'find it yourself');
  await walkOnScreen(program);
  expect((await program.exit).code).toBe(0);
  const [path] = sessionFiles(place);
  const events = eventsOf(path!);
  expect(events[0]).toMatchObject({ job: { codes: expect.arrayContaining(['P0335']) } });
  expect(events.find(({ type }) => type === 'concluded')).toMatchObject({
    faults: expect.arrayContaining(['wire.signal.open']),
  });
  const transcript = readFileSync(path!.replace('.jsonl', '.md'), 'utf8');
  for (const part of ['Akerlund', 'Measurements', 'Cautions', 'Conclusion'])
    expect(transcript).toContain(part);
  const shown = await runProgram(place, ['records', 'show', path!]);
  expect(shown).toMatchObject({ code: 0 });
  expect(shown.out).toContain('Akerlund');
}, 60_000);

/** Types into the search of a list until it stands alone, and takes it. */
async function choose(program: Program, title: string, words: string): Promise<void> {
  await program.waitFor(title);
  program.type(words);
  await program.waitFor(new RegExp(`> .*${words}`));
  program.press('return');
}

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
