/** After the drill: what each reading said and cost, what proved it, the best way beside the one taken, the score. */
import type { Circuit } from '../circuit/circuit.ts';
import { bindText } from '../procedure/bind-text.ts';
import type { EventNumber, ScorePart } from '../session/events.ts';
import { repairName } from '../session/pair-suspects.ts';
import type { Session } from '../session/session.ts';
import type { SessionReading } from '../session/session-readings.ts';
import { meansOf, situationOf, spentOn } from '../session/spent-minutes.ts';
import type { SuspectSpace } from '../session/suspect-space.ts';
import { workedTimes } from '../session/worked-time.ts';
import type { Corroboration } from '../suspects/corroborate.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import type { DrillWorld } from './drill-world.ts';
import { dangerOf } from './hazards.ts';
import { type Level, levelNamed } from './levels.ts';
import { adviceFor } from './next-practice.ts';
import { pointsOf, type ScoreFacts, scoreDrill } from './score.ts';
import { followYardstick, type Yardstick } from './yardstick.ts';

/** A finished drill looked back on. */
export interface Debrief {
  readonly right: boolean;
  /** What was wrong, in words. */
  readonly truth: string;
  readonly repairs: readonly string[];
  readonly named: readonly string[];
  /** Repairs that no test here tells from the true one on this vehicle; each counts as right. */
  readonly alike: readonly string[];
  readonly readings: readonly ReadingNote[];
  /** The strongest first. */
  readonly evidence: readonly EvidenceNote[];
  /** The strongest rival that the next proof would have had to speak against; null when nothing is missing. */
  readonly left: string | null;
  readonly yardstick: Yardstick;
  /** What the score is made of, and its words. */
  readonly facts: ScoreFacts;
  readonly score: readonly ScorePart[];
  readonly points: number;
  readonly minutes: number;
  readonly late: boolean;
  readonly next: string;
}

