/**
 * Whether a conclusion is proven: by three independent pieces of evidence, each of which knocks down the best
 * alternative that the others left, so that no rival can hide behind another (`gather-evidence.ts`).
 */
import type { CorroborationAsk } from './corroboration-ask.ts';
import { ERROR_MODEL, type ErrorModel } from './error-model.ts';
import {
  carryingReadings,
  type Evidence,
  gatherEvidence,
  LIKELIHOOD_MIN,
} from './gather-evidence.ts';
import {
  type Group,
  groupRows,
  likeliestOf,
  namedGroup,
  type RepairRow,
} from './hypothesis-groups.ts';
import { fitReading, type Reading, type ReadingFit, uncertaintyOf } from './likelihood.ts';
import { type Offer, offerAgain, offerTests } from './offer-tests.ts';
import type { PredictionTable } from './prediction-table.ts';
import { normalised, priorFor } from './prior.ts';
import { type RuledOut, ruleOut } from './rule-out.ts';
import type { Slices } from './slices.ts';

/** Independent pieces that prove a conclusion. */
export const EVIDENCE_NEEDED = 3;
const MORE_LIKELY_THAN_NOT = 0.5;
/** A conclusion with less chance than this is not accepted without a word: the readings do not bear it out. Our choice. */
export const BORNE_OUT = 0.8;
/** With less than this chance a rival stands that no piece has knocked down, and at least one more is missing. */
const PROVEN_CHANCE = 0.99;
/** Nothing is proven on a car that is not as described with more than this chance. Our choice. */
const MISFIT_MAX = 0.1;
/** A rival with less chance than this is not worth a test of its own. Our choice. */
const WORTH_LIFTING = 0.0005;
/** A repair this unlikely is ruled out, when some reading speaks against it: rare things are not ruled out by being rare. */
const RULED_OUT_CHANCE = 0.02;

/** What the readings are worth for a conclusion, and what would be worth more. */
export interface Corroboration {
  /** Three pieces, no rival left standing, and nothing unexplained. */
  readonly proven: boolean;
  readonly missing: number;
  /** Chance of the conclusion after all readings. */
  readonly chance: number;
  /** Repair that the next piece must speak against; its chance after all readings. */
  readonly rival: { readonly repair: string; readonly chance: number } | null;
  /** The strongest first. */
  readonly evidence: readonly Evidence[];
  /** Places of readings that carry the conclusion and are no pieces of their own. */
  readonly carrying: readonly number[];
  readonly ruledOut: readonly RuledOut[];
  /**
   * Place of the reading, made once, without which the conclusion would be less likely than not: the most needed if it
   * is several. One slip of the hand would end in a wrong repair. Null where it is not likelier than not with all of them.
   */
  readonly hangsOn: number | null;
  /** The same of one that is not proven, without which it would not be borne out; null where it hangs on one. */
  readonly leansOn: number | null;
  /** Tests that would give what is missing, the cheapest for its chance first; none when nothing is missing. */
  readonly offers: readonly Offer[];
}

/**
 * Weighs a conclusion, in a slice for each repair that may be ruled out and some for each reading that it may hang on.
 * All faults with the same repair as a concluded one belong to it.
 */
export function* corroborate(table: PredictionTable, ask: CorroborationAsk): Slices<Corroboration> {
  const { ranking, readings } = ask;
  const errorModel = ask.errorModel ?? ERROR_MODEL;
  const { fits } = ranking;
  const own = ownRepairs(table, ask.concluded);
  const { evidence, rival } = gatherEvidence(table, ask, own, fits, EVIDENCE_NEEDED);
  const now = groupRows(table, own, ranking.chances);
  const [strongest] = now.others;
  const open = now.concluded.chance < PROVEN_CHANCE ? 1 : 0;
  const missing = rival ? Math.max(open, EVIDENCE_NEEDED - evidence.length) : 0;
  const hangsOn = yield* hangingOn(ask, now.concluded, MORE_LIKELY_THAN_NOT);
  const proven =
    missing === 0 && ranking.explained && ranking.misfit <= MISFIT_MAX && hangsOn === null;
  const leansOn =
    proven || hangsOn !== null ? null : yield* hangingOn(ask, now.concluded, BORNE_OUT);
  const named = namedGroup(table, ask.concluded);
  // Of two wires that touch both are mended, whichever the repair is named after.
  const isTouched = (repair: string) =>
    named.members.some((fault) => table.candidates[fault]!.subject?.includes(repair));
  const held = {
    table,
    readings,
    fits,
    concluded: likeliestOf(named, ranking.chances),
    prior: ask.prior ?? priorFor(table.candidates),
    showsPair: ranking.showsPair,
    errorModel,
  };
  // Against a rival that still stands the next piece is needed, else against the strongest that the pieces left.
  const next = open && strongest ? strongest : rival;
  const ruledOut: RuledOut[] = [];
  for (const row of now.others) {
    if (row.chance >= RULED_OUT_CHANCE || isTouched(row.repair)) continue;
    const found = ruleOut(held, row);
    if (found) ruledOut.push(found);
    yield;
  }
  let offers: readonly Offer[] | undefined;
  return {
    proven,
    missing,
    chance: now.concluded.chance,
    rival: next && {
      repair: next.repair,
      chance: now.others.find(({ repair }) => repair === next.repair)!.chance,
    },
    evidence,
    hangsOn,
    leansOn,
    carrying: carryingReadings(table, ask, fits, evidence),
    ruledOut,
    // Half of the work, and many only ask what is proven.
    get offers() {
      offers ??= anyOffers(table, ask, { own, named, now, rival, next, missing, evidence });
      return offers;
    },
  };
}

