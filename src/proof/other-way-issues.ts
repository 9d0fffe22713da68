/**
 * Ends that are wrong on the ways beside the usual ones: another answer to a question, a step that could not be done. An
 * end is wrong when it excludes the fault: it names others, or says that none was found while a test shows one.
 */
import type { Procedure } from '../procedure/procedure.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Arrival, Coming, OtherWay } from './fault-reach.ts';
import { provedFault } from './lost-cars.ts';
import { otherWays } from './other-ways.ts';
import type { ProofFacts } from './proof-facts.ts';
import { listed, quoted } from './proof-words.ts';
import { outcomeForAuthor, outcomeLocation, sourceLocation } from './source-location.ts';
import type { ProofVisit } from './walk-faults.ts';
import { seesFault } from './way-tree.ts';

/** Of so few cars one that ends wrongly is no share to speak of; two are. Our choice. */
const WRONG_CARS_MIN = 2;

/** What is wrong with one end by one answer, or by steps that were passed over. */
interface WrongEnd {
  readonly way: OtherWay;
  readonly end: string;
  /** Where a fault that comes and goes was seen; null where it was not. */
  readonly turn: ProofVisit | null;
  readonly faults: Map<string, number>;
  of: number;
}

/**
 * One finding for each turn of a way and the end it wrongly leads to; those of the usual ways are told by themselves.
 * `come` hears which cars come to which step, `arrive` which fault comes to which end.
 */
export function otherWayIssues(
  facts: ProofFacts,
  come: (coming: Coming) => void,
  arrive: (end: string, fault: string) => void,
): Issue[] {
  const { linked, model, ways, judge, discriminating } = facts;
  const usual = new Set(
    ways
      .filter(({ verdict }) => verdict !== 'right' && verdict !== 'inseparable')
      .map(({ fault, end }) => `${fault} ${end.step}`),
  );
  /** Where a healthy circuit ends: a fault that sleeps on ends there as well, and it is told of the circuit. */
  const healthy = new Set<string>();
  const found = new Map<string, WrongEnd>();
  const hear = (arrival: Arrival) => {
    const { fault, end, sleeping, seen, of } = arrival;
    arrive(end, fault);
    if (fault === HEALTHY) healthy.add(end);
    if (sleeping && !seen && healthy.has(end)) return;
    if (usual.has(`${fault} ${end}`) || judge.standsFor(end, fault)) return;
    const bad = wrongSamples(arrival);
    if (bad.length < Math.min(WRONG_CARS_MIN, of)) return;
    for (const way of arrival.ways(bad)) {
      const turn = seen ? seeingOf(linked.procedure, way) : null;
      const key = JSON.stringify([end, sleeping, turn ?? turnsOf(way)]);
      const wrong = found.get(key) ?? { way, end, turn, faults: new Map(), of };
      found.set(key, wrong);
      wrong.faults.set(fault, bad.length);
    }
  };
  otherWays(linked.procedure, model, hear, come);
  return [...found.values()].map((wrong) => issueOf(facts, wrong));

  function wrongSamples({ fault, end, sleeping, seen, samples }: Arrival): readonly number[] {
    if (!judge.saysNothingFound(end) || seen) return samples;
    // A fault that slept on has not been there to be found.
    if (sleeping) return [];
    return samples.filter((sample) => discriminating.detects(fault, sample));
  }
}

/** The answer that says that the fault came; the last of them where it came again. */
function seeingOf(procedure: Procedure, { fault, visits }: OtherWay): ProofVisit | null {
  const seeing = visits.findLast(({ step: id, outcome }) => {
    const step = procedure.steps[id];
    if (step?.kind !== 'ask') return false;
    return seesFault(step, step.outcomes.find(({ name }) => name === outcome)?.under, fault);
  });
  return seeing ?? null;
}

/** What makes a way another than the usual: the steps passed over, else its last answer to a question. */
function turnsOf({ skipped, visits, sleeping }: OtherWay): readonly string[] {
  if (skipped.length > 0 && !sleeping) return skipped;
  const last = visits.findLast(({ outcome }) => outcome !== null);
  return last ? [...skipped, `${last.step} ${last.outcome}`] : skipped;
}

function issueOf({ linked, judge }: ProofFacts, { way, end, turn, faults, of }: WrongEnd): Issue {
  const names = listed([...faults].map(([fault, cars]) => faultCars(fault, cars, of)));
  const nothing = judge.saysNothingFound(end);
  const [verb, it] = faults.size === 1 ? ['ends', 'it'] : ['end', 'them'];
  const says = nothing
    ? turn
      ? `${verb} at "${end}", that no fault was found, though the answer says that ${it === 'it' ? 'it came' : 'one of them came'}`
      : `${verb} at "${end}", that no fault was found, though a test that was not made shows ${it}`
    : `${verb} at "${end}", which excludes ${it}`;
  const common = {
    severity: 'error' as const,
    notes: [`one such path: ${wayWords(way)}`],
  };
  const [first] = faults.keys();
  const right = judge.rightFor(first!).slice(0, 3);
  const belongs =
    right.length > 0 ? `, or to one that holds it, such as ${quoted(right, 'or')}` : '';
  if (way.skipped.length > 0 && !way.sleeping) {
    const last = way.skipped.at(-1)!;
    return {
      ...common,
      code: 'untold-end',
      at: sourceLocation(linked, last, ['cannot']),
      words: `where ${quoted(way.skipped, 'and')} can't be done, ${names} ${says}`,
      fix: `let "${end}" require ${way.skipped.length > 1 ? 'one of them' : 'it'}, with an "otherwise" that leaves it open, or lead "cannot"${belongs === '' ? ' elsewhere' : ` to another test${belongs}`}`,
    };
  }
  const asked =
    turn ??
    way.visits.findLast(
      ({ step, outcome }) => outcome !== null && linked.procedure.steps[step]?.kind === 'ask',
    );
  if (!asked)
    return {
      ...common,
      code: 'answer-loses',
      at: sourceLocation(linked, end),
      words: `${names} ${says}`,
      fix: 'look at the answers on the path',
    };
  return {
    ...common,
    code: 'answer-loses',
    at: outcomeLocation(linked, asked.step, asked.outcome),
    words: `with ${outcomeForAuthor(linked, asked.step, asked.outcome)}, ${names} ${says}`,
    fix: `lead it to a test${belongs}; or say with "only-with" and "because" which faults can give this answer`,
  };
}

function faultCars(fault: string, cars: number, of: number): string {
  return `${provedFault(fault)}${fault === HEALTHY || cars === of ? '' : ` (${cars} of ${of} cars)`}`;
}

/** The answers on a way; a step that was passed over by its name alone. */
export function wayWords({ visits, end }: OtherWay): string {
  const words = visits.map(({ step, outcome }) => (outcome === null ? step : `${step} ${outcome}`));
  return `${words.join(', ')}, ${end.step}`;
}
