/**
 * The vehicle of a drill: answers from the circuit solver with tolerances of its own and the error of a meter. A fault
 * that comes and goes is there in about half of all readings, always while the harness is moved.
 */
import { createModel, type Model } from '../circuit/model.ts';
import type { Shown } from '../circuit/test.ts';
import { parseReading } from '../quantity/parse-reading.ts';
import { createBench, shownWords } from './bench.ts';
import type { DrillOpened } from './drill-events.ts';
import { chanceOf } from './drill-random.ts';
import { type DrillTest, inOrder } from './drill-test.ts';
import { type Hash, type Hidden, hideFault } from './hidden-fault.ts';
import { levelNamed } from './levels.ts';

export interface VehicleAnswer {
  /** As the display shows it; `Infinity` is OL. */
  readonly shown: Shown;
  readonly words: string;
}

export interface DrillVehicle {
  readonly hidden: Hidden;
  /** For refusals. */
  readonly model: Model;
  /** The answer to reading number `number`, from 0. */
  readonly answers: (test: DrillTest, number: number) => VehicleAnswer;
}

/** Share of readings in which a fault that comes and goes is there by itself. Our choice. */
export const PRESENT_CHANCE = 0.5;

/** The vehicle that belongs to a drill's first event. */
export function createVehicle(
  opened: Pick<DrillOpened, 'circuit' | 'meter' | 'level' | 'seed'>,
  hash: Hash,
): DrillVehicle | null {
  const { circuit, meter, seed } = opened;
  const level = levelNamed(opened.level);
  const hidden = hideFault(circuit, level, seed, hash);
  if (!hidden) return null;
  // One sample of its own: a vehicle that is none of those the ranking computes with.
  const model = createModel(circuit, { samples: 1, seed, meter });
  const faulty = createBench(model, hidden.modelId, seed);
  const healthy = createBench(model, 'healthy', seed);
  const answers = (test: DrillTest, number: number): VehicleAnswer => {
    const present =
      !level.comesAndGoes ||
      test.wiggle ||
      test.probe.kind === 'inspect' ||
      chanceOf(seed, `there ${number}`) < PRESENT_CHANCE;
    const { setup, probe } = inOrder(test);
    const shown = silently(() => (present ? faulty : healthy).shows({ setup, probe }));
    const words = shownWords(model, shown);
    return { shown: asDisplayed(shown, words), words };
  };
  return { hidden, model, answers };
}

/** The solver's own complaints name the fault. */
function silently(ask: () => Shown): Shown {
  try {
    return ask();
  } catch {
    throw new Error('drill: the simulated vehicle has no answer to this test');
  }
}

function asDisplayed(shown: Shown, words: string): Shown {
  if (shown.kind === 'look' || !Number.isFinite(shown.value)) return shown;
  const read = parseReading(words, { unit: shown.unit });
  if (read.status !== 'read') throw new Error(`drill: the display shows "${words}"`);
  return { ...shown, value: read.quantity.value };
}
