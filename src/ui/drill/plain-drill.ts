/** A drill as a dialogue of lines: the bench is arranged by words, read, and the fault named. */

import { ARRANGEMENT, testFrom } from '../../circuit/arrange-test.ts';
import type { Circuit } from '../../circuit/circuit.ts';
import { readingsGiven } from '../../drill/drill-act.ts';
import type { DrillDesk } from '../../drill/drill-desk.ts';
import { debriefLines, handInLines, openingLines, repairChoices } from '../../drill/drill-words.ts';
import { isTask } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { setupWords } from '../../procedure/test-words.ts';
import { countWords } from '../../quantity/count-words.ts';
import type { SessionEvent, StepCapture } from '../../session/events.ts';
import { pendingCautions } from '../../session/pending-cautions.ts';
import { presentStep, type Session } from '../../session/session.ts';
import { spentMinutes } from '../../session/spent-minutes.ts';
import type { OpenedSession } from '../app-services.ts';
import { refusalSentences } from '../parts/sentence.ts';
import { readCautions } from '../plain/ask-cautions.ts';
import type { Dialogue } from '../plain/dialogue.ts';
import { ADVICE_WORDS } from '../plain/plain-advice.ts';
import { NOTE_WORDS, READINGS_WORD, SKETCH_WORD } from '../plain/plain-notes.ts';
import { benched, onBench, TEST_WORDS } from '../plain/plain-test.ts';
import {
  type DialogueEnd,
  helpLine,
  say,
  sayAll,
  type Word,
  type WordPlace,
  wordTable,
} from '../plain/plain-words.ts';
import { actSaved } from '../plain/until-saved.ts';
import { capturePlot } from '../screens/capture-plot.ts';

/** How the dialogue ended. */
export type PlainDrillEnd = 'revealed' | 'left' | 'input-ended';

/** Where a word is said: at the bench of a drill. */
interface DrillPlace extends WordPlace {
  readonly drill: DrillDesk;
  readonly circuit: Circuit;
}

const PLOT_COLUMNS = 78;

const WORDS = wordTable<DrillPlace>(
  ['Measure with one line, red lead first:  volts sensor.feed battery.negative'],
  [
    ...TEST_WORDS,
    {
      words: ['capture'],
      help: helpLine('capture RED BLACK', 'save a scope capture there, or at the step'),
      does: capture,
    },
    {
      words: ['plot'],
      help: helpLine('plot', 'the last capture as a text plot'),
      does: plot,
    },
    {
      words: ['follow'],
      help: helpLine('follow', 'do the next step of the procedure'),
      does: follow,
    },
    ...ADVICE_WORDS,
    READINGS_WORD,
    SKETCH_WORD,
    ...NOTE_WORDS,
    {
      words: ['repairs'],
      help: helpLine('repairs', 'possible diagnoses, by number'),
      does: (place) =>
        sayAll(
          place,
          repairChoices(place.circuit).map(
            ({ words }, index) => `  ${String(index + 1).padStart(2)}  ${words}`,
          ),
        ),
    },
    {
      words: ['diagnose'],
      help: helpLine('diagnose NUMBER', 'give your diagnosis; a "yes" after it ends the drill'),
      does: (place, text) => diagnose(place, text.split(/\s+/).filter(Boolean)),
    },
    {
      words: ['give'],
      help: helpLine('give up', 'give up without a diagnosis'),
      does: (place, text) =>
        text === 'up' ? diagnose(place, null) : sayAll(place, ['All words: help']),
    },
    {
      words: ['leave', 'pause'],
      help: helpLine('leave', 'save and quit; continue with: ohmward drill --resume FILE'),
      does: () => 'paused',
    },
  ] satisfies readonly Word<DrillPlace>[],
);

/** Leads one drill to its debrief, a pause, or the end of input. */
export async function plainDrill(
  opened: OpenedSession,
  dialogue: Dialogue,
): Promise<PlainDrillEnd> {
  const { driver, drill } = opened;
  const { circuit } = driver.session().opened;
  if (!drill || !circuit) throw new Error('plain-drill: this session is none');
  const arranged = { now: ARRANGEMENT };
  for (const line of openingLines(driver.session())) dialogue.say(line);
  dialogue.say('Type "help" for the words you can use.');
  while (true) {
    const debrief = drill.debrief();
    if (debrief) {
      for (const line of debriefLines(debrief)) dialogue.say(line);
      return 'revealed';
    }
    const session = driver.session();
    const step = presentStep(session);
    dialogue.say('');
    const line = await dialogue.ask(promptOf(session, arranged.now));
    if (line === null) return 'input-ended';
    const end = await answer({ opened, dialogue, step, arranged, drill, circuit }, line.trim());
    // The reason has been told; nothing can be saved here any more.
    if (end === 'paused' || driver.isElsewhere()) return 'left';
  }
}

