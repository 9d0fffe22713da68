/** Cautions of one's own that nobody would ever read: named by no step, with no state and no occasion that brings them. */
import type { Issue } from '../../source/issue.ts';
import type { CheckedFile } from './checked-file.ts';

/** What a tree has and no other file, also where its YAML cannot be read. */
const STEPS = /^steps *:/m;

/**
 * A warning at each. The shipped names are passed over, since the program asks for some of them itself; so is everything
 * while a tree is among them that cannot be read, and may name one.
 */
export function unshownCautions(files: readonly CheckedFile[]): Issue[] {
  if (files.some(isLostTree)) return [];
  const shownAnyway = new Set<string>();
  for (const { loaded, shipped } of files) {
    if (loaded?.kind === 'procedure')
      for (const { cautions = [] } of Object.values(loaded.value.draft.steps))
        for (const name of cautions) shownAnyway.add(name);
    if (loaded?.kind === 'cautions' && shipped)
      for (const { id } of loaded.value.rules) shownAnyway.add(id);
  }
  return files.flatMap(({ loaded, shipped }) => {
    if (loaded?.kind !== 'cautions' || shipped) return [];
    const { rules, source } = loaded.value;
    return rules
      .filter(({ id, states, when }) => states.length + when.length === 0 && !shownAnyway.has(id))
      .map(({ id, drives }) => ({
        code: 'caution-never-shown',
        severity: 'warning',
        at: source.locate(['cautions', id], 'key'),
        words: `no step names "${id}", and no state or occasion brings it, so nobody reads it${drives.length > 0 ? '; a drive alone brings none' : ''}`,
        fix: `add "states" or "when" to it, or name it in the "cautions" of a step`,
      }));
  });
}

/** A tree that cannot be read at all. */
export function isLostTree({ kind, loaded, text }: CheckedFile): boolean {
  return loaded === null && (kind === 'procedure' || (kind === null && STEPS.test(text)));
}
