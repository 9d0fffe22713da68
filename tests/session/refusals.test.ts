/** What each command needs of the session, in words of codes; the steps are those of `sample-tree.ts`. */
import { describe, expect, test } from 'vitest';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import { evolve, openSession, replay, walk } from '../../src/session/evolve.ts';
import { expectedReading } from '../../src/session/expected-reading.ts';
import { judgeStep } from '../../src/session/judge-step.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { retestLines, retestVerdict } from '../../src/session/retest.ts';
import type { Session } from '../../src/session/session.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { opened, sessionAfter, TREE, when } from './sample-tree.ts';

const DONE: Command = { type: 'mark-done' };
const ACK: Command = { type: 'acknowledge-cautions' };
const PAUSE: Command = { type: 'pause' };
const RESUME: Command = { type: 'resume', program: 'ohmward test' };
const CONCLUDE: Command = { type: 'conclude' };
const CLOSE: Command = { type: 'close', verdict: 'no-retest', words: 'later' };
const EXTRA: Command = {
  type: 'record-extra',
  test: {
    setup: KEY_ON,
    probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
  },
  words: 'the feed',
  typed: '5',
  shown: { kind: 'number', value: 5, unit: 'V' },
};
const volts = (value: number): Command => ({
  type: 'record-reading',
  typed: ` ${value} V `,
  value,
});
const sees = (outcome: string): Command => ({ type: 'choose-outcome', outcome });
const again = (step: string, part: object): Command => ({
  type: 'record-retest',
  step,
  typed: '',
  value: null,
  look: null,
  outcome: step === 'feed' ? 'good' : 'full',
  ...part,
});

const cannot = (step: string) => ({ type: 'cannot-retest', step, reason: ' no way in ' }) as const;

function withStep(id: string, part: object): Procedure {
  return { ...TREE, steps: { ...TREE.steps, [id]: { ...TREE.steps[id], ...part } as Step } };
}

function said(session: Session, command: Command): unknown {
  const decision = decide(session, command, when(9));
  return decision.ok ? decision.events[0]!.type : decision.refusal.code;
}

const LOOK = [DONE, ACK, volts(5), ACK];
const END = [...LOOK, sees('none')];
const CONCLUDED = [...END, CONCLUDE];

describe('a session', () => {
  const at: Readonly<Record<string, readonly Command[]>> = {
    open: [DONE, ACK],
    paused: [DONE, ACK, PAUSE],
    concluded: CONCLUDED,
    closed: [...CONCLUDED, CLOSE],
  };
  test.each<[string, Command, string]>([
    ['open', PAUSE, 'session-paused'],
    ['open', EXTRA, 'extra-reading'],
    ['open', volts(5), 'reading-recorded'],
    ['open', ACK, 'wrong-kind'],
    ['open', { type: 'add-note', text: ' warm ' }, 'note-added'],
    ['paused', PAUSE, 'not-open'],
    ['paused', RESUME, 'session-resumed'],
    ['paused', { type: 'add-note', text: 'warm' }, 'not-open'],
    ['concluded', PAUSE, 'session-paused'],
    ['concluded', EXTRA, 'not-open'],
    ['concluded', DONE, 'not-open'],
    ['concluded', CONCLUDE, 'not-open'],
    ['concluded', { type: 'go-back' }, 'step-reopened'],
    ['concluded', CLOSE, 'session-closed'],
    ['closed', PAUSE, 'not-open'],
    ['closed', { type: 'go-back' }, 'not-open'],
    ['closed', EXTRA, 'not-open'],
    ['closed', CLOSE, 'not-open'],
    ['closed', again('pattern', { look: 'full' }), 'not-open'],
  ])('that is %s takes %o as %s', (status, command, type) => {
    const session = sessionAfter(at[status]!);
    expect(session.status).toBe(status);
    expect(said(session, command)).toBe(type);
  });

  test('resumed is as far as it was', () => {
    const resumed = (name: string) =>
      sessionAfter([...at[name]!, ...(name === 'closed' ? [] : [PAUSE]), RESUME]).status;
    expect(['open', 'concluded', 'closed'].map(resumed)).toEqual(['open', 'concluded', 'closed']);
  });

  test('keeps trimmed what was typed', () => {
    expect(sessionAfter([DONE, ACK, volts(5)]).answers[1]?.event).toMatchObject({ typed: '5 V' });
    const note = sessionAfter([{ type: 'add-note', text: ' warm ' }]).notes[0];
    expect(note).toMatchObject({ text: 'warm', step: 'prepare' });
    const cannot = sessionAfter([DONE, { type: 'cannot-do', reason: ' no room ' }]).answers[1];
    expect(cannot?.event).toMatchObject({ reason: 'no room' });
    expect(said(sessionAfter([DONE]), { type: 'cannot-do', reason: '  ' })).toBe('empty-text');
  });

  test('keeps extra readings and notes apart', () => {
    const session = sessionAfter([EXTRA, { type: 'add-note', text: 'warm' }]);
    expect(session.extras).toMatchObject([{ typed: '5', words: 'the feed' }]);
    expect(session.notes).toMatchObject([{ text: 'warm' }]);
  });

  test('takes other instruments and their meter', () => {
    const meter = { ...opened().meter, name: 'another' };
    const session = sessionAfter([{ type: 'change-instruments', instruments: ['lamp'], meter }]);
    expect(session).toMatchObject({ instruments: ['lamp'], meter: { name: 'another' } });
  });

  test('names a way out with the refusals that have one', () => {
    const refusal = (session: Session, command: Command) => {
      const decision = decide(session, command, when(9));
      return decision.ok ? null : decision.refusal;
    };
    expect(refusal(sessionAfter(at['paused']!), DONE)?.fix).toBeTruthy();
    expect(refusal(sessionAfter([DONE]), volts(5))?.fix).toBeTruthy();
    expect(refusal(sessionAfter(END), DONE)).not.toHaveProperty('fix');
    expect(refusal(sessionAfter(at['concluded']!), DONE)?.fix).toMatch(/^go back/);
    expect(refusal(sessionAfter(at['closed']!), DONE)?.fix).not.toMatch(/go back/);
  });
});

