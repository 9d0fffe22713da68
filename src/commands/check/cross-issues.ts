/** What is wrong between files: names used twice, file names that say something else, jobs that ask for what is not there. */

import { basename } from 'node:path';
import type { Circuit } from '../../circuit/circuit.ts';
import { withHarness } from '../../circuit/with-harness.ts';
import { actionIssues } from '../../drill/check-actions.ts';
import type { ActionsFile } from '../../drill/drill-actions.ts';
import type { Job } from '../../procedure/job.ts';
import type { Library } from '../../procedure/link-procedure.ts';
import type { LoadedJob } from '../../procedure/load-job.ts';
import { readHarness } from '../../procedure/read-harness.ts';
import { fitNeighbours } from '../../procedure/read-neighbours.ts';
import type { Issue } from '../../source/issue.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { parseYaml } from '../../source/parse-yaml.ts';
import type { Path } from '../../source/yaml-source.ts';
import { HEALTHY } from '../../suspects/prediction-table.ts';
import type { CheckedFile } from './checked-file.ts';
import { harnessIssues } from './harness-issues.ts';
import { knownIssues } from './known-issues.ts';
import { sharesIssues } from './shares-issues.ts';

/** Issues of the wanted files against all files of the check. */
export function crossIssues(files: readonly CheckedFile[], library: Library): Issue[] {
  const wanted = files.filter((file) => file.wanted);
  return wanted.flatMap((file) => [...nameIssues(file, wanted), ...referenceIssues(file, library)]);
}

function nameIssues(file: CheckedFile, wanted: readonly CheckedFile[]): Issue[] {
  const name = nameOf(file);
  if (name === null || file.kind === null) return [];
  const issues: Issue[] = [];
  const add = (code: string, severity: Issue['severity'], words: string, fix: string) => {
    issues.push({ code, severity, at: place(file, [file.kind!]), words, fix });
  };
  const first = wanted.find((one) => one.kind === file.kind && nameOf(one) === name);
  if (first && first.path !== file.path)
    add(
      'repeated-name',
      'error',
      `${first.path} is also a ${file.kind} named "${name}", and this one is never used`,
      'give one of them another name',
    );
  if (stem(file.path) !== name)
    add(
      'file-name',
      'warning',
      `the file is named "${stem(file.path)}" and the ${file.kind} in it "${name}"`,
      `rename the file to ${name}.yaml, or write "${file.kind}: ${stem(file.path)}"`,
    );
  return issues;
}

/** Names in a file that stand for nothing in any other. */
function referenceIssues(file: CheckedFile, library: Library): Issue[] {
  switch (file.loaded?.kind) {
    case 'job':
      return jobIssues(file, file.loaded.value, library);
    case 'answers':
      return procedureIssues(file, file.loaded.value.procedure, library);
    case 'assignment':
      return file.loaded.value.drills.flatMap(({ procedure }, index) =>
        subjectIssues(file, ['drills', index, 'procedure'], procedure, library),
      );
    case 'actions':
      return actionsIssues(file, file.loaded.value, library);
    case 'procedure':
    case 'circuit':
    case 'cautions':
    case undefined:
      return [];
  }
}

function actionsIssues(file: CheckedFile, actions: ActionsFile, library: Library): Issue[] {
  const { procedure } = actions;
  const issues = subjectIssues(file, ['procedure'], procedure, library);
  // Without a name the tree or circuit stands on the command line of the drill, and is not known here.
  if (procedure === null || issues.length > 0) return issues;
  const tree = library.procedures.get(procedure);
  const circuit = library.circuits.get(tree ? (tree.draft.circuit ?? '') : procedure);
  return circuit ? actionIssues(actions, circuit, tree !== undefined) : [];
}

function jobIssues(file: CheckedFile, sheet: LoadedJob, library: Library): Issue[] {
  const { job, procedure } = sheet;
  if (procedure === null) return [];
  const issues = procedureIssues(file, procedure, library);
  if (issues.length > 0) return issues;
  const named = library.procedures.get(procedure)?.draft.circuit;
  const circuit = named === undefined ? undefined : library.circuits.get(named);
  if (!circuit) return [];
  const shared = fitNeighbours(circuit, job.shares ?? []).circuit;
  const fitted = withHarness(shared, readHarness(circuit, job.harness ?? []).harness).circuit;
  return [
    ...terminalIssues(file, Object.keys(job.terminals), fitted),
    ...partIssues(file, job, circuit),
    ...faultIssues(file, sheet, fitted),
    ...knownIssues(file, job.known, circuit),
    ...sharesIssues(file, job.shares, circuit),
    ...harnessIssues(file, job.harness, circuit),
  ];
}

