/** Which ways end rightly, which wrongly, and at which decision a wrong one was lost. */
import type { Circuit } from '../circuit/circuit.ts';
import { nextSteps } from '../procedure/check-structure.ts';
import { type Conclusion, type Procedure, stepOf } from '../procedure/procedure.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { DiscriminatingTests } from './discriminating-tests.ts';
import type { ProofVisit, TreeWay } from './walk-faults.ts';

/** A way and how it ended for the fault that took it. */
export interface JudgedWay extends TreeWay {
  readonly verdict: /** At a conclusion that stands for the fault, or for one with the same repair. */
    | 'right'
    /** At "no fault found", with a fault that no instrument can tell from a healthy circuit. */
    | 'inseparable'
    /** At "no fault found", with a fault that some standard test shows. */
    | 'missed'
    /** At a conclusion that stands for other repairs. */
    | 'wrong'
    | 'dead-end'
    | 'endless';
  /**
   * For a way that ended wrongly: the last step from which a right conclusion could still be come to. The last step of
   * all when nothing leads to a right one; null when there is none.
   */
  readonly lostAt: ProofVisit | null;
}

/** Judges the ends of one tree by the repairs that they lead to. */
export interface Judge {
  readonly judge: (way: TreeWay) => JudgedWay[];
  /** Conclusions that are right for a fault: those that name it, or else those that name one with the same repair. */
  readonly rightFor: (fault: string) => readonly string[];
  /** Whether a conclusion stands for a fault, or for one with the same repair. */
  readonly standsFor: (end: string, fault: string) => boolean;
  /** Whether a conclusion says that no fault was found. */
  readonly saysNothingFound: (end: string) => boolean;
}

/** A judge of the ways through a tree. One way can become two: samples that any test exposes, and those that none does. */
export function judgeOf(
  procedure: Procedure,
  circuit: Circuit,
  discriminating: DiscriminatingTests,
): Judge {
  const repairs = new Map(circuit.faults.map(({ id, repair }) => [id, repair]));
  const conclusions = Object.values(procedure.steps).filter(
    (step): step is Conclusion => step.kind === 'conclude',
  );
  const readTo = new Set(
    Object.values(procedure.steps).flatMap((step) =>
      step.kind === 'measure' || step.kind === 'look' ? step.outcomes.map(({ go }) => go) : [],
    ),
  );
  /** What names every fault, and is come to by no reading, claims none: right for all, and an advice for nobody. */
  const leavesOpen = ({ id, faults }: Conclusion) =>
    faults.length === circuit.faults.length && !readTo.has(id);
  const stands = (step: Conclusion, fault: string): boolean =>
    fault === HEALTHY
      ? step.faults.length === 0 || leavesOpen(step)
      : step.faults.some((id) => repairs.get(id) === repairs.get(fault));
  const telling = conclusions.filter((step) => !leavesOpen(step));
  const right = (fault: string) =>
    telling.filter((step) => stands(step, fault)).map(({ id }) => id);
  const rightFor = (fault: string) => {
    const naming = telling.filter(({ faults }) => faults.includes(fault)).map(({ id }) => id);
    return naming.length > 0 ? naming : right(fault);
  };
  const reach = reachOf(procedure);
  const judge = (way: TreeWay): JudgedWay[] => {
    if (way.end.kind !== 'concluded')
      return [{ ...way, verdict: way.end.kind, lostAt: way.visits[way.visits.length - 1] ?? null }];
    const conclusion = stepOf(procedure, way.end.step) as Conclusion;
    if (stands(conclusion, way.fault)) return [{ ...way, verdict: 'right', lostAt: null }];
    const wanted = rightFor(way.fault);
    const last = wanted.length > 0 ? way.visits.at(-1) : undefined;
    const lostAt =
      way.visits.findLast(({ step }) => wanted.some((id) => reach(step).has(id))) ?? last ?? null;
    if (conclusion.faults.length > 0) return [{ ...way, verdict: 'wrong', lostAt }];
    const seen: number[] = [];
    const unseen: number[] = [];
    for (const sample of way.samples)
      (discriminating.detects(way.fault, sample) ? seen : unseen).push(sample);
    const part = (samples: readonly number[], verdict: JudgedWay['verdict']): JudgedWay[] =>
      samples.length === 0
        ? []
        : [
            {
              ...way,
              samples,
              share: (way.share * samples.length) / way.samples.length,
              verdict,
              lostAt,
            },
          ];
    return [...part(seen, 'missed'), ...part(unseen, 'inseparable')];
  };
  const conclusionOf = (end: string) => stepOf(procedure, end) as Conclusion;
  return {
    judge,
    rightFor,
    standsFor: (end, fault) => stands(conclusionOf(end), fault),
    saysNothingFound: (end) => conclusionOf(end).faults.length === 0,
  };
}

/** Steps that can be come to from a step by readings (not by "cannot"), itself included. */
function reachOf(procedure: Procedure): (id: string) => ReadonlySet<string> {
  const known = new Map<string, ReadonlySet<string>>();
  return (id) => {
    const found = known.get(id);
    if (found) return found;
    const all = new Set([id]);
    for (const one of all)
      for (const next of nextSteps(stepOf(procedure, one), { cannot: false })) all.add(next);
    known.set(id, all);
    return all;
  };
}
