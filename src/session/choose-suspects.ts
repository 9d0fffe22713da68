/** Which suspects a session is about: faults that stay, those that come and go as well, or two at once. */
import { inputTerminals } from '../circuit/circuit.ts';
import type { Model } from '../circuit/model.ts';
import type { CodeKind } from '../identify/describe-code.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { type Candidate, HEALTHY } from '../suspects/prediction-table.ts';
import { priorFor, withHealthy } from '../suspects/prior.ts';
import type { TestEntry } from '../suspects/test-entries.ts';
import { carSampler, type SamplerAsk } from './car-sampler.ts';
import { codeKindsOf, codeSharesOf } from './code-answer.ts';
import { codeChance } from './code-chance.ts';
import type { SessionOpened } from './events.ts';
import {
  faultIdOf,
  type IntermittentSuspects,
  intermittentCodeChance,
  isIntermittent,
  ON_A_DRILL,
  ON_THE_ROAD,
  wakingTests,
  withIntermittent,
} from './intermittent.ts';
import { pairSuspects } from './pair-suspects.ts';
import type { Session } from './session.ts';
import { type Answers, SuspectSpace } from './suspect-space.ts';
import { type TestTable, testTable } from './test-table.ts';
import { toldFactor } from './told.ts';
import { takesAlong } from './told-neighbours.ts';

/** What the suspects of a session depend on, of its first event. */
export type About = Pick<SessionOpened, 'procedure' | 'job' | 'vehicle'>;

/** Of two faults at once, of which there are hundreds, each is asked on so many cars. */
const PAIR_SAMPLES = 8;

/** Spaces over one model that are kept, the last ones used: the drills of a class share them, and sessions one after another. */
const SPACES_KEPT = 4;
const kept = new WeakMap<Model, Map<string, SuspectSpace>>();

type SuspectsKind = 'staying' | 'intermittent' | 'pairs';

/** The suspects for any session that was opened so; each kind is made when it is first asked for, and kept. */
export function chooseSuspects(model: Model, about: About): (session: Session) => SuspectSpace {
  const made = new Map<SuspectsKind, SuspectSpace>();
  return (session) => {
    const kind = isOfTwo(about) ? 'pairs' : isIntermittent(session) ? 'intermittent' : 'staying';
    const space = made.get(kind) ?? spaceOf(model, about, kind);
    made.set(kind, space);
    return space;
  };
}

/**
 * The suspects that a drill is judged by: those of its sessions, with its `truth` surely among them. The ids of the
 * faults that are there.
 */
export function judgingSuspects(
  model: Model,
  about: About,
  truth: readonly string[],
): SuspectSpace {
  const { vehicle } = about;
  const isIntermittentLevel = vehicle.kind === 'drill' && vehicle.level === 'intermittent';
  const kind = isOfTwo(about) ? 'pairs' : isIntermittentLevel ? 'intermittent' : 'staying';
  const common = spaceOf(model, about, kind);
  const isKnown = common.table.candidates.some(({ id }) => {
    const faults = common.faultsOf(id);
    return faults.length === truth.length && faults.every((fault) => truth.includes(fault));
  });
  return isKnown ? common : spaceOf(model, about, kind, truth);
}

/** A space that was made of the same things before, or a new one. */
function spaceOf(
  model: Model,
  about: About,
  kind: SuspectsKind,
  truth: readonly string[] = [],
): SuspectSpace {
  const { procedure, job } = about;
  const key = JSON.stringify([
    kind,
    truth,
    procedure,
    [job.codes, job.codeStates, job.earlierRepairs, job.circumstances],
    replacedIn(about),
    isDrill(about),
  ]);
  const spaces = kept.get(model) ?? new Map<string, SuspectSpace>();
  kept.set(model, spaces);
  const space = spaces.get(key) ?? makeSpace(model, about, kind, truth);
  spaces.delete(key);
  spaces.set(key, space);
  const [oldest] = spaces.keys();
  if (spaces.size > SPACES_KEPT && oldest !== undefined) spaces.delete(oldest);
  return space;
}

