/** Captures in a session: read from a file, or made by the simulated vehicle, and measured for the present step. */
import { basename } from 'node:path';
import { expectedSignal, signalTest } from '../../circuit/expected-signal.ts';
import type { Model } from '../../circuit/model.ts';
import type { Test } from '../../circuit/test.ts';
import { benchCapture } from '../../drill/bench-capture.ts';
import { sha256 } from '../../log/hash.ts';
import type { Step } from '../../procedure/procedure.ts';
import { type CaptureAnswer, captureAnswer, takesCapture } from '../../session/capture-step.ts';
import type { SessionVehicle } from '../../session/events.ts';
import { csvOfCapture } from '../../waveform/write-csv.ts';
import { readCapture } from '../calc/read-capture.ts';

/** The scope test behind a step that takes a capture; null without one. */
export function captureTest(model: Model, step: Step): Test | null {
  if (!takesCapture(step) || (step.kind !== 'look' && step.kind !== 'measure')) return null;
  return step.kind === 'look'
    ? { setup: step.setup, probe: step.probe }
    : signalTest(model.circuit, step.setup);
}

/** Measures the file at `path`, or a capture of the simulated vehicle, as the answer of `step`. */
export async function measureForStep(
  path: string | null,
  step: Step,
  { model, vehicle, cwd }: { model: Model | null; vehicle: SessionVehicle; cwd: string },
): Promise<CaptureAnswer> {
  if (!takesCapture(step))
    return refuse('this step is not answered by a capture', 'answer it by hand');
  const test = model && captureTest(model, step);
  const known = model && test ? expectedSignal(model, test) : null;
  if (path === null) {
    if (vehicle.kind !== 'bench') return refuse('no file is named', 'name a capture file');
    if (!model || !test)
      return refuse('the simulated vehicle has no such signal', 'name a capture file');
    const { fault, seed } = vehicle;
    const capture = benchCapture(model, { fault, seed, test });
    const digest = sha256(csvOfCapture(capture));
    return captureAnswer(
      step,
      { name: 'bench.csv', sha256: digest, from: 'bench', capture },
      known,
    );
  }
  const read = await readCapture(path, cwd, {});
  const [problem] = read.issues.filter(({ severity }) => severity === 'error');
  if (!read.capture || problem)
    return refuse(
      `${basename(path)}: ${problem?.words ?? 'nothing could be read'}`,
      problem?.fix ?? 'check the file',
    );
  const given = { name: basename(path), sha256: read.sha256, from: 'file', capture: read.capture };
  return captureAnswer(step, { ...given, from: 'file' }, known);
}

function refuse(words: string, fix: string): CaptureAnswer {
  return { ok: false, words, fix };
}
