/** A check as JSON of our own, and as SARIF 2.1.0 for tools that show findings beside the code. */
import { createHash } from 'node:crypto';
import { isAbsolute, relative, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Issue } from '../../source/issue.ts';
import { version } from '../version.ts';
import type { CheckReport } from './check-files.ts';
import { codeWords } from './issue-codes.ts';

/** Version of the JSON that this command writes. */
const SCHEMA_VERSION = 1;
const SARIF_SCHEMA = 'https://json.schemastore.org/sarif-2.1.0.json';

/** Our own JSON: files, issues, counts, and the proofs when asked for. */
export function reportJson(
  report: CheckReport,
  options: { readonly table: boolean; readonly costs: readonly unknown[] },
): unknown {
  const { errors, warnings } = counted(report.issues);
  return {
    schemaVersion: SCHEMA_VERSION,
    files: report.files.map(({ path, kind }) => ({ path, kind })),
    errors,
    warnings,
    issues: report.issues.map(({ code, severity, at, words, fix, cars }) => ({
      code,
      severity,
      ...at,
      words,
      ...(fix ? { fix } : {}),
      ...(cars ? { cars } : {}),
    })),
    ...(options.costs.length > 0 ? { costs: options.costs } : {}),
    ...(options.table
      ? {
          proofs: report.proofs.map(({ path, linked, proof }) => ({
            file: path,
            procedure: linked.procedure.name,
            circuit: linked.procedure.circuit,
            minutes: proof.minutes,
            inseparable: proof.inseparable,
            rows: proof.rows,
          })),
        }
      : {}),
  };
}

/** SARIF 2.1.0 (OASIS). Places are relative to `cwd`; columns count UTF-16 units, as ours do. */
export function reportSarif(report: CheckReport, cwd: string): unknown {
  const codes = [...new Set(report.issues.map(({ code }) => code))].sort();
  return {
    $schema: SARIF_SCHEMA,
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'ohmward',
            version,
            rules: codes.map((code) => ({ id: code, shortDescription: { text: codeWords(code) } })),
          },
        },
        columnKind: 'utf16CodeUnits',
        results: report.issues.map((issue) => ({
          ruleId: issue.code,
          ruleIndex: codes.indexOf(issue.code),
          level: issue.severity,
          message: { text: messageOf(issue) },
          ...(issue.cars ? { properties: { cars: issue.cars } } : {}),
          locations: [
            {
              physicalLocation: {
                artifactLocation: { uri: uriOf(issue.at.file, cwd) },
                region: {
                  startLine: issue.at.line,
                  startColumn: issue.at.column,
                  endLine: issue.at.endLine,
                  endColumn: issue.at.endColumn,
                },
              },
            },
          ],
          partialFingerprints: { 'ohmward/v1': fingerprint(issue, cwd) },
        })),
      },
    ],
  };
}

function messageOf({ words, notes = [], fix }: Issue): string {
  return [words, ...notes, ...(fix ? [fix] : [])].join('. ');
}

/** Errors and warnings. */
export function counted(issues: readonly Issue[]): {
  readonly errors: number;
  readonly warnings: number;
} {
  const errors = issues.filter(({ severity }) => severity === 'error').length;
  return { errors, warnings: issues.length - errors };
}

/** Relative to the folder the program runs in, per cent signs for what is no plain letter; absolute outside it. */
function uriOf(file: string, cwd: string): string {
  const near = relative(cwd, resolve(cwd, file));
  if (near === '' || near.startsWith('..') || isAbsolute(near))
    return pathToFileURL(resolve(cwd, file)).href;
  return near.split(sep).map(encodeURIComponent).join('/');
}

/** The same finding has the same print when lines are added above it or shares change a little. */
function fingerprint({ code, at, words }: Issue, cwd: string): string {
  const plain = words.replace(/\d+([.,]\d+)?/g, '#');
  return createHash('sha256')
    .update(JSON.stringify([code, uriOf(at.file, cwd), plain]))
    .digest('hex')
    .slice(0, 32);
}
