/** What a file is, from its top keys: the same rule for every command that takes any file. */
import type { Issue } from '../../source/issue.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { parseYaml } from '../../source/parse-yaml.ts';

export const FILE_KINDS = ['procedure', 'circuit', 'job', 'cautions', 'assignment'] as const;
export type FileKind = (typeof FILE_KINDS)[number];

/** A job need not be named, so its complaint marks it as well. */
const MARKS: Readonly<Record<string, FileKind>> = {
  procedure: 'procedure',
  circuit: 'circuit',
  cautions: 'cautions',
  job: 'job',
  complaint: 'job',
  assignment: 'assignment',
};

/** The kind, or the issues that keep it from being known. */
export function fileKind(
  text: string,
  file: string,
): { readonly kind: FileKind } | { readonly issues: readonly Issue[] } {
  const { value, issues } = parseYaml(text, file);
  if (!value) return { issues };
  const { data } = value;
  const keys =
    typeof data === 'object' && data !== null && !Array.isArray(data) ? Object.keys(data) : [];
  // A procedure and a job name others: `circuit:` in a procedure, `procedure:` in a job.
  const found = keys.includes('complaint')
    ? 'complaint'
    : keys.find((key) => MARKS[key] !== undefined && key !== 'circuit');
  const mark = found ?? (keys.includes('circuit') ? 'circuit' : undefined);
  if (mark !== undefined) return { kind: MARKS[mark]! };
  const near = keys
    .map((key) => nearestName(key, Object.keys(MARKS)))
    .find((name) => name !== null);
  const at = value.locate(keys.length > 0 ? [keys[0]!] : [], 'key');
  const words = 'nothing at the top of this file says what it is';
  const fix = near
    ? `did you mean the key "${near}"?`
    : `write one of "procedure: NAME", "circuit: NAME", "job: NAME", "assignment: NAME" or "cautions:" at its top`;
  return { issues: [...issues, { code: 'unknown-kind', severity: 'error', at, words, fix }] };
}
