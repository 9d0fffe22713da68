/** What is wrong with a linked tree as a whole: steps nobody comes to, loops nobody leaves, cautions that are missing. */
import type { Issue } from '../source/issue.ts';
import { uncoveredHazards } from './cautions.ts';
import type { LinkedProcedure } from './link-procedure.ts';
import { isTask, type Procedure, type Step } from './procedure.ts';

/** Issues at the place of the step each belongs to. */
export function checkStructure({ procedure, places }: LinkedProcedure): Issue[] {
  const issues: Issue[] = [];
  const add = (
    id: string,
    code: string,
    severity: Issue['severity'],
    words: string,
    fix: string,
  ) => {
    const place = places.get(id);
    if (!place) return;
    const at = place.source.locate(place.path, 'key');
    const same = issues.some(
      (one) => one.code === code && one.at.file === at.file && one.at.line === at.line,
    );
    if (!same) issues.push({ code, severity, at, words, fix });
  };
  const reached = reachable(procedure);
  const leaving = stepsThatEnd(procedure);
  for (const step of Object.values(procedure.steps)) {
    if (!reached.has(step.id)) {
      if (!step.id.includes('/'))
        add(
          step.id,
          'unreachable-step',
          'warning',
          `nothing leads to "${step.id}"`,
          'let an outcome go there, or remove it',
        );
      continue;
    }
    if (!leaving.has(step.id))
      add(
        step.id,
        'endless-loop',
        'error',
        `from "${step.id}" no way leads to a conclusion`,
        'let one outcome lead out',
      );
    if (isTask(step)) {
      for (const hazard of uncoveredHazards(step.setup.state, step.cautions))
        add(
          step.id,
          'missing-caution',
          'error',
          `a step in ${step.setup.state} needs a caution on ${hazard.replace(/-/g, ' ')}`,
          'add one to cautions.yaml for this vehicle state',
        );
      if (
        step.kind !== 'act' &&
        step.outcomes.length > 1 &&
        new Set(step.outcomes.map(({ go }) => go)).size === 1
      )
        add(
          step.id,
          'same-target',
          'warning',
          `whatever comes out of "${step.id}", it leads to "${step.outcomes[0]!.go}"`,
          'let its outcomes part, or make it a step that is only done, with "go"',
        );
      if (step.why === '' && step.kind !== 'act')
        add(
          step.id,
          'missing-why',
          'warning',
          `"${step.id}" does not say what its result tells`,
          'add the key "why"',
        );
    } else {
      if (step.faults.length > 0 && step.retest.length === 0)
        add(
          step.id,
          'missing-retest',
          'warning',
          `"${step.id}" names no step that must pass after the repair`,
          'add the key "retest"',
        );
      for (const target of step.retest) {
        const wanted = procedure.steps[target];
        if (wanted?.kind !== 'measure' && wanted?.kind !== 'look')
          add(
            step.id,
            'bad-retest',
            'error',
            `"${target}" cannot be repeated as a retest`,
            'name a step that reads something',
          );
      }
    }
  }
  return issues;
}

/** Steps that follow a step; without its `cannot` when only readings count. */
export function nextSteps(
  step: Step,
  { cannot = true }: { readonly cannot?: boolean } = {},
): string[] {
  if (step.kind === 'conclude') return [];
  const beside = step.cannot === null || !cannot ? [] : [step.cannot];
  if (step.kind === 'act') return [step.go, ...beside];
  return [...step.outcomes.map((outcome) => outcome.go), ...beside];
}

function reachable(procedure: Procedure): Set<string> {
  const found = new Set([procedure.start]);
  for (const id of found) {
    const step = procedure.steps[id];
    for (const next of step ? nextSteps(step) : []) found.add(next);
  }
  return found;
}

/** Steps from which some way leads to a conclusion, found backwards. */
function stepsThatEnd(procedure: Procedure): Set<string> {
  const before = new Map<string, string[]>();
  for (const step of Object.values(procedure.steps)) {
    for (const next of nextSteps(step)) before.set(next, [...(before.get(next) ?? []), step.id]);
  }
  const ends = Object.values(procedure.steps).filter((step) => step.kind === 'conclude');
  const found = new Set(ends.map((step) => step.id));
  for (const id of found) {
    for (const earlier of before.get(id) ?? []) found.add(earlier);
  }
  return found;
}
