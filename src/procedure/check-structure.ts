/** What is wrong with a linked tree as a whole: steps nobody comes to, loops nobody leaves, cautions that are missing. */
import type { Issue } from '../source/issue.ts';
import { uncoveredHazards } from './cautions.ts';
import { crankedUnseen, repairFlaws } from './check-safety.ts';
import type { Drive } from './job.ts';
import type { Written } from './linking.ts';
import { type Conclusion, isRequired, isTask, type Procedure, type Step } from './procedure.ts';

/** What is wrong with one step, without its place. */
type StepFlaw = Omit<Issue, 'at'>;

/** A tree and where each of its steps was written. */
interface Tree {
  readonly procedure: Procedure;
  readonly places: ReadonlyMap<string, Written>;
}

/**
 * Issues at the place of the step each belongs to; each once, however often its sub-procedure is used. Where a mistake
 * leaves open where the tree leads (not `isWhole`), only what a step has by itself is told.
 */
export function checkStructure(
  { procedure, places }: Tree,
  drive: Drive,
  isWhole: boolean,
): Issue[] {
  const issues: Issue[] = [];
  const all = new Set(Object.keys(procedure.steps));
  const reached = isWhole ? reachable(procedure) : all;
  const leaving = isWhole ? stepsThatEnd(procedure) : all;
  const cranked = isWhole ? crankedUnseen(procedure) : new Set<string>();
  for (const step of Object.values(procedure.steps)) {
    const place = places.get(step.id);
    if (!place) continue;
    const ownFlaws = isTask(step)
      ? taskFlaws(step, drive, isWhole)
      : conclusionFlaws(step, procedure, isWhole);
    const flaws = reached.has(step.id)
      ? [
          ...(cranked.has(step.id) ? [unseenTiming(step)] : []),
          ...(leaving.has(step.id) ? [] : [endless(step)]),
          ...ownFlaws,
        ]
      : unreached(step);
    for (const flaw of flaws) {
      const at = place.source.locate(place.path, 'key');
      const isTold = issues.some(
        (one) => one.code === flaw.code && one.at.file === at.file && one.at.line === at.line,
      );
      if (!isTold) issues.push({ ...flaw, at });
    }
  }
  return issues;
}

/** A caller need not use every way through a sub-procedure. */
function unreached({ id }: Step): StepFlaw[] {
  if (id.includes('/')) return [];
  const fix = 'let an outcome go there, or remove it';
  return [
    { code: 'unreachable-step', severity: 'warning', words: `nothing leads to "${id}"`, fix },
  ];
}

function unseenTiming({ id }: Step): StepFlaw {
  return {
    code: 'timing-unseen',
    severity: 'error',
    words: `the engine is cranked at "${id}" after a code says "correlation", or after the timing could not be looked at, and nobody knows whether it has moved`,
    fix: 'put a question or an inspection before it, with "cautions: [timing-first]", such as "use: timing-first", and lead its "unseen" to a conclusion',
  };
}

function endless({ id }: Step): StepFlaw {
  return {
    code: 'endless-loop',
    severity: 'error',
    words: `from "${id}" no path leads to a conclusion`,
    fix: 'lead one outcome out',
  };
}

function taskFlaws(step: Exclude<Step, Conclusion>, drive: Drive, isWhole: boolean): StepFlaw[] {
  const { state } = step.setup;
  const flaws: StepFlaw[] = uncoveredHazards(state, drive, step.cautions).map((hazard) => ({
    code: 'missing-caution',
    severity: 'error',
    words: `a step in ${state} needs a caution on ${hazard.replace(/-/g, ' ')}${hazard === 'high-voltage' ? ` where the drive is ${drive}` : ''}`,
    fix: 'add one to cautions.yaml for this vehicle state',
  }));
  if (step.kind === 'act') return flaws;
  const targets = new Set(step.outcomes.map(({ go }) => go));
  if (isWhole && step.outcomes.length > 1 && targets.size === 1)
    flaws.push({
      code: 'same-target',
      severity: 'warning',
      words: `whatever comes out of "${step.id}", it leads to "${[...targets].join()}"`,
      fix: 'lead its outcomes to different places, or make it an action step, with "go"',
    });
  if (step.why === '')
    flaws.push({
      code: 'missing-why',
      severity: 'warning',
      words: `"${step.id}" does not say what its result means`,
      fix: 'add the key "why"',
    });
  return flaws;
}

/** A conclusion that no way comes to but over a step that it requires and that could not be done. */
function neverStands(conclusion: Conclusion, procedure: Procedure): StepFlaw[] {
  const { id, requires, otherwise } = conclusion;
  if (requires === undefined) return [];
  const come = reachable(procedure, (step) => isRequired(conclusion, step.id));
  if (come.has(id)) return [];
  return [
    {
      code: 'never-stands',
      severity: 'error',
      words: `every path to "${id}" skips a step that it requires, so it can never be reached as proven`,
      fix: `require only what is done on some path to it, or lead those paths to "${otherwise}" and leave it out`,
    },
  ];
}

function conclusionFlaws(
  conclusion: Conclusion,
  procedure: Procedure,
  isWhole: boolean,
): StepFlaw[] {
  const { id, faults, retest } = conclusion;
  const { steps } = procedure;
  const flaws: StepFlaw[] = retest
    .filter((target) => isWhole || steps[target] !== undefined)
    .filter((target) => steps[target]?.kind !== 'measure' && steps[target]?.kind !== 'look')
    .map((target) => ({
      code: 'bad-retest',
      severity: 'error',
      words: `"${target}" cannot be repeated as a retest`,
      fix: 'name a step that reads something',
    }));
  if (faults.length > 0 && retest.length === 0)
    flaws.push({
      code: 'missing-retest',
      severity: 'warning',
      words: `"${id}" names no step that must pass after the repair`,
      fix: 'add the key "retest"',
    });
  for (const flaw of repairFlaws(conclusion)) flaws.push({ severity: 'warning', ...flaw });
  if (isWhole) flaws.push(...neverStands(conclusion, procedure));
  return flaws;
}

/** Steps that follow a step; without its `cannot` when only readings count. */
export function nextSteps(
  step: Step,
  { cannot = true }: { readonly cannot?: boolean } = {},
): string[] {
  if (step.kind === 'conclude')
    return cannot && step.otherwise !== undefined ? [step.otherwise] : [];
  const beside = step.cannot === null || !cannot ? [] : [step.cannot];
  if (step.kind === 'act') return [step.go, ...beside];
  return [...step.outcomes.map((outcome) => outcome.go), ...beside];
}

/** Steps that some way comes to; of those that are `made` on every way none is passed over. */
function reachable(procedure: Procedure, made: (step: Step) => boolean = () => false): Set<string> {
  const found = new Set([procedure.start]);
  for (const id of found) {
    const step = procedure.steps[id];
    for (const next of step ? nextSteps(step, { cannot: !made(step) }) : []) found.add(next);
  }
  return found;
}

/** Steps from which some way leads to a conclusion, found backwards. */
function stepsThatEnd(procedure: Procedure): Set<string> {
  const before = new Map<string, string[]>();
  for (const step of Object.values(procedure.steps)) {
    for (const next of nextSteps(step)) before.set(next, [...(before.get(next) ?? []), step.id]);
  }
  const ends = Object.values(procedure.steps).filter((step) => step.kind === 'conclude');
  const found = new Set(ends.map((step) => step.id));
  for (const id of found) {
    for (const earlier of before.get(id) ?? []) found.add(earlier);
  }
  return found;
}
