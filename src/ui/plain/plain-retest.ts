/** The tests after the repair as a dialogue of lines: the failed tests again, before beside after. */
import { ARRANGEMENT } from '../../circuit/arrange-test.ts';
import { testOf } from '../../procedure/test-of.ts';
import { takesCapture } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import { conclusionWords } from '../../session/conclusion-words.ts';
import type { VehicleAnswer } from '../../session/driver.ts';
import { pendingCautions } from '../../session/pending-cautions.ts';
import {
  againCommand,
  closeCommand,
  LAST_WORD,
  type RetestLine,
  retestLines,
  VERDICT_WORDS,
} from '../../session/retest.ts';
import { vehicleCommand } from '../../session/vehicle-command.ts';
import { wakesHere } from '../../session/watched-asked.ts';
import type { OpenedSession } from '../app-services.ts';
import { keptWords } from '../parts/kept-words.ts';
import { answerWords, expectedAgain, retestMark, retestWords } from '../screens/answer-words.ts';
import { keptGoodLines, scopeLines, watchedLines } from '../screens/step-words.ts';
import { askCautions, sayStanding } from './ask-cautions.ts';
import type { Dialogue } from './dialogue.ts';
import { askCapture, CALC_WORD } from './plain-capture.ts';
import { NOTE_WORDS, READINGS_WORD, SKETCH_WORD } from './plain-notes.ts';
import { isAnswerOf, promptOf, readAtStep } from './plain-steps.ts';
import { WATCH_AGAIN_WORD } from './plain-watched.ts';
import {
  type DialogueEnd,
  helpLine,
  sayAll,
  say as sayWord,
  type Word,
  type WordPlace,
  wordTable,
} from './plain-words.ts';
import { performSaved } from './until-saved.ts';

/** Where a word is said: at a test that is made again. */
interface RetestWordPlace extends WordPlace {
  readonly step: RetestLine['step'];
  readonly shows: VehicleAnswer | null;
}

const WORDS = wordTable<RetestWordPlace>(
  ['Type a reading, the number of an answer, or one of these words:'],
  [
    {
      words: ['cannot'],
      help: helpLine('cannot REASON', "this test can't be done"),
      does: (place, reason) => ended(place, { type: 'cannot-retest', step: place.step.id, reason }),
    },
    {
      words: ['capture', 'captures'],
      help: helpLine('capture FILE', 'measure a capture; without FILE, pick from a list'),
      does: captureAgain,
    },
    {
      words: ['take'],
      help: helpLine('take', 'use what the simulated vehicle shows'),
      does: (place) => {
        const taken = place.shows && vehicleCommand(place.step, place.shows);
        if (!taken) return sayAll(place, ['There is no simulated vehicle to read it from.']);
        return again(place, taken);
      },
    },
    WATCH_AGAIN_WORD,
    ...NOTE_WORDS,
    READINGS_WORD,
    SKETCH_WORD,
    CALC_WORD,
    {
      words: ['pause'],
      help: helpLine('pause', 'quit; continue later with: ohmward retest'),
      does: () => 'paused',
    },
  ] satisfies readonly Word<RetestWordPlace>[],
);

/** Leads through all retests and closes the session. False when the person stopped before the end. */
export async function plainRetest(opened: OpenedSession, dialogue: Dialogue): Promise<boolean> {
  const { driver } = opened;
  const { say } = dialogue;
  say(`After the repair: ${conclusionWords(driver.session())?.title ?? ''}`);
  const arranged = { now: ARRANGEMENT };
  for (const toDo of retestLines(driver.session()).filter(({ after }) => after === null)) {
    const { step } = toDo;
    say('');
    if (!(await askCautions(opened, pendingCautions(driver.session(), step), step.id, dialogue)))
      return false;
    const shows = opened.repaired?.answers(step) ?? null;
    present(opened, toDo, shows, say);
    const isMade = await madeAgain({ opened, dialogue, step, arranged, shows });
    if (!isMade) return false;
    say(LAST_WORDS[retestMark(driver.session().retests.at(-1) ?? null)]);
  }
  return close(opened, dialogue);
}

/** Asks until the test is made, or left: false. */
async function madeAgain(place: RetestWordPlace): Promise<boolean> {
  const { driver } = place.opened;
  const before = driver.session().retests.length;
  while (driver.session().retests.length === before) {
    const line = await place.dialogue.ask(promptOf(place.opened, place.step));
    if (line === null || (await answer(place, line.trim())) === 'paused') return false;
  }
  return true;
}

