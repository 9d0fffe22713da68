/**
 * What a tree leaves unsaid that can hurt an engine or leaves a repair half done (common practice, no source): cranking
 * before the timing is looked at, a battery taken off in two words, a new part that the module never learns.
 */
import { TIMING_HAZARD } from './cautions.ts';
import { type Conclusion, isTask, type Procedure, type Step } from './procedure.ts';

/** The wheel that stands in the wrong place, which a belt that has jumped looks like. */
const DISPLACED = 'target.displaced';

/**
 * The first cranking steps that are reached after a code has said "correlation" and before anybody has looked whether the
 * timing has moved, or where it could not be looked at; none in a tree that knows no wheel in the wrong place. A question
 * or a look counts that warns of what cranking does then.
 */
export function crankedUnseen(procedure: Procedure): ReadonlySet<string> {
  const { steps, start } = procedure;
  const isSuspect = Object.values(steps).some(
    (step) => step.kind === 'conclude' && step.faults.includes(DISPLACED),
  );
  if (!isSuspect) return new Set();
  const found = new Set<string>();
  const seen = new Set<string>();
  const open: { readonly id: string; readonly isTold: boolean }[] = [{ id: start, isTold: false }];
  for (let way = open.pop(); way; way = open.pop()) {
    const { id, isTold } = way;
    const step = steps[id];
    const key = `${id} ${isTold}`;
    if (!step || !isTask(step) || seen.has(key)) continue;
    seen.add(key);
    const isCranking = step.setup.state === 'cranking';
    if (!isCranking && looksAtTiming(step)) {
      // Where it could not be looked at, nobody knows; what it leads to may look as well.
      if (step.cannot !== null) open.push({ id: step.cannot, isTold: true });
      open.push(...after(step, isTold).filter((next) => isLook(steps[next.id])));
    } else if (isCranking && isTold) found.add(id);
    else open.push(...after(step, isTold));
  }
  return found;
}

function isLook(step: Step | undefined): boolean {
  return step !== undefined && isTask(step) && looksAtTiming(step);
}

function looksAtTiming(step: Exclude<Step, Conclusion>): boolean {
  return step.cautions.some(({ hazards }) => hazards.includes(TIMING_HAZARD));
}

/** Where a step leads, and whether a code has said "correlation" by then. */
function after(step: Exclude<Step, Conclusion>, isTold: boolean) {
  const beside = step.cannot === null ? [] : [{ id: step.cannot, isTold }];
  if (step.kind === 'act') return [{ id: step.go, isTold }, ...beside];
  if (step.kind !== 'ask')
    return [...step.outcomes.map(({ go }) => ({ id: go, isTold })), ...beside];
  return [
    ...step.outcomes.map(({ go, codeKinds = [] }) => ({
      id: go,
      isTold: isTold || codeKinds.includes('correlation'),
    })),
    ...beside,
  ];
}

const BATTERY_OFF = /\bbattery (?:comes )?off\b|\bdisconnect the battery\b/i;
const WITH_CARE = /\bignition (?:is )?off\b/i;
/** A part that a module measures itself against; `sensor's connector` is none. */
const NEW_PART =
  /\breplace\b(?:(?!terminal)[^.;])*\b(sensor|wheel|ring|throttle(?: body)?|pedal(?: unit)?)\b(?!')/i;
const LEARNT = /\blearn/i;

/** What a repair leaves out, each with a way out. */
export function repairFlaws({ id, repair }: Pick<Conclusion, 'id' | 'repair'>): {
  readonly code: string;
  readonly words: string;
  readonly fix: string;
}[] {
  const part = NEW_PART.exec(repair)?.[1];
  return [
    ...(BATTERY_OFF.test(repair) && !WITH_CARE.test(repair)
      ? [
          {
            code: 'battery-off-bare',
            words: `the repair of "${id}" disconnects the battery and does not say what to do first`,
            fix: 'add "cautions: [battery-off]" to this conclusion',
          },
        ]
      : []),
    ...(part !== undefined && !LEARNT.test(repair)
      ? [
          {
            code: 'missing-relearn',
            words: `the repair of "${id}" fits a new ${part.toLowerCase()} and does not mention whether the module has to learn it`,
            fix: "add what the module has to learn, by the maker's procedure",
          },
        ]
      : []),
  ];
}
