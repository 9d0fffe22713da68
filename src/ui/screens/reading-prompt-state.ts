/** The prompt for a number: what a key does, and what the line under it says. No React, no clock. */
import type { Judgement } from '../../circuit/judge.ts';
import { judgementWords } from '../../circuit/judgement-words.ts';
import type { Meter } from '../../circuit/test.ts';
import {
  type ExpectedReading,
  parseReading,
  type ReadingChoice,
  type ReadingParse,
} from '../../quantity/parse-reading.ts';
import { doubtReading } from '../../session/doubt-reading.ts';
import { type TextFieldState, textField, textFieldAfter } from '../parts/text-field-state.ts';
import { type KeyEvent, keyLabel } from '../term/key-decoder.ts';

export interface ReadingPrompt {
  readonly field: TextFieldState;
  /** `confirm`: the value seems impossible and waits for a second Enter. `doubt`: which of the choices was meant. */
  readonly mode: 'typing' | 'confirm' | 'doubt';
  /** The marked choice of a doubt. */
  readonly chosen: number;
  /** Enter came before there was anything to take. */
  readonly nudge: string | null;
}

export interface ReadingContext {
  readonly expected: ExpectedReading;
  /** What a value means at this step; null where nothing is expected. */
  readonly judge: (value: number) => Judgement | null;
  /** With which it is judged. */
  readonly meter: Meter;
  /** The key came after a pause, so that it can be meant for what is on the screen. */
  readonly isDeliberate: boolean;
  /** What the simulated vehicle would have typed, taken over with Tab. */
  readonly offered: string | null;
}

/** A number to record: as typed, and in SI units. */
export interface TakenReading {
  readonly typed: string;
  readonly value: number;
}

/** What the line under the prompt says. `tone` decides sign and colour, the words carry the meaning. */
export interface Remark {
  readonly tone: 'good' | 'off' | 'unsure' | 'wrong' | 'quiet';
  readonly words: string;
}

/** A prompt, holding an earlier value when one was taken back. */
export function readingPrompt(earlier = ''): ReadingPrompt {
  return { field: textField(earlier), mode: 'typing', chosen: 0, nudge: null };
}

/** The prompt after a key, and the reading when the key was the Enter that takes it. */
export function readingPromptAfter(
  prompt: ReadingPrompt,
  event: KeyEvent,
  context: ReadingContext,
): { readonly prompt: ReadingPrompt; readonly taken: TakenReading | null } {
  const label = keyLabel(event);
  if (prompt.mode === 'doubt') return afterInDoubt(prompt, label, event, context);
  if (label === 'return') return afterEnter(prompt, context);
  if (label === 'escape')
    return stay({ ...readingPrompt(prompt.mode === 'confirm' ? prompt.field.text : '') });
  if (label === 'tab')
    return stay(context.offered === null ? prompt : readingPrompt(context.offered));
  const field = textFieldAfter(prompt.field, event);
  return stay(field === prompt.field ? prompt : { ...prompt, field, mode: 'typing', nudge: null });
}

function stay(prompt: ReadingPrompt) {
  return { prompt, taken: null };
}

