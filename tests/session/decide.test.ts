import { describe, expect, it } from 'vitest';
import type { Command } from '../../src/session/command.ts';
import { conclusionWords } from '../../src/session/conclusion-words.ts';
import { decide } from '../../src/session/decide.ts';
import { presentStep, type Session, standingAnswers } from '../../src/session/session.ts';
import { sessionAfter, when } from './sample-tree.ts';
import { ACK, DONE, sees, volts } from './shorthand.ts';

function refusal(session: Session, command: Command): string | null {
  const decision = decide(session, command, when(50));
  return decision.ok ? null : decision.refusal.code;
}

describe('the way through a tree', () => {
  it('starts at the first step', () => {
    expect(presentStep(sessionAfter([]))?.id).toBe('prepare');
  });

  it('takes the outcome whose range holds the reading; the lower end counts, the upper does not', () => {
    const at = (value: number) => sessionAfter([DONE, ACK, volts(value)]).answers[1]?.event;
    expect(at(4.7499)).toMatchObject({ outcome: 'low', judgement: { verdict: 'borderline' } });
    expect(at(4.75)).toMatchObject({ outcome: 'good' });
    expect(at(5.25)).toMatchObject({ outcome: 'high' });
  });

  it('comes to a conclusion and ends when it is accepted', () => {
    const session = sessionAfter([DONE, ACK, volts(5), ACK, sees('none'), { type: 'conclude' }]);
    expect(session.status).toBe('concluded');
    expect(session.concluded).toMatchObject({
      conclusion: 'broken',
      faults: ['wire.signal.open'],
    });
    expect(conclusionWords(session)).toEqual({ title: 'Broken', repair: 'Mend it.' });
  });

  it('keeps an over-limit as null, since JSON has no infinity', () => {
    const session = sessionAfter([
      DONE,
      ACK,
      {
        type: 'record-reading',
        typed: 'OL',
        value: Number.POSITIVE_INFINITY,
      },
    ]);
    expect(session.answers[1]?.event).toMatchObject({ value: null, outcome: 'high' });
  });
});

describe('going back', () => {
  it('supersedes the last answer and keeps it in the file', () => {
    const session = sessionAfter([DONE, ACK, volts(4), { type: 'go-back' }]);
    expect(presentStep(session)?.id).toBe('feed');
    expect(session.answers[1]).toMatchObject({ superseded: true, event: { typed: '4 V' } });
  });

  it('keeps later answers that still apply', () => {
    const session = sessionAfter([
      DONE,
      ACK,
      volts(4),
      ACK,
      sees('none'),
      { type: 'go-back', to: 1 },
      ACK,
      volts(5),
    ]);
    expect(presentStep(session)?.id).toBe('broken');
    expect(standingAnswers(session).map(({ step }) => step)).toEqual([
      'prepare',
      'feed',
      'pattern',
    ]);
  });

  it('leaves answers off the way standing for when the way comes by again', () => {
    const there = sessionAfter([
      DONE,
      ACK,
      volts(4),
      ACK,
      sees('full'),
      { type: 'go-back', to: 1 },
      ACK,
      volts(9),
    ]);
    expect(presentStep(there)?.id).toBe('shorted');
    expect(there.answers.filter(({ superseded }) => !superseded)).toHaveLength(3);
  });

  it('opens a concluded session again', () => {
    const session = sessionAfter([
      DONE,
      ACK,
      volts(5),
      ACK,
      sees('none'),
      { type: 'conclude' },
      { type: 'go-back' },
    ]);
    expect(session).toMatchObject({ status: 'open', concluded: null });
  });

  it('is refused where there is nothing to take back', () => {
    expect(refusal(sessionAfter([]), { type: 'go-back' })).toBe('nothing-to-take-back');
  });
});

describe('refusals', () => {
  it.each<[string, Command, string]>([
    ['a reading where something is to be done', volts(5), 'wrong-kind'],
    ['a conclusion before the tree has one', { type: 'conclude' }, 'not-concluded'],
    ['an empty note', { type: 'add-note', text: '  ' }, 'empty-text'],
    ['"cannot" without a reason', { type: 'cannot-do', reason: '' }, 'empty-text'],
    [
      '"cannot" where there is no way round',
      { type: 'cannot-do', reason: 'no room' },
      'no-way-round',
    ],
    [
      'a retest before the conclusion',
      { type: 'record-retest', step: 'feed', typed: '5', value: 5, look: null, outcome: 'good' },
      'not-concluded',
    ],
    ['closing before the conclusion', { type: 'close', verdict: 'cured' }, 'not-concluded'],
  ])('%s', (_, command, code) => {
    expect(refusal(sessionAfter([]), command)).toBe(code);
  });

  it('anything but resuming while paused', () => {
    expect(refusal(sessionAfter([{ type: 'pause' }]), DONE)).toBe('not-open');
  });

  it('an outcome that the step does not have, with the ones it has', () => {
    const decision = decide(sessionAfter([DONE, ACK, volts(5), ACK]), sees('odd'), when(9));
    expect(decision).toMatchObject({
      ok: false,
      refusal: { code: 'no-such-outcome', known: ['full', 'none'] },
    });
  });
});

describe('what cannot be done', () => {
  it('goes the way round with the reason kept', () => {
    const session = sessionAfter([DONE, { type: 'cannot-do', reason: 'no room for the probe' }]);
    expect(presentStep(session)?.id).toBe('pattern');
    expect(session.answers[1]?.event).toMatchObject({
      type: 'step-impossible',
      reason: 'no room for the probe',
    });
  });
});
