/** What could have happened, what could not, and what other rules judged otherwise. */
import { describe, expect, it, test } from 'vitest';
import type { Command } from '../../src/session/command.ts';
import { RULES, type SessionEvent, type SessionOpened } from '../../src/session/events.ts';
import { checkHistory, type History } from '../../src/session/history.ts';
import { shipped } from '../circuit/shipped.ts';
import { opened, sessionAfter, TREE, when } from './sample-tree.ts';
import {
  ACK,
  again,
  CONCLUDED,
  cannot,
  DONE,
  END,
  EXTRA,
  LOOK,
  RESUME,
  sees,
  volts,
} from './shorthand.ts';

const CIRCUIT = shipped('hall-module-fed');
/** Three readings, whatever they say: what they weigh is not looked at here. */
const WEIGHED = {
  evidence: [
    { counted: true, reading: 4 },
    { counted: true, reading: 6 },
    { counted: true, reading: 7 },
  ],
  ruledOut: [{ repair: 'wire.feed', by: [4] }],
  proven: true,
};

/** Too low at the feed, no pattern; after the repair the feed is right, and the pattern cannot be looked at. */
const NOT_SHOWN: readonly Command[] = [
  ...[DONE, ACK, volts(4), ACK, sees('none'), { type: 'conclude' } as const],
  { type: 'acknowledge-cautions', step: 'feed' },
  again('feed', { typed: '5', value: 5 }),
  cannot('pattern'),
];

function eventsAfter(
  commands: readonly Command[],
  more: Partial<SessionOpened> = {},
): SessionEvent[] {
  return [...sessionAfter(commands, TREE, more).events];
}

/** The history of a session whose n-th event (from 1) was changed. */
function changed(events: readonly SessionEvent[], seq: number, part: object): History {
  return checkHistory(
    events.map((event, at) => (at === seq - 1 ? ({ ...event, ...part } as SessionEvent) : event)),
  );
}

function judgedBy(rules: number, events: readonly SessionEvent[]): SessionEvent[] {
  return events.map((event) => (event.type === 'session-opened' ? { ...event, rules } : event));
}

describe('an honest session', () => {
  test.each<[string, readonly Command[], Partial<SessionOpened>?]>([
    ['just opened', []],
    [
      'with a note, a pause and a resumption',
      [{ type: 'add-note', text: 'x' }, { type: 'pause' }, RESUME],
    ],
    ['with an answer taken back', [...LOOK, { type: 'go-back', to: 1 }, ACK, volts(4)]],
    ['with a test that no step asks for', [DONE, EXTRA]],
    [
      'concluded and tested again',
      [
        ...CONCLUDED,
        ACK_PATTERN(),
        again('pattern', { look: 'full' }),
        { type: 'close', verdict: 'cured' },
      ],
    ],
    ['whose last test could not be made', [...NOT_SHOWN, { type: 'close', verdict: 'not-shown' }]],
    ['closed without a test', [...CONCLUDED, { type: 'close', verdict: 'no-retest' }]],
    ['in its own words', [{ type: 'conclude', own: { words: 'It was the mouse', faults: [] } }]],
  ])('%s follows to its end', (_, commands, more = {}) => {
    const events = eventsAfter(commands, more);
    const history = checkHistory(events);
    expect(history).toMatchObject({ flaw: null, judgedOtherwise: [] });
    expect(history.session?.events).toEqual(events);
  });
});

function ACK_PATTERN(): Command {
  return { type: 'acknowledge-cautions', step: 'pattern' };
}

