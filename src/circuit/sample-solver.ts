/**
 * The electrical half of the model: circuit, fault, setup and instrument compiled together, solved for one tolerance sample
 * at one instant of the sensor.
 */

import { Unworkable } from '../source/unworkable.ts';
import { type Circuit, type Fault, sensorOf } from './circuit.ts';
import { worseOf } from './fault-electrics.ts';
import { OpenParts } from './open-parts.ts';
import type { Draw, Instant } from './plan.ts';
import type { Rig } from './rig.ts';
import { type Between, RigStore } from './rig-store.ts';
import { type Samples, valueIn } from './samples.ts';
import { SensorMoments } from './sensor-moments.ts';
import type { Meter, Probe, Setup, TerminalId } from './test.ts';

/**
 * The solver found no operating point. A loaded circuit has been tried with every fault and hardly gets here; one in a
 * session file may have values that no vehicle has.
 */
export class UnsolvedCircuit extends Unworkable {
  constructor(words: string) {
    super(words, 'look for a value that is far from normal');
  }
}

/** Solves samples of one circuit; keeps what it compiled for the next one. */
export class SampleSolver {
  private readonly circuit: Circuit;
  private readonly draws: Samples;
  private readonly moments: SensorMoments;
  private readonly rigs: RigStore;
  private readonly open: OpenParts;

  constructor(circuit: Circuit, meter: Meter, draws: Samples, keptElementsMax?: number) {
    this.circuit = circuit;
    this.draws = draws;
    const moments = new SensorMoments(circuit, draws);
    const rigs = new RigStore({ circuit, meter, draws, moments, keptElementsMax });
    const volts: SampleSolver['volts'] = (...of) => this.volts(...of);
    this.moments = moments;
    this.rigs = rigs;
    this.open = new OpenParts({ circuit, draws, rigs, moments, volts });
  }

  /**
   * What an instrument settles at: volts between its leads, and amperes through it. Of a still target the present instant,
   * of a moving one the mean of its ends.
   */
  settled(
    fault: Fault | null,
    setup: Setup,
    { kind, plus, minus }: Extract<Probe, { plus: TerminalId }>,
    sample: number,
  ): { volts: number; amps: number } {
    const rig = this.rigs.rig(fault, setup, plus, minus, kind, this.open.in(fault, setup, sample));
    rig.take(this.draws.carOf(sample), worseOf(fault));
    const read = (instant: Instant) => {
      const volts = this.voltsNow(rig, fault, instant);
      return { volts, amps: rig.amps() };
    };
    if (setup.target === 'still') return read(this.moments.still(fault, sample));
    const [first, second] = this.moments.ends(fault, setup, sample);
    // A wiper that is moved is read where it ends: fully moved.
    if (sensorOf(this.circuit).kind === 'potentiometer') return read(second);
    const share = this.moments.duty(sample);
    const [one, other] = [read(first), read(second)];
    return {
      volts: share * one.volts + (1 - share) * other.volts,
      amps: share * one.amps + (1 - share) * other.amps,
    };
  }

  /** The two ends of the signal between two terminals while the target moves, in volts; both the same while it is still. */
  levelsAt(
    fault: Fault | null,
    setup: Setup,
    plus: TerminalId,
    minus: TerminalId,
    instrument: Between,
    sample: number,
  ): { low: number; high: number } {
    const open = this.open.in(fault, setup, sample);
    const rig = this.rigs.rig(fault, setup, plus, minus, instrument, open);
    const [first, second] = this.moments.ends(fault, setup, sample);
    rig.take(this.draws.carOf(sample), worseOf(fault));
    const a = this.voltsNow(rig, fault, first);
    const b = second === first ? a : this.voltsNow(rig, fault, second);
    return { low: Math.min(a, b), high: Math.max(a, b) };
  }

  /** Voltage between the leads of a rig at one instant of a sample. */
  volts(rig: Rig, fault: Fault | null, instant: Instant, sample: number): number {
    rig.take(this.draws.carOf(sample), worseOf(fault));
    return this.voltsNow(rig, fault, instant);
  }

  /** Voltages of several terminals against battery negative at one instant, without any instrument. */
  voltsOf(
    fault: Fault | null,
    setup: Setup,
    terminals: readonly TerminalId[],
    instant: Instant,
    sample: number,
  ): number[] {
    const open = this.open.in(fault, setup, sample);
    const plus = terminals[0]!;
    const rig = this.rigs.rig(fault, setup, plus, 'battery.negative', 'none', open, terminals);
    this.volts(rig, fault, instant, sample);
    return rig.watchedVolts();
  }

  /** The sensor with the target at rest. */
  still(fault: Fault | null, sample: number): Instant {
    return this.moments.still(fault, sample);
  }

  /** Parts that a fault keeps open in a setup: fuses that it has blown, relays whose coil gets too little. */
  openBy(fault: Fault | null, setup: Setup, sample: number): readonly string[] {
    return this.open.in(fault, setup, sample);
  }

  /** The compiled circuit for a fault, a setup and an instrument between two terminals; kept for the next sample. */
  rig(...at: Parameters<RigStore['rig']>): Rig {
    return this.rigs.rig(...at);
  }

  /** How often the loose point has been another one. */
  taken(): number {
    return this.draws.taken();
  }

  /** The value of each quantity in a sample. */
  valueOf(sample: number): Draw['value'] {
    const car = this.draws.carOf(sample);
    return (value) => valueIn(car, value);
  }

  private voltsNow(rig: Rig, fault: Fault | null, instant: Instant): number {
    const failure = rig.solve(instant);
    if (failure)
      throw new UnsolvedCircuit(
        `the circuit cannot be computed with ${fault?.id ?? 'nothing wrong'}: ${failure.words}`,
      );
    return rig.volts();
  }
}