describe('the kind of a step', () => {
  const ask = withStep('pattern', {
    kind: 'ask',
    usual: 'full',
    outcomes: [
      { name: 'full', words: 'yes', go: 'fine' },
      { name: 'none', words: 'no', go: 'broken' },
    ],
  });
  test.each<[string, Session, Command, string]>([
    ['done where a reading is asked', sessionAfter([DONE, ACK]), DONE, 'wrong-kind'],
    ['a look where a reading is asked', sessionAfter([DONE, ACK]), sees('good'), 'wrong-kind'],
    ['a reading where a look is asked', sessionAfter(LOOK), volts(5), 'wrong-kind'],
    ['any answer at the conclusion', sessionAfter(END), DONE, 'wrong-kind'],
    ['a caution where none is', sessionAfter([]), ACK, 'wrong-kind'],
    ['a caution at the conclusion', sessionAfter(END), ACK, 'wrong-kind'],
    ['an answer to a question', sessionAfter(LOOK, ask), sees('none'), 'look-recorded'],
    ['no number', sessionAfter([DONE, ACK]), volts(Number.NaN), 'no-such-outcome'],
    ['an outcome that is none', sessionAfter(LOOK, ask), sees('odd'), 'no-such-outcome'],
    [
      'an outcome that is none, after the repair',
      sessionAfter([
        ...LOOK,
        sees('none'),
        CONCLUDE,
        { type: 'acknowledge-cautions', step: 'pattern' },
      ]),
      again('pattern', { outcome: 'odd' }),
      'no-such-outcome',
    ],
  ])('%s', (_, session, command, code) => {
    expect(said(session, command)).toBe(code);
  });

  test('a look is kept when it is one of the outcome, else its first', () => {
    const kept = (command: Command) => sessionAfter([...LOOK, command]).answers[2]?.event;
    expect(kept(sees('none'))).toMatchObject({ look: 'weak', outcome: 'none', go: 'broken' });
    const flat: Command = { type: 'choose-outcome', outcome: 'none', look: 'flat-low' };
    expect(kept(flat)).toMatchObject({ look: 'flat-low' });
    const odd: Command = { type: 'choose-outcome', outcome: 'none', look: 'full' };
    expect(kept(odd)).toMatchObject({ look: 'weak' });
    expect(sessionAfter([...LOOK, sees('none')], ask).answers[2]?.event).toMatchObject({
      look: null,
    });
  });

  test('a conclusion has no cautions', () => {
    expect(pendingCautions(sessionAfter(END))).toEqual([]);
  });
});

