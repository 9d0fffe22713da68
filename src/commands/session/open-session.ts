/** Opens and resumes sessions at the desk: the log, the driver over it, the simulated vehicle, the transcript beside it. */
import { dirname, resolve } from 'node:path';

import type { Circuit } from '../../circuit/circuit.ts';
import type { Model } from '../../circuit/model.ts';
import { tellingNeighbours } from '../../circuit/telling-neighbours.ts';
import type { Test } from '../../circuit/test.ts';
import {
  answersFor,
  type Bench,
  benchFor,
  createBench,
  displayed,
  readingAnswer,
} from '../../drill/bench.ts';
import { levelOfSession } from '../../drill/drill-act.ts';
import { drillDesk } from '../../drill/drill-desk.ts';
import { createWorld } from '../../drill/drill-world.ts';
import { folderTyped } from '../../files/folders.ts';
import { sessionFileName } from '../../files/safe-name.ts';
import { type Disk, errorCode } from '../../log/disk.ts';
import { sha256 } from '../../log/hash.ts';
import { resumeSessionFile } from '../../log/read-session-file.ts';
import { driveSession } from '../../log/session-driver.ts';
import { createSession, type SessionWriter } from '../../log/session-writer.ts';
import { causeWords } from '../../log/write-problem.ts';
import { writeWholeFile } from '../../log/write-whole.ts';
import { bindText, terminalWords } from '../../procedure/bind-text.ts';
import { fitHarness } from '../../procedure/fit-harness.ts';
import type { Job } from '../../procedure/job.ts';
import type { LinkedProcedure } from '../../procedure/link-procedure.ts';
import { atPlaceOf, placeProblem } from '../../procedure/place-sensor.ts';
import { readHarness } from '../../procedure/read-harness.ts';
import { fitNeighbours } from '../../procedure/read-neighbours.ts';
import { wakeByTold } from '../../procedure/wake-by-told.ts';
import { wiringSketch } from '../../procedure/wiring-sketch.ts';
import { callMinutes, callPrices } from '../../records/call-words.ts';
import { readRates } from '../../records/read-rates.ts';
import { recordOf } from '../../records/session-record.ts';
import { transcriptOf } from '../../records/transcript.ts';
import type { Advisor } from '../../session/advisor.ts';
import type { CaptureAsk } from '../../session/capture-step.ts';
import { decide } from '../../session/decide.ts';
import type { SessionDriver } from '../../session/driver.ts';
import {
  type Hand,
  RULES,
  SESSION_FORMAT,
  type SessionOpened,
  type SessionVehicle,
} from '../../session/events.ts';
import { openSession } from '../../session/evolve.ts';
import { followAdvisor } from '../../session/follow-advisor.ts';
import { insteadOfSheet, statedOnSheet } from '../../session/instead-of-sheet.ts';
import { circuitAtStart, circuitOf } from '../../session/known-circuit.ts';
import { readAllSaid } from '../../session/read-known.ts';
import type { Session } from '../../session/session.ts';
import { modelFor } from '../../session/session-model.ts';
import { modelHere, stepWith } from '../../session/step-here.ts';
import { withVain } from '../../session/waking-vain.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import { HEALTHY } from '../../suspects/prediction-table.ts';
import type { KeptCapture, OpenedSession } from '../../ui/app-services.ts';
import { type GoodPlaces, isAllKept, keepGood, keepProblem, keptFor } from './good-captures.ts';
import {
  type Desk,
  type LinkedSubject,
  linkSubject,
  type SessionSubject,
  subjectName,
} from './open-desk.ts';
import { captureFiles, measureFor, rememberFolder } from './session-captures.ts';
import { calculate, scopeLine, sumsFor } from './session-sums.ts';
import { voltageLimits } from './voltage-limits.ts';

/** What a new session is about. */
export interface NewSession {
  readonly subject: SessionSubject;
  readonly job: Job;
  /** Fault of the simulated vehicle, `healthy` too; null for a real vehicle. */
  readonly bench: {
    readonly fault: string;
    readonly seed: number;
    /** The fault shows only to who moves the harness. */
    readonly intermittent?: boolean;
  } | null;
  /** Step to begin at instead of the start, on a simulated vehicle. */
  readonly from?: string | undefined;
  /** Who answers; a person unless another is named. */
  readonly by?: Hand;
}

