/** The wiring of a circuit as a small drawing of characters, with the pins and colours of this vehicle. */
import { type Circuit, isSensor } from '../circuit/circuit.ts';
import { drawCircuit } from '../circuit/draw-circuit.ts';
import type { Test } from '../circuit/test.ts';
import type { Job } from './job.ts';

/** The room for the sketch, and the test whose leads stand on it. */
export interface SketchOptions {
  readonly columns: number;
  readonly ascii: boolean;
  /** With the leads of this test on it. */
  readonly test?: Test | null;
  /** With this car's connectors, splices and named neighbours below it. */
  readonly besides?: boolean;
}

/** The lines of the sketch, none longer than the columns (at least 60); none without a sensor and a module. */
export function wiringSketch(
  circuit: Circuit,
  job: Job,
  { columns, ascii, test, besides = false }: SketchOptions,
): string[] {
  // A session's file may come from anywhere; what cannot be drawn is not.
  if (!circuit.parts.some(isSensor) || !circuit.parts.some(({ kind }) => kind === 'module'))
    return [];
  const pins = Object.fromEntries(
    Object.entries(job.terminals).map(([id, { pin, colour }]) => [id, `${pin} ${colour}`.trim()]),
  );
  return drawCircuit(circuit, {
    ...{ width: columns, ascii, pins, besides },
    ...(test ? { test } : {}),
  });
}
