/**
 * A connector that cannot be reached, or a state that the vehicle cannot be had in, is said once: what needs it is proposed
 * no more, and the tree goes round it.
 */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { touchedConnectors, touchesConnector } from '../../src/circuit/touched-connectors.ts';
import { allTests } from '../../src/session/advisor.ts';
import { answeredJustNow } from '../../src/session/answering-test.ts';
import type { Command } from '../../src/session/command.ts';
import { drivePlan } from '../../src/session/drive-plan.ts';
import type { DrillVehicle, SessionEvent } from '../../src/session/events.ts';
import { replay } from '../../src/session/evolve.ts';
import { gapsOf } from '../../src/session/gaps.ts';
import { checkHistory } from '../../src/session/history.ts';
import {
  asideBack,
  asideCommand,
  goneRoundFor,
  reopenedFor,
  stateAsideCommand,
  statesOut,
} from '../../src/session/out-of-reach.ts';
import { presentStep, type Session } from '../../src/session/session.ts';
import { testsToChoose } from '../../src/session/session-tests.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { shipped } from '../circuit/shipped.ts';
import { sessionAfter, TREE } from './sample-tree.ts';
import { ACK, DONE, volts, withStep } from './shorthand.ts';
import { shopFor, after as taken } from './walk-library.ts';

const CIRCUIT = shipped('hall-module-fed');
const REASON = 'the connector of the sensor could not be reached';
const OUT: Command = {
  type: 'set-connector-aside',
  part: 'sensor',
  aside: true,
  reason: REASON,
};
const IN: Command = { ...OUT, aside: false, reason: '' };
const ROUND = (by: number): Command => ({ type: 'go-round', by });
const walked = (...commands: Command[]): Session =>
  sessionAfter(commands, TREE, { circuit: CIRCUIT });
const volt = (plus: string, minus = 'battery.negative', unplugged: string[] = []): Test => ({
  setup: setupOf({ unplugged }),
  probe: { kind: 'volts', plus, minus },
});

describe('a test needs the connector', () => {
  it.each<[string, Test, string[]]>([
    ['of a lead', volt('sensor.feed'), ['sensor']],
    ['of the own pin of a part', volt('sensor.feed.pin'), ['sensor']],
    ['of both leads', volt('module.signal', 'sensor.ground'), ['sensor', 'module']],
    ['that is off', volt('module.signal', 'battery.negative', ['sensor']), ['sensor', 'module']],
    ['of no lead at the battery', volt('battery.positive'), []],
    [
      'of a bridge',
      {
        setup: {
          ...KEY_ON,
          bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: 'lead' }],
        },
        probe: { kind: 'counts', input: 'module.signal' },
      },
      ['sensor'],
    ],
    [
      'of a spare sensor',
      { setup: { ...KEY_ON, sensor: 'spare' }, probe: { kind: 'counts', input: 'module.signal' } },
      ['sensor'],
    ],
    [
      'that is looked at',
      { setup: KEY_ON, probe: { kind: 'inspect', of: 'connector.sensor' } },
      ['sensor'],
    ],
    ['of no live data', { setup: KEY_ON, probe: { kind: 'counts', input: 'module.signal' } }, []],
  ])('%s', (_, test, parts) => {
    expect(touchedConnectors(CIRCUIT, test).sort()).toEqual([...parts].sort());
  });
});

describe('a connector that cannot be reached', () => {
  it('is said once and taken back', () => {
    expect(walked(OUT).unreached).toEqual([{ part: 'sensor', reason: REASON, by: 2 }]);
    expect(walked(OUT, IN).unreached).toEqual([]);
    expect(() => walked(OUT, OUT)).toThrow(/nothing-to-take-back/);
    expect(() => walked(IN)).toThrow(/nothing-to-take-back/);
    expect(() => walked({ ...OUT, reason: ' ' })).toThrow(/empty-text/);
  });

  it('is one of the circuit, where there is one, and not of a drill', () => {
    expect(() => walked({ ...OUT, part: 'lambda' })).toThrow(/no-such-connector/);
    expect(() => sessionAfter([OUT], TREE)).toThrow(/no-circuit/);
    const vehicle = {
      kind: 'drill',
      level: 'named',
      seed: 1,
      commitment: 'x',
      earlierRepair: null,
      assignment: null,
    } as const;
    expect(() => sessionAfter([OUT], TREE, { circuit: CIRCUIT, vehicle })).toThrow(/all-in-reach/);
  });

  it('or a test, whatever was set aside last, is taken back first', () => {
    const test = volt('module.signal');
    const aside = { type: 'set-test-aside', test, aside: true } as const;
    const both = walked(OUT, aside);
    expect(asideBack(both)).toEqual({ ...aside, aside: false });
    expect(asideBack(walked(OUT, aside, { ...aside, aside: false }))).toEqual(IN);
    expect(asideBack(walked(OUT, IN))).toBeNull();
  });

  it('is said in words of its circuit where the person gives none', () => {
    expect(asideCommand(walked(), 'sensor')).toMatchObject({
      reason: expect.stringMatching(/^the connector of the .* could not be reached$/),
    });
    expect(asideCommand(walked(), 'sensor', 'behind the starter')).toMatchObject({
      reason: 'behind the starter',
    });
  });
});

