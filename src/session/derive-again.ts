/**
 * What a session file derives from what was recorded, derived again: the value behind what was typed, the order of the
 * times, the cautions and limits of the tree, what a sound circuit shows in a test, and the evidence of a conclusion
 * with its proof. That each event follows from those before it, `history.ts` says; what is found here needs the circuit's
 * model and the suspects, so only verifying does it.
 *
 * Where an event was judged by the rules we have, another result makes the file false. By other rules it is told.
 */

import type { Circuit } from '../circuit/circuit.ts';
import { readKnown } from '../circuit/known-values.ts';
import type { VehicleState } from '../circuit/test.ts';
import { cautionsFor, STARTER_HAZARDS, uncoveredHazards } from '../procedure/cautions.ts';
import { computedRange } from '../procedure/expected-range.ts';
import { isTask, type MeasureUnit, type Step, stepOf } from '../procedure/procedure.ts';
import { parseReading } from '../quantity/parse-reading.ts';
import type { Advisor } from './advisor.ts';
import {
  type Concluded,
  type EvidenceLine,
  type LookRecorded,
  type ReadingRecorded,
  type RetestRecorded,
  RULES,
  type SessionEvent,
  type SessionOpened,
  type SetValue,
  type ShortPlaced,
  type TestRecorded,
} from './events.ts';
import { evolve, openSession } from './evolve.ts';
import { expectedReading } from './expected-reading.ts';
import { expectedShown } from './expected-shown.ts';
import { followAdvisor } from './follow-advisor.ts';
import { isSame } from './is-same.ts';
import { circuitAtStart } from './known-circuit.ts';
import { readDrops } from './read-short.ts';
import { presentConclusion, type Session } from './session.ts';
import { modelFor } from './session-model.ts';
import { modelHere, stepHere } from './step-here.ts';
import { withVain } from './waking-vain.ts';
import { setBackMs } from './wall-clock.ts';

/** What does not come out as the file has it. */
export interface Differing {
  readonly seq: number;
  /** The rest of a sentence that begins with the event, without a full stop. */
  readonly words: string;
  /** Whether it makes the file false; else it is worth knowing. */
  readonly isFalse: boolean;
  /** It was written by rules that this program does not have, so that it may have been right by those. */
  readonly ofOtherRules?: true;
}

/**
 * Goes through events that follow from one another. With `advice` it weighs the readings as the advisor did, which takes
 * seconds; without it finds all but that: values of what was typed, times, cautions and limits.
 */
export function deriveAgain(
  events: readonly SessionEvent[],
  { advice }: { readonly advice: boolean } = { advice: true },
): Differing[] {
  const [first, ...rest] = events;
  if (first?.type !== 'session-opened') return [];
  const model = advice ? modelOf(first) : null;
  const found: Differing[] = [];
  let { rules } = first;
  const add = (seq: number, all: readonly string[]) => {
    for (const words of all)
      found.push(
        rules === RULES
          ? { seq, words, isFalse: true }
          : {
              seq,
              words: `${words} (it was written by rules ${rules})`,
              isFalse: false,
              ofOtherRules: true,
            },
      );
  };
  // A tree has the limits of the circuit beside it; what is known of the car moves them as they are asked.
  const linked =
    first.circuit && first.vehicle.kind !== 'drill' ? modelFor(first.circuit, first.meter) : null;
  add(1, [...treeWithoutCautions(first), ...otherLimits(first, linked)]);
  let session = openSession(first);
  let before: SessionEvent = first;
  for (const [index, event] of rest.entries()) {
    const seq = index + 2;
    if (event.type === 'session-resumed') {
      if (event.rules < rules)
        found.push({
          seq,
          words: `goes on by rules ${event.rules}, where rules ${rules} held before`,
          isFalse: false,
        });
      rules = event.rules;
    }
    found.push(...timeOf(seq, before, event));
    add(seq, derived(session, event, model));
    session = evolve(session, event);
    before = event;
  }
  return found;
}

