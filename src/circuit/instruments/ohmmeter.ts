/**
 * An ohmmeter: a small voltage of its own behind the resistance of its range. Ohms on a live circuit or across electronics
 * are refused: common practice, no source.
 */
import { type Circuit, isSensor, type Part } from '../circuit.ts';
import { type Instrument, inALine } from '../instrument.ts';
import { functionOf } from '../meter-units.ts';
import type { Element } from '../netlist.ts';
import { joinedTo } from '../nets.ts';
import { sensorKindOf } from '../sensors.ts';
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
    const net = joinedTo(circuit, setup, terminal);
    if (net.has('battery.positive')) return { code: 'ohms-on-battery', terminal };
    const grounded = net.has('battery.negative');
    for (const part of circuit.parts) {
      if (!hasElectronics(part)) continue;
      const pin = part.pins.find((one) => net.has(`${part.name}.${one}.pin`));
      if (pin === undefined) continue;
      if (setup.unplugged.includes(part.name))
        return { code: 'ohms-across-electronics', terminal, part: part.name };
      // A ground point or a battery post is not made live by what else is grounded there.
      if (grounded && part.kind !== 'module') continue;
      if (grounded && terminal.startsWith('battery.')) continue;
      return { code: 'ohms-on-electronics', terminal, part: part.name };
    }
  }
  return null;
}

/**
 * Ohms are for copper and carbon: coils, tracks, wires, contacts and fuses. Of a part with electronics in it they say
 * nothing, and the ohmmeter's own voltage can damage it. A neighbour is described by its ohms alone and counts as a load.
 */
function hasElectronics(part: Part): boolean {
  return isSensor(part) ? sensorKindOf(part).hasElectronics : part.kind === 'module';
}
