/** A scope beside a known-good or sister signal: the position of this one against it. */
import { shiftsTiming } from '../fault-electrics.ts';
import { type Instrument, inALine } from '../instrument.ts';
import type { Probe } from '../test.ts';
import { atStandstill, scope } from './scope.ts';
import { meterElement } from './voltmeter.ts';

export const scopeBeside: Instrument<Extract<Probe, { kind: 'timing' }>> = {
  element: meterElement,
  read: (bench, { plus, minus }, asked) => {
    const pattern = bench.pattern(asked, plus, minus);
    if (pattern.startsWith('flat')) return { kind: 'look', look: 'no-signal' };
    return { kind: 'look', look: shiftsTiming(asked.fault) ? 'shifted' : 'in-step' };
  },
  refusal: ({ target }, setup) =>
    target === null ? { code: 'nothing-turns' } : atStandstill(setup),
  joinsAs: null,
  need: 'scope',
  minutes: 5,
  isReadStill: false,
  needsMotion: true,
  isForDeadCircuit: false,
  canBeMisplaced: false,
  words: {
    name: 'scope beside a good signal',
    tool: 'scope, two channels',
    line: inALine('scope beside a good signal'),
    say: ({ plus, minus }, at) => scope.words.say({ kind: 'pattern', plus, minus }, at),
  },
};