interface Modelled {
  readonly of: ReturnType<typeof modelFor>;
  readonly advisor: Advisor;
}

/** What a session computes with; null without a circuit, and on a drill, which is verified by its seed. */
function modelOf(opened: SessionOpened): Modelled | null {
  const circuit = opened.vehicle.kind === 'drill' ? null : circuitAtStart(opened);
  if (!circuit) return null;
  const of = modelFor(circuit, opened.meter);
  return { of, advisor: followAdvisor((now) => modelHere(now, of), opened) };
}

/** What an event says that does not come of the state before it. */
function derived(session: Session, event: SessionEvent, model: Modelled | null): string[] {
  switch (event.type) {
    case 'reading-recorded':
    case 'retest-recorded':
      return otherValue(session, event);
    case 'test-recorded':
      return [...otherTestValue(event), ...(model ? otherGood(session, event, model) : [])];
    case 'value-set':
      return otherSet(session.opened.circuit, event);
    case 'short-placed':
      return otherDrops(event);
    case 'look-recorded':
      return model && event.vain ? otherVain(session, event, model.advisor) : [];
    case 'concluded':
      return model ? otherEvidence(session, event, model.advisor) : [];
    case 'session-opened':
    case 'caution-acknowledged':
    case 'step-done':
    case 'step-impossible':
    case 'step-reopened':
    case 'test-set-aside':
    case 'connector-set-aside':
    case 'state-set-aside':
    case 'value-taken-back':
    case 'waking-watched':
    case 'note-added':
    case 'instruments-changed':
    case 'session-paused':
    case 'session-resumed':
    case 'test-stopped':
    case 'caution-passed-over':
    case 'answer-revealed':
    case 'retest-impossible':
    case 'session-closed':
    case 'drive-reported':
    case 'work-answered':
    case 'recovered':
    case 'segment-continued':
      return [];
  }
}

/** Chances are kept in hundredths, and the last of them hangs on rounding. */
const VAIN_SLACK = 0.011;

function otherVain(
  session: Session,
  { vain, outcome, at, elapsed }: LookRecorded,
  advisor: Advisor,
): string[] {
  const again = withVain(session, { type: 'choose-outcome', outcome }, advisor, { at, elapsed });
  const today = again.type === 'choose-outcome' ? again.vain : undefined;
  const isSameVain =
    vain !== undefined &&
    today !== undefined &&
    vain.minutes === today.minutes &&
    Math.abs(vain.before - today.before) < VAIN_SLACK &&
    Math.abs(vain.after - today.after) < VAIN_SLACK;
  return isSameVain
    ? []
    : ['gives another worth to the attempts that brought nothing on than its readings do'];
}

/** `elapsed` never goes back while the program runs; where it starts anew stands in the file. */
function timeOf(seq: number, before: SessionEvent, event: SessionEvent): Differing[] {
  const isAnew =
    event.type === 'session-resumed' ||
    event.type === 'recovered' ||
    event.type === 'segment-continued';
  if (!isAnew && event.elapsed < before.elapsed)
    return [
      {
        seq,
        words: `comes ${before.elapsed - event.elapsed} ms before the event before it, by a clock that cannot be set`,
        isFalse: true,
      },
    ];
  const backMs = setBackMs(before, event);
  return backMs > 0
    ? [
        {
          seq,
          words: `is ${Math.round(backMs / 1000)} s earlier than the event before it: the wall clock was set back`,
          isFalse: false,
        },
      ]
    : [];
}

/** Numbers read from one text differ by no more than the last digit of a sum. */
const VALUE_SLACK = 1e-9;

function otherValue(session: Session, event: ReadingRecorded | RetestRecorded): string[] {
  const { procedure } = session.opened;
  const step = procedure && stepHere(session, stepOf(procedure, event.step));
  // A look has no number. A capture is held against its measures when the event is decided.
  if (step?.kind !== 'measure' || event.capture) return [];
  const { usual } = expectedReading(step, null);
  return otherNumber(event.typed, event.value, step.unit, usual);
}

