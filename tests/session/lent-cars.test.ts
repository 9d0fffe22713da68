/** A suspect that comes and goes keeps its chance where readings with it there could be explained by an odd sound car. */
import { expect, it } from 'vitest';
import type { Look, Probe, Test } from '../../src/circuit/test.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { after, beginWith, shopFor } from './walk-library.ts';

const volts = (plus: string, minus = 'battery.negative'): Probe => ({ kind: 'volts', plus, minus });
const CRANKING = setupOf({ state: 'cranking', target: 'moving' });
const WIGGLED = { wiggle: true } as const;
const OHMS = { ohms: 330 };
const FUSE = { from: 'fuse.in', to: 'fuse.out', through: OHMS };
const PLUG = { from: 'sensor.signal', to: 'battery.negative', through: OHMS };

/** Of a relay's car whose ground point opens now and then, with 11.86 V at its battery. Drawn by the bench of cars. */
const READ: readonly (readonly [Test, number | Look])[] = [
  [{ setup: KEY_ON, probe: volts('battery.positive') }, 11.86],
  [{ setup: CRANKING, probe: { kind: 'counts', input: 'module.signal' } }, 'follows'],
  [{ setup: CRANKING, probe: scope('pattern', 'module.signal') }, 'full'],
  [{ setup: CRANKING, probe: scope('timing', 'module.signal') }, 'no-signal'],
  [{ setup: KEY_ON, probe: volts('battery.positive', 'sensor.feed') }, 0.0044],
  [{ setup: KEY_ON, probe: volts('sensor.ground') }, 0.0082],
  [{ setup: CRANKING, probe: scope('pattern', 'sensor.signal') }, 'flat-high'],
  [{ setup: setupOf({}), probe: { kind: 'inspect', of: 'connector.sensor' } }, 'sound'],
  [
    { setup: { ...KEY_ON, unplugged: ['sensor'], bridges: [PLUG] }, probe: volts('sensor.signal') },
    0.0815,
  ],
  [
    {
      setup: { ...CRANKING, sensor: 'spare' },
      probe: { kind: 'counts', input: 'module.signal' },
      ...WIGGLED,
    },
    'follows',
  ],
  [{ setup: KEY_ON, probe: volts('battery.positive', 'sensor.feed'), ...WIGGLED }, 0.0002],
  [
    {
      setup: { ...KEY_ON, unplugged: ['fuse', 'speed-sensor'], bridges: [FUSE] },
      probe: volts('fuse.out'),
      ...WIGGLED,
    },
    11.85,
  ],
  [
    {
      setup: { ...KEY_ON, unplugged: ['fuse'], bridges: [FUSE] },
      probe: volts('fuse.out'),
      ...WIGGLED,
    },
    11.86,
  ],
];

function scope(kind: 'pattern' | 'timing', plus: string): Probe {
  return { kind, plus, minus: 'battery.negative' };
}

it('an open ground that took the sensor and its neighbour off the fuse', () => {
  const { linked, model } = shopFor('hall-relay-no-signal');
  // SAE J2012 names P0339 intermittent.
  const begun = beginWith(linked, { ...emptyJob('no start'), codes: ['P0339'] });
  const session = READ.reduce(
    (now, [test, shown]) =>
      after(now, {
        ...{ type: 'record-test', test, typed: '', expected: null },
        shown:
          typeof shown === 'number'
            ? { kind: 'number', value: shown, unit: 'V' }
            : { kind: 'look', look: shown },
      }),
    begun,
  );
  const chances = new Map(
    createAdvisor(model, begun.opened)
      .suspects(session)
      .rows.flatMap(({ faults }) => faults.map(({ id, chance }) => [id, chance])),
  );
  // Each by itself, with six numbers and 192 cars of its own: 4.8 to 5.6 nats for the ground, 3.0 to 6.6 for the sensor.
  const ground = chances.get('contact.ground-point.eyelet.open')!;
  expect(ground).toBeGreaterThan(0.04);
});
