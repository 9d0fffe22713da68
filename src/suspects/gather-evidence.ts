/**
 * The pieces of evidence for a conclusion among the readings.
 *
 * Evidence is a reading that makes the conclusion at least three times likelier against its strongest rival: the
 * likeliest other repair that the evidence found so far leaves standing. The strongest piece is taken first, which makes
 * the result independent of the order of the readings. Two readings are one piece when kind of test, place, vehicle
 * state and what they show are the same, and when they are read at the same terminals and speak against the same rival: a lead on the
 * wrong pin, or a pin that makes no contact, would show in both. So are those that one answer gave: who says where a fault was
 * woken says with it where it was not.
 */

import type { CorroborationAsk } from './corroboration-ask.ts';
import { ERROR_MODEL, type ErrorModel } from './error-model.ts';
import { EVIDENCE_RATIO, ratioOf, sameNews, samePlace } from './evidence-ratio.ts';
import {
  type Group,
  groupRows,
  meanOver,
  namedGroup,
  type RepairRow,
} from './hypothesis-groups.ts';
import type { Reading, ReadingFit } from './likelihood.ts';
import { HEALTHY, type PredictionTable } from './prediction-table.ts';
import { normalised, priorFor } from './prior.ts';
import type { Ranking } from './rank-suspects.ts';

/**
 * One piece never weighs more than tenfold in finding the strongest rival left, as any reading may be wrong: a rival
 * that one reading contradicts is stronger than one that two do.
 */
const PIECE_MAX = 10;
/** A reading farther out than this share of what the named faults show is not explained by them: 99 % intervals. */
const TAIL_MIN = 0.01;
/** Ratios that differ by less than this share are equal but for rounding. */
const SAME_RATIO = 1e-9;
/** Added to each likelihood (a share, or one over volts or ohms), so that products of exact readings never all vanish. */
export const LIKELIHOOD_MIN = 1e-12;

interface WeighedReading {
  /** Place in the readings. */
  readonly reading: number;
  readonly test: number;
  /** How many times likelier the reading is under the conclusion than under the rival. */
  readonly ratio: number;
}

/** One independent piece: a reading and the rival that it speaks against. */
export interface Evidence extends WeighedReading {
  /** Repair of the strongest rival that was left when this piece was taken. */
  readonly against: string;
}

/**
 * Readings that are no piece and yet carry the conclusion: what it names explains them, and a sound circuit does not. A
 * bad reading that led to the conclusion is shown with it even where other readings have said the same.
 */
export function carryingReadings(
  table: PredictionTable,
  ask: CorroborationAsk,
  fits: readonly ReadingFit[],
  pieces: readonly Evidence[],
): number[] {
  const healthy = table.candidates.findIndex(({ id }) => id === HEALTHY);
  const named = namedGroup(table, ask.concluded);
  if (healthy < 0 || named.members.includes(healthy)) return [];
  const chances = ask.ranking.chances;
  return fits.flatMap((fit, reading) => {
    if (pieces.some((piece) => piece.reading === reading)) return [];
    const isExplained = explains(fit, named, chances, ask.errorModel ?? ERROR_MODEL);
    const isUnsound = meanOver(fit.perRow, named, chances) >= EVIDENCE_RATIO * fit.perRow[healthy]!;
    return isExplained && isUnsound ? [reading] : [];
  });
}

/** The pieces, the strongest first, and the strongest rival that they leave standing. */
export interface Pieces {
  readonly evidence: readonly Evidence[];
  readonly rival: RepairRow | null;
}

/**
 * The pieces that are found by taking the strongest each time. Where they are fewer than `enough`, and two things were seen
 * at the terminals of one, such as a signal's picture and its position, the other is asked for in its place: it may speak
 * against a rival that nothing else speaks against, while a third says what the first had said. Taken is what gives the most
 * pieces. A number that is read at a pin again is the same number, and no such thing.
 */
export function gatherEvidence(
  table: PredictionTable,
  ask: CorroborationAsk,
  own: ReadonlySet<string>,
  fits: readonly ReadingFit[],
  enough: number,
): Pieces {
  const strongest = strongestFirst(table, ask, own, fits, null);
  if (!strongest.rival || strongest.evidence.length >= enough) return strongest;
  const isSeen = (test: number) => table.column(test).kind === 'look';
  const isShared = ({ test }: Evidence) =>
    isSeen(test) &&
    ask.readings.some(
      (one) =>
        one.test !== test &&
        isSeen(one.test) &&
        samePlace(table.tests[one.test]!, table.tests[test]!),
    );
  return strongest.evidence
    .filter(isShared)
    .map(({ test }) => strongestFirst(table, ask, own, fits, test))
    .reduce<Pieces>(
      (most, one) => (one.evidence.length > most.evidence.length ? one : most),
      strongest,
    );
}

/**
 * Takes the strongest piece against the strongest rival, again and again, until no reading speaks against it. Of the test
 * `but` no piece is taken.
 */
