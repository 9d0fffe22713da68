/**
 * The vehicle of a drill: answers from the circuit solver with tolerances of its own and the error of a meter. A fault
 * that comes and goes is there in about half of all readings, always while the harness is moved.
 */
import type { Circuit } from '../circuit/circuit.ts';
import { expectedSignal } from '../circuit/expected-signal.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { createModel, type Model } from '../circuit/model.ts';
import type { Meter, Shown, Test } from '../circuit/test.ts';
import { chanceOf } from '../session/chance-of.ts';
import type { LevelName, StepCapture } from '../session/events.ts';
import { PRESENT_CHANCE } from '../session/intermittent.ts';
import {
  capturedWords,
  isQuiet,
  lookOf,
  type MeasuredCapture,
  measureGiven,
} from '../session/measure-capture.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { csvOfCapture } from '../waveform/write-csv.ts';
import { createBench, displayed } from './bench.ts';
import { type BenchCapture, benchCapture } from './bench-capture.ts';
import { type Hash, type Hidden, hideFault } from './hidden-fault.ts';
import { levelNamed } from './levels.ts';

/** What the instrument shows at the vehicle of a drill, and the same in words. */
export interface DrillAnswer {
  /** As the display shows it; `Infinity` is OL. */
  readonly shown: Shown;
  readonly words: string;
}

/** The vehicle of a drill, with what is wrong in it. */
export interface HiddenVehicle {
  readonly hidden: Hidden;
  /** For refusals. */
  readonly model: Model;
  /** The answer to reading number `number`, from 0. */
  readonly answers: (test: Test, number: number) => DrillAnswer;
  /** What the scope saves as reading number `number`, and how it looks once measured; for a test with the scope. */
  readonly captures: (test: Test, number: number) => CapturedAnswer;
}

/** An answer by the scope, with what it saved. */
export interface CapturedAnswer extends DrillAnswer {
  readonly capture: StepCapture;
}

/** All that the vehicle of a drill follows from: the same of these is the same vehicle. */
export interface VehicleAsk {
  readonly circuit: Circuit;
  readonly meter: Meter;
  readonly level: LevelName;
  readonly seed: number;
}

/** The vehicle of a seed; null when its circuit has no fault for the level. */
export function createVehicle(ask: VehicleAsk, hash: Hash): HiddenVehicle | null {
  const { circuit, meter, seed } = ask;
  const level = levelNamed(ask.level);
  const hidden = hideFault(circuit, level, seed, hash);
  if (!hidden) return null;
  // One sample of its own: a vehicle that is none of those the ranking computes with.
  const model = createModel(circuit, { samples: 1, seed, meter });
  const faulty = createBench(model, hidden.modelId, seed);
  const healthy = createBench(model, HEALTHY, seed, hidden.modelId);
  const isPresent = (test: Test, number: number) =>
    !level.intermittent ||
    test.wiggle === true ||
    test.probe.kind === 'inspect' ||
    chanceOf(seed, `there ${number}`) < PRESENT_CHANCE;
  const answers = (test: Test, number: number): DrillAnswer => {
    const asked = still(test);
    const shown = silently(() => (isPresent(test, number) ? faulty : healthy).shows(asked));
    return displayed(model, shown);
  };
  const captures = (test: Test, number: number): CapturedAnswer => {
    const asked = still(test);
    const fault = isPresent(test, number) ? hidden.modelId : HEALTHY;
    const carOf = hidden.modelId;
    const measured = silently(() => measuredOf(model, { fault, seed, test: asked, carOf }, hash));
    const found = capturedWords(measured.capture.measures);
    // Where no signal belongs, high and low are a matter of millivolts, which its noise drowns: the screen's own look counts.
    if (isQuiet(measured.known)) {
      const { shown } = answers(test, number);
      return {
        shown,
        words: `no signal belongs here; captured: ${found}`,
        capture: measured.capture,
      };
    }
    const look = lookOf(measured);
    if (look === null) throw new Error('drill: a capture of the simulated vehicle is in volts');
    const words = `${LOOK_WORDS[look]}; captured: ${found}`;
    return { shown: { kind: 'look', look }, words, capture: measured.capture };
  };
  return { hidden, model, answers, captures };
}

/** Measured like a capture of a real scope: nothing of the fault reaches the answer but through the samples. */
function measuredOf(model: Model, wanted: BenchCapture, hash: Hash): MeasuredCapture {
  const capture = benchCapture(model, wanted);
  const sha256 = hash(csvOfCapture(capture));
  const given = { name: 'bench.csv', sha256, from: 'bench', capture } as const;
  // Who reads a scope sees where the line stands in this car.
  const known = expectedSignal(model, wanted.test, [model.pointOf(0, wanted.carOf)]);
  const measured = measureGiven(given, known, 0);
  if (!measured) throw new Error('drill: a capture has a channel');
  return measured;
}

/** Noise goes by the test: with the harness moved the same place reads the same. */
function still({ setup, probe }: Test): Test {
  return { setup, probe };
}

/** The solver's own complaints name the fault. */
function silently<T>(ask: () => T): T {
  try {
    return ask();
  } catch {
    throw new Error('drill: the simulated vehicle has no answer to this test');
  }
}
