/** Pages that may lie over a step: its small sums, its wiring, the keys. */
import type { Step } from '../../procedure/procedure.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { ReadingPage } from './reading-page.tsx';
import { keysOf, SESSION_KEYS } from './session-keys.ts';
import { testOf } from './step-words.ts';

export interface StepPageProps {
  readonly page: 'help' | 'sketch' | 'sums';
  readonly opened: OpenedSession;
  readonly step: Step;
  readonly onClose: () => void;
}

/** One of them. */
export function StepPage({ page, opened, step, onClose }: StepPageProps) {
  const props = { openedBy: keysOf(page), onClose };
  switch (page) {
    case 'help':
      return <ReadingPage title="All keys" paragraphs={helpParagraphs()} {...props} />;
    case 'sketch':
      return <ReadingPage title="Wiring" paragraphs={sketchOf(opened, step)} {...props} />;
    case 'sums':
      return <ReadingPage title="Sums" paragraphs={sumsOf(opened, step)} {...props} />;
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

/** The keys of a session, from the one table. */
export function helpParagraphs(): Paragraph[] {
  return [
    ...SESSION_KEYS.map(({ show, other, help, words }) =>
      keyLine(`${show}, ${other}`, `${help.charAt(0).toUpperCase()}${help.slice(1)}. ${words}`),
    ),
    { text: '' },
    ...OTHER_KEYS.map(([key, words]) => keyLine(key, words)),
    { text: '' },
    {
      text: 'Readings may be typed as the meter shows them: 4.97, 4,97 V, 18 mV, 2k2, OL. The small m is a thousandth, the capital M a million.',
    },
  ];
}

const OTHER_KEYS: readonly (readonly [string, string])[] = [
  ['Enter', 'Takes the reading, chooses the marked line, or says that it is done.'],
  ['1 to 9', 'Choose a line of a list at once.'],
  ['Tab', 'Takes over what a simulated vehicle shows.'],
  ['PgUp, PgDn', 'Scroll a long text.'],
  ['Esc', 'Empties the field; closes a page.'],
  ['Ctrl+W', 'Takes away the last word of a field.'],
  ['Ctrl+C', 'Leaves at once. Everything answered is saved.'],
];

const KEY_COLUMNS = 12;

/** A key and what it does. The spaces between are fixed ones, which wrapping keeps. */
export function keyLine(key: string, words: string): Paragraph {
  return { text: `${key}${'\u00a0'.repeat(KEY_COLUMNS - key.length)}${words}`, hang: KEY_COLUMNS };
}
