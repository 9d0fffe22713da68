/** Faults that end wrongly, told at the decision that lost them: the last one from which all could still come right. */

import { testKey } from '../circuit/test-key.ts';
import { computedRange } from '../procedure/expected-range.ts';
import { type MeasureStep, stepOf } from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { formatReadings } from '../quantity/format-quantity.ts';
import type { Issue } from '../source/issue.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { betterTarget } from './better-target.ts';
import { testForAuthor } from './discriminating-tests.ts';
import type { JudgedWay } from './judge-ways.ts';
import { carNotes, provedFault } from './lost-cars.ts';
import type { ProofFacts } from './proof-facts.ts';
import { carsWords, listed, quoted, sharePercent } from './proof-words.ts';
import { entriesOf, outcomeForAuthor, outcomeLocation, sourceLocation } from './source-location.ts';

/** A fault of which more than this ends wrongly is an error of the tree; any less is a warning. Our choice. */
export const WRONG_SHARE_MAX = 0.01;
/** A fault of which more than this is put right without being named is told. Our choice. */
const ELSEWHERE_SHARE_MIN = 0.1;

/** As many different faults lost at one outcome point to what is measured there. */
const MANY = 4;

const CODES = {
  wrong: 'wrong-conclusion',
  missed: 'missed-fault',
  'dead-end': 'dead-end',
  endless: 'endless-walk',
} as const;
type Bad = keyof typeof CODES;

/** One fault's part in an issue. */
interface Loss {
  readonly fault: string;
  share: number;
  readonly ways: JudgedWay[];
}
interface LostFault {
  readonly verdict: Bad;
  readonly at: JudgedWay['lostAt'];
  readonly end: string;
  readonly losses: Map<string, Loss>;
}

/** One issue for each decision and the conclusion it wrongly leads to. */
export function wayIssues(facts: ProofFacts): Issue[] {
  const { ways, teller } = facts;
  const wrongShare = new Map<string, number>();
  const groups = new Map<string, LostFault>();
  for (const way of ways) {
    const { verdict } = way;
    if (verdict === 'right' || verdict === 'inseparable') continue;
    wrongShare.set(way.fault, (wrongShare.get(way.fault) ?? 0) + way.share);
    const key = JSON.stringify([verdict, way.lostAt, way.end.step, way.fault === HEALTHY]);
    const group = groups.get(key) ?? {
      verdict,
      at: way.lostAt,
      end: way.end.step,
      losses: new Map(),
    };
    groups.set(key, group);
    const loss = group.losses.get(way.fault) ?? { fault: way.fault, share: 0, ways: [] };
    group.losses.set(way.fault, loss);
    loss.share += way.share;
    loss.ways.push(way);
  }
  const told = [...groups.values()].map((group): Issue => {
    const losses = [...group.losses.values()].sort((a, b) => b.share - a.share);
    const grave = losses.some(({ fault }) => wrongShare.get(fault)! > WRONG_SHARE_MAX);
    const lost = losses.map((loss) => teller.cars({ ...loss, samples: samplesOf(loss) }));
    const names = listed(lost.map(({ cars }) => `${provedFault(cars.fault)} (${carsWords(cars)})`));
    return {
      ...issueOf(facts, group, losses, names),
      severity: grave ? 'error' : 'warning',
      notes: carNotes(lost),
      cars: lost.map(({ cars }) => cars),
    };
  });
  return [...told, ...namedElsewhere(facts)];
}

/**
 * Faults that end at a conclusion for the same repair which does not name them, while another does: the repair is
 * right, but what the person reads there is about something else.
 */
function namedElsewhere({ linked, ways, judge }: ProofFacts): Issue[] {
  const shares = new Map<string, { fault: string; end: string; share: number }>();
  for (const { fault, share, verdict, end } of ways) {
    if (verdict !== 'right' || judge.rightFor(fault).includes(end.step)) continue;
    const key = `${fault} ${end.step}`;
    shares.set(key, { fault, end: end.step, share: share + (shares.get(key)?.share ?? 0) });
  }
  return [...shares.values()]
    .filter(({ share }) => share > ELSEWHERE_SHARE_MIN)
    .map(({ fault, end, share }) => ({
      code: 'named-elsewhere',
      severity: 'warning',
      at: sourceLocation(linked, end, ['conclude']),
      words: `${fault} (${sharePercent(share)}) ends at "${end}", which does not name it, while ${quoted(judge.rightFor(fault), 'and')} does`,
      fix: 'lead the path there, or name it here',
    }));
}