it('leaves the tests that need it off the list to choose from, until it is taken back', () => {
  const needs = (session: Session) =>
    testsToChoose(session).filter(({ test }) => touchesConnector(CIRCUIT, test, 'sensor')).length;
  expect(needs(walked())).toBeGreaterThan(0);
  expect(needs(walked(OUT))).toBe(0);
  expect(testsToChoose(walked(OUT)).length).toBeGreaterThan(0);
  expect(needs(walked(OUT, IN))).toBe(needs(walked()));
});

describe('the tree goes round it', () => {
  it('with the reason, at the way that the step has', () => {
    const asked = walked(OUT, DONE);
    expect(presentStep(asked)?.id).toBe('feed');
    expect(goneRoundFor(asked)).toBe(2);
    const session = walked(OUT, DONE, ROUND(2));
    expect(session.events.at(-1)).toMatchObject({
      ...{ type: 'step-impossible', step: 'feed', reason: REASON, go: 'pattern', by: 2 },
    });
    expect(presentStep(session)?.id).toBe('pattern');
    expect(answeredJustNow(session).map(({ step }) => step)).toEqual(['feed']);
    expect(gapsOf(session).map(({ step }) => step)).toEqual(['feed']);
    // Nothing was done to the vehicle: what was read of its cautions still holds.
    expect(session.acknowledged).toEqual(walked(OUT, DONE).acknowledged);
  });

  it('not round a step that has no way round, nor one that needs another connector', () => {
    const module = { ...OUT, part: 'module' };
    expect(goneRoundFor(walked(module, DONE))).toBeNull();
    const pattern = walked(module, DONE, ACK, volts(5));
    expect(presentStep(pattern)?.id).toBe('pattern');
    expect(goneRoundFor(pattern)).toBeNull();
    expect(goneRoundFor(walked(OUT, IN, DONE))).toBeNull();
  });

  it('and comes back to the first step that it went round, once that can be reached after all', () => {
    expect(reopenedFor(walked(OUT, DONE, ROUND(2)))).toBeNull();
    const taken = walked(OUT, DONE, ROUND(2), IN);
    const to = reopenedFor(taken)!;
    expect(taken.trail[to]?.step).toBe('feed');
    const back = walked(OUT, DONE, ROUND(2), IN, { type: 'go-back', to });
    expect(presentStep(back)?.id).toBe('feed');
    expect([goneRoundFor(back), reopenedFor(back)]).toEqual([null, null]);
    // Another one that is taken back reopens nothing.
    const module = { ...OUT, part: 'module' };
    const other = walked(OUT, module, DONE, ROUND(2), { ...module, aside: false, reason: '' });
    expect(reopenedFor(other)).toBeNull();
  });

  it('nor round one whose answer was taken back since: it is asked', () => {
    const back = walked(OUT, DONE, ROUND(2), { type: 'go-back' });
    expect(presentStep(back)?.id).toBe('feed');
    expect(goneRoundFor(back)).toBeNull();
    expect(presentStep(walked(DONE, ACK, volts(5), OUT))?.id).toBe('pattern');
  });
});

describe('a file', () => {
  const { events } = walked(OUT, DONE, ROUND(2), IN);
  const flaw = (seq: number, part: object) =>
    checkHistory(
      events.map((event, at) => (at === seq - 1 ? ({ ...event, ...part } as SessionEvent) : event)),
    ).flaw;

  it('of it follows from what was recorded, and is read again', () => {
    expect(checkHistory(events).flaw).toBeNull();
    expect(replay(events).unreached).toEqual([]);
    expect(replay(events.slice(0, 4)).unreached).toMatchObject([{ by: 2 }]);
  });

  it('with a part that the circuit does not have is false', () => {
    expect(flaw(2, { part: 'lambda' })?.words).toMatch(/no connector of a part "lambda"/);
  });

  it('with a step that was gone round for another event, part or reason is false', () => {
    expect(flaw(4, { by: 1 })?.seq).toBe(4);
    expect(flaw(4, { reason: 'no time' })?.seq).toBe(4);
    expect(flaw(2, { part: 'module' })?.seq).toBe(4);
    expect(flaw(5, { reason: 'x' })?.seq).toBe(5);
  });
});

