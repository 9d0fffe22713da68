/** `one of: 5 V 70 %, 8 V 30 %`: what stands between the commas, and the chance of each. */

/** One of several, as it was written, and its chance, 0 to 1. */
export interface WrittenChoice {
  readonly text: string;
  readonly chance: number;
}

/** The choices as written, or what is wrong with the list. */
export type SplitChoices =
  | { readonly ok: true; readonly choices: readonly WrittenChoice[] }
  | { readonly ok: false; readonly words: string; readonly fix: string };

const ONE_OF = /^\s{0,9}one of(?::|\s)/;
/** A chance behind a choice: ` 70 %`. */
const CHANCE = /^(.{1,90})\s(\d{1,3}(?:\.\d{1,3})?)\s?%\s{0,9}$/;
/** Chances that people write in whole per cent come this near to 100. */
const ROUNDED_PERCENT = 0.5;
/** More than any list of kinds of a circuit. */
const CHOICES_MAX = 12;
const FIX = 'write it like "one of: 5 V 70 %, 8 V 30 %"';

/** Whether a text says that it is one of several. */
export function saysOneOf(text: string): boolean {
  return ONE_OF.test(text);
}

/**
 * The choices of a text that `saysOneOf`. `isWhole` tells a choice that ends in per cent of its own from one with its
 * chance: `5 V +/- 3 %` is whole, `5 V +/- 3 % 70 %` is not. Choices without a chance share what the others leave.
 */
export function splitChoices(text: string, isWhole: (choice: string) => boolean): SplitChoices {
  const written = text
    .replace(ONE_OF, '')
    .split(',')
    .map((one) => one.trim());
  if (written.length < 2 || written.length > CHOICES_MAX)
    return { ok: false, words: `it needs 2 to ${CHOICES_MAX} choices between commas`, fix: FIX };
  const read = written.map((one) => {
    const [, rest, percent] = isWhole(one) ? [] : (CHANCE.exec(one) ?? []);
    return rest === undefined
      ? { text: one, percent: null }
      : { text: rest.trim(), percent: Number(percent) };
  });
  const open = read.filter(({ percent }) => percent === null).length;
  const said = read.reduce((sum, { percent }) => sum + (percent ?? 0), 0);
  const left = 100 - said;
  if (open > 0 ? left <= 0 : Math.abs(left) > ROUNDED_PERCENT)
    return {
      ok: false,
      words:
        open > 0
          ? `the chances add up to ${said} % and leave nothing for the others`
          : `the chances come to ${said} %`,
      fix: 'make them add up to 100 %',
    };
  if (read.some(({ percent }) => percent === 0))
    return { ok: false, words: 'a choice of 0 % is not a choice', fix: 'leave it out' };
  const whole = open > 0 ? 100 : said;
  return {
    ok: true,
    choices: read.map(({ text: one, percent }) => ({
      text: one,
      chance: (percent ?? left / open) / whole,
    })),
  };
}
