/** Answers to the step that is asked, in the dialogue of lines. */
import { judgementWords } from '../../circuit/judgement-words.ts';
import type { Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { formatQuantity } from '../../quantity/format-quantity.ts';
import type { Weighed } from '../../session/advisor.ts';
import type { Command } from '../../session/command.ts';
import type { TakenReading } from '../../session/driver.ts';
import { judgeStep } from '../../session/judge-step.ts';
import { vehicleCommand } from '../../session/vehicle-command.ts';
import type { OpenedSession } from '../app-services.ts';
import { carLine } from '../screens/car-words.ts';
import { adviceOf } from '../screens/pages-state.ts';
import { expectedAt, possibleIn } from '../screens/prompt-state.ts';
import { betterNow, doBetter } from './plain-advice.ts';
import { acceptQuestion, askedFor } from './plain-again.ts';
import { type PlainReading, readLine } from './plain-reading.ts';
import { type DialogueEnd, sayAll, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

type StepOf<K extends Step['kind']> = Extract<Step, { kind: K }>;

/** What was typed in place of a doubted reading is a line like any other. */
type Again = (line: string) => Promise<DialogueEnd>;

/** The question that a step asks; in free order any word may be said. */
export function promptOf(opened: OpenedSession, step: Step | null): string {
  switch (step?.kind) {
    case undefined:
      return 'A test, or another word: ';
    case 'measure':
      return `Reading in ${step.unit}: `;
    case 'look':
    case 'ask':
      return `1 to ${step.outcomes.length}: `;
    case 'act':
      return 'Type done: ';
    case 'conclude':
      return acceptQuestion(betterNow(weighedNow(opened, step.faults)));
  }
}

/** A line that is no word of the table, as the answer to the step. */
export async function answerStep(
  place: WordPlace,
  line: string,
  again: Again,
): Promise<DialogueEnd> {
  const { step } = place;
  switch (step?.kind) {
    case undefined:
      return sayAll(place, [`"${line}" is not a command here. All commands: help`]);
    case 'measure':
      return measured(place, step, line, again);
    case 'look':
    case 'ask':
      return chosen(place, step, line);
    case 'act':
      return done(place, line);
    case 'conclude':
      return accepted(place, step, line);
  }
}

/** Whether a line names an answer of the step, which then no word may hide. */
export function isAnswerOf(step: Step | null, line: string): boolean {
  const outcomes = step?.kind === 'look' || step?.kind === 'ask' ? step.outcomes : [];
  return outcomes.some(({ name }) => name === line.toLowerCase());
}

async function measured(
  place: WordPlace,
  step: StepOf<'measure'>,
  line: string,
  again: Again,
): Promise<DialogueEnd> {
  const read = await readAtStep(place, step, line);
  if (read.kind === 'instead') return again(read.line);
  if (read.kind === 'taken') await record(place, step, read.reading);
  return null;
}

/** A typed line as the reading that a step asks for, the first time or after the repair. */
export function readAtStep(
  { opened, dialogue }: WordPlace,
  step: StepOf<'measure'>,
  line: string,
): Promise<PlainReading> {
  const session = opened.driver.session();
  const judge = (value: number) => judgeStep(step, value, session.meter);
  const possible = possibleIn(opened, session, testOf(step));
  return readLine(line, { expected: expectedAt(opened, step), judge, possible }, dialogue);
}

async function record(
  place: WordPlace,
  step: StepOf<'measure'>,
  { typed, value }: TakenReading,
): Promise<void> {
  const { opened, dialogue } = place;
  const { meter } = opened.driver.session();
  const judged = judgeStep(step, value, meter);
  if (!(await performSaved(place, { type: 'record-reading', typed, value })).ok) return;
  const { unit } = step;
  const verdict = judged
    ? `, ${judged.verdict}: ${judgementWords(judged, { value, unit }, meter)}`
    : '';
  dialogue.say(`Saved: ${formatQuantity({ value, unit })}${verdict}`);
  const found = adviceOf(opened)?.diagnosis(opened.driver.session());
  if (found?.suspects.changed) dialogue.say(found.suspects.changed);
  const car = carLine(found?.car ?? null);
  if (car !== null) dialogue.say(car);
}

async function chosen(
  place: WordPlace,
  step: StepOf<'look' | 'ask'>,
  line: string,
): Promise<DialogueEnd> {
  const byNumber = /^\d+$/.test(line) ? step.outcomes[Number(line) - 1] : undefined;
  const outcome = byNumber ?? step.outcomes.find(({ name }) => name === line.toLowerCase());
  if (!outcome)
    return sayAll(place, [`Type a number from 1 to ${step.outcomes.length}, or "help".`]);
  return saved(place, { type: 'choose-outcome', outcome: outcome.name }, outcome.words);
}

async function saved(place: WordPlace, command: Command, words: string): Promise<DialogueEnd> {
  if ((await performSaved(place, command)).ok) place.dialogue.say(`Saved: ${words}`);
  return null;
}

async function done(place: WordPlace, line: string): Promise<DialogueEnd> {
  if (line.toLowerCase() !== 'done')
    return sayAll(place, ['Type "done" when it is done, or "help".']);
  await performSaved(place, { type: 'mark-done' });
  return null;
}

async function accepted(
  place: WordPlace,
  step: StepOf<'conclude'>,
  line: string,
): Promise<DialogueEnd> {
  const weighed = weighedNow(place.opened, step.faults);
  const better = betterNow(weighed);
  const wanted = askedFor(line, better);
  if (!wanted) {
    const asked = acceptQuestion(better).replace(/: $/, '');
    return sayAll(place, [`${asked}, "back" to change an answer, or "help".`]);
  }
  if (wanted.kind !== 'accept') return doBetter(place, wanted);
  await performSaved(place, { type: 'conclude', ...(weighed ? { weighed } : {}) });
  return null;
}

function weighedNow({ advisor, driver }: OpenedSession, faults: readonly string[]): Weighed | null {
  return advisor?.weigh(driver.session(), faults) ?? null;
}

/** What the simulated vehicle shows, as the answer. */
export async function takeOver(place: WordPlace): Promise<DialogueEnd> {
  const { step } = place;
  const shows = place.opened.driver.vehicleShows();
  if (!shows || !step) return sayAll(place, ['There is no simulated vehicle to read it from.']);
  const command = vehicleCommand(step, shows);
  if (command?.type === 'record-reading' && step.kind === 'measure')
    await record(place, step, command);
  else if (command) return saved(place, command, shows.words);
  return null;
}
