/** Instruments as tick boxes, and back. No React. */
import { TOOLS } from '../../circuit/tools.ts';
import { type AtHand, INSTRUMENTS } from '../../files/settings.ts';
import type { Form } from '../parts/form-state.ts';

/** Words of the instruments, for lists. */
export const INSTRUMENT_WORDS: Readonly<Record<AtHand, { words: string; about: string }>> = {
  ...TOOLS,
  helper: { words: 'A helper', about: 'Someone for the key and the starter.' },
};

/** Tick boxes for the instruments. */
export function instrumentFields(chosen: readonly string[]) {
  return INSTRUMENTS.map((name) => ({
    kind: 'check' as const,
    key: name,
    label: INSTRUMENT_WORDS[name].words,
    hint: INSTRUMENT_WORDS[name].about,
    on: chosen.includes(name),
  }));
}

/** The ticked instruments of a form. */
export function tickedIn(form: Form): AtHand[] {
  return INSTRUMENTS.filter((name) =>
    form.fields.some((field) => field.key === name && field.kind === 'check' && field.on),
  );
}
