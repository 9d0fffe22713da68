/** A step whose test the session has is answered by it, and can be made again; tests that cannot be made are set aside. */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import { answeredJustNow, answeringTest } from '../../src/session/answering-test.ts';
import type { Command } from '../../src/session/command.ts';
import { BEFORE_THE_JOB } from '../../src/session/events.ts';
import { checkHistory } from '../../src/session/history.ts';
import { isAside, presentStep, type Session } from '../../src/session/session.ts';
import { spentMinutes } from '../../src/session/spent-minutes.ts';
import { standingSetup } from '../../src/session/standing-setup.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { shipped } from '../circuit/shipped.ts';
import { sessionAfter, TREE } from './sample-tree.ts';
import { ACK, DONE, volts } from './shorthand.ts';

/** As shipped trees have it: the first step is to make ready. */
const READY: Procedure = {
  ...TREE,
  steps: {
    ...TREE.steps,
    prepare: { ...(TREE.steps['prepare'] as Step & { kind: 'act' }), family: 'interview' },
  },
};
const FEED: Test = {
  setup: KEY_ON,
  probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
};
const PATTERN: Test = {
  setup: setupOf({ state: 'cranking', target: 'moving' }),
  probe: { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' },
};
const MADE = { made: BEFORE_THE_JOB } as const;
const feed = (
  value: number | null,
  more: Partial<Extract<Command, { type: 'record-test' }>> = {},
) =>
  ({
    type: 'record-test',
    test: FEED,
    typed: `${value ?? 'OL'}`,
    shown: { kind: 'number', value, unit: 'V' },
    expected: null,
    ...more,
  }) as const;
const pattern = (look: 'full' | 'weak') =>
  ({
    type: 'record-test',
    test: PATTERN,
    typed: '',
    shown: { kind: 'look', look },
    expected: null,
    ...MADE,
  }) as const;
const BY = (by: number): Command => ({ type: 'answer-by-test', by });
const walked = (...commands: Command[]): Session =>
  sessionAfter(commands, READY, { circuit: shipped('hall-module-fed') });

describe('a step is answered by the test of the session', () => {
  it('that reads the same, with its value judged and weighed as the step does it', () => {
    const asked = walked(feed(4.5, MADE), DONE);
    expect(presentStep(asked)?.id).toBe('feed');
    expect(answeringTest(asked)).toBe(2);
    const session = walked(feed(4.5, MADE), DONE, BY(2));
    expect(session.events.at(-1)).toMatchObject({
      ...{ type: 'reading-recorded', step: 'feed', typed: '4.5', value: 4.5, unit: 'V', by: 2 },
      ...{ outcome: 'low', go: 'pattern', judgement: { verdict: 'low' } },
    });
    expect(presentStep(session)?.id).toBe('pattern');
    expect(answeredJustNow(session).map(({ step }) => step)).toEqual(['feed']);
  });

  it('also one that was looked at, and OL', () => {
    const looked = walked(feed(5, MADE), pattern('weak'), DONE, BY(2), BY(3));
    expect(presentStep(looked)?.id).toBe('broken');
    expect(answeringTest(walked(feed(null, MADE), DONE))).toBe(2);
  });

  it('by the last of several', () => {
    expect(answeringTest(walked(feed(4.5, MADE), feed(5, MADE), DONE))).toBe(3);
  });

  it('not by another setup or other leads, nor by one made before work on the vehicle', () => {
    const open = { ...FEED, setup: setupOf({ unplugged: ['sensor'] }) };
    expect(answeringTest(walked({ ...feed(5, MADE), test: open }, DONE))).toBeNull();
    const signal = { ...FEED, probe: { ...FEED.probe, plus: 'sensor.signal' } } as Test;
    expect(answeringTest(walked({ ...feed(5, MADE), test: signal }, DONE))).toBeNull();
    // The sample tree's own first step is no making ready.
    const worked = sessionAfter([feed(5, MADE), DONE], TREE, {
      circuit: shipped('hall-module-fed'),
    });
    expect(answeringTest(worked)).toBeNull();
  });

  it('once: taken back, it is made again', () => {
    const back = walked(feed(4.5, MADE), DONE, BY(2), { type: 'go-back' });
    expect(presentStep(back)?.id).toBe('feed');
    expect(answeringTest(back)).toBeNull();
    const again = walked(feed(4.5, MADE), DONE, BY(2), { type: 'go-back' }, ACK, volts(5));
    expect(presentStep(again)?.id).toBe('pattern');
  });

  it('and nothing of it counts twice, or as made now', () => {
    const session = walked(feed(4.5, MADE), DONE, BY(2));
    expect(spentMinutes(session)).toBe(spentMinutes(walked(DONE)));
    expect(standingSetup(session)).toBeNull();
    expect(session.acknowledged).toEqual(walked(DONE).acknowledged);
  });
});

describe('a test that was made already', () => {
  it('asks for no caution, and keeps when it was made and its note', () => {
    const session = walked(feed(5, { made: '14:05', note: ' cold engine ' }));
    expect(session.events.at(-1)).toMatchObject({ made: '14:05', note: 'cold engine' });
    expect(session.acknowledgements).toEqual([]);
  });
});

describe('a test that cannot be made', () => {
  const ASIDE: Command = { type: 'set-test-aside', test: FEED, aside: true };

  it('is set aside until it can be made after all', () => {
    expect(isAside(walked(ASIDE), FEED)).toBe(true);
    expect(isAside(walked(ASIDE), PATTERN)).toBe(false);
    expect(isAside(walked(ASIDE, { ...ASIDE, aside: false }), FEED)).toBe(false);
    expect(() => walked(ASIDE, ASIDE)).toThrow(/nothing-to-take-back/);
  });
});

describe('a file', () => {
  const commands = [feed(4.5, MADE), DONE, BY(2)];
  it('of such answers follows from what was recorded', () => {
    expect(checkHistory(walked(...commands).events).flaw).toBeNull();
  });

  it('that names another test as the one that answered is false', () => {
    const { events } = walked(...commands);
    const forged = events.map((event) =>
      event.type === 'reading-recorded' ? { ...event, by: 3 } : event,
    );
    expect(checkHistory(forged).flaw).toMatchObject({ seq: 4 });
    const changed = events.map((event) =>
      event.type === 'reading-recorded' ? { ...event, value: 5, outcome: 'good' } : event,
    );
    expect(checkHistory(changed).flaw).toMatchObject({ seq: 4 });
  });
});
