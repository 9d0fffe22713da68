/**
 * The next test worth its minutes. Every test is worth the drop in entropy over repairs that it can be expected to
 * bring, per minute. Going by that alone is up to a third dearer than need be on published examples, so the choice
 * itself looks further: a short search over the likeliest cases, whose bounds say what the job will take from here
 * if it starts with this test.
 */
import { arrangements } from './arrangements.ts';
import { type Cases, splitIntoCases } from './cases.ts';
import type { Outcomes } from './outcomes.ts';
import { type PredictedWords, predictedWords } from './predicted-words.ts';
import { HEALTHY, type PredictionTable, repairsOf } from './prediction-table.ts';
import { entropyBits, type Ranking } from './rank-suspects.ts';
import { StrategySearch } from './strategy-search.ts';
import {
  COSTS,
  type CostModel,
  canDo,
  type Means,
  type Situation,
  type TestCost,
  testCost,
} from './test-cost.ts';

/** How things stand at the vehicle, and how many proposals are wanted. */
export interface ProposalAsk {
  readonly now: Situation;
  readonly means: Means;
  readonly outcomes: (test: number) => Outcomes;
  readonly costs?: CostModel;
  /** Tests already done, or not wanted. */
  readonly without?: readonly number[];
  /** The look ahead leaves out the unlikeliest cases beyond this much of the chance; by default none. */
  readonly massKept?: number;
  /** So many proposals at most; three where that is left out. */
  readonly most?: number;
}

/** What a test can be expected to tell, and what it costs. */
export interface Worth {
  readonly test: number;
  readonly cost: TestCost;
  /** Expected drop in entropy over repairs, in bits. */
  readonly bits: number;
  readonly bitsPerMinute: number;
}

/** A proposal: a test that is worth its minutes, and why. */
export interface RankedTest extends Worth {
  /** Minutes that the job can be expected to take from here until the repair is known, if it starts with this test. */
  readonly minutesToRepair: number;
  /** What the leading suspects would show, the likeliest first. */
  readonly shows: readonly PredictedWords[];
  /** One sentence without a full stop. */
  readonly why: string;
}

/** The proposals, and all tests beside which they were chosen. */
export interface Proposals {
  /** The best ones, as many as were asked for; none when no test tells the repairs apart. */
  readonly best: readonly RankedTest[];
  /** Every test that can be done, by drop per minute. */
  readonly all: readonly Worth[];
}

const PROPOSALS_MAX = 3;
/** Suspects whose readings are listed with a proposal. */
const SHOWN_SUSPECTS = 4;
/** The search looks at the likeliest cases only, so that it fits between two key presses. */
const CASES_MAX = 96;
/** Tests followed at each state, and states looked at from all sides. */
const WIDTH = 8;
const EXPANSIONS = 48;
/** Less than this, in bits, is rounding. */
const BITS_MIN = 1e-9;

/** The tests to do next, after `ranking`. */
export function proposeTests(
  table: PredictionTable,
  ranking: Ranking,
  ask: ProposalAsk,
): Proposals {
  const costs = ask.costs ?? COSTS;
  const tests = [...table.tests.keys()].filter(
    (test) => !ask.without?.includes(test) && canDo(table.tests[test]!, ask.means).can,
  );
  const all = tests
    .map((test): Worth => {
      const cost = testCost(table.tests[test]!, ask.now, costs, ask.means.helper);
      const bits = expectedDrop(table, ranking, ask.outcomes(test));
      return { test, cost, bits, bitsPerMinute: bits / cost.minutes };
    })
    .sort((a, b) => b.bitsPerMinute - a.bitsPerMinute);
  const ahead = lookAhead(table, ranking, all, ask, costs);
  const best = all
    .filter(({ bits }) => bits > BITS_MIN)
    .map((worth) => ({ ...worth, minutesToRepair: ahead.get(worth.test) ?? Infinity }))
    .sort((a, b) => compare(a.minutesToRepair, b.minutesToRepair))
    .slice(0, ask.most ?? PROPOSALS_MAX)
    .map((worth) => explain(table, ranking, worth));
  return { best, all };
}

/** An outcome that leaves the sound circuit less than this part of its chance is none that a sound car shows. Our choice. */
const SOUND_PART = 0.1;

