/** Joins the circuit's model and the ranking of suspects to what a session needs of them. */
import type { Circuit } from '../circuit/circuit.ts';
import { inputTerminals } from '../circuit/circuit.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { type Model, pairId } from '../circuit/model.ts';
import { shownOf } from '../circuit/shown-of.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import { type CodeKind, describeCode } from '../identify/describe-code.ts';
import type { Job } from '../procedure/job.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { instrumentWords, setupWords, whereWords } from '../procedure/test-words.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import { corroborate } from '../suspects/corroborate.ts';
import type { Reading } from '../suspects/likelihood.ts';
import { proposeTests } from '../suspects/next-test.ts';
import { outcomesOf } from '../suspects/outcomes.ts';
import { buildTable, HEALTHY, type PredictionTable } from '../suspects/prediction-table.ts';
import { priorFor } from '../suspects/prior.ts';
import type { PairShows } from '../suspects/rank-pairs.ts';
import { type Ranking, rankSuspects } from '../suspects/rank-suspects.ts';
import { ALL_MEANS, type Means, type Situation, situationAfter } from '../suspects/test-cost.ts';
import { PLANNED_MASS, verdictOf, WORTH_DOING_BITS } from '../suspects/verdict.ts';
import { whatChanged } from '../suspects/what-changed.ts';
import { codeChance } from './code-chance.ts';
import type { EvidenceLine } from './events.ts';
import { type Session, standingAnswers } from './session.ts';
import type { Proposal, SuspectRow, SuspectView, Thinker } from './thinker.ts';
import {
  candidatesOf,
  collectTests,
  needsOf,
  type ThinkerTest,
  tableTest,
} from './thinker-table.ts';

/**
 * Of the model's samples the first so many: a low-discrepancy sequence is even in every beginning of it, and the first
 * look at all tests of a circuit then takes half a second instead of one and a half.
 */
const THINKER_SAMPLES = 32;
/** A pair is named when it is at least this likely beside the likeliest single fault. Our choice. */
const PAIR_SHARE = 0.5;
/** Things everybody has: eyes, a lead, the module's live data. */
const ALWAYS_AT_HAND = ['eyes', 'lead', 'live-data', 'meter'];

/** One reading of the session and the words for it. */
interface SessionReading extends Reading {
  readonly found: string;
  /** What was asked: the same test may stand in the tree by several names. */
  readonly words: string;
}

/** A thinker over `model` for sessions of one procedure and job. */
export function createThinker(model: Model, procedure: Procedure, job: Job): Thinker {
  return new ModelThinker(model, procedure, job);
}

class ModelThinker implements Thinker {
  private readonly model: Model;
  private readonly circuit: Circuit;
  private readonly job: Job;
  /** Grows by the tests a person thinks of; the table computes a column when it is first asked for. */
  private readonly tests: ThinkerTest[];
  private readonly byKey: Map<string, number>;
  private readonly table: PredictionTable;
  private readonly outcomes: ReturnType<typeof outcomesOf>;
  private readonly prior: Float64Array;
  private readonly repairWords: ReadonlyMap<string, string>;
  private readonly rankings = new Map<string, Ranking>();

  constructor(model: Model, procedure: Procedure, job: Job) {
    this.model = model;
    this.circuit = model.circuit;
    this.job = job;
    this.tests = collectTests(model, procedure);
    this.byKey = new Map(this.tests.map(({ test }, index) => [testKey(test), index]));
    const candidates = candidatesOf(model.circuit);
    this.table = buildTable<ThinkerTest>(
      candidates,
      this.tests,
      (id, { test }, sample) => model.shows(id, test, sample),
      Math.min(model.samples, THINKER_SAMPLES),
    );
    this.outcomes = outcomesOf(this.table);
    this.prior = priorFor(candidates, {
      replaced: job.earlierRepairs.flatMap(({ part }) => (part === null ? [] : [part])),
      codes: codeKinds(job),
      codeChance: codeChance(model, inputTerminals(model.circuit)),
    });
    this.repairWords = new Map(
      candidates.map(({ repair, repairWords }) => [repair, repairWords ?? repair]),
    );
  }

  readonly suspects = (session: Session): SuspectView => {
    const readings = this.readings(session);
    const ranking = this.rank(readings);
    const before = readings.length > 0 ? this.rank(readings.slice(0, -1)) : null;
    return {
      rows: this.rows(ranking),
      changed: before ? whatChanged(before, ranking) : null,
      unexplained: this.unexplained(ranking, readings),
      group: this.group(session, ranking, readings),
    };
  };