function issueOf(
  facts: ProofFacts,
  { verdict, at, end }: LostFault,
  losses: readonly Loss[],
  names: string,
): Omit<Issue, 'severity'> {
  const { linked, judge } = facts;
  const [first] = losses;
  if (verdict === 'dead-end' || verdict === 'endless')
    return {
      code: CODES[verdict],
      at: sourceLocation(linked, end),
      words:
        verdict === 'dead-end'
          ? `no outcome at "${end}" covers what is read with ${names}: ${readingWords(facts, end, first!)}`
          : `with ${names} the path keeps coming back to "${end}"`,
      fix:
        verdict === 'dead-end'
          ? 'let an outcome cover it'
          : 'lead one of the outcomes on this path elsewhere',
    };
  const right = judge.rightFor(first!.fault);
  if (at === null) return uncovered(facts, end, names, first!);
  const healthy = first!.fault === HEALTHY;
  const reads = readingWords(facts, at.step, first!);
  const where = outcomeForAuthor(linked, at.step, at.outcome);
  const belongs = right.length > 0 ? `, not at ${quoted(right, 'or')}` : '';
  return {
    code: healthy ? 'healthy-blamed' : CODES[verdict],
    at: outcomeLocation(linked, at.step, at.outcome),
    words: `${where} loses ${names}${reads === '' ? '' : `, ${reads}`}: ${tailWords(first!, at)} "${end}"${belongs}`,
    fix: fixWords(facts, at, end, losses),
  };
}

/** A fault for which no conclusion stands, shown at the one it comes to. */
function uncovered(
  facts: ProofFacts,
  end: string,
  names: string,
  first: Loss,
): Omit<Issue, 'severity'> {
  const { linked } = facts;
  const healthy = first.fault === HEALTHY;
  return {
    code: healthy ? 'healthy-blamed' : 'uncovered-fault',
    at: sourceLocation(linked, end, ['conclude']),
    words: healthy
      ? `${names} ends at "${end}", since no conclusion says that no fault was found`
      : `no conclusion stands for ${names}, which ends at "${end}"`,
    fix: healthy
      ? 'add a conclusion with "conclude: []" and let the last good reading lead there'
      : splitWords(facts, end, first),
  };
}

function fixWords(
  facts: ProofFacts,
  at: NonNullable<JudgedWay['lostAt']>,
  end: string,
  losses: readonly Loss[],
): string {
  const { linked, model, judge, ways } = facts;
  const { procedure } = linked;
  const entries = entriesOf(linked);
  const better = betterTarget({ procedure, model, judge, ways, targets: [...entries.keys()] }, at);
  if (better !== null)
    return `let it lead to "${entries.get(better)}": everything that leaves by it then ends right`;
  const step = stepOf(procedure, at.step);
  const limits =
    step.kind === 'measure' && !isComputed(step, at.outcome)
      ? limitWords(facts, step, at.outcome, losses[0]!)
      : '';
  if (limits !== '') return limits;
  const healthy = losses[0]!.fault === HEALTHY ? healthyWords(step) : '';
  if (healthy !== '') return healthy;
  const look =
    losses.length >= MANY ? 'look at the leads, the state and what is unplugged here; ' : '';
  return look + splitWords(facts, end, losses[0]!);
}

/** Whether the limits of an outcome come from the circuit and not from the author. */
function isComputed({ expected, outcomes }: MeasureStep, name: string | null): boolean {
  const outcome = outcomes.find((one) => one.name === name);
  if (expected?.from !== 'circuit' || !outcome) return false;
  const ends: readonly (number | null)[] = [expected.low, expected.high];
  return [outcome.from, outcome.to].some((limit) => limit !== null && ends.includes(limit));
}

/**
 * Readings of a healthy circuit beside the author's limits, when the meter can tell the two and both leave by the
 * outcome: where no healthy one does, the limit stands between them already.
 */
