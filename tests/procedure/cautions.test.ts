/** Which cautions stand before a test, by what it is done on and with; hazards that must be spoken of. */
import { describe, expect, it, test } from 'vitest';
import type { Probe, Setup } from '../../src/circuit/test.ts';
import { type CautionRule, cautionsFor, uncoveredHazards } from '../../src/procedure/cautions.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { shipped } from '../library/shipped.ts';

const { circuit } = shipped('hall-relay-no-signal').model;
const rule = (id: string, when: CautionRule['when']): CautionRule => ({
  ...{ id, word: 'NOTICE', say: 'Mind this.', hazards: ['harness-damage'] },
  ...{ states: [], drives: [], when },
});
const RULES = [
  rule('tips', ['back-probe']),
  rule('module', ['module-off']),
  rule('wire', ['lead']),
];
const volts = (plus: string, minus: string): Probe => ({ kind: 'volts', plus, minus });

function ids(setup: Setup, probe: Probe | null, of: typeof circuit | null = circuit): string[] {
  const place = { drive: 'combustion', setup, probes: [probe], circuit: of } as const;
  return cautionsFor(RULES, place, []).map(({ id }) => id);
}

describe('a terminal', () => {
  const off = (...unplugged: string[]): Setup => ({ ...KEY_ON, unplugged });

  it.each([
    ['in a plug that stays on is back-probed', KEY_ON, 'sensor.feed', ['tips']],
    ['in an open plug is not', off('sensor'), 'sensor.feed', []],
    ['at the other end of it still is', off('sensor'), 'module.signal', ['tips']],
    ['of the battery is not', KEY_ON, 'battery.positive', []],
    ['of a fuse is not', KEY_ON, 'fuse.out', []],
    ['of a bolt is not', KEY_ON, 'ground-point.eyelet', []],
    ['of a relay in its socket is', KEY_ON, 'relay.87', ['tips']],
  ] as const)('%s', (_what, setup, plus, wanted) => {
    expect(ids(setup, volts(plus, 'battery.negative'))).toEqual(wanted);
  });

  it('is what it is in the circuit: without one nobody knows', () => {
    expect(ids(KEY_ON, volts('sensor.feed', 'battery.negative'), null)).toEqual([]);
  });
});

test('a module that comes off, and a wire that is lent, have cautions of their own', () => {
  expect(ids({ ...KEY_ON, unplugged: ['module'] }, null)).toEqual(['module']);
  expect(ids({ ...KEY_ON, unplugged: ['sensor'] }, null)).toEqual([]);
  const look = (of: string) => ids({ ...KEY_ON, state: 'key-off' }, { kind: 'inspect', of });
  expect(look('connector.module')).toEqual(['module']);
  expect(look('connector.sensor')).toEqual([]);
  const lead = { from: 'sensor.signal', to: 'module.signal', through: 'lead' } as const;
  expect(ids({ ...KEY_ON, bridges: [lead] }, null)).toEqual(['wire']);
});

test.each([
  ['combustion', 'key-off', []],
  ['hybrid', 'key-off', ['high-voltage']],
  ['electric', 'key-on', ['energised-circuit', 'high-voltage', 'vehicle-moves']],
  ['not-stated', 'key-on', ['energised-circuit', 'high-voltage', 'vehicle-moves']],
  ['not-stated', 'driving', ['traffic']],
  ['combustion', 'driving', ['traffic']],
] as const)('%s, %s: what has to be spoken of', (drive, state, hazards) => {
  expect(uncoveredHazards(state, drive, [])).toEqual(hazards);
});
