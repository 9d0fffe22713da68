/** A reading that was typed as a line: parsed once, and asked about where it looks like a slip of the hand. */
import type { Judgement } from '../../circuit/judge.ts';
import { type ExpectedReading, parseReading } from '../../quantity/parse-reading.ts';
import { doubtReading } from '../../session/doubt-reading.ts';
import type { TakenReading } from '../../session/driver.ts';
import type { PossibleValues } from '../../session/possible-values.ts';
import type { Dialogue } from './dialogue.ts';

/** What a number is asked for, and what it would mean. */
export interface AskedReading {
  readonly expected: ExpectedReading;
  readonly judge: (value: number) => Judgement | null;
  /** What can be shown here at all; null where nobody knows. */
  readonly possible: () => PossibleValues | null;
}

/** What a typed line came to. */
export type PlainReading =
  | { readonly kind: 'taken'; readonly reading: TakenReading }
  /** Doubted, and this was typed in its place; nothing at the end of input. */
  | { readonly kind: 'instead'; readonly line: string }
  /** Why not was said. */
  | { readonly kind: 'none' };

/** Takes a typed line as a reading; asks back where it is doubtful, and says why where it is none. */
export async function readLine(
  line: string,
  { expected, judge, possible }: AskedReading,
  { say, ask }: Dialogue,
): Promise<PlainReading> {
  const typed = line.trim();
  const read = parseReading(typed, expected);
  switch (read.status) {
    case 'unfinished':
      say('That reading is not complete yet.');
      return { kind: 'none' };
    case 'doubt':
      say(read.words);
      for (const choice of read.choices) say(`  type it as: ${choice.words}`);
      return { kind: 'none' };
    case 'refused':
      say(`${read.words}${read.fix ? `; ${read.fix}` : ''}`);
      return { kind: 'none' };
    case 'read': {
      const { value } = read.quantity;
      const taken: PlainReading = { kind: 'taken', reading: { typed, value } };
      const doubt = doubtReading(value, expected.unit, judge, possible);
      if (doubt === null) return taken;
      say(`${read.text}: ${doubt}.`);
      const answer = await ask('Type yes if that is what the meter shows, or read again: ');
      if (answer?.trim().toLowerCase() === 'yes') return taken;
      return { kind: 'instead', line: answer?.trim() ?? '' };
    }
  }
}