function limitWords(
  { model }: ProofFacts,
  step: MeasureStep,
  name: string | null,
  { ways }: Loss,
): string {
  const test = testOf(step);
  if (!test) return '';
  const other = model.expected(test);
  const good = computedRange(model, test);
  if (other.kind !== 'number' || !good) return '';
  const left = step.outcomes.find((one) => one.name === name);
  const isShared =
    (left?.from == null || (other.high ?? Number.POSITIVE_INFINITY) >= left.from) &&
    (left?.to == null || (other.low ?? Number.NEGATIVE_INFINITY) < left.to);
  if (!isShared) return '';
  const values = ways.flatMap(({ fault, samples }) =>
    samples.map((sample) => model.shows(fault, test, sample)),
  );
  const outside = values.some(
    (one) =>
      one.kind === 'number' &&
      (one.value < (good.low ?? Number.NEGATIVE_INFINITY) ||
        one.value > (good.high ?? Number.POSITIVE_INFINITY)),
  );
  const healthy = formatReadings(other.low, other.high, step.unit);
  return outside ? `a healthy circuit reads ${healthy} here: move the limit between the two` : '';
}

/** A healthy circuit lost at a look, which no limit mends: it is the circuit that shows it there. */
function healthyWords(step: ReturnType<typeof stepOf>): string {
  if (step.kind !== 'look') return '';
  return step.probe.kind === 'counts'
    ? `by the circuit file a healthy signal is not counted here: it must pass both levels of the input of ${step.probe.input}; look at those levels, or let this outcome lead on`
    : `by the circuit file a healthy circuit looks like this here (expected: ${step.expected.join(', ')}): look at the circuit, the leads and the state, or let this outcome lead on`;
}

/** A test that tells the lost fault from those that the conclusion stands for. */
function splitWords(facts: ProofFacts, end: string, loss: Loss): string {
  const rivals = rivalsAt(facts, end);
  const none = rivals[0] === HEALTHY;
  const all = loss.ways.flatMap(({ samples }) => samples);
  const found = facts.discriminating.separator(loss.fault, all, rivals, testsMade(facts, loss));
  const also = `let "${end}" stand for it too`;
  if (found)
    return none
      ? `this test shows it: ${testForAuthor(found)}`
      : `this test tells them apart: ${testForAuthor(found)}; or ${also}`;
  return none
    ? 'no single test shows it in all cases; take two'
    : `no single test tells them apart in all cases: ${also}, or take two tests`;
}

/** Each once, however many ways it goes by. */
function samplesOf({ ways }: Loss): number[] {
  return [...new Set(ways.flatMap(({ samples }) => samples))];
}

/** Keys of the tests on the first of its ways: what has been made already parts nothing more. */
function testsMade({ linked }: ProofFacts, { ways }: Loss): Set<string> {
  const tests = ways[0]!.visits.map(({ step }) => testOf(stepOf(linked.procedure, step)));
  return new Set(tests.flatMap((test) => (test ? [testKey(test)] : [])));
}

function rivalsAt({ linked }: ProofFacts, end: string): readonly string[] {
  const conclusion = stepOf(linked.procedure, end);
  return conclusion.kind === 'conclude' && conclusion.faults.length > 0
    ? conclusion.faults
    : [HEALTHY];
}

function tailWords({ ways }: Loss, at: NonNullable<JudgedWay['lostAt']>): string {
  const { visits } = ways[0]!;
  const from = visits.findLastIndex(({ step }) => step === at.step);
  const tail = visits
    .slice(from + 1)
    .map(({ step, outcome }) => (outcome === null ? step : `${step} ${outcome}`));
  return tail.length === 0 ? 'it ends at' : `it goes on by ${tail.join(', ')} and ends at`;
}

/** What the lost samples show at a step: `reading 0 V to 1.2 V`, `shows weak`, or nothing when nothing is read there. */
function readingWords({ linked, model }: ProofFacts, id: string, { fault, ways }: Loss): string {
  const step = stepOf(linked.procedure, id);
  const test = testOf(step);
  if (!test || step.kind !== 'measure') return '';
  const values = ways
    .flatMap(({ samples }) => samples)
    .flatMap((sample) => {
      const shown = model.shows(fault, test, sample);
      return shown.kind === 'number' ? [shown.value] : [];
    });
  return `reading ${formatReadings(Math.min(...values), Math.max(...values), step.unit)}`;
}