function afterEnter(prompt: ReadingPrompt, context: ReadingContext) {
  const typed = prompt.field.text.trim();
  const parse = parseReading(typed, context.expected);
  switch (parse.status) {
    case 'unfinished':
      return stay({
        ...prompt,
        nudge: typed === '' ? 'type a reading first' : 'this is not a whole reading yet',
      });
    case 'doubt':
      return stay({ ...prompt, mode: 'doubt', chosen: 0, nudge: null });
    case 'refused': {
      const value = parse.code === 'impossible-value' ? valueWithoutLimit(typed, context) : null;
      if (value === null) return stay({ ...prompt, nudge: null });
      return takenOrConfirmed(prompt, { typed, value }, true, context);
    }
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

/** A value outside what this vehicle can have is still a number; null when it is none in any vehicle. */
function valueWithoutLimit(typed: string, { expected }: ReadingContext): number | null {
  const { limit: _, ...anywhere } = expected;
  const parse = parseReading(typed, anywhere);
  return parse.status === 'read' ? parse.quantity.value : null;
}

function isDoubtful(typed: string, value: number, context: ReadingContext): boolean {
  return context.judge(value)?.verdict === 'impossible' || doubtOf(typed, value, context) !== null;
}

/** What the simulated vehicle shows is no slip of the hand. */
function doubtOf(typed: string, value: number, context: ReadingContext): string | null {
  const { expected, judge, offered } = context;
  return typed === offered ? null : doubtReading(value, expected.unit, judge);
}

function afterInDoubt(
  prompt: ReadingPrompt,
  label: string,
  event: KeyEvent,
  context: ReadingContext,
) {
  const choices = choicesOf(prompt, context);
  const digit = /^[1-9]$/.test(label) ? Number(label) - 1 : -1;
  const chosen = label === 'return' ? prompt.chosen : digit;
  const choice = choices[chosen];
  if (choice && (label === 'return' || digit >= 0)) {
    const { value } = choice.quantity;
    const taken = { typed: prompt.field.text.trim(), value };
    const doubtful = isDoubtful(taken.typed, value, context);
    // Typed anew in its plain form, so that the confirmation speaks of the meaning chosen.
    if (doubtful) return stay({ ...readingPrompt(choice.words), mode: 'confirm' as const });
    return { prompt: { ...prompt, mode: 'typing' as const }, taken };
  }
  if (label === 'up' || label === 'down') {
    const to = prompt.chosen + (label === 'up' ? -1 : 1);
    return stay({ ...prompt, chosen: Math.max(0, Math.min(choices.length - 1, to)) });
  }
  if (label === 'escape') return stay({ ...prompt, mode: 'typing' as const });
  const field = textFieldAfter(prompt.field, event);
  return stay(field === prompt.field ? prompt : { ...prompt, field, mode: 'typing' as const });
}

/** What an ambiguous reading may mean; empty when it is not ambiguous. */
export function choicesOf(
  prompt: ReadingPrompt,
  context: ReadingContext,
): readonly ReadingChoice[] {
  const parse = parseReading(prompt.field.text.trim(), context.expected);
  return parse.status === 'doubt' ? parse.choices : [];
}

/** The line under the prompt. */
export function remarkOf(prompt: ReadingPrompt, context: ReadingContext): Remark {
  if (prompt.nudge !== null) return { tone: 'quiet', words: prompt.nudge };
  const parse = parseReading(prompt.field.text.trim(), context.expected);
  switch (parse.status) {
    case 'unfinished':
      return { tone: 'quiet', words: prompt.field.text.trim() === '' ? '' : 'go on typing' };
    case 'doubt':
      return {
        tone: 'unsure',
        words: prompt.mode === 'doubt' ? parse.words : `${parse.words} Enter asks`,
      };
    case 'refused': {
      const fix = parse.fix === undefined || prompt.mode === 'confirm' ? '' : `; ${parse.fix}`;
      const possible =
        parse.code === 'impossible-value' &&
        valueWithoutLimit(prompt.field.text.trim(), context) !== null;
      return {
        tone: 'wrong',
        words: `${possible ? confirmWords(prompt) : ''}${parse.words}${fix}`,
      };
    }
    case 'read': {
      const { value } = parse.quantity;
      const doubt = doubtOf(prompt.field.text.trim(), value, context);
      if (doubt !== null)
        return { tone: 'wrong', words: `${confirmWords(prompt)}${parse.text}: ${doubt}` };
      return judgedRemark(parse, prompt, context);
    }
  }
}

function judgedRemark(
  { text, quantity }: Extract<ReadingParse, { status: 'read' }>,
  prompt: ReadingPrompt,
  { judge, meter }: ReadingContext,
): Remark {
  const judgement = judge(quantity.value);
  if (!judgement) return { tone: 'quiet', words: text };
  const { verdict } = judgement;
  const words = judgementWords(judgement, quantity, meter);
  const tones = {
    good: 'good',
    low: 'off',
    high: 'off',
    borderline: 'unsure',
    impossible: 'wrong',
  } as const;
  const start = verdict === 'impossible' ? confirmWords(prompt) : '';
  return { tone: tones[verdict], words: `${start}${text} is ${VERDICT_WORDS[verdict]}: ${words}` };
}

const VERDICT_WORDS = {
  good: 'GOOD',
  low: 'LOW',
  high: 'HIGH',
  borderline: 'BORDERLINE',
  impossible: 'IMPOSSIBLE',
} as const;

/** Stands first, so that it is read even where the reason is long. */
function confirmWords(prompt: ReadingPrompt): string {
  return prompt.mode === 'confirm' ? 'Enter once more if the meter really shows this. ' : '';
}
