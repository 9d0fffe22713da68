/** An LED test light. */
import { type Instrument, inALine } from '../instrument.ts';
import type { Element } from '../netlist.ts';
import type { LOOKS, Probe } from '../test.ts';
import { WATCHED_LIGHT } from './watched-light.ts';

/**
 * LED test light: about 32 mA at 12.6 V (common practice, no source), of which a junction takes 1.9 V.
 * n = 2 at 300.15 K (27 degC); saturation current from 32 mA at 1.9 V.
 */
const LIGHT_EMISSION_VOLTS = 2 * 0.0258649;
const LIGHT_JUNCTION_VOLTS = 1.9;
const LIGHT_AMPS = 0.032;
const LIGHT_OHMS = (12.6 - LIGHT_JUNCTION_VOLTS) / LIGHT_AMPS;
const LIGHT_SATURATION_AMPS = LIGHT_AMPS / Math.expm1(LIGHT_JUNCTION_VOLTS / LIGHT_EMISSION_VOLTS);
/** Leakage across the light; it settles the voltage of a wire end that touches nothing else. */
const LIGHT_LEAK_OHMS = 1e9;
/** An LED is plainly lit from about 3 mA and still seen at 0.3 mA. Common practice, no source. */
const LIGHT_LIT_AMPS = 0.003;
const LIGHT_SEEN_AMPS = 0.0003;

/** The LED light with its red end at a. */
export function lightElement(a: number, b: number): Element {
  return {
    kind: 'diode',
    a,
    b,
    saturationAmps: LIGHT_SATURATION_AMPS,
    emissionVolts: LIGHT_EMISSION_VOLTS,
    ohms: LIGHT_OHMS,
    leakOhms: LIGHT_LEAK_OHMS,
  };
}

/** How the LED light looks at a current through it. */
export function lightLook(amps: number): (typeof LOOKS.light)[number] {
  if (amps >= LIGHT_LIT_AMPS) return 'lit';
  return amps >= LIGHT_SEEN_AMPS ? 'dim' : 'dark';
}

export const ledLight: Instrument<Extract<Probe, { kind: 'light' }>> = {
  ...WATCHED_LIGHT,
  element: lightElement,
  read: (bench, probe, asked) => ({
    kind: 'look',
    look: lightLook(bench.settled(asked, probe).amps),
  }),
  joinsAs: 'test-light',
  need: 'test-light',
  words: {
    name: 'LED light',
    tool: 'LED test light',
    line: inALine('LED light'),
    say: ({ plus, minus }, at) => `LED test light. Plus: ${at(plus)}. Minus: ${at(minus)}.`,
  },
};