function promptOf(session: Session, { setup, wiggle }: WordPlace['arranged']['now']): string {
  const minutes = Math.round(spentMinutes(session) * 10) / 10;
  const how = setupWords(setup, session.opened.job, session.opened.circuit);
  const moved = wiggle ? '; harness moved' : '';
  return `[${countWords(readingsGiven(session), 'reading')}, ${minutes} min; ${how}${moved}] `;
}

async function answer(place: DrillPlace, line: string): Promise<DialogueEnd> {
  if (line === '') return null;
  const said = await say(WORDS, place, line);
  if (said) return said.end;
  const made = testFrom(place.arranged.now, line);
  return sayAll(place, [`${'words' in made ? made.words : line}. All words: help`]);
}

function captureOf(event: SessionEvent): StepCapture | null {
  return 'capture' in event ? (event.capture ?? null) : null;
}

function plot(place: DrillPlace): DialogueEnd {
  const { events } = place.opened.driver.session();
  const last = events.findLast((event) => captureOf(event) !== null);
  const saved = last ? captureOf(last) : null;
  return sayAll(
    place,
    saved ? capturePlot(saved, PLOT_COLUMNS, true) : ['Nothing has been captured yet.'],
  );
}

/** A capture at two places as the bench is arranged, or at those of the present step. */
function capture(place: DrillPlace, places: string): Promise<DialogueEnd> | DialogueEnd {
  if (places === '') {
    const test = place.step && testOf(place.step);
    return test?.probe.kind === 'pattern'
      ? onBench(place, test, 'capture')
      : sayAll(place, [
          'The procedure does not ask for a capture now; name two places: capture RED BLACK',
        ]);
  }
  const made = testFrom(place.arranged.now, `pattern ${places}`);
  return 'words' in made ? sayAll(place, [made.words]) : onBench(place, made.test, 'capture');
}

/** The present step, whatever its kind; at the end what the procedure concludes. */
async function follow(place: DrillPlace): Promise<DialogueEnd> {
  const { opened, dialogue, step } = place;
  const { driver, bind } = opened;
  if (step?.kind === 'conclude') return sayAll(place, conclusionLines(place));
  if (step && isTask(step)) {
    dialogue.say(`${bind(step.title)}. ${bind(step.say)}`.trim());
    const pending = pendingCautions(driver.session());
    if (!(await readCautions(opened, pending, { step: step.id }, dialogue))) return null;
  }
  benched(place, await actSaved(place, { type: 'do-step' }));
  const isEnd = presentStep(driver.session())?.kind === 'conclude';
  return isEnd ? sayAll(place, ['The procedure ends here.', ...conclusionLines(place)]) : null;
}

function conclusionLines({ opened }: DrillPlace): string[] {
  const step = presentStep(opened.driver.session());
  if (step?.kind !== 'conclude') return [];
  const repair = step.repair === '' || step.repair === step.title ? [] : [`Repair: ${step.repair}`];
  return [
    ...[step.title, step.say, ...repair].filter(Boolean).map((text) => opened.bind(text).trim()),
    'Whether you believe it is up to you: give your diagnosis, or carry on with tests of your own.',
  ];
}

/** Named by numbers of the list, read out in full and handed in with a yes; given up without numbers. */
async function diagnose(
  place: DrillPlace,
  numbers: readonly string[] | null,
): Promise<DialogueEnd> {
  const { circuit, drill, dialogue } = place;
  const choices = repairChoices(circuit);
  const repairs = (numbers ?? []).map((number) => choices[Number(number) - 1]?.repair);
  const known = repairs.filter((one) => one !== undefined);
  if (known.length < repairs.length || numbers?.length === 0)
    return sayAll(place, ['Give numbers from the list that "repairs" shows.']);
  if (numbers && known.length <= drill.level.faults) {
    const line = await dialogue.ask(`${handInLines(circuit, known).join(' ')} Type yes: `);
    if (line?.trim().toLowerCase() !== 'yes')
      return sayAll(place, ['Not handed in; the drill goes on.']);
  }
  const done = await actSaved(place, { type: 'diagnose', repairs: known });
  return done.ok || done.disk ? null : sayAll(place, [refusalSentences(done)]);
}
