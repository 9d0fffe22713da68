/** A filament test lamp. */
import { type Instrument, inALine } from '../instrument.ts';
import type { Element } from '../netlist.ts';
import type { LOOKS, Probe } from '../test.ts';
import { WATCHED_LIGHT } from './watched-light.ts';

/** Filament test lamp, 3 W at 12 V: a quarter of an ampere hot, ten times that cold. Resistance grows with the root of voltage. */
const LAMP_COLD_OHMS = 5;
const LAMP_HOT_OHMS = 48;
const LAMP_HOT_VOLTS = 12;
/** A filament glows plainly from about half its rated voltage and is seen from about an eighth. Common practice, no source. */
const LAMP_LIT_VOLTS = 6;
const LAMP_SEEN_VOLTS = 1.5;

/** The filament lamp, either way round. */
export function lampElement(a: number, b: number): Element {
  const risePerRootVolt = (LAMP_HOT_OHMS - LAMP_COLD_OHMS) / Math.sqrt(LAMP_HOT_VOLTS);
  return { kind: 'lamp', a, b, coldOhms: LAMP_COLD_OHMS, risePerRootVolt };
}

/** How the lamp looks at a voltage across it, either way round. */
export function lampLook(volts: number): (typeof LOOKS.lamp)[number] {
  const size = Math.abs(volts);
  if (size >= LAMP_LIT_VOLTS) return 'lit';
  return size >= LAMP_SEEN_VOLTS ? 'dim' : 'dark';
}

export const filamentLamp: Instrument<Extract<Probe, { kind: 'lamp' }>> = {
  ...WATCHED_LIGHT,
  element: lampElement,
  read: (bench, probe, asked) => ({
    kind: 'look',
    look: lampLook(bench.settled(asked, probe).volts),
  }),
  joinsAs: 'lamp',
  need: 'lamp',
  words: {
    name: 'filament lamp',
    tool: 'filament test lamp',
    line: inALine('filament lamp'),
    say: ({ plus, minus }, at) => `Filament test lamp from ${at(plus)} to ${at(minus)}.`,
  },
};
