/**
 * Steps that wake a fault, as the job sheet has it: what happens hot or cold is warmed or chilled before the harness is
 * moved, and how to wake it stands before what to do. The tree stays the same but for the order of two questions, of
 * which each leads on to the other when nothing shows.
 */
import type { Happens, Job } from './job.ts';
import { type AskOutcome, type AskStep, type Procedure, type Step, WAKING } from './procedure.ts';

/** How what is told is brought about while something is moved, and while it is warmed. Common practice, no source. */
const MOVING: Readonly<Partial<Record<Happens, string>>> = {
  wet: 'It happens in the wet: mist connectors and harness with clean water first, away from the ignition and anything hot, then wiggle them.',
  bumps:
    'It happens over bumps: tap and shake as the road would, first where the harness hangs free or bends.',
  cranking:
    'It happens while cranking: the engine rocks then. Move the harness as far as the engine would, first where it goes from engine to body.',
};
const WARMING: Readonly<Partial<Record<Happens, string>>> = {
  hot: 'It happens hot, so heat it before you wiggle it.',
  cold: 'It happens cold, so heat it before you wiggle it: start with the engine cold, watch while the sensor is still cold, and chill it again once it has been warm.',
};

/** The tree for this job; the very same where the sheet tells of nothing that wakes. */
export function wakeByTold(
  procedure: Procedure,
  { circumstances }: Pick<Job, 'circumstances'>,
): Procedure {
  const happens = circumstances?.happens ?? [];
  const moving = happens.flatMap((one) => MOVING[one] ?? []);
  const warming = happens.flatMap((one) => WARMING[one] ?? []);
  if (moving.length === 0 && warming.length === 0) return procedure;
  const isWarmedFirst = warming.length > 0 && moving.length === 0;
  const ordered = isWarmedFirst
    ? Object.values(procedure.steps).reduce(warmedBefore, procedure)
    : procedure;
  // Where it is moved first after all, nothing comes first by being warmed.
  const said = isWarmedFirst
    ? warming
    : warming.map((one) => one.replace(', so heat it before you wiggle it', ''));
  const steps = Object.entries(ordered.steps).map(([id, step]): [string, Step] => {
    if (step.kind !== 'ask' || !WAKING.includes(step.family)) return [id, step];
    const before = step.family === 'wiggle' ? moving : said;
    return [id, before.length === 0 ? step : { ...step, say: [...before, step.say].join(' ') }];
  });
  return { ...ordered, steps: Object.fromEntries(steps) };
}

/** A step that moves something, and the one it leads to, which warms something: the other way round. */
function warmedBefore(procedure: Procedure, { id }: Step): Procedure {
  const { steps } = procedure;
  const moves = steps[id];
  const inVain = moves && onward(moves, 'wiggle');
  const warms = inVain && steps[inVain.go];
  const still = warms && onward(warms, 'actuation');
  if (moves?.kind !== 'ask' || warms?.kind !== 'ask' || !inVain || !still) return procedure;
  if (Object.values(steps).some((one) => one !== moves && leadsTo(one, warms.id))) return procedure;
  if (procedure.start === warms.id) return procedure;
  const past = (to: string | null) => (to === warms.id ? still.go : to);
  const entered = (to: string) => (to === moves.id ? warms.id : to);
  const others = Object.entries(steps).map(([name, step]): [string, Step] => {
    if (step === moves)
      return [
        name,
        { ...moves, outcomes: sent(moves, inVain, still.go), cannot: past(moves.cannot) },
      ];
    if (step === warms) {
      const cannot = warms.cannot === still.go ? moves.id : warms.cannot;
      return [name, { ...warms, outcomes: sent(warms, still, moves.id), cannot }];
    }
    return [name, redirected(step, entered)];
  });
  return { ...procedure, start: entered(procedure.start), steps: Object.fromEntries(others) };
}

/** The one answer of such a question that says nothing of a fault; null where it is no such question. */
function onward(step: Step, family: 'wiggle' | 'actuation'): AskOutcome | null {
  if (step.kind !== 'ask' || step.family !== family) return null;
  return step.outcomes.find(({ name }) => name === step.usual) ?? null;
}

function sent({ outcomes }: AskStep, from: AskOutcome, go: string): AskOutcome[] {
  return outcomes.map((one) => (one === from ? { ...one, go } : one));
}

function leadsTo(step: Step, id: string): boolean {
  return redirected(step, (to) => (to === id ? `${to} ` : to)) !== step;
}

/** The step with its ways sent elsewhere; the very same where none is. */
function redirected(step: Step, to: (id: string) => string): Step {
  const moved = <T extends { readonly go: string }>(one: T): T =>
    to(one.go) === one.go ? one : { ...one, go: to(one.go) };
  if (step.kind === 'conclude')
    return step.otherwise === undefined || to(step.otherwise) === step.otherwise
      ? step
      : { ...step, otherwise: to(step.otherwise) };
  const cannot = step.cannot === null ? null : to(step.cannot);
  const isSame =
    cannot === step.cannot &&
    ('go' in step ? to(step.go) === step.go : step.outcomes.every((one) => to(one.go) === one.go));
  if (isSame) return step;
  // biome-ignore lint/nursery/useExhaustiveSwitchCases: a conclusion has been returned above
  switch (step.kind) {
    case 'act':
      return { ...moved(step), cannot };
    case 'measure':
      return { ...step, cannot, outcomes: step.outcomes.map(moved) };
    case 'look':
      return { ...step, cannot, outcomes: step.outcomes.map(moved) };
    case 'ask':
      return { ...step, cannot, outcomes: step.outcomes.map(moved) };
  }
}
