/** The shipped circuits, loaded, and shorthand for tests on them. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import type { Meter, Probe, Setup, Test } from '../../src/circuit/test.ts';
import { setupOf } from './setup.ts';

export const FOLDER = 'procedures/circuits';
/** One circuit stands for all with OHMWARD_SHORT=1, where the tests are repeated a thousand times. */
const SHORT = process.env['OHMWARD_SHORT'] === '1';
export const NAMES = readdirSync(FOLDER)
  .sort()
  .map((file) => file.replace(/\.yaml$/, ''))
  .filter((name) => !SHORT || name === 'hall-module-fed');

export const METER: Meter = {
  name: '6000-count meter',
  inputOhms: 10e6,
  volts: { ranges: [0.6, 6, 60, 600], counts: 6000, ofReading: 0.005, digits: 3 },
  ohms: { ranges: [600, 6e3, 60e3, 600e3, 6e6, 60e6], counts: 6000, ofReading: 0.01, digits: 3 },
};

export function textOf(name: string): string {
  return readFileSync(`${FOLDER}/${name}.yaml`, 'utf8');
}

const circuits = new Map<string, Circuit>();
const models = new Map<string, Model>();

export function shipped(name: string): Circuit {
  const known = circuits.get(name);
  if (known) return known;
  const { value, issues } = loadCircuit(textOf(name), `${name}.yaml`);
  if (!value) throw new Error(JSON.stringify(issues));
  circuits.set(name, value);
  return value;
}

/** One for all tests of a process: it remembers what it has shown, whatever was asked first (`rig.test.ts`). */
export function modelOf(name: string, samples = 32): Model {
  const key = `${name} ${samples}`;
  const model = models.get(key) ?? freshModel(name, samples);
  models.set(key, model);
  return model;
}

/** One that has shown nothing yet. */
export function freshModel(name: string, samples = 32): Model {
  return createModel(shipped(name), { samples, seed: 1, meter: METER });
}

export function testOf(probe: Probe, part: Partial<Setup> = {}): Test {
  return { setup: setupOf(part), probe };
}

export function volts(plus: string, minus = 'battery.negative', part: Partial<Setup> = {}): Test {
  return testOf({ kind: 'volts', plus, minus }, part);
}

/** The number a test shows in the middle of all tolerances. */
export function number(model: Model, fault: string, test: Test, sample = -1): number {
  const shown = model.shows(fault, test, sample);
  if (shown.kind !== 'number') throw new Error(`a look: ${shown.look}`);
  return shown.value;
}

export function look(model: Model, fault: string, test: Test, sample = -1): string {
  const shown = model.shows(fault, test, sample);
  if (shown.kind !== 'look') throw new Error(`a number: ${shown.value}`);
  return shown.look;
}