describe('a judgement is given', () => {
  const feed = TREE.steps['feed']! as Parameters<typeof judgeStep>[0];
  const { meter } = opened();
  test('in volts and ohms, where something is expected', () => {
    expect(judgeStep(feed, 5, meter)).toMatchObject({ verdict: 'good' });
    expect(judgeStep({ ...feed, unit: 'ohm' }, 9, meter)).toMatchObject({ verdict: 'high' });
    expect(judgeStep({ ...feed, unit: 'Hz' }, 5, meter)).toBeNull();
    expect(judgeStep({ ...feed, expected: null }, 5, meter)).toBeNull();
  });
  test('and the prompt knows where readings lie and what cannot be', () => {
    expect(expectedReading(feed, null)).toEqual({ unit: 'V', usual: { low: 4.75, high: 5.25 } });
    const open = { ...feed, expected: { low: null, nominal: 5, high: 9, from: 'author' } as const };
    expect(expectedReading(open, { high: 60 })).toEqual({
      unit: 'V',
      usual: { low: 0, high: 9 },
      limit: { high: 60 },
    });
    expect(expectedReading({ ...feed, expected: null }, null)).toEqual({ unit: 'V' });
  });
});

describe('a conclusion', () => {
  test("of one's own needs no tree, and keeps its words", () => {
    const own = { title: 'My own', faults: ['x'], repair: 'Mend {it}.' };
    expect(sessionAfter([DONE, { type: 'conclude', own }]).concluded).toMatchObject({
      conclusion: null,
      ...own,
      evidence: [],
      ruledOut: [],
      proven: null,
    });
  });
  test('of the tree is written in the words of the vehicle, with its weight', () => {
    const named = withStep('broken', { title: 'At {sensor.feed}', repair: 'See {sensor.feed}.' });
    const weighed = { evidence: [], ruledOut: [{ words: 'a', by: 'b' }], proven: false };
    const { concluded } = sessionAfter([...END, { type: 'conclude', weighed }], named);
    expect(concluded).toMatchObject({ ruledOut: [{ words: 'a', by: 'b' }], proven: false });
    expect(concluded?.title).toMatch(/^At [^{}]+$/);
    expect(concluded?.repair).toMatch(/^See [^{}]+\.$/);
  });
});

