/** The shipped library and its models, for proof tests. */
import type { Circuit } from '../../src/circuit/circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { loadLibrary } from '../../src/files/load-library.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { type LinkedProcedure, linkProcedure } from '../../src/procedure/link-procedure.ts';
import { type ParsedProcedure, parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { proveProcedure } from '../../src/proof/prove-procedure.ts';
import type { Issue } from '../../src/source/issue.ts';

export const LIBRARY = loadLibrary('procedures');

/** Procedures that can be run. */
export const TREES = [...LIBRARY.procedures].filter(
  ([, parsed]) => parsed.draft.needs === undefined,
);

const MODELS = new Map<string, Model>();

/** One model for a circuit and a number of samples, kept, since it remembers what it has shown. */
export function modelFor(circuit: Circuit, samples = 64): Model {
  const key = `${circuit.name} ${samples}`;
  const model =
    MODELS.get(key) ?? createModel(circuit, { samples, seed: 1, meter: STANDARD_SETTINGS.meter });
  MODELS.set(key, model);
  return model;
}

export function link(
  parsed: ParsedProcedure,
  samples = 64,
): { linked: LinkedProcedure | null; issues: readonly Issue[] } {
  const { value, issues } = linkProcedure(parsed, LIBRARY, {
    drive: 'combustion',
    modelOf: (circuit) => modelFor(circuit, samples),
  });
  return { linked: value, issues };
}

/** Everything that check would say of a tree by itself. */
export function checkTree(
  parsed: ParsedProcedure,
  samples = 64,
): { linked: LinkedProcedure | null; issues: readonly Issue[] } {
  const { linked, issues } = link(parsed, samples);
  if (!linked?.circuit) return { linked, issues };
  const proof = proveProcedure(linked, modelFor(linked.circuit, samples));
  return { linked, issues: [...issues, ...proof.issues] };
}

/** A tree written in a test; throws when its shape is wrong. */
export function tree(text: string): ParsedProcedure {
  const { value, issues } = parseProcedure(text, 'tree.yaml');
  if (!value) throw new Error(JSON.stringify(issues));
  return value;
}
