/** Where a step leads: outcomes of a number by limits, of a picture or a light by looks. */

import { HEALTHY } from '../circuit/circuit.ts';
import type { Look } from '../circuit/test.ts';
import { parseQuantity, parseToleranced } from '../quantity/parse-quantity.ts';
import { withPoint } from '../quantity/with-point.ts';
import { nearestName } from '../source/nearest-name.ts';
import type { Path } from '../source/yaml-source.ts';
import { checkRanges, type RangeFault } from './check-ranges.ts';
import type { Outcome as OutcomeDraft } from './generated/procedure.mjs';
import type {
  AskOutcome,
  ExpectedRange,
  LookOutcome,
  MeasureUnit,
  RangeOutcome,
} from './procedure.ts';
import { type StepDraftReader, words } from './step-draft-reader.ts';

/** Outcomes of a number; `span` is what the circuit computes as good, or null. */
export function rangeOutcomes(
  at: StepDraftReader,
  drafts: Readonly<Record<string, OutcomeDraft>>,
  unit: MeasureUnit,
  span: ExpectedRange | null,
): RangeOutcome[] {
  const read = Object.entries(drafts).map(([name, draft]) => {
    const path = ['outcomes', name];
    tellForeignKeys(at, name, draft, 'number');
    const from = limit(at, draft.from ?? draft.above, unit, [
      ...path,
      draft.from === undefined ? 'above' : 'from',
    ]);
    const to = limit(at, draft.to ?? draft.below, unit, [
      ...path,
      draft.to === undefined ? 'below' : 'to',
    ]);
    const under = isOwnNumber(at) ? faultsUnder(at, name, draft) : null;
    return { ...outcomeOf(at, name, draft), from, to, ...(under ? { under } : {}) };
  });
  return span ? withComputed(read, span) : read;
}

/**
 * `good` takes the computed span and no more, `low` and `high` what is beside it, up to limits the author wrote. A side
 * without an outcome is a gap: what is not good must never be taken for it.
 */
function withComputed(outcomes: readonly RangeOutcome[], span: ExpectedRange): RangeOutcome[] {
  const written = outcomes.filter(({ from, to }) => from !== null || to !== null);
  const spanLow = span.low ?? Number.NEGATIVE_INFINITY;
  const spanHigh = span.high ?? Number.POSITIVE_INFINITY;
  const below = Math.max(
    ...written.flatMap(({ to }) => (to !== null && to <= spanLow ? [to] : [])),
    Number.NEGATIVE_INFINITY,
  );
  const above = Math.min(
    ...written.flatMap(({ from }) => (from !== null && from >= spanHigh ? [from] : [])),
    Number.POSITIVE_INFINITY,
  );
  return outcomes.map((outcome) => {
    if (outcome.from !== null || outcome.to !== null) return outcome;
    if (outcome.name === 'good') return { ...outcome, from: span.low, to: span.high };
    if (outcome.name === 'low')
      return { ...outcome, from: Number.isFinite(below) ? below : null, to: span.low };
    if (outcome.name === 'high')
      return { ...outcome, from: span.high, to: Number.isFinite(above) ? above : null };
    return outcome;
  });
}

/** Outcomes of what is seen; `known` is what the instrument can show. */
export function lookOutcomes(
  at: StepDraftReader,
  drafts: Readonly<Record<string, OutcomeDraft>>,
  known: readonly Look[],
): LookOutcome[] {
  return Object.entries(drafts).map(([name, draft]) => {
    tellForeignKeys(at, name, draft, 'look');
    return { ...outcomeOf(at, name, draft), looks: looksOf(at, name, draft, known) };
  });
}

/** Of a question: its words, and the trouble codes that answer it. */
export function askOutcomes(
  at: StepDraftReader,
  drafts: Readonly<Record<string, OutcomeDraft>>,
): AskOutcome[] {
  return Object.entries(drafts).map(([name, draft]) => {
    tellForeignKeys(at, name, draft, 'question');
    const { 'code-kinds': codeKinds } = draft;
    const under = faultsUnder(at, name, draft);
    return {
      ...outcomeOf(at, name, draft),
      ...(codeKinds ? { codeKinds } : {}),
      ...(under ? { under } : {}),
    };
  });
}

