/** Joins the circuit's model and the ranking of suspects to what a session needs of them. */
import type { Circuit } from '../circuit/circuit.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import type { Model } from '../circuit/model.ts';
import type { Shown, Test } from '../circuit/test.ts';
import { computedRange } from '../procedure/expected-range.ts';
import type { Job } from '../procedure/job.ts';
import type { Procedure } from '../procedure/procedure.ts';
import {
  expectedRangeWords,
  instrumentWords,
  setupWords,
  whereWords,
} from '../procedure/test-words.ts';
import { corroborate } from '../suspects/corroborate.ts';
import { proposeTests } from '../suspects/next-test.ts';
import { AT_THE_START } from '../suspects/optimum.ts';
import { type Candidate, HEALTHY } from '../suspects/prediction-table.ts';
import { withHealthy } from '../suspects/prior.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import { ALL_MEANS, type Means, type Situation, situationAfter } from '../suspects/test-cost.ts';
import { PLANNED_MASS, verdictOf, WORTH_DOING_BITS } from '../suspects/verdict.ts';
import { whatChanged } from '../suspects/what-changed.ts';
import type { Advisor, Proposal, SuspectRow, SuspectView } from './advisor.ts';
import { chooseSuspects } from './choose-suspects.ts';
import type { EvidenceLine, ExpectedShown } from './events.ts';
import { faultIdOf, isIntermittent } from './intermittent.ts';
import type { Session } from './session.ts';
import { type SessionReading, sessionReadings } from './session-readings.ts';
import type { SuspectSpace } from './suspect-space.ts';

/** A pair is named when it is at least this likely beside the likeliest single fault. Our choice. */
const PAIR_SHARE = 0.5;
/** Things everybody has: eyes, a lead, the module's live data, a meter. */
const ALWAYS_AT_HAND = ['eyes', 'lead', 'live-data', 'meter'];

/** Where a session stands: its suspects, what was read, and the chances after it. */
interface Present {
  readonly space: SuspectSpace;
  readonly readings: readonly SessionReading[];
  readonly ranking: Ranking;
}

/** A advisor over `model` for sessions of one procedure and job. */
export function createAdvisor(model: Model, procedure: Procedure, job: Job): Advisor {
  return new ModelAdvisor(model, procedure, job);
}

class ModelAdvisor implements Advisor {
  private readonly model: Model;
  private readonly circuit: Circuit;
  private readonly job: Job;
  private readonly candidates: readonly Candidate[];
  private readonly repairWords: ReadonlyMap<string, string>;
  private readonly suspectsOf: (session: Session) => SuspectSpace;

  constructor(model: Model, procedure: Procedure, job: Job) {
    this.model = model;
    this.circuit = model.circuit;
    this.job = job;
    this.candidates = withHealthy(model.circuit.faults);
    this.suspectsOf = chooseSuspects(model, procedure, job);
    this.repairWords = new Map(
      this.candidates.map(({ repair, repairWords }) => [repair, repairWords ?? repair]),
    );
  }

  readonly suspects = (session: Session): SuspectView => {
    const present = this.present(session);
    const { space, readings, ranking } = present;
    const before = readings.length > 0 ? space.rank(readings.slice(0, -1)) : null;
    return {
      rows: this.rows(ranking),
      intermittent: isIntermittent(session),
      changed: before ? whatChanged(before, ranking) : null,
      unexplained: this.unexplained(ranking, readings),
      group: this.group(session, present),
    };
  };

  readonly nextTests = (session: Session): readonly Proposal[] => {
    const present = this.present(session);
    const { space, readings, ranking } = present;
    const { best } = proposeTests(space.table, ranking, {
      now: situationOf(present),
      means: meansOf(session),
      outcomes: space.outcomes,
      without: readings.map(({ test }) => test),
      massKept: PLANNED_MASS,
    });
    // With a group named, tests that part nothing in it are no news to anybody.
    const least = this.group(session, present) === null ? 0 : WORTH_DOING_BITS;
    const worth = best.filter(({ bits }) => bits >= least);
    return this.toldApart(
      worth.map(({ test, cost, shows, why }) =>
        proposal(
          this.model,
          space,
          test,
          cost.minutes,
          shows.map(({ words, shows: shown }) => ({ suspect: words, shown })),
          why,
        ),
      ),
    );
  };

  readonly weigh: Advisor['weigh'] = (session, faults) => {
    const present = this.present(session);
    const { space, readings, ranking } = present;
    const concluded = faults.length === 0 ? [HEALTHY] : faults;
    const weighed = corroborate(space.table, {
      // A fault that comes and goes is the same fault.
      concluded: space.table.candidates
        .map(({ id }) => id)
        .filter((id) => concluded.includes(faultIdOf(id))),
      readings,
      ranking,
      prior: space.prior,
      outcomes: space.outcomes,
      now: situationOf(present),
      means: meansOf(session),
      ...(space.showsPair ? { showsPair: space.showsPair } : {}),
    });
    const words = this.conclusionWords(concluded);
    const line = (at: number) => ({
      test: readings[at]!.words,
      where: readings[at]!.where,
      found: readings[at]!.found,
      pointsTo: words,
    });
    const evidence: EvidenceLine[] = [
      ...weighed.evidence.map(({ reading }) => line(reading)),
      ...weighed.carrying.map((reading) => ({ ...line(reading), counted: false as const })),
    ];
    const offered = () =>
      this.toldApart(
        weighed.offers.map(({ test, minutes }) =>
          proposal(this.model, space, test, minutes, [], 'would support or break this conclusion'),
        ),
      );
    let wouldProve: readonly Proposal[] | undefined;
    return {
      evidence,
      // A list of repairs: that something is wrong, the conclusion itself says.
      ruledOut: weighed.ruledOut
        .filter(({ repair }) => repair !== HEALTHY)
        .map(({ repair, readings: by }) => ({
          words: this.repairWords.get(repair) ?? repair,
          by: by.map((at) => `${readings[at]!.words}: ${readings[at]!.found}`).join('; '),
        })),
      proven: weighed.proven,
      unexplained: this.unexplained(ranking, readings),
      missing: weighed.missing,
      get wouldProve() {
        wouldProve ??= offered();
        return wouldProve;
      },
    };
  };

