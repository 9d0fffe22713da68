/** The sensor of a sample at its moments: at rest, and at the two ends of what it does while its target moves. */
import { valuesOf } from './car-quantities.ts';
import type { Circuit, Fault } from './circuit.ts';
import { isTarget } from './fault-electrics.ts';
import type { Instant, PlanValue } from './plan.ts';
import { type Samples, valueIn } from './samples.ts';
import type { Setup } from './test.ts';

/** Chance that too wide a gap stops a switch altogether; otherwise teeth are missed. Common practice, no source. */
const GAP_STOPS_CHANCE = 0.6;
/** A coil before too wide a gap gives this share of its voltage, smallest and largest. Common practice, no source. */
const GAP_SWING = { low: 0.08, high: 0.4 };

/** A sensor that gives nothing. */
export const RESTS_OFF: Instant = { on: false, swing: 0, travel: 0, onSpot: false };
const RESTS_ON: Instant = { ...RESTS_OFF, on: true };

/** What the sensor of one circuit does, whatever is wrong with what passes it. */
export class SensorMoments {
  private readonly circuit: Circuit;
  private readonly draws: Samples;
  private readonly stillPlace: number;
  private readonly gapPlace: number;
  /** Part of a turn that a switched output is on, where the circuit leaves that open. */
  private readonly dutyValue: PlanValue | null;

  constructor(circuit: Circuit, draws: Samples) {
    this.circuit = circuit;
    this.draws = draws;
    this.stillPlace = draws.placeOf('target.still');
    this.gapPlace = draws.placeOf('target.gap');
    const { duty } = circuit.target ?? {};
    this.dutyValue = duty ? valuesOf(circuit)('target.duty', duty) : null;
  }

  /** The sensor with the target at rest. */
  still(fault: Fault | null, sample: number): Instant {
    const on = this.unit(this.stillPlace, sample) < this.duty(sample);
    const isSeen = !isTarget(fault, 'missing') && !this.gapStops(fault, sample);
    return on && isSeen ? RESTS_ON : RESTS_OFF;
  }

  /** The two ends of what the sensor does while the target moves: on and off, peak and trough, rest and full travel. */
  ends(fault: Fault | null, setup: Setup, sample: number): readonly [Instant, Instant] {
    if (setup.target === 'still') {
      const still = this.still(fault, sample);
      return [still, still];
    }
    if (isTarget(fault, 'missing')) return [RESTS_OFF, RESTS_OFF];
    const stops = this.gapStops(fault, sample);
    const share = isTarget(fault, 'gap-wide')
      ? GAP_SWING.low + (GAP_SWING.high - GAP_SWING.low) * this.unit(this.gapPlace, sample)
      : 1;
    return [
      { on: !stops, swing: share, travel: 0, onSpot: false },
      { on: false, swing: -share, travel: 1, onSpot: false },
    ];
  }

  /** Part of a turn that a switched output is on. */
  duty(sample: number): number {
    const { dutyValue } = this;
    if (dutyValue !== null) return valueIn(this.draws.carOf(sample), dutyValue);
    return this.circuit.target?.onChance ?? 0.5;
  }

  private unit(place: number, sample: number): number {
    return this.draws.carOf(sample)?.point[place] ?? 0.5;
  }

  private gapStops(fault: Fault | null, sample: number): boolean {
    return isTarget(fault, 'gap-wide') && this.unit(this.gapPlace, sample) < GAP_STOPS_CHANCE;
  }
}
