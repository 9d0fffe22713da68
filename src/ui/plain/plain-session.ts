/**
 * The session as a dialogue of lines: for screen readers, pipes, dumb terminals and whoever likes it so.
 * The same driver and the same words as the screens; nothing is ever overwritten.
 */

import { judgementWords } from '../../circuit/judgement-words.ts';
import type { Step } from '../../procedure/procedure.ts';
import { goodWords } from '../../procedure/test-words.ts';
import { formatQuantity } from '../../quantity/format-quantity.ts';
import { parseReading } from '../../quantity/parse-reading.ts';
import { takesCapture } from '../../session/capture-step.ts';
import { codeAnswer } from '../../session/code-answer.ts';
import type { Performed } from '../../session/driver.ts';
import { expectedReading } from '../../session/expected-reading.ts';
import { customerWords } from '../../session/gaps.ts';
import { judgeStep } from '../../session/judge-step.ts';
import { pendingCautions } from '../../session/pending-cautions.ts';
import { presentStep } from '../../session/session.ts';
import { vehicleCommand } from '../../session/vehicle-command.ts';
import type { OpenedSession } from '../app-services.ts';
import { evidenceWords, proofParagraph } from '../screens/conclusion-words.ts';
import { testOf } from '../screens/step-words.ts';
import { askCautions, sayStanding } from './ask-cautions.ts';
import { confirmReading } from './confirm-reading.ts';
import { saySums, takeCapture } from './plain-capture.ts';
import { concludeOn, doProposal, sayNextTests, saySuspects } from './plain-extra.ts';

/** One line out; a question and the line that comes back, null at the end of input. */
export interface Dialogue {
  readonly say: (line: string) => void;
  readonly ask: (question: string) => Promise<string | null>;
  /** A text from the person's editor; missing where none can be started. */
  readonly edit?: () => Promise<EditedNote>;
}

/** What was written, empty when nothing was, or why it could not be. */
export type EditedNote = { readonly text: string } | { readonly problem: string };

/** How the dialogue ended. */
export type PlainEnd = 'concluded' | 'paused' | 'input-ended';

const WORDS_OF_HELP = [
  'Type a reading, the number of an answer, or one of these words:',
  '  back            take back the last answer',
  '  note TEXT       write a note',
  '  edit            write a note in your editor ($VISUAL or $EDITOR)',
  '  cannot REASON   this step cannot be done here',
  '  suspects        what it could be, by chance',
  '  next            what would tell most now',
  '  do NUMBER       do that proposed test',
  '  conclude NUMBER conclude on that suspect, whatever the tree says',
  '  sketch          the wiring with the leads on it',
  '  calc            the sums that fit this step, done',
  '  calc NAME ...   one of them with your own values',
  '  capture FILE    measure a saved capture; yes takes it as the answer',
  '  capture         the same: of the simulated vehicle, else chosen from a list',
  '  captures        choose from the capture files of a folder, by number',
  '  take            take over what the simulated vehicle shows',
  '  pause           save and leave; go on later with: ohmward resume',
  '  help            this list',
];

const SKETCH_COLUMNS = 78;

/** Leads one session through to its conclusion, a pause, or the end of input. */
export async function plainSession(opened: OpenedSession, dialogue: Dialogue): Promise<PlainEnd> {
  const { driver } = opened;
  const { say, ask } = dialogue;
  const { job, procedure } = driver.session().opened;
  say(procedure.title);
  if (job.complaint !== '') say(`Complaint: ${job.complaint}`);
  const { from } = driver.session().opened;
  if (from !== undefined) say(`Begins in the middle of the procedure, at the step "${from}".`);
  if (opened.preview) say('A preview: nothing is saved.');
  say('Type "help" for the words you can use.');
  while (true) {
    const session = driver.session();
    if (session.status === 'concluded' || session.status === 'closed') return 'concluded';
    const step = presentStep(session);
    say('');
    if (!(await askCautions(opened, pendingCautions(session), step.id, dialogue)))
      return leave(opened);
    present(opened, step, say);
    const line = await ask(promptOf(step));
    if (line === null) return leave(opened);
    const end = await answer(opened, step, line.trim(), dialogue);
    // The reason has been told; nothing can be saved here any more.
    if (driver.isElsewhere()) return 'paused';
    if (end === 'paused') return 'paused';
  }
}

