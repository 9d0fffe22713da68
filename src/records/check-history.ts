/**
 * Whether a session could have happened: every event is decided anew from the state before it and must come out the
 * same. So the way through the tree, the outcome of each reading, the conclusion and each retest's verdict follow
 * from what was recorded, and from nothing else.
 */
import { canonicalJson } from '../log/canonical-json.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Command } from '../session/command.ts';
import { decide } from '../session/decide.ts';
import type { SessionEvent, SessionOpened, StepCapture } from '../session/events.ts';
import { evolve, openSession } from '../session/evolve.ts';
import { presentConclusion, type Session } from '../session/session.ts';

export interface History {
  /** The state as far as the events could be followed. */
  readonly session: Session;
  /** Position of the first event that does not follow, from 0, and why. */
  readonly flaw: { readonly index: number; readonly words: string } | null;
  /** Positions of readings that this version of the program would judge otherwise: worth knowing, no damage. */
  readonly judgedOtherwise: readonly number[];
}

/** Follows events that have the right shape. Null when even the first cannot be followed. */
export function checkHistory(events: readonly SessionEvent[]): History | null {
  const [first, ...rest] = events;
  if (first?.type !== 'session-opened') return null;
  if (!namesLead(first.procedure)) return null;
  if (first.from !== undefined && !mayBeginAt(first)) return null;
  let session = openSession(first);
  const judgedOtherwise: number[] = [];
  for (const [i, event] of rest.entries()) {
    const index = i + 1;
    try {
      const words = follows(session, event);
      if (words === JUDGED_OTHERWISE) judgedOtherwise.push(index);
      else if (words !== null) return { session, flaw: { index, words }, judgedOtherwise };
      session = evolve(session, event);
    } catch {
      const words = 'names a step that the procedure does not have';
      return { session, flaw: { index, words }, judgedOtherwise };
    }
  }
  return { session, flaw: null, judgedOtherwise };
}

/** Every name of a step in the stored procedure is one of its steps. */
function namesLead({ start, steps }: Procedure): boolean {
  const known = (id: string) => Object.hasOwn(steps, id);
  return (
    known(start) &&
    Object.entries(steps).every(([id, step]) => {
      if (step.id !== id) return false;
      if (step.kind === 'conclude') return step.retest.every(known);
      const ways = step.kind === 'act' ? [step.go] : step.outcomes.map(({ go }) => go);
      return [...ways, ...(step.cannot === null ? [] : [step.cannot])].every(known);
    })
  );
}

/** Only on a simulated vehicle does a walk begin in the middle, and at a step that there is. */
function mayBeginAt({ from, procedure, vehicle }: SessionOpened): boolean {
  return vehicle.kind === 'bench' && Object.hasOwn(procedure.steps, from ?? '');
}

const JUDGED_OTHERWISE = 'judged otherwise';

/** Why an event does not follow from the state before it, or null. */
function follows(session: Session, event: SessionEvent): string | null {
  const command = commandOf(session, event);
  if (command === null) return null;
  if (command === 'impossible') return 'takes back an answer that does not stand';
  const decision = decide(session, command, { at: event.at, elapsed: event.elapsed });
  if (!decision.ok) return `could not have happened: ${decision.refusal.words}`;
  const [again] = decision.events;
  if (!again || decision.events.length !== 1) return 'does not follow from what was recorded';
  if (canonicalJson(again) === canonicalJson(event)) return null;
  if (event.type === 'reading-recorded' && again.type === event.type) {
    const same = { ...again, judgement: event.judgement };
    if (canonicalJson(same) === canonicalJson(event)) return JUDGED_OTHERWISE;
  }
  if (event.type === 'concluded' && event.conclusion !== null) {
    const tree = presentConclusion(session)?.id ?? 'none';
    if (tree !== event.conclusion)
      return `concludes "${event.conclusion}", but the readings lead to "${tree}"`;
  }
  return 'does not follow from what was recorded';
}

/** The command that leads to an event; null for events that no command makes. */
function commandOf(session: Session, event: SessionEvent): Command | null | 'impossible' {
  switch (event.type) {
    case 'session-opened':
    case 'recovered':
    case 'segment-continued':
      return null;
    case 'caution-acknowledged':
      // Before the conclusion only at the present step; after it, at any test that is done again.
      return { type: 'acknowledge-cautions', ...(session.concluded ? { step: event.step } : {}) };
    case 'reading-recorded': {
      const value = event.value ?? Number.POSITIVE_INFINITY;
      return { type: 'record-reading', typed: event.typed, value, ...captureOf(event) };
    }
    case 'look-recorded': {
      const look = event.look === null ? {} : { look: event.look };
      return { type: 'choose-outcome', outcome: event.outcome, ...look, ...captureOf(event) };
    }
    case 'step-done':
      return { type: 'mark-done' };
    case 'step-impossible':
      return { type: 'cannot-do', reason: event.reason };
    case 'step-reopened': {
      const to = session.trail.findIndex((visit) => visit.answer === event.answer);
      return to < 0 ? 'impossible' : { type: 'go-back', to };
    }
    case 'extra-reading': {
      const { test, words, typed, shown, expected } = event;
      const known = expected ? { expected } : {};
      return { type: 'record-extra', test, words, typed, shown, ...known, ...captureOf(event) };
    }
    case 'note-added':
      return { type: 'add-note', text: event.text };
    case 'instruments-changed':
      return { type: 'change-instruments', instruments: event.instruments, meter: event.meter };
    case 'session-paused':
      return { type: 'pause' };
    case 'session-resumed':
      return { type: 'resume', program: event.program };
    case 'concluded': {
      const { title, faults, repair, evidence, ruledOut, proven, conclusion } = event;
      const own = conclusion === null ? { own: { title, faults, repair } } : {};
      const weighed = proven === null ? {} : { weighed: { evidence, ruledOut, proven } };
      return { type: 'conclude', ...own, ...weighed };
    }
    case 'retest-recorded': {
      const { step, typed, value, look, outcome } = event;
      const rest = { typed, value, look, outcome, ...captureOf(event) };
      return { type: 'record-retest', step, ...rest };
    }
    case 'retest-impossible':
      return { type: 'cannot-retest', step: event.step, reason: event.reason };
    case 'session-closed':
      return { type: 'close', verdict: event.verdict, words: event.words };
  }
}

function captureOf({ capture }: { readonly capture?: StepCapture }): { capture?: StepCapture } {
  return capture ? { capture } : {};
}
