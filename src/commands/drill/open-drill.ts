/** Opens and goes on with drills at the desk: sessions on a vehicle whose fault is hidden. */
import { join } from 'node:path';
import { hideFault, SEED_MAX } from '../../drill/hidden-fault.ts';
import type { Level } from '../../drill/levels.ts';
import { sha256 } from '../../log/hash.ts';
import { emptyJob, type Job } from '../../procedure/job.ts';
import type { AssignmentNote, Hand } from '../../session/events.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { type Desk, findSubject, linkSubject } from '../session/open-desk.ts';
import { continueSession, openNew } from '../session/open-session.ts';
import { withNotice } from '../session/tree-notice.ts';

/** What a drill is begun with: subject, level, vehicle and student. */
export interface NewDrill {
  /** Name or path of a procedure or of a circuit. */
  readonly subject: string;
  readonly level: Level;
  readonly seed: number;
  readonly student: string;
  readonly assignment: AssignmentNote | null;
  /** Who answers; a person unless another is named. */
  readonly by?: Hand;
}

/** The complaint is the same whatever is wrong. */
const COMPLAINT = 'The warning lamp is on and the signal of this sensor is missing or wrong.';

/** Drills lie beside the sessions, in a folder of their own. */
export function drillsFolder(desk: Desk): string {
  return join(desk.sessions(), 'drills');
}

/** A vehicle nobody has had before, most likely. */
export function anySeed(): number {
  return Math.floor(Math.random() * (SEED_MAX + 1));
}

/** Opens a new drill file and everything around it. */
export function beginDrill(desk: Desk, wanted: NewDrill): OpenedSession | Problem {
  const subject = findSubject(desk, wanted.subject);
  if (isProblem(subject)) return subject;
  const { level, seed, student, assignment, by = 'person' } = wanted;
  const job = emptyJob(COMPLAINT);
  const found = linkSubject(desk, subject, job.vehicle.drive);
  if (isProblem(found)) return found;
  const { circuit, procedure } = found;
  if (!circuit)
    return {
      problem: `the procedure "${wanted.subject}" has no circuit behind it`,
      fix: `choose another, or a circuit: ${[...desk.library.circuits.keys()].join(', ')}`,
    };
  const hidden = hideFault(circuit, level, seed, sha256);
  if (!hidden)
    return {
      problem: `the circuit "${circuit.name}" has no fault for the level "${level.name}"`,
      fix: 'choose another level',
    };
  const { commitment, earlierRepair } = hidden;
  const opened = openNew(desk, {
    procedure,
    circuit,
    job: withEarlier(job, earlierRepair, circuit.faults),
    by,
    vehicle: { kind: 'drill', level: level.name, seed, commitment, earlierRepair, assignment },
    person: student,
    folder: drillsFolder(desk),
    fileWords: `drill ${student} ${procedure?.name ?? circuit.name}`,
  });
  return isProblem(opened) ? opened : withNotice(desk, subject, opened);
}

/** The job sheet says what the work order says; which part that was, the prior takes from the vehicle's own words. */
function withEarlier(
  job: Job,
  repair: string | null,
  faults: readonly { readonly repair: string; readonly repairWords: string }[],
): Job {
  if (repair === null) return job;
  const words = faults.find((fault) => fault.repair === repair)?.repairWords ?? repair;
  return { ...job, earlierRepairs: [{ words, part: null }] };
}

/** Goes on with a drill where it stopped. */
export function continueDrill(
  desk: Desk,
  path: string,
  by: Hand = 'person',
): OpenedSession | Problem {
  if (!path.endsWith('.jsonl'))
    return {
      problem: `${path} is not a drill`,
      fix: 'drills are .jsonl files, in drills/ in the folder for sessions',
    };
  return continueSession(desk, path, by, ({ opened, revealed }) => {
    if (opened.vehicle.kind !== 'drill')
      return {
        problem: `${path} is a session, not a drill`,
        fix: `continue it with: ohmward resume ${path}`,
      };
    return revealed ? { problem: 'this drill has ended', fix: 'start another one' } : null;
  });
}