  readonly nextTests = (session: Session): readonly Proposal[] => {
    const readings = this.readings(session);
    const done = readings.map(({ test }) => test);
    const ranking = this.rank(readings);
    const { best } = proposeTests(this.table, ranking, {
      now: this.situation(session),
      means: meansOf(session),
      outcomes: this.outcomes,
      without: done,
      massKept: PLANNED_MASS,
    });
    // With a group named, tests that part nothing in it are no news to anybody.
    const least = this.group(session, ranking, readings) === null ? 0 : WORTH_DOING_BITS;
    const worth = best.filter(({ bits }) => bits >= least);
    return this.toldApart(
      worth.map(({ test, cost, shows, why }) =>
        this.proposal(
          test,
          cost.minutes,
          shows.map(({ words, shows: shown }) => ({ repairWords: words, shown })),
          why,
        ),
      ),
    );
  };

  readonly weigh: Thinker['weigh'] = (session, faults) => {
    const readings = this.readings(session);
    const ranking = this.rank(readings);
    const concluded = faults.length === 0 ? [HEALTHY] : faults;
    const weighed = corroborate(this.table, {
      concluded,
      readings,
      ranking,
      prior: this.prior,
      outcomes: this.outcomes,
      now: this.situation(session),
      means: meansOf(session),
    });
    const words = this.conclusionWords(concluded);
    const evidence: EvidenceLine[] = weighed.evidence.map(({ reading, test }) => ({
      test: readings[reading]!.words,
      where: whereWords(this.tests[test]!.test.probe, this.job, this.circuit),
      found: readings[reading]!.found,
      pointsTo: words,
    }));
    return {
      evidence,
      ruledOut: weighed.ruledOut.map(({ repair, reading }) => ({
        words: this.repairWords.get(repair) ?? repair,
        by: `${readings[reading]!.words}: ${readings[reading]!.found}`,
      })),
      proven: weighed.proven,
      missing: weighed.missing,
      wouldProve: this.toldApart(
        weighed.offers.map(({ test, minutes }) =>
          this.proposal(test, minutes, [], 'would support or break this conclusion'),
        ),
      ),
    };
  };

  /** A procedure may give one title to two tests; then each says where and how it looks. */
  private toldApart(proposals: readonly Proposal[]): Proposal[] {
    return proposals.map((one) => {
      const isTwin = proposals.some((other) => other !== one && other.words === one.words);
      if (!isTwin) return one;
      const { probe, setup } = one.test;
      const where = whereWords(probe, this.job, this.circuit);
      const standing = setupWords(setup, this.job, this.circuit);
      return { ...one, words: `${one.words}: ${where}, ${instrumentWords(probe)} (${standing})` };
    });
  }

  private proposal(test: number, minutes: number, shows: Proposal['shows'], why: string): Proposal {
    const option = this.tests[test]!;
    const column = this.table.column(test);
    const healthy = this.table.candidates.findIndex(({ id }) => id === HEALTHY);
    const shown = this.table.shown(test, healthy);
    return {
      id: option.id,
      words: option.words,
      test: option.test,
      minutes: Math.round(minutes * 10) / 10,
      needs: option.needs.filter((need) => !ALWAYS_AT_HAND.includes(need)),
      shows,
      why,
      healthy: healthyWords(shown),
      kind: column.kind,
      looks: column.kind === 'look' ? [...column.looks] : [],
      likely: shown[0] ?? null,
    };
  }

  /** Standing answers and extra readings that the model can weigh, in the order they were saved. */
  private readings(session: Session): SessionReading[] {
    const standing = new Set<unknown>(standingAnswers(session));
    return session.events.flatMap((event): SessionReading[] => {
      if (event.type === 'extra-reading')
        return this.reading(event.test, shownOf(event.shown), event.typed, event.words);
      if (!standing.has(event)) return [];
      if (event.type !== 'reading-recorded' && event.type !== 'look-recorded') return [];
      const step = session.opened.procedure.steps[event.step];
      if ((step?.kind !== 'measure' && step?.kind !== 'look') || step.probe === null) return [];
      const test = { setup: step.setup, probe: step.probe };
      if (event.type === 'look-recorded')
        return event.look === null
          ? []
          : this.reading(
              test,
              { kind: 'look', look: event.look },
              LOOK_WORDS[event.look],
              step.title,
            );
      if (event.unit !== 'V' && event.unit !== 'ohm') return [];
      const value = event.value ?? Number.POSITIVE_INFINITY;
      return this.reading(
        test,
        { kind: 'number', value, unit: event.unit },
        formatQuantity({ value, unit: event.unit }),
        step.title,
      );
    });
  }

  private reading(test: Test, shown: Shown, found: string, words: string): SessionReading[] {
    const index = this.byKey.get(testKey(test)) ?? this.remember(test, words);
    return index === null ? [] : [{ test: index, shown, found, words }];
  }

  /** Takes a test of the person's own into the table; null when the model cannot answer it. */
  private remember(test: Test, words: string): number | null {
    if (this.model.refusal(test) !== null) return null;
    const rest = { id: `own-${this.tests.length}`, words, family: test.probe.kind, minutes: 1 };
    const index =
      this.tests.push(tableTest(this.model, test, { ...rest, needs: needsOf(test) })) - 1;
    this.byKey.set(testKey(test), index);
    return index;
  }

