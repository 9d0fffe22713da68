/** The tests after the repair as a dialogue of lines: the failed tests again, before beside after. */
import { parseReading } from '../../quantity/parse-reading.ts';
import { takesCapture } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import type { VehicleAnswer } from '../../session/driver.ts';
import { expectedReading } from '../../session/expected-reading.ts';
import { pendingCautions } from '../../session/pending-cautions.ts';
import {
  againCommand,
  closeCommand,
  LAST_WORD,
  type RetestLine,
  retestLines,
} from '../../session/retest.ts';
import { vehicleCommand } from '../../session/vehicle-command.ts';
import type { OpenedSession } from '../app-services.ts';
import { answerWords, expectedAgain, retestMark, retestWords } from '../screens/step-words.ts';
import { askCautions, sayStanding } from './ask-cautions.ts';
import { confirmReading } from './confirm-reading.ts';
import { askCapture, captureTyped } from './plain-capture.ts';
import type { Dialogue } from './plain-session.ts';

/** Leads through all retests and closes the session. False when the person stopped before the end. */
export async function plainRetest(opened: OpenedSession, dialogue: Dialogue): Promise<boolean> {
  const { driver, repaired } = opened;
  const { say } = dialogue;
  say(`After the repair: ${opened.bind(driver.session().concluded?.title ?? '')}`);
  for (const toDo of retestLines(driver.session()).filter(({ after }) => after === null)) {
    const { step } = toDo;
    say('');
    if (!(await askCautions(opened, pendingCautions(driver.session(), step), step.id, dialogue)))
      return false;
    const shows = repaired?.answers(step) ?? null;
    present(opened, toDo, shows, say);
    let done = false;
    while (!done) {
      const line = await askAgain(opened, step, dialogue);
      if (line === null || line.trim().toLowerCase() === 'pause') return false;
      const file = step.kind !== 'ask' && takesCapture(step) ? captureTyped(line) : null;
      const command =
        step.kind === 'ask' || file === null
          ? commandOf(step, line.trim(), shows, say)
          : await askCapture(
              {
                opened,
                ask: { kind: 'retest', step },
                typed: file,
                listed: /^captures/i.test(line.trim()),
                ...(repaired ? { fault: repaired.fault } : {}),
              },
              dialogue,
            );
      if (!command) continue;
      const performed = driver.perform(command);
      done = performed.ok;
      if (performed.ok) continue;
      say(`${performed.words}; ${performed.fix}`);
      if (performed.disk) return false;
    }
    say(LAST_WORDS[retestMark(driver.session().retests.at(-1) ?? null)]);
  }
  const close = closeCommand(driver.session());
  const closed = driver.perform(close);
  say('');
  for (const line of retestLines(driver.session())) say(`  ${summary(opened, line)}`);
  say(`Verdict: ${close.verdict.replace('-', ' ')}: ${close.words}.`);
  if (close.verdict === 'cured' || close.verdict === 'not-shown') say(LAST_WORD);
  return closed.ok;
}

/** What is typed for the test; a doubtful reading only when it is meant. */
async function askAgain(
  opened: OpenedSession,
  step: RetestLine['step'],
  dialogue: Dialogue,
): Promise<string | null> {
  if (step.kind !== 'measure') return dialogue.ask(`1 to ${step.outcomes.length}: `);
  let line = await dialogue.ask(`Reading in ${step.unit}: `);
  while (line !== null) {
    const other = await confirmReading(opened, step, line.trim(), dialogue);
    if (other === null) return line;
    line = other;
  }
  return null;
}

const LAST_WORDS = {
  passes: 'Passes now.',
  FAILS: 'Does not pass.',
  'not made': 'Not made.',
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
  say(opened.bind(step.say));
  if (before) say(`Before the repair: ${answerWords(before, session)}`);
  const expected = expectedAgain(step, session);
  if (expected !== null) say(`Good is: ${expected}`);
  if (step.kind !== 'measure')
    step.outcomes.forEach((outcome, index) => {
      say(`  ${index + 1}  ${opened.bind(outcome.words)}`);
    });
  if (shows) say(`The simulated vehicle shows: ${shows.words} (type "take" to take it over)`);
  say('If it cannot be made: "cannot" and why.');
  if (takesCapture(step)) say('A capture can answer it: type "capture", or "capture" and a file.');
}

function commandOf(
  step: RetestLine['step'],
  line: string,
  shows: VehicleAnswer | null,
  say: Dialogue['say'],
): Command | null {
  if (line.toLowerCase() === 'take' && shows) {
    const taken = vehicleCommand(step, shows);
    return taken && againCommand(step, taken);
  }
  const [word = '', ...rest] = line.split(/\s+/);
  if (word.toLowerCase() === 'cannot')
    return { type: 'cannot-retest', step: step.id, reason: rest.join(' ') };
  if (step.kind !== 'measure') {
    const outcome = step.outcomes[Number(line) - 1];
    if (!outcome) {
      say(`Type a number from 1 to ${step.outcomes.length}, "cannot" and why, or "pause".`);
      return null;
    }
    const look = 'looks' in outcome ? outcome.looks[0] : undefined;
    const chosen = { type: 'choose-outcome', outcome: outcome.name } as const;
    return againCommand(step, look ? { ...chosen, look } : chosen);
  }
  const read = parseReading(line, expectedReading(step, null));
  if (read.status === 'read')
    return againCommand(step, { type: 'record-reading', typed: line, value: read.quantity.value });
  say(read.status === 'unfinished' ? 'That is not a whole reading yet.' : read.words);
  return null;
}

function summary(opened: OpenedSession, { step, before, after }: RetestLine): string {
  const session = opened.driver.session();
  const was = before ? answerWords(before, session) : 'not measured';
  const now = after ? retestWords(step, after) : 'not repeated';
  return `${opened.bind(step.title)}: before ${was}; after ${now}; ${retestMark(after)}`;
}
