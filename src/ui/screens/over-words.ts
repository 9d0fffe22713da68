/** What stands on the pages that may lie over a step: its small sums, its wiring, the keys. */
import type { Test } from '../../circuit/test.ts';
import {
  DIAGNOSIS_POINTS,
  EVIDENCE_POINTS,
  SAFETY_POINTS,
  TIME_POINTS,
} from '../../drill/score.ts';
import type { Step } from '../../procedure/procedure.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { SESSION_KEYS } from './session-keys.ts';

const SKETCH_COLUMNS = 76;

/** The sums that fit a step, done with its own values. */
export function sumsParagraphs(opened: OpenedSession, step: Step | null): Paragraph[] {
  const sums = step ? opened.sums(step) : [];
  if (sums.length === 0) return [{ text: 'No calculation fits this step.' }];
  return sums.flatMap(({ title, lines }, index) => [
    ...(index === 0 ? [] : [{ text: '' }]),
    { text: title, bold: true },
    ...lines.map(([label, value]) => ({ text: `  ${label}: ${value}`, hang: 4 })),
  ]);
}

/** The wiring with the leads of a test on it. */
export function sketchParagraphs(opened: OpenedSession, test: Test | null): (Paragraph | string)[] {
  const drawn = opened.sketch(test, SKETCH_COLUMNS, true);
  if (drawn.length === 0)
    return ['This session has no circuit model, so there is no wiring to draw.'];
  return drawn.map((text) => ({ text, drawn: true }));
}

/** The keys of a session, from the one table. */
export function helpParagraphs(isDrill = false): Paragraph[] {
  return [
    ...SESSION_KEYS.map(({ show, other, help, words }) =>
      keyLine(`${show}, ${other}`, `${help.charAt(0).toUpperCase()}${help.slice(1)}. ${words}`),
    ),
    { text: '' },
    ...OTHER_KEYS.map(([key, words]) => keyLine(key, words)),
    { text: '' },
    {
      text: 'Type readings as the meter shows them: 4.97, 4,97 V, 18 mV, 2k2, OL. Small m is milli, capital M is mega.',
    },
    ...(isDrill ? [{ text: '' }, { text: POINTS }] : []),
  ];
}

const POINTS = `Points: ${DIAGNOSIS_POINTS} for the right repair, ${EVIDENCE_POINTS} for readings that prove it, ${TIME_POINTS} for few minutes, ${SAFETY_POINTS} for safety. Setting up only costs minutes with the next reading. A dangerous test is stopped by the bench and costs safety points; so does a test whose cautions were skipped.`;

const OTHER_KEYS: readonly (readonly [string, string])[] = [
  ['Enter', 'Enters the reading, picks the marked line, or says it is done.'],
  ['1 to 9', 'Picks a line of a list directly.'],
  ['Tab', 'Uses what a simulated vehicle shows.'],
  ['PgUp, PgDn', 'Scroll a long text.'],
  ['Esc', 'Clears the field; closes a page.'],
  ['Ctrl+W', 'Deletes the last word of a field.'],
  ['Ctrl+C', 'Quits at once. All answers are saved.'],
];

const KEY_COLUMNS = 14;

/** A key and what it does. The spaces between are fixed ones, which wrapping keeps. */
export function keyLine(key: string, words: string): Paragraph {
  return { text: `${key}${'\u00a0'.repeat(KEY_COLUMNS - key.length)}${words}`, hang: KEY_COLUMNS };
}
