/** A scope while the target moves: how the signal looks. Between its leads it is a voltmeter. */
import { type Instrument, inALine } from '../instrument.ts';
import type { Probe, Setup } from '../test.ts';
import type { TestRefusal } from '../test-refusal.ts';
import { meterElement } from './voltmeter.ts';

export const scope: Instrument<Extract<Probe, { kind: 'pattern' }>> = {
  element: meterElement,
  read: (bench, { plus, minus }, asked) => ({
    kind: 'look',
    look: bench.pattern(asked, plus, minus),
  }),
  refusal: (_, setup) => atStandstill(setup),
  joinsAs: null,
  need: 'scope',
  minutes: 3,
  isReadStill: false,
  needsMotion: true,
  isForDeadCircuit: false,
  canBeMisplaced: false,
  words: {
    name: 'scope',
    tool: 'scope',
    line: inALine('scope'),
    say: ({ plus, minus }, at) => `Scope tip: ${at(plus)}. Scope ground: ${at(minus)}.`,
  },
};

/** Nothing passes the sensor, so that there is nothing to see. */
export function atStandstill({ target }: Setup): TestRefusal | null {
  return target === 'still' ? { code: 'target-still' } : null;
}
