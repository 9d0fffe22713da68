/** The worked example of docs/writing-procedures.md, taken out of the page. */
import { readFileSync } from 'node:fs';
import type { Circuit } from '../../src/circuit/circuit.ts';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { createModel, type Model } from '../../src/circuit/model.ts';
import { SAMPLES } from '../../src/commands/check/check-files.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import {
  type Library,
  type LinkedProcedure,
  linkProcedure,
} from '../../src/procedure/link-procedure.ts';
import { type ParsedProcedure, parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { type Proof, proveProcedure } from '../../src/proof/prove-procedure.ts';
import type { Issue } from '../../src/source/issue.ts';
import { LIBRARY, modelFor } from './library.ts';

const PAGE = readFileSync('docs/writing-procedures.md', 'utf8');
const [circuitText, treeText] = [...PAGE.matchAll(/^```yaml\n(.*?)^```$/gms)].map(
  (match) => match[1]!,
);
export const CIRCUIT_TEXT = circuitText!;
export const TREE_TEXT = treeText!;
/** The part of the tree that the page shows first. */
export const FIRST_PART = PAGE.match(/^```yaml part\n(.*?)^```$/ms)![1]!;

export const CIRCUIT: Circuit = loadCircuit(CIRCUIT_TEXT, 'rake-wheel-pickup.yaml').value!;

interface Checked {
  readonly linked: LinkedProcedure | null;
  readonly proof: Proof | null;
  readonly issues: readonly Issue[];
}

/** The example tree, or a changed one, through linking and proof. Each `change` must find its text. */
export function checkExample(...changes: readonly (readonly [string, string])[]): Checked {
  let text = TREE_TEXT;
  for (const [from, to] of changes) {
    if (!text.includes(from)) throw new Error(`the example does not hold: ${from}`);
    text = text.replace(from, () => to);
  }
  return check(text, CIRCUIT, modelFor(CIRCUIT, SAMPLES));
}

/** The example tree over a changed circuit. */
export function checkWithCircuit(text: string): Checked {
  const { value, issues } = loadCircuit(text, 'changed.yaml');
  if (!value) throw new Error(JSON.stringify(issues));
  return check(
    TREE_TEXT,
    value,
    createModel(value, { samples: SAMPLES, seed: 1, meter: STANDARD_SETTINGS.meter }),
  );
}

function check(text: string, circuit: Circuit, model: Model): Checked {
  const parsed = parseProcedure(text, 'rake-wheel-no-speed.yaml');
  return parsed.value
    ? checkParsed(parsed.value, circuit, model)
    : { linked: null, proof: null, issues: parsed.issues };
}

/** The example tree as it was read, or a changed copy of what was read. */
export function checkParsed(
  parsed: ParsedProcedure,
  circuit: Circuit = CIRCUIT,
  model: Model = modelFor(CIRCUIT, SAMPLES),
): Checked {
  const library: Library = { ...LIBRARY, circuits: new Map([[circuit.name, circuit]]) };
  const { value, issues } = linkProcedure(parsed, library, {
    drive: 'combustion',
    modelOf: () => model,
  });
  if (!value) return { linked: null, proof: null, issues };
  const proof = proveProcedure(value, model);
  return { linked: value, proof, issues: [...issues, ...proof.issues] };
}