/** Opens a new session file and everything around it. */
export function beginSession(desk: Desk, wanted: NewSession): OpenedSession | Problem {
  const { subject, job, bench, by = 'person' } = wanted;
  const found = linkSubject(desk, subject, job.vehicle.drive);
  if (isProblem(found)) return found;
  const { linked, circuit } = found;
  const name = subjectName(subject);
  const misplaced = placeProblem(job, circuit);
  if (misplaced !== null)
    return { problem: misplaced, fix: 'change "position" on the job sheet, or leave it out' };
  const fitted = ofThisCar(desk, job, found);
  if (isProblem(fitted)) return fitted;
  const unknown = bench && faultProblem(name, fitted.circuit, bench.fault);
  if (unknown) return unknown;
  const from = wanted.from === undefined ? undefined : stepToBeginAt(linked, wanted.from, subject);
  if (from && isProblem(from)) return from;
  const { procedure } = fitted;
  return openNew(desk, {
    ...fitted,
    procedure: procedure && wakeByTold(procedure, job),
    job,
    by,
    vehicle: vehicleOf(bench),
    person: desk.settings().person,
    folder: desk.sessions(),
    fileWords: job.name || job.vehicle.plate || name,
    ...(from === undefined ? {} : { from: from.step }),
  });
}

/** Circuit and tree with the sensor where it sits in this car, with what shares its feed, and with the joints of its harness. */
function ofThisCar(
  desk: Desk,
  job: Job,
  found: Pick<LinkedSubject, 'procedure' | 'circuit'>,
): Pick<LinkedSubject, 'procedure' | 'circuit'> | Problem {
  const atPlace = atPlaceOf(job, found);
  const shares = job.shares ?? [];
  if (shares.length > 0 && !atPlace.circuit)
    return {
      problem: 'shares: there is no circuit for anything to share',
      fix: 'leave it out, or choose a procedure with a circuit',
    };
  const fed = atPlace.circuit ? fitNeighbours(atPlace.circuit, shares) : null;
  if (fed?.problem) return { problem: `shares: ${fed.problem.words}`, fix: fed.problem.fix };
  const own = atPlace.circuit && fed && tellingNeighbours(atPlace.circuit, fed.circuit);
  const placed = { ...atPlace, circuit: own };
  const { circuit } = placed;
  const said = job.harness ?? [];
  if (said.length === 0) return shares.length === 0 ? placed : withLimits(desk, placed);
  if (!circuit)
    return {
      problem: 'harness: there is no circuit, so there are no wires to describe',
      fix: 'leave it out, or choose a procedure with a circuit',
    };
  const { harness, problems } = readHarness(circuit, said);
  const [problem] = problems;
  if (problem) return { problem: `harness: ${problem.words}`, fix: problem.fix };
  return withLimits(desk, fitHarness(harness, placed));
}

/** The tree with the limits that the circuit of this car gives. */
function withLimits(
  desk: Desk,
  fitted: Pick<LinkedSubject, 'procedure' | 'circuit'>,
): Pick<LinkedSubject, 'procedure' | 'circuit'> {
  if (!fitted.circuit || !fitted.procedure) return fitted;
  const model = modelFor(fitted.circuit, desk.settings().meter);
  const steps = Object.entries(fitted.procedure.steps).map(([id, step]) => [
    id,
    stepWith(step, () => model),
  ]);
  return { ...fitted, procedure: { ...fitted.procedure, steps: Object.fromEntries(steps) } };
}

/** Everything that the first event of a session says beside what the desk knows. */
export type FirstFacts = Pick<SessionOpened, 'job' | 'vehicle' | 'by' | 'person' | 'from'> &
  Pick<LinkedSubject, 'procedure' | 'circuit'> & {
    readonly folder: string;
    /** What the file is named after. */
    readonly fileWords: string;
  };

