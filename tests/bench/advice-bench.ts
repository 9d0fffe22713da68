/**
 * How long a session thinks after a reading: the ranking with its clouds of cars, the verdict, the proposal, and weighing
 * the leading repair; on simulated vehicles of every shipped circuit that are led from test to test. `reading` is ranking
 * and verdict together, which stand on the screen then; `slice` is the longest stretch of them, or of
 * the weighing, in which no key is taken.
 * Times are processor time, which tells nothing of what else runs.
 * OHMWARD_CIRCUIT=NAME looks at one of them.
 * Then the memory that a session keeps in which a fault comes and goes and does not come.
 */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { createModel } from '../../src/circuit/model.ts';
import { createBench } from '../../src/drill/bench.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { chooseSuspects, judgingSuspects } from '../../src/session/choose-suspects.ts';
import { RULES, SESSION_FORMAT, type SessionOpened } from '../../src/session/events.ts';
import { openSession } from '../../src/session/evolve.ts';
import type { Reading } from '../../src/suspects/likelihood.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import type { Slices } from '../../src/suspects/slices.ts';
import { ALL_MEANS, situationAfter } from '../../src/suspects/test-cost.ts';
import type { TestEntry } from '../../src/suspects/test-entries.ts';
import { PLANNED_MASS, WORTH_DOING_BITS } from '../../src/suspects/verdict.ts';

const FAULTS = 8;
const READINGS_MAX = 10;
const STAGES = ['rank', 'verdict', 'propose', 'weigh'] as const;
const ALL_STAGES = ['reading', 'slice', ...STAGES] as const;

type Times = Record<(typeof ALL_STAGES)[number], number[]>;

/** Prints the times of every shipped circuit, in milliseconds. */
export function benchAdvice(
  now: () => number = processorMs,
  print: (line: string) => void = console.log,
): void {
  const wanted = process.env['OHMWARD_CIRCUIT'];
  const all: Times = noTimes();
  for (const circuit of loadLibrary('procedures').circuits.values()) {
    if (wanted !== undefined && wanted !== circuit.name) continue;
    const { startMs, times } = timeCircuit(circuit, now);
    print(`${circuit.name}: ready after ${startMs.toFixed(0)} ms; ${wordsOf(times)}`);
    for (const stage of ALL_STAGES) all[stage].push(...times[stage]);
  }
  print(`all: ${wordsOf(all)}`);
}

/** Prints what is kept of READINGS_MAX readings at a car on which nothing shows, all that a session asks after each. */
export function benchMemory(print: (line: string) => void = console.log): void {
  const wanted = process.env['OHMWARD_CIRCUIT'];
  for (const circuit of loadLibrary('procedures').circuits.values()) {
    if (wanted !== undefined && wanted !== circuit.name) continue;
    const model = createModel(circuit, { samples: 32, seed: 1, meter: STANDARD_SETTINGS.meter });
    const job = { ...emptyJob('bench'), circumstances: { happens: ['bumps'] as const } };
    const opened: SessionOpened = {
      ...{ type: 'session-opened', format: SESSION_FORMAT, rules: RULES, elapsed: 0, job },
      ...{ program: 'ohmward bench', by: 'person', id: 'bench', person: '', shop: '' },
      ...{ at: '2031-05-06T09:00:00.000+02:00', instruments: [], meter: STANDARD_SETTINGS.meter },
      ...{ procedure: null, circuit: null, cautionRules: [], vehicle: { kind: 'real' } },
    };
    const space = chooseSuspects(model, opened)(openSession(opened));
    const before = heapMb();
    const readings: Reading[] = [];
    for (const place of space.offered()) {
      const { test } = space.testAt(place);
      if (test === null || readings.length === READINGS_MAX) continue;
      readings.push({ test: place, shown: model.shows(HEALTHY, test, 0) });
      const ranking = space.rank(readings);
      space.verdict({ readings, ranking, means: ALL_MEANS });
    }
    print(
      `${circuit.name}: ${Math.round(heapMb() - before)} MB kept after ${readings.length} readings`,
    );
  }
}

/** Of the heap, what is still held. */
function heapMb(): number {
  setFlagsFromString('--expose-gc');
  runInNewContext('gc')();
  return process.memoryUsage().heapUsed / 1e6;
}

function timeCircuit(
  circuit: Circuit,
  now: () => number,
): { readonly startMs: number; readonly times: Times } {
  const start = now();
  const model = createModel(circuit, { samples: 32, seed: 1, meter: STANDARD_SETTINGS.meter });
  const vehicle = { kind: 'real' } as const;
  const about = { procedure: null, job: emptyJob('bench'), vehicle };
  const space = judgingSuspects(model, about, []);
  space.verdict({ readings: [], ranking: space.rank([]), means: ALL_MEANS });
  const startMs = now() - start;
  const times = noTimes();
  const timed = <Made>(stage: keyof Times, work: () => Made): Made => {
    const before = now();
    const made = work();
    times[stage].push(now() - before);
    return made;
  };
  /** All slices at once, and the longest of them. */
  const sliced = <Made>(work: Slices<Made>): { readonly made: Made; readonly longest: number } => {
    let longest = 0;
    for (;;) {
      const before = now();
      const slice = work.next();
      longest = Math.max(longest, now() - before);
      if (slice.done) return { made: slice.value, longest };
    }
  };
  const step = Math.max(1, Math.floor(circuit.faults.length / FAULTS));
  circuit.faults.forEach(({ id }, place) => {
    if (place % step !== 0) return;
    const car = createBench(model, id, (place * 7 + 3) % model.samples);
    const readings: Reading[] = [];
    let situation = AT_THE_START;
    while (readings.length < READINGS_MAX) {
      const ranked = timed('rank', () => sliced(space.ranked(readings)));
      const ranking = ranked.made;
      const standing = { readings, ranking, now: situation, means: ALL_MEANS };
      const verdict = timed('verdict', () => sliced(space.verdictInSlices(standing)));
      times.reading.push(times.rank.at(-1)! + times.verdict.at(-1)!);
      const leader = [ranking.suspects[0]!.id];
      const weighed = timed('weigh', () => sliced(space.weighInSlices(leader, standing)));
      times.slice.push(Math.max(ranked.longest, verdict.longest, weighed.longest));
      const { best } = timed('propose', () => space.propose(standing, { massKept: PLANNED_MASS }));
      const next = best.find(({ bits }) => bits >= WORTH_DOING_BITS);
      if (!next) return;
      const entry = space.testAt(next.test);
      if (entry.test === null) return;
      situation = situationAfter(entry as TestEntry, situation);
      readings.push({ test: next.test, shown: car.shows(entry.test) });
    }
  });
  return { startMs, times };
}

/** Of all stages together, a reading. */
function meanOf(times: Times): number {
  const all = STAGES.flatMap((stage) => times[stage]);
  return all.reduce((a, b) => a + b, 0) / times.rank.length;
}

function noTimes(): Times {
  return { reading: [], slice: [], rank: [], verdict: [], propose: [], weigh: [] };
}

function wordsOf(times: Times): string {
  return ALL_STAGES.map((stage) => {
    const sorted = [...times[stage]].sort((a, b) => a - b);
    const at = (share: number) =>
      sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
    return `${stage} ${at(0.5).toFixed(0)} / p99 ${at(0.99).toFixed(0)} / worst ${at(1).toFixed(0)}`;
  })
    .concat(`${times.rank.length} readings, ${meanOf(times).toFixed(0)} each`)
    .join('; ');
}

function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