function otherTestValue({ shown, typed, capture }: TestRecorded): string[] {
  return shown.kind === 'number' && !capture ? otherNumber(typed, shown.value, shown.unit) : [];
}

function otherNumber(
  typed: string,
  value: number | null,
  unit: MeasureUnit,
  usual?: ReturnType<typeof expectedReading>['usual'],
): string[] {
  const read = [
    parseReading(typed, { unit }),
    ...(usual ? [parseReading(typed, { unit, usual })] : []),
  ];
  const values = read.flatMap((one) => {
    if (one.status === 'read') return [one.quantity.value];
    return one.status === 'doubt' ? one.choices.map(({ quantity }) => quantity.value) : [];
  });
  const kept = value ?? Number.POSITIVE_INFINITY;
  if (values.some((one) => one === kept || Math.abs(one - kept) <= VALUE_SLACK * Math.abs(kept)))
    return [];
  const has = value === null ? 'OL' : `${value} ${unit}`;
  return [`was typed "${typed}", which is not ${has}`];
}

function otherSet(circuit: Circuit | null, { quantity, is, typed }: SetValue): string[] {
  if (!circuit) return [];
  const read = readKnown(circuit, quantity, typed);
  return read.ok && isSame(read.is, is) ? [] : [`was typed "${typed}", which is another value`];
}

/** The two drops, with what was typed behind them. */
function otherDrops({ typed, drops }: ShortPlaced): string[] {
  const read = readDrops(typed);
  if ('fix' in read) return [`was typed "${typed}", which is not two drops`];
  const { typed: _, ...values } = read;
  return isSame(values, drops) ? [] : [`was typed "${typed}", which is other drops`];
}

/** Rules that first asked a tree to warn of what cranking does; files of earlier ones are not held to it. */
const CRANKING_RULES = 6;

const MOVING: readonly VehicleState[] = ['cranking', 'running', 'driving'];

/** A tree has the cautions that the rules beside it put there, and such as cover the hazards of each state. */
function treeWithoutCautions({
  procedure,
  cautionRules,
  job,
  circuit,
  rules,
}: SessionOpened): string[] {
  if (!procedure) return [];
  return Object.values(procedure.steps).flatMap((step) => {
    if (!isTask(step)) return [];
    const { setup, cautions } = step;
    const probes = 'probe' in step ? [step.probe] : 'watched' in step ? (step.watched ?? []) : [];
    const place = { drive: job.vehicle.drive, setup, probes, circuit };
    const due = cautionsFor(cautionRules, place, []);
    const lost = due.filter(
      ({ id, word, say }) =>
        !cautions.some((one) => one.id === id && one.word === word && one.say === say),
    );
    const open = uncoveredHazards(setup.state, job.vehicle.drive, cautions).filter(
      (hazard) =>
        (rules >= CRANKING_RULES || !STARTER_HAZARDS.includes(hazard)) &&
        // A file without rules is held to what moves all the same: an engine that turns, the road.
        (cautionRules.length > 0 || MOVING.includes(setup.state)),
    );
    return [
      ...lost.map(({ id }) => `has no caution "${id}" before the step "${step.id}"`),
      ...open.map((hazard) => `warns of no ${hazard} before the step "${step.id}"`),
    ];
  });
}

/** Limits that a tree has from the circuit are those of the circuit. */
function otherLimits({ procedure }: SessionOpened, model: Modelled['of'] | null): string[] {
  if (!procedure || !model) return [];
  const other = Object.values(procedure.steps).filter((step) => !isOfCircuit(step, model));
  return other.length === 0
    ? []
    : [`has other limits than its circuit at ${stepsNamed(other.map(({ id }) => id))}`];
}

