/**
 * What any instrument shows at any two terminals under any fault: the circuit, the fault, the setup and the instrument
 * solved together, for tolerance samples that all faults share.
 */
import { type CarQuantity, quantitiesOf } from './car-quantities.ts';
import type { Circuit, Fault } from './circuit.ts';
import { Complaint } from './complaint.ts';
import { type InputLevels, levelsIn } from './input-levels.ts';
import { CarPicker } from './pick-cars.ts';
import { type PullDown, pullDownOf } from './pull-down.ts';
import { InstrumentReader } from './read-instrument.ts';
import { leads, refuseTest } from './refuse-test.ts';
import { SampleSolver } from './sample-solver.ts';
import { createSamples, FREE_POINT, NOMINAL, type Samples } from './samples.ts';
import type { Look, Meter, MeterUnit, Shown, TerminalId, Test } from './test.ts';
import { testKey } from './test-key.ts';
import type { TestRefusal } from './test-refusal.ts';

/** How finely the tolerances are sampled, and with which meter is read. */
export interface ModelOptions {
  /** Tolerance samples, shared by all faults. */
  readonly samples: number;
  readonly seed: number;
  readonly meter: Meter;
  /** Compiled circuits that are kept for the next question, by the elements of all together. */
  readonly keptElements?: number;
}

/** What a circuit shows over its tolerances: a range of numbers, or looks with their chances. */
export type Expected =
  | {
      readonly kind: 'number';
      readonly low: number;
      readonly nominal: number;
      readonly high: number;
      readonly unit: MeterUnit;
    }
  | {
      readonly kind: 'looks';
      readonly looks: readonly { readonly look: Look; readonly chance: number }[];
    };

/** A circuit that answers any test under any fault. */
export interface Model {
  readonly circuit: Circuit;
  readonly samples: number;
  readonly meter: Meter;
  /**
   * What is shown under a fault (`healthy` for none) in sample 0 to samples - 1, or -1 for the middle of all tolerances.
   * A sample is a car that works without the fault and whose module notices it; with `carOf` the car of another fault,
   * so that one car is seen with its fault and without.
   */
  readonly shows: (faultId: string, test: Test, sample: number, carOf?: string) => Shown;
  /** What the cars of this circuit differ in, in the order of the numbers of a point. */
  readonly quantities: readonly CarQuantity[];
  /** The point of a sample of a fault, by default of the healthy circuit: where it stands in the unit cube, 0..1 in each of `quantities`. */
  readonly pointOf: (sample: number, faultId?: string) => Float64Array;
  /** The healthy car at a point does what its module wants. */
  readonly works: (point: Float64Array) => boolean;
  /**
   * The module notices the fault in the car at a point, in which the fault's size is the quantity `fault.size`. Points with
   * the same number `car` differ in nothing else, which saves looking at the healthy car again.
   */
  readonly complains: (faultId: string, point: Float64Array, car?: number) => boolean;
  /** Whether the first `count` points of the sequence are all cars of this fault, none having been left out. */
  readonly everyCar: (faultId: string, count: number) => boolean;
  /** What is shown in the car at a point; of a sample's point the same as `shows` of that sample. Nothing is kept. */
  readonly showsAt: (faultId: string, test: Test, point: Float64Array) => Shown;
  /** Why the test must not or cannot be done, or null. */
  readonly refusal: (test: Test) => TestRefusal | null;
  /** What the circuit shows over all samples, healthy unless a fault is named. */
  readonly expected: (test: Test, faultId?: string) => Expected;
  /** The two ends of the signal at the leads of a test while the target moves. */
  readonly levels: (
    faultId: string,
    test: Test,
    sample: number,
    carOf?: string,
  ) => { readonly low: number; readonly high: number };
  /**
   * The two ends of the signal at the leads of a test in the healthy car at a point, null for the middle of all
   * tolerances, the target moving, and by which volts its module counts at `input`; null where that has no such levels.
   */
  readonly signalAt: (
    test: Test,
    input: TerminalId | null,
    point: Float64Array | null,
  ) => { readonly low: number; readonly high: number; readonly levels: InputLevels | null };
  /** For a test with a light or resistor from an input to ground: whether it pulls low enough; null for other tests. */
  readonly pullsLow: (test: Test) => PullDown | null;
}

