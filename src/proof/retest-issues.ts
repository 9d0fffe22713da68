/** Retests that pass even when nothing was repaired. */
import { stepOf } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { ProofFacts } from './proof-facts.ts';
import { listed, quoted } from './proof-words.ts';
import { sourceLocation } from './source-location.ts';
import { outcomeOf } from './walk-faults.ts';

/** A retest must fail in at least this share of the samples of a fault while it is still there. Our choice. */
const CAUGHT_SHARE_MIN = 0.5;

/** One issue for each conclusion whose retests would not notice that a fault which ends there is still there. */
export function retestIssues({ linked, model, ways }: ProofFacts): Issue[] {
  return Object.values(linked.procedure.steps).flatMap((step): Issue[] => {
    if (step.kind !== 'conclude' || step.retest.length === 0) return [];
    const arrived = new Set(
      ways
        .filter(({ verdict, end }) => verdict === 'right' && end.step === step.id)
        .map(({ fault }) => fault),
    );
    const blind = [...arrived].filter((fault) => fault !== HEALTHY && !caught(fault, step.retest));
    if (blind.length === 0) return [];
    return [
      {
        code: 'blind-retest',
        severity: 'warning',
        at: sourceLocation(linked, step.id, ['retest']),
        words: `with ${listed(blind)} still there, ${quoted(step.retest, 'and')} would still pass`,
        fix: 'name the step that failed on the path here',
      },
    ];
  });

  /** Whether in most samples some retest leaves by an outcome that the healthy circuit doesn't leave by. */
  function caught(fault: string, retests: readonly string[]): boolean {
    let count = 0;
    for (let sample = 0; sample < model.samples; sample += 1)
      if (retests.some((id) => differs(id, fault, sample))) count += 1;
    return count >= CAUGHT_SHARE_MIN * model.samples;
  }

  function differs(id: string, fault: string, sample: number): boolean {
    const step = stepOf(linked.procedure, id);
    const test = testOf(step);
    if (!test || (step.kind !== 'measure' && step.kind !== 'look')) return false;
    const now = outcomeOf(step, model.shows(fault, test, sample));
    return now !== outcomeOf(step, model.shows(HEALTHY, test, sample, fault));
  }
}
