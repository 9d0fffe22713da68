import { readFileSync } from 'node:fs';
import AjvModule from 'ajv';
import { describe, expect, it } from 'vitest';
import { emptyJob } from '../../src/procedure/job.ts';
import { readingsCsv } from '../../src/records/readings-csv.ts';
import { recordForClass } from '../../src/records/record-for-class.ts';
import type { SessionRecord } from '../../src/records/record-form.ts';
import { recordJson } from '../../src/records/record-json.ts';
import { readingOf } from '../../src/records/record-lines.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { transcriptOf } from '../../src/records/transcript.ts';
import { RULES } from '../../src/session/events.ts';
import { replay } from '../../src/session/evolve.ts';
import type { JudgedOtherwise } from '../../src/session/history.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { METER } from '../circuit/shipped.ts';
import { drillWalk } from './sample-drill.ts';
import {
  begin,
  CRANKING_CAUTION,
  fileOf,
  finishedWalk,
  freeWalk,
  SAID,
  SIGNAL_TEST,
  signalAt,
  type Walk,
} from './sample-session.ts';

const Ajv = AjvModule.default;

function recordFrom(walk: Walk, otherwise: readonly JudgedOtherwise[] = []): SessionRecord {
  return recordOf(walk.session, fileOf(walk).head, otherwise);
}

