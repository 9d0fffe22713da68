/** Which cautions stand before what is done next. */
import { describe, expect, it } from 'vitest';
import type { VehicleState } from '../../src/circuit/test.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { pendingCautions, readNote, unreadCautions } from '../../src/session/pending-cautions.ts';
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

  it('read in this state are not asked again before a test outside the tree', () => {
    const { cautions } = TREE.steps['pattern'] as Extract<Step, { kind: 'look' }>;
    const probe = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;
    const unread = (commands: readonly Command[]) =>
      unreadCautions(sessionAfter(commands), { setup: KEY_ON, probe }, cautions);
    expect(unread([DONE]).map(({ id }) => id)).toEqual(['turns', 'live']);
    expect(unread([DONE, ACK]).map(({ id }) => id)).toEqual(['turns']);
  });

  it('of a test outside the tree are kept in a note, each with its word', () => {
    const { cautions } = TREE.steps['pattern'] as Extract<Step, { kind: 'look' }>;
    const note = readNote(cautions);
    expect(note.type).toBe('add-note');
    expect(sessionAfter([DONE, note]).notes[0]?.text).toMatch(
      /WARNING: The engine turns\. CAUTION: The circuits are live\.$/,
    );
  });
});