/** The faults that can give an answer; null for any. */
function faultsUnder(at: StepDraftReader, name: string, draft: OutcomeDraft): string[] | null {
  const { 'only-with': only, 'never-with': never } = draft;
  const { circuit } = at.linker;
  if (!circuit || (!only && !never)) return null;
  const ids = [HEALTHY, ...circuit.faults.map(({ id }) => id)];
  const named = (patterns: readonly string[], key: 'only-with' | 'never-with') =>
    new Set(
      patterns.flatMap((pattern, index) =>
        pattern === HEALTHY ? [HEALTHY] : at.faults(pattern, ['outcomes', name, key, index]),
      ),
    );
  const included = only ? named(only, 'only-with') : null;
  const excluded = never ? named(never, 'never-with') : null;
  return ids.filter((id) => (included?.has(id) ?? true) && !excluded?.has(id));
}

/** What each kind of outcome is told apart by, beside its words and where it goes. */
const OUTCOME_KEYS = {
  number: {
    keys: ['from', 'to', 'below', 'above'],
    has: 'a number has limits',
    fix: 'write "from" and "to", or "below" or "above", with a unit',
  },
  look: {
    keys: ['look', 'looks'],
    has: 'what is seen has looks',
    fix: 'write "look" and one of them, or "looks" and a list',
  },
  question: {
    keys: ['code-kinds', 'only-with', 'never-with', 'because'],
    has: 'a question has answers in words',
    fix: 'write "words", and "code-kinds" where a trouble code answers it',
  },
} as const;
const KEY_WORDS = { number: 'limits', look: 'looks', question: 'what answers a question' } as const;

/** What says which faults can give an answer: a number that the circuit does not compute may say so as well. */
const SAID: readonly string[] = ['only-with', 'never-with', 'because'];

function isOwnNumber({ draft }: StepDraftReader): boolean {
  return draft.measure?.reading !== undefined;
}

/** Tells keys that belong to another kind of outcome. */
function tellForeignKeys(
  at: StepDraftReader,
  name: string,
  draft: OutcomeDraft,
  kind: keyof typeof OUTCOME_KEYS,
): void {
  const { has, fix } = OUTCOME_KEYS[kind];
  for (const other of ['number', 'look', 'question'] as const) {
    const keys = OUTCOME_KEYS[other].keys.filter((key) => !isOwnNumber(at) || !SAID.includes(key));
    if (other === kind || !keys.some((key) => key in draft)) continue;
    at.add('wrong-outcome', ['outcomes', name], `${has}, not ${KEY_WORDS[other]}`, fix, 'key');
  }
}

/** What every outcome has: its name, its words, where it goes. */
function outcomeOf(at: StepDraftReader, name: string, draft: OutcomeDraft) {
  return {
    name,
    words:
      draft.words === undefined ? words(name) : at.bound(draft.words, ['outcomes', name, 'words']),
    go: at.target(draft.go, ['outcomes', name, 'go']),
  };
}

function limit(
  at: StepDraftReader,
  text: string | undefined,
  unit: MeasureUnit,
  path: Path,
): number | null {
  if (text === undefined) return null;
  const read = parseQuantity(text);
  if (read && read.unit === unit) return read.value;
  const pointed = withPoint(text);
  const isPointed = pointed !== null && parseQuantity(pointed)?.unit === unit;
  at.add(
    'bad-value',
    path,
    `"${text}" is not a value in ${unit}`,
    isPointed ? `write it with a point: ${pointed}` : `for example: 4.75 ${unit}`,
  );
  return null;
}

