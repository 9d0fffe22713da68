/** The bench's vehicle beside the program's own model in the middle of all ranges: a large difference is a mistake in one of them. */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import { createModel } from '../../../src/circuit/model.ts';
import { standardTests } from '../../../src/circuit/standard-tests.ts';
import type { MeterUnit } from '../../../src/circuit/test.ts';
import { STANDARD_SETTINGS } from '../../../src/files/settings.ts';
import { drawingOf } from './drawing.ts';
import type { Engine } from './engine.ts';
import { faultsToDraw } from './faults-to-draw.ts';
import { middleCar, middleFault } from './middle-car.ts';
import { Vehicle } from './vehicle.ts';

export interface Difference {
  readonly fault: string;
  readonly test: string;
  readonly program: string;
  readonly vehicle: string;
}

export interface Agreement {
  readonly compared: number;
  readonly differences: readonly Difference[];
}

/** Readings may differ by so much: the offset of a mass, contacts, the ohmmeter's source. */
const LEAST: Readonly<Record<MeterUnit, number>> = { V: 0.02, ohm: 1, A: 1e-4 };
const SHARE = 0.02;

/** Compares healthy and with `faultIds`, each in its middle size, over every standard test. */
export async function compareWithProgram(
  circuit: Circuit,
  engine: Engine,
  faultIds: readonly string[],
  every = 1,
): Promise<Agreement> {
  const model = createModel(circuit, { samples: 8, seed: 1, meter: STANDARD_SETTINGS.meter });
  const known = faultsToDraw(drawingOf(circuit.name), circuit);
  const differences: Difference[] = [];
  let compared = 0;
  for (const fault of ['healthy', ...faultIds]) {
    const drawn = known.find(({ id }) => id === fault);
    const faults = drawn ? [middleFault(drawn, circuit)] : [];
    const vehicle = new Vehicle(middleCar(circuit, faults), engine);
    const own = new Vehicle(await vehicle.afterKeyOn(), engine);
    for (const [index, { id, test }] of standardTests(circuit).entries()) {
      if (test.probe.kind === 'inspect' || index % every !== 0) continue;
      const program = model.shows(fault, test, -1);
      const shows = await own.shows(test);
      compared += 1;
      if (program.kind === 'look' || shows.kind === 'look') {
        const [a, b] = [wordsOf(program), wordsOf(shows)];
        if (a !== b) differences.push({ fault, test: id, program: a, vehicle: b });
        continue;
      }
      const off = Math.abs(program.value - shows.value);
      const allowed = LEAST[program.unit] + SHARE * Math.abs(program.value);
      if (program.value !== shows.value && !(off <= allowed))
        differences.push({ fault, test: id, program: wordsOf(program), vehicle: wordsOf(shows) });
    }
  }
  return { compared, differences };
}

function wordsOf(
  shown: { kind: 'look'; look: string } | { kind: 'number'; value: number; unit: string },
): string {
  return shown.kind === 'look' ? shown.look : `${Number(shown.value.toPrecision(5))} ${shown.unit}`;
}