function makeSpace(
  model: Model,
  about: About,
  kind: SuspectsKind,
  truth: readonly string[],
): SuspectSpace {
  switch (kind) {
    case 'staying':
      return thoseThatStay(model, about);
    case 'intermittent':
      return intermittentSuspects(model, about);
    case 'pairs':
      return twoAtOnce(model, about, truth);
  }
}

function isDrill({ vehicle }: About): boolean {
  return vehicle.kind === 'drill';
}

function isOfTwo({ vehicle }: About): boolean {
  return vehicle.kind === 'drill' && vehicle.level === 'double';
}

function thoseThatStay(model: Model, about: About): SuspectSpace {
  const candidates = withHealthy(model.circuit.faults);
  const table = testTable(model.circuit, about.procedure, model.meter);
  return new SuspectSpace({
    ...{ model, table, candidates, faultsOf },
    tests: table.entries,
    prior: priorOf(candidates, model, about, codeChance(model, inputTerminals(model.circuit))),
    answers: overCars(model, about.procedure, null),
  });
}

function intermittentSuspects(model: Model, about: About): SuspectSpace {
  const how = isDrill(about) ? ON_A_DRILL : ON_THE_ROAD;
  const candidates = withIntermittent(model.circuit, withHealthy(model.circuit.faults), how);
  const ofCode = codeChance(model, inputTerminals(model.circuit));
  const table = testTable(model.circuit, about.procedure, model.meter);
  // What is read with the harness at rest says nothing of a fault that is not there.
  const tests = allMoved(table, isDrill(about));
  return new SuspectSpace({
    ...{ model, table, candidates, faultsOf },
    tests: [...tests, ...wakingTests(about.procedure)],
    prior: priorOf(candidates, model, about, intermittentCodeChance(ofCode)),
    answers: overCars(model, about.procedure, how),
  });
}

/**
 * Every test with the harness moved, each once; eyes see a fault that comes and goes as it is. But for a simulated one, no
 * hand is in the harness while the engine is cranked.
 */
function allMoved({ entries, entryOf }: TestTable, isSimulated: boolean): TestEntry[] {
  const moved = entries.map((entry) => {
    const { probe, setup } = entry.test;
    const isLeft =
      probe.kind === 'inspect' ||
      (!isSimulated && (setup.state === 'cranking' || entry.reads?.length === 0));
    return isLeft ? entry : entryOf({ ...entry.test, wiggle: true });
  });
  return [...new Set(moved)];
}

function twoAtOnce(model: Model, about: About, truth: readonly string[]): SuspectSpace {
  const pairs = pairSuspects(model.circuit, truth);
  const table = testTable(model.circuit, about.procedure, model.meter);
  return new SuspectSpace({
    ...{ model, table, ...pairs },
    tests: table.entries,
    prior: priorOf(pairs.candidates, model, about, () => 1),
    answers: {
      over: 'samples',
      samples: Math.min(model.samples, PAIR_SAMPLES),
      shows: (id, { test }, sample) => model.shows(id, test!, sample),
    },
  });
}

function overCars(
  model: Model,
  procedure: Procedure | null,
  intermittent: IntermittentSuspects | null,
): Answers {
  const sampler = (testAt: SamplerAsk['testAt']) =>
    carSampler({ model, procedure, testAt, intermittent });
  return { over: 'cars', sampler };
}

function faultsOf(candidate: string): readonly string[] {
  return candidate === HEALTHY ? [] : [faultIdOf(candidate)];
}

function priorOf(
  candidates: readonly Candidate[],
  model: Model,
  about: About,
  ofCode: (candidate: string, kind: CodeKind) => number,
): Float64Array {
  const { job } = about;
  const told = toldFactor(model.circuit, job, takesAlong(model));
  return priorFor(candidates, {
    replaced: replacedIn(about),
    codes: codeKindsOf(job),
    codeShares: codeSharesOf(job),
    codeChance: ofCode,
    told: (candidate) => told(faultIdOf(candidate)),
  });
}

/** What the work order of a drill says by the name of the repair, and that of any other job by the part. */
function replacedIn({ job, vehicle }: About): string[] {
  if (vehicle.kind === 'drill' && vehicle.earlierRepair !== null) return [vehicle.earlierRepair];
  return job.earlierRepairs.flatMap(({ part }) => (part === null ? [] : [part]));
}
