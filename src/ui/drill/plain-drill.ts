/** A drill as a dialogue of lines: the bench is arranged by words, read, and the fault named. */
import {
  ARRANGEMENT,
  ARRANGING_WORDS,
  type Arrangement,
  arrangedBy,
  arrangementOf,
  leadPlaces,
  testFrom,
} from '../../circuit/arrange-test.ts';
import type { Circuit } from '../../circuit/circuit.ts';
import type { Test } from '../../circuit/test.ts';
import { readingsGiven, testOfStep } from '../../drill/drill-act.ts';
import type { DrillDesk, DrillPerformed } from '../../drill/drill-desk.ts';
import { debriefLines, handInLines, openingLines, repairChoices } from '../../drill/drill-words.ts';
import { isTask } from '../../procedure/procedure.ts';
import { setupWords, shortStateWords } from '../../procedure/test-words.ts';
import { capturedFindingWords } from '../../session/capture-words.ts';
import type { Command } from '../../session/command.ts';
import type { SessionEvent, StepCapture } from '../../session/events.ts';
import { pendingCautions, pendingTestCautions } from '../../session/pending-cautions.ts';
import { presentStep, type Session } from '../../session/session.ts';
import { testsToChoose } from '../../session/session-tests.ts';
import { spentMinutes } from '../../session/spent-minutes.ts';
import type { OpenedSession } from '../app-services.ts';
import { percentWords } from '../parts/bar.ts';
import type { Dialogue } from '../plain/dialogue.ts';
import { capturePlot } from '../screens/capture-plot.ts';
import { countWords, foundLines } from '../screens/conclusion-words.ts';
import { adviceOf } from '../screens/pages-state.ts';
import { lastFound } from '../screens/step-words.ts';

/** How the dialogue ended. */
export type PlainDrillEnd = 'revealed' | 'left' | 'input-ended';

const WORDS_OF_HELP = [
  'Measure by a line, red lead first:  volts sensor.feed battery.negative',
  'Instruments: volts, ohms, light, lamp, pattern, timing with two terminals; counts with an input; inspect with a thing.',
  ...ARRANGING_WORDS.map((words) => `  ${words}`),
  '  capture PLUS MINUS     the scope saves what it sees there; without places, where the procedure asks for it',
  '  plot                   the picture of the last capture, drawn with letters',
  '  places                 terminals for the leads',
  '  tests                  tests that people do on such a circuit, by number',
  '  test NUMBER            do one of them',
  '  follow                 do the next step of the procedure',
  '  suspects               what it could be, on the level that shows it',
  '  readings               what you have measured',
  '  sketch                 the wiring',
  '  note TEXT              write a note',
  '  repairs                what your diagnosis can be, by number',
  '  diagnose NUMBER...     give your diagnosis; with a yes after it, it ends the drill',
  '  give up                end it without one',
  '  leave                  save and leave; go on with: ohmward drill --resume FILE',
  '  help                   this list',
];
const SUSPECTS_SHOWN = 8;
const SKETCH_COLUMNS = 78;

/** Where a line was typed. */
interface At {
  readonly opened: OpenedSession;
  readonly drill: DrillDesk;
  readonly circuit: Circuit;
  readonly arrangement: Arrangement;
  readonly dialogue: Dialogue;
}

/** Leads one drill to its debrief, a pause, or the end of input. */
export async function plainDrill(
  opened: OpenedSession,
  dialogue: Dialogue,
): Promise<PlainDrillEnd> {
  const { driver, drill } = opened;
  const { circuit } = driver.session().opened;
  if (!drill || !circuit) throw new Error('plain-drill: this session is none');
  let arrangement = ARRANGEMENT;
  sayAll(openingLines(driver.session()), dialogue);
  dialogue.say('Type "help" for the words you can use.');
  while (true) {
    const debrief = drill.debrief();
    if (debrief) {
      sayAll(debriefLines(debrief), dialogue);
      return 'revealed';
    }
    dialogue.say('');
    const line = await dialogue.ask(promptOf(driver.session(), arrangement));
    if (line === null) return 'input-ended';
    if (line.trim() === 'leave') return 'left';
    arrangement = await afterLine({ opened, drill, circuit, arrangement, dialogue }, line.trim());
    // The reason has been told; nothing can be saved here any more.
    if (driver.isElsewhere()) return 'left';
  }
}

function promptOf(session: Session, arrangement: Arrangement): string {
  const minutes = Math.round(spentMinutes(session) * 10) / 10;
  const how = setupWords(arrangement.setup, session.opened.job, session.opened.circuit);
  const moved = arrangement.wiggle ? '; harness moved' : '';
  return `[${countWords(readingsGiven(session), 'reading')}, ${minutes} min; ${how}${moved}] `;
}

