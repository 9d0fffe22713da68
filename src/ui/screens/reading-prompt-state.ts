/**
 * The prompt for a number: what a key does, and what the line under it says. No React, no clock. What is typed is
 * read once, when it changes, and kept as read.
 */
import type { Judgement } from '../../circuit/judge.ts';
import { formatTyped } from '../../quantity/format-quantity.ts';
import {
  type ExpectedReading,
  parseReading,
  type ReadingChoice,
  type ReadingParse,
} from '../../quantity/parse-reading.ts';
import type { Unit } from '../../quantity/quantity.ts';
import { doubtReading } from '../../session/doubt-reading.ts';
import type { TakenReading } from '../../session/driver.ts';
import type { PossibleValues } from '../../session/possible-values.ts';
import {
  overflowWords,
  type TextFieldState,
  textField,
  textFieldAfter,
} from '../parts/text-field-state.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';

/** The prompt between two keys. */
export interface ReadingPrompt {
  readonly field: TextFieldState;
  /** What the field holds, as it was read when it was typed. */
  readonly read: TypedReading;
  /** `confirm`: the value seems impossible and waits for a second Enter. `doubt`: which of the choices was meant. */
  readonly mode: 'typing' | 'confirm' | 'doubt';
  /** The marked choice of a doubt. */
  readonly chosen: number;
  /** Enter came before there was anything to take. */
  readonly nudge: string | null;
}

/** What a typed number is judged and doubted by. */
export interface ReadingContext {
  readonly expected: ExpectedReading;
  /** What a value means here; null where nothing is expected. */
  readonly judge: (value: number) => Judgement | null;
  /** What can be shown here at all; null where nobody knows. */
  readonly possible: () => PossibleValues | null;
  /** Why, in words. */
  readonly judged: (judgement: Judgement, value: number) => string;
  /** The key came after a pause, so that it can be meant for what is on the screen. */
  readonly isDeliberate: boolean;
  /** What the simulated vehicle shows, taken over with Tab. */
  readonly offered: TakenReading | null;
}

/** What the line under the prompt says. `tone` decides sign and colour, the words carry the meaning. */
export interface Remark {
  readonly tone: 'good' | 'off' | 'unsure' | 'wrong' | 'quiet';
  readonly words: string;
}

/** What was typed so far, and how it is understood. */
export interface TypedReading {
  readonly typed: string;
  readonly parse: ReadingParse;
}

const NOTHING_TYPED: TypedReading = { typed: '', parse: { status: 'unfinished' } };

/** A prompt for a number, nothing typed yet. */
export function readingPrompt(): ReadingPrompt {
  return { field: textField(), read: NOTHING_TYPED, mode: 'typing', chosen: 0, nudge: null };
}

/** A prompt that holds a reading already: one that was taken back, what the simulated vehicle shows. */
export function promptHolding({ typed, value }: TakenReading, unit: Unit): ReadingPrompt {
  const quantity = { value, unit };
  const text = formatTyped(quantity, typed);
  const parse = { status: 'read', quantity, resolution: 0, text } as const;
  return { ...readingPrompt(), field: textField(typed), read: { typed, parse } };
}

/** The prompt after a key, and the reading when the key was the Enter that takes it. */
export function readingPromptAfter(
  prompt: ReadingPrompt,
  event: KeyEvent,
  context: ReadingContext,
): { readonly prompt: ReadingPrompt; readonly taken: TakenReading | null } {
  const label = keyLabel(event);
  if (prompt.mode === 'doubt') return afterInDoubt(prompt, label, event, context);
  const { expected, offered } = context;
  switch (label) {
    case 'return':
      return afterEnter(prompt, context);
    case 'escape':
      return stay(
        prompt.mode === 'confirm' ? { ...prompt, mode: 'typing', nudge: null } : readingPrompt(),
      );
    case 'tab':
      return stay(offered === null ? prompt : promptHolding(offered, expected.unit));
    default:
      return stay(afterTyping(prompt, event, expected));
  }
}

function stay(prompt: ReadingPrompt) {
  return { prompt, taken: null };
}

/** The prompt with a key typed into its field; the same one for any other key. */
function afterTyping(
  prompt: ReadingPrompt,
  event: KeyEvent,
  expected: ExpectedReading,
): ReadingPrompt {
  const field = textFieldAfter(prompt.field, event);
  if (field === prompt.field) return prompt;
  if (field.text === prompt.field.text) return { ...prompt, field, mode: 'typing', nudge: null };
  const typed = field.text.trim();
  const read = { typed, parse: parseReading(typed, expected) };
  return { ...prompt, field, read, mode: 'typing', nudge: null };
}

function afterEnter(prompt: ReadingPrompt, context: ReadingContext) {
  const { typed, parse } = prompt.read;
  switch (parse.status) {
    case 'unfinished':
      return stay({
        ...prompt,
        nudge: typed === '' ? 'type a reading first' : 'this reading is not complete yet',
      });
    case 'doubt':
      return stay({ ...prompt, mode: 'doubt', chosen: 0, nudge: null });
    case 'refused':
      if (!parse.beyond) return stay({ ...prompt, nudge: null });
      return takenOrConfirmed(prompt, { typed, value: parse.beyond.value }, true, context);
    case 'read': {
      const { value } = parse.quantity;
      return takenOrConfirmed(prompt, { typed, value }, isDoubtful(typed, value, context), context);
    }
  }
}