/** What one reading of the drill cost and told. */
export interface ReadingNote {
  readonly event: EventNumber;
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

/** One reading that proves the true repair. */
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

/** The debrief of a drill whose diagnosis was given. */
export function debriefOf(session: Session, world: DrillWorld): Debrief {
  const space = world.judge();
  const { circuit, job } = session.opened;
  if (!circuit) throw new Error('debrief: a drill has a circuit');
  const { answer } = world.vehicle.hidden;
  const truth = repairName(answer.repairs);
  const yardstick = followYardstick(space, world.vehicle);
  const alike = alikeRepairs(yardstick, truth);
  const named = repairsNamed(session, circuit);
  const right = named.length > 0 && [truth, ...alike].includes(repairName(named));
  const readings = space.readingsOf(session);
  const rankings = [...Array(readings.length + 1).keys()].map((count) =>
    space.rank(readings.slice(0, count)),
  );
  const weighed = weigh(space, session, { truth, readings, ranking: rankings[readings.length]! });
  const wordsOf = (repair: string) => wordsOfRepair(space, repair);
  const { minutes, byEvent } = spentOn(session);
  const notes = readingNotes(readings, rankings, weighed, { truth, byEvent, wordsOf });
  const facts: ScoreFacts = {
    right,
    hits: named.filter((repair) => answer.repairs.includes(repair)).length,
    needed: answer.repairs.length,
    named: named.length,
    evidence: weighed.evidence.length,
    minutes,
    yardstickMinutes: yardstick.minutes,
    late: isLate(session),
    readings: notes.length,
    stopped: session.stopped.length,
    passedOver: session.passedOver.length,
  };
  const score = scoreDrill(facts);
  const faults = circuit.faults.filter(({ id }) => answer.faults.includes(id));
  return {
    right,
    truth: faults.map(({ words }) => words).join('; '),
    repairs: [...new Set(faults.map(({ repairWords }) => repairWords))],
    named: named.map((repair) => repairWordsOf(circuit, repair)),
    alike: alike.map(wordsOf),
    readings: notes,
    evidence: evidenceNotes(notes, weighed, wordsOf),
    left: weighed.missing > 0 && weighed.rival ? wordsOf(weighed.rival.repair) : null,
    yardstick: {
      ...yardstick,
      steps: yardstick.steps.map((step) => ({
        ...step,
        words: bindText(step.words, job, circuit),
      })),
    },
    facts,
    score,
    points: pointsOf(score),
    minutes,
    late: facts.late,
    next: adviceFor({
      ...facts,
      level: levelOf(session),
      wasted: notes.filter(({ toldNothing }) => toldNothing).length,
      danger: firstDanger(session, world),
      classes: faults.map((fault) => fault.class),
    }),
  };
}

/** What each reading cost and told, by the ranking before it and the one after it. */
function readingNotes(
  readings: readonly SessionReading[],
  rankings: readonly Ranking[],
  { evidence }: ReturnType<typeof weigh>,
  {
    truth,
    byEvent,
    wordsOf,
  }: {
    readonly truth: string;
    readonly byEvent: ReadonlyMap<EventNumber, number>;
    readonly wordsOf: (repair: string) => string;
  },
): ReadingNote[] {
  return readings.map(({ event, words, found }, index) => {
    const [before, after] = [rankings[index]!, rankings[index + 1]!];
    const bits = movedBits(before, after);
    // One reading says different things against different rivals: of a proof, what it is a proof by.
    const proof = evidence.find(({ reading }) => reading === index);
    const { ratio, against } = proof ?? movedOdds(truth, before, after);
    return {
      ...{ event, words, found, bits, ratio },
      minutes: tenths(byEvent.get(event) ?? 0),
      against: against === null ? '' : wordsOf(against),
      proves: proof !== undefined,
      toldNothing: bits < NEWS_BITS && !proof,
    };
  });
}

/** The repairs of the diagnosis, each once. */
function repairsNamed({ concluded }: Session, { faults }: Circuit): string[] {
  const named = faults.filter(({ id }) => concluded?.faults.includes(id) === true);
  return [...new Set(named.map(({ repair }) => repair))].sort();
}

function levelOf({ opened: { vehicle } }: Session): Level {
  if (vehicle.kind !== 'drill') throw new Error('debrief: this session is not a drill');
  return levelNamed(vehicle.level);
}

/** Over the time limit of the assignment when the diagnosis was given. */
function isLate({ opened: { vehicle }, events, concluded }: Session): boolean {
  const limit = vehicle.kind === 'drill' ? vehicle.assignment?.limitMinutes : null;
  if (typeof limit !== 'number' || !concluded) return false;
  return (workedTimes(events).get(concluded) ?? 0) > limit * 60_000;
}

/** Why the bench stopped the first test that it stopped. */
function firstDanger({ stopped }: Session, { vehicle }: DrillWorld): string | null {
  const [first] = stopped;
  return first ? (dangerOf(vehicle.model, first.test)?.reason ?? first.hazard) : null;
}

/** What the readings are worth for the true repair. */
function weigh(
  space: SuspectSpace,
  session: Session,
  {
    truth,
    readings,
    ranking,
  }: { truth: string; readings: readonly SessionReading[]; ranking: Ranking },
): Corroboration {
  const concluded = space.table.candidates.filter(({ repair }) => repair === truth);
  const weighed = space.weigh(
    concluded.map(({ id }) => id),
    { readings, ranking, now: situationOf(session), means: meansOf(session) },
  );
  if (!weighed) throw new Error('debrief: what is wrong is among the suspects');
  return weighed;
}

/** A repair in words, by its id; the id itself where the circuit does not have it. */
export function repairWordsOf({ faults }: Circuit, repair: string): string {
  return faults.find((one) => one.repair === repair)?.repairWords ?? repair;
}

function wordsOfRepair({ table }: SuspectSpace, repair: string): string {
  return table.candidates.find((one) => one.repair === repair)?.repairWords ?? repair;
}

/** What the yardstick's tests, and all that are left after them, cannot separate from the truth on this vehicle. */
function alikeRepairs({ group }: Yardstick, truth: string): string[] {
  return group.includes(truth)
    ? group.filter((repair) => repair !== truth && repair !== HEALTHY)
    : [];
}

function evidenceNotes(
  notes: readonly ReadingNote[],
  { evidence }: Corroboration,
  wordsOf: (repair: string) => string,
): EvidenceNote[] {
  // They were found one rival after the other, and a later one may be the stronger reading.
  return [...evidence]
    .sort((a, b) => (a.ratio === b.ratio ? a.reading - b.reading : b.ratio - a.ratio))
    .map(({ reading, ratio, against }) => {
      const { words, found } = notes[reading]!;
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

function tenths(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
