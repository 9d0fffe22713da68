/** What a conclusion of a shipped procedure is said to rest on, to rule out, and to lack. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { presentConclusion, type Session } from '../../src/session/session.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { after, done, type Shop, shopFor, walkOn } from './walk-library.ts';

let shop: Shop;
beforeAll(() => {
  shop = shopFor('hall-no-signal');
});

const WIRE = 'wire.signal.open';
const weigh = (session: Session) =>
  shop.thinker.weigh(session, presentConclusion(session)?.faults ?? []);

function read(session: Session, test: Test, value: number): Session {
  const shown = { kind: 'number', value, unit: 'V' } as const;
  return after(session, {
    type: 'record-extra',
    test,
    words: 'the same pin again',
    typed: `${value} V`,
    shown,
  });
}

const AT_MODULE = { kind: 'volts', plus: 'module.signal', minus: 'battery.negative' } as const;

describe('what proves a conclusion', () => {
  it.each([
    ['with the sensor unplugged', setupOf({ unplugged: ['sensor'] })],
    ['with the sensor on', KEY_ON],
  ])('is not the pin that was read already, %s', (_, setup) => {
    const concluded = walkOn(shop, shop.begun, WIRE);
    expect(weigh(concluded)).toMatchObject({ proven: false, missing: 1 });
    // A sound wire and a wrong pin with 5 V on it would show the same.
    const again = weigh(read(concluded, { setup, probe: AT_MODULE }, 4.97));
    expect(again).toMatchObject({ proven: false, missing: 1 });
    expect(again.evidence.map(({ test }) => test)).not.toContain('the same pin again');
  });
  it('is not offered at that pin, and what is offered gives the missing piece', () => {
    const concluded = walkOn(shop, shop.begun, WIRE);
    const { wouldProve } = weigh(concluded);
    expect(wouldProve.map(({ words }) => words)).toContain('Wire from end to end: signal');
    for (const proposal of wouldProve) {
      const { probe } = proposal.test;
      expect('plus' in probe && [probe.plus, probe.minus].join()).not.toBe(
        'module.signal,battery.negative',
      );
      expect(weigh(done(shop, concluded, WIRE, proposal)).proven, proposal.words).toBe(true);
    }
  });
});