describe('after the repair', () => {
  const none: readonly Command[] = [...CONCLUDED, PAUSE, RESUME];
  const look = (seen: string | null, outcome: string) => again('pattern', { look: seen, outcome });
  const ready = (step: string): Command => ({ type: 'acknowledge-cautions', step });

  test('what may be tested again', () => {
    const session = sessionAfter(none);
    expect(said(session, again('prepare', {}))).toBe('wrong-kind');
    expect(said(session, look('full', 'full'))).toBe('caution-first');
    expect(said(sessionAfter(END), look('full', 'full'))).toBe('not-concluded');
  });

  test('a retest in another vehicle state asks for its cautions, in the same one it does not, but for cranking', () => {
    const feed = again('feed', { value: 5 });
    const once = [...none, ready('feed'), feed];
    expect(said(sessionAfter(once), feed)).toBe('retest-recorded');
    expect(said(sessionAfter(once), look('full', 'full'))).toBe('caution-first');
    const cranked = sessionAfter([...once, ready('pattern'), look('full', 'full')]);
    expect(said(cranked, feed)).toBe('caution-first');
    expect(said(cranked, look('full', 'full'))).toBe('caution-first');
  });

  test.each<[string, object, boolean]>([
    // the healthy feed is 4.75 to 5.25 V, ends included
    ['feed', { value: 5 }, true],
    ['feed', { value: 4.75 }, true],
    ['feed', { value: 5.25 }, true],
    ['feed', { value: 4.74 }, false],
    ['feed', { value: 5.26 }, false],
    ['feed', { value: null }, false],
    ['pattern', { look: 'full' }, true],
    ['pattern', { look: 'weak' }, false],
    ['pattern', { look: null }, false],
  ])('%s with %o passes: %s', (step, part, passed) => {
    const session = sessionAfter([...none, ready(step), again(step, part)]);
    expect(session.retests[0]).toMatchObject({ step, passed });
  });

  test('one that cannot be made wants a reason, no caution, and a conclusion', () => {
    const session = sessionAfter(none);
    expect(said(session, cannot('pattern'))).toBe('retest-impossible');
    expect(said(session, { ...cannot('pattern'), reason: ' ' })).toBe('empty-text');
    expect(said(session, cannot('prepare'))).toBe('wrong-kind');
    expect(said(sessionAfter(END), cannot('pattern'))).toBe('not-concluded');
    expect(said(sessionAfter([...none, CLOSE]), cannot('pattern'))).toBe('not-open');
    const [line] = retestLines(sessionAfter([...none, cannot('pattern')]));
    expect(line?.after).toMatchObject({ type: 'retest-impossible', reason: 'no way in' });
  });

  test('a test that was done by another name of it is asked by that name, once', () => {
    const twin = { ...TREE.steps['pattern'], id: 'twin', title: 'The same again' } as Step;
    const broken = { ...TREE.steps['broken'], retest: ['twin'] } as Step;
    const tree = { ...TREE, steps: { ...TREE.steps, twin, broken } };
    const [line, ...others] = retestLines(sessionAfter(none, tree));
    expect([line?.step.id, line?.before?.type, others]).toEqual(['pattern', 'look-recorded', []]);
    const other = { ...twin, probe: { kind: 'counts', input: 'module.signal' } } as Step;
    const apart = { ...tree, steps: { ...tree.steps, twin: other } };
    expect(retestLines(sessionAfter(none, apart)).map(({ step }) => step.id)).toEqual([
      'pattern',
      'twin',
    ]);
  });

  test("a conclusion of one's own asks for what failed only", () => {
    const own = { title: 'Mine', faults: [], repair: 'Mend it.' };
    const at = (conclude: Command) =>
      retestLines(
        sessionAfter([...LOOK, sees('full'), conclude], withStep('fine', { retest: ['feed'] })),
      );
    expect(at(CONCLUDE).map(({ step }) => step.id)).toEqual(['feed']);
    expect(at({ ...CONCLUDE, own } as Command)).toEqual([]);
  });

  test('where nothing is expected nothing passes', () => {
    const open = withStep('feed', { expected: null });
    const session = sessionAfter([...none, ready('feed'), again('feed', { value: 5 })], open);
    expect(session.retests[0]).toMatchObject({ step: 'feed', passed: false });
  });

  test('what read wrong before has to be tested too, in the order of the tree', () => {
    const low = [DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE];
    expect(retestLines(sessionAfter(low)).map(({ step }) => step.id)).toEqual(['feed', 'pattern']);
    expect(retestLines(sessionAfter(CONCLUDED)).map(({ step }) => step.id)).toEqual(['pattern']);
    const high = [DONE, ACK, volts(9), CONCLUDE];
    const [line, ...others] = retestLines(sessionAfter(high));
    expect(line).toMatchObject({ before: { type: 'reading-recorded', typed: '9 V' }, after: null });
    expect(others).toEqual([]);
    const seen = withStep('broken', { retest: [] });
    expect(retestLines(sessionAfter(CONCLUDED, seen)).map(({ step }) => step.id)).toEqual([
      'pattern',
    ]);
  });

  test('what passed after a repair that was taken back has to pass again after the next', () => {
    const once = [...none, ready('pattern'), look('full', 'full')];
    const other = [...once, { type: 'go-back' } as const, ACK, sees('none')];
    const session = sessionAfter([...other, CONCLUDE]);
    expect(retestLines(session).map(({ after }) => after)).toEqual([null]);
    expect(retestVerdict(session)).toBeNull();
  });

  test('a file that proved an earlier repair proves none after it', () => {
    const measures = { kind: 'switched', unit: 'V', samples: 9, seconds: 1, low: 0, high: 5 };
    const capture = {
      name: 'pattern.csv',
      sha256: 'a'.repeat(64),
      from: 'file',
      measures: { ...measures, hertz: null, duty: null, rpm: null },
      words: [],
      channels: [],
    };
    const taken = again('pattern', { look: 'full', capture });
    const once = [...none, ready('pattern'), taken];
    expect(said(sessionAfter([...once, ready('pattern')]), taken)).toBe('retest-recorded');
    const back = [...once, { type: 'go-back' } as const, ACK, sees('none')];
    const other = [...back, CONCLUDE, ready('pattern')];
    expect(said(sessionAfter(other), taken)).toBe('old-capture');
  });

  test('an answer that was taken back counts no more', () => {
    const low = [DONE, ACK, volts(4), { type: 'go-back' } as const];
    const session = sessionAfter([...low, volts(5), ACK, sees('none'), CONCLUDE]);
    expect(retestLines(session).map(({ step }) => step.id)).toEqual(['pattern']);
  });

  test.each<[string, readonly Command[], string | null]>([
    ['nothing to test', [...LOOK, sees('full'), CONCLUDE], 'no-retest'],
    ['not yet tested', none, null],
    ['passed', [...none, ready('pattern'), look('full', 'full')], 'cured'],
    ['as before', [...none, ready('pattern'), look('weak', 'none')], 'not-cured'],
    [
      'otherwise',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, ready('feed')],
        again('feed', { typed: '6', value: 6, outcome: 'high' }),
        ...[ready('pattern'), look('full', 'full')],
      ],
      'changed',
    ],
    [
      'the last try counts',
      [
        ...[...none, ready('pattern'), look('weak', 'none')],
        ...[ready('pattern'), look('full', 'full')],
      ],
      'cured',
    ],
    ['not possible, and nothing else to test', [...none, cannot('pattern')], 'no-retest'],
    [
      'one of two was not possible, the other passes',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, cannot('feed')],
        ...[ready('pattern'), look('full', 'full')],
      ],
      'not-shown',
    ],
    [
      'one of two was not possible, the other fails',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, cannot('feed')],
        ...[ready('pattern'), look('weak', 'none')],
      ],
      'not-cured',
    ],
    [
      'what was not possible was possible after all',
      [...none, cannot('pattern'), ready('pattern'), look('full', 'full')],
      'cured',
    ],
    [
      'one of two fails as before',
      [
        ...[DONE, ACK, volts(4), ACK, sees('none'), CONCLUDE, PAUSE, RESUME],
        ready('feed'),
        again('feed', { value: 5, outcome: 'good' }),
        ready('pattern'),
        look('weak', 'none'),
      ],
      'not-cured',
    ],
    [
      'a test that was never made before cannot have changed',
      [
        ...[DONE, { type: 'cannot-do', reason: 'no room' } as const, ACK, sees('none'), CONCLUDE],
        ...[PAUSE, RESUME, ready('pattern')],
        look('weak', 'none'),
      ],
      'not-cured',
    ],
  ])('%s: %s', (_, commands, verdict) => {
    expect(retestVerdict(sessionAfter(commands))).toBe(verdict);
  });
});

