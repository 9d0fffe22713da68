/** The shape of a procedure file: YAML, then the schema. What its names mean is `link-procedure.ts`. */
import { type Checked, type Issue, isUsable } from '../source/issue.ts';
import { mendData } from '../source/mend-data.ts';
import { parseYaml } from '../source/parse-yaml.ts';
import { shapeIssues } from '../source/schema-issues.ts';
import type { YamlSource } from '../source/yaml-source.ts';
import type { ProcedureDraft } from './generated/procedure.mjs';
import validate from './generated/procedure.mjs';

/** A procedure as its author wrote it, and where each word of it stands. */
export interface ParsedProcedure {
  readonly draft: ProcedureDraft;
  readonly source: YamlSource;
  /** Of one that is read in spite of mistakes in its shape, to find the others. */
  readonly mended?: MendedShape;
}

/** How far a file with mistakes in its shape can still be read. */
export interface MendedShape {
  /** What has been told of its shape. */
  readonly issues: readonly Issue[];
  /** Steps of which something had to be left out; null when that may be anything. */
  readonly damaged: ReadonlySet<string> | null;
}

/** A draft whose shape is right, or one that is only good for finding the rest of its mistakes. */
export interface CheckedProcedure extends Checked<ParsedProcedure> {
  readonly readable: ParsedProcedure | null;
}

/** The draft in `text`; `value` is null with issues when its shape is wrong. */
export function parseProcedure(text: string, file: string): CheckedProcedure {
  const { value: source, issues: told } = parseYaml(text, file);
  if (!source) return { value: null, issues: told, readable: null };
  if (validate(source.data) && isUsable(told)) {
    const value = { draft: source.data, source };
    return { value, issues: told, readable: value };
  }
  const issues = shapeIssues(told, validate.errors, source);
  return { value: null, issues, readable: readableOf(source, issues) };
}

/** The procedure with its mistakes of shape read as they were meant, or left out. */
function readableOf(source: YamlSource, issues: readonly Issue[]): ParsedProcedure | null {
  const mended = mendData(source.data, (data) => (validate(data) ? [] : (validate.errors ?? [])));
  if (mended === null) return null;
  const damaged = new Set<string>();
  let isSure = true;
  for (const [part, step] of mended.lost)
    if (part === 'steps' && step !== undefined) damaged.add(String(step));
    else isSure = false;
  return {
    draft: mended.data as ProcedureDraft,
    source,
    mended: { issues, damaged: isSure ? damaged : null },
  };
}
