/** A list of tests in the making, with what is known of the sensor's wires. */
import {
  type Circuit,
  type ModulePin,
  moduleOf,
  partName,
  sensorOf,
  type Wire,
} from './circuit.ts';
import { farEnd } from './far-end.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import type { Probe, Setup, TerminalId, Test } from './test.ts';
import type { Need } from './tools.ts';

export const TEST_FAMILIES = [
  'reference',
  'ground',
  'signal',
  'pattern',
  'injection',
  'bypass',
  'spare',
  'continuity',
  'neighbour',
  'inspection',
  'timing',
] as const;

/** The kind of a test, by what it asks of the vehicle. */
export type TestFamily = (typeof TEST_FAMILIES)[number];

/** A test that can be offered, with its minutes and tools. */
export interface TestOption {
  readonly id: string;
  readonly family: TestFamily;
  /** What is done, in one line without a full stop. */
  readonly words: string;
  /** The test itself; changing the vehicle's state and reaching terminals come on top. */
  readonly minutes: number;
  readonly test: Test;
  readonly needs: readonly Need[];
}

/** The lead that is nearly always at the same place. */
export const NEGATIVE = 'battery.negative';
/** The other end of the battery. */
export const POSITIVE = 'battery.positive';

/** A wire at the sensor: its terminal there and what is at the other end; of a signal the module, through any joints. */
export interface Lead {
  readonly wire: Wire;
  readonly here: TerminalId;
  readonly there: TerminalId;
}

/** Adds tests with their usual settings. */
export class TestList {
  readonly circuit: Circuit;
  readonly sensor: string;
  readonly module: string;
  readonly leads: readonly Lead[];
  readonly options: TestOption[] = [];

  constructor(circuit: Circuit) {
    this.circuit = circuit;
    this.sensor = sensorOf(circuit).name;
    this.module = moduleOf(circuit).name;
    this.leads = circuit.wires.flatMap((wire): Lead[] => {
      const lead = (here: TerminalId, end: TerminalId) => [
        { wire, here, there: farEnd(circuit, wire, end) },
      ];
      if (partName(wire.from) === this.sensor) return lead(wire.from, wire.to);
      return partName(wire.to) === this.sensor ? lead(wire.to, wire.from) : [];
    });
  }

  /** Turned by the starter where the target turns with the engine, else moved by hand. */
  moving(): Partial<Setup> {
    const { target } = this.circuit;
    return { state: target && target.turns > 0 ? 'cranking' : 'key-on', target: 'moving' };
  }

  /** What the module reads at a terminal; null where it reads nothing. */
  inputAt(terminal: TerminalId) {
    return this.pinAt(terminal)?.input ?? null;
  }

  /** The module's pin at a terminal. */
  pinAt(terminal: TerminalId): ModulePin | null {
    const module = moduleOf(this.circuit);
    return module.inside.find((one) => `${module.name}.${one.name}` === terminal) ?? null;
  }

  /** Volts with the meter, one minute unless more is said. */
  volts(
    id: string,
    family: TestFamily,
    words: string,
    plus: TerminalId,
    minus: TerminalId,
    setup: Partial<Setup> = {},
    more: readonly Need[] = [],
    minutes = 1,
  ): void {
    this.add(id, family, words, minutes, { kind: 'volts', plus, minus }, ['meter', ...more], setup);
  }

  /** Ohms with the meter. */
  ohms(
    id: string,
    words: string,
    plus: TerminalId,
    minus: TerminalId,
    setup: Partial<Setup>,
  ): void {
    this.add(id, 'continuity', words, 2, { kind: 'ohms', plus, minus }, ['meter'], setup);
  }

  /** Any test; one whose id is in the list already is left out. */
  add(
    id: string,
    family: TestFamily,
    words: string,
    minutes: number,
    probe: Probe,
    needs: readonly Need[],
    setup: Partial<Setup>,
  ): void {
    if (this.options.some((option) => option.id === id)) return;
    const whole: Setup = {
      ...PLAIN_SETUP,
      ...setup,
      unplugged: [...(setup.unplugged ?? [])].sort(),
    };
    this.options.push({ id, family, words, minutes, needs, test: { setup: whole, probe } });
  }
}

/** `signal-plus` of `sensor.signal-plus` as people write it. */
export function pin(terminal: TerminalId): string {
  return terminal
    .slice(terminal.indexOf('.') + 1)
    .replace(/\.pin$/, '')
    .replace(/-/g, ' ');
}
