/** How the vehicle and the leads were left. */
import { describe, expect, it } from 'vitest';
import { standingSetup } from '../../src/session/standing-setup.ts';
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
