/** Joins the circuit's model and the ranking of suspects to what a session needs of them. */
import { type Circuit, partName } from '../circuit/circuit.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { type Model, summarised } from '../circuit/model.ts';
import { leads } from '../circuit/refuse-test.ts';
import { unitShownBy } from '../circuit/shown-by.ts';
import type { MeterUnit, Test } from '../circuit/test.ts';
import { testKey } from '../circuit/test-key.ts';
import { toldNeighbours } from '../circuit/with-neighbours.ts';
import { bindText } from '../procedure/bind-text.ts';
import type { Job } from '../procedure/job.ts';
import { expectedRangeWords, thingWords } from '../procedure/test-words.ts';
import { EVIDENCE_NEEDED } from '../suspects/corroborate.ts';
import type { RankedTest } from '../suspects/next-test.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { Ranking } from '../suspects/rank-suspects.ts';
import { reachOf } from '../suspects/shown-reach.ts';
import { COSTS, type Means, type Situation, testCost } from '../suspects/test-cost.ts';
import { PLANNED_MASS, WORTH_DOING_BITS } from '../suspects/verdict.ts';
import { whatChanged } from '../suspects/what-changed.ts';
import type { Advisor, Diagnosis, Proposal, SuspectRow, SuspectView, Weighed } from './advisor.ts';
import { type CarView, carView } from './car-view.ts';
import { type About, chooseSuspects } from './choose-suspects.ts';
import type { EvidenceLine, ExpectedShown } from './events.ts';
import { expectedFrom, expectedShown } from './expected-shown.ts';
import { type GoodHere, goodHere } from './good-here.ts';
import { isIntermittent } from './intermittent.ts';
import { leftStanding } from './left-standing.ts';
import { isUnplaced } from './place-words.ts';
import type { PossibleValues } from './possible-values.ts';
import type { Session } from './session.ts';
import type { SessionReading } from './session-readings.ts';
import { meansOf, situationOf } from './spent-minutes.ts';
import { faultWords, repairWords, suspectRows } from './suspect-rows.ts';
import type { Standing, SuspectSpace } from './suspect-space.ts';
import { testsBeside } from './tests-beside.ts';
import { toldApart } from './told-apart.ts';

/** A pair is named when it is at least this likely beside the likeliest single fault. Our choice. */
const PAIR_SHARE = 0.5;

/** Tests that are proposed at once, and those that are shown to who asks for more. */
const FIRST_TESTS = 3;
const TESTS_MOST = 9;
/** The same while a neighbour waits to be compared with. */
const COMPARED_MOST = 40;
/** Why a neighbour is looked at first. */
const COMPARED_WHY = 'what shares with it is the measure, and what is alike at both needs no limit';
/** A conclusion with less chance than this is not accepted without a word: the readings do not bear it out. Our choice. */
const BORNE_OUT = 0.8;
const MORE_LIKELY_THAN_NOT = 0.5;

/** Diagnoses kept, the last ones asked for: each holds what every test shows. Our choice. */
const DIAGNOSES_KEPT = 4;

/** An advisor over `model` for sessions that were opened so. */
export function createAdvisor(model: Model, about: About): Advisor {
  const spaceOf = chooseSuspects(model, about);
  const known = new WeakMap<Session, Diagnosis>();
  const alike = new WeakMap<SuspectSpace, Map<string, Diagnosis>>();
  const ofSpace = (space: SuspectSpace): Map<string, Diagnosis> => {
    const found = alike.get(space) ?? new Map<string, Diagnosis>();
    alike.set(space, found);
    return found;
  };
  const diagnosis = (session: Session): Diagnosis => {
    const before = known.get(session);
    if (before) return before;
    const space = spaceOf(session);
    const standing = standingIn(session, space);
    const last = ofSpace(space);
    const key = JSON.stringify(standing);
    const made = last.get(key) ?? new StateDiagnosis(model, about.job, standing, space);
    last.delete(key);
    last.set(key, made);
    const [oldest] = last.keys();
    if (last.size > DIAGNOSES_KEPT && oldest !== undefined) last.delete(oldest);
    known.set(session, made);
    return made;
  };
  return {
    diagnosis,
    suspects: (session) => diagnosis(session).suspects,
    nextTests: (session) => diagnosis(session).nextTests,
    weigh: (session, faults) => diagnosis(session).weigh(faults),
  };
}

