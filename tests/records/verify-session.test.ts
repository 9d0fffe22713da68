import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { readRecord } from '../../src/records/read-record.ts';
import { verifySession } from '../../src/records/verify-session.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { begin, fileOf, finishedWalk, weighed } from './sample-session.ts';
import { TRUE_PROCEDURE, trueWalk } from './true-walk.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ohmward-verify-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function saved(text: string): string {
  const path = join(folder, '20260304T083000Z-lab-00000001.jsonl');
  writeFileSync(path, text);
  return path;
}

/** A file whose chain is right in itself, as a forger writes it. */
function forged(change: (events: SessionEvent[]) => unknown[]): string {
  const events = change(structuredClone([...finishedWalk().events]) as SessionEvent[]);
  return saved(fileOf({ events: events as SessionEvent[] }).text);
}

const BEGUN = begin({ procedure: TRUE_PROCEDURE });

describe('a session as it was', () => {
  const whole = fileOf(trueWalk());

  it('passes every check, with the head from a report too', () => {
    const { text, head } = whole;
    const result = verifySession(nodeDisk, saved(text), { hash: head.hash });
    expect(result).toMatchObject({ genuine: true, firstBad: null, head });
    expect(result.checks.map(({ name, passed }) => [name, passed])).toEqual([
      ['chain', true],
      ['head', true],
      ['events', true],
      ['history', true],
      ['derived', true],
    ]);
  });

  it('an unfinished one passes as well', () => {
    expect(verifySession(nodeDisk, saved(fileOf(BEGUN).text)).genuine).toBe(true);
  });

  it('one whose last line is cut off passes, and is told to be mended', () => {
    const { text } = fileOf(BEGUN);
    const [chain] = verifySession(nodeDisk, saved(`${text}{"type":"note-`)).checks;
    expect(chain?.words).toContain('resuming the session repairs it');
    const lines = text.split('\n');
    const damaged = [lines[0]!.replace('"seq":1', '"seq":7'), ...lines.slice(1)].join('\n');
    const [broken] = verifySession(nodeDisk, saved(damaged)).checks;
    expect(broken).toMatchObject({ name: 'chain', passed: false });
    expect(broken?.words).not.toContain('resuming');
  });

  it('one that grew since the report still holds the noted head', () => {
    const early = fileOf(BEGUN).head;
    const result = verifySession(nodeDisk, saved(whole.text), {
      hash: early.hash,
    });
    expect(result.genuine).toBe(true);
    expect(result.checks[1]?.words).toContain('went on after it');
  });
});

