/** A conclusion that other rules judged: papers and check say by which, and claim nothing that today's have not derived. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { judgedByWords } from '../../src/records/judged-by.ts';
import { PIECES_NEEDED, RULES, type SessionEvent } from '../../src/session/events.ts';
import { runRecords } from './run-records.ts';
import { fileOf } from './sample-session.ts';
import { trueWalk } from './true-walk.ts';

let home = '';
beforeAll(() => {
  home = mkdtempSync(join(tmpdir(), 'ohmward-judged-'));
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

const TRUE = trueWalk().events;
const CONCLUDED = TRUE.find((event) => event.type === 'concluded')!;

/** Three readings, which is as many as a proof needs by any rules. */
const evidence = TRUE.flatMap((event, at) =>
  event.type === 'reading-recorded' ||
  event.type === 'look-recorded' ||
  event.type === 'test-recorded'
    ? [{ reading: at + 1, counted: true }]
    : [],
).slice(0, PIECES_NEEDED);

/** The walk as other rules would have written it, with another word on whether it is proven. */
function written({ rules, proven }: { rules: number; proven: boolean }): string {
  const events = TRUE.map((event): SessionEvent => {
    if (event.type === 'session-opened') return { ...event, rules };
    return event.type === 'concluded' && proven ? { ...event, proven, evidence } : event;
  });
  const path = join(home, `rules-${rules}-${proven}.jsonl`);
  writeFileSync(path, fileOf({ events }).text);
  return path;
}

const records = (verb: string, path: string, values: Record<string, string | boolean> = {}) =>
  runRecords(home, [verb, path], values);

it('the walk of this test is not proven', () => {
  expect(CONCLUDED.type === 'concluded' && CONCLUDED.proven).toBe(false);
  expect(evidence).toHaveLength(PIECES_NEEDED);
});

describe.each([RULES - 1, RULES + 1])('by rules %i', (rules) => {
  it('what comes out otherwise today is named by the check, and no paper claims it', async () => {
    const path = written({ rules, proven: true });
    const verified = await records('verify', path);
    expect(verified.exit).toBe(0);
    expect(verified.out).toMatch(/OTHER {2}derived: .*is called proven, and is not proven/);
    const customer = await records('export', path, { for: 'customer' });
    expect(customer.out).not.toMatch(/^At least three independent tests agree/m);
    expect(customer.out).toContain(
      `This was judged by rules ${rules} of the program; by today's rules ${RULES} not all comes out the same.`,
    );
    expect(customer.out).not.toContain('FAULT HERE');
    const shop = await records('export', path);
    expect(shop.out).toContain('called proven by the rules of that time');
    expect(shop.out).toContain('is called proven, and is not proven');
    const json = JSON.parse((await records('export', path, { as: 'json' })).out);
    expect(json.conclusion.judgedBy).toMatchObject({ rules, today: RULES, again: 'other' });
    // Nor is it said on the telephone.
    expect(json.call.join(' ')).toContain('it is the best explanation of the test results');
  });

  it('what comes out the same is said to', async () => {
    const path = written({ rules, proven: false });
    const { out } = await records('export', path, { for: 'customer' });
    expect(out).toContain(
      `This was judged by rules ${rules} of the program; today's rules ${RULES} come to the same.`,
    );
  });

  it('what nobody has judged again is not said to be proven', async () => {
    const { out } = await records('show', written({ rules, proven: true }));
    expect(out).toContain(`today's rules ${RULES} have not judged it again`);
  });
});

it('by our own rules a paper is refused that claims what they do not derive, and one without says nothing of rules', async () => {
  const forged = await records('export', written({ rules: RULES, proven: true }));
  expect(forged.exit).toBe(1);
  expect(forged.err).toMatch(/is called proven, and is not proven/);
  const honest = await records('export', written({ rules: RULES, proven: false }), {
    for: 'customer',
  });
  expect(honest.exit).toBe(0);
  expect(honest.out).not.toMatch(/judged by rules/);
});

it('nor is it said to be proven where it is only shown', async () => {
  const path = written({ rules: RULES, proven: true });
  const { exit, out, err } = await records('show', path);
  expect(exit).toBe(0);
  expect(out).toContain(
    'called proven by at least three independent pieces of evidence; as its file has it, not recomputed',
  );
  expect(out).not.toMatch(/Certainty:\*\* proven/);
  expect(err).toContain('nothing was recomputed');
  const json = JSON.parse((await records('show', path, { json: true })).out);
  expect(json.conclusion.judgedBy).toEqual({
    rules: RULES,
    today: RULES,
    again: 'not',
    differs: [],
  });
});

it.each([
  ['not', "today's rules 9 have not judged it again"],
  ['same', "today's rules 9 come to the same"],
  ['other', "by today's rules 9 not all comes out the same"],
] as const)('of earlier rules, judged again or not (%s), it is said so', (again, words) => {
  expect(judgedByWords({ rules: 8, today: 9, again, differs: [] })).toBe(
    `judged by rules 8 of the program; ${words}`,
  );
});