/** Between the two ids of a pair; no id holds it. */
export const PAIR_MARK = '+';

/**
 * The id under which a model shows two faults at once, in any order; null for two that sit in the same thing. Both
 * have the size of the same share of their spans, and the chance to be seen is the first one's.
 */
export function pairId(first: Fault, second: Fault): string | null {
  const shared = first.subject.some((name) => name !== 'harness' && second.subject.includes(name));
  return shared ? null : [first.id, second.id].sort().join(PAIR_MARK);
}

/** A model of a loaded circuit. */
export function createModel(circuit: Circuit, options: ModelOptions): Model {
  return new CircuitModel(circuit, options);
}

/** What is shown over several cars: the range of numbers, the middle one's among them, or looks with their shares. */
export function summarised(nominal: Shown, all: readonly Shown[]): Expected {
  if (nominal.kind === 'number') {
    const values = [nominal, ...all].map((shown) =>
      shown.kind === 'number' ? shown.value : Number.NaN,
    );
    return {
      kind: 'number',
      low: Math.min(...values),
      nominal: nominal.value,
      high: Math.max(...values),
      unit: nominal.unit,
    };
  }
  const counts = new Map<Look, number>();
  for (const shown of all.length > 0 ? all : [nominal])
    if (shown.kind === 'look') counts.set(shown.look, (counts.get(shown.look) ?? 0) + 1);
  const total = Math.max(1, all.length);
  const looks = [...counts].map(([look, count]) => ({ look, chance: count / total }));
  return { kind: 'looks', looks: looks.sort((a, b) => b.chance - a.chance) };
}

/** What one test shows under one fault, car by car: numbers by themselves, since a proof keeps millions of them. */
class ShownList {
  private unit: MeterUnit | null = null;
  private readonly numbers: number[] = [];
  private readonly others: Shown[] = [];

  at(place: number): Shown | undefined {
    const value = this.numbers[place];
    return value === undefined ? this.others[place] : { kind: 'number', value, unit: this.unit! };
  }

  keep(place: number, shown: Shown): Shown {
    this.unit ??= shown.kind === 'number' ? shown.unit : null;
    if (shown.kind === 'number' && shown.unit === this.unit) this.numbers[place] = shown.value;
    else this.others[place] = shown;
    return shown;
  }
}

class CircuitModel implements Model {
  readonly circuit: Circuit;
  readonly samples: number;
  readonly meter: Meter;
  private readonly faults: ReadonlyMap<string, Fault>;
  /** By the key of the test, then by fault. */
  private readonly shown = new Map<string, Map<string, ShownList>>();
  private readonly shownOfTest = new WeakMap<Test, Map<string, ShownList>>();
  private readonly keys = new WeakMap<Test, string>();
  private readonly pairs = new Map<string, Fault>();
  readonly solver: SampleSolver;
  readonly quantities: readonly CarQuantity[];
  private readonly draws: Samples;
  private readonly reader: InstrumentReader;
  private readonly pulls = new Map<string, PullDown | null>();
  private readonly complaint: Complaint;
  private readonly cars: CarPicker;

  constructor(circuit: Circuit, { samples, seed, meter, keptElements }: ModelOptions) {
    this.circuit = circuit;
    this.samples = samples;
    this.meter = meter;
    this.quantities = quantitiesOf(circuit);
    this.draws = createSamples(circuit, seed);
    this.solver = new SampleSolver(circuit, meter, this.draws, keptElements);
    this.reader = new InstrumentReader(circuit, this.solver, meter, this.draws);
    this.faults = new Map(circuit.faults.map((fault) => [fault.id, fault]));
    this.complaint = new Complaint(circuit, this.solver, this.reader);
    this.cars = new CarPicker(
      (index) => this.complaint.works(index),
      (faultId, index) => this.complaint.complains(this.faultOf(faultId)!, index),
    );
  }

  readonly shows = (faultId: string, test: Test, sample: number, carOf = faultId): Shown => {
    const ofTest = this.shownOfTest.get(test) ?? this.listsOf(test);
    let list = ofTest.get(faultId);
    if (!list) {
      list = new ShownList();
      ofTest.set(faultId, list);
    }
    // Kept by its place in the sequence: the healthy circuit is solved once for a car that several faults share.
    const index = this.indexOf(carOf, sample);
    return (
      list.at(index + 1) ??
      list.keep(index + 1, this.reader.read(this.faultOf(faultId), test, index))
    );
  };

