/**
 * Wide, right-to-left and marked signs in every text, on every screen: the frame stays where it is. Ink measures text here
 * as it does in the program (`tests/native-source.ts`).
 */
import { expect, it } from 'vitest';
import { shareOf } from '../campaign.ts';
import type { TestScreen } from '../ui/in-process.ts';
import { walkEveryScreen } from './walk-every-screen.tsx';

const TEXTS: Readonly<Record<string, string>> = {
  'two columns a sign': '点火线圈断路'.repeat(12),
  'two columns a sign, odd place': `a${'語'.repeat(61)}`,
  'full-width letters': 'ＡＢＣ　１２Ｖ'.repeat(10),
  'half-width syllables': 'ｶﾞｿﾘﾝ'.repeat(14),
  syllables: '크랭크 센서'.repeat(12),
  'right to left, Hebrew': 'חיישן גל ארכובה '.repeat(8),
  'right to left, Arabic with numbers': 'مستشعر 4.98 V (دوران) '.repeat(8),
  'both ways in one line': 'abc אבג 12.6 V دوران [x] '.repeat(8),
  'two hundred signs of two columns': '語'.repeat(200),
  'syllables as single letters': '\u3131\u314f\u3141'.repeat(70),
  'the sign AM behind other marks': '\u0e19\u0e49\u0e33 \u0e81\u0e49\u0eb3 a\u0e33'.repeat(20),
  'marks on letters': 'e\u0301n\u0303o\u0308'.repeat(40),
  'ambiguous width': '§°±×÷Ω→①'.repeat(14),
};
const SIZES = [
  { columns: 60, rows: 16 },
  { columns: 80, rows: 24 },
  { columns: 101, rows: 31 },
];

const cases = Object.entries(TEXTS).flatMap(([name, text]) =>
  SIZES.map((size) => ({ name, text, size })),
);

/** By the terminal's own cells: a sign of two columns takes two of them. */
async function expectFramed(screen: TestScreen, what: string) {
  const edges = (await screen.edges()).slice(0, -1);
  const broken = edges.findIndex((edge) => !/^[┌│├└][┐│┤┘]$/.test(edge));
  if (broken < 0) return;
  expect.fail(`row ${broken} of ${what}\n${await screen.text()}`);
}

it('every screen keeps its frame', { timeout: 3_600_000 }, async () => {
  const tried = shareOf(cases, cases.length);
  let frames = 0;
  for (const { name, text, size } of tried) {
    const { screen, driver } = await walkEveryScreen(text, size, async (one) => {
      frames += 1;
      await expectFramed(one, `${name} at ${size.columns} x ${size.rows}`);
    });
    expect(screen.crashes).toEqual([]);
    expect(driver.session().trail.length).toBeGreaterThan(2);
  }
  console.info(`wide text: cases=${tried.length} of ${cases.length} frames=${frames}`);
});
