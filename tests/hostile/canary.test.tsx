/** No order to a terminal gets from a file or an answer to a terminal, in any view. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type LogEvent, sealEvent } from '../../src/log/event-line.ts';
import { makePlace, type Place, runProgram } from '../commands/program.ts';
import { NAME } from '../log/events.ts';
import { CANARY, canarySession, orderIn, orderInScreen } from './canary-session.ts';
import { walkEveryScreen } from './walk-every-screen.tsx';

/** What is typed into the dialogue: notes, reasons, wrong answers, right ones. A line ends at a line end only. */
const TYPED = CANARY.replaceAll('\r', '').replaceAll('\u000b', '');
const LINES = [
  `note ${TYPED}`,
  TYPED,
  'suspects',
  'next',
  'sketch',
  'done',
  'yes',
  `5 ${TYPED}`,
  `cannot ${TYPED}`,
  'yes',
  TYPED,
  'back',
  'yes',
  '4.98 V',
  'yes',
  '2',
  TYPED,
  'yes',
];

describe('of the program itself, a dialogue over a pipe and what is read afterwards', () => {
  let place: Place;
  let path: string;
  let dialogue: { code: number; out: string; err: string };
  beforeAll(async () => {
    place = makePlace();
    mkdirSync(place.sessions, { recursive: true });
    path = join(place.sessions, NAME);
    writeFileSync(path, `${sealEvent(canarySession() as unknown as LogEvent, 1, null).line}\n`);
    dialogue = await runProgram(place, ['resume', path, '--plain'], `${LINES.join('\n')}\n`);
  });
  afterAll(() => place.remove());

  it('the dialogue shows the texts, and no order in them', () => {
    expect(orderIn(dialogue.out + dialogue.err)).toBeNull();
    for (const where of [
      'procedure',
      'complaint',
      'caution',
      'title',
      'say',
      'why',
      'outcome',
      'repair',
    ])
      expect(dialogue.out).toContain(`${where} CANARY ␛[4711;1H`);
    expect(dialogue.out).toContain('Noted.');
    expect(dialogue.code).toBe(0);
  });

  it('the session file keeps what was typed, to the letter', () => {
    const notes = readFileSync(path, 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as { type: string; text?: string })
      .filter(({ type }) => type === 'note-added');
    expect(notes.map(({ text }) => text)).toEqual([TYPED]);
  });

  it('the transcript', () => {
    const text = readFileSync(path.replace('.jsonl', '.md'), 'utf8');
    expect(text).toContain('CANARY');
    expect(orderIn(text)).toBeNull();
  });

  it.each([
    ['show', 'last'],
    ['show', 'last', '--json'],
    ['list'],
    ['list', '--json'],
    ['find', 'CANARY'],
    ['find', TYPED],
    ['find', '--plate', TYPED],
    ['export', 'last', '--as', 'markdown', '-o', '-'],
    ['export', 'last', '--as', 'csv', '-o', '-'],
    ['export', 'last', '--as', 'html', '-o', '-'],
    ['export', 'last', '--for', 'customer'],
    ['export', 'last', '--for', 'class'],
    ['verify', 'last'],
    ['verify', TYPED],
    [TYPED],
  ])('records %s %s %s', async (...words) => {
    const { out, err } = await runProgram(place, ['records', ...words]);
    expect(out + err).not.toBe('');
    expect(orderIn((out + err).replaceAll('\r\n', '\n'))).toBeNull();
  });

  it.each([
    ['run', TYPED],
    ['resume', TYPED],
    ['check', TYPED],
    ['predict', TYPED],
    ['draw', TYPED],
    ['wave', TYPED],
    ['calc', TYPED],
    ['calc', 'code', TYPED],
    ['calc', 'vin', TYPED],
    ['settings', TYPED],
    ['new', 'procedure', TYPED],
    ['retest', TYPED],
    ['drill', TYPED],
    [TYPED],
    ['--help', TYPED],
    [`--${TYPED}`],
  ])('a wrong word behind %s', async (...words) => {
    const { out, err, code } = await runProgram(place, words);
    expect(orderIn(out + err)).toBeNull();
    expect(code === 0 && out === '').toBe(false);
  });

  it.each(['check', 'predict', 'draw', 'run'])('a file of it, read by %s', async (command) => {
    const file = join(place.home, `bad-${command}.yaml`);
    writeFileSync(
      file,
      `circuit: "${CANARY.replace(/["\\]/g, '')}"\n"${'\u001b]0;4711\u0007'}": [\n`,
    );
    const { out, err } = await runProgram(place, [command, file]);
    expect(out + err).not.toBe('');
    expect(orderIn(out + err)).toBeNull();
  });
});

it('no screen gives an order that is not its own', async () => {
  const frames: string[] = [];
  const { screen, driver } = await walkEveryScreen(
    CANARY,
    { columns: 100, rows: 40 },
    async (one) => {
      frames.push(await one.text());
    },
  );
  expect(screen.crashes).toEqual([]);
  expect(orderInScreen(screen.raw())).toBeNull();
  const all = frames.join('\n');
  for (const where of ['caution', 'say', 'title', 'outcome'])
    expect(all).toContain(`${where} CANARY ␛`);
  expect(driver.session().trail.length).toBeGreaterThan(2);
});