/** A conclusion as far as it is weighed, for which more is to be found. */
interface OpenConclusion {
  readonly own: ReadonlySet<string>;
  readonly named: Group;
  readonly now: ReturnType<typeof groupRows>;
  readonly rival: RepairRow | null;
  /** The rival against which the next piece is needed. */
  readonly next: RepairRow | null;
  readonly missing: number;
  readonly evidence: readonly Evidence[];
}

/** What a rival stands on is made again last: it brings no piece, and lifts the chance. */
function anyOffers(
  table: PredictionTable,
  ask: CorroborationAsk,
  weighing: OpenConclusion,
): Offer[] {
  const { named, now } = weighing;
  const [strongest] = now.others;
  const isOpen = now.concluded.chance < PROVEN_CHANCE;
  return [
    ...newOffers(table, ask, weighing),
    ...(isOpen && strongest ? offerAgain(ask, named, strongest) : []),
  ];
}

/** Where nothing speaks against the strongest rival, the chance of those behind it is what can be lifted. */
function newOffers(
  table: PredictionTable,
  ask: CorroborationAsk,
  { own, named, now, rival, next, missing, evidence }: OpenConclusion,
): readonly Offer[] {
  if (missing === 0 || !next) return [];
  const { readings, ranking, errorModel = ERROR_MODEL } = ask;
  // Short of pieces, whatever brings one does; else only a rival that is worth it.
  const short = evidence.length < EVIDENCE_NEEDED;
  const piecesWith = (reading: Reading) => {
    const more = { ...ask, readings: [...readings, reading] };
    const fits = [...ranking.fits, fitOf(table, reading, errorModel)];
    return gatherEvidence(table, more, own, fits, EVIDENCE_NEEDED).evidence.length;
  };
  // With pieces enough it is the chance that is missing, which whatever speaks against the rival lifts.
  const brings = (reading: Reading) => !short || piecesWith(reading) > evidence.length;
  for (const row of short && rival ? [next, rival] : [next, ...now.others]) {
    if (!short && row !== next && row.chance < WORTH_LIFTING) break;
    const found = offerTests(table, ask, { concluded: named, rival: row, brings });
    if (found.length > 0) return found;
  }
  return [];
}

/** The reading, made once, without which a conclusion that has at least the chance `least` would have less. */
function* hangingOn(
  { readings, ranking }: CorroborationAsk,
  concluded: Group,
  least: number,
): Slices<number | null> {
  const { fits, chances, table } = ranking;
  const mass = (weights: Float64Array) =>
    concluded.members.reduce((sum, one) => sum + weights[one]!, 0);
  if (mass(chances) < least) return null;
  const made = (test: number) => readings.filter((one) => one.test === test).length;
  const lost = readings
    .flatMap(({ test }, reading) => {
      if (made(test) > 1 || table.tests[test]!.shownTwice) return [];
      const divided = normalised(
        chances.map((chance, row) => chance / (fits[reading]!.perRow[row]! + LIKELIHOOD_MIN)),
      );
      return [{ reading, divided, chance: mass(divided) }];
    })
    .filter(({ chance }) => chance < least)
    .sort((a, b) => a.chance - b.chance);
  // Later readings may say the same as this one: then it is asked what they say without it.
  const { without } = ranking;
  for (const { reading, divided } of lost)
    if (!without || mass(yield* without(reading, divided)) < least) return reading;
  return null;
}

function ownRepairs(table: PredictionTable, concluded: readonly string[]): Set<string> {
  const own = new Set(
    table.candidates.filter(({ id }) => concluded.includes(id)).map(({ repair }) => repair),
  );
  if (own.size === 0) throw new Error(`corroborate: no such fault: ${concluded.join(', ')}`);
  return own;
}

function fitOf(table: PredictionTable, reading: Reading, errorModel: ErrorModel): ReadingFit {
  return fitReading(
    table.column(reading.test),
    table.candidates.length,
    table.samples,
    reading.shown,
    uncertaintyOf(table, reading),
    errorModel,
  );
}
