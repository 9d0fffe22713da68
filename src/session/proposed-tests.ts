/** The tests that would tell most now, as they are told to a person; a neighbour that was named is compared with first. */
import { type Circuit, partName } from '../circuit/circuit.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { leads } from '../circuit/refuse-test.ts';
import type { MeterUnit } from '../circuit/test.ts';
import { toldNeighbours } from '../circuit/with-neighbours.ts';
import { bindText } from '../procedure/bind-text.ts';
import {
  expectedRangeWords,
  instrumentWords,
  probeWhere,
  setupWords,
} from '../procedure/test-words.ts';
import type { RankedTest } from '../suspects/next-test.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import { COSTS, testCost } from '../suspects/test-cost.ts';
import { PLANNED_MASS, WORTH_DOING_BITS } from '../suspects/verdict.ts';
import type { Diagnosis, Proposal } from './advisor.ts';
import type { Basis } from './basis.ts';
import type { ExpectedShown } from './events.ts';
import { oddReading } from './made-again.ts';
import { isWorthSearching } from './nothing-found.ts';
import type { ThisCar } from './this-car.ts';

/** Tests that are proposed at once, and those that are shown to who asks for more. */
const FIRST_TESTS = 3;
const TESTS_MOST = 9;
/** The same while a neighbour waits to be compared with. */
const COMPARED_MOST = 40;
/** Why a neighbour is looked at first. */
const COMPARED_WHY =
  'what shares its wiring is the reference; what is the same at both needs no limit';

/** What the proposals of a state are made of. */
export interface ProposedFrom {
  readonly basis: Basis;
  /** What is good for this car stands beside each. */
  readonly thisCar: ThisCar;
  /** Repairs left that no test tells apart. */
  readonly group: () => readonly string[];
}

/** The proposals of one state, worked out when they are first asked for. */
export class ProposedTests implements Pick<Diagnosis, 'nextTests' | 'furtherTests'> {
  private readonly from: ProposedFrom;
  private readonly circuit: Circuit;
  private best: readonly RankedTest[] | undefined;
  private next: readonly Proposal[] | undefined;
  private further: readonly Proposal[] | undefined;
  private shown: Proposal | null | undefined;

  constructor(from: ProposedFrom) {
    this.from = from;
    this.circuit = from.basis.model.circuit;
  }

  get nextTests(): readonly Proposal[] {
    this.next ??= this.proposeNext();
    return this.next;
  }

  /** Where no test tells anything more: the reading that does not fit what leads, once more. */
  private proposeNext(): readonly Proposal[] {
    const best = this.propose().slice(0, FIRST_TESTS);
    if (best.length > 0) return this.told(best);
    const again = oddReading(null, this.from.basis, this);
    return again ? [again.proposal] : [];
  }

  get furtherTests(): readonly Proposal[] {
    this.further ??= this.told(this.propose().slice(FIRST_TESTS));
    return this.further;
  }

  /** Of the tests that are worth their minutes in a search for what comes and goes the one that is most; null for none. */
  get showing(): Proposal | null {
    if (this.shown !== undefined) return this.shown;
    const [best] = this.worthSearching().filter(({ test }) => this.isMade(test));
    this.shown = best
      ? this.proposal(best.test, best.minutes, {
          shows: [],
          why: `shows such a fault with a chance of ${Math.round(best.chance * 100)} %`,
          bits: 0,
        })
      : null;
    return this.shown;
  }

  /** Whether moving or warming something that was left alone is worth its minutes in such a search. */
  get isWorthWaking(): boolean {
    return this.worthSearching().some(({ test }) => !this.isMade(test));
  }

  private worthSearching(): { test: number; minutes: number; chance: number }[] {
    const { space, standing } = this.from.basis;
    return space
      .showing(standing)
      .map(({ test, chance }) => {
        const { minutes } = testCost(
          space.testAt(test),
          standing.now,
          COSTS,
          standing.means.helper,
        );
        return { test, minutes, chance };
      })
      .filter(isWorthSearching)
      .sort((a, b) => a.minutes / a.chance - b.minutes / b.chance);
  }

  private isMade(place: number): boolean {
    return this.from.basis.space.testAt(place).test !== null;
  }

  /** A test of the table that the person could do now. */
  proposal(
    place: number,
    minutes: number,
    told: Pick<Proposal, 'shows' | 'why' | 'bits'>,
  ): Proposal {
    const { space, model, standing, job } = this.from.basis;
    const entry = space.testAt(place);
    const { test, id } = entry;
    if (test === null) throw new Error(`advisor: "${id}" is done only where the tree has it`);
    const column = standing.ranking.table.column(place);
    const expected = this.from.thisCar.expectedAt(place, test);
    const unit = column.kind === 'number' ? (column.unit ?? 'V') : null;
    return {
      ...{ id, test, needs: entry.needs, ...told },
      words: bindText(entry.words, job, this.circuit),
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

  /**
   * The proposals in their order, by words that differ. A procedure may give one title to two tests; then each says where
   * and how it looks.
   */
  apart(proposals: readonly Proposal[]): Proposal[] {
    const { job } = this.from.basis;
    return proposals.map((one) => {
      const isTwin = proposals.some((other) => other !== one && other.words === one.words);
      if (!isTwin) return one;
      const { probe, setup } = one.test;
      const where = probeWhere(probe, job, this.circuit);
      const standing = setupWords(setup, job, this.circuit);
      return { ...one, words: `${one.words}: ${where}, ${instrumentWords(probe)} (${standing})` };
    });
  }

  private propose(): readonly RankedTest[] {
    if (this.best) return this.best;
    const { space, standing } = this.from.basis;
    const compares = this.compares();
    const ask = { massKept: PLANNED_MASS, most: compares ? COMPARED_MOST : TESTS_MOST };
    const { best } = space.propose(standing, ask);
    // With a group named, tests that part nothing in it are no news to anybody.
    const least = this.from.group().length === 0 ? 0 : WORTH_DOING_BITS;
    const worth = best.filter(({ bits }) => bits >= least);
    this.best = compares ? this.comparedFirst(worth).slice(0, TESTS_MOST) : worth;
    return this.best;
  }

  /** A neighbour was named, and nothing was read at one yet. */
  private compares(): boolean {
    return (
      toldNeighbours(this.circuit).length > 0 &&
      !this.from.basis.readings.some(({ test }) => this.isAtTold(test))
    );
  }

  private isAtTold(place: number): boolean {
    const { test } = this.from.basis.space.testAt(place);
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
      faults: this.from.basis.space.faultsOf(id),
      suspect: words,
      shown,
    }));
  }
}

function healthyWords(expected: ExpectedShown, unit: MeterUnit): string {
  if (expected.kind === 'number')
    return expectedRangeWords({ ...expected, nominal: null, from: 'circuit' }, unit);
  return expected.looks.map((look) => LOOK_WORDS[look]).join(', or ');
}
