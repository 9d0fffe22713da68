/** A drill on the invented circuit, walked by the program's own decide: what its bench says is made up. */
import type { Test } from '../../src/circuit/test.ts';
import type { DrillVehicle, SessionOpened } from '../../src/session/events.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { begin, CRANKING_CAUTION, signalAt, type Walk } from './sample-session.ts';

const VEHICLE: DrillVehicle = {
  kind: 'drill',
  level: 'blind',
  seed: 41,
  commitment: 'c'.repeat(64),
  earlierRepair: null,
  assignment: { name: 'spring term', part: 2, limitMinutes: 30 },
};

/** Ohms on a circuit that is live. */
const DANGEROUS: Test = {
  setup: KEY_ON,
  probe: { kind: 'ohms', plus: 'sensor.feed', minus: 'battery.negative' },
};

/** A drill that is not over: a step answered, a test made, one stopped, one asked for too early. */
export function openDrillWalk(
  vehicle: Partial<DrillVehicle> = {},
  change: Partial<SessionOpened> = {},
): Walk {
  return begin({
    vehicle: { ...VEHICLE, ...vehicle },
    cautionRules: [CRANKING_CAUTION],
    ...change,
  }).do(
    { type: 'acknowledge-cautions' },
    { type: 'record-reading', typed: '4.97 V', value: 4.97 },
    signalAt(0.02, '20 mV'),
    { type: 'stop-test', test: DANGEROUS, hazard: 'ohms-on-live' },
    { type: 'pass-over', cautions: ['turning'] },
  );
}

/** The same handed in and revealed. */
export function drillWalk(
  vehicle: Partial<DrillVehicle> = {},
  change: Partial<SessionOpened> = {},
): Walk {
  return openDrillWalk(vehicle, change).do(
    { type: 'conclude', own: { words: null, faults: ['wire.signal.open'] } },
    {
      type: 'reveal',
      answer: {
        faults: ['wire.ground.open'],
        repairs: ['wire.ground'],
        salt: 'salt',
        right: false,
        score: [
          { name: 'diagnosis', points: 0, most: 40 },
          { name: 'safety', points: 4, most: 15 },
        ],
        points: 4,
        minutes: 12.5,
        yardstickMinutes: 6,
        late: false,
      },
    },
  );
}