function strongestFirst(
  table: PredictionTable,
  ask: CorroborationAsk,
  own: ReadonlySet<string>,
  fits: readonly ReadingFit[],
  but: number | null,
): Pieces {
  const evidence: Evidence[] = [];
  const prior = ask.prior ?? priorFor(table.candidates);
  const voices = onePerPlace(table, ask.readings, own, fits, prior);
  const known = withFurther(ask.ranking, fits);
  const given = (...left: number[]) => givenRest(known, fits, voices, left);
  const ratioAmong = (reading: number, concluded: Group, rival: Group, chances: Float64Array) =>
    ratioOf(fits[reading]!.perRow, concluded, rival, chances);
  const named = namedGroup(table, ask.concluded);
  let chances = prior;
  const alone = fits.map((_, left) => given(left));
  for (;;) {
    const { concluded, others } = groupRows(table, own, chances);
    const rival = others.find(({ chance }) => chance > 0) ?? null;
    if (!rival) return { evidence, rival };
    let best: Evidence | null = null;
    for (const [reading, { test, shown, event }] of ask.readings.entries()) {
      if (test === but) continue;
      if (event !== undefined && evidence.some((one) => ask.readings[one.reading]!.event === event))
        continue;
      const asked = table.tests[test]!;
      const isKnown = evidence.some((one) =>
        sameNews(table.tests[one.test]!, asked, ask.readings[one.reading]!.shown, shown),
      );
      if (isKnown) continue;
      if (!explains(fits[reading]!, named, alone[reading]!, ask.errorModel ?? ERROR_MODEL))
        continue;
      const ratio = ratioAmong(reading, concluded, rival, alone[reading]!);
      if (!(ratio >= EVIDENCE_RATIO && (!best || isStronger(ratio, test, best)))) continue;
      const isSaid = evidence.some((one) => {
        if (!samePlace(table.tests[one.test]!, asked)) return false;
        const rest = given(reading, one.reading);
        const met = others.find(({ repair }) => repair === one.against)!;
        return (
          ratioAmong(one.reading, concluded, rival, rest) >= EVIDENCE_RATIO ||
          ratioAmong(reading, concluded, met, rest) >= EVIDENCE_RATIO
        );
      });
      if (!isSaid) best = { reading, test, ratio, against: rival.repair };
    }
    if (!best) return { evidence, rival };
    evidence.push(best);
    const { perRow } = fits[best.reading]!;
    const ours = meanOver(perRow, concluded, chances);
    chances = normalised(
      chances.map(
        (chance, row) => chance * Math.min(PIECE_MAX, Math.max(1 / PIECE_MAX, perRow[row]! / ours)),
      ),
    );
  }
}

/**
 * Of the readings at one place the one that tells most for the conclusion against everything else. The others are left
 * out of what is known beside a reading: a second look at the same pin must not make a piece of what a third one says.
 */
function onePerPlace(
  table: PredictionTable,
  readings: readonly Reading[],
  own: ReadonlySet<string>,
  fits: readonly ReadingFit[],
  prior: Float64Array,
): number[] {
  const { concluded, others } = groupRows(table, own, prior);
  const rest = { members: others.flatMap(({ members }) => members) };
  const voices: WeighedReading[] = [];
  for (const [reading, { test }] of readings.entries()) {
    const ratio = ratioOf(fits[reading]!.perRow, concluded, rest, prior);
    const one = { reading, test, ratio };
    const known = voices.findIndex(
      (other) => other.test === test || samePlace(table.tests[other.test]!, table.tests[test]!),
    );
    if (known < 0) voices.push(one);
    else if (isStronger(ratio, test, voices[known]!)) voices[known] = one;
  }
  return voices.map(({ reading }) => reading);
}

/** Chances after all readings: those that the ranking knows, and what stands behind them in `fits`. */
function withFurther({ chances, fits: known }: Ranking, fits: readonly ReadingFit[]): Float64Array {
  return normalised(
    chances.map((chance, row) =>
      fits
        .slice(known.length)
        .reduce((product, { perRow }) => product * (perRow[row]! + LIKELIHOOD_MIN), chance),
    ),
  );
}

/**
 * Chances after the `voices` alone, those left out apart: what a reading says of a repair depends on which of its faults
 * the other readings leave. A reading is taken out by dividing by its fit.
 */
function givenRest(
  known: Float64Array,
  fits: readonly ReadingFit[],
  voices: readonly number[],
  left: readonly number[],
): Float64Array {
  const out = fits.filter((_, at) => left.includes(at) || !voices.includes(at));
  return normalised(
    known.map((chance, row) =>
      out.reduce((rest, { perRow }) => rest / (perRow[row]! + LIKELIHOOD_MIN), chance),
    ),
  );
}

/**
 * Whether the named faults explain the reading: it lies within what they show, and is not as likely a slip. What they
 * cannot explain is no evidence for them, however badly the rivals explain it.
 */
function explains(
  { perRow, tail, blind }: ReadingFit,
  named: Group,
  chances: Float64Array,
  { wrongReading }: ErrorModel,
): boolean {
  if (!(meanOver(perRow, named, chances) > 2 * wrongReading * blind)) return false;
  const tails = new Float64Array(perRow.length);
  for (const member of named.members) tails[member] = tail(member);
  return meanOver(tails, named, chances) >= TAIL_MIN;
}

/** Stronger by more than rounding, or as strong and earlier in the table: the order of the readings must not show. */
function isStronger(ratio: number, test: number, than: WeighedReading): boolean {
  if (Math.abs(ratio - than.ratio) > SAME_RATIO * than.ratio) return ratio > than.ratio;
  return test < than.test;
}
