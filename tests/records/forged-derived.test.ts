/**
 * A file whose chain was made again over a forged proof, verdict, judgement, evidence, order of times, value beside what
 * was typed, or cautions, by the rules of this program: every command that reads sessions names it, or says of what it
 * shows that nobody recomputed it.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { PIECES_NEEDED, type SessionEvent } from '../../src/session/events.ts';
import { makePlace, type Place, type Ran, runProgram } from '../commands/program.ts';
import { FINISHED, fileOf } from './sample-session.ts';
import { TRUE_PROCEDURE, trueWalk } from './true-walk.ts';

const NAME = '20260304T083000Z-lab-00000001';

let place: Place;
beforeEach(() => {
  place = makePlace();
  mkdirSync(place.sessions, { recursive: true });
});
afterEach(() => place.remove());

/** Up to the conclusion, and up to the first reading. */
const CONCLUDED = upTo('concluded');
const BEGUN = upTo('reading-recorded');

function upTo(type: SessionEvent['type']): readonly SessionEvent[] {
  const { events } = trueWalk({}, FINISHED);
  return events.slice(0, events.findIndex((event) => event.type === type) + 1);
}

type Change = (event: SessionEvent) => SessionEvent | readonly SessionEvent[];

function forged(events: readonly SessionEvent[], change: Change): string {
  const path = join(place.sessions, `${NAME}.jsonl`);
  writeFileSync(path, fileOf({ events: events.flatMap(change) }).text);
  return path;
}

function run(...args: string[]): Promise<Ran> {
  return runProgram(place, args);
}

const at = (events: readonly SessionEvent[], type: SessionEvent['type']) =>
  events.findIndex((event) => event.type === type) + 1;

const EVIDENCE = CONCLUDED.flatMap((event, index) =>
  event.type === 'reading-recorded' ||
  event.type === 'look-recorded' ||
  event.type === 'test-recorded'
    ? [{ reading: index + 1, counted: true }]
    : [],
).slice(0, PIECES_NEEDED);

const proven: Change = (event) =>
  event.type === 'concluded' ? { ...event, proven: true, evidence: EVIDENCE } : event;

