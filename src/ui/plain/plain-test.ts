/** Tests that no step asks for, in the dialogue of lines: arranged by words, chosen by number, and what they showed. */

import {
  ARRANGING_WORDS,
  arrangedBy,
  arrangementOf,
  leadPlaces,
  testFrom,
} from '../../circuit/arrange-test.ts';
import { PROBE_KINDS } from '../../circuit/instruments.ts';
import { LOOK_WORDS } from '../../circuit/look-words.ts';
import { numberUnitOf } from '../../circuit/shown-by.ts';
import type { Test } from '../../circuit/test.ts';
import { leadWords, setupWords } from '../../procedure/test-words.ts';
import { testTakesCapture } from '../../session/capture-step.ts';
import { capturedFindingWords } from '../../session/capture-words.ts';
import type { Command } from '../../session/command.ts';
import type { Performed, VehicleAnswer } from '../../session/driver.ts';
import { BEFORE_THE_JOB } from '../../session/events.ts';
import { judgeTest } from '../../session/judge-step.ts';
import { pendingTestCautions } from '../../session/pending-cautions.ts';
import { type TestToDo, testsToChoose, testToDo } from '../../session/session-tests.ts';
import { matching } from '../parts/pick-list-state.ts';
import { refusalSentences } from '../parts/sentence.ts';
import { lastFound } from '../screens/answer-words.ts';
import { foundBy } from '../screens/any-test-pages.ts';
import { goodHereWords } from '../screens/car-words.ts';
import { readMade } from '../screens/made-test-state.ts';
import { adviceOf } from '../screens/pages-state.ts';
import { expectedInTest, possibleIn, testCommand } from '../screens/prompt-state.ts';
import {
  arrangeLine,
  scopeLines,
  stillLine,
  vehicleLine,
  wiggleLines,
} from '../screens/step-words.ts';
import { readCautions } from './ask-cautions.ts';
import { askCapture, captureTyped } from './plain-capture.ts';
import { readLine } from './plain-reading.ts';
import { type DialogueEnd, helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { actSaved, performSaved } from './until-saved.ts';

const NO_TESTS = 'This session has no circuit model, so no other test can be set up.';
/** The first of the words of each line of that list. */
const ARRANGING = [
  ...['state', 'unplug', 'plug', 'clip', 'unclip', 'spare', 'fitted'],
  ...['moving', 'still', 'wiggle', 'quiet'],
];
const KINDS: readonly string[] = PROBE_KINDS;

/** Words for any test; `place` is where the person stands. */
export const TEST_WORDS: readonly Word<WordPlace>[] = [
  {
    words: ['test', 'tests'],
    help: helpLine('test', 'the tests of this circuit; test NUMBER does one, test WORDS searches'),
    does: (place, text) => (isTyped(text) ? testTyped(place, text) : listTests(place, text)),
  },
  {
    words: ['made'],
    isTold: ({ opened }) => opened.drill === null,
    help: helpLine('made NUMBER', 'a test that was done already; also made volts RED BLACK'),
    does: (place, text) => madeAlready(place, text),
  },
  {
    words: KINDS,
    help: helpLine('volts RED BLACK', `any test; also ${PROBE_KINDS.slice(1, -1).join(', ')}`),
    does: (place, text, word) => testTyped(place, `${word} ${text}`),
  },
  {
    words: ARRANGING,
    help: ['  before such a test:', ...ARRANGING_WORDS.map((line) => `    ${line}`)],
    does: (place, text, word) => arrange(place, `${word} ${text}`),
  },
  {
    words: ['places'],
    help: helpLine('places', 'the places for leads'),
    does: (place) => {
      const { circuit } = place.opened.driver.session().opened;
      if (!circuit) return sayAll(place, [NO_TESTS]);
      return sayAll(
        place,
        leadPlaces(circuit).map(({ id }) => `  ${id.padEnd(28)} ${place.opened.terminalWords(id)}`),
      );
    },
  },
];

/** A number, or an instrument with its leads. */
function isTyped(text: string): boolean {
  return /^\d+$/.test(text) || KINDS.includes(text.split(/\s/)[0] ?? '');
}

/** All tests, or those that are found by these words, each with the number that it has among all. */
function listTests(place: WordPlace, words: string): DialogueEnd {
  const { opened } = place;
  const entries = testsToChoose(opened.driver.session());
  if (entries.length === 0) return sayAll(place, [NO_TESTS]);
  const items = entries.map(({ words: own, id, test }, index) => ({
    text: opened.bind(own),
    also: foundBy(id, test, opened),
    index,
  }));
  const found = matching(items, words);
  if (found.length === 0) return sayAll(place, [`No test matches "${words}".`]);
  return sayAll(place, [
    ...found.map(({ text, index }) => `  ${String(index + 1).padStart(2)}  ${text}`),
    'Do one with: test NUMBER; any other with: test volts RED BLACK',
  ]);
}

function arrange(place: WordPlace, line: string): DialogueEnd {
  const { job, circuit } = place.opened.driver.session().opened;
  const arranged = circuit && arrangedBy(place.arranged.now, line, circuit);
  if (!arranged) return sayAll(place, [NO_TESTS]);
  if ('words' in arranged) return sayAll(place, [arranged.words]);
  place.arranged.now = arranged.arrangement;
  const { setup, wiggle } = arranged.arrangement;
  const moved = wiggle ? '; harness moved' : '';
  return sayAll(place, [`Arranged: ${setupWords(setup, job, circuit)}${moved}.`]);
}

/** `12`, or `volts sensor.feed battery.negative` as everything is arranged now. */
async function testTyped(place: WordPlace, text: string): Promise<DialogueEnd> {
  const made = /^\d+$/.test(text)
    ? numbered(place, Number(text))
    : testFrom(place.arranged.now, text);
  if ('words' in made) return sayAll(place, [made.words]);
  place.arranged.now = arrangementOf(made.test);
  return makeAnyTest(place, made.test);
}

function numbered({ opened }: WordPlace, number: number): { test: Test } | { words: string } {
  const entry = testsToChoose(opened.driver.session())[number - 1];
  if (!entry) return { words: 'There is no test with that number; list them with: test' };
  return { test: entry.test };
}

/** A test that was made already: when, what it showed, and a note. */
async function madeAlready(place: WordPlace, text: string): Promise<DialogueEnd> {
  const { opened, dialogue } = place;
  const { model, driver, drill } = opened;
  if (!model || drill) return sayAll(place, [drill ? NOT_ON_A_DRILL : NO_TESTS]);
  const made = /^\d+$/.test(text)
    ? numbered(place, Number(text))
    : testFrom(place.arranged.now, text);
  if ('words' in made) return sayAll(place, [made.words]);
  const toDo = testToDo(driver.session(), model, made.test);
  if ('refused' in toDo) return sayAll(place, [`This test can't be done: ${toDo.refused}.`]);
  dialogue.say(`${opened.bind(toDo.words)}. ${vehicleLine(made.test.setup, driver.session())}`);
  const when = readMade((await dialogue.ask(`Made [${BEFORE_THE_JOB}], or at what time? `)) ?? '');
  if (when === null) return sayAll(place, ['Type before, or a clock time such as 14:05.']);
  present(place, toDo, null);
  const command = await askShown(place, toDo, null);
  if (command?.type !== 'record-test') return sayAll(place, ['Nothing was saved.']);
  const note = (await dialogue.ask('Note: '))?.trim() ?? '';
  const said = { ...command, made: when, ...(note === '' ? {} : { note }) };
  if ((await performSaved(place, said)).ok) dialogue.say('Saved.');
  return null;
}

const NOT_ON_A_DRILL = 'In a drill every test is done on its bench.';

/** A test of the person's own, if it may be made. */
async function makeAnyTest(place: WordPlace, test: Test): Promise<DialogueEnd> {
  const { model, driver, drill } = place.opened;
  if (!model) return sayAll(place, [NO_TESTS]);
  if (drill) return onBench(place, test, 'make-test');
  const toDo = testToDo(driver.session(), model, test);
  if ('refused' in toDo) return sayAll(place, [`This test can't be done: ${toDo.refused}.`]);
  return makeTest(place, toDo);
}

/** A test at the bench of a drill, which reads by itself and stops what does damage. */
export async function onBench(
  place: WordPlace,
  test: Test,
  type: 'make-test' | 'capture',
): Promise<DialogueEnd> {
  const { opened, dialogue } = place;
  const { model, driver, drill } = opened;
  if (!model || !drill) return sayAll(place, [NO_TESTS]);
  // A test that is stopped or cannot be done is told at once; its cautions would come too late.
  const pending = model.refusal(test) === null ? pendingTestCautions(driver.session(), test) : [];
  if (!(await readCautions(opened, pending, { test }, dialogue))) return null;
  return benched(place, await actSaved(place, { type, test }));
}

/** What the bench answered, or why it did not. */
export function benched(place: WordPlace, done: Performed): DialogueEnd {
  // What the disk refused was asked about.
  if (!done.ok) return done.disk ? null : sayAll(place, [refusalSentences(done)]);
  const session = place.opened.driver.session();
  const found = lastFound(place.opened, session);
  const last = session.events.at(-1);
  const capture = last && 'capture' in last ? last.capture : undefined;
  return sayAll(place, [
    ...(found === null ? [] : [found]),
    ...(capture ? [...capturedFindingWords(capture), 'To see it: plot'] : []),
  ]);
}

/** Reads its cautions, says how it is made, asks what it showed, and saves that. */
export async function makeTest(place: WordPlace, toDo: TestToDo): Promise<DialogueEnd> {
  const { opened, dialogue } = place;
  const { say } = dialogue;
  const { test } = toDo;
  const session = opened.driver.session();
  say(`${opened.bind(toDo.words)}. ${vehicleLine(test.setup, session)}`);
  const first = arrangeLine(test, session);
  if (first !== '') say(first);
  const still = stillLine(test.setup, session);
  if (still !== '') say(still);
  if (!(await readCautions(opened, pendingTestCautions(session, test), { test }, dialogue)))
    return null;
  const shows = opened.benchShows(test);
  present(place, toDo, shows);
  const command = await askShown(place, toDo, shows);
  if (!command) say('Nothing was saved.');
  else if ((await performSaved(place, command)).ok)
    say(`Saved. ${adviceOf(opened)?.suspects(opened.driver.session()).changed ?? ''}`.trim());
  return null;
}

function present(
  { opened, dialogue }: WordPlace,
  toDo: TestToDo,
  shows: VehicleAnswer | null,
): void {
  const { say } = dialogue;
  const { test, healthy, expected } = toDo;
  const session = opened.driver.session();
  const { job, circuit } = session.opened;
  const here = goodHereWords(opened, session, test, expected);
  const leads = leadWords(test.probe, job, circuit);
  if (leads !== '') say(leads);
  for (const line of scopeLines(opened, test)) say(line);
  for (const line of wiggleLines(test)) say(line);
  if (healthy !== '') say(`A healthy circuit shows: ${healthy}${here}`);
  if (shows) say(`The simulated vehicle shows: ${shows.words} (type "take" to use it)`);
  if (testTakesCapture(test))
    say('A capture can answer this: type "capture", or "capture" and a file.');
}

/** What was shown, as the command that saves it; null when it is left. */
async function askShown(
  place: WordPlace,
  toDo: TestToDo,
  shows: VehicleAnswer | null,
): Promise<Command | null> {
  const { dialogue } = place;
  const { looks } = toDo;
  looks.forEach((look, index) => {
    dialogue.say(`  ${index + 1}  ${LOOK_WORDS[look]}`);
  });
  const question =
    toDo.kind === 'number' ? `Reading in ${numberUnitOf(toDo.test)}: ` : `1 to ${looks.length}: `;
  const line = (await dialogue.ask(question))?.trim() ?? '';
  const file = captureTyped(line);
  if (file !== null) return captured(place, toDo, file);
  if (line === 'take' && shows) return taken(toDo, shows.answer);
  return toDo.kind === 'number' ? number(place, toDo, line) : chosen(toDo, line);
}

async function captured(
  { opened, dialogue }: WordPlace,
  { test, expected }: TestToDo,
  typed: string,
): Promise<Command | null> {
  if (testTakesCapture(test))
    return askCapture({ opened, ask: { kind: 'test', test, expected }, typed }, dialogue);
  dialogue.say("A capture can't answer this test.");
  return null;
}

/** What the simulated vehicle shows is no slip of the hand. */
function taken(toDo: TestToDo, answer: VehicleAnswer['answer']): Command | null {
  switch (answer.kind) {
    case 'reading': {
      const { typed, value } = answer;
      return testCommand(toDo, { type: 'record-reading', typed, value });
    }
    case 'outcome': {
      const { outcome, look } = answer;
      return testCommand(toDo, { type: 'choose-outcome', outcome, ...(look ? { look } : {}) });
    }
    case 'done':
      return null;
  }
}

async function number(place: WordPlace, toDo: TestToDo, line: string): Promise<Command | null> {
  const { opened, dialogue } = place;
  if (line === '') return null;
  const { meter } = opened.driver.session();
  const { expected, test } = toDo;
  const unit = numberUnitOf(test);
  const judge = (value: number) =>
    expected && judgeTest({ kind: 'number', value, unit }, expected, meter);
  const possible = possibleIn(opened, opened.driver.session(), test);
  const asked = { expected: expectedInTest(opened, toDo), judge, possible };
  const read = await readLine(line, asked, dialogue);
  if (read.kind === 'instead') return number(place, toDo, read.line);
  return read.kind === 'taken'
    ? testCommand(toDo, { type: 'record-reading', ...read.reading })
    : null;
}

function chosen(toDo: TestToDo, line: string): Command | null {
  const look = toDo.looks[Number(line) - 1];
  return look ? testCommand(toDo, { type: 'choose-outcome', outcome: look, look }) : null;
}
