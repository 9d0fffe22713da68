/** What a step asks for, and how keys answer it. No React. */
import type { Meter } from '../../circuit/test.ts';
import type { Step } from '../../procedure/procedure.ts';
import type { Proposal } from '../../session/advisor.ts';
import { codeAnswer } from '../../session/code-answer.ts';
import type { Command } from '../../session/command.ts';
import type { VehicleAnswer } from '../../session/driver.ts';
import type { Answer } from '../../session/events.ts';
import { expectedReading } from '../../session/expected-reading.ts';
import { judgeStep } from '../../session/judge-step.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { type Choice, choiceAfter, choicesAt } from './choice-prompt-state.ts';
import type { KeyTiming } from './deliberate-state.ts';
import {
  type ReadingContext,
  type ReadingPrompt,
  readingPrompt,
  readingPromptAfter,
} from './reading-prompt-state.ts';
import { lookWords, takenBack } from './step-words.ts';

interface AskedBase {
  /** What the simulated vehicle shows, in words; null with a real one. */
  readonly offered: string | null;
  /** Why an answer stands there already, or null. */
  readonly standing: string | null;
}
export type Asked =
  | (AskedBase & {
      readonly kind: 'measure';
      readonly unit: string;
      readonly prompt: ReadingPrompt;
      readonly context: ReadingContext;
    })
  | (AskedBase & {
      readonly kind: 'choice';
      readonly marked: number;
      readonly choices: readonly Choice[];
      readonly offeredChoice: number | null;
    })
  | (AskedBase & { readonly kind: 'act' });

/** What would be lost without harm: half-typed text, the marked line. Belongs to one asking of one step. */
export interface HalfAnswer {
  readonly asking: string;
  readonly prompt: ReadingPrompt;
  readonly marked: number;
}

/** Names one asking of one step, so that a half answer never reaches the next. */
export function askingOf(session: Session): string {
  const visit = session.trail.at(-1);
  const reopened = session.events.filter(({ type }) => type === 'step-reopened').length;
  return `${visit?.step} ${session.trail.length} ${session.answers.length} ${reopened}`;
}

/** The half answer a step begins with: nothing, what the job sheet's code says, or the answer that was taken back. */
export function freshAnswer(session: Session, step: Step): HalfAnswer {
  const earlier = takenBack(session);
  const typed = earlier?.type === 'reading-recorded' ? earlier.typed : '';
  return {
    asking: askingOf(session),
    prompt: readingPrompt(typed),
    marked: Math.max(0, markedAt(session, step, earlier)),
  };
}

function markedAt(session: Session, step: Step, earlier: Answer | null): number {
  if (step.kind !== 'look' && step.kind !== 'ask') return 0;
  const answer =
    earlier?.type === 'look-recorded'
      ? earlier
      : { outcome: codeAnswer(step, session.opened.job)?.outcome.name, look: null };
  return choicesAt(step).findIndex(
    ({ outcome, look }) => outcome === answer.outcome && look === answer.look,
  );
}

/** What the step asks now. */
export function askedAt(
  opened: OpenedSession,
  session: Session,
  step: Exclude<Step, { kind: 'conclude' }>,
  half: HalfAnswer,
  vehicle: VehicleAnswer | null = opened.driver.vehicleShows(),
): Asked {
  const base = {
    offered: vehicle?.words ?? null,
    standing: takenBack(session) === null ? codeNote(session, step) : EARLIER,
  };
  switch (step.kind) {
    case 'measure': {
      const { unit } = step;
      const context: ReadingContext = {
        expected: expectedReading(step, opened.limits(step)),
        judge: (value) => judgeStep(step, value, session.meter),
        meter: session.meter,
        isDeliberate: true,
        offered: typedOf(vehicle),
      };
      return { ...base, kind: 'measure', unit: UNIT_WORDS[unit], prompt: half.prompt, context };
    }
    case 'look':
    case 'ask': {
      const choices = choicesAt(step);
      return {
        ...base,
        kind: 'choice',
        choices,
        marked: half.marked,
        offeredChoice: offeredAt(choices, vehicle),
      };
    }
    case 'act':
      return { ...base, kind: 'act' };
  }
}