/** All of a session that a diagnosis hangs on: a caution that was read or a note changes nothing in it. */
interface StandingIn {
  readonly readings: readonly SessionReading[];
  readonly isIntermittent: boolean;
  readonly now: Situation;
  readonly means: Means;
  /** Places of the tests that were set aside. */
  readonly aside: readonly number[];
}

function standingIn(session: Session, space: SuspectSpace): StandingIn {
  return {
    readings: space.readingsOf(session),
    isIntermittent: isIntermittent(session),
    now: situationOf(session),
    means: meansOf(session),
    aside: session.aside.flatMap((test) => space.placeOf(test) ?? []),
  };
}

/** The diagnosis of one state. What nobody asks for is not worked out. */
class StateDiagnosis implements Diagnosis {
  private readonly model: Model;
  private readonly circuit: Circuit;
  private readonly job: Job;
  private readonly space: SuspectSpace;
  private readonly readings: readonly SessionReading[];
  private readonly ranking: Ranking;
  private readonly standing: Standing;
  private readonly isIntermittent: boolean;
  private readonly good = new Map<string, GoodHere | null>();
  private readonly reaches = new Map<string, PossibleValues | null>();
  private readonly weighed = new Map<string, Weighed>();
  private view: SuspectView | undefined;
  private proposed: readonly RankedTest[] | undefined;
  private tests: readonly Proposal[] | undefined;
  private further: readonly Proposal[] | undefined;
  private left: readonly string[] | undefined;
  private known: { readonly car: CarView | null } | undefined;

  constructor(model: Model, job: Job, standing: StandingIn, space: SuspectSpace) {
    const { readings, isIntermittent: comesAndGoes, now, means, aside } = standing;
    this.model = model;
    this.circuit = model.circuit;
    this.job = job;
    this.space = space;
    this.readings = readings;
    this.ranking = space.rank(readings);
    this.isIntermittent = comesAndGoes;
    this.standing = { readings, ranking: this.ranking, now, means, aside };
  }

  get suspects(): SuspectView {
    this.view ??= this.look();
    return this.view;
  }

  get nextTests(): readonly Proposal[] {
    this.tests ??= this.told(this.propose().slice(0, FIRST_TESTS));
    return this.tests;
  }

  get furtherTests(): readonly Proposal[] {
    this.further ??= this.told(this.propose().slice(FIRST_TESTS));
    return this.further;
  }

  get car(): CarView | null {
    this.known ??= { car: this.carShown() };
    return this.known.car;
  }

  get carsLeft(): readonly Float64Array[] | null {
    return this.space.carsLeft(this.readings);
  }

  private carShown(): CarView | null {
    const { readings, ranking, space } = this;
    const before = space.carOnTheWay(readings);
    if (!before) return null;
    return carView({
      quantities: this.model.quantities,
      misfit: ranking.misfit,
      leading: ranking.repairs[0]!.chance,
      before,
      events: readings.map(({ event }) => event),
      disagrees: this.culprit()?.event ?? null,
    });
  }

  goodHere(test: Test): GoodHere | null {
    const key = testKey(test);
    const known = this.good.get(key);
    if (known !== undefined) return known;
    const made = this.goodIn(test);
    this.good.set(key, made);
    return made;
  }

  expected(test: Test): ExpectedShown {
    const place = this.space.placeOf(test);
    return place === null ? expectedShown(this.model, test) : this.expectedHere(place, test);
  }

