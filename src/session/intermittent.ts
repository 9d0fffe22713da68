/**
 * A fault that comes and goes. A good reading rules out a fault that stays; of one that is not there at the moment it
 * says little. So where the code or the person speaks of such a fault, each suspect is weighed twice: as one that stays,
 * and as one that shows to the eyes, to who moves the harness or warms the sensor, and now and then by itself. How often
 * by itself is a value of the car that nobody knows beforehand, as others are.
 */
import type { Circuit } from '../circuit/circuit.ts';
import type { Shown } from '../circuit/test.ts';
import type { CodeKind } from '../identify/describe-code.ts';
import {
  type AskOutcome,
  type AskStep,
  type Procedure,
  type Step,
  stepOf,
  WAKING,
  wokenBy,
} from '../procedure/procedure.ts';
import type { Candidate, TableTest } from '../suspects/prediction-table.ts';
import { codeKindsOf } from './code-answer.ts';
import type { Answer } from './events.ts';
import { type Session, standingAnswers } from './session.ts';
import { toldIntermittent } from './told.ts';

/** Share of the weight of those that come and go, where somebody speaks of one; it may be one that stays after all. Ours. */
const INTERMITTENT_SHARE = 0.8;
/** Share of the faults that come and go which hands can wake; the others show on no day when they are looked for. Ours; no count is known. */
export const WILLING_SHARE = 0.6;
/** One that can be woken comes at the right movement with this chance, and at the next as well. Ours. */
export const WOKEN_CHANCE = 0.9;
/** What moves one place shakes the next one: a fault there comes as well, and is put down to the wrong place. Ours. */
const BESIDE_CHANCE = 0.05;
/** Share of a drill's readings in which a fault that comes and goes is there by itself. Our choice. */
export const PRESENT_CHANCE = 0.5;
/** On a real vehicle at most, ... */
const PRESENT_MOST = 0.6;
/** ... and this power of an even chance from 0 to 1 makes most of them rare: 0.2 in the mean. Ours; no count is known. */
const PRESENT_POWER = 2;

/** How faults come and go. */
export interface IntermittentSuspects {
  /** Share of the weight of those that do, where somebody speaks of one; it may be one that stays after all. */
  readonly share: number;
  /** Share of those that hands can wake. */
  readonly willing: number;
  /** Chance that one of those is there when an instrument is read while the harness is moved. */
  readonly moved: number;
  /** Share of readings in which a fault is there by itself; null where it is unknown, from car to car as `presentAt` has it. */
  readonly present: number | null;
}
/** On a real vehicle. */
export const ON_THE_ROAD: IntermittentSuspects = {
  share: INTERMITTENT_SHARE,
  willing: WILLING_SHARE,
  moved: WOKEN_CHANCE,
  present: null,
};
/** On a drill of the level with such a fault, as its vehicle is made. */
export const ON_A_DRILL: IntermittentSuspects = {
  share: 1,
  willing: 1,
  moved: 1,
  present: PRESENT_CHANCE,
};
/** A module calls a fault that comes and goes intermittent with this chance, whatever it is like while it is there. Ours. */
const CALLED_INTERMITTENT = 0.8;
/** Behind the id of a fault that comes and goes, twice where no hand wakes it; ids of faults have none. */
const MARK = '~';

/** A place that a step moves or warms, and the faults that then show. */
interface WakingPlace {
  readonly step: AskStep;
  readonly outcome: AskOutcome;
  readonly faults: readonly string[];
}

/** One such place as a test of the table; no instrument reads it. */
export interface WakingTest extends TableTest {
  readonly test: null;
  readonly words: string;
}

/**
 * Whether the answers speak of a fault that comes and goes, else when it happens and how the module keeps its codes, else
 * what the codes mean. On a drill its level says it: no question is answered by the simulated vehicle itself.
 */
export function isIntermittent(session: Session): boolean {
  const { procedure, job, vehicle } = session.opened;
  if (vehicle.kind === 'drill') return vehicle.level === 'intermittent';
  const answered = procedure
    ? standingAnswers(session).flatMap((answer) => answeredWith(procedure, answer) ?? [])
    : [];
  if (procedure && answered.some(({ step, outcome }) => wakes(procedure, step, outcome.name)))
    return true;
  const said = answered.flatMap(({ outcome }) => outcome.codeKinds ?? []);
  if (said.includes('intermittent')) return true;
  const told = toldIntermittent(job);
  if (told !== null) return told;
  return said.length === 0 && codeKindsOf(job).includes('intermittent');
}

/** Suspects that stay, and all that can come and go again: woken by hand, or not. A wheel is damaged or it is not. */
export function withIntermittent(
  circuit: Circuit,
  candidates: readonly Candidate[],
  { share, willing }: IntermittentSuspects,
): Candidate[] {
  const canBe = new Set(
    circuit.faults.filter((fault) => fault.class !== 'target').map(({ id }) => id),
  );
  return candidates.flatMap((candidate): Candidate[] => {
    if (!canBe.has(candidate.id)) return [candidate];
    const { id, words } = candidate;
    const part = (mark: string, of: number): Candidate[] =>
      of === 0
        ? []
        : [
            {
              ...candidate,
              id: `${id}${mark}`,
              ...(words === undefined || mark === '' ? {} : { words: `${words}, intermittently` }),
              weight: of * candidate.weight,
            },
          ];
    return [
      ...part('', 1 - share),
      ...part(MARK, share * willing),
      ...part(MARK + MARK, share * (1 - willing)),
    ];
  });
}

/** Share of the readings of a car in which its fault is there by itself; `unit` is the car's place, 0 to 1, among all. */
export function presentAt(unit: number): number {
  return PRESENT_MOST * unit ** PRESENT_POWER;
}

