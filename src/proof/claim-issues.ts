/** Sentences of a conclusion about what was seen, and ways to it on which no step shows it. */
import { nextSteps } from '../procedure/check-structure.ts';
import { isTask, type Procedure, standingConclusion } from '../procedure/procedure.ts';
import type { Issue } from '../source/issue.ts';
import { claimsOf } from './claims.ts';
import { wayWords } from './other-way-issues.ts';
import { SKIPS_MAX, waysWithout } from './other-ways.ts';
import type { ProofFacts } from './prove-procedure.ts';
import { sourceLocation } from './source-location.ts';

/** One finding for each sentence that some way does not bear out. `arrived`: the faults that come to an end by any way. */
export function claimIssues(
  { linked, model }: ProofFacts,
  arrived: ReadonlyMap<string, ReadonlySet<string>>,
): Issue[] {
  const { procedure } = linked;
  const without = waysWithout(procedure, model);
  const tasks = Object.values(procedure.steps).filter(isTask);
  const known = new Map<string, ReturnType<typeof without>>();
  const issues: Issue[] = [];
  for (const step of Object.values(procedure.steps)) {
    if (step.kind !== 'conclude') continue;
    for (const key of ['say', 'customer'] as const)
      for (const { said, needs, isShownBy } of claimsOf(step[key], model.circuit, step.faults)) {
        const shown = new Set(tasks.filter(isShownBy).map(({ id }) => id));
        const faults = [...(arrived.get(step.id) ?? [])];
        if (faults.length === 0 || !canMiss(procedure, step.id, shown)) continue;
        const word = `${step.id} ${[...shown].join(' ')}`;
        const way = known.get(word) ?? without(step.id, faults, shown);
        known.set(word, way);
        if (way === null) continue;
        issues.push({
          code: 'unmeasured-claim',
          severity: 'error',
          at: sourceLocation(linked, step.id, [key]),
          words: `"${step.id}" says "${said}", and a way comes to it without ${needs}`,
          fix: 'let it require the step that shows it, or say only what every way shows',
          notes: [`one such way: ${wayWords(way)}`],
        });
      }
  }
  return issues;
}

/** Whether the steps alone, whatever a car shows, let a way to this end pass by all of `shown`. */
function canMiss(procedure: Procedure, end: string, shown: ReadonlySet<string>): boolean {
  const ends = new Set(
    Object.keys(procedure.steps).filter(
      (id) =>
        procedure.steps[id]?.kind === 'conclude' &&
        (id === end || standingConclusion(procedure, id, () => true) === end),
    ),
  );
  const seen = new Map<string, number>([[procedure.start, 0]]);
  for (const [id, skips] of seen) {
    const step = procedure.steps[id];
    if (!step || step.kind === 'conclude') continue;
    const targets = shown.has(id)
      ? []
      : nextSteps(step, { cannot: false }).map((to) => [to, skips] as const);
    if (step.cannot !== null && skips < SKIPS_MAX) targets.push([step.cannot, skips + 1]);
    for (const [to, count] of targets) {
      const before = seen.get(to);
      if (before !== undefined && before <= count) continue;
      // Set anew, so that it is looked at again.
      seen.delete(to);
      seen.set(to, count);
    }
  }
  return [...ends].some((id) => seen.has(id));
}
