/**
 * Attacked while a reading is weighed in the background: taken back, left, killed, resized, typed on. Whatever comes, each
 * event that stood in the file before stands there after, and the whole is derived again without a difference.
 */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { readSessionLog } from '../../src/log/read-session.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { LONG, SEED } from '../campaign.ts';
import { makePlace, type Place, PROGRAM, runProgram, sessionFiles } from '../commands/program.ts';
import { type Program, startProgram } from '../terminal/pty.ts';

/** Sessions on each of these, and what is done to each. */
const SESSIONS = LONG ? 8 : 1;
const ATTACKS_EACH = LONG ? 12 : 3;
const TURNS_MAX = 150;
const STEP_MS = 350;
/** The first is weighed fastest, the last takes most. */
const SUBJECTS: readonly (readonly [tree: string, fault: string])[] = [
  ['reluctor-no-signal', 'wire.plus.open'],
  ['throttle-position', 'wire.signal.open'],
  ['wheel-speed-current', 'wire.signal.open'],
  ['hall-no-signal', 'wire.feed.open'],
];

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

const ATTACKS: Readonly<Record<string, (program: Program) => unknown>> = {
  back: (program) => program.type('\x1bOQ'),
  kill: (program) => program.kill('SIGKILL'),
  terminate: (program) => program.kill('SIGTERM'),
  'close the window': (program) => program.hangUp(),
  interrupt: (program) => program.press('ctrl-c'),
  pause: (program) => program.type('\x1b[21~'),
  'ask for suspects': async (program) => {
    program.type('\x1b[15~');
    await wait(STEP_MS);
    program.press('escape');
  },
  'type on': (program) => program.type('\t\r12.3\r\x1bOQ\t\r'),
  resize: async (program) => {
    for (const [columns, rows] of [
      [20, 5],
      [200, 60],
      [40, 10],
      [80, 24],
    ] as const) {
      program.resize(columns, rows);
      await wait(20);
    }
  },
};
const NAMES = Object.keys(ATTACKS);

let place: Place;
beforeEach(() => {
  place = makePlace();
});
afterEach(() => place.remove());

/** A program in a terminal, and whether it has ended. */
function start(args: readonly string[]) {
  const options = { file: PROGRAM, columns: 80, rows: 24, cwd: place.home, env: place.env };
  const program = startProgram({ ...options, args });
  const running = { program, isOver: false };
  void program.exit.then(() => {
    running.isOver = true;
  });
  return running;
}

function linesKept(): readonly string[] {
  const log = readSessionLog(readFileSync(sessionFiles(place)[0]!));
  expect(['whole', 'torn-tail']).toContain(log.verdict);
  return log.events.map((event) => JSON.stringify(event));
}

/** What a person would press here, a reading of the simulated vehicle apart. */
function goOn(program: Program, screen: string): void {
  if (screen.includes('-- more below')) program.press('page-down');
  else if (screen.includes('[y] ')) program.type('y');
  else if (screen.includes('What would you like to do?')) program.type('q');
  else program.press('return');
}

it.each(Array.from({ length: SESSIONS }, (_, number) => number))(
  'session %i loses nothing and says the same again',
  { timeout: 600_000 },
  async (number) => {
    const [tree, fault] = SUBJECTS[number % SUBJECTS.length]!;
    const random = seededRandom(SEED + number);
    const done: Record<string, number> = {};
    let whileWeighed = 0;
    let left = ATTACKS_EACH;
    let kept: readonly string[] = [];
    let running = start(['run', tree, '--bench', fault, '--vehicle', '7']);
    await running.program.waitFor(/\[/, 60_000);
    for (let turn = 0; turn < TURNS_MAX && left > 0; turn += 1) {
      await wait(STEP_MS);
      if (running.isOver) {
        const now = linesKept();
        expect(now.slice(0, kept.length)).toEqual(kept);
        if (now.some((line) => line.includes('"type":"concluded"'))) break;
        running = start(['resume', sessionFiles(place)[0]!]);
        await running.program.waitFor(/\[/, 60_000);
        continue;
      }
      const { program } = running;
      const screen = (await program.screen()).join('\n');
      if (!screen.includes('The simulated vehicle')) {
        goOn(program, screen);
        continue;
      }
      program.press('tab');
      program.press('return');
      await wait(random() * STEP_MS);
      kept = linesKept();
      const name = NAMES[Math.floor(random() * NAMES.length)]!;
      if ((await program.screen()).join('\n').includes('still being weighed')) whileWeighed += 1;
      if (!running.isOver) await ATTACKS[name]!(program);
      done[name] = (done[name] ?? 0) + 1;
      left -= 1;
    }
    if (!running.isOver) running.program.kill('SIGKILL');
    await running.program.exit;
    expect(linesKept().slice(0, kept.length)).toEqual(kept);
    const { code, out, err } = await runProgram(place, [
      'records',
      'verify',
      ...sessionFiles(place),
    ]);
    expect([code, err], out).toEqual([0, '']);
    console.info(
      `${tree}: attacks=${ATTACKS_EACH - left} weighing=${whileWeighed} ${JSON.stringify(done)}`,
    );
  },
);