/** What follows from the event before it, and is seen by whoever reads the file. */
describe.each<[what: string, events: readonly SessionEvent[], change: Change, words: RegExp]>([
  [
    'a verdict over the repair',
    CONCLUDED,
    (event) =>
      event.type === 'concluded'
        ? [event, { ...whenOf(event), type: 'session-closed', verdict: 'cured' }]
        : event,
    /closes with "cured", but the tests after the repair give "no-retest"/,
  ],
  [
    'the judgement of a reading',
    BEGUN,
    (event) => (event.type === 'reading-recorded' ? { ...event, outcome: 'low' } : event),
    /outcome|judge|goes on/,
  ],
  [
    'a caution that nobody read',
    BEGUN,
    (event) => (event.type === 'caution-acknowledged' ? [] : event),
    /could not have happened/,
  ],
  [
    'the value of what was typed',
    BEGUN,
    (event) => (event.type === 'reading-recorded' ? { ...event, typed: '4.96' } : event),
    /was typed "4.96", which is not 4.97 V/,
  ],
  [
    'the order of times',
    BEGUN,
    (event) => (event.type === 'reading-recorded' ? { ...event, elapsed: 0 } : event),
    /ms before the event before it/,
  ],
  [
    'the cautions of the tree',
    BEGUN,
    (event) =>
      event.type === 'session-opened'
        ? { ...event, procedure: withoutCautions('cranking'), cautionRules: [] }
        : event.type === 'caution-acknowledged'
          ? []
          : event,
    /warns of no rotating-parts before the step "prepare"/,
  ],
])('%s', (_, events, change, words) => {
  it.each([
    ['verify', ['records', 'verify', NAME]],
    ['export', ['records', 'export', NAME]],
    ['resume', ['resume', NAME, '--plain']],
    ['resume for a program', ['resume', NAME, '--rpc']],
    ['retest', ['retest', NAME, '--plain']],
  ])('is refused by %s, and the file stays as it is', async (_verb, args) => {
    const path = forged(events, change);
    const before = readFileSync(path);
    const { code, out, err } = await run(...args);
    expect(code).toBe(1);
    expect(out + err).toMatch(words);
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});

/** What takes the circuit's model and seconds. */
describe.each<[what: string, change: Change, words: RegExp]>([
  ['a proof', proven, /is called proven, and is not proven/],
  [
    'evidence',
    (event) => (event.type === 'concluded' ? { ...event, evidence: EVIDENCE } : event),
    /has other evidence than the readings give/,
  ],
])('%s', (_, change, words) => {
  it.each([
    ['verify', ['records', 'verify', NAME]],
    ['export', ['records', 'export', NAME, '--for', 'customer']],
    ['compare', ['records', 'compare', NAME, NAME]],
  ])('is refused by %s', async (_verb, args) => {
    forged(CONCLUDED, change);
    const { code, out, err } = await run(...args);
    expect(code).toBe(1);
    expect(out + err).toMatch(words);
  });
});

describe('a forged proof is not claimed where nothing is recomputed', () => {
  beforeEach(() => {
    forged(CONCLUDED, proven);
  });
  const AS_FILED = /as its file has it, not recomputed/;
  const CLAIMED = /at least three independent tests agree|(?<!called )proven by \d/i;

  it('by show, its sentences for the telephone included', async () => {
    const { out } = await run('records', 'show', NAME, '--json');
    const { conclusion, call } = JSON.parse(out);
    expect(conclusion.judgedBy.again).toBe('not');
    expect(call.join(' ')).not.toMatch(CLAIMED);
  });

  it('by the list', async () => {
    const { out } = await run('records', 'list', '--json');
    expect(JSON.parse(out).sessions[0]).toMatchObject({ proven: true, recomputed: false });
  });

  it.each([
    ['resume', ['resume', NAME, '--plain']],
    ['retest', ['retest', NAME, '--plain']],
  ])('by %s', async (_verb, args) => {
    const { out } = await run(...args);
    expect(out).toMatch(AS_FILED);
    expect(out).not.toMatch(CLAIMED);
  });

  it('by resume as JSON', async () => {
    const { out } = await run('resume', NAME, '--plain', '--json');
    const record = JSON.parse(out.slice(out.indexOf('{')));
    expect(record.conclusion.judgedBy.again).toBe('not');
  });

  it('to another program', async () => {
    const { out } = await runProgram(
      place,
      ['resume', NAME, '--rpc'],
      '{"jsonrpc":"2.0","id":1,"method":"state"}\n',
    );
    const { result } = JSON.parse(out.trim().split('\n').at(-1)!);
    expect(result.state.concluded).toMatchObject({ proven: true, recomputed: false });
  });

  it('by the transcript beside the file', async () => {
    const path = forged(CONCLUDED, proven);
    await runProgram(place, ['retest', NAME, '--plain'], 'yes\n4.99\npause\n');
    const text = readFileSync(path.replace(/jsonl$/, 'md'), 'utf8');
    expect(text).toMatch(AS_FILED);
    expect(text).not.toMatch(CLAIMED);
  });
});

it('an honest file is read by all of them', async () => {
  forged(CONCLUDED, (event) => event);
  for (const verb of ['verify', 'export', 'show'])
    expect([verb, (await run('records', verb, NAME)).code]).toEqual([verb, 0]);
  expect((await run('resume', NAME, '--plain')).code).toBe(0);
  expect(at(CONCLUDED, 'concluded')).toBe(CONCLUDED.length);
});

function whenOf({ at: time, elapsed }: SessionEvent) {
  return { at: time, elapsed };
}

/** The tree with this state at its first step, and no caution anywhere. */
function withoutCautions(state: 'cranking') {
  const steps = Object.fromEntries(
    Object.entries(TRUE_PROCEDURE.steps).map(([id, step]) => {
      if (step.kind === 'conclude' || !('cautions' in step)) return [id, step];
      const setup = id === 'prepare' ? { ...step.setup, state } : step.setup;
      return [id, { ...step, setup, cautions: [] }];
    }),
  ) as typeof TRUE_PROCEDURE.steps;
  return { ...TRUE_PROCEDURE, steps };
}
