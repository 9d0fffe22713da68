/** What a file derives, changed by someone who computes the chain anew: each is found, and an honest session has none. */
import { describe, expect, it } from 'vitest';
import { computedRange } from '../../src/procedure/expected-range.ts';
import { deriveAgain } from '../../src/session/derive-again.ts';
import { RULES, type SessionEvent } from '../../src/session/events.ts';
import { checkHistory } from '../../src/session/history.ts';
import { readSaid } from '../../src/session/read-known.ts';
import { modelFor } from '../../src/session/session-model.ts';
import { METER, shipped } from '../circuit/shipped.ts';
import { CRANKING_CAUTION, signalAt } from '../records/sample-session.ts';
import { TRUE_PROCEDURE, trueWalk } from '../records/true-walk.ts';
import { opened, TREE } from './sample-tree.ts';

const HONEST = trueWalk().events;

/** The walk with the keys of one event changed; numbers count from 1 as in the file. */
function changed(seq: number, keys: object): SessionEvent[] {
  return HONEST.map(
    (event, at) => (at === seq - 1 ? { ...event, ...keys } : event) as SessionEvent,
  );
}

function wordsOf(events: readonly SessionEvent[]): string[] {
  return deriveAgain(events).map(
    ({ seq, words, isFalse }) => `${isFalse ? '' : '(told) '}${seq} ${words}`,
  );
}

const at = (type: SessionEvent['type']) => HONEST.findIndex((one) => one.type === type) + 1;
const CONCLUDED = at('concluded');
const concluded = HONEST[CONCLUDED - 1]!;
if (concluded.type !== 'concluded') throw new Error('the walk concludes');

it('an honest session comes out as it is, and follows from itself', () => {
  expect(checkHistory(HONEST).flaw).toBeNull();
  expect(wordsOf(HONEST)).toEqual([]);
});

describe.each<[what: string, events: SessionEvent[], words: RegExp]>([
  [
    'a value that was not typed',
    changed(3, { typed: '14.97' }),
    /^3 was typed "14.97", which is not 4.97 V$/,
  ],
  ['a text that is no number', changed(3, { typed: 'fine' }), /^3 was typed "fine"/],
  [
    'a test of another value',
    changed(at('test-recorded'), { typed: '0.3 V' }),
    /was typed "0.3 V", which is not 5.01 V/,
  ],
  [
    'a retest of another value',
    changed(at('retest-recorded'), { typed: '3' }),
    /was typed "3", which is not 4.99 V/,
  ],
  [
    'a time before the one before',
    changed(5, { elapsed: 10 }),
    /^5 comes \d+ ms before the event before it/,
  ],
  [
    'what is good, moved',
    changed(at('test-recorded'), {
      expected: { kind: 'number', low: 5.5, high: 6 },
      judgement: null,
    }),
    /has another range of what is good/,
  ],
  [
    'nothing that is good',
    changed(at('test-recorded'), { expected: null }),
    /has nothing that is good beside it/,
  ],
  [
    'proven, where it is not',
    changed(CONCLUDED, { proven: !concluded.proven }),
    /is called (not )?proven, and is (not )?proven/,
  ],
  [
    'not weighed',
    changed(CONCLUDED, { proven: null, evidence: [], ruledOut: [] }),
    /was not weighed/,
  ],
  [
    'a reading that points to nothing',
    changed(CONCLUDED, { evidence: [...concluded.evidence, { reading: 3, counted: true }] }),
    /has other evidence than the readings give: events .*3.* instead of/,
  ],
  [
    'a repair ruled out by nothing',
    changed(CONCLUDED, { ruledOut: [{ repair: 'wire.ground', by: [3] }] }),
    /rules out other repairs/,
  ],
  [
    'a rest on one reading',
    changed(CONCLUDED, { restsOn: 3 }),
    /rests on the one reading of event 3/,
  ],
])('%s', (_, events, words) => {
  it('is found', () => {
    const found = wordsOf(events);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(words);
  });

  it('and only told where other rules wrote it', () => {
    const early = events.map((event) =>
      event.type === 'session-opened' ? { ...event, rules: 3 } : event,
    );
    const isTime = words.source.includes('ms before');
    expect(deriveAgain(early).map(({ isFalse }) => isFalse)).toEqual([isTime]);
  });
});

it('limits of the tree that are not those of its circuit', () => {
  const { feed } = TRUE_PROCEDURE.steps;
  if (feed?.kind !== 'measure') throw new Error('the feed is measured');
  const expected = { ...feed.expected!, low: 0 };
  const procedure = {
    ...TRUE_PROCEDURE,
    steps: { ...TRUE_PROCEDURE.steps, feed: { ...feed, expected } },
  };
  expect(wordsOf(changed(1, { procedure }))[0]).toMatch(
    /^1 has other limits than its circuit at the steps "feed"$/,
  );
});

it('limits that are said to be of the circuit where nothing of it is probed', () => {
  const { feed } = TRUE_PROCEDURE.steps;
  if (feed?.kind !== 'measure') throw new Error('the feed is measured');
  const from = (end: 'circuit' | 'author') => ({
    ...TRUE_PROCEDURE,
    steps: {
      ...TRUE_PROCEDURE.steps,
      other: { ...feed, id: 'other', probe: null, expected: { ...feed.expected!, from: end } },
    },
  });
  expect(wordsOf(changed(1, { procedure: from('circuit') }))).toContain(
    '1 has other limits than its circuit at the steps "other"',
  );
  expect(wordsOf(changed(1, { procedure: from('author') }))).toEqual([]);
});