  private present(session: Session): Present {
    const space = this.suspectsOf(session);
    const readings = sessionReadings(session, space, this.circuit);
    return { space, readings, ranking: space.rank(readings) };
  }

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

  private rows(ranking: Ranking): SuspectRow[] {
    return ranking.repairs.map(({ repair, chance }) => {
      const faults = new Map<string, SuspectRow['faults'][number]>();
      for (const suspect of ranking.suspects) {
        if (suspect.repair !== repair) continue;
        const id = faultIdOf(suspect.id);
        const known = faults.get(id);
        const { words } = known ?? suspect;
        faults.set(id, { id, words, chance: suspect.chance + (known?.chance ?? 0) });
      }
      return {
        repair,
        words: this.repairWords.get(repair) ?? repair,
        chance,
        faults: [...faults.values()].sort((a, b) => b.chance - a.chance),
      };
    });
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

  private group(session: Session, { space, readings, ranking }: Present): string | null {
    const { group, settled } = verdictOf(space.table, ranking, {
      means: meansOf(session),
      outcomes: space.outcomes,
      without: readings.map(({ test }) => test),
    });
    if (!settled || group.length < 2) return null;
    const words = group.map((repair) => this.repairWords.get(repair) ?? repair);
    return `No test here tells these apart: ${inOneSentence(words, '; ').replace(/\.$/, '')}.`;
  }

  private conclusionWords(ids: readonly string[]): string {
    const repairs = new Set(
      this.candidates
        .filter(({ id }) => ids.includes(id))
        .map(({ repairWords, repair }) => repairWords ?? repair),
    );
    return inOneSentence([...repairs], ', or ');
  }
}

/** Sentences as the parts of one. */
function inOneSentence(sentences: readonly string[], between: string): string {
  const last = sentences.length - 1;
  return sentences
    .map((words, at) => (at < last ? words.replace(/\.$/, '') : words))
    .map((words, at) => (at > 0 ? words.replace(/^\p{Lu}(?=\p{Ll})/u, lowerCase) : words))
    .join(between);
}

function lowerCase(letter: string): string {
  return letter.toLowerCase();
}

/** How things stand at the vehicle after everything that was done. */
function situationOf({ space, readings }: Present): Situation {
  return readings.reduce<Situation>(
    (now, { test }) => situationAfter(space.testAt(test), now),
    AT_THE_START,
  );
}

function meansOf({ instruments }: Session): Means {
  return {
    ...ALL_MEANS,
    has: [...instruments, ...ALWAYS_AT_HAND],
    helper: instruments.includes('helper'),
  };
}

/** A test of the table that the person could do now. */
function proposal(
  model: Model,
  space: SuspectSpace,
  place: number,
  minutes: number,
  shows: Proposal['shows'],
  why: string,
): Proposal {
  const { id, words, test, needs } = space.testAt(place);
  if (test === null) throw new Error(`advisor: "${id}" is done only where the tree has it`);
  const column = space.table.column(place);
  const healthy = space.table.candidates.findIndex((one) => one.id === HEALTHY);
  const shown = space.table.shown(place, healthy);
  const expected = expectedOf(model, test, shown);
  return {
    id,
    words,
    test,
    minutes: Math.round(minutes * 10) / 10,
    needs: needs.filter((need) => !ALWAYS_AT_HAND.includes(need)),
    shows,
    why,
    healthy: healthyWords(expected, column.unit ?? 'V'),
    expected,
    kind: column.kind,
    looks: column.kind === 'look' ? [...column.looks] : [],
    likely: shown[0] ?? null,
  };
}

/** The range within the meter's and the model's allowance, as for a step of a procedure; the looks of the samples. */
function expectedOf(model: Model, test: Test, shown: readonly Shown[]): ExpectedShown {
  const range = computedRange(model, test);
  if (range) return { kind: 'number', low: range.low, high: range.high };
  const looks = shown.flatMap((one) => (one.kind === 'look' ? [one.look] : []));
  return { kind: 'look', looks: [...new Set(looks)] };
}

function healthyWords(expected: ExpectedShown, unit: 'V' | 'ohm'): string {
  if (expected.kind === 'number')
    return expectedRangeWords({ ...expected, nominal: null, from: 'circuit' }, unit);
  return expected.looks.map((look) => LOOK_WORDS[look]).join(', or ');
}