async function answer(place: RetestWordPlace, line: string): Promise<DialogueEnd> {
  const { step } = place;
  const said = isAnswerOf(step, line) ? null : await sayWord(WORDS, place, line);
  if (said) return said.end;
  if (step.kind === 'measure') return measured(place, step, line);
  const outcome = step.outcomes[Number(line) - 1];
  if (!outcome)
    return sayAll(place, [
      `Type a number from 1 to ${step.outcomes.length}, "cannot" and why, or "pause".`,
    ]);
  const look = 'looks' in outcome ? outcome.looks[0] : undefined;
  const chosen = { type: 'choose-outcome', outcome: outcome.name } as const;
  return again(place, look ? { ...chosen, look } : chosen);
}

async function measured(
  place: RetestWordPlace,
  step: Extract<RetestLine['step'], { kind: 'measure' }>,
  line: string,
): Promise<DialogueEnd> {
  const read = await readAtStep(place, step, line);
  if (read.kind === 'instead') return answer(place, read.line);
  return read.kind === 'taken' ? again(place, { type: 'record-reading', ...read.reading }) : null;
}

async function captureAgain(
  place: RetestWordPlace,
  typed: string,
  word: string,
): Promise<DialogueEnd> {
  const { opened, dialogue, step } = place;
  if (!takesCapture(step))
    return sayAll(place, ["A capture can't answer this test; answer it by hand."]);
  const fault = opened.repaired ? { fault: opened.repaired.fault } : {};
  const ask = { kind: 'retest', step } as const;
  const command = await askCapture(
    { opened, ask, typed, listed: word === 'captures', ...fault },
    dialogue,
  );
  return command ? ended(place, command) : null;
}

/** An answer to the step as that after the repair. */
async function again(place: RetestWordPlace, answered: Command): Promise<DialogueEnd> {
  const command = againCommand(place.step, answered);
  return command ? ended(place, command) : null;
}

/** Where nothing can be saved, nothing more can be tested. */
async function ended(place: RetestWordPlace, command: Command): Promise<DialogueEnd> {
  const done = await performSaved(place, command);
  return !done.ok && done.disk ? 'paused' : null;
}

async function close(opened: OpenedSession, dialogue: Dialogue): Promise<boolean> {
  const { driver } = opened;
  const { say } = dialogue;
  const command = closeCommand(driver.session());
  const { verdict } = command;
  const closed = await performSaved({ opened, dialogue }, command);
  say('');
  for (const line of retestLines(driver.session())) say(`  ${summary(opened, line)}`);
  say(`Verdict: ${verdict.replace('-', ' ')}: ${VERDICT_WORDS[verdict]}.`);
  if (verdict === 'cured' || verdict === 'not-shown') say(LAST_WORD);
  if (closed.ok && opened.goodCaptures.canKeep()) await askToKeep(opened, dialogue);
  return closed.ok;
}

/** Captures of a cured vehicle may serve the next one like it; only a yes keeps them. */
async function askToKeep({ goodCaptures }: OpenedSession, { say, ask }: Dialogue): Promise<void> {
  const word = await ask('Keep the after-repair captures as known-good? Type yes: ');
  if (word?.trim().toLowerCase() !== 'yes') return say('They were not kept.');
  for (const line of keptWords(await goodCaptures.keep())) say(line);
}

const LAST_WORDS = {
  passes: 'Passes now.',
  FAILS: 'Does not pass.',
  'not done': 'Not done.',
} as const;

function present(
  opened: OpenedSession,
  { step, before }: RetestLine,
  shows: VehicleAnswer | null,
  say: Dialogue['say'],
): void {
  const session = opened.driver.session();
  say(`${opened.bind(step.title)}.`);
  sayStanding(opened, step, say);
  for (const line of scopeLines(opened, testOf(step))) say(line);
  say(opened.bind(step.say));
  if (before) say(`Before the repair: ${answerWords(before, session)}`);
  const expected = expectedAgain(step, session);
  if (expected !== null) say(`Good is: ${expected}`);
  if (step.kind !== 'measure')
    step.outcomes.forEach((outcome, index) => {
      say(`  ${index + 1}  ${opened.bind(outcome.words)}`);
    });
  if (shows) say(`The simulated vehicle shows: ${shows.words} (type "take" to use it)`);
  say('If it can\'t be done: "cannot" and why.');
  if (wakesHere(session, step)) say('Each round of wiggling it: "watch" and what was seen.');
  for (const line of [...watchedLines(session, step), ...keptGoodLines(opened, step, true)])
    say(line);
  if (step.kind !== 'ask' && takesCapture(step))
    say('A capture can answer this: type "capture", or "capture" and a file.');
}

function summary(opened: OpenedSession, { step, before, after }: RetestLine): string {
  const session = opened.driver.session();
  const was = before ? answerWords(before, session) : 'not measured';
  const now = after ? retestWords(step, after) : 'not repeated';
  return `${opened.bind(step.title)}: before ${was}; after ${now}; ${retestMark(after)}`;
}
