/** Test lights, lamps and meters as elements of the circuit, and what they show for a current or a voltage. */
import type { Element } from './netlist.ts';
import type { Meter } from './test.ts';

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

/** Filament test lamp, 3 W at 12 V: a quarter of an ampere hot, ten times that cold. Resistance grows with the root of voltage. */
const LAMP_COLD_OHMS = 5;
const LAMP_HOT_OHMS = 48;
const LAMP_HOT_VOLTS = 12;
/** A filament glows plainly from about half its rated voltage and is seen from about an eighth. Common practice, no source. */
const LAMP_LIT_VOLTS = 6;
const LAMP_SEEN_VOLTS = 1.5;

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

/** The filament lamp, either way round. */
export function lampElement(a: number, b: number): Element {
  const risePerRootVolt = (LAMP_HOT_OHMS - LAMP_COLD_OHMS) / Math.sqrt(LAMP_HOT_VOLTS);
  return { kind: 'lamp', a, b, coldOhms: LAMP_COLD_OHMS, risePerRootVolt };
}

/** An instrument clipped in as a bridge. */
export function bridgeElement(through: 'test-light' | 'lamp', a: number, b: number): Element {
  return through === 'test-light' ? lightElement(a, b) : lampElement(a, b);
}

/** How the LED light looks at a current through it. */
export function lightLook(amps: number): 'lit' | 'dim' | 'dark' {
  if (amps >= LIGHT_LIT_AMPS) return 'lit';
  return amps >= LIGHT_SEEN_AMPS ? 'dim' : 'dark';
}

/** How the lamp looks at a voltage across it, either way round. */
export function lampLook(volts: number): 'lit' | 'dim' | 'dark' {
  const size = Math.abs(volts);
  if (size >= LAMP_LIT_VOLTS) return 'lit';
  return size >= LAMP_SEEN_VOLTS ? 'dim' : 'dark';
}

/** The voltmeter as a resistor. */
export function meterElement(a: number, b: number, meter: Meter): Element {
  return { kind: 'resistor', a, b, ohms: meter.inputOhms };
}

/** The ohmmeter's test source: a small voltage behind the resistance of its range. */
export const OHMS_TEST_VOLTS = 1;
export const OHMS_TEST_SERIES = 10_000;

/** The ohmmeter as its test source, red lead at a. */
export function ohmsElement(a: number, b: number): Element {
  return { kind: 'emf', plus: a, minus: b, volts: OHMS_TEST_VOLTS, ohms: OHMS_TEST_SERIES };
}

/** What the ohmmeter makes of the voltage at its leads; `Infinity` above its highest range. */
export function ohmsFrom(volts: number, meter: Meter): number {
  const rest = OHMS_TEST_VOLTS - volts;
  const ohms = rest <= 0 ? Number.POSITIVE_INFINITY : (volts * OHMS_TEST_SERIES) / rest;
  return ohms > meter.ohms.ranges.at(-1)! ? Number.POSITIVE_INFINITY : Math.max(0, ohms);
}
