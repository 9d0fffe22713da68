/**
 * What a neighbour would do under each fault: where its own feed goes with it, one that works speaks against the fault, and
 * one that fails too speaks for it. The circuit says which those are; nobody lists them.
 */
import type { Model } from '../circuit/model.ts';
import { PLAIN_SETUP } from '../circuit/plain-setup.ts';
import type { Test } from '../circuit/test.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';

/** Cars asked. Ours: a share to some eighths is enough for a weight. */
const CARS = 8;
/** A neighbour whose feed is off by more than this share of what it has in the healthy car is taken to fail. Ours. */
const OFF_SHARE = 0.2;

/** The share of cars in which a fault takes a neighbour's feed along, 0 to 1. */
export type TakesAlong = (fault: string, neighbour: string) => number;

/** Of a model; each fault is asked once. */
export function takesAlong(model: Model): TakesAlong {
  const known = new Map<string, number>();
  return (fault, neighbour) => {
    const key = `${fault} ${neighbour}`;
    const share = known.get(key) ?? shareOf(model, fault, neighbour);
    known.set(key, share);
    return share;
  };
}

function shareOf(model: Model, fault: string, neighbour: string): number {
  const test: Test = {
    setup: PLAIN_SETUP,
    probe: { kind: 'volts', plus: `${neighbour}.feed`, minus: `${neighbour}.ground` },
  };
  const cars = Math.min(CARS, model.samples);
  let taken = 0;
  for (let car = 0; car < cars; car += 1) {
    const sound = model.shows(HEALTHY, test, car, fault);
    const shown = model.shows(fault, test, car);
    if (sound.kind !== 'number' || shown.kind !== 'number') continue;
    if (Math.abs(shown.value - sound.value) > OFF_SHARE * Math.abs(sound.value)) taken += 1;
  }
  return taken / cars;
}
