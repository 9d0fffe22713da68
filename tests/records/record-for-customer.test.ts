/** What is handed to the owner of a vehicle is what the paper says, in every form. */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import type { Job } from '../../src/procedure/job.ts';
import { exportRecord } from '../../src/records/export-record.ts';
import { readRecord } from '../../src/records/read-record.ts';
import { recordFor } from '../../src/records/record-for.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { fullWalk } from './full-walk.ts';
import { begin, fileOf, finishedWalk, JOB, signalAt, type Walk } from './sample-session.ts';

function recordOfWalk(walk: Walk) {
  return recordOf(walk.session, fileOf(walk).head);
}

const fields = new Set<string>();
/** Every text of the session says from which field it is. */
const FULL = recordOfWalk(
  fullWalk((field) => {
    fields.add(field);
    return mark(field);
  }),
);

function mark(field: string): string {
  return `mark-${field.replace(/\W/g, '')}`;
}

/** Fields whose marks a text holds. */
function fieldsIn(text: string): string[] {
  return [...fields].filter((field) => new RegExp(`${mark(field)}(?![a-z])`).test(text)).sort();
}

/** What was followed, with which program: no paper for a customer needs it, and nothing of it is the shop's own. */
const OF_THE_PROGRAM = ['circuit', 'procedure', 'program'];

describe('for the customer', () => {
  it.each(['csv', 'json'] as const)('%s holds no text that the paper does not', (form) => {
    const paper = fieldsIn(exportRecord(FULL, 'markdown', 'customer').replace(/\\/g, ''));
    expect(paper).toContain('customer words');
    expect(paper).not.toContain('note');
    const held = fieldsIn(exportRecord(FULL, form, 'customer'));
    expect(
      held.filter((field) => !paper.includes(field) && !OF_THE_PROGRAM.includes(field)),
    ).toEqual([]);
    // The shop's form has them, so a mark that is not found is not lost on the way.
    expect(fieldsIn(exportRecord(FULL, 'json', 'shop'))).toEqual([...fields].sort());
  });

  it('what was taken back and what is no evidence stays in the shop', () => {
    const walk = finishedWalk();
    const { lines, tests, corrections, notes } = recordFor(recordOfWalk(walk), 'customer');
    expect(lines.map(({ found }) => found)).toEqual(['0.02 V']);
    expect(tests.map(({ found }) => found)).toEqual(['5.01 V']);
    expect([...corrections, ...notes]).toEqual([]);
  });

  it('of an unfinished session it holds readings so far', () => {
    const walk = begin().do(
      { type: 'acknowledge-cautions' },
      { type: 'record-reading', typed: '5', value: 5 },
      { type: 'cannot-do', reason: 'no light here' },
      { type: 'choose-outcome', outcome: 'yes' },
      signalAt(4.9),
    );
    const { lines, tests } = recordFor(recordOfWalk(walk), 'customer');
    expect(lines.map(({ kind, title, reason }) => [kind, title, reason])).toEqual([
      ['reading', 'Supply voltage, sensor feed', ''],
      ['impossible', 'Supply voltage, sensor feed', 'no light here'],
    ]);
    expect(tests).toHaveLength(1);
  });

  it('says how each code is kept and what was done before, with what it changed', () => {
    const job: Job = {
      ...JOB,
      codes: ['P0365', 'P0369', 'P0340'],
      codeStates: { P0365: 'stored', P0369: 'pending' },
      earlierRepairs: [{ words: 'Sensor replaced', part: 'sensor', changed: 'nothing' }],
    };
    const sheet = exportRecord(recordOfWalk(begin({ job })), 'markdown', 'customer');
    expect(sheet).toContain('Trouble codes in the vehicle: P0365 stored, P0369 pending, P0340.');
    expect(sheet).toContain('Done before: Sensor replaced, which changed nothing.');
    expect(sheet).not.toMatch(/codes stored/);
  });

  it('where nothing was found shows what was moved in vain, which was the work', () => {
    const made = recordOfWalk(finishedWalk());
    const [line] = made.lines;
    const woken = {
      ...line!,
      event: 900,
      kind: 'answer' as const,
      standing: 'standing' as const,
      title: 'Wiggle the harness',
      found: 'it never drops out',
      outcome: 'it never drops out',
      verdict: null,
      family: 'inspection' as const,
      expected: '',
      reading: null,
      judgement: 'Nothing in 10 minutes of trying to bring it on.',
    };
    const lines = [...made.lines, woken, { ...woken, event: 901, title: 'Asked', judgement: '' }];
    const conclusion = { ...made.conclusion!, evidence: [], ruledOut: [] };
    const sheet = (end: typeof conclusion) =>
      exportRecord({ ...made, lines, conclusion: end }, 'markdown', 'customer');
    const found = sheet({ ...conclusion, own: true, nothingFound: true });
    expect(found).toMatch(/\| Wiggle the harness \| no fixed value \| it never drops out \| +\|/);
    expect(found).not.toContain('Asked');
    expect(sheet({ ...conclusion, own: true })).not.toContain('Wiggle the harness');
  });

  it('has the published form', () => {
    const schema: object = JSON.parse(readFileSync('docs/schema/record.schema.json', 'utf8'));
    const fits = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    expect(fits(JSON.parse(exportRecord(FULL, 'json', 'customer')))).toBe(true);
  });

  it('keeps only what is on the list: a field that nobody allowed stays away', () => {
    const more = { ...FULL, profit: 'CANARY', job: { ...FULL.job, profit: 'CANARY' } };
    expect(JSON.stringify(recordFor(more, 'customer'))).not.toContain('CANARY');
  });

  it('a test after the repair that is missing is named, and not said to be the only one', () => {
    const paper = exportRecord(FULL, 'markdown', 'customer');
    expect(paper).toContain('Not all tests were repeated after the repair');
    expect(paper).toMatch(
      /Not tested again after the repair: Supply voltage, .*; Ground connection/,
    );
    expect(paper).not.toContain('No test was done after the repair.');
  });
});

describe('where no fault was found', () => {
  const read = readRecord(nodeDisk, 'sessions/sample-nothing-now.jsonl');
  if (!read.ok) throw new Error(read.words);
  const { record } = read;

  it.each(['customer', 'shop'] as const)(
    'the paper for the %s rules nothing out for good',
    (who) => {
      const paper = exportRecord(record, 'markdown', who);
      expect(paper).not.toMatch(/ruled out/i);
      expect(paper).not.toMatch(/not needed/i);
      expect(paper).toContain('A fault that comes and goes does not show while it is away.');
      expect(paper).toMatch(/Not called for now \| Shown by|\*\*Not called for now\*\*/);
    },
  );

  it('it is said on the telephone, and in what other programs get', () => {
    expect(record.call.at(-1)).toMatch(
      /^Nothing calls for these now, since each was right when it was tested: /,
    );
    for (const who of ['customer', 'class'] as const)
      expect(recordFor(record, who).conclusion).toMatchObject({ nothingFound: true });
  });
});
