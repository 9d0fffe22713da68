/** What a step or a test asks for, and how keys answer it. No React. */

import type { Judgement } from '../../circuit/judge.ts';
import { judgementWords } from '../../circuit/judgement-words.ts';
import { lookWords } from '../../circuit/look-words.ts';
import { numberUnitOf } from '../../circuit/shown-by.ts';
import type { Test } from '../../circuit/test.ts';
import { expectedEnds, type MeasureStep, type Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import type { ExpectedReading } from '../../quantity/parse-reading.ts';
import { sheetAnswer } from '../../session/code-answer.ts';
import type { Command } from '../../session/command.ts';
import type { TakenReading, VehicleAnswer } from '../../session/driver.ts';
import type { Answer } from '../../session/events.ts';
import { expectedReading } from '../../session/expected-reading.ts';
import { judgeStep, judgeTest } from '../../session/judge-step.ts';
import type { PossibleValues } from '../../session/possible-values.ts';
import type { Session } from '../../session/session.ts';
import type { TestToDo } from '../../session/session-tests.ts';
import { sheetReading } from '../../session/sheet-reading.ts';
import type { OpenedSession } from '../app-services.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';
import { takenBack } from './answer-words.ts';
import { type Choice, choiceAfter, choicesAt } from './choice-prompt-state.ts';
import type { KeyTiming } from './deliberate-state.ts';
import {
  promptHolding,
  type ReadingContext,
  type ReadingPrompt,
  readingPrompt,
  readingPromptAfter,
} from './reading-prompt-state.ts';

interface AskedBase {
  /** What the simulated vehicle shows, in words; null with a real one. */
  readonly offered: string | null;
  /** Why an answer stands there already, or null. */
  readonly standing: string | null;
}

/** What is being asked, told apart by the `kind` of its answer. */
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
  | (AskedBase & {
      readonly kind: 'act';
      /** What Enter says, as a sentence for the prompt and in a word for the keys. */
      readonly words: string;
      readonly enter: string;
    });

/** What would be lost without harm: half-typed text, the marked line. Belongs to one asking of one step. */
export interface HalfAnswer {
  readonly asking: string;
  readonly prompt: ReadingPrompt;
  readonly marked: number;
}

/** Whether what is typed goes into the field of a number. */
export function takesDigits(asked: Asked): boolean {
  return asked.kind === 'measure' && asked.prompt.mode === 'typing';
}

/** Names one asking of one step, so that a half answer never reaches the next. */
export function askingOf(session: Session): string {
  const visit = session.trail.at(-1);
  const reopened = session.events.filter(({ type }) => type === 'step-reopened').length;
  return `${visit?.step} ${session.trail.length} ${session.answers.length} ${reopened}`;
}

/** The half answer a step begins with: nothing, what the job sheet says, or the answer that was taken back. */
export function freshAnswer(session: Session, step: Step): HalfAnswer {
  const earlier = takenBack(session);
  const reading =
    earlier?.type === 'reading-recorded'
      ? { typed: earlier.typed, value: earlier.value ?? Number.POSITIVE_INFINITY }
      : sheetReading(step, session);
  return {
    asking: askingOf(session),
    prompt:
      step.kind === 'measure' && reading ? promptHolding(reading, step.unit) : readingPrompt(),
    marked: Math.max(0, markedAt(session, step, earlier)),
  };
}

/** The same for a test that no step asks for. */
export function freshTestAnswer(asking: string): HalfAnswer {
  return { asking, prompt: readingPrompt(), marked: 0 };
}

/** What may be typed at a step in this vehicle. */
export function expectedAt(opened: OpenedSession, step: MeasureStep): ExpectedReading {
  return expectedReading(step, opened.limits(step));
}

/** The same at a test that no step asks for, `unit` being that of its instrument. */
export function expectedInTest(
  opened: OpenedSession,
  { test, expected }: Pick<TestToDo, 'test' | 'expected'>,
): ExpectedReading {
  const unit = numberUnitOf(test);
  const limit = opened.limits({ unit });
  const usual =
    expected?.kind === 'number' ? { ...expectedEnds(expected), low: expected.low ?? 0 } : null;
  return { unit, ...(usual ? { usual } : {}), ...(limit ? { limit } : {}) };
}

function markedAt(session: Session, step: Step, earlier: Answer | null): number {
  if (step.kind !== 'look' && step.kind !== 'ask') return 0;
  const answer =
    earlier?.type === 'look-recorded'
      ? earlier
      : { outcome: sheetAnswer(step, session.opened.job)?.outcome.name, look: null };
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
    standing: takenBack(session) === null ? sheetNote(session, step) : EARLIER,
  };
  switch (step.kind) {
    case 'measure': {
      const { unit } = step;
      const context: ReadingContext = {
        expected: expectedAt(opened, step),
        judge: (value) => judgeStep(step, value, session.meter),
        judged: judgedIn(session, unit),
        possible: possibleIn(opened, session, testOf(step)),
        isDeliberate: true,
        offered: readingOf(vehicle),
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
      return { ...base, kind: 'act', ...DONE };
  }
}

/** What a test can show at all, worked out when it is first asked for and once for each state of the session. */
export function possibleIn(
  { advisor }: OpenedSession,
  session: Session,
  test: Test | null,
): () => PossibleValues | null {
  return () => (test && advisor?.diagnosis(session).possible(test)) ?? null;
}

/**
 * The same question where nobody knows yet what can be shown: the Enter that takes the reading waits for that. Once that
 * Enter has found a doubt, it stays.
 */
export function notDoubted(asked: Asked): Asked {
  return asked.kind === 'measure' && asked.prompt.mode !== 'confirm'
    ? { ...asked, context: { ...asked.context, possible: () => null } }
    : asked;
}

const DONE = { words: 'Press Enter when it is done.', enter: 'done' };
const EARLIER = 'Your earlier answer is filled in: change it or confirm it.';

function sheetNote(session: Session, step: Step): string | null {
  if (sheetReading(step, session))
    return 'From the job sheet: Enter takes it if it still shows that.';
  const said = sheetAnswer(step, session.opened.job);
  return said && `Marked: what ${said.code} on the job sheet says. Confirm it or change it.`;
}

function judgedIn({ meter }: Session, unit: MeasureStep['unit']) {
  return (judgement: Judgement, value: number) => judgementWords(judgement, { value, unit }, meter);
}

/** What a drill asks at a step or a test: nothing but the wish to do it, since its bench reads by itself. */
export function askedOfBench(): Asked {
  return {
    offered: null,
    standing: null,
    kind: 'act',
    words: 'Press Enter to do it: the bench reads it.',
    enter: 'do it',
  };
}

/** What a test that no step asks for wants to know. */
export function askedInTest(
  opened: OpenedSession,
  session: Session,
  toDo: TestToDo,
  half: HalfAnswer,
): Asked {
  const vehicle = opened.benchShows(toDo.test);
  const base = { offered: vehicle?.words ?? null, standing: null };
  if (toDo.kind === 'number') {
    const unit = numberUnitOf(toDo.test);
    const { expected } = toDo;
    const context: ReadingContext = {
      expected: expectedInTest(opened, toDo),
      judge: (value) =>
        expected && judgeTest({ kind: 'number', value, unit }, expected, session.meter),
      judged: judgedIn(session, unit),
      possible: possibleIn(opened, session, toDo.test),
      isDeliberate: true,
      offered: readingOf(vehicle),
    };
    return { ...base, kind: 'measure', unit: UNIT_WORDS[unit], prompt: half.prompt, context };
  }
  const choices = toDo.looks.map((look) => ({ words: lookWords(look), outcome: look, look }));
  const offeredChoice = offeredAt(choices, vehicle);
  return { ...base, kind: 'choice', choices, marked: half.marked, offeredChoice };
}

/** An answer to the prompt as that of a test that no step asks for; null when it answers no test. */
export function testCommand({ test, expected }: TestToDo, answer: Command): Command | null {
  const base = { type: 'record-test', test, expected } as const;
  if (answer.type === 'record-reading') {
    const { typed } = answer;
    const value = Number.isFinite(answer.value) ? answer.value : null;
    return { ...base, typed, shown: { kind: 'number', value, unit: numberUnitOf(test) } };
  }
  if (answer.type !== 'choose-outcome' || !answer.look) return null;
  const { look } = answer;
  return { ...base, typed: lookWords(look), shown: { kind: 'look', look } };
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

function readingOf(vehicle: VehicleAnswer | null): TakenReading | null {
  return vehicle?.answer.kind === 'reading' ? vehicle.answer : null;
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
