/** A drill as a dialogue of lines: for screen readers, pipes, dumb terminals and whoever likes it so. */

import {
  ARRANGEMENT,
  ARRANGING_WORDS,
  type Arrangement,
  arrangedBy,
  leadPlaces,
  testFrom,
} from '../../circuit/arrange-test.ts';
import { standardTests } from '../../circuit/standard-tests.ts';
import { pendingFor, presentDrillStep, stepTest } from '../../drill/decide-drill.ts';
import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import type { DrillTest } from '../../drill/drill-test.ts';
import {
  arrangedWords,
  conclusionLines,
  countWords,
  debriefLines,
  goodValue,
  handInLines,
  openingLines,
  readingLine,
  refusalLines,
  repairChoices,
  suspectLines,
} from '../../drill/drill-words.ts';
import { bindText } from '../../procedure/bind-text.ts';
import { emptyJob } from '../../procedure/job.ts';
import { shortStateWords } from '../../procedure/test-words.ts';
import { capturedFindingWords } from '../../session/capture-words.ts';
import type { Dialogue } from '../plain/plain-session.ts';
import { capturePlot } from '../screens/capture-plot.ts';

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

/** Leads one drill to its debrief, a pause, or the end of input. */
export async function plainDrill(hand: DrillInHand, dialogue: Dialogue): Promise<PlainDrillEnd> {
  const { say, ask } = dialogue;
  const { circuit } = hand.drill().opened;
  let arrangement: Arrangement = ARRANGEMENT;
  for (const line of openingLines(hand.drill())) say(line);
  say('Type "help" for the words you can use.');
  while (true) {
    const drill = hand.drill();
    const debrief = hand.debrief();
    if (debrief) {
      for (const one of debriefLines(debrief)) say(one);
      return 'revealed';
    }
    say('');
    const line = await ask(
      `[${countWords(drill.readings.length, 'reading')}, ${Math.round(drill.minutes * 10) / 10} min; ${arrangedWords(arrangement, circuit)}] `,
    );
    if (line === null) return 'input-ended';
    const text = line.trim();
    const [word = '', ...rest] = text.split(/\s+/);
    const arranged = arrangedBy(arrangement, text, circuit);
    const list = LISTS.get(word);
    if (arranged) {
      if ('words' in arranged) say(arranged.words);
      else arrangement = arranged.arrangement;
    } else if (text === 'leave') return 'left';
    else if (word === 'capture') await capture(hand, arrangement, rest, dialogue);
    else if (word === 'test' || word === 'follow') {
      const test = word === 'follow' ? stepTest(hand.drill()) : numbered(hand, rest[0]);
      if (word === 'test' && !test) say('There is no test of that number; see them with: tests');
      else if (word === 'follow') await follow(hand, test, dialogue);
      else if (test) {
        arrangement = { setup: test.setup, wiggle: arrangement.wiggle };
        await measure(hand, { ...test, wiggle: arrangement.wiggle }, dialogue);
      }
    } else if (word === 'diagnose' || text === 'give up') {
      await diagnose(hand, word === 'diagnose' ? rest : null, dialogue);
    } else if (word === 'note') {
      const { refused } = hand.perform({ type: 'note', text: rest.join(' ') });
      if (refused) tell(refused, say);
      else say('Noted.');
    } else if (list) for (const one of list(hand)) say(one);
    else if (text !== '') {
      const made = testFrom(arrangement, text);
      if ('words' in made) say(`${made.words}. All words: help`);
      else await measure(hand, made.test, dialogue);
    }
  }
}

/** A map, since any word may be typed, `constructor` too. */
const LISTS = new Map<string, (hand: DrillInHand) => readonly string[]>(
  Object.entries({
    plot: ({ drill }: DrillInHand) => {
      const last = drill().readings.findLast(({ capture: saved }) => saved !== undefined)?.capture;
      return last ? capturePlot(last, SKETCH_COLUMNS, true) : ['Nothing was captured yet.'];
    },
    help: () => WORDS_OF_HELP,
    places: ({ drill }: DrillInHand) =>
      leadPlaces(drill().opened.circuit).map(({ id, words }) => `  ${id.padEnd(28)} ${words}`),
    tests: ({ drill }: DrillInHand) =>
      standardTests(drill().opened.circuit).map(
        ({ words }, index) => `  ${String(index + 1).padStart(2)}  ${words}`,
      ),
    repairs: ({ drill }: DrillInHand) =>
      repairChoices(drill()).map(
        ({ words }, index) => `  ${String(index + 1).padStart(2)}  ${words}`,
      ),
    readings: ({ drill }: DrillInHand) =>
      drill().readings.map(
        (one, index) => `  ${index + 1}  ${readingLine(one, drill().opened.circuit)}`,
      ),
    sketch: ({ sketch }: DrillInHand) => sketch(null, SKETCH_COLUMNS),
    suspects: ({ drill, world }: DrillInHand) =>
      drill().level.suspects
        ? suspectLines(drill(), world, SUSPECTS_SHOWN)
        : ['This level shows no suspects.'],
  }),
);

