/** What a job file says is known of the car, held against its circuit: each mistake at its line. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { KnownSaid } from '../../procedure/job.ts';
import { readAllSaid } from '../../session/read-known.ts';
import type { Issue } from '../../source/issue.ts';
import { parseYaml } from '../../source/parse-yaml.ts';

/** The mistakes in the list `known` of a job file that was loaded. */
export function knownIssues(
  { path, text }: { readonly path: string; readonly text: string },
  known: readonly KnownSaid[] | undefined,
  circuit: Circuit | null,
): Issue[] {
  const { problems } = readAllSaid(circuit, known ?? []);
  const { value: source } = parseYaml(text, path);
  if (!source) throw new Error('known-issues: a loaded file can be parsed');
  return problems.map(({ index, at, code, words, fix }) => ({
    code,
    severity: 'error',
    at: source.locate(['known', index, at], 'value'),
    words,
    fix,
  }));
}