/** Of the finished walk: the reading of event 9, and the verdict over the repair, as if rules 1 had given others. */
const OTHERWISE: readonly JudgedOtherwise[] = [
  { seq: 9, rules: 1, of: 'reading', was: 'good', today: 'low' },
  { seq: 16, rules: 1, of: 'repair', was: 'cured', today: 'not-shown' },
];

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
    expect(record.tests).toMatchObject([
      {
        event: 11,
        afterRepair: false,
        where: 'module signal to battery negative',
        setup: 'key on, engine off',
        expected: '4.7 to 5.2 V',
        found: '5.01 V',
        verdict: 'good',
        judgement: 'within the expected range',
      },
    ]);
  });

  it('tells evidence and what is ruled out by the readings whose numbers it keeps', () => {
    const towards = 'Repair or replace the feed wire.';
    expect(record.conclusion).toMatchObject({
      own: false,
      faults: [{ id: 'wire.feed.open', words: 'the feed wire is broken' }],
      evidence: [
        { reading: 9, test: 'Feed at the sensor', found: '0.02 V', pointsTo: towards },
        { reading: 11, found: '5.01 V', pointsTo: towards, counted: true },
      ],
      ruledOut: [
        {
          words: 'Repair or replace the signal wire.',
          by: 'Feed at the sensor: 0.02 V',
          readings: [9],
        },
      ],
    });
  });

  it('says where it comes from', () => {
    expect(record).toMatchObject({
      vehicle: 'real',
      by: ['person'],
      origin: 'a real vehicle, as stated; answers from a person',
      title: 'Invented three-wire sensor, no signal',
    });
  });

  it('puts the reading before the repair beside the one after', () => {
    expect(record.retest).toMatchObject({
      verdict: 'cured',
      missing: [],
      words: 'every test that has to pass after the repair passes',
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
  const versions = { program: '0.1.0', format: 2, rules: RULES } as const;
  const resumed = { type: 'session-resumed', by: 'person', ...versions, at } as const;
  const anew = [
    ...walk.events,
    { ...resumed, elapsed: 0 } as const,
    { type: 'note-added', step: 'feed', text: 'b', at, elapsed: 5_000 } as const,
  ];
  const on = [
    ...walk.events,
    { ...resumed, elapsed: 900_000 } as const,
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
    own: { words: 'Rubbed-through harness', faults: ['wire.signal.open'] },
  });
  const record = recordFrom(walk);
  expect(record.conclusion).toMatchObject({ own: true, proven: null, customer: '' });
  expect(record.cause).toBe('Rubbed-through harness');
  expect(record.correction).toBe('Repair or replace the signal wire.');
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
    { type: 'conclude', own: { words: 'Loose bolt: tighten it', faults: [] } },
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
    ['free order', recordFrom(freeWalk())],
    ['free order without a circuit', recordFrom(begin({ procedure: null, circuit: null }))],
    ['a reading that is judged otherwise today', recordFrom(finishedWalk(), OTHERWISE)],
    ['a drill whose answer is known', recordFrom(drillWalk())],
    ['one for a class', recordForClass(recordFrom(drillWalk()))],
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

it('what a test is called comes from the table of tests, and a step of the procedure that it repeats', () => {
  const shop = begin().do({
    type: 'record-test',
    test: {
      setup: KEY_ON,
      probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
    },
    typed: '5',
    shown: { kind: 'number', value: 5, unit: 'V' },
    expected: null,
  });
  expect(recordFrom(shop).tests).toMatchObject([
    {
      title: 'Feed at the sensor',
      family: 'reference',
      expected: '',
      verdict: null,
      judgement: '',
    },
  ]);
});

it('instruments that a test took stand beside those that were at hand', () => {
  const shop = begin().do({
    type: 'record-test',
    test: {
      setup: { ...KEY_ON, target: 'moving' },
      probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
    },
    typed: '',
    shown: { kind: 'look', look: 'full' },
    expected: null,
  });
  expect(recordFrom(begin()).instruments).toEqual(['meter', 'test-light']);
  expect(recordFrom(shop).instruments).toEqual(['meter', 'test-light', 'scope']);
});

describe('a session in free order', () => {
  const record = recordFrom(freeWalk());

  it('is called by its circuit and has no procedure', () => {
    expect(record).toMatchObject({
      title: 'Free order of tests: Invented sensor circuit',
      procedure: null,
      lines: [],
      cause: 'The signal wire is broken',
      correction: 'Repair or replace the signal wire.',
    });
    expect(recordFrom(begin({ procedure: null, circuit: null })).title).toBe('Free order of tests');
  });

  it('has its tests in order, its notes at no step, and evidence among the tests', () => {
    expect(record.tests.map(({ number, found, verdict }) => [number, found, verdict])).toEqual([
      [1, '0.02 V', 'low'],
      [2, 'nothing wrong to be seen or felt', 'as expected'],
    ]);
    expect(record.notes).toMatchObject([{ step: '', text: 'The loom is chafed.' }]);
    expect(record.conclusion).toMatchObject({
      own: true,
      customer: '',
      evidence: [{ reading: 2, found: '0.02 V', pointsTo: 'Repair or replace the signal wire.' }],
    });
    const text = transcriptOf(record);
    expect(text).toContain('## Tests\n');
    expect(text).toContain("The signal wire is broken (the technician's own)");
    expect(text).not.toMatch(/no step asked for|at ""|procedure's/);
  });

  it('says of a caution that was not asked for again where it stood in short, and where it was read', () => {
    const cranking = { ...SIGNAL_TEST, setup: { ...KEY_ON, state: 'cranking' as const } };
    const { expected, shown } = {
      expected: null,
      shown: { kind: 'number', value: 5, unit: 'V' },
    } as const;
    const record = { type: 'record-test', test: cranking, typed: '5', shown, expected } as const;
    const walk = begin({ procedure: null, cautionRules: [CRANKING_CAUTION] }).do(
      { type: 'acknowledge-cautions', test: cranking },
      record,
      record,
    );
    const cautioned = recordFrom(walk);
    // by hand: 1 opened, 2 read, 3 first cranking, 4 second
    expect(cautioned.cautions).toMatchObject([
      { event: 2, id: 'turning' },
      { event: 4, id: 'turning', earlier: { event: 2, step: '' } },
    ]);
    expect(transcriptOf(cautioned)).toContain('in short: read');
    expect(recordForClass(cautioned).cautions[1]?.earlier).toMatchObject({ event: 2, at: '' });
  });

  it('names cautions of a test that no step asked for, and who read them there', () => {
    const cranking = { ...SIGNAL_TEST, setup: { ...KEY_ON, state: 'cranking' as const } };
    const walk = begin({ procedure: null, by: 'program', cautionRules: [CRANKING_CAUTION] }).do({
      type: 'acknowledge-cautions',
      test: cranking,
      readBy: 'Ilvy Tarrant',
    });
    const cautioned = recordFrom(walk);
    expect(cautioned.cautions).toMatchObject([{ step: '', id: 'turning', readBy: 'Ilvy Tarrant' }]);
    expect(cautioned.origin).toBe('a real vehicle, as stated; answers from a program');
    expect(transcriptOf(cautioned)).toContain('read by Ilvy Tarrant');
    expect(JSON.stringify(recordForClass(cautioned))).not.toContain('Tarrant');
  });
});

describe('a conclusion that rests on one reading', () => {
  it('says so in the papers of the workshop, and which reading it is', () => {
    const weighed = { evidence: [], ruledOut: [], proven: false, hangsOn: 3 };
    const record = recordFrom(
      begin().do(
        { type: 'acknowledge-cautions' },
        { type: 'record-reading', typed: '0', value: 0 },
        { type: 'conclude', weighed },
      ),
    );
    expect(record.conclusion?.restsOn).toMatchObject({ reading: 3 });
    const words = record.conclusion?.restsOn?.words ?? '';
    expect(words).toMatch(/: 0/);
    const text = transcriptOf(record);
    expect(text).toContain('not proven: it rests on one reading that was not repeated');
    expect(text.replace(/\s+/g, ' ')).toContain(`${words}; it was not repeated`);
  });
});

describe('a test made after the conclusion', () => {
  const walk = begin().do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '0', value: 0 },
    signalAt(0.02),
    // The reading is event 3, the tests before and after are 4 and 6.
    {
      type: 'conclude',
      weighed: {
        evidence: [3, 4, 6].map((reading) => ({ reading, counted: true })),
        ruledOut: [
          { repair: 'wire.ground', by: [4, 6] },
          { repair: 'wire.signal', by: [6] },
        ],
        proven: true,
      },
    },
    signalAt(5.01),
  );
  const record = recordFrom(walk);

  it('is made after the repair', () => {
    expect(record.tests.map(({ event, afterRepair }) => [event, afterRepair])).toEqual([
      [4, false],
      [6, true],
    ]);
  });

  it('is never evidence of it, whatever the file says', () => {
    expect(record.conclusion?.evidence.map(({ reading }) => reading)).toEqual([3, 4]);
    expect(record.conclusion?.ruledOut).toMatchObject([
      { words: 'Repair or replace the ground wire.', readings: [4] },
    ]);
  });

  it('comes before the repair again once the conclusion is taken back', () => {
    const back = recordFrom(walk.do({ type: 'go-back' }));
    expect(back.tests.map(({ afterRepair }) => afterRepair)).toEqual([false, false]);
  });
});

it('evidence of an early version stands as it was written down', () => {
  const walk = begin().do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '0', value: 0 },
    { type: 'conclude', weighed: SAID },
  );
  expect(recordFrom(walk).conclusion).toMatchObject({
    evidence: [
      { reading: null, found: '0.02 V', pointsTo: 'the feed wire', counted: true },
      { reading: null, found: 'dark', counted: false },
    ],
    ruledOut: [{ words: 'the module', by: 'Feed at the sensor: 0.02 V', readings: [] }],
  });
});

