/** From an event back to the command that leads to it: what a replay decides anew. */
import type { Command } from './command.ts';
import type { SessionEvent, StepCapture } from './events.ts';
import { closeCommand } from './retest.ts';
import type { Session } from './session.ts';

/** The command that leads to an event; null for events that no command makes, or none that can be told from it. */
export function commandOf(session: Session, event: SessionEvent): Command | null | 'impossible' {
  switch (event.type) {
    case 'session-opened':
    case 'recovered':
    case 'segment-continued':
      return null;
    case 'caution-acknowledged': {
      if (event.step === null) return null;
      const readBy = event.readBy === undefined ? {} : { readBy: event.readBy };
      const ids = event.cautions.map(({ id }) => id);
      return { type: 'acknowledge-cautions', step: event.step, ids, ...readBy };
    }
    case 'reading-recorded': {
      if (event.by !== undefined) return { type: 'answer-by-test', by: event.by };
      const value = event.value ?? Number.POSITIVE_INFINITY;
      return { type: 'record-reading', typed: event.typed, value, ...captureOf(event) };
    }
    case 'look-recorded': {
      if (event.by !== undefined) return { type: 'answer-by-test', by: event.by };
      const look = event.look === null ? {} : { look: event.look };
      const vain = event.vain ? { vain: event.vain } : {};
      return {
        type: 'choose-outcome',
        outcome: event.outcome,
        ...look,
        ...captureOf(event),
        ...vain,
        saved: true,
      };
    }
    case 'step-done':
      return { type: 'mark-done' };
    case 'step-impossible':
      if (event.by !== undefined) return { type: 'go-round', by: event.by };
      return { type: 'cannot-do', reason: event.reason };
    case 'step-reopened': {
      const to = session.trail.findIndex((visit) => visit.answer === event.answer);
      return to < 0 ? 'impossible' : { type: 'go-back', to };
    }
    case 'test-recorded': {
      const { test, typed, shown, expected, made, note } = event;
      return {
        type: 'record-test',
        ...{ test, typed, shown, expected, ...captureOf(event) },
        ...(made === undefined ? {} : { made }),
        ...(note === undefined ? {} : { note }),
      };
    }
    case 'test-set-aside':
      return { type: 'set-test-aside', test: event.test, aside: event.aside };
    case 'connector-set-aside': {
      const { part, aside, reason } = event;
      return { type: 'set-connector-aside', part, aside, reason };
    }
    case 'state-set-aside': {
      const { state, aside, reason } = event;
      return { type: 'set-state-aside', state, aside, reason };
    }
    case 'value-set': {
      const { quantity, is, typed, from } = event;
      return { type: 'set-value', quantity, is, typed, from };
    }
    case 'value-taken-back':
      return { type: 'go-back' };
    case 'short-placed': {
      const { stretch, unplugged, typed, drops } = event;
      return { type: 'place-short', stretch, unplugged, typed, drops };
    }
    case 'waking-watched': {
      const { place, typed, unit, least, most, drops, minutes } = event;
      const said = { place, typed, unit, least, most, drops, minutes };
      const again = session.concluded ? { step: event.step } : {};
      return { type: 'watch-waking', ...again, ...said, ...captureOf(event) };
    }
    case 'note-added':
      return { type: 'add-note', text: event.text };
    case 'instruments-changed':
      return { type: 'change-instruments', instruments: event.instruments, meter: event.meter };
    case 'session-paused':
      return { type: 'pause' };
    case 'session-resumed':
      return { type: 'resume', program: event.program, by: event.by };
    case 'concluded': {
      const { ownWords, faults, evidence, ruledOut, proven, conclusion, restsOn } = event;
      const own = conclusion === null ? { own: { words: ownWords, faults } } : {};
      const hangsOn = restsOn ?? null;
      const left = conclusion === null ? {} : { left: faults };
      const weighed =
        proven === null ? {} : { weighed: { evidence, ruledOut, proven, hangsOn, ...left } };
      return { type: 'conclude', ...own, ...weighed };
    }
    case 'retest-recorded': {
      const { step, typed, value, look, outcome } = event;
      const rest = { typed, value, look, outcome, ...captureOf(event) };
      return { type: 'record-retest', step, ...rest };
    }
    case 'retest-impossible':
      return { type: 'cannot-retest', step: event.step, reason: event.reason };
    case 'work-answered':
      return { type: 'answer-work', answer: event.answer, by: event.by, words: event.words };
    case 'drive-reported':
      return { type: 'report-drive', code: event.code, words: event.words };
    case 'session-closed':
      return closeCommand(session);
    case 'test-stopped':
      return { type: 'stop-test', test: event.test, hazard: event.hazard };
    case 'caution-passed-over':
      return { type: 'pass-over', cautions: event.cautions };
    case 'answer-revealed': {
      const { type: _type, at: _at, elapsed: _elapsed, ...answer } = event;
      return { type: 'reveal', answer };
    }
  }
}

function captureOf({ capture }: { readonly capture?: StepCapture }): { capture?: StepCapture } {
  return capture ? { capture } : {};
}