describe('the fold', () => {
  test('begins with the first event, once', () => {
    expect(() => replay([])).toThrow(/first event/);
    const note = { type: 'note-added', step: 'prepare', text: 'x', ...when(1) } as SessionEvent;
    expect(() => replay([note])).toThrow(/first event/);
    expect(() => evolve(openSession(opened()), opened())).toThrow(/opened once/);
  });

  test('leaves the state before as it was', () => {
    const before = sessionAfter([DONE, ACK]);
    const copy = structuredClone(before);
    const decision = decide(before, volts(5), when(3));
    if (decision.ok) evolve(before, decision.events[0]!);
    expect(before).toEqual(copy);
  });

  test('what only the file needs changes nothing but the list', () => {
    const session = sessionAfter([DONE]);
    for (const type of ['recovered', 'segment-continued'] as const) {
      const event = { type, ...when(2) } as unknown as SessionEvent;
      expect(evolve(session, event)).toEqual({ ...session, events: [...session.events, event] });
    }
  });

  test('cautions of one vehicle state add up; another state forgets them', () => {
    const caution = (state: string, id: string) =>
      ({
        type: 'caution-acknowledged',
        step: 'feed',
        state,
        cautions: [{ id, word: 'CAUTION', text: '' }],
        ...when(1),
      }) as SessionEvent;
    const ids = (...events: SessionEvent[]) =>
      events.reduce(evolve, openSession(opened())).acknowledged.ids;
    expect(ids(caution('key-on', 'a'), caution('key-on', 'b'), caution('key-on', 'a'))).toEqual([
      'a',
      'b',
    ]);
    expect(ids(caution('key-on', 'a'), caution('cranking', 'b'))).toEqual(['b']);
  });

  test('a tree with a loop is walked a thousand steps and no further', () => {
    const event = { type: 'step-done', step: 'prepare', go: 'prepare', ...when(1) } as const;
    const answers = Array.from({ length: 1200 }, () => ({ event, superseded: false }));
    expect(walk({ procedure: TREE }, answers)).toHaveLength(1000);
  });

  test('a walk may begin elsewhere', () => {
    expect(walk({ procedure: TREE, from: 'pattern' }, [])).toEqual([
      { step: 'pattern', answer: null },
    ]);
  });
});
