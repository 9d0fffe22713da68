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
import { sentenceStart } from '../parts/sentence.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { adviceOf } from './pages-state.ts';
import { SESSION_KEYS, type SessionAction, type SessionKey } from './session-keys.ts';

const SKETCH_COLUMNS = 76;

/** The sums that fit a step, done with its own values. */
export function sumsParagraphs(opened: OpenedSession, step: Step | null): Paragraph[] {
  if (opened.drill?.level.expected === false)
    return [
      { text: 'This drill level does no calculations for you: they would give away what is good.' },
    ];
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
export function helpParagraphs(opened: Pick<OpenedSession, 'advisor' | 'drill'>): Paragraph[] {
  const isDrill = opened.drill !== null;
  return [
    ...keysHere(opened).map(({ show, other, help, words }) =>
      keyLine(`${show}, ${other}`, `${sentenceStart(help)}. ${words}`),
    ),
    { text: '' },
    ...(isDrill ? DRILL_KEYS : OTHER_KEYS).map(([key, words]) => keyLine(key, words)),
    { text: '' },
    { text: isDrill ? POINTS : TYPING },
  ];
}

/** The table as it is here: a drill types no reading, and some of its levels have no suspects. */
function keysHere(opened: Pick<OpenedSession, 'advisor' | 'drill'>): readonly SessionKey[] {
  if (!opened.drill) return SESSION_KEYS;
  const isAdvised = adviceOf(opened) !== null;
  return SESSION_KEYS.filter(({ action }) => isAdvised || action !== 'next-tests').map((key) => ({
    ...key,
    ...IN_A_DRILL[key.action],
    ...(isAdvised ? {} : WITHOUT_SUSPECTS[key.action]),
  }));
}

type OtherHelp = Readonly<
  Partial<Record<SessionAction, Partial<Pick<SessionKey, 'help' | 'words'>>>>
>;

const IN_A_DRILL: OtherHelp = {
  'next-tests': { words: 'The tests that would tell you most now. Do one of them and come back.' },
  'any-test': {
    words: 'Any test you like, at any time: a standard test of this circuit, or set up yourself.',
  },
  instruments: { words: 'What you have at hand.' },
  capture: { words: 'Save what the scope sees at this step, and have it measured.' },
};

const WITHOUT_SUSPECTS: OtherHelp = {
  suspects: {
    help: 'diagnosis',
    words: 'What fixes it: pick the repair and hand it in, which ends the drill, or give up.',
  },
};

const TYPING =
  'Type readings as the meter shows them: 4.97, 4,97 V, 18 mV, 2k2, OL. Small m is milli, capital M is mega.';

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

/** At a bench, which reads by itself. */
const DRILL_KEYS: typeof OTHER_KEYS = [
  ['Enter', 'Does the step: the bench reads it. In a list, picks the marked line.'],
  ...OTHER_KEYS.filter(([key]) => key !== 'Enter' && key !== 'Tab'),
];

const KEY_COLUMNS = 14;

/** A key and what it does. The spaces between are fixed ones, which wrapping keeps. */
export function keyLine(key: string, words: string): Paragraph {
  return { text: `${key}${'\u00a0'.repeat(KEY_COLUMNS - key.length)}${words}`, hang: KEY_COLUMNS };
}
