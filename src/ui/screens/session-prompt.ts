/** What is being asked, and what its answer is: of a step, of a test after the repair, of any other test. No React. */
import { testKey } from '../../circuit/test-key.ts';
import type { DrillAction } from '../../drill/drill-act.ts';
import type { Step } from '../../procedure/procedure.ts';
import type { Command } from '../../session/command.ts';
import { againCommand, type RetestLine, retestLines } from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import type { TestToDo } from '../../session/session-tests.ts';
import type { Here, PageParts, PagesState, Wanted } from './pages-state.ts';
import {
  type Asked,
  askedAt,
  askedInTest,
  askedOfBench,
  askingOf,
  freshAnswer,
  freshTestAnswer,
  type HalfAnswer,
  testCommand,
} from './prompt-state.ts';

/** The question with the answer that is half given. */
export interface Prompt {
  readonly half: HalfAnswer;
  readonly asked: Asked;
  /** What an answer asks for; null when it answers nothing here. */
  readonly taken: (answer: Command) => Wanted | null;
}

/** The test after the repair that comes next, or the one that is made again; null when all are made. */
export interface RetestPlace extends RetestLine {
  /** From 1. */
  readonly number: number;
  readonly count: number;
}

/** Where the tests after the repair are. */
export function retestPlace(session: Session, again: string | null): RetestPlace | null {
  const lines = retestLines(session);
  const place = lines.findIndex(({ step, after }) =>
    again === null ? after === null : step.id === again,
  );
  const line = lines[place];
  return line ? { ...line, number: place + 1, count: lines.length } : null;
}

/** What is asked at a step, with a half-typed answer where one is kept, and what becomes of the answer. */
export function stepPrompt(
  { opened, state }: Here,
  step: Exclude<Step, { kind: 'conclude' }>,
): Prompt {
  const { session } = state;
  const half = keptOr(state, askingOf(session), () => freshAnswer(session, step));
  if (opened.drill) return { half, asked: askedOfBench(), taken: () => bench({ type: 'do-step' }) };
  return { half, asked: askedAt(opened, session, step, half), taken: perform };
}

/** The prompt of a test after the repair. */
export function retestPrompt({ opened, state }: Here, { step }: RetestPlace): Prompt {
  const { session } = state;
  const asking = `again ${step.id} ${session.retests.length}`;
  const half = keptOr(state, asking, () => ({ ...freshAnswer(session, step), asking }));
  const vehicle = opened.repaired?.answers(step) ?? null;
  return {
    half,
    asked: askedAt(opened, session, step, half, vehicle),
    taken: (answer) => perform(againCommand(step, answer)),
  };
}

/** The prompt of a test that no step asks for. */
export function testPrompt(
  { opened, state }: Here,
  toDo: TestToDo,
  by: PageParts['test']['by'],
): Prompt {
  const { session } = state;
  const asking = `test ${testKey(toDo.test)} ${session.tests.length}`;
  const half = keptOr(state, asking, () => freshTestAnswer(asking));
  if (opened.drill)
    return {
      half,
      asked: askedOfBench(),
      taken: () => bench({ type: by, test: toDo.test }),
    };
  return {
    half,
    asked: askedInTest(opened, session, toDo, half),
    taken: (answer) => perform(testCommand(toDo, answer)),
  };
}

function keptOr({ half }: PagesState, asking: string, fresh: () => HalfAnswer): HalfAnswer {
  return half?.asking === asking ? half : fresh();
}

function perform(command: Command | null): Wanted | null {
  return command && { type: 'perform', command };
}

function bench(action: DrillAction): Wanted {
  return { type: 'act', action };
}