describe('a session that was changed', () => {
  it('names the line that was edited', () => {
    const { text } = fileOf(finishedWalk());
    const path = saved(text.replace('the light is on loan', 'the light is on LOAN'));
    const result = verifySession(nodeDisk, path);
    expect(result).toMatchObject({ genuine: false, firstBad: { path, line: 4 } });
  });

  it('shows lines cut off the end against a noted head', () => {
    const { text, head } = fileOf(trueWalk());
    const path = saved(`${text.split('\n').slice(0, -2).join('\n')}\n`);
    expect(verifySession(nodeDisk, path).genuine).toBe(true); // the file alone cannot tell
    expect(verifySession(nodeDisk, path, { hash: head.hash })).toMatchObject({ genuine: false });
  });

  it('says so where only the rules that the file names make the difference', () => {
    const events = trueWalk().events.map((event, index) => {
      if (event.type === 'session-opened') return { ...event, rules: event.rules - 1 };
      return event.type === 'reading-recorded' && index === 2 ? { ...event, typed: '9' } : event;
    });
    const { genuine, checks } = verifySession(nodeDisk, saved(fileOf({ events }).text));
    expect({ genuine, checks }).toMatchObject({ genuine: true });
    expect(checks.at(-1)).toMatchObject({
      name: 'derived',
      differs: true,
      words: expect.stringMatching(
        /^recomputed by our rules, which are not those of the file, not all is the same: event 3 was typed "9"/,
      ),
    });
  });

  it.each<[string, number, (events: SessionEvent[]) => unknown[], RegExp]>([
    [
      'another conclusion',
      12,
      (events) =>
        events.map((event) =>
          event.type === 'concluded'
            ? { ...event, conclusion: 'signal-open', faults: ['wire.signal.open'] }
            : event,
        ),
      /concludes "signal-open", but the readings lead to "feed-low"/,
    ],
    [
      'another outcome of a reading',
      9,
      (events) =>
        events.map((event, i) =>
          i === 8 && event.type === 'reading-recorded'
            ? { ...event, go: 'light', outcome: 'good' }
            : event,
        ),
      /has the outcome "good", and "low" by the same rules/,
    ],
    [
      'a reading changed after the fact',
      9,
      (events) =>
        events.map((event, i) =>
          i === 8 && event.type === 'reading-recorded' ? { ...event, value: 5 } : event,
        ),
      /is judged "low", and is "good" by the same rules/,
    ],
    [
      'a retest that failed after all',
      14,
      (events) =>
        events.map((event) =>
          event.type === 'retest-recorded' && event.step === 'feed'
            ? { ...event, passed: false }
            : event,
        ),
      /fails by the file, and passes by the same rules/,
    ],
    [
      'a caution acknowledged too late',
      2,
      (events) => events.filter((event) => event.type !== 'caution-acknowledged'),
      /could not have happened/,
    ],
    [
      'an answer to a step nobody asked',
      3,
      (events) => events.map((event, i) => (i === 2 ? { ...event, step: 'ground' } : event)),
      /does not follow/,
    ],
    [
      'an unknown event',
      3,
      (events) => [...events.slice(0, 2), { ...events[2], type: 'price-set' }],
      /unknown type/,
    ],
    [
      'a number as a note',
      10,
      (events) =>
        events.map((event) => (event.type === 'note-added' ? { ...event, text: 5 } : event)),
      /"text"/,
    ],
    [
      'a step of an unknown kind',
      1,
      (events) =>
        events.map((event) =>
          event.type === 'session-opened'
            ? { ...event, procedure: { ...event.procedure, steps: { feed: { kind: 'magic' } } } }
            : event,
        ),
      /procedure\.steps\.feed\.kind/,
    ],
    [
      'a procedure that leads nowhere',
      1,
      (events) =>
        events.map((event) =>
          event.type === 'session-opened'
            ? { ...event, procedure: { ...event.procedure, start: 'nowhere' } }
            : event,
        ),
      /./,
    ],
  ])('with a new chain: %s, line %i', (_, line, change, words) => {
    const path = forged(change);
    const result = verifySession(nodeDisk, path);
    expect(result.genuine).toBe(false);
    expect(result.checks[0]?.passed).toBe(true); // the chain itself is right
    expect(result.firstBad?.line).toBe(line);
    expect(result.firstBad?.words).toMatch(words);
    // Without a first event there is no record to show; with one it is told as damaged.
    const read = readRecord(nodeDisk, path);
    expect(read.ok ? read.state : 'no first event').toBe(line > 1 ? 'damaged' : 'no first event');
  });

  it('a judgement that the same rules do not give is false', () => {
    const path = forged((events) => events.map(judgedBorderline));
    const result = verifySession(nodeDisk, path);
    expect(result).toMatchObject({ genuine: false, firstBad: { line: 9 } });
    expect(result.firstBad?.words).toContain('is judged "borderline", and is "low"');
  });

  it('a judgement of other rules is told and is no damage', () => {
    const path = forged((events) =>
      events
        .map(judgedBorderline)
        .map((event) => (event.type === 'session-opened' ? { ...event, rules: 1 } : event)),
    );
    const result = verifySession(nodeDisk, path);
    expect(result.genuine).toBe(true);
    expect(result.checks.find(({ name }) => name === 'history')?.words).toContain(
      'event 9 as judged by rules 1: reading "borderline"; today\'s say "low"',
    );
  });
});

/** The reading of 0.02 V, which is far below what is good. */
function judgedBorderline(event: SessionEvent, at: number): SessionEvent {
  return at === 8 && event.type === 'reading-recorded'
    ? { ...event, judgement: { verdict: 'borderline', chance: 0.4 } }
    : event;
}

it('a session over two parts is one session, and its bad line is found in the right file', () => {
  const [first, ...rest] = finishedWalk().events;
  const begun = createSession(nodeDisk, folder, '20260304T083000Z-lab-00000002.jsonl', first!);
  if (!begun.ok) throw new Error(begun.problem.words);
  for (const event of rest.slice(0, 5)) begun.value.append(event);
  const next = begun.value.continueIn(folder);
  if (!next.ok) throw new Error(next.problem.words);
  const { writer } = next.value;
  // The link between the parts is an event too, and what the conclusion rests on comes one later.
  for (const event of rest.slice(5, -1))
    writer.append(event.type === 'concluded' ? { ...event, ...weighed(10, 12) } : event);
  const { at, elapsed } = rest.at(-1)!;
  const failed: SessionEvent = {
    type: 'retest-recorded',
    step: 'feed',
    typed: '',
    value: 5,
    look: null,
    outcome: 'good',
    passed: false,
    at,
    elapsed,
  };
  writer.append(failed);
  const result = verifySession(nodeDisk, writer.path);
  expect(result.paths).toHaveLength(2);
  // part 2: the continuation, then 9 events, then the bad one
  expect(result.firstBad).toMatchObject({ path: writer.path, line: 11 });
  const read = readRecord(nodeDisk, writer.path);
  expect(read).toMatchObject({ ok: true, state: 'damaged', record: { status: 'concluded' } });
});

it('what is no session at all gives words', () => {
  expect(verifySession(nodeDisk, join(folder, 'none.jsonl'))).toMatchObject({
    genuine: false,
    events: 0,
  });
  expect(verifySession(nodeDisk, saved('rubbish\n'))).toMatchObject({
    genuine: false,
    firstBad: { line: 1 },
  });
  expect(readRecord(nodeDisk, saved(''))).toMatchObject({ ok: false });
});
