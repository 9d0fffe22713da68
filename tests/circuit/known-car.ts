/**
 * One car of each circuit whose values are known: figures by hand, and circuits that are broken on purpose, start from
 * these. The shipped circuits describe all cars, and what is true of each of them is asked of `shipped.ts`.
 */
import { readFileSync } from 'node:fs';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { METER } from './shipped.ts';

export const KNOWN_FOLDER = 'tests/circuit/known-cars';

export function knownText(name: string): string {
  return readFileSync(`${KNOWN_FOLDER}/${name}.yaml`, 'utf8');
}

const circuits = new Map<string, Circuit>();
const models = new Map<string, Model>();

export function knownCircuit(name: string): Circuit {
  const known = circuits.get(name);
  if (known) return known;
  const { value, issues } = loadCircuit(knownText(name), `${name}.yaml`);
  if (!value) throw new Error(JSON.stringify(issues));
  circuits.set(name, value);
  return value;
}

/** One for all tests of a process: it remembers what it has shown. */
export function knownModel(name: string, samples = 32): Model {
  const key = `${name} ${samples}`;
  const model =
    models.get(key) ?? createModel(knownCircuit(name), { samples, seed: 1, meter: METER });
  models.set(key, model);
  return model;
}
