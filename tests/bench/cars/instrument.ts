/** Instruments between two leads, and what is clipped in for a test. */
import type { Bridge, Look } from '../../../src/circuit/test.ts';
import { type Car, valueIn } from './car.ts';
import { type Deck, saturationAmps } from './deck.ts';

export type Instrument = 'meter' | 'ohmmeter' | 'milliammeter' | 'light' | 'lamp' | 'none';

const METER_OHMS = 10e6;
const LEAD_OHMS = 0.05;
/** The ohmmeter's test source, and what it shows as OL. */
const TEST_VOLTS = 1;
const TEST_OHMS = 10e3;
const OL_OHMS = 60e6;
/** Shunt, fuse and leads on milliamperes. */
const BURDEN_OHMS = 5;
/** LED: 1.9 V at its current, two thermal voltages for each factor of e. */
const LED_VOLTS = 1.9;
const LED_EMISSION = 2;
/** Lit plainly from a tenth of what it takes at 12 V, seen from a hundredth. */
const LIT_SHARE = 0.1;
const SEEN_SHARE = 0.01;
/** Filament lamp of 3 W at 12 V: 5 ohm cold, 48 ohm hot, growing with the root of the voltage. */
const LAMP_COLD = 5;
const LAMP_RISE = (48 - 5) / Math.sqrt(12);
const LAMP_LIT_VOLTS = 6;
const LAMP_SEEN_VOLTS = 1.5;

/** Puts an instrument between two places. */
export function addInstrument(
  deck: Deck,
  car: Car,
  instrument: Instrument,
  plus: string,
  minus: string,
): void {
  // Leads on one place, or on places that nothing else touches, are nodes all the same.
  deck.resistor(plus, minus, 1e13);
  switch (instrument) {
    case 'meter':
      deck.resistor(plus, minus, METER_OHMS);
      return;
    case 'ohmmeter':
      deck.source(plus, minus, TEST_VOLTS, TEST_OHMS);
      return;
    case 'milliammeter':
      deck.resistor(plus, minus, BURDEN_OHMS);
      return;
    case 'light':
      addLed(deck, car, plus, minus);
      return;
    case 'lamp':
      addLamp(deck, plus, minus);
      return;
    case 'none':
  }
}

/** Clips in what a test asks for; its resistors have the tolerance of the person's box. */
export function addClips(
  deck: Deck,
  car: Car,
  bridges: readonly Bridge[],
  resistorShare: number,
): void {
  for (const { from, to, through } of bridges) {
    if (through === 'test-light') {
      // It is turned round until it glows.
      addLed(deck, car, from, to);
      addLed(deck, car, to, from);
    } else if (through === 'lamp') addLamp(deck, from, to);
    else if (through === 'lead') deck.resistor(from, to, LEAD_OHMS);
    else deck.resistor(from, to, through.ohms * resistorShare);
  }
}

/** What the ohmmeter makes of the volts at its leads. */
export function ohmsOf(volts: number): number {
  const ohms = volts >= TEST_VOLTS ? OL_OHMS * 2 : (volts * TEST_OHMS) / (TEST_VOLTS - volts);
  return ohms > OL_OHMS ? Number.POSITIVE_INFINITY : Math.max(0, ohms);
}

/** What the milliammeter makes of the volts across it. */
export function ampsOf(volts: number): number {
  return volts / BURDEN_OHMS;
}

/** How a light looks at a voltage across it; the LED's current follows from its own curve. */
export function looksOfLight(kind: 'light' | 'lamp', volts: number, amps12: number): Look {
  if (kind === 'lamp') {
    const size = Math.abs(volts);
    if (size >= LAMP_LIT_VOLTS) return 'lit';
    return size >= LAMP_SEEN_VOLTS ? 'dim' : 'dark';
  }
  const share = ledShare(volts, amps12);
  if (share >= LIT_SHARE) return 'lit';
  return share >= SEEN_SHARE ? 'dim' : 'dark';
}

/** Current through the LED light, as a share of what it takes at 12 V. */
function ledShare(volts: number, amps12: number): number {
  const series = (12 - LED_VOLTS) / amps12;
  const saturation = saturationAmps(amps12, LED_VOLTS, LED_EMISSION);
  const thermal = LED_EMISSION * 0.0258649;
  let low = 0;
  let high = Math.max(0, volts / series);
  for (let round = 0; round < 60; round += 1) {
    const amps = (low + high) / 2;
    if (thermal * Math.log1p(amps / saturation) + amps * series > volts) high = amps;
    else low = amps;
  }
  return low / amps12;
}

function addLed(deck: Deck, car: Car, plus: string, minus: string): void {
  const amps = valueIn(car, 'light.amps');
  deck.diode(
    plus,
    minus,
    saturationAmps(amps, LED_VOLTS, LED_EMISSION),
    LED_EMISSION,
    (12 - LED_VOLTS) / amps,
  );
  deck.resistor(plus, minus, 1e9);
}

function addLamp(deck: Deck, a: string, b: string): void {
  const across = deck.across(a, b);
  deck.bent({
    a,
    b,
    watches: [a, b],
    first: { siemens: 1 / 48, amps: 0 },
    lineAt: (volts) => ({
      siemens: 1 / (LAMP_COLD + LAMP_RISE * Math.sqrt(Math.abs(volts(a) - volts(b)))),
      amps: 0,
    }),
    formula: `${across}/(${LAMP_COLD}+${LAMP_RISE}*sqrt(abs(${across})))`,
  });
}
