/** Cautions under a NOTICE, which is for damage to things, that warn of what hurts people (ANSI Z535.4, second hand). */
import type { Hazard } from '../../procedure/procedure.ts';
import type { Issue } from '../../source/issue.ts';
import type { CheckedFile } from './checked-file.ts';

/** What breaks things only; of "other" nobody but its author knows. */
const OF_THINGS: ReadonlySet<Hazard> = new Set([
  'module-damage',
  'instrument-damage',
  'harness-damage',
  'engine-damage',
  'starter-heat',
  'other',
]);

/** A warning at each, with the hazard that asks for more. One under a shipped name is no weaker than the shipped one. */
export function quietCautions(files: readonly CheckedFile[]): Issue[] {
  const shippedNames = new Set(
    files.flatMap(({ loaded, shipped }) =>
      shipped && loaded?.kind === 'cautions' ? loaded.value.rules.map(({ id }) => id) : [],
    ),
  );
  return files.flatMap(({ loaded, shipped }) => {
    if (loaded?.kind !== 'cautions') return [];
    const { rules, source } = loaded.value;
    return rules.flatMap(({ id, word, hazards }) => {
      const ofPeople = hazards.find((hazard) => !OF_THINGS.has(hazard));
      if (word !== 'NOTICE' || ofPeople === undefined) return [];
      if (!shipped && shippedNames.has(id)) return [];
      return [
        {
          code: 'notice-for-people' as const,
          severity: 'warning' as const,
          at: source.locate(['cautions', id, 'word'], 'value'),
          words: `"${id}" is a NOTICE, which is for damage to things, and ${ofPeople.replace(/-/g, ' ')} can hurt somebody`,
          fix: 'write CAUTION where it could hurt a little, WARNING where badly',
        },
      ];
    });
  });
}
