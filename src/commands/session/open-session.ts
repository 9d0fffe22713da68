/** Opens and resumes sessions at the desk: the tree and circuit of this car, the file, and what the first event says. */
import type { Circuit } from '../../circuit/circuit.ts';
import { tellingNeighbours } from '../../circuit/telling-neighbours.ts';
import { levelOfSession } from '../../drill/drill-act.ts';
import { sessionFileName } from '../../files/safe-name.ts';
import { errorCode } from '../../log/disk.ts';
import { resumeSessionFile } from '../../log/read-session-file.ts';
import { createSession } from '../../log/session-writer.ts';
import { causeWords } from '../../log/write-problem.ts';
import { fitHarness } from '../../procedure/fit-harness.ts';
import type { Job } from '../../procedure/job.ts';
import type { LinkedProcedure } from '../../procedure/link-procedure.ts';
import { withOhmsApart } from '../../procedure/ohms-apart.ts';
import { atPlaceOf, placeProblem } from '../../procedure/place-sensor.ts';
import { readHarness } from '../../procedure/read-harness.ts';
import { fitNeighbours } from '../../procedure/read-neighbours.ts';
import { calledByRole } from '../../procedure/unnamed-neighbours.ts';
import { wakeByTold } from '../../procedure/wake-by-told.ts';
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
import { circuitAtStart } from '../../session/known-circuit.ts';
import { readAllSaid } from '../../session/read-known.ts';
import type { Session } from '../../session/session.ts';
import { modelFor } from '../../session/session-model.ts';
import { stepWith } from '../../session/step-here.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import { HEALTHY } from '../../suspects/prediction-table.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { advisorOver, atHand } from './at-hand.ts';
import {
  type Desk,
  type LinkedSubject,
  linkSubject,
  type SessionSubject,
  subjectName,
} from './open-desk.ts';
import { withNotice } from './tree-notice.ts';

/** What a new session is about: the subject, the job sheet, and a real or a simulated vehicle. */
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
  const onCar = ofThisCar(desk, job, found);
  if (isProblem(onCar)) return onCar;
  const fitted = calledByRole(onCar, job);
  const unknown = bench && faultProblem(name, fitted.circuit, bench.fault);
  if (unknown) return unknown;
  const from = wanted.from === undefined ? undefined : stepToBeginAt(linked, wanted.from, subject);
  if (from && isProblem(from)) return from;
  const { procedure } = fitted;
  const opened = openNew(desk, {
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
  return isProblem(opened) ? opened : withNotice(desk, subject, opened);
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
  const placed = {
    procedure: own ? withOhmsApart(atPlace.procedure, own) : atPlace.procedure,
    circuit: own,
  };
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
