/** Pages that may lie over a step: its small sums, its wiring, the keys. */
import type { Step } from '../../procedure/procedure.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { helpParagraphs, ReadingPage } from './reading-page.tsx';
import { testOf } from './step-words.ts';

export interface StepPageProps {
  readonly page: 'help' | 'sketch' | 'sums';
  readonly opened: OpenedSession;
  readonly step: Step;
  readonly onClose: () => void;
}

/** One of them. */
export function StepPage({ page, opened, step, onClose }: StepPageProps) {
  switch (page) {
    case 'help':
      return <ReadingPage title="All keys" paragraphs={helpParagraphs()} onClose={onClose} />;
    case 'sketch':
      return <ReadingPage title="Wiring" paragraphs={sketchOf(opened, step)} onClose={onClose} />;
    case 'sums':
      return <ReadingPage title="Sums" paragraphs={sumsOf(opened, step)} onClose={onClose} />;
  }
}

/** The sums that fit a step, done with its own values. */
function sumsOf(opened: OpenedSession, step: Step): Paragraph[] {
  const sums = opened.sums(step);
  if (sums.length === 0) return [{ text: 'No sum fits this step.' }];
  return sums.flatMap(({ title, lines }, index) => [
    ...(index === 0 ? [] : [{ text: '' }]),
    { text: title, bold: true },
    ...lines.map(([label, value]) => ({ text: `  ${label}: ${value}`, hang: 4 })),
  ]);
}

/** The wiring with the leads of the step on it. */
function sketchOf(opened: OpenedSession, step: Step): (Paragraph | string)[] {
  const drawn = opened.sketch(testOf(step), 76);
  if (drawn.length === 0)
    return ['This procedure has no circuit behind it, so there is no wiring to draw.'];
  return drawn.map((text) => ({ text, drawn: true }));
}
