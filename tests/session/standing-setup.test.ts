/** How the vehicle and the leads were left. */
import { describe, expect, it } from 'vitest';
import { isStillSetUp, standingSetup } from '../../src/session/standing-setup.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { sessionAfter, TREE } from './sample-tree.ts';
import { ACK, again, CONCLUDE, CONCLUDED, DONE, sees, volts, withStep } from './shorthand.ts';

describe('how the last test left the vehicle', () => {
  const setupOfStep = (id: string) => {
    const step = TREE.steps[id]!;
    return step.kind === 'conclude' ? null : step.setup;
  };

  it('is the setup of the last answer by an instrument, taken back or not', () => {
    expect(standingSetup(sessionAfter([DONE, ACK]))).toBeNull();
    expect(standingSetup(sessionAfter([DONE, ACK, volts(5)]))).toEqual(setupOfStep('feed'));
    const back = sessionAfter([DONE, ACK, volts(5), ACK, sees('full'), { type: 'go-back' }]);
    expect(standingSetup(back)).toEqual(setupOfStep('pattern'));
  });

  it('is that of a test outside the tree, and unknown after the repair', () => {
    const setup = { ...KEY_ON, unplugged: ['sensor'] };
    const probe = { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' } as const;
    const shown = { kind: 'number', value: 5, unit: 'V' } as const;
    const test = { setup, probe };
    const outside = { type: 'record-test', test, typed: '5', shown, expected: null } as const;
    expect(standingSetup(sessionAfter([DONE, ACK, volts(5), outside]))).toEqual(setup);
    const ended = [DONE, ACK, volts(5.5), CONCLUDE];
    expect(standingSetup(sessionAfter(ended))).toBeNull();
  });

  it('is that of a test after the repair', () => {
    const ready = { type: 'acknowledge-cautions', step: 'feed' } as const;
    const tested = sessionAfter([...CONCLUDED, ready, again('feed', { value: 5 })]);
    expect(standingSetup(tested)).toEqual(setupOfStep('feed'));
  });

  it('is not changed by a step that no instrument answers', () => {
    const story = { kind: 'ask', family: 'story', probe: undefined };
    const asked = withStep('pattern', story);
    const session = sessionAfter([DONE, ACK, volts(5), ACK, sees('none')], asked);
    expect(standingSetup(session)).toEqual(setupOfStep('feed'));
    const noProbe = withStep('feed', { probe: null });
    expect(standingSetup(sessionAfter([DONE, ACK, volts(5)], noProbe))).toBeNull();
  });
});

describe('what a test needs clipped on or unplugged', () => {
  const bridge = { from: 'sensor.signal', to: 'battery.negative', through: { ohms: 330 } } as const;
  const arranged = { ...KEY_ON, unplugged: ['sensor'], bridges: [bridge] };
  const probe = { kind: 'volts', plus: 'sensor.signal', minus: 'battery.negative' } as const;
  const shown = { kind: 'number', value: 1, unit: 'V' } as const;
  const made = (setup: typeof arranged) =>
    ({ type: 'record-test', test: { setup, probe }, typed: '1', shown, expected: null }) as const;

  it('still stands where the last test needed the same, and nothing came between', () => {
    const session = sessionAfter([DONE, ACK, made(arranged), { type: 'add-note', text: 'so' }]);
    expect(isStillSetUp(arranged, session)).toBe(true);
    expect(isStillSetUp({ ...arranged, state: 'key-off' }, session)).toBe(true);
    expect(isStillSetUp({ ...arranged, unplugged: [] }, session)).toBe(false);
    expect(isStillSetUp({ ...arranged, bridges: [] }, session)).toBe(false);
    expect(isStillSetUp({ ...arranged, sensor: 'spare' }, session)).toBe(false);
  });

  it('is nothing to speak of where all is plugged in, and unknown after work on the vehicle', () => {
    expect(isStillSetUp(KEY_ON, sessionAfter([DONE, ACK, volts(5)]))).toBe(false);
    const session = sessionAfter([made(arranged), DONE]);
    expect(isStillSetUp(arranged, session)).toBe(false);
  });
});