/** How the bench is arranged after a line. */
async function afterLine(at: At, line: string): Promise<Arrangement> {
  const { arrangement, circuit, dialogue } = at;
  const arranged = arrangedBy(arrangement, line, circuit);
  if (arranged && 'words' in arranged) dialogue.say(arranged.words);
  else if (arranged) return arranged.arrangement;
  else if (line !== '') {
    const [word = ''] = line.split(/\s+/);
    const text = line.slice(word.length).trim();
    const act = ACTS.get(word);
    if (act) return (await act(at, text)) ?? arrangement;
    const made = testFrom(arrangement, line);
    if ('words' in made) dialogue.say(`${made.words}. All words: help`);
    else await makeTest(at, made.test, 'make-test');
  }
  return arrangement;
}

type Act = (at: At, text: string) => Promise<Arrangement | null>;

/** Words that only show something. */
const LISTS: Readonly<Record<string, (at: At) => readonly string[]>> = {
  help: () => WORDS_OF_HELP,
  plot: ({ opened }) => {
    const last = opened.driver.session().events.findLast((event) => captureOf(event) !== null);
    const capture = last ? captureOf(last) : null;
    return capture ? capturePlot(capture, SKETCH_COLUMNS, true) : ['Nothing was captured yet.'];
  },
  places: ({ circuit }) =>
    leadPlaces(circuit).map(({ id, words }) => `  ${id.padEnd(28)} ${words}`),
  tests: ({ opened }) =>
    testsToChoose(opened.driver.session()).map(({ words }, index) =>
      numbered(index, opened.bind(words)),
    ),
  repairs: ({ circuit }) =>
    repairChoices(circuit).map(({ words }, index) => numbered(index, words)),
  readings: ({ opened }) => {
    const lines = foundLines(opened, opened.driver.session());
    return lines.length === 0 ? ['Nothing was measured yet.'] : lines;
  },
  sketch: ({ opened }) => opened.sketch(null, SKETCH_COLUMNS),
  suspects: ({ opened }) => {
    const view = adviceOf(opened)?.suspects(opened.driver.session());
    if (!view) return ['This level shows no suspects.'];
    const rows = view.rows.slice(0, SUSPECTS_SHOWN);
    return [
      ...rows.map(({ chance, words }) => `${percentWords(chance).padStart(6)}  ${words}`),
      ...(view.unexplained ? [view.unexplained] : []),
    ];
  },
};

/** A map, since any word may be typed, `constructor` too. */
const ACTS = new Map<string, Act>([
  ...Object.entries(LISTS).map(([word, lines]): [string, Act] => [
    word,
    async (at) => {
      sayAll(lines(at), at.dialogue);
      return null;
    },
  ]),
  ['capture', captureAt],
  ['test', numberedTest],
  ['follow', follow],
  ['note', async (at, text) => perform(at, { type: 'add-note', text }, 'Noted.')],
  ['diagnose', async (at, text) => diagnose(at, text.split(/\s+/).filter(Boolean))],
  ['give', async (at, text) => (text === 'up' ? diagnose(at, null) : say(at, 'All words: help'))],
]);

function captureOf(event: SessionEvent): StepCapture | null {
  return 'capture' in event ? (event.capture ?? null) : null;
}

function numbered(index: number, words: string): string {
  return `  ${String(index + 1).padStart(2)}  ${words}`;
}

function say({ dialogue }: At, words: string): null {
  dialogue.say(words);
  return null;
}

async function perform(at: At, command: Command, words: string): Promise<null> {
  const done = at.opened.driver.perform(command);
  if (done.ok) return say(at, words);
  return tell(at, done);
}

/** Why something was not done, and the way out, as two sentences. */
function tell(at: At, { words, fix }: { readonly words: string; readonly fix: string }): null {
  for (const part of [words, fix]) if (part !== '') at.dialogue.say(sentence(part));
  return null;
}

