/**
 * Lines forged with a right chain, given to every command that reads sessions: each tells where the file cannot be
 * believed, with a way out, and writes nothing.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { SessionEvent } from '../../src/session/events.ts';
import { sealed } from '../log/events.ts';
import { programHome } from './program-home.ts';
import { begin, fileOf } from './sample-session.ts';
import { TRUE_PROCEDURE } from './true-walk.ts';

const { path: home, program } = programHome();

const NAME = '20260304T083000Z-lab-00000001';

/** An open session: opened, cautions, a reading of 4.97 V at the step "feed", a note at the step "light". */
const HONEST: readonly SessionEvent[] = begin({ procedure: TRUE_PROCEDURE }).do(
  { type: 'acknowledge-cautions' },
  { type: 'record-reading', typed: '4.97', value: 4.97 },
  { type: 'add-note', text: 'The plug was green inside.' },
).events;

/** The same with one event changed, or one more. */
function changed(at: number, part: object): readonly object[] {
  return HONEST.map((event, index) =>
    index === at
      ? Object.fromEntries(
          Object.entries({ ...event, ...part }).filter(([, value]) => value !== undefined),
        )
      : event,
  );
}

const LAST = { at: HONEST.at(-1)!.at, elapsed: HONEST.at(-1)!.elapsed };
const more = (event: object) => [...HONEST, { ...event, ...LAST }];

const FORGED: readonly (readonly [
  what: string,
  events: readonly object[],
  line: number,
  words: RegExp,
])[] = [
  ['an unknown event', more({ type: 'price-set' }), 5, /is of the unknown type "price-set"/],
  [
    'a step that there is not',
    more({ type: 'note-added', step: 'nowhere', text: 'x' }),
    5,
    /names a step that the procedure does not have, "nowhere"/,
  ],
  [
    'a step that leads nowhere',
    changed(2, { go: 'nowhere' }),
    3,
    /goes on to "nowhere", where the outcome leads to "light"/,
  ],
  ['a missing field', changed(3, { text: undefined }), 4, /lacks "text"/],
  ['a field too many', changed(3, { price: 5 }), 4, /has "price", which no event has/],
  ['a value of the wrong type', changed(2, { value: '4.97' }), 3, /has no valid "value"/],
  ['a time that is none of ours', more({ type: 'session-paused', extra: {} }), 5, /has "extra"/],
  [
    'a newer format from the start',
    changed(0, { format: 3 }),
    1,
    /newer version of this program \(format 3\)/,
  ],
  [
    'a newer format further on',
    more({ type: 'session-resumed', program: '9', format: 3, rules: 9, by: 'person' }),
    5,
    /newer version of this program \(format 3\)/,
  ],
  ['a format that is none', changed(0, { format: 'two' }), 1, /has no valid "format"/],
  ['no format', changed(0, { format: undefined }), 1, /lacks "format"/],
  [
    'a circuit without its sensor',
    changed(0, { circuit: bare() }),
    1,
    /has no one sensor \(circuit\.parts\)/,
  ],
  ['terminal codes for a name', more({ type: '\u001b[2J\u001b]0;x\u0007' }), 5, /unknown type/],
];

function bare() {
  const [opened] = HONEST;
  return opened?.type === 'session-opened' ? { ...opened.circuit, parts: [] } : null;
}

const COMMANDS: readonly (readonly string[])[] = [
  ['resume', NAME, '--plain'],
  ['retest', NAME, '--plain'],
  ['records', 'verify', NAME],
  ['records', 'show', NAME],
  ['records', 'export', NAME],
  ['records', 'export', NAME, '--as', 'json'],
  ['records', 'compare', NAME, NAME],
  ['drill', '--resume', 'PATH'],
];

describe.each(FORGED)('%s', (_, events, line, words) => {
  it.each(COMMANDS.map((args) => [args.join(' '), args] as const))('%s', async (_what, args) => {
    const path = join(home(), `${NAME}.jsonl`);
    writeFileSync(path, sealed(events).text);
    const before = readFileSync(path);
    for (let time = 0; time < 2; time += 1) {
      const { code, out, err } = await program(...args.map((arg) => (arg === 'PATH' ? path : arg)));
      const told = out + err;
      expect(code).toBe(1);
      expect(told).toContain(`${NAME}.jsonl:${line}`);
      expect(told).toMatch(words);
      expect(told).not.toMatch(/\u001b|fault of the program/);
      expect(told).toMatch(
        /keep the file|use that version|go on with that version|drills are .jsonl files/i,
      );
      expect(readFileSync(path).equals(before)).toBe(true);
      expect(readdirSync(home()).filter((name) => name.startsWith(NAME))).toEqual([
        `${NAME}.jsonl`,
      ]);
    }
  });
});

it('an honest file is gone on with', async () => {
  writeFileSync(join(home(), `${NAME}.jsonl`), fileOf({ events: HONEST }).text);
  for (const verb of ['verify', 'show', 'export'])
    expect([verb, (await program('records', verb, NAME)).code]).toEqual([verb, 0]);
});

it('a torn tail is not cut off a file that is refused', async () => {
  const path = join(home(), `${NAME}.jsonl`);
  writeFileSync(path, `${sealed(more({ type: 'price-set' })).text}{"at":"2026-`);
  const before = readFileSync(path);
  const { code, err } = await program('resume', NAME, '--plain');
  expect(code).toBe(1);
  expect(err).toContain(`${NAME}.jsonl:5`);
  expect(readFileSync(path).equals(before)).toBe(true);
  expect(readdirSync(home()).some((name) => name.includes('torn'))).toBe(false);
});