const EARLIER = 'Your earlier answer stands here again: change it or confirm it.';

function codeNote(session: Session, step: Step): string | null {
  const said = codeAnswer(step, session.opened.job);
  return said && `Marked: what ${said.code} on the job sheet says. Confirm it or change it.`;
}

/** What a test outside the tree asks, of which nothing is judged; `unit` is that of a number. */
export function askedOutside(
  { kind, looks }: Proposal,
  unit: 'V' | 'ohm',
  half: HalfAnswer,
  vehicle: VehicleAnswer | null,
  meter: Meter,
): Asked {
  const base = { offered: vehicle?.words ?? null, standing: null };
  if (kind === 'number') {
    const context: ReadingContext = {
      expected: { unit },
      judge: () => null,
      meter,
      isDeliberate: true,
      offered: typedOf(vehicle),
    };
    return { ...base, kind: 'measure', unit: UNIT_WORDS[unit], prompt: half.prompt, context };
  }
  const choices = looks.map((look) => ({ words: lookWords(look), outcome: look, look }));
  const offeredChoice = offeredAt(choices, vehicle);
  return { ...base, kind: 'choice', choices, marked: half.marked, offeredChoice };
}

const UNIT_WORDS = {
  V: 'volts',
  ohm: 'ohms',
  A: 'amperes',
  Hz: 'hertz',
  rpm: 'rpm',
  '%': 'per cent',
  s: 'seconds',
  deg: 'degrees',
} as const;

function typedOf(vehicle: VehicleAnswer | null): string | null {
  return vehicle?.answer.kind === 'reading' ? vehicle.answer.typed : null;
}

function offeredAt(choices: readonly Choice[], vehicle: VehicleAnswer | null): number | null {
  const answer = vehicle?.answer;
  if (answer?.kind !== 'outcome') return null;
  const exact = choices.findIndex(
    ({ outcome, look }) => outcome === answer.outcome && look === answer.look,
  );
  const place = exact >= 0 ? exact : choices.findIndex(({ outcome }) => outcome === answer.outcome);
  return place >= 0 ? place : null;
}

/** The half answer after a key, the command when the key answered the step, or why it did not. */
export function answerAfter(
  half: HalfAnswer,
  asked: Asked,
  event: KeyEvent,
  { isSeen, isDeliberate }: KeyTiming,
): { readonly half: HalfAnswer; readonly command: Command | null; readonly note: string | null } {
  switch (asked.kind) {
    case 'measure': {
      const { prompt, taken } = readingPromptAfter(half.prompt, event, {
        ...asked.context,
        isDeliberate,
      });
      return {
        half: { ...half, prompt },
        command: taken === null ? null : { type: 'record-reading', ...taken },
        note: null,
      };
    }
    case 'choice': {
      const context = { count: asked.choices.length, offered: asked.offeredChoice };
      const { marked, taken } = choiceAfter(half.marked, event, context);
      if (taken && !isSeen) return { half, command: null, note: TOO_EARLY };
      const choice = asked.choices[marked];
      const command: Command | null =
        taken && choice
          ? {
              type: 'choose-outcome',
              outcome: choice.outcome,
              ...(choice.look === null ? {} : { look: choice.look }),
            }
          : null;
      return { half: { ...half, marked }, command, note: null };
    }
    case 'act': {
      if (keyLabel(event) !== 'return') return { half, command: null, note: null };
      return isSeen
        ? { half, command: { type: 'mark-done' }, note: null }
        : { half, command: null, note: TOO_EARLY };
    }
  }
}

/** An answer typed ahead was meant for something else. */
const TOO_EARLY = 'That key came before this was on the screen: read it, then press it again.';
