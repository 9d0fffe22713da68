/** Wire colours in the letters of IEC 60757, and in words: `RD/BU` is red with a blue stripe. */
import type { Issue } from '../source/issue.ts';

/** Two-letter codes of IEC 60757:2021, from memory. */
const WIRE_COLOURS: Readonly<Record<string, string>> = {
  BK: 'black',
  BN: 'brown',
  RD: 'red',
  OG: 'orange',
  YE: 'yellow',
  GN: 'green',
  BU: 'blue',
  VT: 'violet',
  GY: 'grey',
  WH: 'white',
  PK: 'pink',
  GD: 'gold',
  TQ: 'turquoise',
  SR: 'silver',
  GNYE: 'green and yellow',
};

/** `RD/BU` in words, or null when a letter pair is not of the standard. */
export function colourWords(letters: string): string | null {
  const names = letters
    .toUpperCase()
    .split('/')
    .map((code) => WIRE_COLOURS[code]);
  const [base, ...stripes] = names;
  if (base === undefined || stripes.some((name) => name === undefined)) return null;
  return stripes.length === 0 ? base : `${base} with ${stripes.join(' and ')}`;
}

/** The problem with a colour, in words for its place, or null. */
export function colourProblem(letters: string): Pick<Issue, 'words' | 'fix'> | null {
  if (colourWords(letters) !== null) return null;
  return {
    words: `"${letters}" is not a wire colour in IEC 60757 letters`,
    fix: `write the base colour first, then the stripe: ${Object.keys(WIRE_COLOURS).slice(0, 12).join(' ')}`,
  };
}
