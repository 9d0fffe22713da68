/** Joins the circuit's model and the ranking of suspects to what a session needs of them. */
import type { Model } from '../circuit/model.ts';
import type { Test } from '../circuit/test.ts';
import type { Job } from '../procedure/job.ts';
import type { Slices } from '../suspects/slices.ts';
import type { Means, Situation } from '../suspects/test-cost.ts';
import type {
  Advisor,
  Asleep,
  Diagnosis,
  Proposal,
  SuspectRow,
  SuspectView,
  Weighed,
} from './advisor.ts';
import { type Basis, leftTogether } from './basis.ts';
import type { CarView } from './car-view.ts';
import { type About, chooseSuspects } from './choose-suspects.ts';
import type { ExpectedShown } from './events.ts';
import type { GoodHere } from './good-here.ts';
import { isAsleep, isIntermittent } from './intermittent.ts';
import { nothingFound } from './nothing-found.ts';
import { needsUnreached } from './out-of-reach.ts';
import { type Overturned, overturnedAnswer } from './overturned.ts';
import type { PossibleValues } from './possible-values.ts';
import { ProposedTests } from './proposed-tests.ts';
import { presentConclusion, type Session } from './session.ts';
import type { SessionReading } from './session-readings.ts';
import { meansOf, situationOf } from './spent-minutes.ts';
import type { SuspectSpace } from './suspect-space.ts';
import { ThisCar } from './this-car.ts';
import { isTimingOff, turnsEngine } from './timing-off.ts';
import { viewSuspects } from './view-suspects.ts';
import { weighConclusion } from './weigh-conclusion.ts';

/** Diagnoses kept, the last ones asked for: each holds what every test shows. Our choice. */
const DIAGNOSES_KEPT = 4;

/** An advisor over `model` for sessions that were opened so. */
export function createAdvisor(model: Model, about: About): Advisor {
  const spaceOf = chooseSuspects(model, about);
  const known = new WeakMap<Session, StateDiagnosis>();
  const alike = new WeakMap<SuspectSpace, Map<string, StateDiagnosis>>();
  const ofSpace = (space: SuspectSpace): Map<string, StateDiagnosis> => {
    const found = alike.get(space) ?? new Map<string, StateDiagnosis>();
    alike.set(space, found);
    return found;
  };
  const diagnosis = (session: Session, found?: KeptDiagnosis): StateDiagnosis => {
    const before = known.get(session);
    if (before) return before;
    const { space, standing, key } = found ?? find(session);
    const last = ofSpace(space);
    const made = last.get(key) ?? new StateDiagnosis(model, about.job, standing, space);
    last.delete(key);
    last.set(key, made);
    const [oldest] = last.keys();
    if (last.size > DIAGNOSES_KEPT && oldest !== undefined) last.delete(oldest);
    known.set(session, made);
    return made;
  };
  const find = (session: Session): KeptDiagnosis => {
    const space = spaceOf(session);
    const standing = standingIn(session, space);
    return { space, standing, key: JSON.stringify(standing) };
  };
  return {
    diagnosis: (session) => diagnosis(session),
    isReady: (session) => {
      const made = known.get(session);
      if (made) return made.isReady;
      const { space, key } = find(session);
      return ofSpace(space).get(key)?.isReady ?? false;
    },
    *prepare(session) {
      const found = find(session);
      yield* found.space.ranked(found.standing.readings);
      yield* diagnosis(session, found).prepare();
    },
    *prepareWeigh(session, faults) {
      yield* diagnosis(session).prepareWeigh(faults);
    },
    suspects: (session) => diagnosis(session).suspects,
    nextTests: (session) => diagnosis(session).nextTests,
    weigh: (session, faults) => {
      const isOfTree = presentConclusion(session)?.faults.join() === faults.join();
      return diagnosis(session).weigh(faults, isOfTree ? overturnedAnswer(session) : null);
    },
  };
}

/** All of a session that a diagnosis hangs on: a caution that was read or a note changes nothing in it. */
interface StandingIn {
  readonly readings: readonly SessionReading[];
  readonly isIntermittent: boolean;
  readonly isAsleep: boolean;
  readonly now: Situation;
  readonly means: Means;
  /** Places of the tests that were set aside, by themselves or with what they need. */
  readonly aside: readonly number[];
}

/** What the diagnosis of a session is made of, and what it is kept by. */
interface KeptDiagnosis {
  readonly space: SuspectSpace;
  readonly standing: StandingIn;
  readonly key: string;
}