/** Writes the first event, and brings together what a session is worked with. */
export function openNew(desk: Desk, facts: FirstFacts): OpenedSession | Problem {
  const { folder, fileWords, procedure, circuit, job, vehicle, by, person, from } = facts;
  const { shop, instruments, meter } = desk.settings();
  const { known, problems } = readAllSaid(circuit, job.known ?? []);
  const [problem] = problems;
  if (problem)
    return {
      problem: `known, "${job.known?.[problem.index]?.what}": ${problem.words}`,
      fix: problem.fix,
    };
  const now = desk.now();
  const name = sessionFileName(now.at, fileWords);
  const opened: SessionOpened = {
    type: 'session-opened',
    format: SESSION_FORMAT,
    rules: RULES,
    program: desk.program,
    by,
    id: name.replace(/\.jsonl$/, ''),
    person,
    shop,
    instruments,
    meter,
    job,
    procedure,
    circuit,
    ...(known.length === 0 ? {} : { known }),
    cautionRules: desk.library.cautions,
    vehicle,
    ...(from === undefined ? {} : { from }),
    ...now,
  };
  try {
    desk.disk.makeFolder(folder);
  } catch (error) {
    return cannotWrite(folder, error);
  }
  const writer = createSession(desk.disk, folder, name, opened);
  if (!writer.ok) return { problem: writer.problem.words, fix: writer.problem.fix };
  return atHand(desk, writer.value, openSession(opened));
}

/** What keeps a simulated vehicle from having this fault, with the one that was meant or all there are; or null. */
export function faultProblem(name: string, circuit: Circuit | null, fault: string): Problem | null {
  const known = circuit?.faults.map(({ id }) => id) ?? [];
  if (fault === HEALTHY || known.includes(fault)) return null;
  const near = nearestName(fault, known);
  const named = near ? `did you mean "${near}"?` : `known: ${[HEALTHY, ...known].join(', ')}`;
  return {
    problem: `the circuit of "${name}" has no fault "${fault}"`,
    fix: circuit ? named : 'a procedure without a circuit has no simulated vehicle',
  };
}

function vehicleOf(bench: NewSession['bench']): SessionVehicle {
  if (bench === null) return { kind: 'real' };
  const { fault, seed, intermittent } = bench;
  return { kind: 'bench', fault, seed, ...(intermittent ? { intermittent } : {}) };
}

/** Goes on with a saved session where it stopped, unless there is an `objection`; then nothing is written. */
export function continueSession(
  desk: Desk,
  path: string,
  by: Hand = 'person',
  objection: (session: Session) => Problem | null = () => null,
): OpenedSession | Problem {
  const against = (session: Session) => objection(session) ?? tryOut(session);
  const resumed = resumeSessionFile(desk.disk, path, desk.now(), [desk.sessions()], against);
  if (!resumed.ok) return { problem: resumed.problem.words, fix: resumed.problem.fix };
  const { writer, session } = resumed.value;
  if (isFinished(session)) {
    const opened = atHand(desk, writer, { ...session, acknowledged: { state: '', ids: [] } });
    return { ...opened, driver: resumedWhenUsed(opened.driver, desk, by) };
  }
  const opened = atHand(desk, writer, session);
  const performed = opened.driver.perform({ type: 'resume', program: desk.program, by });
  if (!performed.ok) return { problem: performed.words, fix: performed.fix };
  // A drill that was cut off between the diagnosis and the answer.
  const refused = session.concluded ? opened.drill?.finish().refused : null;
  return refused ? { problem: refused.words, fix: refused.fix } : opened;
}

/** Computes what the first screen asks for: nothing after the conclusion, and where a drill hides the suspects. */
function tryOut(session: Session): null {
  const circuit = circuitAtStart(session.opened);
  if (!circuit || session.concluded || levelOfSession(session)?.suspects === false) return null;
  const model = modelFor(circuit, session.opened.meter);
  void advisorOver(model, session).diagnosis(session).car;
  return null;
}

/** A drill that was cut off between the diagnosis and the answer is not. */
function isFinished({ opened, status, revealed }: Session): boolean {
  if (opened.vehicle.kind === 'drill' && !revealed) return false;
  return status === 'concluded' || status === 'closed';
}

function advisorOver(model: Model, { opened }: Session): Advisor {
  return followAdvisor((now) => modelHere(now, model), opened);
}

