/** Which suspects a session is about: faults that stay, or those that come and go as well. */
import { inputTerminals } from '../circuit/circuit.ts';
import { type Model, pairId } from '../circuit/model.ts';
import { UnsolvedCircuit } from '../circuit/sample-solver.ts';
import type { Shown, Test } from '../circuit/test.ts';
import type { CodeKind } from '../identify/describe-code.ts';
import type { Job } from '../procedure/job.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Candidate } from '../suspects/prediction-table.ts';
import { priorFor, withHealthy } from '../suspects/prior.ts';
import { codeKindsOf } from './code-answer.ts';
import { codeChance } from './code-chance.ts';
import {
  intermittentCodeChance,
  intermittentShows,
  isIntermittent,
  wakingTests,
  withIntermittent,
} from './intermittent.ts';
import type { Session } from './session.ts';
import { SuspectSpace } from './suspect-space.ts';
import { collectTests } from './test-table.ts';

/**
 * Of the model's samples the first so many: a low-discrepancy sequence is even in every beginning of it, and the first
 * look at all tests of a circuit then takes half a second instead of one and a half.
 */
const ADVISOR_SAMPLES = 32;

/** The suspects for any session of one procedure and job; each kind is made when it is first asked for, and kept. */
export function chooseSuspects(
  model: Model,
  procedure: Procedure,
  job: Job,
): (session: Session) => SuspectSpace {
  let staying: SuspectSpace | null = null;
  let withIntermittents: SuspectSpace | null = null;
  return (session) => {
    if (isIntermittent(session)) {
      withIntermittents ??= intermittentSuspects(model, procedure, job);
      return withIntermittents;
    }
    staying ??= stayingSuspects(model, procedure, job);
    return staying;
  };
}

function stayingSuspects(model: Model, procedure: Procedure, job: Job): SuspectSpace {
  const candidates = withHealthy(model.circuit.faults);
  return new SuspectSpace({
    model,
    candidates,
    tests: collectTests(model, procedure),
    shows: (id, { test }, sample) => model.shows(id, test!, sample),
    samples: samplesOf(model),
    prior: priorOf(candidates, job, codeChance(model, inputTerminals(model.circuit))),
    showsPair: (ids, test, sample) => pairShows(model, ids, test, sample),
  });
}

function intermittentSuspects(model: Model, procedure: Procedure, job: Job): SuspectSpace {
  const candidates = withIntermittent(model.circuit, withHealthy(model.circuit.faults));
  const ofCode = codeChance(model, inputTerminals(model.circuit));
  return new SuspectSpace({
    model,
    candidates,
    tests: [...collectTests(model, procedure), ...wakingTests(procedure)],
    shows: intermittentShows(model, procedure, samplesOf(model)),
    samples: samplesOf(model),
    prior: priorOf(candidates, job, intermittentCodeChance(ofCode)),
  });
}

function samplesOf(model: Model): number {
  return Math.min(model.samples, ADVISOR_SAMPLES);
}

function priorOf(
  candidates: readonly Candidate[],
  job: Job,
  ofCode: (candidate: string, kind: CodeKind) => number,
): Float64Array {
  return priorFor(candidates, {
    replaced: job.earlierRepairs.flatMap(({ part }) => (part === null ? [] : [part])),
    codes: codeKindsOf(job),
    codeChance: ofCode,
  });
}

/**
 * A fault beside the healthy circuit and two faults in the same thing are no pair, and two that the solver finds no
 * rest for are none it can tell of: then the first is shown alone, which explains no more than it did.
 */
function pairShows(
  model: Model,
  [firstId, secondId]: readonly [string, string],
  test: Test,
  sample: number,
): Shown {
  const [first, second] = [firstId, secondId].map((id) =>
    model.circuit.faults.find((fault) => fault.id === id),
  );
  const both = first && second ? pairId(first, second) : null;
  try {
    if (both !== null) return model.shows(both, test, sample);
  } catch (error) {
    if (!(error instanceof UnsolvedCircuit)) throw error;
  }
  return model.shows(firstId, test, sample);
}