  private rank(readings: readonly SessionReading[]): Ranking {
    const key = JSON.stringify(
      readings.map(({ test, shown }) => [
        test,
        shown.kind === 'look' ? shown.look : String(shown.value),
      ]),
    );
    const known = this.rankings.get(key);
    if (known) return known;
    const ranking = rankSuspects(this.table, readings, this.prior, { showsPair: this.showsPair });
    this.rankings.set(key, ranking);
    return ranking;
  }

  private rows(ranking: Ranking): SuspectRow[] {
    return ranking.repairs.map(({ repair, chance }) => ({
      repair,
      words: this.repairWords.get(repair) ?? repair,
      chance,
      faults: ranking.suspects
        .filter((suspect) => suspect.repair === repair)
        .map(({ id, words, chance: own }) => ({ id, words, chance: own })),
    }));
  }

  private unexplained(ranking: Ranking, readings: readonly SessionReading[]): string | null {
    if (ranking.explained) return null;
    const culprit = ranking.disagrees ? readings[ranking.disagrees.reading] : undefined;
    const two = this.twoAtOnce(ranking);
    const pair = two ? ` Two faults at once would explain them: ${two}.` : '';
    if (!culprit)
      return `No single fault explains these readings; there may be two, or a lead was in the wrong place.${pair}`;
    return `No single fault explains these readings. "${culprit.words}" (${culprit.found}) disagrees most with the rest: check where both leads were, and repeat it.${pair}`;
  }

  /** "A and B" for the likeliest pair of faults, when a single one with a slip is not much likelier than both. */
  private twoAtOnce({ pairs, suspects }: Ranking): string | null {
    const [pair] = pairs;
    if (!pair || pair.chance < PAIR_SHARE * suspects[0]!.chance) return null;
    return pair.ids.map((id) => suspects.find((one) => one.id === id)?.words ?? id).join(' and ');
  }

  /** Two faults in the same thing are no pair: then the first is shown alone, which explains no more than it did. */
  private readonly showsPair: PairShows = (firstId, secondId, test) => {
    const [first, second] = [firstId, secondId].map((id) =>
      this.circuit.faults.find((fault) => fault.id === id),
    );
    const id = (first && second && pairId(first, second)) ?? firstId;
    return Array.from({ length: this.table.samples }, (_, sample) =>
      this.model.shows(id, this.tests[test]!.test, sample),
    );
  };

  private group(
    session: Session,
    ranking: Ranking,
    readings: readonly SessionReading[],
  ): string | null {
    const { group, settled } = verdictOf(this.table, ranking, {
      means: meansOf(session),
      outcomes: this.outcomes,
      without: readings.map(({ test }) => test),
    });
    if (!settled || group.length < 2) return null;
    const words = group.map((repair) => this.repairWords.get(repair) ?? repair);
    return `No test here parts these: ${inOneSentence(words, '; ').replace(/\.$/, '')}.`;
  }

  /** How things stand at the vehicle after everything that was done. */
  private situation(session: Session): Situation {
    const start: Situation = { state: 'key-off', unplugged: [], reached: [] };
    return this.readings(session).reduce(
      (now, { test }) => situationAfter(this.tests[test]!, now),
      start,
    );
  }

  private conclusionWords(ids: readonly string[]): string {
    const repairs = new Set(
      this.table.candidates
        .filter(({ id }) => ids.includes(id))
        .map(({ repairWords, repair }) => repairWords ?? repair),
    );
    return inOneSentence([...repairs], ', or ');
  }
}

/** Sentences as the parts of one. */
function inOneSentence(sentences: readonly string[], between: string): string {
  const [last = '', ...before] = [...sentences].reverse();
  return [...before.reverse().map((words) => words.replace(/\.$/, '')), last].join(between);
}

function meansOf({ instruments }: Session): Means {
  return {
    ...ALL_MEANS,
    has: [...instruments, ...ALWAYS_AT_HAND],
    helper: instruments.includes('helper'),
  };
}

function codeKinds(job: Job): CodeKind[] {
  return job.codes.flatMap((code) => {
    const described = describeCode(code);
    return described?.sensorRole && described.kind ? [described.kind] : [];
  });
}

function healthyWords(shown: readonly Shown[]): string {
  const looks = new Set(
    shown.flatMap((one) => (one.kind === 'look' ? [LOOK_WORDS[one.look]] : [])),
  );
  if (looks.size > 0) return [...looks].join(', or ');
  const values = shown.flatMap((one) => (one.kind === 'number' ? [one.value] : []));
  const unit = shown[0]?.kind === 'number' ? shown[0].unit : 'V';
  const low = formatQuantity({ value: Math.min(...values), unit });
  const high = formatQuantity({ value: Math.max(...values), unit });
  return low === high ? low : `${low} to ${high}`;
}