/** At the end of input the session is paused, so that it can be resumed. */
function leave(opened: OpenedSession): PlainEnd {
  opened.driver.perform({ type: 'pause' });
  return 'input-ended';
}

function present(opened: OpenedSession, step: Step, say: (line: string) => void): void {
  const { driver, bind } = opened;
  if (step.kind === 'conclude') {
    say(`Conclusion: ${bind(step.title)}`);
    say(bind(step.say));
    say(`Repair: ${bind(step.repair)}`);
    const customer = customerWords(driver.session(), step);
    if (customer !== '') say(`For the customer: ${bind(customer)}`);
    const weighed = opened.advisor?.weigh(driver.session(), step.faults) ?? null;
    for (const line of weighed?.evidence ?? []) say(`  Evidence: ${evidenceWords(line)}`);
    if (weighed?.unexplained) say(weighed.unexplained);
    say(proofParagraph(step, weighed).text);
    return;
  }
  const number = driver.session().trail.length;
  say(`Step ${number}: ${bind(step.title)}`);
  sayStanding(opened, step, say);
  say(bind(step.say));
  if (step.why !== '') say(`Why: ${bind(step.why)}`);
  const expected = goodWords(step);
  if (expected !== null) say(`Good is: ${expected}`);
  if (step.kind === 'look' || step.kind === 'ask')
    step.outcomes.forEach((outcome, index) => {
      say(`  ${index + 1}  ${bind(outcome.words)}`);
    });
  const said = codeAnswer(step, driver.session().opened.job);
  if (said) say(`${said.code} on the job sheet says: ${bind(said.outcome.words)}`);
  const shows = driver.vehicleShows();
  if (shows && step.kind !== 'act') say(`The simulated vehicle shows: ${shows.words}`);
}

function promptOf(step: Step): string {
  switch (step.kind) {
    case 'measure':
      return `Reading in ${step.unit}: `;
    case 'look':
    case 'ask':
      return `1 to ${step.outcomes.length}: `;
    case 'act':
      return 'Type done: ';
    case 'conclude':
      return 'Type yes to accept this conclusion: ';
  }
}