describe('the advisor', () => {
  it('proposes nothing that needs the connector, until it can be reached after all', () => {
    const { model, advisor, begun } = shopFor('hall-no-signal');
    const { circuit } = model;
    const touching = (session: Session) =>
      allTests(advisor, session).filter(({ test }) => touchesConnector(circuit, test, 'sensor'));
    expect(touching(begun).length).toBeGreaterThan(0);
    const said = taken(begun, OUT);
    expect(touching(said)).toEqual([]);
    expect(allTests(advisor, said).length).toBeGreaterThan(0);
    expect(touching(taken(said, IN)).length).toBeGreaterThan(0);
  });
});

describe('a vehicle state that cannot be had', () => {
  const words = 'the engine could not be cranked';
  const NO_CRANK: Command = {
    type: 'set-state-aside',
    state: 'cranking',
    aside: true,
    reason: words,
  };
  const CRANKS: Command = { ...NO_CRANK, aside: false, reason: '' };
  const NO_RUN: Command = { ...NO_CRANK, state: 'running', reason: 'no coolant in it' };

  it.each([
    ['key-on', ['key-on', 'cranking', 'running', 'driving']],
    ['cranking', ['cranking', 'running', 'driving']],
    ['running', ['running', 'driving']],
  ] as const)('%s takes with it what is reached through it', (state, out) => {
    expect(statesOut(walked({ ...NO_CRANK, state }))).toEqual(out);
  });

  it('is said once, in words of its own where the person gives none, and taken back', () => {
    expect(stateAsideCommand('cranking')).toEqual(NO_CRANK);
    expect(stateAsideCommand('running', 'no coolant in it')).toEqual(NO_RUN);
    expect(walked(NO_CRANK).unreached).toEqual([{ state: 'cranking', reason: words, by: 2 }]);
    expect(statesOut(walked(NO_CRANK, CRANKS))).toEqual([]);
    expect(() => walked(NO_CRANK, NO_CRANK)).toThrow(/nothing-to-take-back/);
    expect(() => walked(CRANKS)).toThrow(/nothing-to-take-back/);
    expect(() => walked({ ...NO_CRANK, reason: ' ' })).toThrow(/empty-text/);
    expect(asideBack(walked(OUT, NO_CRANK))).toEqual(CRANKS);
    expect(asideBack(walked(OUT, NO_CRANK, CRANKS))).toEqual(IN);
  });

  it('needs no circuit, and is not said of a drill, whose vehicle does as it is told', () => {
    expect(statesOut(sessionAfter([NO_RUN], TREE))).toEqual(['running', 'driving']);
    const vehicle = {
      ...{ kind: 'drill', level: 'named', seed: 1, commitment: 'x' },
      ...{ earlierRepair: null, assignment: null },
    } as DrillVehicle;
    expect(() => sessionAfter([NO_RUN], TREE, { circuit: CIRCUIT, vehicle })).toThrow(/all-states/);
  });

  it('takes its tests off the list to choose from', () => {
    const states = (session: Session) =>
      new Set(testsToChoose(session).map(({ test }) => test.setup.state));
    expect(states(walked())).toContain('cranking');
    expect([...states(walked(NO_CRANK))].sort()).toEqual(['key-off', 'key-on']);
  });

  it('is gone round by the tree, and the step comes back once it can be had after all', () => {
    const turns = withStep('pattern', { cannot: 'fine' });
    const at = (...commands: Command[]) => sessionAfter(commands, turns, { circuit: CIRCUIT });
    const asked = at(NO_CRANK, DONE, ACK, volts(5));
    expect([presentStep(asked)?.id, goneRoundFor(asked)]).toEqual(['pattern', 2]);
    // It is not running that is wanted.
    expect(goneRoundFor(at(NO_RUN, DONE, ACK, volts(5)))).toBeNull();
    const round = at(NO_CRANK, DONE, ACK, volts(5), ROUND(2));
    expect(round.events.at(-1)).toMatchObject({ type: 'step-impossible', reason: words, by: 2 });
    const taken = at(NO_CRANK, DONE, ACK, volts(5), ROUND(2), CRANKS);
    expect(taken.trail[reopenedFor(taken)!]?.step).toBe('pattern');
    expect(checkHistory(taken.events).flaw).toBeNull();
    expect(replay(taken.events).unreached).toEqual([]);
  });

  it('is proposed in no test, until it can be had after all', () => {
    const { advisor, begun } = shopFor('hall-no-signal');
    const turning = (session: Session) =>
      allTests(advisor, session).filter(({ test }) => test.setup.state === 'cranking').length;
    expect(turning(begun)).toBeGreaterThan(0);
    const said = taken(begun, NO_CRANK);
    expect(turning(said)).toBe(0);
    expect(allTests(advisor, said).length).toBeGreaterThan(0);
    expect(turning(taken(said, CRANKS))).toBeGreaterThan(0);
  });

  it('takes the recording on a drive with it', () => {
    const { begun } = shopFor('hall-no-signal');
    expect(drivePlan(begun)).not.toBeNull();
    expect(drivePlan(taken(begun, NO_RUN))).toBeNull();
  });
});
