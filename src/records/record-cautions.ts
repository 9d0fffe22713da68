/** The cautions of a session: what was shown and acknowledged, and what stood in short since it was read before. */
import { firstSentence } from '../procedure/in-short.ts';
import { stoodInShort } from '../session/stood-in-short.ts';
import { type RecordContext, titleOf } from './record-context.ts';
import type { RecordCaution } from './record-form.ts';

/** In the order in which they stood. */
export function recordCautions(context: RecordContext): RecordCaution[] {
  const { session, clock, bind } = context;
  const read = session.acknowledgements.flatMap((event) =>
    event.cautions.map(({ id, word, text }) => ({
      ...clock(event),
      step: titleOf(context, event.step),
      id,
      word,
      text: bind(text),
      readBy: event.readBy ?? '',
    })),
  );
  const short = stoodInShort(session).map(({ event, caution, read: by }) => ({
    ...clock(event),
    step: titleOf(context, 'step' in event ? event.step : null),
    earlier: { ...clock(by), step: titleOf(context, by.step) },
    id: caution.id,
    word: caution.word,
    text: bind(firstSentence(caution)),
    readBy: '',
  }));
  return [...read, ...short].sort((one, other) => one.event - other.event);
}
