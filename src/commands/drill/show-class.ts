/** The drills of a class on standard output or as a page: `drill --class` and `records show --class`. */

import { resolve } from 'node:path';
import { loadAssignment } from '../../drill/assignment.ts';
import { loadFile } from '../../files/load-library.ts';
import { nodeDisk } from '../../log/node-disk.ts';
import { writeWholeFile } from '../../log/write-whole.ts';
import { emptyJob } from '../../procedure/job.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { harmlessJson } from '../../records/record-json.ts';
import { formatIssue } from '../../source/format-issue.ts';
import { isProblem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Arguments, EXIT, type Io, optionText, tellProblem } from '../command.ts';
import { type Desk, findSubject, linkSubject } from '../session/open-desk.ts';
import { classReport } from './class-report.ts';

/** Table, `--csv`, `--json` or `--html FILE`; 1 when a file was altered. */
export function showClass(desk: Desk, named: string, args: Arguments, io: Io): number {
  const { library } = desk;
  const folder = resolve(io.cwd, named);
  const set = optionText(args, 'assignment');
  const file = set === undefined ? null : loadFile(set, loadAssignment);
  if (file && !file.value)
    return tellProblem(
      io,
      {
        problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
        fix: `see everything with: ohmward check ${set}`,
      },
      EXIT.wrongInput,
    );
  const report = classReport(folder, {
    circuits: library.circuits,
    procedureOf: (name) => procedureFor(desk, name),
    cautions: library.cautions,
    ...(file?.value ? { assignment: file.value } : {}),
  });
  if ('words' in report)
    return tellProblem(
      io,
      {
        problem: `the folder ${named} ${report.words}`,
        fix: 'name the folder that holds the .jsonl files of the drills',
      },
      EXIT.wrongInput,
    );
  if (report.summary.rows.length === 0 && report.doubtful.length === 0)
    return tellProblem(
      io,
      {
        problem: `there is no drill in ${named}`,
        fix: 'drills are .jsonl files; they are saved in drills/ in the folder for sessions',
      },
      EXIT.wrongInput,
    );
  const page = optionText(args, 'html');
  if (page !== undefined) {
    const written = writeWholeFile(nodeDisk, resolve(io.cwd, page), report.html);
    if (!written.ok)
      return tellProblem(
        io,
        { problem: written.problem.words, fix: written.problem.fix },
        EXIT.wrongInput,
      );
    io.err(`Written: ${safeText(page)}\n`);
  }
  if (args.values['csv'] === true) {
    io.out(report.csv);
    for (const { file, kind, words } of report.doubtful)
      io.err(`${kind}: ${safeText(file)}: ${safeText(words)}\n`);
  } else if (args.values['json'] === true)
    io.out(harmlessJson({ ...report.summary, doubtful: report.doubtful }));
  else if (page === undefined) io.out(report.table);
  return report.doubtful.some(({ kind }) => kind === 'altered') ? EXIT.wrongInput : EXIT.done;
}

/** The procedure of that name as a drill of this desk would have it. */
function procedureFor(desk: Desk, name: string): Procedure | null {
  const subject = findSubject(desk, name);
  if (isProblem(subject)) return null;
  const linked = linkSubject(desk, subject, emptyJob('').vehicle.drive);
  return isProblem(linked) ? null : linked.procedure;
}
