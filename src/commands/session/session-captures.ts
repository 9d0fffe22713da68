/** Captures in a session: read from a file, or made by the simulated vehicle, and measured for the present step. */
import { basename, dirname, resolve } from 'node:path';
import { expectedSignal, signalTest } from '../../circuit/expected-signal.ts';
import type { Model } from '../../circuit/model.ts';
import type { Test } from '../../circuit/test.ts';
import { benchCapture } from '../../drill/bench-capture.ts';
import { benchPosition, goodPosition } from '../../drill/bench-position.ts';
import { type CaptureFolder, followName, listCaptures } from '../../files/list-captures.ts';
import { sha256 } from '../../log/hash.ts';
import {
  asksPosition,
  type CaptureAnswer,
  type CaptureAsk,
  captureAnswer,
  takesCapture,
  testTakesCapture,
  watchedLeads,
} from '../../session/capture-step.ts';
import type { SessionVehicle } from '../../session/events.ts';
import type { AgainstGiven, CaptureGiven } from '../../session/measure-capture.ts';
import type { Problem } from '../../source/problem.ts';
import type { CaptureBeside, CaptureFiles } from '../../ui/app-services.ts';
import type { Capture } from '../../waveform/capture.ts';
import { joinCaptures } from '../../waveform/join-captures.ts';
import { looksStated, readStatedEdges, STATED_FORM } from '../../waveform/stated-edges.ts';
import { csvOfCapture } from '../../waveform/write-csv.ts';
import { readCapture } from '../calc/read-capture.ts';
import type { Desk } from './open-desk.ts';

/** The scope test behind what takes a capture: at the same leads, or at the module's input; null without one. */
export function captureTest(model: Pick<Model, 'circuit'>, ask: CaptureAsk): Test | null {
  if (!isTaken(ask)) return null;
  if (ask.kind === 'test') return atLeads(ask.test);
  const { step } = ask;
  if (step.kind === 'ask') {
    const leads = watchedLeads(step);
    return leads && atLeads({ setup: step.setup, probe: leads });
  }
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

/** The session and vehicle that a capture is for. */
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

/**
 * Measures the file at `path`, or a capture of the simulated vehicle, as the answer of `ask`: with the channels of a
 * second file of the same crank, and against a known-good capture or what is stated of the edges.
 */
export async function measureFor(
  ask: CaptureAsk,
  path: string | null,
  context: CaptureContext,
  { second, against }: CaptureBeside = {},
): Promise<CaptureAnswer> {
  const { model, sound, cars, vehicle, carOf, cwd } = context;
  if (!isTaken(ask)) return refuse("a capture can't answer this step", 'answer it by hand');
  const test = model && captureTest(model, ask);
  const known = sound && test ? expectedSignal(sound, test, cars() ?? undefined) : null;
  const held = await heldAgainst(against, cwd);
  if (held && 'problem' in held) return refuse(held.problem, held.fix);
  if (path === null) {
    if (vehicle.kind !== 'bench') return refuse('no file is named', 'name a capture file');
    if (second !== undefined) return refuse('the first file is not named', 'name both files');
    if (!model || !test)
      return refuse('the simulated vehicle has no such signal', 'name a capture file');
    const wanted = { fault: vehicle.fault, seed: vehicle.seed, test, carOf };
    if (!asksPosition(ask))
      return captureAnswer(ask, ofBench(benchCapture(model, wanted)), known, 0, held);
    const both = benchPosition(model, wanted);
    const good = goodPosition(model, wanted);
    if (!both || !good)
      return refuse('nothing else turns with this wheel to compare it with', 'answer it by hand');
    const ofEngine = { kind: 'good', given: ofBench(good) } as const;
    return captureAnswer(ask, ofBench(both), known, 0, held ?? ofEngine);
  }
  const read = await readGiven(path, cwd);
  if ('problem' in read) return refuse(read.problem, read.fix);
  if (second === undefined) return captureAnswer(ask, read, known, 0, held);
  const more = await readGiven(second, cwd);
  if ('problem' in more) return refuse(more.problem, more.fix);
  const both = joinCaptures(read.capture, more.capture);
  if ('problem' in both) return refuse(both.problem, both.fix);
  const { name, sha256: digest } = more;
  const given = { ...read, capture: both, second: { name, sha256: digest } };
  return captureAnswer(ask, given, known, 0, held);
}

function ofBench(capture: Capture): CaptureGiven {
  return { name: 'bench.csv', sha256: sha256(csvOfCapture(capture)), from: 'bench', capture };
}

async function readGiven(path: string, cwd: string): Promise<CaptureGiven | Problem> {
  const read = await readCapture(path, cwd, {});
  const [issue] = read.issues.filter(({ severity }) => severity === 'error');
  if (!read.capture || issue)
    return {
      problem: `${basename(path)}: ${issue?.words ?? 'nothing could be read'}`,
      fix: issue?.fix ?? 'check the file',
    };
  return { name: basename(path), sha256: read.sha256, from: 'file', capture: read.capture };
}

/** Degrees as they are stated, or a file. */
async function heldAgainst(
  against: string | undefined,
  cwd: string,
): Promise<AgainstGiven | Problem | null> {
  if (against === undefined) return null;
  if (looksStated(against))
    return readStatedEdges(against)
      ? { kind: 'stated', typed: against.trim() }
      : { problem: 'these degrees are not understood', fix: `write them as "${STATED_FORM}"` };
  const given = await readGiven(against, cwd);
  return 'problem' in given ? given : { kind: 'good', given };
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