async function answer(
  opened: OpenedSession,
  step: Step,
  line: string,
  dialogue: Dialogue,
): Promise<'paused' | null> {
  const { say } = dialogue;
  const { driver } = opened;
  const [word = '', ...rest] = line.split(/\s+/);
  const text = line.slice(word.length).trim();
  const tell = (performed: Performed) => {
    if (!performed.ok) say(`${performed.words}${performed.fix ? `; ${performed.fix}` : ''}`);
    return performed.ok;
  };
  switch (word.toLowerCase()) {
    case '':
      return null;
    case 'help':
      for (const help of WORDS_OF_HELP) say(help);
      return null;
    case 'back':
      tell(driver.perform({ type: 'go-back' }));
      return null;
    case 'note':
      if (tell(driver.perform({ type: 'add-note', text }))) say('Noted.');
      return null;
    case 'edit': {
      const edited = (await dialogue.edit?.()) ?? { problem: 'there is no editor here' };
      if ('problem' in edited) say(edited.problem);
      else if (edited.text === '') say('Nothing was written, so nothing was noted.');
      else if (tell(driver.perform({ type: 'add-note', text: edited.text }))) say('Noted.');
      return null;
    }
    case 'cannot':
      tell(driver.perform({ type: 'cannot-do', reason: text }));
      return null;
    case 'pause':
      return tell(driver.perform({ type: 'pause' })) ? 'paused' : null;
    case 'suspects':
      saySuspects(opened, say);
      return null;
    case 'next':
      sayNextTests(opened, say);
      return null;
    case 'do':
      await doProposal(opened, Number(text), dialogue);
      return null;
    case 'conclude':
      concludeOn(opened, Number(text), say);
      return null;
    case 'sketch': {
      const drawn = opened.sketch(testOf(step), SKETCH_COLUMNS);
      if (drawn.length === 0) say('There is no circuit behind this procedure, so no wiring.');
      for (const row of drawn) say(row);
      return null;
    }
    case 'calc':
      await saySums(opened, step, text, say);
      return null;
    case 'capture':
    case 'captures': {
      const listed = word.toLowerCase() === 'captures';
      const ask = { kind: 'step', step } as const;
      if (takesCapture(step))
        await takeCapture({ opened, ask, typed: text, listed }, tell, dialogue);
      else say('This step is not answered by a capture; answer it by hand.');
      return null;
    }
    case 'take':
      if (rest.length === 0) take(opened, tell, say);
      return null;
  }
  if (step.kind === 'measure') {
    const again = await confirmReading(opened, step, line, dialogue);
    if (again !== null) return answer(opened, step, again, dialogue);
    reading(opened, line, tell, say);
  } else if (step.kind === 'look' || step.kind === 'ask') choose(opened, step, line, tell, say);
  else if (step.kind === 'act') {
    if (line.toLowerCase() === 'done') tell(driver.perform({ type: 'mark-done' }));
    else say('Type "done" when it is done, or "help".');
  } else if (line.toLowerCase() === 'yes') {
    const weighed = opened.advisor?.weigh(driver.session(), step.faults);
    tell(driver.perform({ type: 'conclude', ...(weighed ? { weighed } : {}) }));
  } else say('Type "yes" to accept it, "back" to change an answer, or "help".');
  return null;
}

type Tell = (performed: Performed) => boolean;

function reading(
  opened: OpenedSession,
  line: string,
  tell: Tell,
  say: (line: string) => void,
): void {
  const { driver } = opened;
  const session = driver.session();
  const step = presentStep(session);
  if (step.kind !== 'measure') return;
  const read = parseReading(line, expectedReading(step, opened.limits(step)));
  if (read.status === 'read') {
    const judged = judgeStep(step, read.quantity.value, session.meter);
    if (!tell(driver.perform({ type: 'record-reading', typed: line, value: read.quantity.value })))
      return;
    const verdict = judged
      ? `, ${judged.verdict}: ${judgementWords(judged, read.quantity, session.meter)}`
      : '';
    say(`Saved: ${formatQuantity(read.quantity)}${verdict}`);
    const changed = opened.advisor?.suspects(driver.session()).changed;
    if (changed) say(changed);
  } else if (read.status === 'unfinished') say('That is not a whole reading yet.');
  else if (read.status === 'doubt') {
    say(read.words);
    for (const choice of read.choices) say(`  type it as: ${choice.words}`);
  } else say(`${read.words}${read.fix ? `; ${read.fix}` : ''}`);
}

function choose(
  opened: OpenedSession,
  step: Extract<Step, { kind: 'look' | 'ask' }>,
  line: string,
  tell: Tell,
  say: (line: string) => void,
): void {
  const byNumber = /^\d+$/.test(line) ? step.outcomes[Number(line) - 1] : undefined;
  const outcome = byNumber ?? step.outcomes.find(({ name }) => name === line.toLowerCase());
  if (!outcome) {
    say(`Type a number from 1 to ${step.outcomes.length}, or "help".`);
    return;
  }
  if (tell(opened.driver.perform({ type: 'choose-outcome', outcome: outcome.name })))
    say(`Saved: ${outcome.words}`);
}

function take(opened: OpenedSession, tell: Tell, say: (line: string) => void): void {
  const { driver } = opened;
  const shows = driver.vehicleShows();
  if (!shows) {
    say('There is no simulated vehicle to take it from.');
    return;
  }
  const command = vehicleCommand(presentStep(driver.session()), shows);
  if (command?.type === 'record-reading') reading(opened, command.typed, tell, say);
  else if (command && tell(driver.perform(command))) say(`Saved: ${shows.words}`);
}
