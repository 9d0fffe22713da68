/**
 * A tree as far as the ways through it hang on it: which conclusions lack a step that was passed over, and which faults
 * are woken on the way. Ways that lack the same share one `Lacking`, so that they are walked once.
 */
import type { Test } from '../circuit/test.ts';
import {
  type Conclusion,
  isRequired,
  type LookStep,
  type MeasureStep,
  type Procedure,
  type Step,
  standingConclusion,
  WAKING,
} from '../procedure/procedure.ts';
import { testOf } from '../procedure/test-of.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';

/** How many steps were passed over, which conclusions lack one of them, and whether the fault has been seen to come. */
export interface Lacking {
  readonly skips: number;
  readonly required: readonly ReadonlySet<string>[];
  /** It was brought on by moving or warming, and an answer says so that a sound circuit does not give. */
  readonly seen: boolean;
  readonly next: Map<ReadonlySet<string> | null, Lacking>;
  /** By conclusion come to: the one that stands in its place. */
  readonly ends: Map<string, string>;
  /** The same with the fault seen, once it was asked for. */
  shown: Lacking | null;
  /** Of the tree, counted from 0. */
  readonly number: number;
}

/** A step with what it leads to, so that a way need not be looked up by its steps' names. */
export interface TreePlace {
  readonly step: Step;
  /** Counted from 0. */
  readonly number: number;
  /** What is read here; null where it is answered, or only done. */
  readonly read: { readonly step: MeasureStep | LookStep; readonly test: Test } | null;
  /** Where it leads when it cannot be done. */
  readonly cannot: TreePlace | null;
  /** In the order of the file; of a step that is only done the one way on, which has no name. */
  readonly ways: readonly {
    readonly name: string | null;
    readonly to: TreePlace;
    readonly under: readonly string[] | undefined;
  }[];
}

/** The conclusions that each step is required by, and the steps that wake a fault. */
export class WayTree {
  readonly procedure: Procedure;
  readonly start: TreePlace;
  /** By step: the conclusions that require it, one set for all steps with the same; null for most. */
  private readonly requiredBy = new Map<string, ReadonlySet<string> | null>();
  private readonly woken: ReadonlySet<string>;
  /** The faults of each answer that only some can give. */
  private readonly told: readonly (readonly string[])[];
  private readonly lacking: Lacking[] = [];

  constructor(procedure: Procedure) {
    this.procedure = procedure;
    this.start = linkedPlaces(procedure);
    const steps = Object.values(procedure.steps);
    const conclusions = steps.filter((step): step is Conclusion => step.kind === 'conclude');
    const sets = new Map<string, ReadonlySet<string>>();
    for (const { id, kind } of steps) {
      if (kind === 'conclude') continue;
      const by = conclusions.filter((one) => isRequired(one, id)).map((one) => one.id);
      const word = by.join(' ');
      if (by.length > 0 && !sets.has(word)) sets.set(word, new Set(by));
      this.requiredBy.set(id, sets.get(word) ?? null);
    }
    this.told = steps.flatMap((step) =>
      step.kind === 'ask' || step.kind === 'measure'
        ? step.outcomes.flatMap(({ under }) => (under ? [under] : []))
        : [],
    );
    this.woken = new Set(
      steps.flatMap((step) =>
        step.kind === 'ask' && WAKING.includes(step.family)
          ? step.outcomes.flatMap(({ under = [] }) => under)
          : [],
      ),
    );
  }

  /** Whether a fault that comes and goes is woken by some step of the tree. */
  canWake(fault: string): boolean {
    return fault !== HEALTHY && this.woken.has(fault);
  }

  /** The same for all faults to which the tree's answers are open alike: asleep they go the same ways. */
  openTo(fault: string): string {
    return this.told.map((faults) => (faults.includes(fault) ? '1' : '0')).join('');
  }

  /** What is lacking after one more step was passed over. */
  without(lacking: Lacking, step: string): Lacking {
    const required = this.requiredBy.get(step) ?? null;
    const isNew = required !== null && !lacking.required.includes(required);
    let next = lacking.next.get(isNew ? required : null);
    if (!next) {
      const added = isNew ? [...lacking.required, required] : lacking.required;
      next = this.lackingOf(lacking.skips + 1, added, lacking.seen);
      lacking.next.set(isNew ? required : null, next);
    }
    return next;
  }

  /** What is lacking once the fault has been seen to come. */
  withSeen(lacking: Lacking): Lacking {
    if (lacking.seen) return lacking;
    lacking.shown ??= this.lackingOf(lacking.skips, lacking.required, true);
    return lacking.shown;
  }

  /** The conclusion that stands where this much is lacking. */
  standing(id: string, { required, ends }: Lacking): string {
    const known = ends.get(id);
    if (known !== undefined) return known;
    const end = standingConclusion(this.procedure, id, (conclusion) =>
      required.some((set) => set.has(conclusion.id)),
    );
    ends.set(id, end);
    return end;
  }

  /** Nothing passed over yet. */
  lackingNothing(): Lacking {
    return this.lackingOf(0, [], false);
  }

  /** One for the same steps in any order. */
  private lackingOf(
    skips: number,
    required: readonly ReadonlySet<string>[],
    seen: boolean,
  ): Lacking {
    const same = this.lacking.find(
      (one) =>
        one.skips === skips &&
        one.seen === seen &&
        one.required.length === required.length &&
        required.every((set) => one.required.includes(set)),
    );
    if (same) return same;
    const made: Lacking = {
      skips,
      required,
      seen,
      next: new Map(),
      ends: new Map(),
      shown: null,
      number: this.lacking.length,
    };
    this.lacking.push(made);
    return made;
  }
}

/** Whether an answer says that a fault came while something was moved or warmed: one that no sound circuit gives. */
export function seesFault(
  step: Step,
  under: readonly string[] | undefined,
  fault: string,
): boolean {
  return (
    step.kind === 'ask' &&
    WAKING.includes(step.family) &&
    under?.includes(fault) === true &&
    !under.includes(HEALTHY)
  );
}

/** The first step, linked with all that it leads to. */
function linkedPlaces({ steps, start }: Procedure): TreePlace {
  const places = new Map<string, { -readonly [K in keyof TreePlace]: TreePlace[K] }>();
  for (const [id, step] of Object.entries(steps))
    places.set(id, { step, number: places.size, read: readAt(step), cannot: null, ways: [] });
  const at = (id: string) => {
    const place = places.get(id);
    if (!place) throw new Error(`procedure: no step "${id}" in a checked procedure`);
    return place;
  };
  for (const place of places.values()) {
    const { step } = place;
    if (step.kind === 'conclude') continue;
    place.cannot = step.cannot === null ? null : at(step.cannot);
    place.ways = waysFrom(step).map(({ name, go, under }) => ({ name, to: at(go), under }));
  }
  return at(start);
}

function readAt(step: Step): TreePlace['read'] {
  if (step.kind !== 'measure' && step.kind !== 'look') return null;
  const test = testOf(step);
  return test && { step, test };
}

/** What a step can come to. */
function waysFrom(
  step: Exclude<Step, Conclusion>,
): readonly { name: string | null; go: string; under?: readonly string[] | undefined }[] {
  return step.kind === 'act' ? [{ name: null, go: step.go }] : step.outcomes;
}
