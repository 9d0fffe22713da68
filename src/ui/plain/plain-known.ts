/** Words for what is known of the car: the list, and a value set. */
import { splitKnown } from '../../circuit/known-words.ts';
import { knownLines, knownWords, setWords } from '../../session/known-list.ts';
import { readSaid } from '../../session/read-known.ts';
import { sentence } from '../parts/sentence.ts';
import { adviceOf } from '../screens/pages-state.ts';
import { type DialogueEnd, helpLine, sayAll, type Word, type WordPlace } from './plain-words.ts';
import { performSaved } from './until-saved.ts';

/** `known` lists, `known WHAT is VALUE from WHERE` sets. */
export const KNOWN_WORD: Word<WordPlace> = {
  words: ['known'],
  help: [
    ...helpLine('known', 'what is known about this car, and what can be set'),
    ...helpLine('known WHAT is VALUE from WHERE', ''),
    ...helpLine('', 'set a value: known battery at rest is 12.4 V from measured'),
  ],
  does: (place, text) => (text === '' ? list(place) : set(place, text)),
};

const NONE = 'Nothing can be set for this car: there is no circuit model, or it is a drill.';
const HOW =
  'Set one with: known WHAT is VALUE from WHERE - maker, measured, label or other. The value "unknown" takes it back.';

function list({ opened, dialogue }: WordPlace): DialogueEnd {
  const session = opened.driver.session();
  const lines = knownLines(session, adviceOf(opened)?.diagnosis(session).car ?? null);
  if (lines.length === 0) return sayAll({ dialogue }, [NONE]);
  return sayAll({ dialogue }, [
    ...lines.map((line) => `  ${line.words}: ${knownWords(line)}`),
    HOW,
  ]);
}

async function set(place: WordPlace, text: string): Promise<DialogueEnd> {
  const session = place.opened.driver.session();
  const { circuit } = session.opened;
  const said = splitKnown(text);
  if (!circuit) return sayAll(place, [NONE]);
  if (!said) return sayAll(place, ['This gives no value.', HOW]);
  const read = readSaid(circuit, said);
  if (!('quantity' in read))
    return sayAll(place, [`${sentence(read.words)} ${sentence(read.fix)}`]);
  if ((await performSaved(place, { type: 'set-value', ...read })).ok)
    place.dialogue.say(`Set: ${setWords(session, read)}. All readings are weighed again with it.`);
  return null;
}
