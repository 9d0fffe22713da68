/** After the drill: what each reading said and cost, what proved it, the best way beside the one taken, the score. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Corroboration } from '../suspects/corroborate.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import type { Drill } from './drill.ts';
import type { ScorePart } from './drill-events.ts';
import { type DrillMind, repairName } from './drill-mind.ts';
import type { DrillWorld } from './drill-world.ts';
import { adviceFor } from './next-practice.ts';
import { pointsOf, scoreDrill } from './score.ts';
import { followYardstick, type Yardstick } from './yardstick.ts';

export interface Debrief {
  readonly right: boolean;
  /** What was wrong, in words. */
  readonly truth: string;
  readonly repairs: readonly string[];
  readonly named: readonly string[];
  /** Repairs that no standard test tells from the true one on this vehicle; each counts as right. */
  readonly alike: readonly string[];
  readonly readings: readonly ReadingNote[];
  /** The strongest first. */
  readonly evidence: readonly EvidenceNote[];
  /** The strongest rival that the next proof would have had to speak against; null when nothing is missing. */
  readonly left: string | null;
  readonly yardstick: Yardstick;
  readonly score: readonly ScorePart[];
  readonly points: number;
  readonly minutes: number;
  readonly late: boolean;
  readonly next: string;
}
export interface ReadingNote {
  readonly words: string;
  readonly found: string;
  readonly minutes: number;
  /** How far it moved the chances of the repairs, in bits. */
  readonly bits: number;
  /** How many times likelier it made the true repair against the rival `against`; below 1 it misled. */
  readonly ratio: number;
  /** Of a proof the rival that it is counted against, else the strongest one before the reading; empty without any. */
  readonly against: string;
  readonly proves: boolean;
  readonly toldNothing: boolean;
}
export interface EvidenceNote {
  /** Place in the readings. */
  readonly reading: number;
  readonly words: string;
  readonly found: string;
  readonly ratio: number;
  readonly against: string;
}

/** A reading that moves the chances by less than this, in bits, told nothing new. Our choice: 60 % to 70 % is 0.03 bits. */
const NEWS_BITS = 0.03;
/** A rival that all standard tests together leave within this factor of the truth cannot be told from it. */
const ALIKE_RATIO = 3;

/** The debrief of a drill whose diagnosis was given. */
export function debriefOf(drill: Drill, world: DrillWorld): Debrief {
  const mind = world.judge(drill.readings);
  const { earlierRepair, circuit, assignment } = drill.opened;
  const { answer } = world.vehicle.hidden;
  const truth = repairName(answer.repairs);
  const alike = alikeRepairs(mind, world, truth, earlierRepair);
  const named = drill.diagnosed?.repairs ?? [];
  const right = named.length > 0 && [truth, ...alike].includes(repairName(named));
  const readings = mind.readingsOf(drill.readings);
  const rankings = [...Array(readings.length + 1).keys()].map((count) =>
    mind.rank(readings.slice(0, count), earlierRepair),
  );
  const weighed = mind.weigh({
    repair: truth,
    readings,
    ranking: rankings[readings.length]!,
    now: drill.situation,
    earlierRepair,
  });
  const wordsOf = (repair: string) => wordsOfRepair(mind, repair);
  const yardstick = followYardstick(mind, world.vehicle, earlierRepair);
  const limit = assignment?.limitMinutes ?? null;
  const late = limit !== null && drill.clockMs > limit * 60_000;
  const notes = drill.readings.map((event, index): ReadingNote => {
    const bits = movedBits(rankings[index]!, rankings[index + 1]!);
    // One reading says different things against different rivals: of a proof, what it is a proof by.
    const proof = weighed.evidence.find(({ reading }) => reading === index);
    const { ratio, against } = proof ?? movedOdds(truth, rankings[index]!, rankings[index + 1]!);
    return {
      words: event.words,
      found: event.found,
      minutes: event.minutes,
      bits,
      ratio,
      against: against === null ? '' : wordsOf(against),
      proves: proof !== undefined,
      toldNothing: bits < NEWS_BITS && !proof,
    };
  });
  const evidence = weighed.evidence.length;
  const hits = named.filter((repair) => answer.repairs.includes(repair)).length;
  const score = scoreDrill({
    right,
    hits,
    needed: answer.repairs.length,
    named: named.length,
    evidence,
    minutes: drill.minutes,
    yardstickMinutes: yardstick.minutes,
    late,
    readings: drill.readings.length,
    stopped: drill.stopped.length,
    passedOver: drill.passedOver.length,
  });
  const faults = circuit.faults.filter(({ id }) => answer.faults.includes(id));
  return {
    right,
    truth: faults.map(({ words }) => words).join('; '),
    repairs: [...new Set(faults.map(({ repairWords }) => repairWords))],
    named: named.map((repair) => repairWordsOf(circuit, repair)),
    alike: alike.map(wordsOf),
    readings: notes,
    evidence: evidenceNotes(drill, weighed, wordsOf),
    left: weighed.missing > 0 && weighed.rival ? wordsOf(weighed.rival.repair) : null,
    yardstick,
    score,
    points: pointsOf(score),
    minutes: drill.minutes,
    late,
    next: adviceFor({
      drill,
      right,
      evidence,
      wasted: notes.filter(({ toldNothing }) => toldNothing).length,
      yardstickMinutes: yardstick.minutes,
      classes: faults.map((fault) => fault.class),
    }),
  };
}