  private goodIn(test: Test): GoodHere | null {
    const unit = unitShownBy(test.probe);
    if (unit === null) return null;
    const { readings, space, car } = this;
    const place = space.placeOf(test);
    if (place === null || !car) return null;
    const shown = (many: number) => this.expectedAfter(readings.slice(0, many), place, test);
    const tellers = [...new Set(car.values.map(({ by }) => by))];
    return goodHere({
      expected: shown(readings.length),
      unit,
      batteryVolts: this.circuit.battery.rest.nominal,
      told: tellers.map((event) => {
        const at = readings.findIndex((one) => one.event === event);
        return { event, before: shown(at), after: shown(at + 1) };
      }),
    });
  }

  possible(test: Test): PossibleValues | null {
    const key = testKey(test);
    const known = this.reaches.get(key);
    if (known !== undefined) return known;
    const made = this.possibleIn(test);
    this.reaches.set(key, made);
    return made;
  }

  private possibleIn(test: Test): PossibleValues | null {
    const unit = unitShownBy(test.probe);
    if (unit === null) return null;
    const place = this.space.placeOf(test);
    const reach = place === null ? null : this.space.reach(this.readings, place);
    if (!reach || (reach.spans.length === 0 && !reach.overLimit)) return null;
    const beside = () =>
      testsBeside(test, this.circuit).flatMap(({ test: other, words }) => {
        const at = this.space.placeOf(other);
        const shown = at === null ? null : this.space.soundShows(this.readings, at);
        const ways = (shown ?? []).map((one) => [{ shown: one, share: 1 }]);
        return reachOf([ways]).spans.map((span) => ({ words, span }));
      });
    return { ...reach, unit, meter: this.model.meter, beside };
  }

  weigh(faults: readonly string[]): Weighed {
    const key = JSON.stringify(faults);
    const made = this.weighed.get(key) ?? this.evidenceFor(faults);
    this.weighed.set(key, made);
    return made;
  }

  private look(): SuspectView {
    const { space, readings, ranking } = this;
    const before = readings.length > 0 ? space.rank(readings.slice(0, -1)) : null;
    const groupRepairs = this.group();
    return {
      rows: suspectRows(this.circuit, this.space, this.ranking),
      intermittent: this.isIntermittent,
      changed: before ? whatChanged(before, ranking, (repair) => this.thing(repair)) : null,
      unexplained: this.unexplained(),
      unexplainedBy: ranking.explained
        ? null
        : { reading: this.culprit()?.event ?? null, pair: this.twoAtOnce() },
      group: groupRepairs.length === 0 ? null : this.groupWords(groupRepairs),
      groupRepairs,
    };
  }

  private propose(): readonly RankedTest[] {
    if (this.proposed) return this.proposed;
    const ask = { massKept: PLANNED_MASS, most: this.compares ? COMPARED_MOST : TESTS_MOST };
    const { best } = this.space.propose(this.standing, ask);
    // With a group named, tests that part nothing in it are no news to anybody.
    const least = this.group().length === 0 ? 0 : WORTH_DOING_BITS;
    const worth = best.filter(({ bits }) => bits >= least);
    this.proposed = this.compares ? this.comparedFirst(worth).slice(0, TESTS_MOST) : worth;
    return this.proposed;
  }

  /** A neighbour was named, and nothing was read at one yet. */
  private get compares(): boolean {
    return (
      toldNeighbours(this.circuit).length > 0 &&
      !this.readings.some(({ test }) => this.isAtTold(test))
    );
  }

  private isAtTold(place: number): boolean {
    const { test } = this.space.testAt(place);
    const names = toldNeighbours(this.circuit).map(({ name }) => name);
    return test !== null && leads(test.probe).some((lead) => names.includes(partName(lead)));
  }

  /** The comparison that tells most of them comes first, where one tells anything: it needs no limit. */
  private comparedFirst(worth: readonly RankedTest[]): readonly RankedTest[] {
    const [first] = worth
      .filter(({ test }) => this.isAtTold(test))
      .sort((one, other) => other.bits - one.bits);
    if (!first) return worth;
    const why = `${COMPARED_WHY}; ${first.why}`;
    return [{ ...first, why }, ...worth.filter((one) => one !== first)];
  }

  private told(worth: readonly RankedTest[]): readonly Proposal[] {
    return this.apart(
      worth.map((found) =>
        this.proposal(found.test, found.cost.minutes, {
          shows: this.showsIn(found),
          why: found.why,
          bits: found.bits,
        }),
      ),
    );
  }

