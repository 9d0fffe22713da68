/** Pages over a step: its small sums, its wiring. */
import type { Step } from '../../procedure/procedure.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { testOf } from './step-words.ts';

/** The sums that fit a step, done with its own values. */
export function sumsPage(opened: OpenedSession, step: Step): Paragraph[] {
  const sums = opened.sums(step);
  if (sums.length === 0) return [{ text: 'No sum fits this step.' }];
  return sums.flatMap(({ title, lines }, index) => [
    ...(index === 0 ? [] : [{ text: '' }]),
    { text: title, bold: true },
    ...lines.map(([label, value]) => ({ text: `  ${label}: ${value}`, hang: 4 })),
  ]);
}

/** The wiring with the leads of the step on it. */
export function sketchPage(opened: OpenedSession, step: Step): (Paragraph | string)[] {
  const drawn = opened.sketch(testOf(step), 76);
  if (drawn.length === 0)
    return ['This procedure has no circuit behind it, so there is no wiring to draw.'];
  return drawn.map((text) => ({ text, drawn: true }));
}
