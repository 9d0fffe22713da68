/** What each command needs of the session, in words of codes; the steps are those of `sample-tree.ts`. */
import { describe, expect, test } from 'vitest';
import type { KeptShown } from '../../src/circuit/shown-of.ts';
import type { Command } from '../../src/session/command.ts';
import { conclusionWords } from '../../src/session/conclusion-words.ts';
import { decide } from '../../src/session/decide.ts';
import { type ExpectedShown, piecesAmong, type SessionEvent } from '../../src/session/events.ts';
import { evolve, openSession, replay, walk } from '../../src/session/evolve.ts';
import { expectedReading } from '../../src/session/expected-reading.ts';
import { judgeStep, judgeTest } from '../../src/session/judge-step.ts';
import { pendingCautions } from '../../src/session/pending-cautions.ts';
import { refusalWords } from '../../src/session/refusal.ts';
import type { Session } from '../../src/session/session.ts';
import { opened, sessionAfter, TREE, when } from './sample-tree.ts';
import {
  ACK,
  again,
  CLOSE,
  CONCLUDE,
  CONCLUDED,
  DONE,
  END,
  EXTRA,
  LOOK,
  PAUSE,
  RESUME,
  said,
  sees,
  volts,
  withStep,
} from './shorthand.ts';

describe('a session', () => {
  const at: Readonly<Record<string, readonly Command[]>> = {
    open: [DONE, ACK],
    paused: [DONE, ACK, PAUSE],
    concluded: CONCLUDED,
    closed: [...CONCLUDED, CLOSE],
  };
  test.each<[string, Command, string]>([
    ['open', PAUSE, 'session-paused'],
    ['open', EXTRA, 'test-recorded'],
    ['open', volts(5), 'reading-recorded'],
    ['open', ACK, 'no-caution'],
    ['open', { type: 'pass-over', cautions: ['live'] }, 'no-drill'],
    ['open', { type: 'add-note', text: ' warm ' }, 'note-added'],
    ['paused', PAUSE, 'not-open'],
    ['paused', RESUME, 'session-resumed'],
    ['paused', { type: 'add-note', text: 'warm' }, 'not-open'],
    ['concluded', PAUSE, 'session-paused'],
    ['concluded', EXTRA, 'test-recorded'],
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

  test('keeps tests that no step asked for and notes apart', () => {
    const session = sessionAfter([EXTRA, { type: 'add-note', text: 'warm' }]);
    expect(session.tests).toMatchObject([{ typed: '5', shown: { value: 5 } }]);
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
      return decision.ok ? null : refusalWords(decision.refusal);
    };
    expect(refusal(sessionAfter(at['paused']!), DONE)?.fix).toBeTruthy();
    expect(refusal(sessionAfter([DONE]), volts(5))?.fix).toBeTruthy();
    expect(refusal(sessionAfter(END), DONE)?.fix).toBe('');
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
    ['a caution where none is', sessionAfter([]), ACK, 'no-caution'],
    ['a caution at the conclusion', sessionAfter(END), ACK, 'no-caution'],
    ['an answer to a question', sessionAfter(LOOK, ask), sees('none'), 'look-recorded'],
    ['no number', sessionAfter([DONE, ACK]), volts(Number.NaN), 'not-a-number'],
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

const between = (low: number | null, high: number | null): ExpectedShown => ({
  kind: 'number',
  low,
  high,
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
  test.each<[string, KeptShown, ExpectedShown, string | null]>([
    ['within', { kind: 'number', value: 5, unit: 'V' }, between(4.75, 5.25), 'good'],
    ['below', { kind: 'number', value: 4, unit: 'V' }, between(4.75, 5.25), 'low'],
    ['over the limit', { kind: 'number', value: null, unit: 'ohm' }, between(0, 2), 'high'],
    ['above an open end', { kind: 'number', value: 5, unit: 'V' }, between(4.75, null), 'good'],
    ['of a look', { kind: 'look', look: 'full' }, between(4.75, 5.25), null],
    [
      'against looks',
      { kind: 'number', value: 5, unit: 'V' },
      { kind: 'look', looks: ['full'] },
      null,
    ],
  ])('of a test outside the tree: %s', (_, shown, expected, verdict) => {
    expect(judgeTest(shown, expected, opened().meter)?.verdict ?? null).toBe(verdict);
  });
});

describe('a conclusion', () => {
  test("of one's own needs no tree, and keeps its words", () => {
    const own = { words: ' My own ', faults: [] };
    const session = sessionAfter([DONE, { type: 'conclude', own }]);
    expect(session.concluded).toMatchObject({
      conclusion: null,
      ownWords: 'My own',
      faults: [],
      evidence: [],
      ruledOut: [],
      proven: null,
    });
    expect(conclusionWords(session)).toEqual({ title: 'My own', repair: '' });
  });
  test.each([
    ['no words', { words: '  ', faults: [] }, 'empty-text'],
    ['nothing', { words: null, faults: [] }, 'empty-text'],
    // the sample tree has no circuit
    ['a fault without a circuit', { words: null, faults: ['x'] }, 'no-circuit'],
  ])("of one's own with %s is refused", (_, own, code) => {
    expect(said(sessionAfter([DONE]), { type: 'conclude', own })).toBe(code);
  });
  test('of the tree is written in the words of the vehicle, with its weight', () => {
    const named = withStep('broken', { title: 'At {sensor.feed}', repair: 'See {sensor.feed}.' });
    const weighed = { evidence: [], ruledOut: [{ repair: 'a', by: [3] }], proven: false };
    const session = sessionAfter([...END, { type: 'conclude', weighed }], named);
    expect(session.concluded).toMatchObject({
      ruledOut: [{ repair: 'a', by: [3] }],
      proven: false,
    });
    const words = conclusionWords(session);
    expect(words?.title).toMatch(/^At [^{}]+$/);
    expect(words?.repair).toMatch(/^See [^{}]+\.$/);
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

test('a reading that only carries a conclusion is not counted among its pieces', () => {
  const line = { reading: 3, counted: true };
  expect(piecesAmong([line, { ...line, counted: false }, line])).toBe(2);
  expect(piecesAmong([])).toBe(0);
});
