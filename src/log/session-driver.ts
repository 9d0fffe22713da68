/** The session in hand over its file: decide, save, and only then show. */

import type { Step } from '../procedure/procedure.ts';
import type { Command } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import type { Performed, SessionDriver, VehicleAnswer } from '../session/driver.ts';
import type { SessionEvent, When } from '../session/events.ts';
import { evolve } from '../session/evolve.ts';
import { refusalWords } from '../session/refusal.ts';
import { presentStep, type Session } from '../session/session.ts';
import { ELSEWHERE, type SessionWriter } from './session-writer.ts';

export interface DriverParts {
  readonly writer: SessionWriter;
  readonly session: Session;
  readonly now: () => When;
  /** The simulated vehicle's answer to a step, or null with a real vehicle. */
  readonly vehicle: ((step: Step) => VehicleAnswer | null) | null;
  /** Called after each saved command, e.g. to write the transcript beside the log. */
  readonly onSaved?: (session: Session) => void;
}

/** A driver over an open session file. */
export function driveSession(parts: DriverParts): SessionDriver {
  let { writer, session } = parts;
  /** The event that the disk refused, still to be written, and all that come with it. */
  let unsaved: SessionEvent[] = [];
  let isElsewhere = false;

  const save = (events: readonly SessionEvent[]): Performed => {
    for (const [index, event] of events.entries()) {
      const saved = writer.append(event);
      if (!saved.ok) {
        unsaved = events.slice(index);
        isElsewhere = saved.problem.code === ELSEWHERE;
        const { words, fix } = saved.problem;
        return { ok: false, words, fix, refusal: null, disk: true };
      }
      session = evolve(session, event);
    }
    unsaved = [];
    parts.onSaved?.(session);
    return { ok: true, session };
  };

  const perform = (command: Command): Performed => {
    const decision = decide(session, command, parts.now());
    if (!decision.ok) {
      const { refusal } = decision;
      return { ok: false, ...refusalWords(refusal), refusal, disk: false };
    }
    return save(decision.events);
  };

  return {
    session: () => session,
    perform,
    path: () => writer.path,
    head: () => ({ seq: writer.last.seq, hash: writer.last.hash }),
    isElsewhere: () => isElsewhere,
    continueIn: (folder) => {
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
    },
    vehicleShows: () => {
      const step = presentStep(session);
      return step && parts.vehicle ? parts.vehicle(step) : null;
    },
    close: () => writer.close(),
  };
}
