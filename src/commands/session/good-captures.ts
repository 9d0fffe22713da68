/**
 * Known-good captures, kept by vehicle: what a sound engine gave after its repair, for the next one like it. A folder for
 * each vehicle, in the words of its job sheet, and in it a file for each picture, so that they can be looked at, copied and
 * thrown away by hand.
 */
import { basename, extname, join } from 'node:path';
import type { Test } from '../../circuit/test.ts';
import { slugOf } from '../../files/safe-name.ts';
import type { Disk } from '../../log/disk.ts';
import { sha256 } from '../../log/hash.ts';
import { writeWholeFile } from '../../log/write-whole.ts';
import { asksPosition, type CaptureAsk } from '../../session/capture-step.ts';
import type { StepCapture } from '../../session/events.ts';
import { retestLines } from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import type { Problem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import type { KeptCapture, KeptGood } from '../../ui/app-services.ts';
import { joinCaptures } from '../../waveform/join-captures.ts';
import { csvOfCapture } from '../../waveform/write-csv.ts';
import { readCapture } from '../calc/read-capture.ts';
import { captureTest } from './session-captures.ts';

/** Where they are kept, and where a capture may still lie that was read before. */
export interface GoodPlaces {
  readonly disk: Disk;
  readonly folder: string;
  /** Folders that are looked through for a capture by its name. */
  readonly read: readonly string[];
}

/** Captures of one picture of one vehicle at most; who wants more keeps them elsewhere. */
const PICTURES_MOST = 99;
/** Two vehicles whose words differ are alike where all words of one are words of the other, and there are so many. */
const WORDS_ALIKE = 2;

/** The newest known-good capture of what is asked, of a vehicle like this one; null where none is kept. */
export function keptFor(
  { disk, folder }: Pick<GoodPlaces, 'disk' | 'folder'>,
  session: Session,
  ask: CaptureAsk,
): KeptCapture | null {
  const { vehicle, job } = session.opened;
  const picture = vehicle.kind === 'real' ? pictureOf(session, ask) : null;
  const words = vehicleSlug(job.vehicle.words);
  if (picture === null || words === null) return null;
  const like = namesIn(disk, folder)
    .filter((name) => isLike(name, words))
    .sort((a, b) => Number(b === words) - Number(a === words) || (a < b ? -1 : 1));
  for (const name of like) {
    const [newest] = kept(disk, join(folder, name), picture).sort((a, b) => b.number - a.number);
    if (newest) return { path: join(folder, name, newest.name), vehicle: name };
  }
  return null;
}

/** Why nothing of this session can be kept, as a problem; null where something can. */
export function keepProblem(session: Session): Problem | null {
  const { opened, closed, drives } = session;
  if (opened.vehicle.kind !== 'real')
    return {
      problem: 'a simulated vehicle is not a known-good one',
      fix: 'keep the captures of a real one',
    };
  if (vehicleSlug(opened.job.vehicle.words) === null)
    return {
      problem: 'the job sheet does not say which vehicle it is',
      fix: 'known-good captures are filed under the vehicle description',
    };
  if (closed?.verdict !== 'cured' || drives.at(-1)?.code === 'came-back')
    return {
      problem: 'this vehicle is not proven to be fixed',
      fix: 'do the tests after the repair first; all must pass',
    };
  return captured(session).length > 0
    ? null
    : {
        problem: 'no test after the repair was answered by a saved capture',
        fix: 'answer one with a capture, in the next session',
      };
}

/**
 * Whether every capture that could be kept is kept already, by its bytes. One that is made of two files is not looked up:
 * it would have to be joined anew.
 */
export function isAllKept(
  { disk, folder }: Pick<GoodPlaces, 'disk' | 'folder'>,
  session: Session,
): boolean {
  const vehicle = vehicleSlug(session.opened.job.vehicle.words);
  if (vehicle === null) return false;
  const home = join(folder, vehicle);
  return captured(session).every(({ ask, capture }) => {
    const picture = capture.second ? null : pictureOf(session, ask);
    return (
      picture !== null &&
      kept(disk, home, picture).some(
        ({ name }) => digestAt(disk, join(home, name)) === capture.sha256,
      )
    );
  });
}

/** Keeps every capture that passed after the repair, as far as its file is still where it was read. */
export async function keepGood(places: GoodPlaces, session: Session): Promise<KeptGood | Problem> {
  const problem = keepProblem(session);
  if (problem) return problem;
  const outcome = { vehicle: session.opened.job.vehicle.words, kept: [], left: [] } as {
    vehicle: string;
    kept: string[];
    left: string[];
  };
  for (const { ask, capture } of captured(session)) {
    const done = await keepOne(places, session, ask, capture);
    if ('problem' in done)
      outcome.left.push(`${safeText(capture.name)}: ${done.problem}; ${done.fix}`);
    else outcome.kept.push(done.path);
  }
  return outcome;
}

function captured(session: Session): { ask: CaptureAsk; capture: StepCapture }[] {
  return retestLines(session).flatMap(({ step, after }) =>
    step.kind !== 'ask' &&
    after?.type === 'retest-recorded' &&
    after.passed &&
    after.capture?.from === 'file'
      ? [{ ask: { kind: 'retest', step }, capture: after.capture }]
      : [],
  );
}

async function keepOne(
  { disk, folder, read }: GoodPlaces,
  session: Session,
  ask: CaptureAsk,
  capture: StepCapture,
): Promise<{ readonly path: string } | Problem> {
  const picture = pictureOf(session, ask);
  const vehicle = vehicleSlug(session.opened.job.vehicle.words);
  if (picture === null || vehicle === null)
    return { problem: 'nothing says what it is a capture of', fix: 'keep the file by hand' };
  const found = await bytesOf(disk, read, capture);
  if ('problem' in found) return found;
  const { bytes, ending } = found;
  const home = join(folder, vehicle);
  const there = kept(disk, home, picture);
  const same = there.find(({ name }) => digestAt(disk, join(home, name)) === sha256(bytes));
  if (same) return { path: join(home, same.name) };
  const number = Math.max(0, ...there.map((one) => one.number)) + 1;
  if (number > PICTURES_MOST)
    return { problem: 'there are too many of this kind', fix: `delete some in ${home}` };
  const path = join(home, `${picture}.${number}${ending}`);
  const written = writeWholeFile(disk, path, bytes);
  return written.ok ? { path } : { problem: written.problem.words, fix: written.problem.fix };
}

/** The file of a capture as it was measured, with the channels of the second one in it. */
async function bytesOf(
  disk: Disk,
  folders: readonly string[],
  { name, sha256: digest, second }: StepCapture,
): Promise<{ readonly bytes: Uint8Array; readonly ending: string } | Problem> {
  const path = placeOf(disk, folders, name, digest);
  if (path === null) return gone(name);
  const whole = { bytes: disk.read(path), ending: extname(name).toLowerCase() || '.csv' };
  if (!second) return whole;
  const other = placeOf(disk, folders, second.name, second.sha256);
  if (other === null) return gone(second.name);
  const [one, two] = [await readCapture(path, '.', {}), await readCapture(other, '.', {})];
  const both = one.capture && two.capture && joinCaptures(one.capture, two.capture);
  if (!both || 'problem' in both) return gone(name);
  return { bytes: Buffer.from(csvOfCapture(both)), ending: '.csv' };
}

function gone(name: string): Problem {
  return {
    problem: `${safeText(name)} is no longer where it was read from, or was changed`,
    fix: 'put it back in this folder and keep it again',
  };
}

function placeOf(
  disk: Disk,
  folders: readonly string[],
  name: string,
  digest: string,
): string | null {
  // A name from an event is only ever looked for inside these folders.
  const safe = basename(name);
  return (
    folders.map((one) => join(one, safe)).find((path) => digestAt(disk, path) === digest) ?? null
  );
}

function digestAt(disk: Disk, path: string): string | null {
  try {
    return sha256(disk.read(path));
  } catch {
    return null; // not there, no file, or closed to us: then it is not the one that is looked for
  }
}

function kept(disk: Disk, home: string, picture: string): { name: string; number: number }[] {
  return namesIn(disk, home).flatMap((name) => {
    const number = name.startsWith(`${picture}.`)
      ? /^(\d{1,2})\.[a-z]+$/.exec(name.slice(picture.length + 1))?.[1]
      : undefined;
    return number === undefined ? [] : [{ name, number: Number(number) }];
  });
}

/** Circuit, leads and state of the vehicle: what two pictures must have in common. */
function pictureOf({ opened: { circuit } }: Session, ask: CaptureAsk): string | null {
  const test: Test | null = circuit && captureTest({ circuit }, ask);
  if (!circuit || !test || !('plus' in test.probe)) return null;
  const { plus, minus } = test.probe;
  const what = asksPosition(ask) ? 'position' : 'picture';
  return [circuit.name, plus, minus, test.setup.state, what].map(slugOf).join('.');
}

function vehicleSlug(words: string): string | null {
  return /[\p{L}\p{N}]/u.test(words) ? slugOf(words) : null;
}

function isLike(one: string, other: string): boolean {
  if (one === other) return true;
  const [few, many] = [one.split('-'), other.split('-')].sort((a, b) => a.length - b.length);
  return few!.length >= WORDS_ALIKE && few!.every((word) => many!.includes(word));
}

function namesIn(disk: Disk, folder: string): readonly string[] {
  try {
    return disk.list(folder);
  } catch {
    return []; // nothing was ever kept, or it cannot be read: then there is nothing to offer
  }
}
