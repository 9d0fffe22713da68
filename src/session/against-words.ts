/** What a capture was held against besides the circuit, in words: a known-good capture, or where the edges should stand. */
import { safeText } from '../source/safe-text.ts';
import { againstWords, positionWords } from './capture-position.ts';
import { compareMeasured } from './compare-measured.ts';
import type { KnownGood, StepCapture } from './events.ts';

/** What differs from a known-good capture of the same picture, a line; that nothing does is one too. */
export function besideWords(
  { measures }: Pick<StepCapture, 'measures'>,
  good: Pick<KnownGood, 'measures'>,
): string[] {
  const changes = compareMeasured(good.measures, measures).flatMap(
    ({ name, before, after, change }) =>
      change === '' ? [] : [`${name} ${after} instead of ${before}`],
  );
  return [
    `Compared with the known-good capture: ${changes.join('; ') || 'levels and pulses are alike'}`,
  ];
}

/** What a capture was held against besides the circuit, and what came of it; no lines where it was against nothing. */
export function capturedAgainstWords(capture: StepCapture): string[] {
  const { against, shiftDegrees } = capture;
  if (!against) return [];
  return [
    ...(against.kind === 'good' ? besideWords(capture, against) : []),
    ...(shiftDegrees === undefined
      ? []
      : [
          safeText(
            `Position: ${positionWords(capture, shiftDegrees, against)} (against ${againstWords(against)})`,
          ),
        ]),
  ];
}