  /** Number in the sequence of a sample. A pair comes in the cars of the first of its two. */
  readonly indexOf = (faultId: string, sample: number): number => {
    const mark = faultId.indexOf(PAIR_MARK);
    return this.cars.indexOf(mark < 0 ? faultId : faultId.slice(0, mark), sample);
  };

  readonly pointOf = (sample: number, faultId = 'healthy'): Float64Array => {
    const car = this.draws.carOf(this.indexOf(faultId, sample));
    return car ? car.point.slice() : new Float64Array(this.quantities.length).fill(0.5);
  };

  readonly works = (point: Float64Array): boolean => {
    this.draws.take(point);
    return this.complaint.works(FREE_POINT);
  };

  readonly complains = (faultId: string, point: Float64Array, car?: number): boolean => {
    const fault = this.faultOf(faultId);
    if (fault === null) return false;
    this.draws.take(point);
    return this.complaint.complains(fault, FREE_POINT, car);
  };

  readonly everyCar = (faultId: string, count: number): boolean =>
    this.indexOf(faultId, count - 1) === count - 1;

  readonly showsAt = (faultId: string, test: Test, point: Float64Array): Shown => {
    this.draws.take(point);
    return this.reader.read(this.faultOf(faultId), test, FREE_POINT);
  };

  readonly refusal = (test: Test): TestRefusal | null => refuseTest(this.circuit, test);

  readonly expected = (test: Test, faultId = 'healthy'): Expected =>
    summarised(
      this.shows(faultId, test, -1),
      Array.from({ length: this.samples }, (_, sample) => this.shows(faultId, test, sample)),
    );

  readonly levels = (
    faultId: string,
    test: Test,
    sample: number,
    carOf = faultId,
  ): { low: number; high: number } => {
    const [plus, minus] = leads(test.probe);
    return this.solver.levelsAt(
      this.faultOf(faultId),
      test.setup,
      plus!,
      minus ?? 'battery.negative',
      'volts',
      this.indexOf(carOf, sample),
    );
  };

  readonly signalAt: Model['signalAt'] = (test, input, point) => {
    if (point !== null) this.draws.take(point);
    const car = point === null ? NOMINAL : FREE_POINT;
    const [plus, minus] = leads(test.probe);
    const from = minus ?? 'battery.negative';
    const levels = input === null ? null : levelsIn(this.circuit, input, test.setup.state);
    return {
      ...this.solver.levelsAt(null, test.setup, plus!, from, 'volts', car),
      levels: levels?.(this.solver.valueOf(car)) ?? null,
    };
  };

  readonly pullsLow = (test: Test): PullDown | null => {
    const key = this.keyOf(test);
    const known = this.pulls.get(key);
    if (known !== undefined) return known;
    const made = pullDownOf(this, test);
    this.pulls.set(key, made);
    return made;
  };

  private keyOf(test: Test): string {
    const known = this.keys.get(test);
    if (known !== undefined) return known;
    const key = testKey(test);
    this.keys.set(test, key);
    return key;
  }

  /** What has been shown for this test, or for another one that is written the same. */
  private listsOf(test: Test): Map<string, ShownList> {
    const key = this.keyOf(test);
    const lists = this.shown.get(key) ?? new Map<string, ShownList>();
    this.shown.set(key, lists);
    this.shownOfTest.set(test, lists);
    return lists;
  }

  private faultOf(id: string): Fault | null {
    if (id === 'healthy') return null;
    const fault = this.faults.get(id) ?? this.pairs.get(id) ?? this.pairOf(id);
    if (!fault) throw new Error(`model: the circuit "${this.circuit.name}" has no fault "${id}"`);
    return fault;
  }

  /** Both faults of a `pairId` as one. */
  private pairOf(id: string): Fault | undefined {
    const [first, second] = id.split(PAIR_MARK).map((one) => this.faults.get(one));
    if (!first || !second) return undefined;
    const subject = [...first.subject, ...second.subject];
    const pair = { ...first, id, subject, also: second.effect };
    this.pairs.set(id, pair);
    return pair;
  }
}
