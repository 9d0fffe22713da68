/** Sentences of a conclusion about what was seen, and ways to it on which no step shows it. */
import { nextSteps } from '../procedure/check-structure.ts';
import { isRequired, isTask, type Procedure, standingConclusion } from '../procedure/procedure.ts';
import type { Issue } from '../source/issue.ts';
import { claimsOf } from './claims.ts';
import { SKIPS_MAX } from './fault-reach.ts';
import { wayWords } from './other-way-issues.ts';
import { waysWithout } from './other-ways.ts';
import type { ProofFacts } from './proof-facts.ts';
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
    for (const key of ['title', 'say', 'customer'] as const)
      for (const { said, needs, isShownBy } of claimsOf(step[key], model.circuit, step.faults)) {
        if (isShownBy === null) {
          issues.push({
            code: 'unmeasured-claim',
            severity: 'error',
            at: sourceLocation(linked, step.id, [key]),
            words: `"${step.id}" says "${said}" of what it names as the fault`,
            fix: 'say only what is wrong with it, or take the fault out of "conclude"',
          });
          continue;
        }
        const shown = new Set(tasks.filter(isShownBy).map(({ id }) => id));
        const faults = [...(arrived.get(step.id) ?? [])];
        // An end that is come to where more steps cannot be done than is followed: by the steps alone.
        const far = faults.length === 0;
        if (!canMiss(procedure, step.id, shown, far ? Number.POSITIVE_INFINITY : SKIPS_MAX))
          continue;
        const word = `${step.id} ${[...shown].join(' ')}`;
        const way = far ? null : (known.get(word) ?? without(step.id, faults, shown));
        known.set(word, way);
        if (way === null && !far) continue;
        issues.push({
          code: 'unmeasured-claim',
          severity: 'error',
          at: sourceLocation(linked, step.id, [key]),
          words: `"${step.id}" says "${said}", and a path reaches it without ${needs}`,
          fix: 'let it require the step that shows it, or state only what every path shows',
          notes: way
            ? [`one such path: ${wayWords(way)}`]
            : ["one where more than two steps can't be done"],
        });
      }
  }
  return issues;
}

/** Whether the steps alone, whatever a car shows, let a way to this end pass by all of `shown`. */
function canMiss(
  procedure: Procedure,
  end: string,
  shown: ReadonlySet<string>,
  skipsMax: number,
): boolean {
  const { steps } = procedure;
  const conclusion = steps[end];
  const canPass = (id: string) => conclusion?.kind !== 'conclude' || !isRequired(conclusion, id);
  if (comesTo(procedure, shown, skipsMax, canPass).has(end)) return true;
  // Or it stands in the place of another one.
  const others = Object.keys(steps).filter(
    (id) =>
      id !== end &&
      steps[id]?.kind === 'conclude' &&
      standingConclusion(procedure, id, (one) => one.id !== end) === end,
  );
  if (others.length === 0) return false;
  const reached = comesTo(procedure, shown, skipsMax, () => true);
  return others.some((id) => reached.has(id));
}

/** What can be come to by answers that are none of `shown`, with so many steps passed over of those that may be. */
function comesTo(
  { steps, start }: Procedure,
  shown: ReadonlySet<string>,
  skipsMax: number,
  canPass: (id: string) => boolean,
): ReadonlyMap<string, number> {
  const seen = new Map<string, number>([[start, 0]]);
  for (const [id, skips] of seen) {
    const step = steps[id];
    if (!step || step.kind === 'conclude') continue;
    const answered = shown.has(id) ? [] : nextSteps(step, { cannot: false });
    const targets = answered.map((to) => [to, skips] as const);
    if (step.cannot !== null && skips < skipsMax && canPass(id))
      targets.push([step.cannot, skips + 1]);
    for (const [to, count] of targets) {
      const before = seen.get(to);
      if (before !== undefined && before <= count) continue;
      // Set anew, so that it is looked at again.
      seen.delete(to);
      seen.set(to, count);
    }
  }
  return seen;
}
