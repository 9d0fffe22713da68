/**
 * What the tests of the table could tell: whether a fault looks like a healthy circuit in all of them, and which of them
 * would tell one fault from others.
 *
 * Inspections are left out: a look at every connector finds almost anything now and then, and proves nothing missing.
 */
import type { Model } from '../circuit/model.ts';
import type { Look, Test } from '../circuit/test.ts';
import { computedRange } from '../procedure/expected-range.ts';
import type { TestEntry } from '../suspects/test-entries.ts';

/** Answers about one circuit's tests, each worked out when it is asked for. */
export interface DiscriminatingTests {
  /** Whether some test shows sample `sample` of the fault to be no healthy circuit, beyond meter and tolerances. */
  readonly detects: (fault: string, sample: number) => boolean;
  /**
   * The cheapest test that shows every looked-at sample of `fault` outside what `rivals` show, or null; not one of
   * those `made` already, by their keys.
   */
  readonly separator: (
    fault: string,
    samples: readonly number[],
    rivals: readonly string[],
    made?: ReadonlySet<string>,
  ) => TestEntry | null;
}

/** Samples looked at in search of a test; the search only gives advice. */
const SEPARATOR_SAMPLES = 8;
/** Readings are apart when they differ by more than this share and so many volts or ohms: any meter shows that. Our choice. */
const APART_SHARE = 0.02;
const APART_LEAST = 0.01;

/** The answers are computed when asked for, and kept. */
export function discriminatingTests(
  model: Model,
  entries: readonly TestEntry[],
): DiscriminatingTests {
  const options = entries.filter(({ test }) => test.probe.kind !== 'inspect');
  const healthy = new Map<string, (fault: string, sample: number) => boolean>();
  const differs = (option: TestEntry) => {
    const known = healthy.get(option.key) ?? differsFromHealthy(model, option.test);
    healthy.set(option.key, known);
    return known;
  };
  /** By fault: the tests, the one that showed it last first, and what is known of its samples. */
  const looked = new Map<string, { readonly order: TestEntry[]; readonly known: boolean[] }>();
  return {
    detects: (fault, sample) => {
      const { order, known } = looked.get(fault) ?? { order: [...options], known: [] };
      looked.set(fault, { order, known });
      known[sample] ??= isShown(order, (option) => differs(option)(fault, sample));
      return known[sample]!;
    },
    separator: (fault, samples, rivals, made = new Set()) => {
      const some = thinned(samples);
      const byCost = options
        .filter(({ key }) => !made.has(key))
        .sort((a, b) => a.minutes - b.minutes);
      return byCost.find(({ test }) => separates(model, test, fault, some, rivals)) ?? null;
    },
  };
}

/** Whether some test shows it; that one goes to the front, since it mostly shows the next sample, too. */
function isShown(order: TestEntry[], shows: (option: TestEntry) => boolean): boolean {
  const at = order.findIndex(shows);
  if (at > 0) order.unshift(...order.splice(at, 1));
  return at >= 0;
}

/** The test in an advice to the author: where the tree has it already, its step. */
export function testForAuthor({ words, step }: TestEntry): string {
  return step === null ? words : `the test of step "${step}"`;
}

function differsFromHealthy(model: Model, test: Test): (fault: string, sample: number) => boolean {
  const expected = model.expected(test);
  if (expected.kind === 'looks') {
    const looks = new Set<Look>(expected.looks.map(({ look }) => look));
    return (fault, sample) => {
      const shown = model.shows(fault, test, sample);
      return shown.kind === 'look' && !looks.has(shown.look);
    };
  }
  const range = computedRange(model, test)!;
  const low = range.low ?? Number.NEGATIVE_INFINITY;
  const high = range.high ?? Number.POSITIVE_INFINITY;
  return (fault, sample) => {
    const shown = model.shows(fault, test, sample);
    return shown.kind === 'number' && (shown.value < low || shown.value > high);
  };
}

function separates(
  model: Model,
  test: Test,
  fault: string,
  samples: readonly number[],
  rivals: readonly string[],
): boolean {
  const all = thinned(Array.from({ length: model.samples }, (_, sample) => sample));
  const own = samples.map((sample) => model.shows(fault, test, sample));
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  // One that a rival shows, too, is enough to say no: most tests are done with after a few samples.
  return rivals.every((rival) =>
    all.every((sample) => {
      const shown = model.shows(rival, test, sample);
      if (shown.kind === 'look')
        return !own.some((one) => one.kind === 'look' && one.look === shown.look);
      if (shown.value >= low && shown.value <= high) return true;
      low = Math.min(low, shown.value);
      high = Math.max(high, shown.value);
      return own.every((one) => one.kind === 'look' || isApart(one.value, low, high));
    }),
  );
}

/** Over-limit is apart from every number, and has nothing beyond it. */
function isApart(value: number, low: number, high: number): boolean {
  const margin = (end: number) =>
    Number.isFinite(end) ? APART_SHARE * Math.abs(end) + APART_LEAST : 0;
  return value < low - margin(low) || value > high + margin(high);
}

/** Evenly spread, first and last among them. */
function thinned(samples: readonly number[]): readonly number[] {
  if (samples.length <= SEPARATOR_SAMPLES) return samples;
  const step = (samples.length - 1) / (SEPARATOR_SAMPLES - 1);
  return Array.from(
    { length: SEPARATOR_SAMPLES },
    (_, index) => samples[Math.round(index * step)]!,
  );
}
