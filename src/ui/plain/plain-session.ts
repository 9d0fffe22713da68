/**
 * The session as a dialogue of lines: for screen readers, pipes, dumb terminals and whoever likes it so.
 * The same driver and the same words as the screens; nothing is ever overwritten.
 */

import { ARRANGEMENT } from '../../circuit/arrange-test.ts';
import { isTask, type Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { goodWords } from '../../procedure/test-words.ts';
import { countWords } from '../../quantity/count-words.ts';
import { sheetAnswer } from '../../session/code-answer.ts';
import type { Command } from '../../session/command.ts';
import { customerWords } from '../../session/gaps.ts';
import { notRuledOut } from '../../session/not-ruled-out.ts';
import { pendingCautions } from '../../session/pending-cautions.ts';
import { presentStep } from '../../session/session.ts';
import { sheetReading } from '../../session/sheet-reading.ts';
import { lastVain } from '../../session/vain-words.ts';
import type { OpenedSession } from '../app-services.ts';
import { answeredWords } from '../screens/answer-words.ts';
import { asleepWords } from '../screens/asleep-words.ts';
import { stepHereWords } from '../screens/car-words.ts';
import { proofParagraph, restsWords, shortWhere } from '../screens/conclusion-words.ts';
import { evidenceWords, ruledOutWords } from '../screens/evidence-words.ts';
import { notTickedWords } from '../screens/not-ticked-words.ts';
import { outWords, reachableOf } from '../screens/reach-pages.ts';
import {
  keptGoodLines,
  leftLine,
  scopeLines,
  sessionTitle,
  watchedLines,
} from '../screens/step-words.ts';
import { askCautions, sayStanding } from './ask-cautions.ts';
import type { Dialogue } from './dialogue.ts';
import { ADVICE_WORDS, CONCLUDE_WORD } from './plain-advice.ts';
import { CALC_WORD, CAPTURE_WORD } from './plain-capture.ts';
import { KNOWN_WORD } from './plain-known.ts';
import { NOTE_WORDS, READINGS_WORD, SKETCH_WORD } from './plain-notes.ts';
import { PLAN_WORD } from './plain-plan.ts';
import { SHORT_WORD } from './plain-short.ts';
import { answerStep, isAnswerOf, promptOf, takeOver } from './plain-steps.ts';
import { TEST_WORDS } from './plain-test.ts';
import { WATCH_WORD } from './plain-watched.ts';
import {
  type DialogueEnd,
  helpLine,
  say,
  sayAll,
  type Word,
  type WordPlace,
  wordTable,
} from './plain-words.ts';
import { performSaved } from './until-saved.ts';

/** How the dialogue ended. */
export type PlainEnd = 'concluded' | 'paused' | 'input-ended';

const WORDS = wordTable<WordPlace>(
  ['Type a reading, the number of an answer, or one of these words:'],
  [
    {
      words: ['back'],
      help: helpLine('back', 'take back the last answer, or the value that was set'),
      does: (place) => tell(place, { type: 'go-back' }),
    },
    ...NOTE_WORDS,
    {
      words: ['cannot'],
      help: helpLine('cannot REASON', 'this step cannot be done here'),
      does: cannot,
    },
    ...ADVICE_WORDS,
    CONCLUDE_WORD,
    KNOWN_WORD,
    SHORT_WORD,
    ...TEST_WORDS,
    READINGS_WORD,
    SKETCH_WORD,
    CALC_WORD,
    CAPTURE_WORD,
    WATCH_WORD,
    PLAN_WORD,
    {
      words: ['take'],
      help: helpLine('take', 'use what the simulated vehicle shows'),
      does: takeOver,
    },
    {
      words: ['pause'],
      help: helpLine('pause', 'save and quit; continue later with: ohmward resume'),
      does: async (place) => {
        const paused = await performSaved(place, { type: 'pause' });
        return paused.ok || paused.disk ? 'paused' : null;
      },
    },
  ] satisfies readonly Word<WordPlace>[],
);

async function tell(place: WordPlace, command: Command): Promise<DialogueEnd> {
  await performSaved(place, command);
  return null;
}

/** Where the step needs a connector or a vehicle state, it is told how to say so of all that needs it. */
async function cannot(place: WordPlace, reason: string): Promise<DialogueEnd> {
  const session = place.opened.driver.session();
  const out = reachableOf(session);
  const done = await performSaved(place, { type: 'cannot-do', reason });
  if (!done.ok) return null;
  return sayAll(
    place,
    out.map(
      (one) =>
        `If ${outWords(session, one)}, in no other step either: aside ${'part' in one ? one.part : one.state}`,
    ),
  );
}

const ASLEEP_WORDS = { tests: '"next"', suspects: '"suspects"' };

/** Leads one session through to its conclusion, a pause, or the end of input. */
export async function plainSession(opened: OpenedSession, dialogue: Dialogue): Promise<PlainEnd> {
  const { driver } = opened;
  const arranged = { now: ARRANGEMENT };
  begin(opened, dialogue.say);
  let told = driver.session().events.length;
  while (true) {
    const session = driver.session();
    const isNews = session.events.length > told;
    const answered = isNews ? answeredWords(opened, session) : null;
    const vain = isNews ? lastVain(session) : null;
    told = session.events.length;
    if (vain !== null) dialogue.say(vain);
    if (answered !== null) dialogue.say(answered);
    if (session.status === 'concluded' || session.status === 'closed') return 'concluded';
    const step = presentStep(session);
    const asleep =
      isNews && step && isTask(step) ? asleepWords(opened, session, step, ASLEEP_WORDS) : null;
    if (asleep !== null) dialogue.say(asleep);
    dialogue.say('');
    if (step && !(await askCautions(opened, pendingCautions(session), step.id, dialogue)))
      return leave(opened);
    present(opened, step, dialogue.say);
    const line = await dialogue.ask(promptOf(opened, step));
    if (line === null) return leave(opened);
    const end = await answer({ opened, dialogue, step, arranged }, line.trim());
    // The reason has been told; nothing can be saved here any more.
    if (driver.isElsewhere() || end === 'paused') return 'paused';
  }
}

/** At the end of input the session is paused, so that it can be resumed. */
function leave(opened: OpenedSession): PlainEnd {
  opened.driver.perform({ type: 'pause' });
  return 'input-ended';
}

async function answer(place: WordPlace, line: string): Promise<DialogueEnd> {
  if (line === '') return null;
  const said = isAnswerOf(place.step, line) ? null : await say(WORDS, place, line);
  return said ? said.end : answerStep(place, line, (other) => answer(place, other));
}

function begin(opened: OpenedSession, say: Dialogue['say']): void {
  const session = opened.driver.session();
  const { job, from } = session.opened;
  say(sessionTitle(opened, session));
  if (job.complaint !== '') say(`Complaint: ${job.complaint}`);
  if (from !== undefined) say(`Starts in the middle of the procedure, at the step "${from}".`);
  if (opened.preview) say('Preview: nothing is saved.');
  say('Type "help" for the words you can use.');
}

function present(opened: OpenedSession, step: Step | null, say: Dialogue['say']): void {
  if (!step) say(`Free order, ${countWords(opened.driver.session().tests.length, 'test')} done.`);
  else if (isTask(step)) presentStepOf(opened, step, say);
  else presentConclusion(opened, step, say);
}

function presentConclusion(
  opened: OpenedSession,
  step: Extract<Step, { kind: 'conclude' }>,
  say: Dialogue['say'],
): void {
  const { driver, bind, advisor } = opened;
  const session = driver.session();
  say(`Conclusion: ${bind(step.title)}`);
  say(bind(step.say));
  say(`Repair: ${`${leftLine(session)} ${bind(step.repair)}`.trim()}`);
  const customer = customerWords(session, step);
  if (customer !== '') say(`For the customer: ${bind(customer)}`);
  const weighed = advisor?.weigh(session, step.faults) ?? null;
  const where = shortWhere(session, step.faults, weighed);
  if (where !== '') say(`Where: ${bind(where)}`);
  const [placing] = weighed?.wouldPlace ?? [];
  if (placing)
    say(
      `Where along the wire is not known yet. "next" lists the test for it: ${bind(placing.words)}.`,
    );
  for (const line of weighed?.evidence ?? [])
    say(`  Evidence: ${evidenceWords(opened, session, line)}`);
  for (const line of weighed?.ruledOut ?? [])
    say(`  Ruled out: ${ruledOutWords(opened, session, line)}`);
  const { circuit, job } = session.opened;
  const left = circuit && weighed ? notRuledOut(circuit, step.faults, weighed.ruledOut, job) : [];
  for (const words of left) say(`  Not tested, or not far enough to rule it out: ${words}`);
  if (weighed?.unexplained) say(weighed.unexplained);
  say(proofParagraph(opened, session, step, weighed).text);
  const rests = restsWords(opened, session, weighed);
  if (rests !== null) say(rests);
}

const NOT_TICKED_WORDS = {
  instruments: 'ohmward settings instruments',
  cannot: 'cannot REASON',
};

function presentStepOf(
  opened: OpenedSession,
  step: Exclude<Step, { kind: 'conclude' }>,
  say: Dialogue['say'],
): void {
  const { driver, bind } = opened;
  const session = driver.session();
  say(`Step ${session.trail.length}: ${bind(step.title)}`);
  sayStanding(opened, step, say);
  for (const line of scopeLines(opened, testOf(step))) say(line);
  const notTicked = notTickedWords(session, step, NOT_TICKED_WORDS);
  if (notTicked !== null) say(notTicked);
  say(bind(step.say));
  if (step.why !== '') say(`Why: ${bind(step.why)}`);
  const expected = goodWords(step);
  if (expected !== null) say(`Good is: ${expected}${stepHereWords(opened, session, step)}`);
  for (const line of [...watchedLines(session, step), ...keptGoodLines(opened, step)]) say(line);
  if (step.kind === 'look' || step.kind === 'ask')
    step.outcomes.forEach((outcome, index) => {
      say(`  ${index + 1}  ${bind(outcome.words)}`);
    });
  const said = sheetAnswer(step, session.opened.job);
  if (said) say(`${said.code} on the job sheet says: ${bind(said.outcome.words)}`);
  const reading = sheetReading(step, session);
  if (reading) say(`The job sheet says ${reading.typed}: type it if it still shows that.`);
  const shows = driver.vehicleShows();
  if (shows && step.kind !== 'act') say(`The simulated vehicle shows: ${shows.words}`);
}
