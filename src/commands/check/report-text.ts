/** A check as text: findings with their lines, then one line of sum; and the table of a proof. */

import type { CostComparison } from '../../proof/compare-cost.ts';
import { sharePercent } from '../../proof/proof-words.ts';
import { formatIssue } from '../../source/format-issue.ts';
import type { Issue } from '../../source/issue.ts';
import { safeText } from '../../source/safe-text.ts';
import type { CheckReport, ProvedFile } from './check-files.ts';
import { counted } from './report-json.ts';

/** Colours of the sixteen that show on light and dark ground; the words say the same without them. */
const SGR = {
  error: '\u001b[1;31m',
  warning: '\u001b[1;33m',
  bold: '\u001b[1m',
  off: '\u001b[0m',
} as const;

/** All findings and the sum. */
export function reportText(report: CheckReport, options: { readonly colour: boolean }): string {
  const lines = report.issues.map((issue) =>
    issueText(issue, report.texts.get(issue.at.file), options.colour),
  );
  return [...lines, sumLine(report)].join('\n');
}

function issueText(issue: Issue, text: string | undefined, colour: boolean): string {
  const plain = safeText(formatIssue(issue, text), { lines: true });
  if (!colour) return plain;
  const label = `${issue.severity}[${issue.code}]`;
  const [first, ...rest] = plain.split('\n');
  const head = first!.replace(label, `${SGR[issue.severity]}${label}${SGR.off}`);
  return [
    head,
    ...rest.map((line) => (/^ +\| *\^~*$/.test(line) ? `${SGR.bold}${line}${SGR.off}` : line)),
  ].join('\n');
}

/** `7 files, 2 trees proved: no errors, 1 warning`, and whether there is more to come. */
function sumLine({ files, issues, proofs, held }: CheckReport): string {
  const { errors, warnings } = counted(issues);
  const trees = proofs.length > 0 ? `, ${count(proofs.length, 'tree')} proved` : '';
  const waits =
    held === 0
      ? ''
      : `; ${count(held, 'tree')} ${held === 1 ? 'is' : 'are'} not proved before ${held === 1 ? 'its' : 'their'} errors are fixed`;
  return `${count(files.length, 'file')}${trees}: ${count(errors, 'error')}, ${count(warnings, 'warning')}${waits}`;
}

function count(number: number, word: string): string {
  return `${number === 0 ? 'no' : number} ${word}${number === 1 ? '' : 's'}`;
}

const MARKS: Readonly<Record<string, string>> = {
  right: 'ok',
  inseparable: 'like healthy',
  missed: 'MISSED',
  wrong: 'WRONG',
  'dead-end': 'DEAD END',
  endless: 'ENDLESS',
};

/** The proof table: each fault, where it ends, in which share, after how many steps and minutes. */
export function tableText({ linked, proof }: ProvedFile): string {
  const rows = proof.rows.flatMap(({ fault, ends, steps, minutes }) =>
    ends.map(({ step, verdict, share }, index) => [
      index === 0 ? fault : '',
      sharePercent(share),
      step,
      MARKS[verdict] ?? verdict,
      index === 0 ? steps.toFixed(1) : '',
      index === 0 ? minutes.toFixed(0) : '',
    ]),
  );
  const head = ['fault', 'share', 'ends at', '', 'steps', 'min'];
  const widths = head.map((title, column) =>
    Math.max(title.length, ...rows.map((row) => row[column]!.length)),
  );
  const right = new Set([1, 4, 5]);
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) =>
        right.has(column) ? cell.padStart(widths[column]!) : cell.padEnd(widths[column]!),
      )
      .join('  ')
      .trimEnd();
  return [
    `${linked.procedure.name} over ${linked.procedure.circuit}`,
    line(head),
    ...rows.map(line),
    `Weighted by fault, with each step starting where the one before it ended, a conclusion takes ${proof.minutes.toFixed(1)} minutes in all on average, with questions and preparations.`,
  ].join('\n');
}

/** One line of what a tree costs; minutes to one place, because the costs themselves are estimates. */
export function costText(cost: CostComparison & { readonly procedure: string }): string {
  const minutes = (value: number) => value.toFixed(1);
  const bound =
    cost.bound < cost.optimum - 0.05
      ? ` (no strategy takes less than ${minutes(cost.bound)} on the cars it was built from)`
      : '';
  const astray =
    cost.astray > 0
      ? `; it leads ${(100 * cost.astray).toFixed(1)} % of them to another repair, and these take the tree's minutes as well`
      : '';
  return `${cost.procedure}: ${minutes(cost.tree)} minutes in all on average (with questions, preparations and cars with nothing wrong), counted as for suggestions; the cheapest strategy found takes ${minutes(cost.optimum)} for the tests alone, on cars other than those it was built from${bound}${astray}; following the suggestions takes ${minutes(cost.guided)}`;
}
