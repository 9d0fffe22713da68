/** What a file is, from its top keys: the same rule for every command that takes any file. */
import type { Issue } from '../../source/issue.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { parseYaml } from '../../source/parse-yaml.ts';

/** Which of the formats a file is in, as its top-level key says. */
export type FileKind =
  | 'procedure'
  | 'circuit'
  | 'job'
  | 'cautions'
  | 'assignment'
  | 'answers'
  | 'actions';

/**
 * The keys that mark a kind, the first that is there: `procedure` stands in jobs, answers and actions as well,
 * `circuit` in procedures. A job need not be named, so its complaint marks it too.
 */
const MARKS = new Map<string, FileKind>([
  ['complaint', 'job'],
  ['job', 'job'],
  ['assignment', 'assignment'],
  ['answers', 'answers'],
  ['actions', 'actions'],
  ['cautions', 'cautions'],
  ['procedure', 'procedure'],
  ['circuit', 'circuit'],
]);

/** Each kind as a sentence names it. */
export const KIND_WORDS: Readonly<Record<FileKind, string>> = {
  procedure: 'a procedure',
  circuit: 'a circuit',
  job: 'a job sheet',
  cautions: 'a list of cautions',
  assignment: 'an assignment',
  answers: 'a file of answers',
  actions: 'a file of actions',
};

/** What the file of cautions is called in a folder: one that cannot be read is known by it. */
export const CAUTIONS_FILE = /^cautions\.ya?ml$/;

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
  for (const [mark, kind] of MARKS) if (keys.includes(mark)) return { kind };
  const near = keys.map((key) => nearestName(key, [...MARKS.keys()])).find((name) => name !== null);
  const at = value.locate(keys.length > 0 ? [keys[0]!] : [], 'key');
  const words = 'nothing at the top of this file says what kind of file it is';
  const fix = near
    ? `did you mean the key "${near}"?`
    : `write one of "procedure: NAME", "circuit: NAME", "job: NAME", "assignment: NAME", "answers:", "actions:" or "cautions:" at its top`;
  return { issues: [...issues, { code: 'unknown-kind', severity: 'error', at, words, fix }] };
}
