/**
 * A class's drills as CSV (RFC 4180): one line a drill, then one for each file that does not count, which has nothing but
 * its remark; decimal points, nothing a spreadsheet would run as a formula.
 */
import type { ClassRow, ClassSummary } from '../../drill/class-summary.ts';
import { csvField } from '../../records/readings-csv.ts';
import type { DoubtfulFile } from './doubtful-file.ts';

const COLUMNS: readonly (readonly [string, (row: ClassRow) => string | number | null])[] = [
  ['student', ({ student }) => student],
  ['assignment', ({ assignment }) => assignment],
  ['part', ({ part }) => part],
  ['procedure', ({ procedure }) => procedure],
  ['circuit', ({ circuit }) => circuit],
  ['level', ({ level }) => level],
  ['vehicle', ({ vehicle }) => vehicle],
  ['date', ({ at }) => at],
  ['finished', ({ finished }) => (finished ? 'yes' : 'no')],
  ['right', ({ right }) => (right === null ? '' : right ? 'yes' : 'no')],
  ['points', ({ points }) => points],
  ...(['diagnosis', 'evidence', 'time', 'safety', 'danger'] as const).map(
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
  ['from_actions', ({ fromActions }) => (fromActions ? 'yes' : 'no')],
  ['fault', ({ truth }) => truth],
];

/** The whole file, lines ended by CR LF. */
export function classCsv({ rows }: ClassSummary, doubtful: readonly DoubtfulFile[]): string {
  const remarksOn = (file: string) =>
    doubtful
      .filter((one) => one.file === file)
      .map(({ kind, words }) => `${kind}: ${words}`)
      .join('; ');
  const counted = new Set(rows.map(({ file }) => file));
  const others = [...new Set(doubtful.map(({ file }) => file))].filter(
    (file) => !counted.has(file),
  );
  const lines = [
    [...COLUMNS.map(([name]) => name), 'file', 'remarks'],
    ...rows.map((row) => [
      ...COLUMNS.map(([, value]) => value(row)),
      row.file,
      remarksOn(row.file),
    ]),
    ...others.map((file) => [...COLUMNS.map(() => null), file, remarksOn(file)]),
  ];
  return lines.map((line) => `${line.map(csvField).join(',')}\r\n`).join('');
}