function standingIn(session: Session, space: SuspectSpace): StandingIn {
  const readings = space.readingsOf(session);
  return {
    readings,
    isIntermittent: isIntermittent(session),
    isAsleep: isAsleep(session),
    now: situationOf(session),
    means: meansOf(session),
    aside: [
      ...session.aside.flatMap((test) => space.placeOf(test) ?? []),
      ...(session.unreached.length === 0
        ? []
        : space.placesWhere((test) => needsUnreached(session, test))),
      ...(isTimingOff(session) ? space.placesWhere(turnsEngine) : []),
    ],
  };
}

/** The diagnosis of one state. What nobody asks for is not worked out. */
class StateDiagnosis implements Diagnosis {
  private readonly basis: Basis;
  private readonly isIntermittent: boolean;
  private readonly isAsleep: boolean;
  private readonly thisCar: ThisCar;
  private readonly proposed: ProposedTests;
  private readonly weighed = new Map<string, Weighed>();
  private view: SuspectView | undefined;
  private together: readonly string[] | undefined;
  private search: Asleep | null | undefined;

  constructor(model: Model, job: Job, standing: StandingIn, space: SuspectSpace) {
    const {
      readings,
      isIntermittent: comesAndGoes,
      isAsleep: sleeps,
      now,
      means,
      aside,
    } = standing;
    const ranking = space.rank(readings);
    this.isIntermittent = comesAndGoes;
    this.isAsleep = sleeps;
    this.basis = {
      ...{ model, job, space, readings },
      standing: { readings, ranking, now, means, aside },
    };
    this.thisCar = new ThisCar(this.basis);
    this.proposed = new ProposedTests({
      basis: this.basis,
      thisCar: this.thisCar,
      group: () => this.group(),
    });
  }

  *prepare(): Slices<void> {
    const { space, standing, readings } = this.basis;
    if (readings.length > 0) yield* space.verdictInSlices(standing);
    void this.suspects;
    yield;
    void this.car;
  }

  *prepareWeigh(faults: readonly string[]): Slices<void> {
    const { space, standing } = this.basis;
    yield* space.weighInSlices(space.namedBy(faults), standing);
  }

  /** Whether the suspects and the car are known. */
  get isReady(): boolean {
    return this.view !== undefined && this.thisCar.isKnown;
  }

  get suspects(): SuspectView {
    this.view ??= viewSuspects(this.basis, this.group(), this.isIntermittent);
    return this.view;
  }

  get nextTests(): readonly Proposal[] {
    const { nextTests } = this.proposed;
    const first = this.asleep?.first;
    return first ? [first, ...nextTests.filter(({ id }) => id !== first.id)] : nextTests;
  }

  get furtherTests(): readonly Proposal[] {
    return this.proposed.furtherTests;
  }

  get asleep(): Asleep | null {
    if (this.search !== undefined) return this.search;
    const end = this.isAsleep ? nothingFound(this.basis) : null;
    this.search = end && this.searchFor(end);
    return this.search;
  }

  get car(): CarView | null {
    return this.thisCar.car;
  }

  get carsLeft(): readonly Float64Array[] | null {
    return this.thisCar.carsLeft;
  }

  goodHere(test: Test): GoodHere | null {
    return this.thisCar.goodHere(test);
  }

  expected(test: Test): ExpectedShown {
    return this.thisCar.expected(test);
  }

  possible(test: Test): PossibleValues | null {
    return this.thisCar.possible(test);
  }

  weigh(faults: readonly string[], overturned: Overturned | null = null): Weighed {
    const key = JSON.stringify([faults, overturned]);
    const rows = () => this.suspects.rows;
    const { basis, proposed, isIntermittent } = this;
    const made =
      this.weighed.get(key) ??
      weighConclusion(faults, basis, {
        ...{ rows, proposed, overturned, isIntermittent },
        nothingFound: this.isAsleep ? nothingFound(basis) : null,
      });
    this.weighed.set(key, made);
    return made;
  }

  /** How the search goes on that ends with `end`: what is worth searching takes longer than all else, and is asked only here. */
  private searchFor(end: SuspectRow): Asleep {
    const { showing, isWorthWaking } = this.proposed;
    return { first: showing, end: showing || isWorthWaking ? null : end };
  }

  private group(): readonly string[] {
    this.together ??= leftTogether(this.basis);
    return this.together;
  }
}