describe('what no rules could give is refused under every version of them', () => {
  // 1 opened, 2 step done, 3 cautions, 4 feed, 5 cautions, 6 pattern, 7 concluded
  const walked = eventsAfter(CONCLUDED);
  const retested = eventsAfter([
    ...CONCLUDED,
    ACK_PATTERN(),
    again('pattern', { look: 'full' }),
    { type: 'close', verdict: 'cured' },
  ]);
  const tested = eventsAfter([DONE, EXTRA], { circuit: CIRCUIT });

  test.each<[string, readonly SessionEvent[], number, object, RegExp]>([
    [
      'an answer to a step that is not asked',
      walked,
      4,
      { step: 'pattern' },
      /does not follow|could not have happened/,
    ],
    [
      'a step that there is not',
      walked,
      4,
      { step: 'nowhere' },
      /a step that the procedure does not have, "nowhere"/,
    ],
    [
      'a name of every object',
      walked,
      4,
      { step: 'constructor' },
      /a step that the procedure does not have/,
    ],
    [
      'an outcome that the step does not have',
      walked,
      4,
      { outcome: 'fine' },
      /an outcome that the step does not have/,
    ],
    [
      'a way that the outcome does not lead',
      walked,
      4,
      { go: 'shorted' },
      /goes on to "shorted", where the outcome leads to "pattern"/,
    ],
    ['a look with another way', walked, 6, { go: 'fine' }, /does not follow/],
    ['a deed with another way', walked, 2, { go: 'pattern' }, /does not follow/],
    ['a caution that was not shown', walked, 3, { cautions: [] }, /no caution to acknowledge/],
    [
      'another conclusion than the readings lead to',
      walked,
      7,
      { conclusion: 'shorted' },
      /concludes "shorted", but the readings lead to "broken"/,
    ],
    ['another fault than the conclusion has', walked, 7, { faults: [] }, /does not follow/],
    [
      'a weighing without a circuit',
      walked,
      7,
      { proven: false },
      /weighed where there is no circuit/,
    ],
    [
      'evidence by an event that is none',
      walked,
      7,
      { evidence: [{ counted: true, reading: 5 }] },
      /rests on event 5, which is not a reading before it/,
    ],
    [
      'evidence by an event to come',
      walked,
      7,
      { evidence: [{ counted: true, reading: 8 }] },
      /rests on event 8/,
    ],
    [
      'proven by too few pieces',
      walked,
      7,
      { proven: true, evidence: [{ counted: true, reading: 4 }] },
      /proven by 1 pieces/,
    ],
    ['one reading that it rests on, and none', walked, 7, { restsOn: 5 }, /rests on event 5/],
    [
      'proven, where it rests on one reading',
      walked,
      7,
      { ...WEIGHED, restsOn: 4 },
      /called proven, where it rests on the one reading of event 4/,
    ],
    ['one reading that it rests on, unweighed', walked, 7, { restsOn: 4 }, /does not follow/],
    [
      'a test after the repair that passed after all',
      retested,
      9,
      { passed: false },
      /does not follow/,
    ],
    [
      'a test after the repair with the outcome of another look',
      retested,
      9,
      { outcome: 'none' },
      /"none" is not the outcome for what step "pattern" showed/,
    ],
    [
      'cured without a test that passed',
      [...walked, { type: 'session-closed', verdict: 'cured', ...when(8) }],
      8,
      {},
      /closes with "cured"/,
    ],
    [
      'a retest before the conclusion',
      [...walked.slice(0, 6), { ...retested[8]!, ...when(6) }],
      7,
      {},
      /there is no conclusion to test yet/,
    ],
    [
      'the way back to an answer that does not stand',
      [...walked, { type: 'step-reopened', step: 'feed', answer: 7, ...when(8) }],
      8,
      {},
      /takes back an answer that does not stand/,
    ],
    [
      'a reveal on a real vehicle',
      [...walked, { type: 'caution-passed-over', cautions: ['live'], ...when(8) }],
      8,
      {},
      /is not a drill/,
    ],
    [
      'a note after the end of a pause',
      [
        ...walked.slice(0, 2),
        { type: 'session-paused', ...when(2) },
        { type: 'note-added', step: 'feed', text: 'x', ...when(3) },
      ],
      4,
      {},
      /is paused/,
    ],
    [
      'a second opening',
      [walked[0]!, walked[1]!],
      1,
      { procedure: null, from: 'feed' },
      /begins in the middle/,
    ],
    [
      'a number from a light',
      tested,
      3,
      {
        test: {
          ...(EXTRA as { test: object }).test,
          probe: { kind: 'light', plus: 'sensor.feed', minus: 'battery.negative' },
        },
      },
      /shows what light does not show/,
    ],
    [
      'a place that the circuit does not have',
      tested,
      3,
      {
        test: {
          ...(EXTRA as { test: object }).test,
          probe: { kind: 'volts', plus: 'moon.feed', minus: 'battery.negative' },
        },
      },
      /a terminal that the circuit does not have, "moon.feed"/,
    ],
  ])('%s', (_, events, seq, part, words) => {
    for (const rules of [1, 2, 3]) {
      const { flaw, session } = changed(judgedBy(rules, events), seq, part);
      expect(flaw?.seq).toBe(seq);
      expect(flaw?.words).toMatch(words);
      expect(flaw?.fix).toContain('keep the file');
      expect(session?.events.length ?? 0).toBe(seq - 1);
    }
  });

  it('a repair that the circuit does not have, among those ruled out', () => {
    const commands = [...END, EXTRA, { type: 'conclude', weighed: WEIGHED } as const];
    const events = eventsAfter(commands, { circuit: CIRCUIT });
    expect(checkHistory(events).flaw).toBeNull();
    const { flaw } = changed(events, 8, { ruledOut: [{ repair: 'moon.replace', by: [4] }] });
    expect(flaw?.words).toContain('"moon.replace"');
  });

  it('words for evidence where a reading must be named, but not in a file of the first rules', () => {
    const said = { test: 'Feed', where: 'sensor feed', found: '5 V', pointsTo: 'the feed wire' };
    const weighed = { ...WEIGHED, proven: false, evidence: [{ counted: true, said }] };
    const commands = [...END, { type: 'conclude', weighed } as const];
    const events = eventsAfter(commands, { circuit: CIRCUIT });
    expect(checkHistory(events).flaw?.words).toContain('words for evidence');
    expect(checkHistory(judgedBy(1, events)).flaw).toBeNull();
  });
});

