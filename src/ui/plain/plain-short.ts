/** The word for the location of a short along a wire. */

import { spaced } from '../../circuit/part-faults.ts';
import { pendingTestCautions } from '../../session/pending-cautions.ts';
import { mustBeOff, type ShortStretch, shortFlaw, testOfShort } from '../../session/place-short.ts';
import { distanceWords, touchedWords } from '../../session/place-words.ts';
import { type ReadDrops, readDrops, readStretch } from '../../session/read-short.ts';
import { shortSteps, shortsOf } from '../../session/short-steps.ts';
import { sentence } from '../parts/sentence.ts';
import { adviceOf } from '../screens/pages-state.ts';
import { readCautions } from './ask-cautions.ts';
import { type DialogueEnd, helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

/** `place` lists, `place WIRE touching WHAT` says how and asks for the drops. */
export const SHORT_WORD: Word<WordPlace> = {
  words: ['place'],
  help: [
    ...helpLine('place', 'locate a short along its wire: what can be located'),
    ...helpLine('place WIRE touching WHAT', ''),
    ...helpLine('', 'how it is measured: place signal touching ground'),
    ...helpLine('', 'a stretch of it: ... from sensor.signal to bulkhead.signal'),
  ],
  does: (place, text) => (text === '' ? list(place) : measure(place, text)),
};

const NONE = 'This session has no circuit model, so there is no wire to measure along.';

function list(place: WordPlace): DialogueEnd {
  const session = place.opened.driver.session();
  const { circuit } = session.opened;
  if (!circuit) return sayAll(place, [NONE]);
  const rows = adviceOf(place.opened)?.suspects(session).rows ?? [];
  return sayAll(place, [
    ...shortsOf(circuit, rows).map(
      ({ wire, touches }) =>
        `  the ${spaced(wire)} wire touching ${touchedWords(touches)}: place ${wire} touching ${typedAs(touches)}`,
    ),
    'A short is located by the voltage drop along the wire, fed through a lamp from each end.',
  ]);
}

function typedAs(touches: string): string {
  if (touches === 'battery.negative') return 'ground';
  return touches === 'battery.positive' ? 'battery' : `${touches}-wire`;
}

async function measure(place: WordPlace, text: string): Promise<DialogueEnd> {
  const { opened, dialogue } = place;
  const session = opened.driver.session();
  const { circuit } = session.opened;
  if (!circuit) return sayAll(place, [NONE]);
  const stretch = readStretch(circuit, text);
  if ('fix' in stretch)
    return sayAll(place, [`${sentence(stretch.words)} ${sentence(stretch.fix)}`]);
  // Whether the stretch is one does not hang on what will be read.
  const flaw = shortFlaw(circuit, stretch, null);
  if (flaw) return sayAll(place, flaw.map(sentence));
  const cautions = pendingTestCautions(session, testOfShort(circuit, stretch, 'from'));
  const test = testOfShort(circuit, stretch, 'from');
  if (!(await readCautions(opened, cautions, { test }, dialogue))) return null;
  for (const line of shortSteps(session, stretch)) dialogue.say(line);
  const line = (await dialogue.ask('Both drops, for example 6.6 mV, 15.5 mV: '))?.trim() ?? '';
  if (line === '') return sayAll(place, ['Nothing was saved.']);
  const drops = readDrops(line);
  if ('fix' in drops) return sayAll(place, [`${sentence(drops.words)} ${sentence(drops.fix)}`]);
  return save(place, stretch, drops);
}

async function save(
  place: WordPlace,
  stretch: ShortStretch,
  { typed, ...drops }: ReadDrops,
): Promise<DialogueEnd> {
  const { circuit } = place.opened.driver.session().opened;
  if (!circuit) return null;
  const unplugged = mustBeOff(circuit, stretch);
  const done = await performSaved(place, { type: 'place-short', stretch, unplugged, typed, drops });
  const last = place.opened.driver.session().shorts.at(-1);
  if (done.ok && last) place.dialogue.say(`Saved. ${sentence(distanceWords(circuit, last))}`);
  return null;
}
