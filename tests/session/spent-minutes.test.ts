/** What a session has cost so far; by hand from the cost model and the authors' minutes. */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import type { DrillVehicle, SessionOpened } from '../../src/session/events.ts';
import { meansOf, situationOf, spentMinutes, spentOn } from '../../src/session/spent-minutes.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { METER, modelOf } from '../circuit/shipped.ts';
import { sessionAfter, TREE } from './sample-tree.ts';
import { ACK, CONCLUDE, DONE, sees, volts } from './shorthand.ts';
import { WAKING } from './waking-tree.ts';

const { circuit } = modelOf('hall-module-fed', 1);
/** Volts at the feed, key on: 0.5 for the key, 0.5 for the walk and 3 to get at the sensor, so 2 of 6 minutes to read. */
const FEED_MINUTES = 6;
const minutesOf = (procedure: Procedure, minutes: Readonly<Record<string, number>>): Procedure => ({
  ...procedure,
  steps: Object.fromEntries(
    Object.entries(procedure.steps).map(([id, step]): [string, Step] => [
      id,
      step.kind === 'conclude' ? step : { ...step, minutes: minutes[id] ?? step.minutes },
    ]),
  ),
});
const TIMED = minutesOf(TREE, { prepare: 4, feed: FEED_MINUTES, pattern: 10 });
const sessionOf = (commands: readonly Command[], more: Partial<SessionOpened> = {}) =>
  sessionAfter(commands, TIMED, { circuit, ...more });
const FEED: Test = {
  setup: KEY_ON,
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
};
const record = (test: Test): Command => ({
  type: 'record-test',
  test,
  typed: '5 V',
  shown: { kind: 'number', value: 5, unit: 'V' },
  expected: null,
});
const GROUND: Test = { ...FEED, probe: { ...FEED.probe, plus: 'sensor.ground' } as Test['probe'] };

describe('minutes spent', () => {
  it('are none before anything was done', () => {
    expect(spentMinutes(sessionOf([]))).toBe(0);
  });

  it("are the author's where a step is only done", () => {
    expect(spentMinutes(sessionOf([DONE]))).toBe(4);
  });

  it("are the author's in all where a test begins the job", () => {
    expect(spentMinutes(sessionOf([DONE, ACK, volts(5)]))).toBe(4 + FEED_MINUTES);
  });

  it('are less for a test where the one before left the vehicle as it needs it', () => {
    const spent = spentOn(sessionOf([DONE, ACK, volts(5), record(FEED)]));
    // the same again: nothing to get at and no key to turn, 2 to read; events count from 1, the opening
    expect([...spent.byEvent]).toEqual([
      [2, 4],
      [4, FEED_MINUTES],
      [5, 2],
    ]);
    expect(spent.minutes).toBe(4 + FEED_MINUTES + 2);
  });

  it('of a test that no step asks for are those of the standard test', () => {
    // 0.5 for the key, 0.5 for the walk, 3 to get at the sensor, 1 to read
    expect(spentMinutes(sessionOf([record(GROUND)]))).toBe(5);
    // half a minute more with the harness moved
    expect(spentMinutes(sessionOf([record({ ...GROUND, wiggle: true })]))).toBe(5.5);
  });

  it('of what was taken back were spent all the same', () => {
    const way = [DONE, ACK, volts(5)];
    const back: Command = { type: 'go-back' };
    expect(spentMinutes(sessionOf([...way, back]))).toBe(spentMinutes(sessionOf(way)));
  });

  it('of what could not be done are none', () => {
    const cannot: Command = { type: 'cannot-do', reason: 'no room' };
    expect(spentMinutes(sessionOf([DONE, cannot]))).toBe(4);
  });

  it('end with the conclusion: the tests after it belong to the repair', () => {
    const way = [DONE, ACK, volts(5), ACK, sees('none'), CONCLUDE];
    const concluded = sessionOf(way);
    expect(spentMinutes(concluded)).toBeGreaterThan(4 + FEED_MINUTES);
    expect(spentMinutes(sessionOf([...way, record(FEED)]))).toBe(spentMinutes(concluded));
  });

  it('are fewer with a helper at the key, from when there is one', () => {
    const helped = ['meter', 'helper'];
    expect(spentMinutes(sessionOf([record(GROUND)], { instruments: helped }))).toBe(4.5);
    const later: Command = { type: 'change-instruments', instruments: helped, meter: METER };
    const both = spentOn(
      sessionOf([
        record(GROUND),
        later,
        record({ ...GROUND, setup: setupOf({ state: 'key-off' }) }),
      ]),
    );
    // back to key off: 0.5 for the key and no walk, 1 to read
    expect([...both.byEvent.values()]).toEqual([5, 1.5]);
  });

  it('without a circuit are those of the author', () => {
    const session = sessionAfter([DONE, ACK, volts(5)], TIMED);
    expect(spentMinutes(session)).toBe(4 + FEED_MINUTES);
  });

  it('are added up once for a state', () => {
    const session = sessionOf([DONE]);
    expect(spentOn(session)).toBe(spentOn(session));
  });
});

describe('the vehicle', () => {
  it('stands at first as at the start of a job', () => {
    expect(situationOf(sessionOf([DONE]))).toEqual({
      state: 'key-off',
      unplugged: [],
      reached: [],
    });
  });
  it('stands as the last test left it', () => {
    const unplugged = { ...GROUND, setup: setupOf({ unplugged: ['sensor'] }) };
    expect(situationOf(sessionOf([record(FEED), record(unplugged)]))).toEqual({
      state: 'key-on',
      unplugged: ['sensor'],
      reached: ['sensor'],
    });
  });
  it('stands as a question needed it that was answered by moving something', () => {
    const heat = { ...WAKING, start: 'heat' };
    const session = sessionAfter([sees('holds')], minutesOf(heat, {}), { circuit });
    expect(situationOf(session)).toMatchObject({ state: 'running', unplugged: ['relay'] });
    expect(spentMinutes(session)).toBe(3);
  });
});

describe('what a person can do', () => {
  it('is what the instruments at hand allow', () => {
    const means = (instruments: string[]) => meansOf(sessionOf([], { instruments }));
    expect(means(['scope'])).toMatchObject({ has: ['scope'], helper: false });
    expect(means(['scope', 'helper'])).toMatchObject({ helper: true });
  });
  it('is everything at the simulated vehicle of a drill, alone', () => {
    const vehicle: DrillVehicle = {
      ...{ kind: 'drill', level: 'blind', seed: 1, commitment: '' },
      ...{ earlierRepair: null, assignment: null },
    };
    const drill = sessionOf([], { vehicle, instruments: ['helper'] });
    expect(meansOf(drill)).toMatchObject({ has: null, helper: false });
  });
});
