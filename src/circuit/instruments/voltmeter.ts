/** A voltmeter: its input resistance between the leads. */
import { type Instrument, inALine, NEVER_REFUSED } from '../instrument.ts';
import type { Element } from '../netlist.ts';
import type { Meter, Probe } from '../test.ts';

/** The voltmeter as a resistor. */
export function meterElement(a: number, b: number, meter: Meter): Element {
  return { kind: 'resistor', a, b, ohms: meter.inputOhms };
}

export const voltmeter: Instrument<Extract<Probe, { kind: 'volts' }>> = {
  element: meterElement,
  read: (bench, probe, asked) => ({
    kind: 'number',
    value: bench.settled(asked, probe).volts,
    unit: 'V',
  }),
  refusal: NEVER_REFUSED,
  joinsAs: null,
  need: 'meter',
  minutes: 1,
  isReadStill: true,
  needsMotion: false,
  isForDeadCircuit: false,
  canBeMisplaced: true,
  words: {
    name: 'voltmeter',
    tool: 'meter',
    line: inALine('volts'),
    say: ({ plus, minus }, at) =>
      `Meter on volts. Red lead: ${at(plus)}. Black lead: ${at(minus)}.`,
  },
};
