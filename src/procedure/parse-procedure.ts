/** The shape of a procedure file: YAML, then the schema. What its names mean is `link-procedure.ts`. */
import { type Checked, isUsable } from '../source/issue.ts';
import { parseYaml, type YamlSource } from '../source/parse-yaml.ts';
import { schemaIssues } from '../source/schema-issues.ts';
import type { ProcedureDraft } from './generated/procedure.mjs';
import validate from './generated/procedure.mjs';

/** A procedure as its author wrote it, and where each word of it stands. */
export interface ParsedProcedure {
  readonly draft: ProcedureDraft;
  readonly source: YamlSource;
}

/** The draft in `text`; null with issues when its shape is wrong. */
export function parseProcedure(text: string, file: string): Checked<ParsedProcedure> {
  const parsed = parseYaml(text, file);
  if (!parsed.value || !isUsable(parsed.issues)) return { value: null, issues: parsed.issues };
  const source = parsed.value;
  if (!validate(source.data))
    return { value: null, issues: [...parsed.issues, ...schemaIssues(validate.errors, source)] };
  return { value: { draft: source.data, source }, issues: parsed.issues };
}
