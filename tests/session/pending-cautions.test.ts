/** Which cautions stand before what is done next. */
import { describe, expect, it } from 'vitest';
import type { Test, VehicleState } from '../../src/circuit/test.ts';
import type { CautionRule } from '../../src/procedure/cautions.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { pendingCautions, pendingTestCautions } from '../../src/session/pending-cautions.ts';
import type { Session } from '../../src/session/session.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { sessionAfter, TREE } from './sample-tree.ts';
import { ACK, CONCLUDE, DONE, PAUSE, RESUME, said, volts } from './shorthand.ts';

describe('cautions', () => {
  it('come before the reading and are asked once in a vehicle state', () => {
    const fresh = sessionAfter([DONE]);
    expect(said(fresh, volts(5))).toBe('caution-first');
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

  it('of a test that no step asks for come before it, and bring its state', () => {
    const atPattern = outside([DONE, ACK, volts(5), ACK]);
    expect(pendingCautions(atPattern)).toEqual([]);
    const running = feedIn('running');
    expect(idsFor(atPattern, running)).toEqual(['turns', 'live']);
    expect(said(atPattern, record(running))).toBe('caution-first');
    const read = { type: 'acknowledge-cautions', test: running } as const;
    const after = outside([DONE, ACK, volts(5), ACK, read, record(running)]);
    expect(after.acknowledgements.at(-1)).toMatchObject({ step: null, state: 'running' });
    // the vehicle came out of cranking, so the step asks anew
    expect(pendingCautions(after)).toHaveLength(2);
  });

  it('of cranking come before each cranking of a test that no step asks for too', () => {
    const cranking = feedIn('cranking');
    const read = { type: 'acknowledge-cautions', test: cranking } as const;
    const once = outside([DONE, read, record(cranking)]);
    expect(idsFor(once, cranking)).toEqual(['turns', 'live']);
  });

  it('read in this state are not asked again before a test that no step asks for', () => {
    expect(idsFor(outside([DONE]), feedIn('key-on'))).toEqual(['live']);
    expect(idsFor(outside([DONE, ACK]), feedIn('key-on'))).toEqual([]);
  });

  it('of a look into a connector are those of opening it', () => {
    const test = { setup: KEY_ON, probe: { kind: 'inspect', of: 'connector.sensor' } } as const;
    expect(idsFor(outside([DONE, ACK]), test)).toEqual(['unplug-key-off']);
  });

  it('name the person whom a program names', () => {
    const session = sessionAfter([DONE, { type: 'acknowledge-cautions', readBy: 'R. Example' }]);
    expect(session.acknowledgements[0]).toMatchObject({ readBy: 'R. Example' });
  });

  it('keep the text that was shown', () => {
    expect(sessionAfter([DONE, ACK]).acknowledgements[0]?.cautions).toEqual([
      { id: 'live', word: 'CAUTION', text: 'The circuits are live.' },
    ]);
  });

  it('are asked again after a pause', () => {
    const session = sessionAfter([DONE, ACK, PAUSE, RESUME]);
    expect(pendingCautions(session)).toHaveLength(1);
  });

  it('are asked again after the repair, though nothing moved, until they are read anew', () => {
    const feed = TREE.steps['feed']!;
    const again = (more: readonly Command[]) =>
      pendingCautions(sessionAfter([DONE, ACK, volts(9), ...more]), feed).map(({ id }) => id);
    expect(again([])).toEqual([]);
    expect(again([CONCLUDE])).toEqual(['live']);
    expect(again([CONCLUDE, { type: 'acknowledge-cautions', step: 'feed' }])).toEqual([]);
  });
});

/** As cautions.yaml gives them: which stand before which test. */
const RULES: readonly CautionRule[] = [
  {
    id: 'live',
    word: 'CAUTION',
    say: 'The circuits are live.',
    hazards: ['energised-circuit'],
    states: ['key-on', 'cranking', 'running'],
    drives: [],
    when: [],
  },
  {
    id: 'turns',
    word: 'WARNING',
    say: 'The engine turns.',
    hazards: ['rotating-parts'],
    states: ['cranking', 'running'],
    drives: [],
    when: [],
  },
  {
    id: 'unplug-key-off',
    word: 'CAUTION',
    say: 'Key off before a plug is opened.',
    hazards: ['energised-circuit'],
    states: [],
    drives: [],
    when: [],
  },
];

function outside(commands: readonly Command[]): Session {
  return sessionAfter(commands, TREE, { cautionRules: RULES });
}

function feedIn(state: VehicleState): Test {
  const target = state === 'key-on' ? 'still' : 'moving';
  const probe = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;
  return { setup: { ...KEY_ON, state, target }, probe };
}

function record(test: Test): Command {
  const shown = { kind: 'number', value: 5, unit: 'V' } as const;
  return { type: 'record-test', test, typed: '5', shown, expected: null };
}

function idsFor(session: Session, test: Test): string[] {
  return pendingTestCautions(session, test).map(({ id }) => id);
}
