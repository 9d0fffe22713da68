/** Circuit and tree for the harness of one car: sections and joints in the circuit, and conclusions that stand for them. */
import type { Circuit } from '../circuit/circuit.ts';
import type { Joint } from '../circuit/section-faults.ts';
import { type Harness, type WithHarness, withHarness } from '../circuit/with-harness.ts';
import type { AskOutcome, Conclusion, Procedure, Step } from './procedure.ts';

/**
 * The same with the harness put in. What a conclusion says of a whole wire, it says of each of its sections and of the
 * contacts on its way, so that a tree that knows nothing of them ends right.
 */
export function fitHarness<C extends Circuit | null, P extends Procedure | null>(
  harness: Harness,
  { circuit, procedure }: { readonly circuit: C; readonly procedure: P },
): { readonly circuit: C; readonly procedure: P } {
  const isEmpty = harness.joints.length === 0 && harness.wires.length === 0;
  if (!circuit || isEmpty) return { circuit, procedure };
  const { circuit: made, becomes } = withHarness(circuit, harness);
  return {
    circuit: made as C,
    procedure: procedure === null ? procedure : fittedTree(procedure, harness, becomes),
  };
}

function fittedTree<P extends Procedure>(
  procedure: P,
  { joints }: Harness,
  becomes: WithHarness['becomes'],
): P {
  const now = (faults: readonly string[]) => [
    ...new Set(faults.flatMap((id) => becomes.get(id) ?? [id])),
  ];
  const known = <O extends { readonly under?: readonly string[] }>(one: O): O =>
    one.under ? { ...one, under: now(one.under) } : one;
  const fitted = (step: Step): Step => {
    switch (step.kind) {
      case 'conclude':
        return { ...step, faults: now(step.faults) };
      case 'measure':
        return { ...step, outcomes: step.outcomes.map(known) };
      case 'ask':
        return { ...step, outcomes: step.outcomes.map(known) };
      case 'look':
      case 'act':
        return step;
    }
  };
  const steps = Object.fromEntries(
    Object.entries(procedure.steps).map(([id, step]) => [id, fitted(step)]),
  );
  const connectors = joints.filter(({ splice }) => !splice);
  return { ...procedure, steps: connectors.reduce(withPlace, steps) };
}

type Steps = Procedure['steps'];

/**
 * A connector of this car is a place of its own wherever the harness is moved: its contacts are what a movement there
 * wakes. The answer for the harness still speaks of them too, since who moves it hand by hand moves them with it.
 */
function withPlace(steps: Steps, joint: Joint): Steps {
  const of = `contact.${joint.name}.`;
  let made = steps;
  for (const step of Object.values(steps)) {
    if (step.kind !== 'ask' || step.family !== 'wiggle') continue;
    const along = step.outcomes.findIndex(({ under }) => under?.some((id) => id.startsWith(of)));
    const harness = step.outcomes[along];
    const end = harness && endBehind(steps, harness.go);
    if (!harness || !end) continue;
    const faults = (harness.under ?? []).filter((id) => id.startsWith(of));
    const seat = seatOf(joint, { ...end, id: harness.go }, faults);
    const place: AskOutcome = {
      name: joint.name,
      words: `it drops out at the ${joint.words}`,
      under: faults,
      go: seat.id,
    };
    made = {
      ...made,
      [seat.id]: seat,
      [step.id]: {
        ...step,
        say: `${step.say} Move the ${joint.words} by itself.`,
        outcomes: [...step.outcomes.slice(0, along), place, ...step.outcomes.slice(along)],
      },
    };
  }
  return made;
}

/** The conclusion at `id`, or the first of those between which a question there asks. */
function endBehind(steps: Steps, id: string): Conclusion | null {
  const step = steps[id];
  if (step?.kind === 'conclude') return step;
  const ends = step?.kind === 'ask' ? step.outcomes.map(({ go }) => steps[go]) : [];
  return ends.find((end) => end?.kind === 'conclude') ?? null;
}

/** What is wrong where a movement at a connector wakes the fault. */
function seatOf({ name, words }: Joint, end: Conclusion, faults: readonly string[]): Conclusion {
  return {
    ...end,
    id: `${end.id}@${name}`,
    title: `An intermittent contact in the ${words}`,
    faults,
    say: `It drops out when the ${words} is moved.`,
    repair: `Open the ${words}: clean, refit or replace its terminals, and see that it locks.`,
    customer: 'A connector in the harness makes bad contact when it moves.',
  };
}