  private showsIn({ shows }: RankedTest): Proposal['shows'] {
    return shows.map(({ id, words, shows: shown }) => ({
      faults: this.space.faultsOf(id),
      suspect: words,
      shown,
    }));
  }

  private evidenceFor(faults: readonly string[]): Weighed {
    const { space, readings, standing } = this;
    const weighed = space.weigh(space.namedBy(faults), standing);
    const unexplained = this.unexplained();
    if (!weighed) {
      const missing = EVIDENCE_NEEDED;
      const none = { evidence: [], ruledOut: [], proven: false, hangsOn: null, first: null };
      const left = faults;
      const offers = { wouldProve: [], wouldPlace: [] };
      return { ...none, ...offers, left, chance: 0, instead: null, missing, unexplained };
    }
    const eventAt = (at: number) => readings[at]!.event;
    const evidence: EvidenceLine[] = [
      ...weighed.evidence.map(({ reading }) => ({ counted: true, reading: eventAt(reading) })),
      ...weighed.carrying.map((reading) => ({ counted: false, reading: eventAt(reading) })),
    ];
    const { hangsOn } = weighed;
    const again = hangsOn === null ? null : this.again(hangsOn);
    const isAgain = (test: number) => again !== null && readings[hangsOn!]!.test === test;
    const offered = () =>
      this.apart([
        ...(again ? [again] : []),
        ...weighed.offers
          .filter(({ test }) => !isAgain(test))
          .map(({ test, minutes }) =>
            this.proposal(test, minutes, {
              shows: [],
              why: readings.some((one) => one.test === test)
                ? 'something else stands only if this reading was wrong: make it again'
                : 'would support or break this conclusion',
              bits: null,
            }),
          ),
      ]);
    const { circuit } = this;
    const left = leftStanding(space, this.ranking, faults);
    const nextTests = () => this.nextTests;
    let wouldProve: readonly Proposal[] | undefined;
    const { chance } = weighed;
    const isBorneOut = chance >= BORNE_OUT;
    const first = again ?? (isBorneOut ? null : (this.nextTests[0] ?? null));
    return {
      evidence,
      chance,
      first,
      instead: first === null && !isBorneOut ? this.leaderInstead(chance, faults) : null,
      // A list of repairs: that something is wrong, the conclusion itself says.
      ruledOut: weighed.ruledOut
        .filter(({ repair }) => repair !== HEALTHY)
        .map(({ repair, readings: by }) => ({ repair, by: [...new Set(by.map(eventAt))] })),
      proven: weighed.proven,
      left,
      unexplained,
      missing: weighed.missing,
      hangsOn: hangsOn === null ? null : eventAt(hangsOn),
      get wouldPlace() {
        return isUnplaced(circuit, left) ? nextTests() : [];
      },
      get wouldProve() {
        wouldProve ??= offered();
        return wouldProve;
      },
    };
  }

  /** The leading repair, where it is likelier than not and than the conclusion, and none of its own. */
  private leaderInstead(chance: number, concluded: readonly string[]): SuspectRow | null {
    const [leader] = this.suspects.rows;
    if (!leader || leader.chance < MORE_LIKELY_THAN_NOT || leader.chance <= chance) return null;
    const faults = leader.faults.map(({ id }) => id);
    return faults.some((id) => concluded.includes(id)) ? null : leader;
  }

  /** The test of a reading once more; null where only a step of the tree can make it. */
  private again(reading: number): Proposal | null {
    const { test } = this.readings[reading]!;
    const { now, means, aside } = this.standing;
    if (this.space.testAt(test).test === null || aside?.includes(test)) return null;
    const { minutes } = testCost(this.space.testAt(test), now, COSTS, means.helper);
    const why = 'the conclusion hangs on this one reading: make it again';
    return this.proposal(test, minutes, { shows: [], why, bits: null });
  }

