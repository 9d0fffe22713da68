/** Beyond the tree in the plain dialogue: a proposed test and its reading, and a conclusion of one's own. */

import { LOOK_WORDS } from '../../circuit/look-words.ts';
import type { Look } from '../../circuit/test.ts';
import { leadWords } from '../../procedure/test-words.ts';
import { parseReading } from '../../quantity/parse-reading.ts';
import type { Proposal } from '../../session/advisor.ts';
import { testTakesCapture } from '../../session/capture-step.ts';
import { doubtReading } from '../../session/doubt-reading.ts';
import type { Performed } from '../../session/driver.ts';
import { piecesAmong } from '../../session/events.ts';
import { readNote, unreadCautions } from '../../session/pending-cautions.ts';
import type { OpenedSession } from '../app-services.ts';
import { percentWords } from '../parts/bar.ts';
import {
  acceptedWords,
  FLEETING_WORDS,
  fromSuspect,
  minutesWords,
} from '../screens/conclusion-words.ts';
import { undoLine, vehicleLine } from '../screens/step-words.ts';
import { askCapture, captureTyped } from './plain-capture.ts';
import type { Dialogue } from './plain-session.ts';

/** The three best tests, numbered. */
export function sayNextTests(opened: OpenedSession, say: Dialogue['say']): void {
  const proposals = opened.advisor?.nextTests(opened.driver.session()) ?? [];
  if (proposals.length === 0) say('No test would tell more now.');
  proposals.forEach((proposal, index) => {
    const { words, minutes, why } = proposal;
    say(`  ${index + 1}  ${opened.bind(words)} (${minutesWords(minutes)})`);
    say(`     ${opened.bind(why)}`);
  });
  if (proposals.length > 0) say('Do one with: do NUMBER');
}

/** The suspects, numbered, with their chances. */
export function saySuspects(opened: OpenedSession, say: Dialogue['say']): void {
  const view = opened.advisor?.suspects(opened.driver.session());
  if (!view) {
    say('This procedure has no circuit, so there is nothing to weigh.');
    return;
  }
  view.rows.slice(0, SUSPECTS_SHOWN).forEach((row, index) => {
    say(`  ${index + 1}  ${percentWords(row.chance).padStart(5)}  ${row.words}`);
  });
  if (view.unexplained) say(view.unexplained);
  if (view.group) say(view.group);
  if (view.intermittent) say(FLEETING_WORDS);
  say('Conclude on one with: conclude NUMBER');
}
const SUSPECTS_SHOWN = 8;

/** Asks for the reading of proposal `number` and saves it beside the tree. */
export async function doProposal(
  opened: OpenedSession,
  number: number,
  dialogue: Dialogue,
): Promise<void> {
  const { driver, advisor } = opened;
  const { say } = dialogue;
  const proposal = advisor?.nextTests(driver.session())[number - 1];
  if (!proposal) {
    say('There is no proposed test of that number; see them with "next".');
    return;
  }
  say(`${opened.bind(proposal.words)}. ${vehicleLine(proposal.test.setup, driver.session())}`);
  const undo = undoLine(proposal.test.setup, driver.session());
  if (undo !== '') say(undo);
  if (!(await acknowledged(opened, proposal, dialogue))) return;
  const { job, circuit } = driver.session().opened;
  const leads = leadWords(proposal.test.probe, job, circuit);
  if (leads !== '') say(leads);
  if (proposal.healthy !== '') say(`A healthy circuit shows: ${proposal.healthy}`);
  const shows = opened.benchShows(proposal.test);
  if (shows) say(`The simulated vehicle shows: ${shows.words} (type "take" to take it over)`);
  const { test, words, expected } = proposal;
  const canCapture = testTakesCapture(test);
  if (canCapture) say('A capture can answer it: type "capture", or "capture" and a file.');
  const shown = await askShown(proposal, shows?.answer ?? null, dialogue);
  if (shown && 'capture' in shown) {
    const ask = { kind: 'test', test, expected } as const;
    const command = canCapture
      ? await askCapture({ opened, ask, typed: shown.capture }, dialogue)
      : null;
    if (!canCapture) say('This test is not answered by a capture, and nothing was saved.');
    if (command) tellSaved(opened, driver.perform(command), say);
    return;
  }
  if (!shown) {
    say('Nothing was saved.');
    return;
  }
  tellSaved(opened, driver.perform({ type: 'record-extra', test, words, expected, ...shown }), say);
}

