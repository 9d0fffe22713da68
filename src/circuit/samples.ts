/**
 * Low-discrepancy samples of all toleranced values: sample i of quantity d is the fractional part of
 * offset(d) + (i + 1) * sqrt(prime(d)) (Richtmyer, 1951; the offset, from the seed, after Cranley and Patterson, 1976).
 * All faults and tests share them, so that differences come from the fault and not from luck.
 */
import type { Circuit, Part } from './circuit.ts';

export interface Samples {
  /** Even value in 0..1 of quantity `key` in sample `index`; 0.5 for the nominal sample -1. */
  readonly unit: (key: string, index: number) => number;
}

/** Quantities that belong to no part. */
const COMMON_KEYS = ['fault.size', 'target.still', 'target.gap', 'fault.visible', 'wear'];

/** Samples for a circuit; the same circuit and seed give the same values to the bit. */
export function createSamples(circuit: Circuit, seed: number): Samples {
  const keys = [
    ...COMMON_KEYS,
    'battery.rest',
    'battery.cranking',
    'battery.running',
    'battery.ohms',
  ];
  for (const wire of circuit.wires) keys.push(`wire.${wire.name}`);
  for (const part of circuit.parts) {
    keys.push(...valueKeys(part, part.name));
    for (const pin of part.pins) keys.push(`contact.${part.name}.${pin}`);
  }
  const primes = firstPrimes(keys.length);
  const placeOf = new Map(keys.map((key, place) => [key, place]));
  const steps = new Float64Array(keys.length);
  const offsets = new Float64Array(keys.length);
  let state = (seed >>> 0) ^ 0x9e3779b9;
  keys.forEach((_, index) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    steps[index] = Math.sqrt(primes[index]!) % 1;
    offsets[index] = scramble(state) / 2 ** 32;
  });
  return {
    unit: (key, index) => {
      if (index < 0) return 0.5;
      const place = placeOf.get(key);
      if (place === undefined) throw new Error(`samples: no quantity "${key}"`);
      return (offsets[place]! + (index + 1) * steps[place]!) % 1;
    },
  };
}

function valueKeys(part: Part, prefix: string): string[] {
  switch (part.kind) {
    case 'module':
      return part.inside.flatMap(({ name }) =>
        ['volts', 'series', 'limit', 'pull', 'bias', 'ground'].map(
          (value) => `${prefix}.${name}.${value}`,
        ),
      );
    case 'potentiometer':
      return part.tracks.flatMap(({ name }) =>
        ['ohms', 'wiper', 'closed', 'open'].map((value) => `${prefix}.${name}.${value}`),
      );
    case 'hall-switch':
      return ['draws', 'minimum', 'on', 'off', 'limit'].map((value) => `${prefix}.${value}`);
    case 'current-switch':
      return ['low', 'high', 'minimum', 'reverse'].map((value) => `${prefix}.${value}`);
    case 'reluctor':
      return ['ohms', 'cranking', 'running', 'byHand'].map((value) => `${prefix}.${value}`);
    case 'neighbour':
      return [`${prefix}.ohms`, `${prefix}.shorted`];
    case 'fuse':
    case 'relay':
    case 'ground-point':
      return [`${prefix}.ohms`];
  }
}

/** A well mixed 32-bit number (the finaliser of MurmurHash3, Appleby, public domain). */
function scramble(value: number): number {
  let h = value >>> 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n += 1)
    if (primes.every((p) => n % p !== 0)) primes.push(n);
  return primes;
}
