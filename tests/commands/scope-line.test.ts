/** How the scope is set for a step, computed from circuit and engine state; each value by hand. */
import { expect, test } from 'vitest';
import type { VehicleState } from '../../src/circuit/test.ts';
import { scopeLine } from '../../src/commands/session/session-sums.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { setupOf } from '../circuit/setup.ts';
import { modelOf } from '../circuit/shipped.ts';

const lineOf = (
  name: string,
  kind: 'pattern' | 'timing' | 'volts',
  plus: string,
  state: VehicleState,
  minus = 'battery.negative',
) => {
  const { meter, scope } = STANDARD_SETTINGS;
  const context = { model: modelOf(name), meter, ascii: false, scope };
  const setup = setupOf({ state, target: 'moving' });
  return scopeLine({ setup, probe: { kind, plus, minus } }, context);
};

test.each([
  // By hand: 60 teeth at 200 rpm are 200 Hz, ten of them 50 ms; 5 V in four fifths of eight divisions; between 0.1 V and 5 V.
  [
    'hall-module-fed',
    'pattern',
    'module.signal',
    'cranking',
    /^Scope: DC, 1 V and 5 ms a division, trigger 2.6 V rising, zero at the bottom\.$/,
  ],
  // By hand: at 800 rpm a quarter of that, 12.5 ms; the next usual setting above 1.25 ms is 2 ms.
  [
    'hall-module-fed',
    'pattern',
    'module.signal',
    'running',
    /^Scope: DC, 1 V and 2 ms a division,/,
  ],
  // By hand: two turns at 200 rpm are 600 ms; the next usual setting above 60 ms is 100 ms.
  [
    'hall-module-fed',
    'timing',
    'module.signal',
    'cranking',
    /^Scope: DC, 1 V and 100 ms a division,/,
  ],
  [
    'throttle-potentiometer',
    'pattern',
    'module.signal',
    'key-on',
    /no trigger: let it roll, zero at the bottom\.$/,
  ],
] as const)('%s, %s at %s, %s', (name, kind, plus, state, words) => {
  expect(lineOf(name, kind, plus, state)).toMatch(words);
});

test('a coil swings about the middle, is triggered there, and is full from a height on', () => {
  const line = lineOf(
    'reluctor-two-wire',
    'pattern',
    'module.signal-plus',
    'cranking',
    'module.signal-minus',
  );
  // By hand: of 1 V either way a little is lost on the bias resistors; 0.55 of 2 V is 1.1 V.
  expect(line).toMatch(/trigger 0 V rising, zero in the middle\. Full: > 1\.1 V pk-pk\.$/);
});

test('a meter has no such settings', () => {
  expect(lineOf('hall-module-fed', 'volts', 'module.signal', 'cranking')).toBeNull();
});

test('of a shaft whose teeth nobody knows two turns are shown', () => {
  const { meter, scope } = STANDARD_SETTINGS;
  const known = modelOf('hall-module-fed');
  const target = { ...known.circuit.target!, teeth: null, turns: 0.5 };
  const model = { ...known, circuit: { ...known.circuit, target } };
  const setup = setupOf({ state: 'cranking', target: 'moving' });
  const probe = { kind: 'pattern', plus: 'module.signal', minus: 'battery.negative' } as const;
  // By hand: two turns of a camshaft at 200 rpm of the engine are 1.2 s; the next usual setting above 120 ms is 200 ms.
  expect(scopeLine({ setup, probe }, { model, meter, ascii: false, scope })).toMatch(
    /^Scope: DC, 1 V and 200 ms a division, trigger 2.6 V rising,/,
  );
});
