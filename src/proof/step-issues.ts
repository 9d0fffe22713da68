/** Steps that tell nothing apart, and branches that nothing ever comes to. */

import { nextSteps } from '../procedure/check-structure.ts';
import { type MeasureStep, type Step, stepOf } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { ProofFacts } from './proof-facts.ts';
import { outcomeForAuthor, outcomeLocation, sourceLocation } from './source-location.ts';

/** Issues of the steps that are walked through. */
export function stepIssues(facts: ProofFacts): Issue[] {
  const { linked, model } = facts;
  const repairs = new Map(model.circuit.faults.map(({ id, repair }) => [id, repair]));
  const left = new Map<string, Map<string, Set<string>>>();
  const came = new Set<string>();
  for (const { visits, end, fault } of facts.ways) {
    came.add(end.step);
    for (const { step, outcome } of visits) {
      came.add(step);
      const outcomes = left.get(step) ?? new Map<string, Set<string>>();
      left.set(step, outcomes);
      const there = outcomes.get(outcome ?? '') ?? new Set<string>();
      outcomes.set(outcome ?? '', there);
      there.add(fault === HEALTHY ? HEALTHY : repairs.get(fault)!);
    }
  }
  const issues: Issue[] = [];
  for (const [id, outcomes] of left) {
    const step = stepOf(linked.procedure, id);
    if (testOf(step) === null || readsTheBattery(step)) continue;
    const [only, ...others] = [...outcomes];
    if (!only || others.length > 0 || only[1].size < 2 || targetsOf(step).size < 2) continue;
    issues.push({
      code: 'separates-nothing',
      severity: 'warning',
      at: sourceLocation(linked, id),
      words: `everything that reaches "${id}", ${only[1].size} repairs, leaves it by "${only[0]}": it tells nothing apart`,
      fix: 'look at the leads, the state and what is unplugged, or leave the step out',
    });
  }
  return [...issues, ...neverReached(facts, came)];
}

/** Outcomes of walked steps whose branch is come to by no fault at all, through this outcome or any other. */
function neverReached({ linked }: ProofFacts, came: ReadonlySet<string>): Issue[] {
  const { steps } = linked.procedure;
  const excused = excusedSteps(linked.procedure.steps, came);
  const issues: Issue[] = [];
  for (const id of came) {
    const step = stepOf(linked.procedure, id);
    if (step.kind !== 'measure' && step.kind !== 'look') continue;
    for (const { name, go } of step.outcomes) {
      if (came.has(go) || excused.has(go) || !steps[go]) continue;
      issues.push({
        code: 'never-reached',
        severity: 'warning',
        at: outcomeLocation(linked, id, name),
        words: `no fault and no healthy circuit ever shows ${outcomeForAuthor(linked, id, name)}, so nothing reaches "${go}"`,
        fix: 'look at the limits and the leads, or lead this outcome to a step that is needed anyway',
      });
    }
  }
  return issues;
}

/** What a person comes to who cannot do a step, or who answers a question otherwise than a usual vehicle. */
function excusedSteps(
  steps: Readonly<Record<string, Step>>,
  came: ReadonlySet<string>,
): Set<string> {
  const found = new Set<string>();
  for (const id of came) {
    const step = steps[id];
    if (!step || step.kind === 'conclude') continue;
    if (step.cannot !== null) found.add(step.cannot);
    if (
      step.kind === 'ask' ||
      (step.kind === 'measure' && step.probe === null) ||
      readsTheBattery(step)
    )
      for (const { go } of step.outcomes) found.add(go);
  }
  for (const id of found) {
    const step = steps[id];
    for (const next of step ? nextSteps(step) : []) found.add(next);
  }
  return found;
}

/** The battery's own volts tell the car and no fault: they are the measure of what is read later. */
function readsTheBattery(step: Step): step is MeasureStep {
  return (
    step.kind === 'measure' &&
    step.probe?.kind === 'volts' &&
    step.probe.plus === 'battery.positive' &&
    step.probe.minus === 'battery.negative'
  );
}

function targetsOf(step: Step): Set<string> {
  return new Set(nextSteps(step, { cannot: false }));
}