describe('what today’s rules say otherwise stands beside what was recorded', () => {
  const walk = finishedWalk({ rules: 1 });

  it('of a reading and of the verdict over the repair, in every paper of the shop', () => {
    expect(walk.events.map(({ type }) => type).at(15)).toBe('session-closed');
    const record = recordFrom(walk, OTHERWISE);
    expect(record.lines.flatMap(({ event, today }) => (today ? [[event, today]] : []))).toEqual([
      [9, { rules: 1, of: 'reading', words: 'LOW' }],
    ]);
    expect(record.retest.today?.words).toContain('the repair is not proven');
    const says = "as judged by rules 1; today's say LOW";
    expect(transcriptOf(record)).toContain(says);
    expect(transcriptOf(record)).toContain("as judged by rules 1; today's say every test that");
    expect(readingsCsv(record)).toContain(says);
  });

  it.each<[string, JudgedOtherwise, string]>([
    [
      'an outcome in the words of its step',
      { seq: 9, rules: 1, of: 'outcome', was: 'low', today: 'high' },
      'feed too high',
    ],
    [
      'a verdict where there is none today',
      { seq: 11, rules: 1, of: 'reading', was: 'good', today: 'none' },
      'nothing of it',
    ],
  ])('%s', (_, otherwise, words) => {
    const { lines, tests } = recordFrom(walk, [otherwise]);
    expect([...lines, ...tests].find(({ today }) => today)).toMatchObject({
      event: otherwise.seq,
      today: { of: otherwise.of, words },
    });
  });
});