/** The key `procedure` of a file names no procedure that can be begun with. */
function procedureIssues(file: CheckedFile, name: string | null, { procedures }: Library): Issue[] {
  if (name === null) return [];
  const parsed = procedures.get(name);
  if (parsed && parsed.draft.needs === undefined) return [];
  const runnable = [...procedures].filter(([, { draft }]) => draft.needs === undefined);
  return [
    {
      code: 'unknown-procedure',
      severity: 'error',
      at: place(file, ['procedure'], 'value'),
      words: parsed
        ? `"${name}" is a sub-procedure and cannot be started by itself`
        : `no procedure named "${name}"`,
      fix: nearWords(
        name,
        runnable.map(([known]) => known),
      ),
    },
  ];
}

/** A drill on what is not there: it names a procedure, or a circuit alone. */
function subjectIssues(
  file: CheckedFile,
  path: Path,
  name: string | null,
  { procedures, circuits }: Library,
): Issue[] {
  const trees = [...procedures].filter(([, { draft }]) => draft.needs === undefined);
  const known = [...trees.map(([tree]) => tree), ...circuits.keys()];
  if (name === null || known.includes(name)) return [];
  return [
    {
      code: 'unknown-procedure',
      severity: 'error',
      at: place(file, path, 'value'),
      words: `no procedure or circuit named "${name}"`,
      fix: nearWords(name, known),
    },
  ];
}

function terminalIssues(
  file: CheckedFile,
  terminals: readonly string[],
  circuit: Circuit,
): Issue[] {
  const known = circuit.terminals.filter(({ side }) => side !== 'part').map(({ id }) => id);
  return terminals
    .filter((id) => !known.includes(id))
    .map((id) => ({
      code: 'unknown-terminal',
      severity: 'error',
      at: place(file, ['terminals', id]),
      words: `circuit "${circuit.name}" has no terminal "${id}"`,
      fix: nearWords(id, known),
    }));
}

function partIssues(file: CheckedFile, { earlierRepairs }: Job, circuit: Circuit): Issue[] {
  const known = [
    ...new Set([
      ...circuit.parts.map(({ name }) => name),
      ...circuit.faults.map(({ repair }) => repair),
    ]),
  ].sort();
  return earlierRepairs.flatMap(({ part }, index): Issue[] =>
    part === null || known.includes(part)
      ? []
      : [
          {
            code: 'unknown-part',
            severity: 'warning',
            at: place(file, ['earlier-repairs', index, 'part'], 'value'),
            words: `circuit "${circuit.name}" has no part or repair "${part}", so the repair does not count`,
            fix: nearWords(part, known),
          },
        ],
  );
}

function faultIssues(
  file: CheckedFile,
  { fault, intermittent }: LoadedJob,
  circuit: Circuit,
): Issue[] {
  if (intermittent && (fault === null || fault === HEALTHY))
    return [
      {
        code: 'missing-key',
        severity: 'error',
        at: place(file, ['intermittent']),
        words: '"intermittent" needs a "simulated-fault" that does',
        fix: 'name the fault, or leave "intermittent" out',
      },
    ];
  const known = [HEALTHY, ...circuit.faults.map(({ id }) => id)];
  if (fault === null || known.includes(fault)) return [];
  return [
    {
      code: 'unknown-fault',
      severity: 'error',
      at: place(file, ['simulated-fault'], 'value'),
      words: `circuit "${circuit.name}" has no fault "${fault}"`,
      fix: nearWords(fault, known),
    },
  ];
}

function nearWords(name: string, known: readonly string[]): string {
  const near = nearestName(name, known);
  return near ? `did you mean "${near}"?` : `known: ${known.slice(0, 16).join(', ')}`;
}

function nameOf({ loaded }: CheckedFile): string | null {
  if (loaded?.kind === 'procedure') return loaded.value.draft.procedure;
  if (loaded?.kind === 'circuit') return loaded.value.name;
  if (loaded?.kind === 'job') return loaded.value.job.name === '' ? null : loaded.value.job.name;
  return null;
}

/** The name of a file without folder and ending. */
function stem(path: string): string {
  return basename(path).replace(/\.ya?ml$/, '');
}

function place(file: CheckedFile, path: Path, what: 'key' | 'value' = 'key') {
  const { value } = parseYaml(file.text, file.path);
  if (!value) throw new Error('cross-issues: a loaded file can be parsed');
  return value.locate(path, what);
}