/** Words for a repair of the circuit. */
export function repairWordsOf({ faults }: Circuit, repair: string): string {
  return faults.find((one) => one.repair === repair)?.repairWords ?? repair;
}

function wordsOfRepair({ table }: DrillMind, repair: string): string {
  return table.candidates.find((one) => one.repair === repair)?.repairWords ?? repair;
}

/** What every standard test together cannot separate from the truth, on this vehicle. */
function alikeRepairs(
  mind: DrillMind,
  { vehicle }: DrillWorld,
  truth: string,
  earlierRepair: string | null,
): string[] {
  const base = mind.knowing([]);
  const standard = base.tests.map(({ test }, index) => ({
    test: index,
    shown: vehicle.answers(test, index).shown,
  }));
  const { repairs } = base.rank(standard, earlierRepair);
  const chance = repairs.find(({ repair }) => repair === truth)?.chance ?? 0;
  return repairs
    .filter(({ repair, chance: other }) => repair !== truth && other * ALIKE_RATIO > chance)
    .map(({ repair }) => repair);
}

function evidenceNotes(
  drill: Drill,
  { evidence }: Corroboration,
  wordsOf: (repair: string) => string,
): EvidenceNote[] {
  // They were found one rival after the other, and a later one may be the stronger reading.
  return [...evidence]
    .sort((a, b) => (a.ratio === b.ratio ? a.reading - b.reading : b.ratio - a.ratio))
    .map(({ reading, ratio, against }) => {
      const { words, found } = drill.readings[reading]!;
      return { reading, words, found, ratio, against: wordsOf(against) };
    });
}

/** Kullback and Leibler's divergence of the chances of the repairs, after against before, in bits. */
function movedBits(before: Ranking, after: Ranking): number {
  return after.repairs.reduce((sum, { repair, chance }) => {
    const was = chanceOf(before, repair);
    return chance > 0 && was > 0 ? sum + chance * Math.log2(chance / was) : sum;
  }, 0);
}

/** What the reading did to the truth against the rival that was strongest before it. */
function movedOdds(
  truth: string,
  before: Ranking,
  after: Ranking,
): { readonly ratio: number; readonly against: string | null } {
  const rival = before.repairs.find(({ repair }) => repair !== truth && repair !== HEALTHY);
  if (!rival) return { ratio: 1, against: null };
  const odds = (ranking: Ranking) =>
    Math.max(chanceOf(ranking, truth), TINY) / Math.max(chanceOf(ranking, rival.repair), TINY);
  return { ratio: odds(after) / odds(before), against: rival.repair };
}
/** So that a rival that is all but out makes a large number and not an infinite one. */
const TINY = 1e-9;

function chanceOf(ranking: Ranking, wanted: string): number {
  return ranking.repairs.find(({ repair }) => repair === wanted)?.chance ?? 0;
}