it('the words of a judgement are those of the meter in hand then', () => {
  const { meter } = begin().session;
  // 4.75 V is the end of the range: 50 % either way, whatever the meter.
  const walk = begin().do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '4.75', value: 4.75 },
    {
      type: 'change-instruments',
      instruments: ['meter'],
      meter: { ...meter, volts: { ...meter.volts, ranges: [20], counts: 2000 } },
    },
  );
  // 6 V over 6000 counts is 1 mV.
  expect(recordFrom(walk).lines[0]?.judgement).toContain('its 6 V range (steps of 1 mV)');
});

it('who went on with it is told: a file of answers, a program', () => {
  const walk = begin({ vehicle: { kind: 'bench', fault: 'wire.signal.open', seed: 1 } }).do(
    { type: 'pause' },
    { type: 'resume', program: '0.2.0', by: 'answers-file' },
  );
  const record = recordFrom(walk);
  expect(record).toMatchObject({ vehicle: 'simulated', by: ['person', 'answers-file'] });
  expect(record.origin).toBe('a simulated vehicle; answers from a person and a file of answers');
  expect(record.interruptions.at(-1)?.words).toContain('answers from a file of answers');
});

it('a clock that was set back, and another zone, are told where the times are read', () => {
  const times = ['2031-05-06T23:00+14:00', '2031-05-06T21:30+14:00', '2031-05-06T04:00-03:30'];
  const walk = begin().do({ type: 'acknowledge-cautions' }, { type: 'pause' });
  const session = replay(walk.session.events.map((event, n) => ({ ...event, at: times[n]! })));
  const record = recordOf(session, { seq: 3, hash: '' });
  expect(record.interruptions.map(({ words }) => words)).toEqual([
    'the clock was set back by 1 h 30 min; times are as it showed them',
    'times from here on are those of UTC-03:30; before, of UTC+14:00',
    'paused',
  ]);
});

it('a number is told with what the meter may be off there, and what no meter reads without', () => {
  // by hand: 0.5 % of 4.97 V and 3 counts of 1 mV on the 6 V range
  const read = readingOf({ typed: '4.97', value: 4.97, unit: 'V' }, METER);
  expect(read).toMatchObject({ typed: '4.97', value: 4.97, overLimit: false, unit: 'V' });
  expect(read.mayBeOff).toBeCloseTo(0.02785, 10);
  const over = readingOf({ typed: 'OL', value: null, unit: 'ohm' }, METER);
  expect(over).toEqual({ typed: 'OL', value: null, overLimit: true, unit: 'ohm' });
  for (const other of [
    readingOf({ typed: '4.97', value: 4.97, unit: 'V' }, null),
    readingOf({ typed: '50', value: 50, unit: '%' }, METER),
  ])
    expect(other).not.toHaveProperty('mayBeOff');
});
