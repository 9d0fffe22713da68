/** Captures in a session: read from a file, or made by the simulated vehicle, and measured for the present step. */
import { basename, dirname, resolve } from 'node:path';
import { expectedSignal, signalTest } from '../../circuit/expected-signal.ts';
import type { Model } from '../../circuit/model.ts';
import type { Test } from '../../circuit/test.ts';
import { benchCapture } from '../../drill/bench-capture.ts';
import { type CaptureFolder, followName, listCaptures } from '../../files/list-captures.ts';
import { sha256 } from '../../log/hash.ts';
import {
  type CaptureAnswer,
  type CaptureAsk,
  captureAnswer,
  takesCapture,
  testTakesCapture,
} from '../../session/capture-step.ts';
import type { SessionVehicle } from '../../session/events.ts';
import type { CaptureFiles } from '../../ui/app-services.ts';
import { csvOfCapture } from '../../waveform/write-csv.ts';
import { readCapture } from '../calc/read-capture.ts';
import type { Desk } from './open-desk.ts';

/** The scope test behind what takes a capture: at the same leads, or at the module's input; null without one. */
export function captureTest(model: Model, ask: CaptureAsk): Test | null {
  if (!isTaken(ask)) return null;
  if (ask.kind === 'test') return atLeads(ask.test);
  const { step } = ask;
  if (step.kind !== 'look' && step.kind !== 'measure') return null;
  return step.probe === null
    ? signalTest(model.circuit, step.setup)
    : atLeads({ setup: step.setup, probe: step.probe });
}

function isTaken(ask: CaptureAsk): boolean {
  return ask.kind === 'test' ? testTakesCapture(ask.test) : takesCapture(ask.step);
}

function atLeads({ setup, probe }: Test): Test | null {
  if (!('plus' in probe)) return null;
  return { setup, probe: { kind: 'pattern', plus: probe.plus, minus: probe.minus } };
}

export interface CaptureContext {
  /** Of the simulated vehicle. */
  readonly model: Model | null;
  /** Of this car as far as it is known: what a sound one shows. */
  readonly sound: Model | null;
  /** Points of the cars that the readings leave; null where they are not weighed. */
  readonly cars: () => readonly Float64Array[] | null;
  /** After the repair the fault is another one, or none. */
  readonly vehicle: SessionVehicle;
  /** The fault whose car the simulated vehicle is, though it may not be there now. */
  readonly carOf: string;
  /** Folder that a path is relative to. */
  readonly cwd: string;
}

/** Measures the file at `path`, or a capture of the simulated vehicle, as the answer of `ask`. */
export async function measureFor(
  ask: CaptureAsk,
  path: string | null,
  { model, sound, cars, vehicle, carOf, cwd }: CaptureContext,
): Promise<CaptureAnswer> {
  if (!isTaken(ask)) return refuse('this step is not answered by a capture', 'answer it by hand');
  const test = model && captureTest(model, ask);
  const known = sound && test ? expectedSignal(sound, test, cars() ?? undefined) : null;
  if (path === null) {
    if (vehicle.kind !== 'bench') return refuse('no file is named', 'name a capture file');
    if (!model || !test)
      return refuse('the simulated vehicle has no such signal', 'name a capture file');
    const { fault, seed } = vehicle;
    const capture = benchCapture(model, { fault, seed, test, carOf });
    const digest = sha256(csvOfCapture(capture));
    return captureAnswer(ask, { name: 'bench.csv', sha256: digest, from: 'bench', capture }, known);
  }
  const read = await readCapture(path, cwd, {});
  const [problem] = read.issues.filter(({ severity }) => severity === 'error');
  if (!read.capture || problem)
    return refuse(
      `${basename(path)}: ${problem?.words ?? 'nothing could be read'}`,
      problem?.fix ?? 'check the file',
    );
  const given = { name: basename(path), sha256: read.sha256, capture: read.capture };
  return captureAnswer(ask, { ...given, from: 'file' }, known);
}

function refuse(words: string, fix: string): CaptureAnswer {
  return { ok: false, words, fix };
}

/** Capture files to choose from at a desk. */
export function captureFiles(desk: Desk): CaptureFiles {
  const list = (folder: string): CaptureFolder => listCaptures(folder, Date.now());
  return {
    begin: () => {
      const here = list(desk.cwd);
      const last = desk.settings().captures;
      if (last === '' || here.entries.some(({ kind }) => kind === 'file')) return here;
      const there = list(last);
      return there.problem ? here : there;
    },
    follow: (folder, typed) => {
      const to = followName(folder, typed, desk.home);
      return 'file' in to ? to : list(to.folder);
    },
  };
}

/** The next choice may begin where this capture was. A convenience: when it cannot be saved, nothing is said. */
export function rememberFolder(desk: Desk, path: string): void {
  const folder = dirname(resolve(desk.cwd, path));
  if (desk.preview || folder === desk.cwd || folder === desk.settings().captures) return;
  desk.store?.set('captures', folder);
}
