/** The score of a drill: four parts that sum to 100, and a cap where somebody would have been hurt. Every number here is explained in docs/drills.md. */
import type { ScorePart } from '../session/events.ts';
import { EVIDENCE_NEEDED } from '../suspects/corroborate.ts';

/** What a finished drill is scored by. */
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
/** What a drill with a dangerous test is worth at most: who was right and would have burnt out a module has not done well. */
export const DANGER_MOST = 50;
/** A test asked for before its cautions were acknowledged. */
const PASSED_OVER_COST = 3;

/** The parts of the score; `danger` takes away what a dangerous test does not leave, and is only there when it does. */
export function scoreDrill(facts: ScoreFacts): ScorePart[] {
  const parts = uncapped(facts);
  const over = facts.stopped > 0 ? pointsOf(parts) - DANGER_MOST : 0;
  return over > 0 ? [...parts, { name: 'danger', most: 0, points: -over }] : parts;
}

function uncapped(facts: ScoreFacts): ScorePart[] {
  return [
    { name: 'diagnosis', most: DIAGNOSIS_POINTS, points: diagnosisPoints(facts) },
    { name: 'evidence', most: EVIDENCE_POINTS, points: evidencePoints(facts) },
    { name: 'time', most: TIME_POINTS, points: timePoints(facts) },
    { name: 'safety', most: SAFETY_POINTS, points: safetyPoints(facts) },
  ];
}

/** Their sum, 0 to 100. */
export function pointsOf(parts: readonly ScorePart[]): number {
  return parts.reduce((sum, { points }) => sum + points, 0);
}

/** Why a part has its points, in words without a full stop. */
export function scoreWords({ name }: Pick<ScorePart, 'name'>, facts: ScoreFacts): string {
  switch (name) {
    case 'diagnosis':
      return diagnosisWords(facts);
    case 'evidence':
      return evidenceWords(facts);
    case 'time':
      return timeWords(facts);
    case 'safety':
      return safetyWords(facts);
    case 'danger':
      return `${facts.stopped > 1 ? `${facts.stopped} tests` : 'a test'} that would have hurt someone or the vehicle: ${DANGER_MOST} points at most`;
  }
}

function diagnosisPoints({ right, hits, needed, named }: ScoreFacts): number {
  if (right) return DIAGNOSIS_POINTS;
  return named === 0 ? 0 : Math.round((DIAGNOSIS_POINTS * hits) / Math.max(needed, named));
}

function diagnosisWords({ right, hits, needed, named }: ScoreFacts): string {
  if (right) return 'the right repair';
  if (named === 0) return 'given up: no repair was named';
  return hits === 0 ? 'the wrong repair' : `${hits} of ${needed} repairs right`;
}

/** Pieces that count, at most as many as make it proven. */
function countedOf({ evidence }: ScoreFacts): number {
  return Math.min(evidence, EVIDENCE_NEEDED);
}

function evidencePoints(facts: ScoreFacts): number {
  if (!facts.right) return 0;
  return Math.round((EVIDENCE_POINTS * countedOf(facts)) / EVIDENCE_NEEDED);
}

function evidenceWords({ right, evidence, named }: ScoreFacts): string {
  if (named === 0) return 'given up: there is no diagnosis to prove';
  if (!right) return 'a wrong diagnosis has no proof';
  return `independent readings for it: ${evidence}; ${EVIDENCE_NEEDED} prove it`;
}

function timePoints(facts: ScoreFacts): number {
  const { right, minutes, yardstickMinutes, late } = facts;
  if (!right || late) return 0;
  const times = minutes / Math.max(yardstickMinutes, 1);
  const share = Math.max(0, Math.min(1, (TIME_NONE - times) / (TIME_NONE - TIME_FULL)));
  return Math.round((TIME_POINTS * share * countedOf(facts)) / EVIDENCE_NEEDED);
}

function timeWords(facts: ScoreFacts): string {
  const { right, evidence, minutes, named, yardstickMinutes, late } = facts;
  if (named === 0) return 'given up: there is no diagnosis to time';
  if (!right) return 'a wrong diagnosis scores no time';
  if (late) return 'over the time limit of the assignment';
  if (evidence === 0) return 'a guess scores no time';
  return `${round(minutes)} min, the best plan ${round(yardstickMinutes)} min; counted for ${countedOf(facts)} of ${EVIDENCE_NEEDED} proofs`;
}

function safetyPoints({ readings, stopped, passedOver }: ScoreFacts): number {
  if (readings === 0 && stopped === 0) return 0;
  return Math.max(0, SAFETY_POINTS - STOPPED_COST * stopped - PASSED_OVER_COST * passedOver);
}

function safetyWords({ readings, stopped, passedOver }: ScoreFacts): string {
  if (readings === 0 && stopped === 0) return 'nothing was measured, so no safety points';
  return stopped + passedOver === 0
    ? 'no dangerous test, every caution acknowledged'
    : `dangerous tests stopped by the bench: ${stopped}; cautions skipped: ${passedOver}`;
}

function round(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