/** The fault of a suspect, whether it stays or comes and goes. */
export function faultIdOf(candidate: string): string {
  return candidate.endsWith(MARK) ? faultIdOf(candidate.slice(0, -MARK.length)) : candidate;
}

/** Whether hands can wake what a suspect stands for: a fault that comes and goes, and not one that nobody wakes. */
export function isWilling(candidate: string): boolean {
  return candidate.endsWith(MARK) && !candidate.endsWith(MARK + MARK);
}

/** Chance of a code, 0 to 1, as `codeChance` has it for faults that stay. */
export function intermittentCodeChance(
  codeChance: (fault: string, kind: CodeKind) => number,
): (candidate: string, kind: CodeKind) => number {
  return (candidate, kind) =>
    candidate.endsWith(MARK) && kind === 'intermittent'
      ? CALLED_INTERMITTENT
      : codeChance(faultIdOf(candidate), kind);
}

/** One test for each place that the steps of a procedure move or warm. They are done where the tree has them only. */
export function wakingTests(procedure: Procedure | null): WakingTest[] {
  return wakingPlaces(procedure).map(({ step, outcome }) => ({
    id: wakingId(step, outcome),
    words: step.title,
    test: null,
    family: step.family,
    minutes: Math.max(1, step.minutes),
    state: step.setup.state,
    unplugged: step.setup.unplugged,
    reaches: [outcome.name],
    // Nobody has it at hand, so none is ever proposed.
    needs: ['the step of the tree'],
    // What was moved is moved once more before it is answered.
    ...(step.family === 'wiggle' ? { shownTwice: true } : {}),
  }));
}

/** The faults that a waking test wakes, where they are there. */
export function wakingFaults(procedure: Procedure | null, test: string): readonly string[] {
  return (
    wakingPlaces(procedure).find(({ step, outcome }) => wakingId(step, outcome) === test)?.faults ??
    []
  );
}

/** Chance that a suspect shows when a place is moved or warmed; `isOfIt` where its fault is there. */
export function wokenChance(candidate: string, isOfIt: boolean): number {
  return !isWilling(candidate) ? 0 : isOfIt ? WOKEN_CHANCE : BESIDE_CHANCE;
}

/** What an answer says of the places of its step: those before the one that woke it were moved in vain. */
export function wakingReadings(
  procedure: Procedure,
  answer: Answer,
): { readonly test: string; readonly shown: Shown; readonly found: string }[] {
  const told = answeredWith(procedure, answer);
  if (!told) return [];
  const { step, outcome } = told;
  const places = placesOf(procedure, step);
  const woken = places.findIndex((place) => place.outcome === outcome);
  return places.slice(0, woken < 0 ? places.length : woken + 1).map((place, index) => ({
    test: wakingId(step, place.outcome),
    shown: drops(index === woken),
    found: outcome.words,
  }));
}

/** All faults that this step wakes, where they are there. */
export function wakenBy(procedure: Procedure, step: Step): readonly string[] {
  return [...new Set(placesOf(procedure, step).flatMap(({ faults }) => faults))];
}

/** Whether some answer to this step says that a fault was woken. */
export function canWake(procedure: Procedure, step: Step): boolean {
  return placesOf(procedure, step).length > 0;
}

/** Whether this answer to a step that moves or warms something says that the fault was woken. */
export function wakes(procedure: Procedure, step: Step, outcome: string): boolean {
  return placesOf(procedure, step).some((place) => place.outcome.name === outcome);
}

/** Whether this answer says that nothing was woken at a step that can wake something. */
export function isInVain({ opened: { procedure } }: Session, step: Step, outcome: string): boolean {
  return procedure !== null && canWake(procedure, step) && !wakes(procedure, step, outcome);
}

/** Whether a fault that comes and goes is weighed, was looked for by hand, and did not come. */
export function isAsleep(session: Session): boolean {
  const { procedure, vehicle } = session.opened;
  if (!procedure || vehicle.kind === 'drill' || !isIntermittent(session)) return false;
  const moved = standingAnswers(session)
    .flatMap((answer) => answeredWith(procedure, answer) ?? [])
    .filter(({ step }) => canWake(procedure, step));
  return (
    moved.length > 0 && moved.every(({ step, outcome }) => !wakes(procedure, step, outcome.name))
  );
}

/** What a waking test shows, as eyes have it: something is wrong there, or nothing. */
export function drops(isSeen: boolean): Shown {
  return { kind: 'look', look: isSeen ? 'faulty' : 'sound' };
}

function wakingPlaces(procedure: Procedure | null): WakingPlace[] {
  if (!procedure) return [];
  return Object.values(procedure.steps).flatMap((step) => placesOf(procedure, step));
}

/** Where a step can wake a fault: each of its answers that leads to conclusions with faults. */
function placesOf(procedure: Procedure, step: Step): WakingPlace[] {
  if (step.kind !== 'ask' || !WAKING.includes(step.family)) return [];
  return step.outcomes.flatMap((outcome) => {
    const faults = wokenBy(procedure, outcome);
    return faults.length > 0 ? [{ step, outcome, faults }] : [];
  });
}

function wakingId(step: AskStep, outcome: AskOutcome): string {
  return `${step.id}: ${outcome.name}`;
}

/** The question and the answer it was given; null for an answer to anything else. */
function answeredWith(
  procedure: Procedure,
  answer: Answer,
): { readonly step: AskStep; readonly outcome: AskOutcome } | null {
  if (answer.type !== 'look-recorded') return null;
  const step = stepOf(procedure, answer.step);
  if (step.kind !== 'ask') return null;
  const outcome = step.outcomes.find(({ name }) => name === answer.outcome);
  return outcome ? { step, outcome } : null;
}