/** Tells gaps and overlaps between the limits. */
export function tellRanges(
  at: StepDraftReader,
  outcomes: readonly RangeOutcome[],
  unit: MeasureUnit,
): void {
  const bare = outcomes.filter(({ from, to }) => from === null && to === null);
  if (bare.length > 0 && outcomes.length > 1) {
    const { expect } = at.draft;
    // A range that is not understood has been told already.
    if (expect !== undefined && expect !== 'computed') return;
    at.add(
      'missing-limits',
      ['outcomes', bare[0]!.name],
      `${bare.map(({ name }) => `"${name}"`).join(', ')} ${bare.length === 1 ? 'has' : 'have'} no limits`,
      expect === undefined ? 'add "expect: computed", or write limits' : LIMITS_FIX,
      'key',
    );
    return;
  }
  const names = outcomes.map(({ name }) => name);
  const side = (['low', 'high'] as const).find((name) => !names.includes(name));
  for (const { kind, outcome, words: wrong } of checkRanges(outcomes, unit)) {
    const { code, fix } = RANGE_ISSUES[kind];
    const isSide = kind === 'gap' && side !== undefined && at.draft.expect === 'computed';
    at.add(code, ['outcomes', outcome], wrong, isSide ? sideFix(side) : fix, 'key');
  }
}

const LIMITS_FIX = 'only good, low and high get theirs from the circuit; write limits';

function sideFix(side: 'low' | 'high'): string {
  return `add the outcome "${side}"; it may lead where "good" does, if that is meant`;
}

const RANGE_ISSUES: Readonly<Record<RangeFault['kind'], { code: string; fix: string }>> = {
  empty: { code: 'empty-range', fix: 'the lower limit comes first' },
  overlap: {
    code: 'overlapping-ranges',
    fix: 'start one exactly where the other ends: "from" is included, "to" is not',
  },
  gap: {
    code: 'range-gap',
    fix: 'extend one outcome to where the next begins, or add one',
  },
};

/** The author's own idea of good: `expect: 4.75 V .. 5.25 V`, or the limits of the outcome called good. */
export function authoredRange(
  at: StepDraftReader,
  unit: MeasureUnit,
  outcomes: readonly RangeOutcome[],
): ExpectedRange | null {
  const { expect } = at.draft;
  if (expect !== undefined && expect !== 'computed') {
    const read = parseToleranced(expect);
    if (read?.unit === unit && read.oneOf === undefined)
      return { low: read.low, nominal: null, high: read.high, from: 'author' };
    at.add(
      'bad-value',
      ['expect'],
      `"${expect}" is neither "computed" nor a range in ${unit}`,
      `for example: 4.75 ${unit} .. 5.25 ${unit}`,
    );
  }
  const good = outcomes.find(({ name }) => name === 'good');
  if (!good || (good.from === null && good.to === null)) return null;
  return { low: good.from, nominal: null, high: good.to, from: 'author' };
}

/** The looks of one outcome: named, or its own name. */
function looksOf(
  at: StepDraftReader,
  name: string,
  draft: OutcomeDraft,
  known: readonly Look[],
): Look[] {
  const named = draft.looks ?? (draft.look === undefined ? [name as Look] : [draft.look]);
  for (const look of named) {
    if (known.includes(look)) continue;
    const near = nearestName(look, known);
    at.add(
      'unknown-look',
      ['outcomes', name],
      `"${look}" is not what this instrument shows`,
      near ? `did you mean "${near}"?` : `it shows: ${known.join(', ')}`,
      'key',
    );
  }
  return named;
}

/** Tells looks that no outcome holds, or two. */
export function tellCoverage(
  at: StepDraftReader,
  outcomes: readonly { name: string; looks: readonly Look[] }[],
  known: readonly Look[],
): void {
  for (const look of known) {
    const holders = outcomes.filter(({ looks }) => looks.includes(look));
    if (holders.length === 0)
      at.add(
        'look-gap',
        ['outcomes'],
        `no outcome has the look "${look}"`,
        'add it to an outcome with "looks"',
        'key',
      );
    if (holders.length > 1)
      at.add(
        'overlapping-looks',
        ['outcomes', holders[1]!.name],
        `the look "${look}" also belongs to the outcome "${holders[0]!.name}"`,
        'keep it in one of them',
        'key',
      );
  }
}