/** Chance that a test shows something that a sound car does not, whichever fault it would be. */
export function showsFault(table: PredictionTable, ranking: Ranking, outcomes: Outcomes): number {
  const { repairs, joint } = jointOf(table, ranking, outcomes);
  const sound = repairs.indexOf(HEALTHY);
  const before = ranking.chances[table.candidates.findIndex(({ id }) => id === HEALTHY)] ?? 0;
  return outcomes.specs.reduce((sum, _, outcome) => {
    const row = joint.subarray(outcome * repairs.length, (outcome + 1) * repairs.length);
    const all = row.reduce((a, b) => a + b, 0);
    return (row[sound] ?? 0) < SOUND_PART * before * all ? sum + all : sum;
  }, 0);
}

/** Chance of each outcome and repair together, row by row of an outcome. */
function jointOf(
  table: PredictionTable,
  ranking: Ranking,
  outcomes: Outcomes,
): { readonly repairs: readonly string[]; readonly joint: Float64Array } {
  const { samples } = table;
  const { repairs, repairOf } = repairsOf(table.candidates);
  const joint = new Float64Array(outcomes.specs.length * repairs.length);
  table.candidates.forEach((_, candidate) => {
    const chance = ranking.chances[candidate]!;
    for (let sample = 0; sample < samples; sample += 1) {
      const at = candidate * samples + sample;
      joint[outcomes.ofSample[at]! * repairs.length + repairOf[candidate]!]! +=
        chance * ranking.sampleShares[at]!;
    }
  });
  return { repairs, joint };
}

/** Expected drop in entropy over repairs from one test, in bits; never negative. */
export function expectedDrop(table: PredictionTable, ranking: Ranking, outcomes: Outcomes): number {
  const { repairs, joint } = jointOf(table, ranking, outcomes);
  const byOutcome = outcomes.specs.map((_, outcome) =>
    joint
      .subarray(outcome * repairs.length, (outcome + 1) * repairs.length)
      .reduce((a, b) => a + b, 0),
  );
  const left = entropyBits(joint) - entropyBits(byOutcome);
  return Math.max(0, ranking.entropyBits - left);
}

/** Minutes until the repair is known, by first test, for the tests that the search followed. */
function lookAhead(
  table: PredictionTable,
  ranking: Ranking,
  worths: readonly Worth[],
  ask: ProposalAsk,
  costs: CostModel,
): Map<number, number> {
  const tests = worths.filter(({ bits }) => bits > BITS_MIN).map(({ test }) => test);
  const cases: Cases = splitIntoCases(table, tests, ask.outcomes, ranking.chances, {
    sampleShares: ranking.sampleShares,
    casesMax: CASES_MAX,
    massKept: ask.massKept ?? 1,
  });
  const moves = arrangements(
    tests.map((test) => table.tests[test]!),
    ask.now,
    costs,
    ask.means.helper,
  );
  const search = new StrategySearch(cases, moves, 0, WIDTH);
  search.run(EXPANSIONS);
  return new Map(search.choices().map(({ test, minutes }) => [tests[test]!, minutes / cases.mass]));
}

function explain(
  table: PredictionTable,
  ranking: Ranking,
  worth: Worth & { readonly minutesToRepair: number },
): RankedTest {
  const leaders = ranking.suspects.slice(0, SHOWN_SUSPECTS);
  const shows = leaders.map((suspect) => predictedWords(table, worth.test, suspect));
  return { ...worth, shows, why: whyWords(table, ranking, worth) };
}

/** Sets the leader against the likeliest suspect of another repair that would show something else. */
function whyWords(table: PredictionTable, ranking: Ranking, worth: Worth): string {
  const [leader] = ranking.suspects;
  const first = predictedWords(table, worth.test, leader!);
  const other = ranking.suspects.find(
    (suspect) =>
      suspect.repair !== leader!.repair &&
      predictedWords(table, worth.test, suspect).shows !== first.shows,
  );
  const minutes = `${round(worth.cost.minutes)} min`;
  const moved = round(worth.cost.minutes - worth.cost.reading);
  const time = moved > 0 ? `${minutes}, ${moved} of them to get there` : minutes;
  if (!other) return `tells the less likely suspects apart; ${time}`;
  const second = predictedWords(table, worth.test, other);
  const name = (id: string, words: string) => (id === HEALTHY ? 'the circuit is healthy' : words);
  return `if ${name(leader!.id, first.words)}: ${first.shows}; if ${name(other.id, second.words)}: ${second.shows}; takes ${time}`;
}

function round(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}

/** Like a - b, but for infinities too. */
function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
