/** Two suspects that no reading parts keep the odds that they had, however the cars of each were drawn. */
import { expect, it } from 'vitest';
import type { Probe, Setup, Test } from '../../src/circuit/test.ts';
import { beginClient } from '../bench/cars/client.ts';
import { meansOf } from '../bench/cars/means.ts';
import { rowsIn, stateIn } from '../bench/cars/replies.ts';
import { KEY_ON } from '../circuit/setup.ts';

const volts = (plus: string, minus = 'battery.negative'): Probe => ({ kind: 'volts', plus, minus });
const MOVING: Setup = { ...KEY_ON, target: 'moving' };
/** Of a pedal's car whose ground wire goes high now and then as the harness is moved. Drawn by the bench of cars. */
const READ: readonly (readonly [Setup, Probe, string])[] = [
  [KEY_ON, volts('sensor.feed-1', 'sensor.feed-2'), '-115.8 mV'],
  [KEY_ON, volts('sensor.feed-2', 'sensor.signal-2'), '4.601 V'],
  [KEY_ON, volts('sensor.feed-1', 'sensor.signal-1'), '4.217 V'],
  [MOVING, { kind: 'counts', input: 'module.signal-2' }, 'still'],
  [MOVING, volts('sensor.feed-1', 'sensor.signal-1'), '508.4 mV'],
  [KEY_ON, volts('sensor.signal-2', 'sensor.ground-2'), '122.0 mV'],
  [MOVING, volts('sensor.feed-2', 'sensor.signal-2'), '2.710 V'],
  [MOVING, volts('sensor.signal-1', 'sensor.signal-2'), '0.623 V'],
];

it('the ground wire and its contact at the module, as long as nothing between the two was read', async () => {
  const { call } = await beginClient('pedal-position');
  const acknowledge = async (cautions: readonly { readonly id: string }[], of: object) => {
    for (const { id } of cautions)
      await call('acknowledge', { caution: id, person: 'R. Example', ...of });
  };
  const step = async (method: string, params: object = {}) => {
    await acknowledge(stateIn(await call('state')).cautions, {});
    await call(method, params);
  };
  await call('instruments', { instruments: meansOf('all', () => 0.5).instruments });
  await step('done');
  await step('reading', { reading: '12.88 V' });
  for (const choose of ['intermittent', 'harness', 'track-1']) await step('choose', { choose });
  for (const [setup, probe, read] of READ) {
    const test: Test = { setup, probe, wiggle: true };
    await acknowledge(Object(await call('prepare', { test }))['cautions'], { test });
    const shown = probe.kind === 'counts' ? { choose: read } : { reading: read, sure: true };
    await call('test', { test, ...shown });
  }
  const rows = rowsIn(await call('suspects'));
  const chanceOf = (repair: string) => rows.find((row) => row.repair === repair)?.chance ?? 0;
  // Harnesses are moved: that speaks for the wire, and no reading since for either.
  expect(chanceOf('wire.ground-2')).toBeGreaterThan(chanceOf('connector.module'));
}, 240_000);
