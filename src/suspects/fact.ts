/**
 * What the readings say, test by test: how likely what a test showed is for a car and a fault. A test that was read again
 * is one fact: the reading that most of its repeats agree with, the likelier to be no slip the more of them do.
 */
import { METER_UNITS } from '../circuit/meter-units.ts';
import { LOOKS, type Look, type Shown } from '../circuit/test.ts';
import {
  type ErrorModel,
  joinedWidth,
  leakDensity,
  modelWidth,
  slipDensity,
} from './error-model.ts';
import { type Reading, uncertaintyOf } from './likelihood.ts';
import type { PredictionTable } from './prediction-table.ts';

/** What one test showed. */
export interface Fact {
  readonly test: number;
  readonly shown: Shown;
  /** Places of the readings that it stands for. */
  readonly readings: readonly number[];
  /** Standard uncertainty of the instrument at what it shows, in its unit. */
  readonly uncertainty: number;
  /** Chance that it is a slip. */
  readonly slip: number;
  /** How likely a slip is to show it: per volt or ohm, or of a look or over-limit a chance. */
  readonly blind: number;
  /** Ways in which the instrument can look. */
  readonly ways: number;
}

/** One thing that a test may show, and how often it does; the shares of a test sum to 1. */
export interface Way {
  readonly shown: Shown;
  readonly share: number;
}

/** Two readings of one test agree when they differ by less than so many standard uncertainties of their difference. */
const AGREE_DEVIATIONS = 4;
/** A look is at times called by its neighbour's name: dim for lit. Our assumption. */
const LOOK_CONFUSED = 0.03;
/** What is seen or in step is called by its opposite less often: there is nothing between the two. Our assumption. */
const SIGHT_CONFUSED = 0.01;
/** A count that follows is hardly called still, or the other way round: it is watched for seconds. Our assumption. */
const COUNT_CONFUSED = 0.005;
const SQRT_2PI = Math.sqrt(2 * Math.PI);

/** The facts of `readings`, in the order in which their tests were first made. */
export function factsOf(
  table: PredictionTable,
  readings: readonly Reading[],
  errorModel: ErrorModel,
): Fact[] {
  const byTest = new Map<number, number[]>();
  readings.forEach(({ test }, place) => {
    byTest.set(test, [...(byTest.get(test) ?? []), place]);
  });
  return [...byTest].map(([test, places]) => {
    const agreeing = mostAgreed(table, readings, places);
    const { shown } = readings[agreeing.at(-1)!]!;
    const uncertainty = uncertaintyOf(table, readings[agreeing.at(-1)!]!);
    return {
      ...{ test, shown, uncertainty, readings: places },
      slip: errorModel.wrongReading ** (agreeing.length * (table.tests[test]!.shownTwice ? 2 : 1)),
      blind: blindOf(table, test, shown, uncertainty, errorModel),
      ways: waysOf(table, test, shown),
    };
  });
}

/** The places that agree with most others; of as many the last ones, as a person reads again what looked wrong. */
function mostAgreed(
  table: PredictionTable,
  readings: readonly Reading[],
  places: readonly number[],
): readonly number[] {
  const groups = places.map((one) =>
    places.filter((other) => agree(table, readings[one]!, readings[other]!)),
  );
  return groups.reduce((best, group) => (group.length >= best.length ? group : best));
}

function agree(table: PredictionTable, one: Reading, other: Reading): boolean {
  if (one.shown.kind === 'look' || other.shown.kind === 'look')
    return (
      one.shown.kind === 'look' &&
      other.shown.kind === 'look' &&
      one.shown.look === other.shown.look
    );
  if (one.shown.value === other.shown.value) return true;
  const width = joinedWidth(uncertaintyOf(table, one), uncertaintyOf(table, other));
  return Math.abs(one.shown.value - other.shown.value) < AGREE_DEVIATIONS * width;
}

function blindOf(
  table: PredictionTable,
  test: number,
  shown: Shown,
  uncertainty: number,
  errorModel: ErrorModel,
): number {
  if (shown.kind === 'look' || shown.value === Infinity) return 1 / waysOf(table, test, shown);
  return slipDensity(table.column(test), shown.value, uncertainty, errorModel);
}

function waysOf(table: PredictionTable, test: number, shown: Shown): number {
  if (shown.kind === 'number') return 2;
  const { looks } = table.column(test);
  const list = Object.values(LOOKS).find(
    (all: readonly Look[]) => all.includes(shown.look) && looks.every((one) => all.includes(one)),
  );
  return list?.length ?? Math.max(looks.length, 2);
}

/**
 * Logarithm of how likely the fact is where its test shows `ways`. Never below that of a slip. At a degree below 1, down
 * to 0, a number is read as many times less sharply, and a look or an over-limit counts for that much less.
 */
export function logLikelihood(
  fact: Fact,
  ways: readonly Way[],
  errorModel: ErrorModel,
  degree = 1,
): number {
  const { shown: read, slip, blind } = fact;
  const isBlurred = degree < 1 && read.kind === 'number' && read.value !== Infinity;
  let density = 0;
  for (const { shown, share } of ways)
    if (share > 0) density += share * densityOf(fact, shown, errorModel, isBlurred ? degree : 1);
  const log = Math.log((1 - slip) * density + slip * blind);
  return isBlurred ? log : degree * log;
}