/**
 * A finished record that is only looked at stays as it is: its head stands on reports already given out, and its
 * last event says that it is finished. It is resumed by the first command that is not refused.
 */
function resumedWhenUsed(driver: SessionDriver, { now, program }: Desk, by: Hand): SessionDriver {
  let isResumed = false;
  return {
    ...driver,
    perform: (command) => {
      if (!isResumed && decide(driver.session(), command, now()).ok) {
        const resumed = driver.perform({ type: 'resume', program, by });
        if (!resumed.ok) return resumed;
        isResumed = true;
      }
      return driver.perform(command);
    },
  };
}

/** A step by its name; a name that uses a sub-procedure stands for the first step inside it. */
function stepToBeginAt(
  linked: LinkedProcedure | null,
  name: string,
  subject: SessionSubject,
): { readonly step: string } | Problem {
  if (!linked || subject.kind !== 'procedure')
    return { problem: 'free order has no steps to begin at', fix: 'leave --from out' };
  const { procedure, places, standing } = linked;
  const { file } = subject.procedure.source;
  const step = standing(name);
  if (Object.hasOwn(procedure.steps, step)) return { step };
  const near = nearestName(name, [...places.keys()]);
  return {
    problem: `"${procedure.name}" has no step "${name}"`,
    fix: near ? `did you mean "${near}"?` : `see them with: ohmward draw ${file}`,
  };
}

function cannotWrite(folder: string, error: unknown): Problem {
  const code = errorCode(error);
  // In a place such as /proc, where nobody can make a folder.
  const words = code === 'ENOENT' ? 'a folder cannot be created there' : causeWords(code);
  return {
    problem: `the folder ${folder} cannot be created: ${words}`,
    fix: 'choose another with: ohmward settings sessions FOLDER',
  };
}

function atHand(desk: Desk, writer: SessionWriter, session: Session): OpenedSession {
  const { job, circuit, meter, vehicle } = session.opened;
  const atStart = circuitAtStart(session.opened);
  const model = atStart && modelFor(atStart, meter);
  const bench =
    model && vehicle.kind === 'bench' ? benchFor(model, session.opened.procedure, vehicle) : null;
  const world = vehicle.kind === 'drill' ? createWorld(session.opened, sha256) : null;
  const modelNow = () => model && modelHere(driver.session(), model);
  const sumContext = () => ({
    model: modelNow(),
    meter: driver.session().meter,
    ascii: desk.settings().ascii,
    scope: desk.settings().scope,
  });
  const driven = driveSession({
    writer,
    session,
    now: desk.now,
    refuge: desk.refuge,
    folderOf: (typed) => folderTyped(typed, desk),
    vehicle: bench ? answersFor(bench, job) : null,
    onRest: (rested) => writeTranscript(desk.disk, rested, driven.path(), driven.head()),
  });
  const advisor = model && advisorOver(model, session);
  const driver: SessionDriver = {
    ...driven,
    perform: (command) => driven.perform(withVain(driven.session(), command, advisor, desk.now())),
  };
  /** Folders that captures of this session were read from. */
  const readFrom = new Set<string>();
  const keepable = keepableOn(desk);
  const looked = new Map<string, KeptCapture | null>();
  /** The disk is looked at once for each picture: a screen asks at every key. */
  const offered = (ask: CaptureAsk): KeptCapture | null => {
    const key = ask.kind === 'test' ? JSON.stringify(ask.test) : `step ${ask.step.id}`;
    if (!looked.has(key))
      looked.set(
        key,
        keptFor({ disk: desk.disk, folder: desk.goodCaptures }, driver.session(), ask),
      );
    return looked.get(key) ?? null;
  };
  return {
    driver,
    preview: desk.preview,
    name: () => desk.nameOf(driver.path()),
    advisor,
    model,
    drill: drillDesk(driver, world, model),
    sketch: (test, width, besides = false) =>
      circuit
        ? wiringSketch(circuit, job, {
            ...{ columns: width, ascii: desk.settings().ascii },
            ...{ test, besides },
          })
        : [],
    bind: (text) => bindText(text, job, circuit),
    terminalWords: (id) => terminalWords(id, job, circuit),
    limits: (step) => {
      const known = circuitOf(driver.session());
      return step.unit === 'V' && known ? voltageLimits(known) : null;
    },
    call: () => {
      const now = driver.session();
      if (!now.concluded || vehicle.kind === 'drill') return { sentences: [], prices: [] };
      const record = recordOf(now, driver.head());
      const rates = readRates(desk.settings().rates);
      return {
        sentences: record.call,
        prices: callPrices(callMinutes(now, record), rates && 'fix' in rates ? null : rates),
      };
    },
    benchShows: (test) => (bench && model ? benchAnswer(model, bench, test) : null),
    measureCapture: async (ask, path, beside = {}) => {
      const { fault } = beside;
      const there =
        vehicle.kind === 'bench' && fault !== undefined ? { ...vehicle, fault } : atRest(vehicle);
      const carOf = vehicle.kind === 'bench' ? vehicle.fault : HEALTHY;
      const context = {
        ...{ model, sound: modelNow(), vehicle: there, carOf },
        cars: () => advisor?.diagnosis(driver.session()).carsLeft ?? null,
        cwd: desk.cwd,
      };
      const stated = statedOnSheet(ask, job);
      const usual = stated ?? offered(ask)?.path;
      const measured = await measureFor(ask, path, context, {
        ...(usual === undefined ? {} : { against: usual }),
        ...beside,
      });
      const found = insteadOfSheet(measured, stated, beside.against);
      if (found.ok)
        for (const one of [path, beside.second]) {
          if (typeof one !== 'string') continue;
          rememberFolder(desk, one);
          readFrom.add(dirname(resolve(desk.cwd, one)));
        }
      return found;
    },
    captures: captureFiles(desk),
    goodCaptures: {
      offered,
      canKeep: () => !desk.preview && keepable.of(driver.session()),
      keep: async () => {
        const session = driver.session();
        const done = await keepGood(goodPlaces(desk, readFrom), session);
        if (!isProblem(done) && done.left.length === 0) keepable.kept(session);
        return done;
      },
    },
    // Well repaired, unless somebody says otherwise.
    repaired:
      model && vehicle.kind === 'bench'
        ? createBench(model, HEALTHY, vehicle.seed, vehicle.fault)
        : null,
    scopeLine: (test) => scopeLine(test, sumContext()),
    sums: (step) => sumsFor(step, sumContext()),
    calculate: (line, step) => calculate(line, step, sumContext()),
  };
}

