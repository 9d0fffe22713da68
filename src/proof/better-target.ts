/** A step to which an outcome that loses faults could lead instead, found by trying them all. */
import type { Model } from '../circuit/model.ts';
import { type Procedure, stepOf } from '../procedure/procedure.ts';
import type { Judge, JudgedWay } from './judge-ways.ts';
import { walkFault } from './walk-faults.ts';

/** Samples of each way that are tried; the trial only gives advice. */
const TRIED_SAMPLES = 4;

/**
 * The step to which `outcome` of `step` could lead so that everything that leaves by it ends rightly, or null. Where
 * another outcome of the same step leads is tried first: swapped targets are the commonest slip.
 */
export function betterTarget(
  trial: {
    readonly procedure: Procedure;
    readonly model: Model;
    readonly judge: Judge;
    readonly ways: readonly JudgedWay[];
    /** Steps that the author could name. */
    readonly targets: readonly string[];
  },
  { step: id, outcome }: { readonly step: string; readonly outcome: string | null },
): string | null {
  const { procedure, model, judge, ways, targets } = trial;
  const step = stepOf(procedure, id);
  if (step.kind === 'conclude') return null;
  const outcomes = step.kind === 'act' ? [] : step.outcomes;
  const now = step.kind === 'act' ? step.go : outcomes.find(({ name }) => name === outcome)?.go;
  const leaving = ways.filter(({ visits }) =>
    visits.some((visit) => visit.step === id && visit.outcome === outcome),
  );
  const siblings = outcomes.map(({ go }) => go).filter((go) => targets.includes(go));
  const better = [...new Set([...siblings, ...targets])].filter((target) => target !== now);
  return better.find((target) => leaving.every((way) => endsRightly(way, target))) ?? null;

  function endsRightly({ fault, samples }: JudgedWay, target: string): boolean {
    const tried = samples.filter(
      (_, index) => index % Math.ceil(samples.length / TRIED_SAMPLES) === 0,
    );
    return walkFault(procedure, model, fault, { from: target, samples: tried })
      .flatMap(judge.judge)
      .every(
        ({ verdict, end }) =>
          verdict === 'inseparable' ||
          (verdict === 'right' && judge.rightFor(fault).includes(end.step)),
      );
  }
}
