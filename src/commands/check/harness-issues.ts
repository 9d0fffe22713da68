/** What a job file says of the harness, held against its circuit: each mistake at its line. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { HarnessSaid } from '../../procedure/job.ts';
import { readHarness } from '../../procedure/read-harness.ts';
import type { Issue } from '../../source/issue.ts';
import { parseYaml } from '../../source/parse-yaml.ts';

/** The mistakes in the list `harness` of a job file that was loaded. */
export function harnessIssues(
  { path, text }: { readonly path: string; readonly text: string },
  said: readonly HarnessSaid[] | undefined,
  circuit: Circuit | null,
): Issue[] {
  if (!said || said.length === 0) return [];
  const { value: source } = parseYaml(text, path);
  if (!source) throw new Error('harness-issues: a loaded file can be parsed');
  if (!circuit)
    return [
      {
        code: 'no-circuit',
        severity: 'error',
        at: source.locate(['harness'], 'key'),
        words: 'there is no circuit, so there are no wires to describe',
        fix: 'leave it out, or choose a procedure with a circuit',
      },
    ];
  return readHarness(circuit, said).problems.map(({ index, words, fix }) => ({
    code: 'bad-harness',
    severity: 'error',
    at: source.locate(['harness', index], 'value'),
    words,
    fix,
  }));
}