  private unexplained(): string | null {
    if (this.ranking.explained) return null;
    const culprit = this.culprit();
    const two = this.twoAtOnce();
    const pair = two
      ? ` Two faults at once would explain them: ${two.map((id) => faultWords(this.circuit, id)).join(' and ')}.`
      : '';
    if (!culprit)
      return `No single fault explains these readings; there may be two, or a lead was in the wrong place.${pair}`;
    return `No single fault explains these readings. "${culprit.words}" (${culprit.found}) disagrees most with the rest: check where both leads were, and repeat it.${pair}`;
  }

  /** The reading that disagrees most. */
  private culprit(): SessionReading | undefined {
    const { disagrees } = this.ranking;
    return disagrees ? this.readings[disagrees.reading] : undefined;
  }

  /** The likeliest pair of faults, when a single one with a slip is not much likelier than both. */
  private twoAtOnce(): readonly string[] | null {
    const { pairs, suspects } = this.ranking;
    const [pair] = pairs;
    if (!pair || pair.chance < PAIR_SHARE * suspects[0]!.chance) return null;
    return pair.ids;
  }

  /** Repairs left that no test at hand tells apart; none while one could. */
  private group(): readonly string[] {
    if (this.left) return this.left;
    if (this.readings.length === 0) return [];
    const { group, settled } = this.space.verdict(this.standing);
    this.left = !settled || group.length < 2 ? [] : group;
    return this.left;
  }

  private groupWords(repairs: readonly string[]): string {
    const words = repairs.map((repair) => repairWords(this.space, repair));
    return `No test here tells these apart: ${inOneSentence(words, '; ').replace(/\.$/, '')}.`;
  }

  /** What a repair is of, in a word or two; null for leads and what is no part. */
  private thing(repair: string): string | null {
    const { connectors, parts, wires, target } = this.circuit;
    const name = repair.replace(/\.replace$/, '');
    const isThing =
      parts.some((part) => part.name === name) ||
      wires.some((wire) => name === `wire.${wire.name}`) ||
      connectors.some(({ part }) => name === `connector.${part}`) ||
      (target !== null && name.startsWith('target'));
    if (!isThing) return null;
    return thingWords(name === 'target' ? 'target.wheel' : name, this.circuit);
  }

  private apart(proposals: readonly Proposal[]): Proposal[] {
    return toldApart(proposals, this.job, this.circuit);
  }

  /** What is good for this car. */
  private expectedHere(place: number, test: Test): ExpectedShown {
    return this.expectedAfter(this.readings, place, test);
  }

  private expectedAfter(
    readings: readonly SessionReading[],
    place: number,
    test: Test,
  ): ExpectedShown {
    const shown = this.space.soundShows(readings, place);
    const [first] = shown ?? [];
    return shown && first
      ? expectedFrom(this.model.meter, summarised(first, shown))
      : expectedShown(this.model, test);
  }

  /** A test of the table that the person could do now. */
  private proposal(
    place: number,
    minutes: number,
    told: Pick<Proposal, 'shows' | 'why' | 'bits'>,
  ): Proposal {
    const { space, model } = this;
    const entry = space.testAt(place);
    const { test, id } = entry;
    if (test === null) throw new Error(`advisor: "${id}" is done only where the tree has it`);
    const column = this.ranking.table.column(place);
    const expected = this.expectedHere(place, test);
    const unit = column.kind === 'number' ? (column.unit ?? 'V') : null;
    return {
      ...{ id, test, needs: entry.needs, ...told },
      words: bindText(entry.words, this.job, this.circuit),
      step: entry.step,
      minutes: Math.round(minutes * 10) / 10,
      healthy: healthyWords(expected, unit ?? 'V'),
      expected,
      kind: column.kind,
      unit,
      looks: column.kind === 'look' ? [...column.looks] : [],
      likely: model.shows(HEALTHY, test, 0),
    };
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

function healthyWords(expected: ExpectedShown, unit: MeterUnit): string {
  if (expected.kind === 'number')
    return expectedRangeWords({ ...expected, nominal: null, from: 'circuit' }, unit);
  return expected.looks.map((look) => LOOK_WORDS[look]).join(', or ');
}