/**
 * Chance that a fact of this `logLikelihood` is not what its test showed: a slip, or a look that was called by another's
 * name. A look's likelihood is linear in the chance that the test showed it, so that chance follows from it.
 */
export function misreadChance(fact: Fact, log: number, errorModel: ErrorModel): number {
  const likelihood = Math.exp(log);
  const { slip, blind, shown, ways } = fact;
  if (shown.kind !== 'look') return (slip * blind) / likelihood;
  const [right, wrong] = lookDensities(shown.look, ways, errorModel);
  const density = (likelihood - slip * blind) / (1 - slip);
  const same = Math.min(1, Math.max(0, (density - wrong) / (right - wrong)));
  return 1 - ((1 - slip) * right * same) / likelihood;
}

/** How likely a look is called by its own name, and by one certain other. */
function lookDensities(
  look: Look,
  ways: number,
  { wrongReading }: ErrorModel,
): readonly [number, number] {
  if (wrongReading === 0) return [1, 0];
  const confused = CONFUSED.find(([looks]) => looks.includes(look))?.[1] ?? LOOK_CONFUSED;
  return [1 - confused, confused / (ways - 1)];
}

const CONFUSED: readonly (readonly [looks: readonly Look[], chance: number])[] = [
  [LOOKS.counts, COUNT_CONFUSED],
  [LOOKS.inspect, SIGHT_CONFUSED],
  [LOOKS.timing, SIGHT_CONFUSED],
];

/** Whether a test that shows one thing or the other tells them apart, as well as the fact was read. */
export function areApart(
  fact: Fact,
  one: readonly Way[],
  other: readonly Way[],
  errorModel: ErrorModel,
): boolean {
  return one.some(({ shown, share }, place) => {
    const twin = other[place];
    if (!twin || Math.abs(twin.share - share) > SAME_SHARE) return true;
    if (shown.kind === 'look' || twin.shown.kind === 'look')
      return !(
        shown.kind === 'look' &&
        twin.shown.kind === 'look' &&
        shown.look === twin.shown.look
      );
    if (shown.value === twin.shown.value) return false;
    const width = joinedWidth(fact.uncertainty, modelWidth(shown.unit, shown.value, errorModel));
    return !(Math.abs(shown.value - twin.shown.value) < SAME_OF_WIDTH * width);
  });
}
/** Closer than this part of the width, two readings are one. */
const SAME_OF_WIDTH = 0.05;
const SAME_SHARE = 0.01;

/** The greatest that `logLikelihood` can be. */
export function topLogLikelihood(fact: Fact, errorModel: ErrorModel, degree = 1): number {
  const { shown, uncertainty, slip, blind } = fact;
  if (degree < 1 && shown.kind === 'number' && shown.value !== Infinity) {
    // Blurred, what lies far from the reading can be as likely, and small values are the sharpest.
    const width = joinedWidth(uncertainty, modelWidth(shown.unit, 0, errorModel)) / degree;
    return Math.log((1 - slip) / (width * SQRT_2PI) + slip * blind);
  }
  const top = logLikelihood(fact, [{ shown, share: 1 }], errorModel, degree);
  return Math.max(0, degree) * TOP_MARGIN + top;
}
/** The width goes by what is predicted, which may be a little less than what was read. */
const TOP_MARGIN = 0.1;

function densityOf(fact: Fact, shown: Shown, errorModel: ErrorModel, sharpness: number): number {
  const read = fact.shown;
  if (read.kind === 'look') {
    if (shown.kind !== 'look') throw new Error('fact: a look for a test that shows numbers');
    const [right, wrong] = lookDensities(read.look, fact.ways, errorModel);
    return shown.look === read.look ? right : wrong;
  }
  if (shown.kind !== 'number') throw new Error('fact: a number for a test that shows looks');
  if (shown.value === Infinity && METER_UNITS[read.unit].overLimitMeansOpen)
    return leakDensity(read.value, errorModel);
  if (read.value === Infinity || shown.value === Infinity)
    return read.value === shown.value ? 1 : 0;
  const width =
    joinedWidth(fact.uncertainty, modelWidth(read.unit, shown.value, errorModel)) / sharpness;
  const z = (read.value - shown.value) / width;
  return Math.exp(-0.5 * z * z) / (width * SQRT_2PI);
}

/**
 * Whether a test was read again and now shows something else: the cars that went after what it showed first may not find
 * back, so that others start from the beginning.
 */
export function isTakenBack(before: readonly Fact[], facts: readonly Fact[]): boolean {
  return before.some((known) => {
    const now = facts.find(({ test }) => test === known.test);
    if (!now || now === known) return false;
    if (now.shown.kind === 'look' || known.shown.kind === 'look')
      return JSON.stringify(now.shown) !== JSON.stringify(known.shown);
    if (now.shown.value === known.shown.value) return false;
    return !(Math.abs(now.shown.value - known.shown.value) < TAKEN_BACK * now.uncertainty);
  });
}
/** Readings this many standard uncertainties apart are not one. Our choice. */
const TAKEN_BACK = 4;

/** The facts by which nothing has changed stay the same objects, so that nothing is worked out again for them. */
export function keptFacts(before: readonly Fact[], after: readonly Fact[]): Fact[] {
  return after.map((fact) => before.find((one) => isSame(one, fact)) ?? fact);
}

function isSame(one: Fact, other: Fact): boolean {
  return one.test === other.test && one.readings.length === other.readings.length;
}