function takenOrConfirmed(
  prompt: ReadingPrompt,
  taken: TakenReading,
  doubtful: boolean,
  { isDeliberate }: ReadingContext,
) {
  if (doubtful && prompt.mode !== 'confirm')
    return stay({ ...prompt, mode: 'confirm' as const, nudge: null });
  if (doubtful && !isDeliberate) return stay(prompt);
  return { prompt: { ...prompt, mode: 'typing' as const, nudge: null }, taken };
}

function isDoubtful(typed: string, value: number, context: ReadingContext): boolean {
  return context.judge(value)?.verdict === 'impossible' || doubtOf(typed, value, context) !== null;
}

/** What the simulated vehicle shows is no slip of the hand. */
function doubtOf(typed: string, value: number, context: ReadingContext): string | null {
  const { expected, judge, offered, possible } = context;
  return typed === offered?.typed ? null : doubtReading(value, expected.unit, judge, possible);
}

function afterInDoubt(
  prompt: ReadingPrompt,
  label: string,
  event: KeyEvent,
  context: ReadingContext,
) {
  const choices = choicesOf(prompt);
  const digit = /^[1-9]$/.test(label) ? Number(label) - 1 : -1;
  const choice = choices[label === 'return' ? prompt.chosen : digit];
  if (choice) return afterChoice(prompt, choice, context);
  if (label === 'up' || label === 'down') {
    const to = prompt.chosen + (label === 'up' ? -1 : 1);
    return stay({ ...prompt, chosen: Math.max(0, Math.min(choices.length - 1, to)) });
  }
  if (label === 'escape') return stay({ ...prompt, mode: 'typing' as const });
  return stay(afterTyping(prompt, event, context.expected));
}

function afterChoice(prompt: ReadingPrompt, choice: ReadingChoice, context: ReadingContext) {
  const { value } = choice.quantity;
  const taken = { typed: prompt.read.typed, value };
  // Written anew in its plain form, so that the confirmation speaks of the meaning chosen.
  if (isDoubtful(taken.typed, value, context))
    return stay({
      ...promptHolding({ typed: choice.words, value }, context.expected.unit),
      mode: 'confirm' as const,
    });
  return { prompt: { ...prompt, mode: 'typing' as const }, taken };
}

/** What an ambiguous reading may mean; empty when it is not ambiguous. */
export function choicesOf({ read: { parse } }: ReadingPrompt): readonly ReadingChoice[] {
  return parse.status === 'doubt' ? parse.choices : [];
}

/** The line under the prompt. */
export function remarkOf(prompt: ReadingPrompt, context: ReadingContext): Remark {
  if (prompt.nudge !== null) return { tone: 'quiet', words: prompt.nudge };
  const overflow = overflowWords(prompt.field);
  if (overflow !== null) return { tone: 'wrong', words: overflow.slice(2) };
  const { typed, parse } = prompt.read;
  switch (parse.status) {
    case 'unfinished':
      return { tone: 'quiet', words: typed === '' ? '' : 'go on typing' };
    case 'doubt':
      return {
        tone: 'unsure',
        words: prompt.mode === 'doubt' ? parse.words : `${parse.words} Enter asks`,
      };
    case 'refused': {
      const fix = parse.fix === undefined || prompt.mode === 'confirm' ? '' : `; ${parse.fix}`;
      const confirm = parse.beyond ? confirmWords(prompt) : '';
      return { tone: 'wrong', words: `${confirm}${parse.words}${fix}` };
    }
    case 'read': {
      const { value } = parse.quantity;
      const doubt = doubtOf(typed, value, context);
      if (doubt !== null)
        return { tone: 'wrong', words: `${confirmWords(prompt)}${parse.text}: ${doubt}` };
      return judgedRemark(parse.text, value, prompt, context);
    }
  }
}

function judgedRemark(
  text: string,
  value: number,
  prompt: ReadingPrompt,
  { judge, judged }: ReadingContext,
): Remark {
  const judgement = judge(value);
  if (!judgement) return { tone: 'quiet', words: text };
  const { verdict } = judgement;
  const start = verdict === 'impossible' ? confirmWords(prompt) : '';
  const words = `${start}${text} is ${VERDICT_WORDS[verdict]}: ${judged(judgement, value)}`;
  return { tone: TONES[verdict], words };
}

const TONES = {
  good: 'good',
  low: 'off',
  high: 'off',
  borderline: 'unsure',
  impossible: 'wrong',
} as const;

const VERDICT_WORDS = {
  good: 'GOOD',
  low: 'LOW',
  high: 'HIGH',
  borderline: 'BORDERLINE',
  impossible: 'IMPOSSIBLE',
} as const;

/** Stands first, so that it is read even where the reason is long. */
function confirmWords(prompt: ReadingPrompt): string {
  return prompt.mode === 'confirm' ? 'Press Enter again if that is what the meter shows. ' : '';
}
