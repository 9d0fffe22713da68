/**
 * Widths of the fonts every PDF reader has (ISO 32000-1, 9.6.2.2), in thousandths of the font size.
 *
 * From the font metrics Adobe publishes for them (from memory; tests/records compares with a PDF reader's own
 * widths where one is installed). Accented letters are as wide as their letter, but for the dotless i.
 */

/** Codes 32 to 126. */
const PLAIN_ASCII =
  '278 278 355 556 556 889 667 191 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 278 278 584 584 584 556 1015 667 667 722 722 667 611 778 722 278 500 667 556 833 722 778 667 778 722 667 611 722 667 944 667 667 611 278 278 278 469 556 333 556 556 500 556 556 278 556 556 222 222 500 222 833 556 556 556 556 333 500 278 556 500 722 500 500 500 334 260 334 584';
const BOLD_ASCII =
  '278 333 474 556 556 889 722 238 333 333 389 584 278 333 278 278 556 556 556 556 556 556 556 556 556 556 333 333 584 584 584 611 975 722 722 722 722 667 611 778 722 278 556 722 611 833 722 778 667 778 722 667 611 722 667 944 667 667 611 333 278 333 584 556 333 556 611 556 611 556 333 611 611 278 278 556 278 889 611 611 611 611 389 556 333 611 556 778 556 556 500 389 280 389 584';

/** Signs beyond ASCII that are no accented letters: sign, width, width in bold. */
const OTHERS: readonly (readonly [string, number, number])[] = [
  ['€ƒ†‡¢£¤¥§«»', 556, 556],
  ['‚‘’', 222, 278],
  ['„“”', 333, 500],
  ['…‰Œ—™Æ', 1000, 1000],
  ['ˆ˜¡‹›¨¯´¸²³¹\u00ad', 333, 333],
  ['•', 350, 350],
  ['–', 556, 556],
  ['œ', 944, 944],
  ['¦', 260, 280],
  ['©®', 737, 737],
  ['ª', 370, 370],
  ['º', 365, 365],
  ['¬±×÷', 584, 584],
  ['°', 400, 400],
  ['µ', 556, 611],
  ['¶', 537, 556],
  ['·\u00a0', 278, 278],
  ['¼½¾', 834, 834],
  ['¿ßøþ', 611, 611],
  ['ÐĐ', 722, 722],
  ['Ø', 778, 778],
  ['Þ', 667, 667],
  ['æ', 889, 889],
  ['ð', 556, 611],
  ['đ', 556, 611],
  ['Ł', 556, 611],
  ['ł', 222, 278],
  ['ıìíîïīİĪĮ', 278, 278],
];
/** Where the general rule fails: narrower in the plain weight. */
const PLAIN_EXCEPTIONS: Readonly<Record<string, number>> = { þ: 556, į: 222 };

const plain = table(PLAIN_ASCII, 1);
const bold = table(BOLD_ASCII, 2);
for (const [sign, width] of Object.entries(PLAIN_EXCEPTIONS)) plain.set(sign, width);

function table(ascii: string, column: 1 | 2): Map<string, number> {
  const widths = ascii.split(' ').map((width, i) => [String.fromCharCode(32 + i), Number(width)]);
  const map = new Map(widths as [string, number][]);
  for (const row of OTHERS) for (const sign of row[0]) map.set(sign, row[column]);
  return map;
}

/** The width of a sign, or of the letter beneath its accent. */
export function helveticaWidth(sign: string, isBold: boolean): number {
  const widths = isBold ? bold : plain;
  return widths.get(sign) ?? widths.get(sign.normalize('NFD').charAt(0)) ?? 556;
}
