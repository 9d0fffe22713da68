/** "Did you mean": the known name closest to a mistyped one. */

/** Edits allowed grow with the word: one in four letters, at least one. */
const LETTERS_PER_EDIT = 4;

/** No name is longer; comparing costs the product of the lengths. */
const LETTERS_MAX = 200;

/** Names that a way out lists at most. */
const LISTED_MAX = 12;

/** The nearest of `known` within a quarter of its letters, or null. Ties go to the first. */
export function nearestName(typed: string, known: readonly string[]): string | null {
  if (typed.length > LETTERS_MAX) return null;
  const limit = Math.max(1, Math.ceil(typed.length / LETTERS_PER_EDIT));
  let best: string | null = null;
  let bestEdits = limit + 1;
  for (const name of known) {
    const edits = editDistance(typed.toLowerCase(), name.toLowerCase());
    if (edits < bestEdits) {
      best = name;
      bestEdits = edits;
    }
  }
  return best;
}

/** The way out of a name that is not known: the nearest, else those that begin with the same segments, else all. */
export function nameFix(typed: string, known: readonly string[]): string {
  const near = nearestName(typed, known);
  if (near !== null) return `did you mean "${near}"?`;
  const segments = typed.split('.');
  for (let count = segments.length - 1; count > 0; count -= 1) {
    const head = `${segments.slice(0, count).join('.')}.`;
    const related = known.filter((name) => name.startsWith(head));
    if (related.length > 0) return `there is: "${head}*": ${listed(related)}`;
  }
  if (known.length <= LISTED_MAX) return `one of: ${listed(known)}`;
  const heads = new Set(known.map((name) => `${name.slice(0, name.indexOf('.') + 1)}*`));
  return `they begin with: ${listed([...heads])}`;
}

function listed(names: readonly string[]): string {
  const more = names.length > LISTED_MAX ? ', ...' : '';
  return `${names.slice(0, LISTED_MAX).join(', ')}${more}`;
}

/** Number of single-letter insertions, removals, changes and neighbour swaps (Damerau 1964, restricted form). */
export function editDistance(a: string, b: string): number {
  const rows = Array.from({ length: a.length + 1 }, (_, i) => [i, ...Array(b.length).fill(0)]);
  for (let j = 1; j <= b.length; j += 1) rows[0]![j] = j;
  for (let i = 1; i <= a.length; i += 1) {
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let edits = Math.min(rows[i - 1]![j] + 1, rows[i]![j - 1] + 1, rows[i - 1]![j - 1] + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        edits = Math.min(edits, rows[i - 2]![j - 2] + 1);
      rows[i]![j] = edits;
    }
  }
  return rows[a.length]![b.length];
}
