import { readFileSync } from 'node:fs';
import AjvModule from 'ajv';
import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../src/procedure/job.ts';
import { recordForClass } from '../../src/records/record-for-class.ts';
import type { SessionRecord } from '../../src/records/record-form.ts';
import { recordJson } from '../../src/records/record-json.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { transcriptOf } from '../../src/records/transcript.ts';
import { replay } from '../../src/session/evolve.ts';
import { begin, fileOf, finishedWalk, type Walk } from './sample-session.ts';

const Ajv = AjvModule.default;

function recordFrom(walk: Walk): SessionRecord {
  return recordOf(walk.session, fileOf(walk).head);
}

describe('the record of a finished session', () => {
  const walk = finishedWalk();
  const record = recordFrom(walk);

  it('has complaint, cause and correction in the words of this vehicle', () => {
    expect(record.complaint).toBe('Starts badly when cold, dies at the lights.');
    expect(record.cause).toBe('The feed sensor feed, pin 1 (RD/BU) is open');
    expect(record.correction).toBe(
      'Mend the wire at sensor feed, pin 1 (RD/BU) and seal the joint.',
    );
  });

  it('numbers every answer, also the one taken back and those off the way', () => {
    expect(record.lines.map((line) => [line.number, line.step, line.standing])).toEqual([
      [1, 'feed', 'taken back'],
      [2, 'light', 'off the way'],
      [3, 'asked', 'off the way'],
      [4, 'prepare', 'off the way'],
      [5, 'ground', 'off the way'],
      [6, 'feed', 'standing'],
    ]);
  });

  it('says where, in which state, with what, what was expected and what was found', () => {
    expect(record.lines[0]).toMatchObject({
      title: 'Feed at the sensor',
      where: 'sensor feed, pin 1 (RD/BU) to battery negative',
      setup: 'key on, engine off',
      instrument: 'bench meter, 6000 counts',
      expected: '4.75 to 5.25 V',
      expectedRange: { low: 4.75, high: 5.25, from: 'circuit' },
      found: '4.97 V',
      reading: { typed: '4.97', value: 4.97, overLimit: false, unit: 'V' },
      verdict: 'good',
      outcome: 'feed present',
    });
    expect(record.lines[4]).toMatchObject({
      setup: 'key on, engine off; sensor unplugged',
      found: '-0.03 V', // as typed
    });
  });

  it('tells why a step could not be done, and what was corrected', () => {
    expect(record.lines[1]).toMatchObject({ kind: 'impossible', reason: 'the light is on loan' });
    expect(record.corrections).toMatchObject([
      { line: 1, step: 'Feed at the sensor', found: '4.97 V' },
    ]);
  });

  it('keeps cautions with the text shown, notes, and tests outside the tree', () => {
    const caution = {
      word: 'CAUTION',
      text: 'The circuit is live: keep the leads apart.',
      step: 'Feed at the sensor',
    };
    // Before the test, and before the test after the repair.
    expect(record.cautions).toMatchObject([caution, caution]);
    expect(record.notes[0]?.text).toBe('The plug was green inside.');
    expect(record.extras).toMatchObject([{ words: 'Signal at the module', found: '5.01 V' }]);
  });

  it('puts the reading before the repair beside the one after', () => {
    expect(record.retest).toMatchObject({
      verdict: 'cured',
      missing: [],
      words: 'Runs cold and warm.',
    });
    expect(record.retest.rows.map(({ before, after, passed }) => [before, after, passed])).toEqual([
      ['0.02 V', '4.99 V', true],
      ['', 'the light is bright', true],
    ]);
  });

  it('ends in the head of the session file', () => {
    expect(record.head).toEqual(fileOf(walk).head);
    expect(record.howToVerify).toContain(record.head.hash);
  });

  it('counts 20 s an event', () => {
    expect(record.workedMs).toBe((walk.events.length - 1) * 20_000);
  });

  it('is the same after a replay', () => {
    expect(recordOf(replay(walk.events), record.head)).toEqual(record);
  });
});

it('time in a pause is no work, whether the clock starts anew or runs on', () => {
  const walk = begin().do({ type: 'add-note', text: 'a' }, { type: 'pause' });
  const at = '2026-03-05T09:00:00+00:00';
  const anew = [
    ...walk.events,
    { type: 'session-resumed', program: '0.1.0', at, elapsed: 0 } as const,
    { type: 'note-added', step: 'feed', text: 'b', at, elapsed: 5_000 } as const,
  ];
  const on = [
    ...walk.events,
    { type: 'session-resumed', program: '0.1.0', at, elapsed: 900_000 } as const,
    { type: 'note-added', step: 'feed', text: 'b', at, elapsed: 905_000 } as const,
  ];
  const head = { seq: 5, hash: '0'.repeat(64) };
  // by hand: note at 20 s, pause at 40 s, then 5 s of work
  expect(recordOf(replay(anew), head).workedMs).toBe(45_000);
  expect(recordOf(replay(on), head).workedMs).toBe(45_000);
});

