/** What was known of the car, in a record: of the job sheet and of the session, in the order in which it was said. */
import { isWords, sourceWords } from '../circuit/known-words.ts';
import type { SetValue } from '../session/events.ts';
import { quantityNamed } from '../session/known-list.ts';
import type { RecordContext } from './record-context.ts';
import type { RecordKnown } from './record-form.ts';

/** Every value that was set, those taken back or said anew as well. */
export function recordKnown({ session, clock }: RecordContext): RecordKnown[] {
  const { opened, values } = session;
  const said = [
    ...(opened.known ?? []).map((one) => ({ one, event: opened, takenBack: false })),
    ...values.map(({ event, takenBack }) => ({ one: event, event, takenBack })),
  ];
  const standing = said.filter(({ takenBack }) => !takenBack).map(({ one }) => one);
  const last = new Map(standing.map((one) => [one.quantity, one]));
  return said.map(({ one, event, takenBack }) => ({
    ...clock(event),
    quantity: one.quantity,
    ...inWords(one),
    words: quantityNamed(session, one.quantity)?.words ?? one.quantity,
    of: event === opened ? 'job sheet' : 'session',
    standing: takenBack ? 'taken back' : last.get(one.quantity) === one ? 'standing' : 'said anew',
  }));
}

function inWords({ is, typed, from }: SetValue): Pick<RecordKnown, 'is' | 'typed' | 'from'> {
  return { is: isWords(is), typed, from: sourceWords(from) };
}
