/** What is known of a car as a sentence, `battery at rest is 12.4 V from measured`, and as people read it. */
import { formatQuantity, formatRange } from '../quantity/format-quantity.ts';
import { nearestName } from '../source/nearest-name.ts';
import type { Knowable, KnownIs } from './knowable.ts';
import { spaced } from './part-faults.ts';

/** From where something can be known. */
export const KNOWN_FROM = ['maker', 'measured', 'label', 'other'] as const;
export type KnownSource = (typeof KNOWN_FROM)[number];

/** From where it is known, and more about it in the person's words; empty where there are none. */
export interface KnownFrom {
  readonly kind: KnownSource;
  readonly words: string;
}

/** A sentence in its parts, each as typed; empty where it is left out. */
export interface KnownSentence {
  readonly what: string;
  readonly is: string;
  readonly from: string;
}

const FROM_WORDS: Readonly<Record<KnownSource, string>> = {
  maker: "the maker's value",
  measured: 'measured',
  label: 'from a label',
  other: 'known otherwise',
};
/** Longer than any reason that a person types. */
const FROM_MAX = 300;

/** `WHAT is VALUE from WHERE`, also with `=`; null without an "is". */
export function splitKnown(text: string): KnownSentence | null {
  const [, what, rest] = /^(.{1,200}?)(?:\s+is\s+|\s*=\s*)(.{0,600})$/.exec(text.trim()) ?? [];
  if (what === undefined || rest === undefined) return null;
  const from = rest.lastIndexOf(' from ');
  return from < 0
    ? { what, is: rest.trim(), from: '' }
    : { what, is: rest.slice(0, from).trim(), from: rest.slice(from + 6).trim() };
}

/** `maker`, `measured`, `label`, `other`, each with words of one's own behind it: `measured at the post, key off`. */
export function readFrom(
  typed: string,
): KnownFrom | { readonly words: string; readonly fix: string } {
  const text = typed.trim().replace(/^(?:the|a) /i, '');
  const [, first = '', rest = ''] = /^([a-z]{1,20})[\s:,;-]{0,5}(.*)$/is.exec(text) ?? [];
  const word = first.toLowerCase();
  const kind = KNOWN_FROM.find((one) => one === word);
  if (text.length > FROM_MAX)
    return { words: 'this is too long', fix: `keep it under ${FROM_MAX} characters` };
  if (kind) return { kind, words: rest.trim() };
  const near = nearestName(word, KNOWN_FROM);
  return {
    words: text === '' ? 'it does not say where this is known from' : `"${text}" is not a source`,
    fix: `begin with one of: ${KNOWN_FROM.join(', ')}${near ? `; did you mean "${near}"?` : ''}`,
  };
}

/** `measured: at the post`. */
export function sourceWords({ kind, words }: KnownFrom): string {
  return words === '' ? FROM_WORDS[kind] : `${FROM_WORDS[kind]}: ${words}`;
}

/** `12.2 to 12.6 V`, `battery`; `not known` for null. */
export function isWords(is: KnownIs | null, options: { readonly ascii?: boolean } = {}): string {
  if (is === null) return 'not known';
  if ('way' in is) return spaced(is.way);
  const { low, high, unit, oneOf } = is.value;
  if (oneOf) return oneOf.map(({ value }) => isWords({ value }, options)).join(' or ');
  if (unit !== '1') return formatRange(low, high, unit, options);
  const percent = (share: number) => formatQuantity({ value: share * 100, unit: '%' }, options);
  return low === high ? percent(low) : `${percent(low)} to ${percent(high)}`;
}

/** What the circuit says of it: `5 V or battery`. */
export function describedWords(
  { described }: Knowable,
  options: { readonly ascii?: boolean } = {},
): string {
  return described.map((one) => isWords(one, options)).join(' or ');
}