it('an over-limit reading stays one, and a plain comparison says so', () => {
  const walk = begin().do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '5', value: 5 },
    { type: 'choose-outcome', outcome: 'lit' },
    { type: 'choose-outcome', outcome: 'no' },
    { type: 'mark-done' },
    { type: 'record-reading', typed: 'OL', value: Number.POSITIVE_INFINITY },
  );
  expect(recordFrom(walk).lines.at(-1)).toMatchObject({
    found: 'OL',
    reading: { value: null, overLimit: true },
    verdict: 'high',
  });
  const speed = begin().do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '5', value: 5 },
    { type: 'choose-outcome', outcome: 'lit' },
    { type: 'choose-outcome', outcome: 'no' },
    { type: 'mark-done' },
    { type: 'record-reading', typed: '0', value: 0 },
    { type: 'record-reading', typed: '650', value: 650 },
  );
  expect(recordFrom(speed).lines.at(-1)).toMatchObject({
    expected: 'above 700 Hz',
    verdict: 'low',
    judgement: "below the range, without the meter's accuracy",
  });
});

it("a conclusion of one's own is marked as such, and a missing retest is named", () => {
  const walk = begin().do({
    type: 'conclude',
    own: { title: 'Rubbed-through harness', faults: ['wire.signal.to-ground'], repair: 'Wrap it.' },
  });
  const record = recordFrom(walk);
  expect(record.conclusion).toMatchObject({ own: true, proven: null, customer: '' });
  expect(record.cause).toBe('Rubbed-through harness');
  const tree = begin().do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '0', value: 0 },
    { type: 'conclude' },
  );
  expect(recordFrom(tree).retest.missing).toEqual(['Feed at the sensor', 'Feed under load']);
});

it('a test that failed must pass after the repair, whether or not the conclusion names it', () => {
  const walk = begin().do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '5', value: 5 },
    { type: 'choose-outcome', outcome: 'lit', look: 'lit' },
    { type: 'choose-outcome', outcome: 'no' },
    { type: 'mark-done' },
    { type: 'record-reading', typed: '0.4', value: 0.4 },
    { type: 'conclude', own: { title: 'Loose bolt', faults: [], repair: 'Tighten it.' } },
  );
  expect(recordFrom(walk).retest.missing).toEqual(['Drop on the ground wire']);
  expect(recordFrom(begin()).retest.missing).toEqual([]);
});

describe('docs/schema/record.schema.json', () => {
  const schema: object = JSON.parse(readFileSync('docs/schema/record.schema.json', 'utf8'));
  const ajv = new Ajv({ strict: true, allowUnionTypes: true });
  const fits = ajv.compile(schema);

  it.each<[string, SessionRecord]>([
    ['a finished session', recordFrom(finishedWalk())],
    ['one just begun', recordFrom(begin())],
    [
      'an empty job without a circuit',
      recordFrom(begin({ job: emptyJob(''), circuit: null, shop: '' })),
    ],
    ['a copy for a class', recordForClass(recordFrom(finishedWalk()))],
  ])('describes %s', (_, record) => {
    expect(fits(JSON.parse(recordJson(record))), ajv.errorsText(fits.errors)).toBe(true);
  });

  it('refuses a record with a key too many, a key too few, or a wrong verdict', () => {
    const record = JSON.parse(recordJson(recordFrom(finishedWalk()))) as Record<string, unknown>;
    const { head: _, ...headless } = record;
    expect(fits({ ...record, price: 100 })).toBe(false);
    expect(fits(headless)).toBe(false);
    expect(fits({ ...record, retest: { ...(record['retest'] as object), verdict: 'fine' } })).toBe(
      false,
    );
  });
});

it('the transcript of a practice session says so first', () => {
  const walk = begin({ vehicle: { kind: 'bench', fault: 'wire.signal.open', seed: 1 } });
  expect(transcriptOf(recordFrom(walk))).toMatch(
    /^# .*\n\n.*\n\n> \*\*Practice: these readings come from a simulated/,
  );
});

it('a session of 60 steps and fields that are empty make a whole transcript', () => {
  let walk = begin({ job: emptyJob(''), person: '', shop: '' }).do({
    type: 'acknowledge-cautions',
  });
  for (let i = 0; i < 60; i += 1)
    walk = walk.do({ type: 'record-reading', typed: '5', value: 5 }, { type: 'go-back' });
  const text = transcriptOf(recordFrom(walk));
  expect(text.match(/TAKEN BACK/g)).toHaveLength(60);
  expect(text).not.toContain('undefined');
  expect(text).not.toContain('null');
});
