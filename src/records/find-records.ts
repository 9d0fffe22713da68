/** Searches the index: by field, by date, by words, and by words that are nearly so spelled. */
import { foldSigns, foldText, wordsOf } from './fold-text.ts';
import type { IndexRow } from './index-row.ts';
import type { RecordIndex } from './record-index.ts';

/** All that is given must hold; texts match anywhere in the field, whatever their case and accents. */
export interface Query {
  /** Free words; each must occur somewhere in the session. */
  readonly words?: string;
  readonly plate?: string;
  readonly vin?: string;
  readonly order?: string;
  readonly code?: string;
  readonly conclusion?: string;
  readonly person?: string;
  readonly customer?: string;
  readonly status?: string;
  readonly verdict?: string;
  /** First and last day, `2026-03-04`, `2026-03` or `2026`. */
  readonly since?: string;
  readonly until?: string;
}

/** The sessions that answer a query, and how the query was read. */
export interface FoundRecords {
  readonly rows: readonly IndexRow[];
  /** Words that were replaced by ones that occur, when nothing was written exactly like the query. */
  readonly respelled: readonly { readonly typed: string; readonly taken: readonly string[] }[];
}

/** Rows that fit, newest first. */
export function findRecords(index: RecordIndex, query: Query): FoundRecords {
  const fits = fieldFilter(query);
  const words = wordsOf(foldText(query.words ?? ''));
  const rows = index.rows.map((row, i) => ({ row, i })).filter(({ row }) => fits(row));
  const text = (i: number) => index.texts[i] ?? '';
  const exact = rows.filter(({ i }) => words.every((word) => text(i).includes(word)));
  if (exact.length > 0 || words.length === 0 || rows.length === 0)
    return { rows: exact.map(({ row }) => row), respelled: [] };
  const taken = words.map((word) => ({ typed: word, taken: nearWords(word, index.vocabulary) }));
  const near = rows.filter(({ i }) =>
    taken.every(({ typed, taken: others }) =>
      [typed, ...others].some((word) => text(i).includes(word)),
    ),
  );
  const isThere = (word: string) => near.some(({ i }) => text(i).includes(word));
  const respelled = near.length > 0 ? taken.filter(({ typed }) => !isThere(typed)) : [];
  return { rows: near.map(({ row }) => row), respelled };
}

function fieldFilter(query: Query): (row: IndexRow) => boolean {
  const tests: ((row: IndexRow) => boolean)[] = [];
  const signs = (wanted: string | undefined, of: (row: IndexRow) => string) => {
    if (wanted === undefined) return;
    const folded = foldSigns(wanted);
    tests.push((row) => foldSigns(of(row)).includes(folded));
  };
  const contains = (wanted: string | undefined, of: (row: IndexRow) => string) => {
    if (wanted === undefined) return;
    const words = wordsOf(foldText(wanted));
    tests.push((row) => {
      const text = foldText(of(row));
      return words.every((word) => text.includes(word));
    });
  };
  signs(query.plate, (row) => row.plate);
  signs(query.vin, (row) => row.vin);
  signs(query.order, (row) => row.order);
  contains(query.conclusion, (row) => row.conclusion);
  contains(query.person, (row) => row.person);
  contains(query.customer, (row) => row.customer);
  const { code, status, verdict, since, until } = query;
  if (code !== undefined)
    tests.push((row) => row.codes.some((one) => foldSigns(one).startsWith(foldSigns(code))));
  if (status !== undefined) tests.push((row) => row.status === status || row.state === status);
  if (verdict !== undefined) tests.push((row) => row.verdict === verdict);
  if (since !== undefined) tests.push((row) => row.at.slice(0, since.length) >= since);
  if (until !== undefined) tests.push((row) => row.at.slice(0, until.length) <= until);
  return (row) => tests.every((test) => test(row));
}

const NEAR_WORDS_MAX = 12;

/**
 * Words of the vocabulary so near to a mistyped one that a slip of the finger explains it, nearest first: one edit from
 * four letters on, two from eight on.
 */
export function nearWords(typed: string, vocabulary: readonly string[]): string[] {
  const limit = typed.length < 4 ? 0 : typed.length < 8 ? 1 : 2;
  if (limit === 0) return [];
  const near: { word: string; edits: number }[] = [];
  for (const word of vocabulary) {
    if (Math.abs(word.length - typed.length) > limit) continue;
    const edits = editsWithin(typed, word, limit);
    if (edits !== null) near.push({ word, edits });
  }
  near.sort((a, b) => a.edits - b.edits || (a.word < b.word ? -1 : 1));
  return near.slice(0, NEAR_WORDS_MAX).map(({ word }) => word);
}

/** Insertions, deletions, replacements and swaps of neighbours between two words, or null when more than `limit`. */
function editsWithin(a: string, b: string, limit: number): number | null {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let edits = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) edits = Math.min(edits, before[j - 2]! + 1);
      row.push(edits);
      least = Math.min(least, edits);
    }
    if (least > limit) return null;
    before = last;
    last = row;
  }
  const edits = last[b.length]!;
  return edits <= limit ? edits : null;
}
