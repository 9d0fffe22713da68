/** Words of the command line at the end of a session: where it comes from, how sure it is, and what came of it days later. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { handAtInput } from '../../src/commands/session/hand-at-input.ts';
import { begin, fileOf, finishedWalk, type Walk } from '../records/sample-session.ts';
import { TRUE_PROCEDURE } from '../records/true-walk.ts';
import { eventsOf, makePlace, runProgram } from './program.ts';

const place = makePlace();
afterAll(place.remove);

function saved(walk: Walk, name: string): string {
  mkdirSync(place.sessions, { recursive: true });
  const path = join(place.sessions, `20260304T083000Z-${name}-00000001.jsonl`);
  writeFileSync(path, fileOf(walk).text);
  return path;
}

describe('retest --drive', () => {
  it('puts the last word into a closed record, which says so in lists and papers', async () => {
    const path = saved(finishedWalk({ procedure: TRUE_PROCEDURE }), 'driven');
    const done = await runProgram(place, ['retest', path, '--drive', 'back after 12 km']);
    expect(done).toMatchObject({ code: 0, err: '' });
    expect(done.out).toBe('In the record: the trouble codes came back.\n');
    expect(
      eventsOf(path)
        .slice(-2)
        .map(({ type }) => type),
    ).toEqual(['session-resumed', 'drive-reported']);
    const { out } = await runProgram(place, ['records', 'list']);
    expect(out).toContain('[cured, CAME BACK');
  });

  it('refuses words that say neither, and a session without a conclusion, and writes no drive', async () => {
    const path = saved(finishedWalk({ procedure: TRUE_PROCEDURE }), 'unsaid');
    const before = eventsOf(path).length;
    const unsaid = await runProgram(place, ['retest', path, '--drive', 'it runs']);
    expect(unsaid.code).toBe(2);
    expect(unsaid.err).toContain('does not begin with "away" or "back"');
    expect(eventsOf(path)).toHaveLength(before);
    const open = saved(begin({ circuit: null, procedure: null }), 'open');
    const early = await runProgram(place, ['retest', open, '--drive', 'away']);
    expect(early.code).toBe(1);
    expect(early.err).toContain('there is no conclusion yet');
    expect(eventsOf(open).at(-1)?.type).toBe('session-paused');
  });
});

it("answers from a terminal are a person's, and of a pipe nobody can tell", () => {
  expect(handAtInput({ isTTY: true })).toBe('person');
  expect(handAtInput({})).toBe('pipe');
});
