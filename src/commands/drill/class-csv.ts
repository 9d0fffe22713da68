/** A class's drills as CSV (RFC 4180): one line a drill, decimal points, nothing a spreadsheet would run as a formula. */
import type { ClassRow, ClassSummary } from '../../drill/class-summary.ts';
import { csvField } from '../../records/readings-csv.ts';

const COLUMNS: readonly (readonly [string, (row: ClassRow) => string | number | null])[] = [
  ['student', ({ student }) => student],
  ['assignment', ({ assignment }) => assignment],
  ['part', ({ part }) => part],
  ['procedure', ({ procedure }) => procedure],
  ['level', ({ level }) => level],
  ['finished', ({ finished }) => (finished ? 'yes' : 'no')],
  ['right', ({ right }) => (right === null ? '' : right ? 'yes' : 'no')],
  ['points', ({ points }) => points],
  ...(['diagnosis', 'evidence', 'time', 'safety'] as const).map(
    (name) =>
      [
        name,
        ({ parts }: ClassRow) => parts.find((part) => part.name === name)?.points ?? null,
      ] as const,
  ),
  ['readings', ({ readings }) => readings],
  ['minutes', ({ minutes }) => minutes],
  ['best_minutes', ({ yardstickMinutes }) => yardstickMinutes],
  ['clock_minutes', ({ clockMinutes }) => clockMinutes],
  ['late', ({ late }) => (late ? 'yes' : 'no')],
  ['tests_stopped', ({ stopped }) => stopped],
  ['cautions_passed_over', ({ passedOver }) => passedOver],
  ['fault', ({ truth }) => truth],
  ['file', ({ file }) => file],
];

/** The whole file, lines ended by CR LF. */
export function classCsv({ rows }: ClassSummary): string {
  const lines = [
    COLUMNS.map(([name]) => name),
    ...rows.map((row) => COLUMNS.map(([, value]) => value(row))),
  ];
  return lines.map((line) => `${line.map(csvField).join(',')}\r\n`).join('');
}