describe('what the rules decide', () => {
  const walked = eventsAfter(LOOK);
  const low = { judgement: { verdict: 'low', chance: 0.01 } };
  // 5 V lies within 4.75 to 5.25 V, which is "good" by the sample tree.
  const other = { outcome: 'low', go: 'pattern' };

  test.each<[string, object, object]>([
    ['verdict', low, { seq: 4, of: 'reading', was: 'low', today: 'good' }],
    ['outcome', other, { seq: 4, of: 'outcome', was: 'low', today: 'good' }],
  ])('another %s is false by the same rules, and told by others', (_, part, told) => {
    expect(changed(walked, 4, part).flaw?.words).toMatch(/by the same rules/);
    for (const rules of [1, RULES + 1]) {
      const { flaw, judgedOtherwise } = changed(judgedBy(rules, walked), 4, part);
      expect(flaw).toBeNull();
      expect(judgedOtherwise).toEqual([{ ...told, rules }]);
    }
  });

  it('another chance is false by the same rules, but for the last digits', () => {
    const reading = walked[3]!;
    if (reading.type !== 'reading-recorded' || !reading.judgement) throw new Error('a reading');
    const { verdict, chance } = reading.judgement;
    expect(
      changed(walked, 4, { judgement: { verdict, chance: chance - 0.01 } }).flaw,
    ).not.toBeNull();
    expect(changed(walked, 4, { judgement: { verdict, chance: chance - 1e-12 } }).flaw).toBeNull();
  });

  it('a judgement that is missing is false by the same rules, and nothing to tell by others', () => {
    expect(changed(walked, 4, { judgement: null }).flaw).not.toBeNull();
    expect(changed(judgedBy(1, walked), 4, { judgement: null })).toMatchObject({
      flaw: null,
      judgedOtherwise: [],
    });
  });

  it('a test after the repair that other rules judged otherwise is told, and by the same rules false', () => {
    const ready = { type: 'acknowledge-cautions', step: 'feed' } as const;
    const tested = eventsAfter([...CONCLUDED, ready, again('feed', { value: 5 })]);
    const seq = tested.length;
    expect(changed(tested, seq, { passed: false }).flaw?.words).toMatch(/by the same rules/);
    const { flaw, judgedOtherwise } = changed(judgedBy(1, tested), seq, { passed: false });
    expect(flaw).toBeNull();
    const told = { of: 'reading', was: 'fails', today: 'passes' };
    expect(judgedOtherwise).toEqual([{ seq, rules: 1, ...told }]);
  });

  it('another verdict over the repair is told by others only where the tests do not say no', () => {
    const closed = eventsAfter([...NOT_SHOWN, { type: 'close', verdict: 'not-shown' }]);
    expect(closed).toHaveLength(11);
    expect(changed(closed, 11, { verdict: 'no-retest' }).flaw?.words).toContain('give "not-shown"');
    expect(changed(judgedBy(1, closed), 11, { verdict: 'no-retest' }).judgedOtherwise).toEqual([
      { seq: 11, rules: 1, of: 'repair', was: 'no-retest', today: 'not-shown' },
    ]);
    expect(changed(judgedBy(1, closed), 11, { verdict: 'cured' }).flaw).toBeNull();
    for (const verdict of ['not-cured', 'changed'])
      expect(changed(judgedBy(1, closed), 11, { verdict }).flaw).not.toBeNull();
  });

  it('the last resumption names the rules', () => {
    const events = judgedBy(1, eventsAfter([DONE, ACK, { type: 'pause' }, RESUME, ACK, volts(5)]));
    expect(changed(events, 7, low).flaw?.words).toMatch(/by the same rules/);
    const resumed = events.map((event) =>
      event.type === 'session-resumed' ? { ...event, rules: 1 } : event,
    );
    expect(changed(resumed, 7, low).flaw).toBeNull();
  });
});

