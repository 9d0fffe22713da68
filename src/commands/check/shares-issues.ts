/** What a job file says shares with the sensor, held against its circuit: the first mistake at its line. */
import type { Circuit } from '../../circuit/circuit.ts';
import type { ShareSaid } from '../../procedure/job.ts';
import { fitNeighbours } from '../../procedure/read-neighbours.ts';
import type { Issue } from '../../source/issue.ts';
import { parseYaml } from '../../source/parse-yaml.ts';

/** The mistake in the list `shares` of a job file that was loaded; what is behind it is read once it is mended. */
export function sharesIssues(
  { path, text }: { readonly path: string; readonly text: string },
  said: readonly ShareSaid[] | undefined,
  circuit: Circuit | null,
): Issue[] {
  if (!said || said.length === 0) return [];
  const { value: source } = parseYaml(text, path);
  if (!source) throw new Error('shares-issues: a loaded file can be parsed');
  if (!circuit)
    return [
      {
        code: 'no-circuit',
        severity: 'error',
        at: source.locate(['shares'], 'key'),
        words: 'there is no circuit for anything to share',
        fix: 'leave it out, or choose a procedure with a circuit',
      },
    ];
  const { problem } = fitNeighbours(circuit, said);
  if (!problem) return [];
  const { index, words, fix } = problem;
  const at = source.locate(['shares', index], 'value');
  return [{ code: 'bad-share', severity: 'error', at, words, fix }];
}