/** More steps than these are counted. */
const STEPS_NAMED = 3;

function stepsNamed(ids: readonly string[]): string {
  const named = ids.slice(0, STEPS_NAMED).map((id) => `"${id}"`);
  const more = ids.length - named.length;
  return `the steps ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

function isOfCircuit(step: Step, model: Modelled['of']): boolean {
  if (step.kind !== 'measure' || step.expected?.from !== 'circuit') return true;
  const { setup, probe, expected } = step;
  if (probe === null) return false;
  const range = computedRange(model, { setup, probe });
  return range !== null && range.low === expected.low && range.high === expected.high;
}

/** Beside the prompt stood what a sound circuit shows, or what is good for this car by the readings so far. */
function otherGood(session: Session, { test, expected }: TestRecorded, model: Modelled): string[] {
  if (expected === null) return ['has nothing that is good beside it, where the circuit is known'];
  const here = modelHere(session, model.of);
  const isGood =
    isSame(expected, expectedShown(here, test)) ||
    isSame(expected, model.advisor.diagnosis(session).expected(test));
  return isGood ? [] : ['has another range of what is good than the circuit gives'];
}

/** What a conclusion rests on is what the readings before it come to. */
function otherEvidence(session: Session, event: Concluded, advisor: Advisor): string[] {
  // In words of one's own, with no fault of the circuit, there is nothing to weigh.
  if (event.conclusion === null && event.faults.length === 0) return [];
  const tree = presentConclusion(session);
  const named = event.conclusion === null ? event.faults : (tree?.faults ?? []);
  const due = advisor.weigh(session, named);
  if (event.proven === null) return ['was not weighed, where the circuit is known'];
  // Early versions wrote down words, which are not compared.
  const isSaid = [...event.evidence, ...event.ruledOut].some((line) => 'said' in line);
  const found: string[] = [];
  // Until lately a tree's conclusion kept all that it stands for.
  const isWhole = event.faults.length === named.length;
  if (event.conclusion !== null && !isWhole && !isSame(event.faults, due.left))
    found.push('names other faults than the readings leave standing');
  const rests = event.restsOn ?? null;
  if (event.proven !== due.proven)
    found.push(`is called ${provenWord(event.proven)}, and is ${provenWord(due.proven)}`);
  if (rests !== due.hangsOn)
    found.push(`rests on ${readingWord(rests)}, and should on ${readingWord(due.hangsOn)}`);
  if (isSaid) return found;
  if (!isSame(sorted(event.evidence), sorted(due.evidence)))
    found.push(
      `has other evidence than the readings give: ${listed(event.evidence)} instead of ${listed(due.evidence)}`,
    );
  if (!isSame(byRepair(event.ruledOut), byRepair(due.ruledOut)))
    found.push('rules out other repairs, or by other readings, than the readings do');
  return found;
}

function provenWord(proven: boolean): string {
  return proven ? 'proven' : 'not proven';
}

function readingWord(reading: number | null): string {
  return reading === null ? 'no single reading' : `the one reading of event ${reading}`;
}

/** Which counts first is a matter of the last digit of a logarithm. */
function sorted(evidence: readonly EvidenceLine[]): string[] {
  return evidence
    .map((line) => JSON.stringify('reading' in line ? [line.reading, line.counted] : line))
    .sort();
}

function listed(evidence: readonly EvidenceLine[]): string {
  const lines = evidence.flatMap((line) => ('reading' in line ? [line] : []));
  const events = lines
    .sort((a, b) => a.reading - b.reading)
    .map(({ reading, counted }) => `${reading}${counted ? '' : ' (not a separate piece)'}`);
  return events.length === 0 ? 'no event' : `events ${events.join(', ')}`;
}

function byRepair(ruledOut: Concluded['ruledOut']): string[] {
  return ruledOut
    .map((line) => JSON.stringify('repair' in line ? [line.repair, [...line.by].sort()] : line))
    .sort();
}
