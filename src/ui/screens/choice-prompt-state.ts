/** The prompt for a look or an answer: a short list. No React. */
import { lookWords } from '../../circuit/look-words.ts';
import type { Look } from '../../circuit/test.ts';
import type { AskStep, LookStep } from '../../procedure/procedure.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';

/** One answer that can be chosen; `look` where it is something seen. */
export interface Choice {
  readonly words: string;
  readonly outcome: string;
  readonly look: Look | null;
}

/** Visible damage or answered at a step: each look of each outcome, or each answer. */
export function choicesAt(step: LookStep | AskStep): Choice[] {
  if (step.kind === 'ask')
    return step.outcomes.map(({ name, words }) => ({
      words: words || name,
      outcome: name,
      look: null,
    }));
  return step.outcomes.flatMap(({ name, words, looks }) =>
    looks.map((look) => ({
      words: words === '' ? lookWords(look) : `${lookWords(look)}: ${words}`,
      outcome: name,
      look,
    })),
  );
}

/** The marked line after a key, and whether the key chose it: Enter the marked one, a digit its own. */
export function choiceAfter(
  marked: number,
  event: KeyEvent,
  context: { readonly count: number; readonly offered: number | null },
): { readonly marked: number; readonly taken: boolean } {
  const label = keyLabel(event);
  const { count, offered } = context;
  const digit = /^[1-9]$/.test(label) ? Number(label) - 1 : -1;
  if (digit >= 0) return digit < count ? { marked: digit, taken: true } : { marked, taken: false };
  if (label === 'return') return { marked, taken: true };
  if (label === 'tab') return { marked: offered ?? marked, taken: false };
  const by = label === 'up' ? -1 : label === 'down' ? 1 : 0;
  return { marked: Math.max(0, Math.min(count - 1, marked + by)), taken: false };
}