function sentence(words: string): string {
  const end = /[.?!]["']?$/.test(words) ? '' : '.';
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}${end}`;
}

/** A capture at two places as the bench is arranged, or at those of the present step. */
async function captureAt(at: At, places: string): Promise<null> {
  if (places === '') {
    const step = presentStep(at.opened.driver.session());
    const test = testOfStep(step);
    if (test?.probe.kind === 'pattern') return makeTest(at, test, 'capture');
    return say(at, 'The procedure asks for no picture now; name two places: capture PLUS MINUS');
  }
  const made = testFrom(at.arrangement, `pattern ${places}`);
  if ('words' in made) return say(at, made.words);
  return makeTest(at, made.test, 'capture');
}

/** One of the listed tests; the bench stays arranged for it. */
async function numberedTest(at: At, number: string): Promise<Arrangement | null> {
  const found = testsToChoose(at.opened.driver.session())[Number(number) - 1];
  if (!found) return say(at, 'There is no test of that number; see them with: tests');
  const { wiggle } = at.arrangement;
  const test = wiggle ? { ...found.test, wiggle } : found.test;
  await makeTest(at, test, 'make-test');
  return arrangementOf(test);
}

async function makeTest(at: At, test: Test, type: 'make-test' | 'capture'): Promise<null> {
  const { driver } = at.opened;
  const { model } = at.opened;
  // A test that is stopped or cannot be done is told at once; its cautions would come too late.
  const isStopped = model !== null && model.refusal(test) !== null;
  const step = presentStep(driver.session());
  if (!isStopped && !(await cautionsRead(at, { type: 'acknowledge-cautions', test }, test)))
    return null;
  return acted(at, at.drill.act({ type, test }), step?.id ?? null);
}

/** The present step, whatever its kind; at the end what the procedure concludes. */
async function follow(at: At): Promise<null> {
  const { driver, bind } = at.opened;
  const step = presentStep(driver.session());
  if (step?.kind === 'conclude') return sayAll(conclusionLines(at), at.dialogue);
  if (step && isTask(step)) {
    say(at, `${bind(step.title)}. ${bind(step.say)}`.trim());
    if (!(await cautionsRead(at, { type: 'acknowledge-cautions' }, null))) return null;
  }
  acted(at, at.drill.act({ type: 'do-step' }), step?.id ?? null);
  const isEnd = presentStep(driver.session())?.kind === 'conclude';
  if (isEnd) sayAll(['The procedure ends here.', ...conclusionLines(at)], at.dialogue);
  return null;
}

function conclusionLines({ opened }: At): string[] {
  const step = presentStep(opened.driver.session());
  if (step?.kind !== 'conclude') return [];
  const repair = step.repair === '' || step.repair === step.title ? [] : [`Repair: ${step.repair}`];
  return [
    ...[step.title, step.say, ...repair].filter(Boolean).map((text) => opened.bind(text).trim()),
    'It is for you to believe it or not: give your diagnosis, or go on with tests of your own.',
  ];
}

/** What the bench answered, or why it did not. */
function acted(at: At, { refused }: DrillPerformed, step: string | null): null {
  if (refused) return tell(at, refused);
  const session = at.opened.driver.session();
  const found = lastFound(at.opened, session);
  const last = session.events.at(-1);
  const isTested = last?.type !== 'step-done' || step === null;
  if (found !== null && isTested) say(at, found);
  const capture = last ? captureOf(last) : null;
  if (capture) sayAll([...capturedFindingWords(capture), 'Its picture: plot'], at.dialogue);
  return null;
}

/** True when nothing is to be acknowledged, or it is. */
async function cautionsRead(
  at: At,
  command: Extract<Command, { type: 'acknowledge-cautions' }>,
  test: Test | null,
): Promise<boolean> {
  const { opened, dialogue } = at;
  const session = opened.driver.session();
  const step = presentStep(session);
  const pending = test ? pendingTestCautions(session, test) : pendingCautions(session);
  if (pending.length === 0) return true;
  for (const { word, say: text } of pending) dialogue.say(`${word}: ${opened.bind(text)}`);
  const state = test?.setup.state ?? (step && isTask(step) ? step.setup.state : null);
  const when = state === null ? '' : `, ${shortStateWords(state)}`;
  const line = await dialogue.ask(`Read and understood${when}? Type yes: `);
  if (line?.trim().toLowerCase() !== 'yes') {
    dialogue.say('Not acknowledged, so nothing was done.');
    return false;
  }
  const done = opened.driver.perform(command);
  if (!done.ok) tell(at, done);
  return done.ok;
}

/** Named by numbers of the list, read out in full and handed in with a yes; given up without numbers. */
async function diagnose(at: At, numbers: readonly string[] | null): Promise<null> {
  const { circuit, drill, dialogue } = at;
  const choices = repairChoices(circuit);
  const repairs = (numbers ?? []).map((number) => choices[Number(number) - 1]?.repair);
  const known = repairs.filter((one) => one !== undefined);
  if (known.length < repairs.length || numbers?.length === 0)
    return say(at, 'Give the numbers of the list that "repairs" shows.');
  if (numbers && known.length <= drill.level.faults) {
    const line = await dialogue.ask(`${handInLines(circuit, known).join(' ')} Type yes: `);
    if (line?.trim().toLowerCase() !== 'yes') return say(at, 'Not handed in; the drill goes on.');
  }
  const { refused } = drill.act({ type: 'diagnose', repairs: known });
  return refused ? tell(at, refused) : null;
}

function sayAll(lines: readonly string[], dialogue: Dialogue): null {
  for (const line of lines) dialogue.say(line);
  return null;
}