/** Whether captures of a session are offered to be kept: looked up once for each state, and not once all of them are. */
function keepableOn(desk: Desk) {
  let known: { readonly session: Session; readonly can: boolean } | null = null;
  return {
    of: (session: Session): boolean => {
      if (known?.session !== session) {
        const can = keepProblem(session) === null && !isAllKept(goodPlaces(desk), session);
        known = { session, can };
      }
      return known.can;
    },
    kept: (session: Session): void => {
      known = { session, can: false };
    },
  };
}

/** Where this desk keeps known-good captures, and looks for those that are to be kept. */
export function goodPlaces(desk: Desk, readFrom: Iterable<string> = []): GoodPlaces {
  const last = desk.settings().captures;
  const read = [...readFrom, desk.cwd, ...(last === '' ? [] : [last])];
  return { disk: desk.disk, folder: desk.goodCaptures, read };
}

/** What a capture is taken of: a fault that comes and goes is not there. */
function atRest(vehicle: SessionVehicle): SessionVehicle {
  return vehicle.kind === 'bench' && vehicle.intermittent
    ? { ...vehicle, fault: HEALTHY }
    : vehicle;
}

function benchAnswer(model: Model, bench: Bench, test: Test) {
  const shown = bench.shows(test);
  if (shown.kind === 'number') return readingAnswer(model, shown);
  const { look } = shown;
  const { words } = displayed(model, shown);
  return { words, answer: { kind: 'outcome', outcome: look, look } as const };
}

/** The readable transcript beside the log. The log is the truth: when the transcript cannot be written, nothing is lost. */
function writeTranscript(
  disk: Disk,
  session: Session,
  path: string,
  head: { seq: number; hash: string },
): void {
  const text = transcriptOf(recordOf(session, head));
  writeWholeFile(disk, path.replace(/\.jsonl$/, '.md'), text);
}
