/** Sessions without a person: from an answers file, or with the simulated vehicle answering every step. */

import type { Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { concludedOn, type Proposal, type Weighed } from '../../session/advisor.ts';
import { type AnswersFile, commandFor } from '../../session/answers-file.ts';
import type { Command } from '../../session/command.ts';
import { doubtReading } from '../../session/doubt-reading.ts';
import { judgeStep, judgeTest } from '../../session/judge-step.ts';
import { pendingCautions, pendingTestCautions } from '../../session/pending-cautions.ts';
import { presentStep, type Session } from '../../session/session.ts';
import { vehicleCommand } from '../../session/vehicle-command.ts';
import { formatIssue } from '../../source/format-issue.ts';
import type { Issue } from '../../source/issue.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { possibleIn, testCommand } from '../../ui/screens/prompt-state.ts';

/** More steps than any checked tree takes. */
const STEPS_MAX = 500;

/** Null when all answers fitted, else what did not, in words. `warn` is told of readings that are taken, but doubtful. */
export async function runAnswers(
  opened: OpenedSession,
  file: AnswersFile,
  warn: (words: string) => void,
): Promise<string | null> {
  const { driver, advisor, model } = opened;
  const weigh = (now: Session, faults: readonly string[]) => advisor?.weigh(now, faults);
  for (const index of file.answers.keys()) {
    const captured = await capturedCommand(opened, file, index);
    let command = captured ?? commandFor(file, index, driver.session(), { weigh, model });
    // The cautions of a test that no step asks for are acknowledged with it.
    if ('type' in command && command.type === 'acknowledge-cautions' && command.test) {
      driver.perform(command);
      command = commandFor(file, index, driver.session(), { weigh, model });
    }
    if ('severity' in command) return formatIssue(command, file.source.text);
    const doubt = doubtOf(opened, command);
    if (doubt !== null) {
      const at = file.source.locate(['answers', index]);
      const issue = { code: 'doubtful-reading', severity: 'warning', at, words: doubt } as const;
      warn(formatIssue(issue, file.source.text));
    }
    const performed = driver.perform(command);
    if (!performed.ok) {
      const at = file.source.locate(['answers', index]);
      const issue = {
        code: 'refused',
        severity: 'error',
        at,
        words: performed.words,
        fix: performed.fix,
      } as const;
      return formatIssue(issue, file.source.text);
    }
  }
  return null;
}

/** The answer that a saved capture gives to the present step, else why it gives none; null where the answer names none. */
async function capturedCommand(
  opened: OpenedSession,
  file: AnswersFile,
  index: number,
): Promise<Command | Issue | null> {
  const draft = file.answers[index];
  if (!draft?.captured) return null;
  const session = opened.driver.session();
  const step = presentStep(session);
  // A wrong step and cautions are told as of any other answer.
  if (!step || (draft.step ?? step.id) !== step.id || pendingCautions(session).length > 0)
    return null;
  const { file: path, channel, ...beside } = draft.captured;
  let found = await opened.measureCapture({ kind: 'step', step }, path, beside);
  if (channel !== undefined && found.channels) found = found.channels.judge(channel - 1);
  if (found.ok) return found.command;
  const at = file.source.locate(['answers', index, 'captured']);
  return { code: 'no-capture', severity: 'error', at, words: found.words, fix: found.fix };
}

function doubtOf(opened: OpenedSession, command: Command): string | null {
  const session = opened.driver.session();
  if (command.type === 'record-test') {
    const { test, shown, expected } = command;
    if (shown.kind !== 'number') return null;
    const { unit, value } = shown;
    const judge = (one: number) =>
      expected && judgeTest({ kind: 'number', value: one, unit }, expected, session.meter);
    const possible = possibleIn(opened, session, test);
    return doubtReading(value ?? Number.POSITIVE_INFINITY, unit, judge, possible);
  }
  const step = presentStep(session);
  if (command.type !== 'record-reading' || step?.kind !== 'measure') return null;
  const judge = (value: number) => judgeStep(step, value, session.meter);
  return doubtReading(command.value, step.unit, judge, possibleIn(opened, session, testOf(step)));
}

/** Lets the simulated vehicle answer until the conclusion is accepted. Null when it came to one. */
export function runOnBench(opened: OpenedSession): string | null {
  const { driver, advisor } = opened;
  for (let count = 0; count < STEPS_MAX; count += 1) {
    const session = driver.session();
    if (session.status === 'concluded') return null;
    const step = presentStep(session);
    if (!step) return 'free order has no steps to answer: take a file of answers';
    const command = commandOnBench(opened, step);
    if (!command) return `step "${step.id}" asks for something the circuit knows nothing of`;
    const weighed =
      command.type === 'conclude' && step.kind === 'conclude'
        ? advisor?.weigh(session, step.faults)
        : undefined;
    const performed = driver.perform(weighed ? concluding(opened, weighed) : command);
    if (!performed.ok) return `${performed.words}; ${performed.fix}`;
  }
  return `no conclusion after ${STEPS_MAX} steps`;
}

/** What is better than the tree's conclusion, and where there is nothing, or only a proof that nobody asked for, that. */
function concluding(opened: OpenedSession, weighed: Weighed): Command {
  const { better } = weighed;
  switch (better.kind) {
    case 'take-back':
      return { type: 'go-back', to: better.overturned.place };
    case 'repeat':
    case 'first':
      return madeOnBench(opened, better.proposal) ?? { type: 'conclude', weighed };
    case 'instead': {
      const own = concludedOn(better.row);
      const anew = opened.advisor?.weigh(opened.driver.session(), own.faults) ?? weighed;
      return { type: 'conclude', own, weighed: anew };
    }
    case 'narrow':
    case 'prove':
    case 'accept':
      return { type: 'conclude', weighed };
  }
}

/** The command that makes an offered test on the simulated vehicle, its cautions first; null where that is silent. */
export function madeOnBench(
  { driver, benchShows }: OpenedSession,
  first: Proposal,
): Command | null {
  const { test } = first;
  if (pendingTestCautions(driver.session(), test).length > 0)
    return { type: 'acknowledge-cautions', test };
  const answer = benchShows(test)?.answer;
  if (answer?.kind === 'reading') {
    const { typed, value } = answer;
    return testCommand(first, { type: 'record-reading', typed, value });
  }
  if (answer?.kind !== 'outcome') return null;
  const { outcome, look } = answer;
  return testCommand(first, { type: 'choose-outcome', outcome, ...(look ? { look } : {}) });
}

function commandOnBench(opened: OpenedSession, step: Step): Command | null {
  const session = opened.driver.session();
  if (step.kind === 'conclude') return { type: 'conclude' };
  if (pendingCautions(session).length > 0) return { type: 'acknowledge-cautions' };
  const shows = opened.driver.vehicleShows();
  if (!shows)
    return step.cannot === null
      ? null
      : { type: 'cannot-do', reason: 'the simulated vehicle has no answer' };
  return vehicleCommand(step, shows);
}