function tellSaved(
  { driver, advisor }: OpenedSession,
  done: Performed,
  say: Dialogue['say'],
): void {
  if (!done.ok) say(`${done.words}; ${done.fix}`);
  else say(`Saved. ${advisor?.suspects(driver.session()).changed ?? ''}`);
}

/** Concludes on the suspect of that number, and says what proof there is. */
export function concludeOn(opened: OpenedSession, number: number, say: Dialogue['say']): void {
  const { driver, advisor } = opened;
  const session = driver.session();
  const row = advisor?.suspects(session).rows[number - 1];
  if (!row || !advisor) {
    say('There is no suspect of that number; see them with "suspects".');
    return;
  }
  const { title, faults, repair } = fromSuspect(row);
  const weighed = advisor.weigh(session, faults);
  const performed = driver.perform({ type: 'conclude', own: { title, faults, repair }, weighed });
  if (!performed.ok) say(`${performed.words}; ${performed.fix}`);
  else say(acceptedWords(weighed.proven, piecesAmong(weighed.evidence)));
}

async function acknowledged(
  { bind, cautionsFor, driver }: OpenedSession,
  { test }: Proposal,
  { say, ask }: Dialogue,
): Promise<boolean> {
  const cautions = unreadCautions(driver.session(), test, cautionsFor(test));
  if (cautions.length === 0) return true;
  for (const { word, say: text } of cautions) say(`${word}: ${bind(text)}`);
  const line = await ask('Read and understood? Type yes: ');
  if (line?.trim().toLowerCase() !== 'yes') {
    say('Nothing was done: the cautions were not acknowledged.');
    return false;
  }
  return driver.perform(readNote(cautions)).ok;
}

type Answer = NonNullable<ReturnType<OpenedSession['benchShows']>>['answer'];
type Shown = {
  typed: string;
  shown: { kind: 'number'; value: number | null; unit: 'V' | 'ohm' } | { kind: 'look'; look: Look };
};

async function askShown(
  proposal: Proposal,
  bench: Answer | null,
  { say, ask }: Dialogue,
): Promise<Shown | { readonly capture: string } | null> {
  const { looks, test } = proposal;
  const { probe } = test;
  if (probe.kind === 'volts' || probe.kind === 'ohms') {
    const unit = probe.kind === 'volts' ? 'V' : 'ohm';
    const line = (await ask(`Reading in ${unit}: `))?.trim() ?? '';
    const file = captureTyped(line);
    if (file !== null) return { capture: file };
    const typed = line === 'take' && bench?.kind === 'reading' ? bench.typed : line;
    const read = parseReading(typed, { unit });
    if (read.status !== 'read') {
      if (read.status !== 'unfinished') say(read.words);
      return null;
    }
    const { value } = read.quantity;
    const doubt = line === 'take' ? null : doubtReading(value, unit, () => null);
    if (doubt !== null) {
      say(`${read.text}: ${doubt}.`);
      const sure = await ask('Type yes if the meter really shows this: ');
      if (sure?.trim().toLowerCase() !== 'yes') return null;
    }
    return { typed, shown: { kind: 'number', value: Number.isFinite(value) ? value : null, unit } };
  }
  looks.forEach((look, index) => {
    say(`  ${index + 1}  ${LOOK_WORDS[look]}`);
  });
  const line = (await ask(`1 to ${looks.length}: `))?.trim() ?? '';
  const file = captureTyped(line);
  if (file !== null) return { capture: file };
  const taken = line === 'take' && bench?.kind === 'outcome' ? bench.look : looks[Number(line) - 1];
  return taken ? { typed: LOOK_WORDS[taken], shown: { kind: 'look', look: taken } } : null;
}
