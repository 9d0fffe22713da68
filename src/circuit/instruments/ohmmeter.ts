/**
 * An ohmmeter: a small voltage of its own behind the resistance of its range. Ohms on a live circuit, or where its
 * current meets electronics, are refused: common practice, no source.
 */
import type { Circuit } from '../circuit.ts';
import { type Instrument, inALine } from '../instrument.ts';
import { metByOhms } from '../met-by-ohms.ts';
import { functionOf } from '../meter-units.ts';
import type { Element } from '../netlist.ts';
import type { Meter, Probe, Setup, TerminalId } from '../test.ts';
import type { TestRefusal } from '../test-refusal.ts';

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
  const { ranges } = functionOf(meter, 'ohm');
  return ohms > ranges.at(-1)! ? Number.POSITIVE_INFINITY : Math.max(0, ohms);
}

export const ohmmeter: Instrument<Extract<Probe, { kind: 'ohms' }>> = {
  element: ohmsElement,
  read: (bench, probe, asked) => ({
    kind: 'number',
    value: ohmsFrom(bench.settled(asked, probe).volts, bench.meter),
    unit: 'ohm',
  }),
  refusal: (circuit, setup, { plus, minus }) => badOhms(circuit, setup, [plus, minus]),
  joinsAs: null,
  need: 'meter',
  minutes: 2,
  isReadStill: false,
  needsMotion: false,
  isForDeadCircuit: true,
  canBeMisplaced: true,
  words: {
    name: 'ohmmeter',
    tool: 'meter',
    line: inALine('ohms'),
    say: ({ plus, minus }, at) => `Meter on ohms. Red lead: ${at(plus)}. Black lead: ${at(minus)}.`,
  },
};

function badOhms(
  circuit: Circuit,
  setup: Setup,
  terminals: readonly TerminalId[],
): TestRefusal | null {
  if (setup.state !== 'key-off') return { code: 'ohms-with-key', state: setup.state };
  for (const terminal of terminals) {
    const { battery, part } = metByOhms(circuit, setup, terminal);
    if (battery) return { code: 'ohms-on-battery', terminal };
    if (part === null) continue;
    return setup.unplugged.includes(part)
      ? { code: 'ohms-across-electronics', terminal, part }
      : { code: 'ohms-on-electronics', terminal, part };
  }
  return null;
}
