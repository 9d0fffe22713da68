/**
 * Where one signal stands in the turn of the other, against what the papers state or a known-good capture shows. Found
 * from what the event keeps, so that it can be found again from the file alone.
 */
import { lookWords } from '../circuit/look-words.ts';
import type { Look } from '../circuit/test.ts';
import type { Problem } from '../source/problem.ts';
import { PHASE_DEGREES_MOST, phaseShift } from '../waveform/compare-captures.ts';
import { readStatedEdges, STATED_FORM, statedShift } from '../waveform/stated-edges.ts';
import type { CaptureAgainst, CapturedPhase, KnownGood, StepCapture } from './events.ts';
import { keptNumber } from './kept-finding.ts';

/** Degrees by which the signal comes late, below zero early; a problem where none can be told. */
export function positionShift(
  capture: Pick<StepCapture, 'phases' | 'channel' | 'channels'>,
  against: CaptureAgainst,
): number | Problem {
  const phase = phaseOf(capture);
  if (!phase) return NO_PHASE;
  if (against.kind === 'stated') {
    const stated = readStatedEdges(against.typed);
    if (!stated) return NOT_UNDERSTOOD;
    const shift = statedShift(phase, stated);
    return shift === null ? notTheSame('the stated edges') : keptNumber(shift);
  }
  const good = phaseOf(against);
  if (!good)
    return {
      problem: 'the known-good capture does not show both signals over the same turns',
      fix: 'choose one with both channels of the same crank',
    };
  const shift = phaseShift(phase, good);
  return shift === null ? notTheSame('the known-good capture') : keptNumber(shift);
}

/** The look of a shift, by the limit that was stated, else by the usual one. */
export function positionLook(shift: number, against: CaptureAgainst): Look {
  return Math.abs(shift) > limitOf(against) ? 'shifted' : 'in-step';
}

/** `camshaft stands 24.0 degrees late against crankshaft; 5 are allowed`. Names come from files. */
export function positionWords(
  capture: Pick<StepCapture, 'phases' | 'channel' | 'channels'>,
  shift: number,
  against: CaptureAgainst,
): string {
  const phase = phaseOf(capture);
  const name = (number: number) => capture.channels[number - 1]?.name ?? `channel ${number}`;
  const way = Math.abs(shift) < 0.05 ? 'where it should' : lateWords(shift);
  const of = phase
    ? `${name(phase.channel)} stands ${way} in the turn of ${name(phase.reference)}`
    : way;
  return `${of}; ${limitOf(against)} are allowed`;
}

/** What was seen, with the degrees where a capture gave them: `shifted from the known-good one, 18.0 degrees late`. */
export function seenWords(
  look: Look,
  capture: Pick<StepCapture, 'shiftDegrees'> | undefined,
): string {
  const shift = capture?.shiftDegrees;
  return shift === undefined || Math.abs(shift) < 0.05
    ? lookWords(look)
    : `${lookWords(look)}, ${lateWords(shift)}`;
}

function lateWords(shift: number): string {
  return `${Math.abs(shift).toFixed(1)} degrees ${shift > 0 ? 'late' : 'early'}`;
}

/** What a capture was held against, in words without the name of a file. */
export function againstWords(against: CaptureAgainst): string {
  return against.kind === 'stated' ? `what is stated: ${against.typed}` : 'a known-good capture';
}

function limitOf(against: CaptureAgainst): number {
  const stated = against.kind === 'stated' ? readStatedEdges(against.typed) : null;
  return stated?.withinDegrees ?? PHASE_DEGREES_MOST;
}

/** The pair that the judged channel belongs to; null where it turns with no other, or was kept in words only. */
export function phaseOf({
  phases = [],
  channel = 1,
}: Pick<KnownGood, 'phases' | 'channel'>): CapturedPhase | null {
  const pairs = phases.filter((one): one is CapturedPhase => !('said' in one));
  return (
    pairs.find((one) => one.channel === channel) ??
    pairs.find((one) => one.reference === channel) ??
    null
  );
}

const NO_PHASE: Problem = {
  problem: 'no full turn of one signal can be found in the other',
  fix: 'capture both signals over at least three crankshaft turns, with both leads connected',
};
const NOT_UNDERSTOOD: Problem = {
  problem: 'these degrees are not understood',
  fix: `write them as "${STATED_FORM}"`,
};

function notTheSame(what: string): Problem {
  return {
    problem: `the edges are not those of ${what}: they differ in number or in their distances`,
    fix: 'check that both show the same two signals on the same type of engine',
  };
}