function numbered({ drill }: DrillInHand, number: string | undefined): DrillTest | null {
  const found = standardTests(drill().opened.circuit)[Number(number) - 1];
  return found ? { ...found.test, wiggle: false } : null;
}

/** Named by numbers of the list, read out in full and handed in with a yes; given up without numbers. */
async function diagnose(
  hand: DrillInHand,
  numbers: readonly string[] | null,
  { say, ask }: Dialogue,
): Promise<void> {
  const choices = repairChoices(hand.drill());
  const repairs = (numbers ?? []).map((number) => choices[Number(number) - 1]?.repair);
  const known = repairs.filter((one) => one !== undefined);
  if (known.length < repairs.length || numbers?.length === 0)
    return say('Give the numbers of the list that "repairs" shows.');
  const most = hand.drill().level.faults;
  if (numbers && known.length <= most) {
    const line = await ask(`${handInLines(hand.drill(), known).join(' ')} Type yes: `);
    if (line?.trim().toLowerCase() !== 'yes') return say('Not handed in; the drill goes on.');
  }
  const { refused } = hand.perform({ type: 'diagnose', repairs: known });
  if (refused) tell(refused, say);
}

async function follow(
  hand: DrillInHand,
  test: DrillTest | null,
  dialogue: Dialogue,
): Promise<void> {
  const { say } = dialogue;
  const ended = conclusionLines(hand.drill());
  if (ended) return sayAll(ended, say);
  const step = presentDrillStep(hand.drill());
  if (step && step.kind !== 'conclude')
    say(bindText(`${step.title}. ${step.say}`, emptyJob(''), hand.drill().opened.circuit));
  if (test && !(await cautionsRead(hand, test, dialogue))) return;
  const { refused } = hand.perform({ type: 'follow' });
  if (refused) return tell(refused, say);
  if (test) shown(hand, say);
  const conclusion = conclusionLines(hand.drill());
  if (conclusion) sayAll(['The procedure ends here.', ...conclusion], say);
}

function sayAll(lines: readonly string[], say: Dialogue['say']): void {
  for (const line of lines) say(line);
}

/** A capture at two places as the bench is arranged, or at those of the present step. */
async function capture(
  hand: DrillInHand,
  arrangement: Arrangement,
  places: readonly string[],
  dialogue: Dialogue,
): Promise<void> {
  const { say } = dialogue;
  if (places.length === 0) {
    const test = stepTest(hand.drill());
    if (test?.probe.kind === 'pattern') return measure(hand, test, dialogue, 'capture');
    return say('The procedure asks for no picture now; name two places: capture PLUS MINUS');
  }
  const made = testFrom(arrangement, `pattern ${places.join(' ')}`);
  if ('words' in made) return say(made.words);
  return measure(hand, made.test, dialogue, 'capture');
}

async function measure(
  hand: DrillInHand,
  test: DrillTest,
  dialogue: Dialogue,
  type: 'measure' | 'capture' = 'measure',
): Promise<void> {
  // A test that is stopped or cannot be done is told at once; its cautions would come too late.
  const stopped = hand.world.vehicle.model.refusal(test) !== null;
  if (!stopped && !(await cautionsRead(hand, test, dialogue))) return;
  const { refused } = hand.perform({ type, test });
  if (refused) return tell(refused, dialogue.say);
  shown(hand, dialogue.say);
}

function shown(hand: DrillInHand, say: Dialogue['say']): void {
  const last = hand.drill().readings.at(-1);
  if (!last) return;
  say(readingLine(last, hand.drill().opened.circuit));
  if (last.capture) {
    for (const words of capturedFindingWords(last.capture)) say(words);
    say('Its picture: plot');
  }
  const good = goodValue(hand.drill(), last, hand.world);
  if (good !== null) say(`Good is: ${good}`);
}

async function cautionsRead(
  hand: DrillInHand,
  test: DrillTest,
  { say, ask }: Dialogue,
): Promise<boolean> {
  const pending = pendingFor(hand.drill(), test, hand.world);
  if (pending.length === 0) return true;
  for (const { word, say: text } of pending) say(`${word}: ${text}`);
  const line = await ask(`Read and understood, ${shortStateWords(test.setup.state)}? Type yes: `);
  if (line?.trim().toLowerCase() !== 'yes') {
    say('Not acknowledged, so nothing was done.');
    return false;
  }
  return hand.perform({ type: 'acknowledge', test }).refused === null;
}

function tell(refused: { words: string; fix: string }, say: Dialogue['say']): void {
  for (const line of refusalLines(refused)) say(line);
}
