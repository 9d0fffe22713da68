/** The session in hand over its file: decide, save, and only then show. */
import { dirname } from 'node:path';
import type { Step } from '../procedure/procedure.ts';
import { answeringTest } from '../session/answering-test.ts';
import type { Command } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import type { Performed, SessionDriver, VehicleAnswer } from '../session/driver.ts';
import type { SessionEvent, When } from '../session/events.ts';
import { evolve } from '../session/evolve.ts';
import { goneRoundFor, reopenedFor } from '../session/out-of-reach.ts';
import { refusalWords } from '../session/refusal.ts';
import { presentStep, type Session } from '../session/session.ts';
import { ELSEWHERE, type Receipt, type SessionWriter } from './session-writer.ts';
import { done, type Tried } from './write-problem.ts';

/** What a session is driven with: its file, its clock, its vehicle. */
export interface DriverParts {
  readonly writer: SessionWriter;
  readonly session: Session;
  readonly now: () => When;
  /** The simulated vehicle's answer to a step, or null with a real vehicle. */
  readonly vehicle: ((step: Step) => VehicleAnswer | null) | null;
  /** Where a session goes on when its own folder takes no more, and nobody is there to name another. */
  readonly refuge?: string;
  /** What a typed folder means. */
  readonly folderOf?: (typed: string) => string;
  /** Called when the session comes to rest or to an end, and at the close when something came since: time for a transcript. */
  readonly onRest?: (session: Session) => void;
}

/**
 * How the session goes on without asking: back to a step that can be reached after all, or past one that is answered
 * already or cannot be reached; null where the present step is asked.
 */
function unasked(session: Session): Command | null {
  const to = reopenedFor(session);
  if (to !== null) return { type: 'go-back', to };
  const test = answeringTest(session);
  if (test !== null) return { type: 'answer-by-test', by: test };
  const round = goneRoundFor(session);
  return round === null ? null : { type: 'go-round', by: round };
}

/** A driver over an open session file. */
export function driveSession(parts: DriverParts): SessionDriver {
  let { writer, session } = parts;
  /** The event that the disk refused, still to be written, and all that come with it. */
  let unsaved: SessionEvent[] = [];
  let isElsewhere = false;
  let isClosed = false;
  /** The state that was told last; one that was only opened needs nothing. */
  let told = session;

  const tellRest = () => {
    if (session.status === 'open' || session === told) return;
    told = session;
    parts.onRest?.(session);
  };

  /** A file that an earlier refusal closed takes nothing again: what is tried after it begins the next part beside it. */
  const append = (event: SessionEvent): Tried<Receipt> => {
    const wasClosed = !writer.isOpen;
    const saved = writer.append(event);
    if (saved.ok || !wasClosed || saved.problem.code === ELSEWHERE) return saved;
    const moved = writer.continueIn(dirname(writer.path));
    if (!moved.ok) return moved;
    writer = moved.value.writer;
    session = evolve(session, moved.value.link);
    return done(moved.value.receipt!);
  };

  const save = (events: readonly SessionEvent[]): Performed => {
    const before = session.status;
    for (const [index, event] of events.entries()) {
      const saved = append(event);
      if (!saved.ok) {
        unsaved = events.slice(index);
        isElsewhere = saved.problem.code === ELSEWHERE;
        const { words, fix } = saved.problem;
        return { ok: false, words, fix, refusal: null, disk: true };
      }
      session = evolve(session, event);
    }
    unsaved = [];
    if (session.status !== before) tellRest();
    return { ok: true, session };
  };

  const perform = (command: Command): Performed => {
    const decision = decide(session, command, parts.now());
    if (!decision.ok) {
      const { refusal } = decision;
      return { ok: false, ...refusalWords(refusal), refusal, disk: false };
    }
    const saved = save(decision.events);
    return saved.ok ? answeredUnasked(saved) : saved;
  };

  /**
   * The steps that tests of the session have answered already, and those that are gone round, each saved as what the person
   * did was.
   */
  const answeredUnasked = (saved: Performed): Performed => {
    const command = unasked(session);
    const decision = command && decide(session, command, parts.now());
    if (!decision?.ok) return saved;
    const answered = save(decision.events);
    return answered.ok ? answeredUnasked(answered) : answered;
  };

  const continueIn = (folder: string): Performed => {
    const moved = writer.continueIn(folder);
    if (!moved.ok) {
      const { words, fix } = moved.problem;
      return { ok: false, words, fix, refusal: null, disk: true };
    }
    writer = moved.value.writer;
    session = evolve(session, moved.value.link);
    const [first, ...rest] = unsaved;
    // The new part begins with the event that the old one refused.
    if (first && moved.value.receipt) {
      session = evolve(session, first);
      return save(rest);
    }
    return save(unsaved);
  };

  /** A disk that was full a moment ago may have room. */
  const continueAnywhere = (): Performed => {
    const again = writer.isOpen ? save(unsaved) : null;
    if (again?.ok && writer.look() === null) return again;
    const beside = continueIn(dirname(writer.path));
    return beside.ok || parts.refuge === undefined ? beside : continueIn(parts.refuge);
  };

  return {
    session: () => session,
    perform,
    path: () => writer.path,
    head: () => ({ seq: writer.last.seq, hash: writer.last.hash }),
    isElsewhere: () => isElsewhere,
    continueIn: (folder) =>
      folder === null ? continueAnywhere() : continueIn(parts.folderOf?.(folder) ?? folder),
    unsaved: () => (isElsewhere ? null : (writer.look()?.atTheEnd ?? null)),
    vehicleShows: () => {
      const step = presentStep(session);
      return step && parts.vehicle ? parts.vehicle(step) : null;
    },
    close: () => {
      if (!isClosed && !isElsewhere && writer.look() !== null) continueAnywhere();
      isClosed = true;
      tellRest();
      writer.close();
    },
  };
}
