/** Wire colours in the letters of IEC 60757, and in words: `RD/BU` is red with a blue stripe; and as people write them. */
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

/**
 * How else a colour is written: in English and German, and in the letters of German wiring diagrams (DIN 72551) and of
 * American ones. Common practice, no source.
 */
const OTHER_NAMES: Readonly<Record<string, string>> = {
  BK: 'black blk schwarz sw',
  BN: 'brown brn braun br',
  RD: 'red rot rt',
  OG: 'orange org orn or',
  YE: 'yellow yel gelb ge',
  GN: 'green grn grün gruen',
  BU: 'blue blu blau bl',
  VT: 'violet purple vio ppl violett lila vi li',
  GY: 'grey gray gry grau gr',
  WH: 'white wht weiß weiss ws',
  PK: 'pink pnk rosa rs',
  GD: 'gold',
  TQ: 'turquoise türkis tuerkis tk',
  SR: 'silver silber',
};
const LETTERS_OF: ReadonlyMap<string, string> = new Map(
  Object.entries(OTHER_NAMES).flatMap(([letters, names]) =>
    [letters.toLowerCase(), ...names.split(' ')].map((name) => [name, letters] as const),
  ),
);
/** Between two colours, and what may stand beside the second. */
const JOINED = /[\s/,+-]+/;
const FILLERS = new Set(['and', 'with', 'und', 'mit', 'stripe', 'stripes', 'streifen']);
/** A base colour and two stripes; what has more is no colour. */
const MAX_COLOURS = 3;

/** `white/black`, `rot-weiß`, `rd bu`, `green with yellow stripe` in the letters of the standard: `WH/BK`; null when it is no colour. */
export function readColour(typed: string): string | null {
  const words = typed.toLowerCase().normalize('NFC').split(JOINED).filter(Boolean);
  const colours = words.filter((word) => !FILLERS.has(word)).map(lettersOf);
  if (colours.length === 0 || colours.includes(null)) return null;
  const all = colours.join('/');
  return all.split('/').length <= MAX_COLOURS ? all : null;
}

/** One colour, or two written as one word: `rtws`, `schwarzweiß`. */
function lettersOf(word: string): string | null {
  const one = LETTERS_OF.get(word);
  if (one !== undefined) return one;
  for (let cut = 2; cut <= word.length - 2; cut += 1) {
    const base = LETTERS_OF.get(word.slice(0, cut));
    const stripe = LETTERS_OF.get(word.slice(cut));
    if (base !== undefined && stripe !== undefined) return `${base}/${stripe}`;
  }
  return null;
}

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
