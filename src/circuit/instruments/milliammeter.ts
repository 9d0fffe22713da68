/**
 * A meter on milliamperes, in series: a wire opened at its plug and closed through the meter, which takes a little of the
 * voltage. Between two places that stand at different voltages it is a short: refused.
 */
import type { Circuit } from '../circuit.ts';
import { type Instrument, inALine } from '../instrument.ts';
import { functionOf } from '../meter-units.ts';
import type { Element } from '../netlist.ts';
import { joinedTo } from '../nets.ts';
import { PLAIN_SETUP } from '../plain-setup.ts';
import type { Meter, Probe, Setup } from '../test.ts';
import type { TestRefusal } from '../test-refusal.ts';

/** Shunt, fuse and leads of an ordinary handheld: some 2 to 10 mV for each milliampere. Common practice, no source. */
export const BURDEN_OHMS = 5;

/** The milliammeter between two nodes, as the resistance of its burden. */
export function milliammeterElement(a: number, b: number): Element {
  return { kind: 'resistor', a, b, ohms: BURDEN_OHMS };
}

/** What it shows of a current: above its largest range its fuse has blown, and it shows nothing. */
export function ampsShown(amps: number, meter: Meter): number {
  return Math.abs(amps) > functionOf(meter, 'A').ranges.at(-1)! ? 0 : amps;
}

type AmpsProbe = Extract<Probe, { kind: 'amps' }>;

export const milliammeter: Instrument<AmpsProbe> = {
  element: milliammeterElement,
  read: (bench, probe, asked) => ({
    kind: 'number',
    value: ampsShown(bench.settled(asked, probe).amps, bench.meter),
    unit: 'A',
  }),
  refusal: notInSeries,
  joinsAs: 'lead',
  need: 'milliammeter',
  minutes: 4,
  isReadStill: true,
  needsMotion: false,
  isForDeadCircuit: false,
  // Anywhere else it is refused.
  canBeMisplaced: false,
  words: {
    name: 'milliammeter',
    tool: 'milliammeter',
    line: inALine('milliamperes in series'),
    say: ({ plus, minus }, at) =>
      `Meter on milliamperes, in series. Red lead: ${at(plus)}. Black lead: ${at(minus)}.`,
  },
};

/** Its two ends are one metal with everything plugged in, and are apart now. */
function notInSeries(
  circuit: Circuit,
  setup: Setup,
  { plus, minus }: AmpsProbe,
): TestRefusal | null {
  const terminals = [plus, minus] as const;
  if (!joinedTo(circuit, PLAIN_SETUP, plus).has(minus)) return { code: 'amps-across', terminals };
  return joinedTo(circuit, setup, plus).has(minus) ? { code: 'amps-beside', terminals } : null;
}
