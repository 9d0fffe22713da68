import { describe, expect, it } from 'vitest';
import type { VehicleState } from '../../src/circuit/test.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import { pendingCautions, unreadCautions } from '../../src/session/pending-cautions.ts';
import { presentStep, type Session, standingAnswers } from '../../src/session/session.ts';
import { sessionAfter, TREE, when } from './sample-tree.ts';
import { ACK, DONE, sees, volts } from './shorthand.ts';

function refusal(session: Session, command: Command): string | null {
  const decision = decide(session, command, when(50));
  return decision.ok ? null : decision.refusal.code;
}

describe('the way through a tree', () => {
  it('starts at the first step', () => {
    expect(presentStep(sessionAfter([])).id).toBe('prepare');
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
      repair: 'Mend it.',
    });
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

describe('cautions', () => {
  it('come before the reading and are asked once in a vehicle state', () => {
    const fresh = sessionAfter([DONE]);
    expect(refusal(fresh, volts(5))).toBe('caution-first');
    expect(pendingCautions(fresh).map(({ id }) => id)).toEqual(['live']);
    expect(pendingCautions(sessionAfter([DONE, ACK]))).toEqual([]);
  });

  it('are asked again when the vehicle comes into another state, though one was acknowledged before', () => {
    const cranking = sessionAfter([DONE, ACK, volts(5)]);
    expect(pendingCautions(cranking).map(({ id }) => id)).toEqual(['turns', 'live']);
  });

  it('of cranking come before each cranking, those of a live circuit once', () => {
    const step = { ...TREE.steps['pattern']! } as Extract<Step, { kind: 'look' }>;
    const twice = (state: VehicleState): Procedure => {
      const setup = { ...step.setup, state };
      const first = step.outcomes.map((one) => ({ ...one, go: 'again' }));
      const again = { ...step, setup, id: 'again' };
      return {
        ...TREE,
        steps: { ...TREE.steps, pattern: { ...step, setup, outcomes: first }, again },
      };
    };
    const way: Command[] = [DONE, ACK, volts(5), ACK, { type: 'choose-outcome', outcome: 'full' }];
    const left = (state: VehicleState) =>
      pendingCautions(sessionAfter(way, twice(state))).map(({ id }) => id);
    expect(left('cranking')).toEqual(['turns', 'live']);
    expect(left('running')).toEqual([]);
  });

  it('of a test outside the tree are read for it alone when the engine is cranked, and bring its state', () => {
    const { setup, cautions } = TREE.steps['pattern'] as Extract<Step, { kind: 'look' }>;
    const probe = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;
    const cranking = { setup, probe };
    const atPattern = sessionAfter([DONE, ACK, volts(5), ACK]);
    expect(pendingCautions(atPattern)).toEqual([]);
    expect(unreadCautions(atPattern, cranking, cautions)).toHaveLength(2);
    const running = { setup: { ...setup, state: 'running' as const }, probe };
    expect(unreadCautions(atPattern, running, cautions)).toHaveLength(2);
    const shown = { kind: 'number', value: 5, unit: 'V' } as const;
    const outside = {
      type: 'record-extra',
      test: running,
      words: 'Feed',
      typed: '5',
      shown,
    } as const;
    expect(pendingCautions(sessionAfter([DONE, ACK, volts(5), ACK, outside]))).toHaveLength(2);
  });

  it('keep the text that was shown', () => {
    expect(sessionAfter([DONE, ACK]).acknowledgements[0]?.cautions).toEqual([
      { id: 'live', word: 'CAUTION', text: 'The circuits are live.' },
    ]);
  });

  it('are asked again after a pause', () => {
    const session = sessionAfter([
      DONE,
      ACK,
      { type: 'pause' },
      { type: 'resume', program: 'ohmward test' },
    ]);
    expect(pendingCautions(session)).toHaveLength(1);
  });
});

describe('going back', () => {
  it('supersedes the last answer and keeps it in the file', () => {
    const session = sessionAfter([DONE, ACK, volts(4), { type: 'go-back' }]);
    expect(presentStep(session).id).toBe('feed');
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
    expect(presentStep(session).id).toBe('broken');
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
    expect(presentStep(there).id).toBe('shorted');
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
    [
      'closing before the conclusion',
      { type: 'close', verdict: 'cured', words: '' },
      'not-concluded',
    ],
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
      refusal: { code: 'no-such-outcome', fix: 'one of: full, none' },
    });
  });
});

describe('what cannot be done', () => {
  it('goes the way round with the reason kept', () => {
    const session = sessionAfter([DONE, { type: 'cannot-do', reason: 'no room for the probe' }]);
    expect(presentStep(session).id).toBe('pattern');
    expect(session.answers[1]?.event).toMatchObject({
      type: 'step-impossible',
      reason: 'no room for the probe',
    });
  });
});