it('a caution taken out of the tree', () => {
  const rule = { ...CRANKING_CAUTION, states: ['key-on'] };
  const found = wordsOf(changed(1, { cautionRules: [rule] }));
  expect(found[0]).toBe('1 has no caution "turning" before the step "feed"');
  const cranked = Object.fromEntries(
    Object.entries(TRUE_PROCEDURE.steps).map(([id, step]) => [
      id,
      id === 'prepare' && step.kind === 'act'
        ? { ...step, setup: { ...step.setup, state: 'cranking' } }
        : step,
    ]),
  );
  const none = { ...CRANKING_CAUTION, states: [] };
  const changes = { cautionRules: [none], procedure: { ...TRUE_PROCEDURE, steps: cranked } };
  expect(wordsOf(changed(1, changes))).toContain(
    '1 warns of no rotating-parts before the step "prepare"',
  );
  // Nor do all cautions go at once, and the rules with them.
  expect(wordsOf(changed(1, { ...changes, cautionRules: [] }))).toContain(
    '1 warns of no rotating-parts before the step "prepare"',
  );
  // What cranking does by itself was not asked for before the rules of version 6.
  const starts = /warns of no (?:engine-start|ignition-voltage|starter-heat|engine-damage)/;
  const unsaid = (rules: number) =>
    wordsOf(changed(1, { ...changes, rules })).filter((words) => starts.test(words));
  expect(unsaid(6)).toHaveLength(4);
  expect(unsaid(5)).toEqual([]);
});

it('a clock set back and older rules are told and make nothing false', () => {
  const walk = trueWalk({}, [
    { type: 'acknowledge-cautions' },
    { type: 'pause' },
    { type: 'resume', program: '0.1.0', by: 'person' },
    signalAt(5.01),
  ]);
  const events = walk.events.map((event) =>
    event.type === 'session-resumed'
      ? { ...event, rules: 3, at: '2026-03-04T08:00:00.000+00:00', elapsed: 0 }
      : event,
  );
  const found = deriveAgain(events);
  expect(found.every(({ isFalse }) => !isFalse)).toBe(true);
  expect(found.map(({ words }) => words)).toEqual([
    `goes on by rules 3, where rules ${RULES} held before`,
    expect.stringMatching(
      /^is \d+ s earlier than the event before it: the wall clock was set back$/,
    ),
  ]);
});

it('faults of a conclusion that the readings exclude', () => {
  const end = TRUE_PROCEDURE.steps['feed-low'];
  if (end?.kind !== 'conclude') throw new Error('the tree ends there');
  const wide = { ...end, faults: ['wire.feed.open', 'wire.feed.short-to-battery'] };
  const procedure = { ...TRUE_PROCEDURE, steps: { ...TRUE_PROCEDURE.steps, 'feed-low': wide } };
  const { events } = trueWalk({ procedure });
  const faultsOf = (faults: readonly string[]) =>
    events.map((event) => (event.type === 'concluded' ? { ...event, faults } : event));
  expect(events[CONCLUDED - 1]).toMatchObject({ faults: ['wire.feed.open'] });
  expect(wordsOf(events)).toEqual([]);
  const forged = faultsOf(['wire.feed.short-to-battery']);
  expect(checkHistory(forged).flaw).toBeNull();
  expect(wordsOf(forged)).toEqual([
    `${CONCLUDED} names other faults than the readings leave standing`,
  ]);
  // What the tree does not stand for does not follow at all.
  expect(checkHistory(faultsOf(['wire.signal.open'])).flaw?.seq).toBe(CONCLUDED);
});

it('limits of a tree are those of the circuit that it was linked with, whatever is known of the car', () => {
  const circuit = shipped('hall-module-fed');
  const feed = TREE.steps['feed'];
  if (feed?.kind !== 'measure') throw new Error('the sample tree measures its feed');
  const probe = { kind: 'volts', plus: 'battery.positive', minus: 'battery.negative' } as const;
  const expected = computedRange(modelFor(circuit, METER), { setup: feed.setup, probe })!;
  const step = { ...feed, probe, expected };
  const procedure = { ...TREE, steps: { ...TREE.steps, feed: step } };
  const battery = readSaid(circuit, { what: 'battery at rest', is: '12.4 V', from: 'measured' });
  if (!('quantity' in battery)) throw new Error(battery.words);
  const known = { ...opened(procedure, { circuit, meter: METER, known: [battery] }) };
  // The sample tree has none of the shipped cautions.
  const limitsOf = (event: SessionEvent) =>
    wordsOf([event]).filter((words) => !words.includes('warns of no'));
  expect(limitsOf(known)).toEqual([]);
  const other = { ...step, expected: { ...expected, high: 20 } };
  const forged = {
    ...known,
    procedure: { ...procedure, steps: { ...procedure.steps, feed: other } },
  };
  expect(limitsOf(forged)).toEqual(['1 has other limits than its circuit at the steps "feed"']);
});
