/** The shipped library, linked once for all tests of this folder. */
import type { Circuit } from '../../src/circuit/circuit.ts';
import type { Model } from '../../src/circuit/model.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import type { Drive } from '../../src/procedure/job.ts';
import { type LinkedProcedure, linkProcedure } from '../../src/procedure/link-procedure.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import { modelFor } from '../../src/session/session-model.ts';
import type { Issue } from '../../src/source/issue.ts';

export const library = loadLibrary('procedures');

/** Procedures that can be started, in the order of their files. */
export const trees = library.procedures
  .files()
  .flatMap(({ value }) => (value && value.draft.needs === undefined ? [value] : []));

interface Shipped {
  readonly linked: LinkedProcedure;
  readonly model: Model;
  readonly issues: readonly Issue[];
}

const known = new Map<string, Shipped>();

/** A tree by name with the model of its circuit: as many cars a fault as a session has, and `ohmward check` takes. */
export function shipped(name: string, drive: Drive = 'combustion'): Shipped {
  const key = `${name} ${drive}`;
  const found = known.get(key);
  if (found) return found;
  let model: Model | null = null;
  const modelOf = (circuit: Circuit): Model => {
    // The one that sessions compute with, which may have shown much of it already.
    model ??= modelFor(circuit, STANDARD_SETTINGS.meter);
    return model;
  };
  const parsed = library.procedures.get(name);
  if (!parsed) throw new Error(`no procedure "${name}"`);
  const { value, issues } = linkProcedure(parsed, library, { drive, modelOf });
  if (!value || !model) throw new Error(`"${name}" cannot be linked: ${issues[0]?.words}`);
  const made = { linked: value, model, issues };
  known.set(key, made);
  return made;
}

/** The same tree, entered elsewhere. */
export function enteredAt(linked: LinkedProcedure, start: string): LinkedProcedure {
  return { ...linked, procedure: { ...linked.procedure, start } };
}

/** The same tree for a person without a scope: every scope step is answered with "cannot". */
export function withoutScope(linked: LinkedProcedure): LinkedProcedure {
  const { procedure } = linked;
  const steps = Object.fromEntries(
    Object.entries(procedure.steps).map(([id, step]): [string, Step] => {
      const scope =
        step.kind === 'look' && (step.probe.kind === 'pattern' || step.probe.kind === 'timing');
      if (!scope) return [id, step];
      if (step.cannot === null) throw new Error(`${id} has no way round without a scope`);
      const { setup, title, family, say, why, cautions, cannot } = step;
      const go = step.cannot;
      return [
        id,
        { id, kind: 'act', title, family, setup, say, why, cautions, cannot, minutes: 0, go },
      ];
    }),
  );
  const without: Procedure = { ...procedure, steps };
  return { ...linked, procedure: without };
}
