/** The score of a drill: four parts that sum to 100, each with its reason. Every number here is explained in docs/drills.md. */
import { EVIDENCE_NEEDED } from '../suspects/corroborate.ts';
import type { ScorePart } from './drill-events.ts';

export interface ScoreFacts {
  readonly right: boolean;
  /** Repairs named that are needed, repairs needed, repairs named. */
  readonly hits: number;
  readonly needed: number;
  readonly named: number;
  /** Independent pieces of evidence among the readings. */
  readonly evidence: number;
  readonly minutes: number;
  readonly yardstickMinutes: number;
  readonly late: boolean;
  readonly readings: number;
  /** Dangerous tests that the bench stopped; cautions that were passed over. */
  readonly stopped: number;
  readonly passedOver: number;
}

/** Being right is what the customer pays for. */
export const DIAGNOSIS_POINTS = 40;
/** Knowing that one is right. */
export const EVIDENCE_POINTS = 25;
/** Being quick about it. */
export const TIME_POINTS = 20;
/** Nobody hurt, nothing broken. */
export const SAFETY_POINTS = 15;
/** Up to this many times the yardstick's minutes all points for time: three independent proofs take longer than the shortest way. */
export const TIME_FULL = 1.5;
/** From this many times on, none. */
const TIME_NONE = 4;
/** A test that would have done damage; two of them leave nothing of the safety points. */
const STOPPED_COST = 8;
/** A test asked for before its cautions were acknowledged. */
const PASSED_OVER_COST = 3;

/** The parts of the score. */
export function scoreDrill(facts: ScoreFacts): ScorePart[] {
  return [diagnosisPart(facts), evidencePart(facts), timePart(facts), safetyPart(facts)];
}

/** Their sum, 0 to 100. */
export function pointsOf(parts: readonly ScorePart[]): number {
  return parts.reduce((sum, { points }) => sum + points, 0);
}

function diagnosisPart({ right, hits, needed, named }: ScoreFacts): ScorePart {
  const part = { name: 'diagnosis', most: DIAGNOSIS_POINTS } as const;
  if (right) return { ...part, points: DIAGNOSIS_POINTS, why: 'the right repair' };
  if (named === 0) return { ...part, points: 0, why: 'given up: no repair was named' };
  if (hits === 0) return { ...part, points: 0, why: 'the wrong repair' };
  const points = Math.round((DIAGNOSIS_POINTS * hits) / Math.max(needed, named));
  return { ...part, points, why: `${hits} of ${needed} repairs right` };
}

function evidencePart({ right, evidence, named }: ScoreFacts): ScorePart {
  const part = { name: 'evidence', most: EVIDENCE_POINTS } as const;
  if (named === 0) return { ...part, points: 0, why: 'given up: there is no diagnosis to prove' };
  if (!right) return { ...part, points: 0, why: 'a wrong diagnosis has no proof' };
  const counted = Math.min(evidence, EVIDENCE_NEEDED);
  const points = Math.round((EVIDENCE_POINTS * counted) / EVIDENCE_NEEDED);
  return {
    ...part,
    points,
    why: `independent readings for it: ${evidence}; ${EVIDENCE_NEEDED} make it proven`,
  };
}

function timePart(facts: ScoreFacts): ScorePart {
  const { right, evidence, minutes, named, yardstickMinutes, late } = facts;
  const part = { name: 'time', most: TIME_POINTS } as const;
  if (named === 0) return { ...part, points: 0, why: 'given up: there is no diagnosis to time' };
  if (!right) return { ...part, points: 0, why: 'a wrong diagnosis is never quick' };
  if (late) return { ...part, points: 0, why: 'over the time limit of the assignment' };
  if (evidence === 0) return { ...part, points: 0, why: 'a guess is not quick, it is a guess' };
  const times = minutes / Math.max(yardstickMinutes, 1);
  const share = Math.max(0, Math.min(1, (TIME_NONE - times) / (TIME_NONE - TIME_FULL)));
  const proved = Math.min(evidence, EVIDENCE_NEEDED) / EVIDENCE_NEEDED;
  const points = Math.round(TIME_POINTS * share * proved);
  return {
    ...part,
    points,
    why: `${round(minutes)} min, the best plan ${round(yardstickMinutes)} min; counted for ${Math.min(evidence, EVIDENCE_NEEDED)} of ${EVIDENCE_NEEDED} proofs`,
  };
}

function safetyPart({ readings, stopped, passedOver }: ScoreFacts): ScorePart {
  const part = { name: 'safety', most: SAFETY_POINTS } as const;
  if (readings === 0 && stopped === 0)
    return { ...part, points: 0, why: 'nothing was measured, so nothing was done safely' };
  const points = Math.max(
    0,
    SAFETY_POINTS - STOPPED_COST * stopped - PASSED_OVER_COST * passedOver,
  );
  const why =
    stopped + passedOver === 0
      ? 'no dangerous test, every caution acknowledged'
      : `dangerous tests stopped by the bench: ${stopped}; cautions passed over: ${passedOver}`;
  return { ...part, points, why };
}

function round(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