describe('cautions of a test that no step asks for', () => {
  const RULE = {
    id: 'live',
    word: 'CAUTION',
    say: 'The circuits are live.',
    hazards: [],
    states: ['key-on'],
    drives: [],
    when: [],
  } as const;
  const test_ = (EXTRA as Extract<Command, { type: 'record-test' }>).test;
  const events = eventsAfter([{ type: 'acknowledge-cautions', test: test_ }, EXTRA], {
    cautionRules: [RULE],
  });

  it('are those of the rules in the file', () => {
    expect(checkHistory(events).flaw).toBeNull();
    const other = { cautions: [{ id: 'live', word: 'CAUTION', text: 'All is well.' }] };
    expect(changed(events, 2, other).flaw?.words).toContain(
      'a caution that does not exist, "live"',
    );
    expect(changed(events, 2, { cautions: [] }).flaw?.words).toContain('acknowledges no caution');
  });

  it('come before the test', () => {
    expect(checkHistory([events[0]!, events[2]!]).flaw?.words).toContain(
      'have not been acknowledged',
    );
  });
});

describe('names in the first event', () => {
  const whole = opened(null, { circuit: CIRCUIT });
  const part = (at: number, change: object) => ({
    circuit: {
      ...CIRCUIT,
      parts: CIRCUIT.parts.map((one, i) => (i === at ? { ...one, ...change } : one)),
    },
  });
  const step = (id: string, change: object) => ({
    procedure: { ...TREE, steps: { ...TREE.steps, [id]: { ...TREE.steps[id], ...change } } },
  });
  const sensor = CIRCUIT.parts.findIndex(({ kind }) => kind === 'hall-switch');

  test.each<[string, object, RegExp]>([
    [
      'a start that is no step',
      { procedure: { ...TREE, start: 'nowhere' } },
      /"nowhere" \(procedure\.start\)/,
    ],
    [
      'a way to no step',
      step('prepare', { go: 'nowhere' }),
      /"nowhere" \(procedure\.steps\.prepare\)/,
    ],
    [
      'a way round to no step',
      step('feed', { cannot: 'nowhere' }),
      /"nowhere" \(procedure\.steps\.feed\)/,
    ],
    [
      'a test after the repair that is no step',
      step('broken', { retest: ['nowhere'] }),
      /"nowhere" \(procedure\.steps\.broken\)/,
    ],
    [
      'a step by another name',
      step('feed', { id: 'other' }),
      /calls the step "feed" by another name/,
    ],
    [
      'a step that asks ohms of a voltmeter',
      step('feed', { unit: 'ohm' }),
      /asks for ohm where it probes volts/,
    ],
    [
      'a look that the instrument does not show',
      step('pattern', { expected: ['lit'] }),
      /expects "lit" where it probes pattern/,
    ],
    [
      'a conclusion on no fault of the circuit',
      { ...step('broken', { faults: ['moon.dark'] }), circuit: CIRCUIT },
      /"moon\.dark" \(procedure\.steps\.broken\)/,
    ],
    [
      'a bench with no fault of the circuit',
      { circuit: CIRCUIT, vehicle: { kind: 'bench', fault: 'moon.dark', seed: 1 } },
      /"moon\.dark" \(vehicle\.fault\)/,
    ],
    [
      'a drill without a circuit',
      { vehicle: { kind: 'drill' }, circuit: null },
      /a drill without a circuit/,
    ],
    ['two parts of one name', part(0, { name: 'sensor' }), /two parts called "sensor"/],
    [
      'two sensors',
      {
        circuit: {
          ...CIRCUIT,
          parts: [...CIRCUIT.parts, { ...CIRCUIT.parts[sensor]!, name: 'twin' }],
        },
      },
      /no one sensor/,
    ],
    [
      'a sensor without its pin',
      part(sensor, { pins: ['feed', 'ground'] }),
      /other pins than its kind/,
    ],
    [
      'a range upside down',
      part(sensor, { on: { nominal: 50, low: 80, high: 20, unit: 'ohm' } }),
      /low end is above/,
    ],
    [
      'a wire to nowhere',
      {
        circuit: {
          ...CIRCUIT,
          wires: CIRCUIT.wires.map((wire, i) => (i === 0 ? { ...wire, to: 'moon.feed' } : wire)),
        },
      },
      /a wire to nowhere, "moon.feed"/,
    ],
    [
      'a terminal too few',
      { circuit: { ...CIRCUIT, terminals: CIRCUIT.terminals.slice(1) } },
      /other terminals/,
    ],
    [
      'a connector too few',
      { circuit: { ...CIRCUIT, connectors: CIRCUIT.connectors.slice(1) } },
      /other connectors/,
    ],
    [
      'a fault twice',
      { circuit: { ...CIRCUIT, faults: [...CIRCUIT.faults, CIRCUIT.faults[0]] } },
      /two faults called/,
    ],
    [
      'a fault of a wire that there is not',
      {
        circuit: {
          ...CIRCUIT,
          faults: [{ ...CIRCUIT.faults[0]!, effect: { kind: 'wire-open', wire: 'moon' } }],
        },
      },
      /a wire that does not exist, "moon"/,
    ],
    [
      'a fault of a contact that there is not',
      {
        circuit: {
          ...CIRCUIT,
          faults: [
            { ...CIRCUIT.faults[0]!, effect: { kind: 'contact-open', terminal: 'moon.feed' } },
          ],
        },
      },
      /a contact that does not exist/,
    ],
    [
      'a fault of a part that there is not',
      {
        circuit: {
          ...CIRCUIT,
          faults: [
            {
              ...CIRCUIT.faults[0]!,
              effect: {
                kind: 'part',
                part: 'moon',
                mode: 'dead',
                at: '',
                size: { low: 1, high: 1 },
              },
            },
          ],
        },
      },
      /a part that does not exist/,
    ],
  ])('%s', (_, change, words) => {
    expect(checkHistory([whole]).flaw).toBeNull();
    const { session, flaw } = checkHistory([{ ...whole, ...change } as SessionOpened]);
    expect(session).toBeNull();
    expect(flaw).toMatchObject({ seq: 1 });
    expect(flaw?.words).toMatch(words);
  });

  it('begin in the middle only on a simulated vehicle', () => {
    const from = { ...opened(), from: 'feed' };
    expect(checkHistory([from]).flaw?.words).toContain('begins in the middle');
    const bench = { kind: 'bench', fault: 'healthy', seed: 1 } as const;
    expect(checkHistory([{ ...from, vehicle: bench }]).flaw).toBeNull();
    expect(checkHistory([{ ...from, vehicle: bench, from: 'nowhere' }]).flaw?.words).toContain(
      '"nowhere" (from)',
    );
  });
});

it('events that open nothing have no history', () => {
  expect(checkHistory([])).toMatchObject({ session: null, flaw: { seq: 1 } });
  expect(checkHistory([{ type: 'session-paused', ...when(1) }])).toMatchObject({
    session: null,
    flaw: { seq: 1 },
  });
});

it('a session in free order has no steps to name', () => {
  const events = [...sessionAfter([EXTRA], null).events];
  expect(checkHistory(events).flaw).toBeNull();
  expect(
    changed([...events, { type: 'note-added', step: null, text: 'x', ...when(2) }], 3, {
      step: 'feed',
    }).flaw?.words,
  ).toContain('where there is no procedure');
});

it('a look that no outcome was taken of keeps its step waiting', () => {
  const events = eventsAfter([DONE, ACK, volts(5), ACK, sees('full')]);
  expect(changed(events, 6, { look: 'flat-low' }).flaw?.words).toMatch(/does not follow/);
});
