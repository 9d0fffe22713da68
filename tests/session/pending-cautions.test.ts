/** Which cautions stand before what is done next. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import type { Test, VehicleState } from '../../src/circuit/test.ts';
import type { CautionRule } from '../../src/procedure/cautions.ts';
import { type Drive, emptyJob } from '../../src/procedure/job.ts';
import { type Caution, isTask } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import {
  pendingCautions,
  pendingTestCautions,
  testCautions,
} from '../../src/session/pending-cautions.ts';
import { cautionsInShort } from '../../src/session/read-cautions.ts';
import type { Session } from '../../src/session/session.ts';
import { stoodInShort } from '../../src/session/stood-in-short.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { LIBRARY_CAUTIONS } from './library-cautions.ts';
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

  it('read at an earlier test in this state stand in short and stop nothing, before another cranking too', () => {
    const cranking = feedIn('cranking');
    const read = { type: 'acknowledge-cautions', test: cranking } as const;
    const once = outside([DONE, ACK, read, record(cranking)]);
    expect(idsFor(once, cranking)).toEqual([]);
    expect(shortOf(once, testCautions(once, cranking), 'cranking')).toEqual(['turns', 'live']);
    expect(said(once, record(cranking))).not.toBe('caution-first');
    // back at the key-on step: what was read there holds; cranking never was before this step
    const feed = TREE.steps['feed']!;
    expect(pendingCautions(once, feed)).toEqual([]);
    const [stands] = cautionsInShort(once, 'key-on', cautionsOf('feed'));
    expect(stands?.read).toMatchObject({ step: 'feed', state: 'key-on' });
  });

  it('that are a DANGER stand whole and stop before each cranking and in each state', () => {
    const grave = RULES.map((rule) => ({ ...rule, word: 'DANGER' as const }));
    const cranking = feedIn('cranking');
    const read = { type: 'acknowledge-cautions', test: cranking } as const;
    const once = sessionAfter([DONE, read, record(cranking)], TREE, { cautionRules: grave });
    expect(idsFor(once, cranking)).toEqual(['live', 'turns']);
    expect(shortOf(once, testCautions(once, cranking), 'cranking')).toEqual([]);
  });

  describe('where nobody has said what drives the vehicle', () => {
    const grave: CautionRule = {
      ...{ id: 'drive', word: 'DANGER', say: 'Look for orange cables.', drives: [], when: [] },
      ...{ hazards: ['high-voltage'], states: ['key-off', 'key-on', 'cranking'] },
    };
    const read = (test: Test): Command => ({ type: 'acknowledge-cautions', test });
    const [off, on, turns] = [feedIn('key-off'), feedIn('key-on'), feedIn('cranking')];
    const driven = (drive: Drive, ...tests: readonly Test[]) =>
      sessionAfter(
        tests.flatMap((test): Command[] => [read(test), record(test)]),
        null,
        {
          cautionRules: [grave],
          job: { ...emptyJob('x'), vehicle: { ...emptyJob('x').vehicle, drive } },
        },
      );
    it.each<[string, Session, Test, string[]]>([
      ['each new state', driven('not-stated', off), on, ['drive']],
      ['the first cranking', driven('not-stated', off, on), turns, ['drive']],
      ['no second time in a state', driven('not-stated', off, on), off, []],
      ['no second cranking', driven('not-stated', turns), turns, []],
    ])('its DANGER stops %s', (_, session, test, ids) => {
      expect(idsFor(session, test)).toEqual(ids);
      if (ids.length === 0)
        expect(shortOf(session, testCautions(session, test), test.setup.state)).toEqual(['drive']);
    });
    it('and one of a drive that is stated stops each time', () => {
      expect(idsFor(driven('electric', off, on), off)).toEqual(['drive']);
      expect(idsFor(driven('hybrid', turns), turns)).toEqual(['drive']);
    });
  });

  it('that are a NOTICE and were read stand in short in the next state, and new hazards stop', () => {
    const notices = RULES.map((rule) =>
      rule.id === 'live' ? { ...rule, word: 'NOTICE' as const } : rule,
    );
    const keyOn = feedIn('key-on');
    const session = sessionAfter(
      [{ type: 'acknowledge-cautions', test: keyOn }, record(keyOn)],
      null,
      { cautionRules: notices },
    );
    const cranking = feedIn('cranking');
    expect(idsFor(session, cranking)).toEqual(['turns']);
    expect(shortOf(session, testCautions(session, cranking), 'cranking')).toEqual(['live']);
  });

  it('that stand in short may be acknowledged again, and only what is new where something is', () => {
    const running = feedIn('running');
    const read = { type: 'acknowledge-cautions', test: running } as const;
    const keyOn = feedIn('key-on');
    const back = outside([DONE, ACK, read, record(running), record(keyOn)]);
    expect(idsFor(back, running)).toEqual([]);
    const again = outside([DONE, ACK, read, record(running), record(keyOn), read]);
    expect(again.acknowledgements.at(-1)?.cautions.map(({ id }) => id)).toEqual(['turns', 'live']);
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
    // the vehicle came out of cranking: what was read for it stands in short
    expect(pendingCautions(after)).toEqual([]);
    expect(stoodInShort(after)).toEqual([]);
  });

  it('read in this state are not asked again before a test that no step asks for', () => {
    expect(idsFor(outside([DONE]), feedIn('key-on'))).toEqual(['live']);
    expect(idsFor(outside([DONE, ACK]), feedIn('key-on'))).toEqual([]);
  });

  it('of a look into a connector are those of opening it', () => {
    const test = { setup: KEY_ON, probe: { kind: 'inspect', of: 'connector.sensor' } } as const;
    expect(idsFor(outside([DONE, ACK]), test)).toEqual(['unplug-key-off']);
  });

  it("of turning the engine to the maker's marks are those of turning it by hand", () => {
    const test = { setup: KEY_ON, probe: { kind: 'inspect', of: 'target.marks' } } as const;
    expect(idsFor(outside([DONE, ACK]), test)).toEqual(['turned-by-hand']);
  });

  it.each([
    ['hall-module-fed', { kind: 'inspect', of: 'target' }, 'still', ['turned-by-hand']],
    ['current-two-wire', { kind: 'inspect', of: 'target.turning' }, 'still', ['raised-wheel']],
    ['current-two-wire', { kind: 'inspect', of: 'connector.sensor' }, 'still', ['unplug-key-off']],
    ['current-two-wire', { kind: 'counts', input: 'module.signal' }, 'moving', ['raised-wheel']],
    ['current-two-wire', { kind: 'counts', input: 'module.signal' }, 'still', []],
    [
      'throttle-potentiometer',
      { kind: 'counts', input: 'module.signal' },
      'moving',
      ['throttle-snaps'],
    ],
  ] as const)('of a test in %s that no step asks for, %o, %s', (name, probe, target, ids) => {
    const file = `procedures/circuits/${name}.yaml`;
    const circuit = loadCircuit(readFileSync(file, 'utf8'), file).value!;
    const session = sessionAfter([DONE, ACK], TREE, { cautionRules: LIBRARY_CAUTIONS, circuit });
    const all = testCautions(session, { setup: { ...KEY_ON, target }, probe }).map(({ id }) => id);
    expect(all.filter((id) => HANDS.includes(id))).toEqual(ids);
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

  it('are asked again after a pause, though they were read in this state before', () => {
    const cranking = feedIn('cranking');
    const read = { type: 'acknowledge-cautions', test: cranking } as const;
    const later = outside([DONE, ACK, read, record(cranking), PAUSE, RESUME]);
    expect(idsFor(later, cranking)).toEqual(['turns', 'live']);
  });

  it('read before the conclusion are asked again when the session goes on after it', () => {
    const cranking = feedIn('cranking');
    const read = { type: 'acknowledge-cautions', test: cranking } as const;
    const way = [DONE, ACK, read, record(cranking), volts(9), CONCLUDE] as const;
    expect(idsFor(outside(way), cranking)).toEqual(['turns', 'live']);
    expect(idsFor(outside([...way, { type: 'go-back' }]), cranking)).toEqual(['turns', 'live']);
  });

  it('that stood in short are told for the record: before which test, and where they were read', () => {
    const cranking = feedIn('cranking');
    const read = { type: 'acknowledge-cautions', test: cranking } as const;
    const session = outside([
      ...[DONE, ACK, read, record(cranking), record(cranking)],
      // the second in a row of one state and the one written down later tell nothing more
      ...[
        record(feedIn('key-on')),
        record(feedIn('key-on')),
        { ...record(cranking), made: '14:05' },
      ],
    ]);
    expect(
      stoodInShort(session).map(({ event, caution, read: by }) => [
        session.events.indexOf(event) + 1,
        caution.id,
        session.events.indexOf(by) + 1,
      ]),
    ).toEqual([
      // by hand: 1 opened, 2 done, 3 read, 4 read, 5 cranked, 6 cranked, 7 and 8 key on
      [6, 'turns', 4],
      [6, 'live', 4],
      [7, 'live', 3],
    ]);
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
  {
    id: 'turned-by-hand',
    word: 'WARNING',
    say: 'Key out before the engine is turned by hand.',
    hazards: ['unexpected-start'],
    states: [],
    drives: [],
    when: [],
  },
];

/** What a hand does, by the cautions of the library. */
const HANDS = ['turned-by-hand', 'raised-wheel', 'unplug-key-off', 'throttle-snaps'];

function outside(commands: readonly Command[]): Session {
  return sessionAfter(commands, TREE, { cautionRules: RULES });
}

function feedIn(state: VehicleState): Test {
  const target = state === 'key-on' ? 'still' : 'moving';
  const probe = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;
  return { setup: { ...KEY_ON, state, target }, probe };
}

function record(test: Test): Extract<Command, { type: 'record-test' }> {
  const shown = { kind: 'number', value: 5, unit: 'V' } as const;
  return { type: 'record-test', test, typed: '5', shown, expected: null };
}

function shortOf(session: Session, cautions: readonly Caution[], state: VehicleState): string[] {
  return cautionsInShort(session, state, cautions).map(({ caution }) => caution.id);
}

function idsFor(session: Session, test: Test): string[] {
  return pendingTestCautions(session, test).map(({ id }) => id);
}

function cautionsOf(id: string): readonly Caution[] {
  const step = TREE.steps[id]!;
  return isTask(step) ? step.cautions : [];
}
