/** A class's drills as a table for the terminal. */
import type { ClassSummary } from '../../drill/class-summary.ts';
import { safeText } from '../../source/safe-text.ts';
import { padWords } from '../../ui/parts/wrap-words.ts';
import type { DoubtfulFile } from './doubtful-file.ts';

const STUDENT_COLUMNS = 20;
const PROCEDURE_COLUMNS = 20;

/** Lines of at most 80 columns. */
export function classTable(summary: ClassSummary, doubtful: readonly DoubtfulFile[]): string {
  const { rows, students, finished, meanPoints, medianPoints } = summary;
  const heads = line('student', 'procedure', 'level', 'points', 'right', 'min', 'best');
  const lines = rows.map((row) =>
    line(
      row.student || '(no name)',
      row.procedure,
      row.level,
      row.points === null ? '-' : String(row.points),
      row.right === null ? 'open' : row.right ? 'yes' : 'NO',
      row.minutes.toFixed(1),
      row.yardstickMinutes === null ? '-' : row.yardstickMinutes.toFixed(1),
    ),
  );
  const totals = [
    `${students} students, ${rows.length} drills, ${finished} finished`,
    ...(meanPoints === null || medianPoints === null
      ? []
      : [`points: mean ${meanPoints.toFixed(1)}, median ${medianPoints.toFixed(1)}`]),
    ...summary.misses.map(
      ({ class: name, right, total }) => `faults in ${name}: ${right} of ${total} found`,
    ),
  ];
  const doubts = doubtful.map(
    ({ file, kind, words }) => `${kind}: ${safeText(file)}: ${safeText(words)}`,
  );
  return `${[heads, ...lines, '', ...totals, ...(doubts.length > 0 ? ['', 'Look at these files:', ...doubts] : [])].join('\n')}\n`;
}

function line(
  student: string,
  procedure: string,
  level: string,
  points: string,
  right: string,
  minutes: string,
  best: string,
): string {
  return [
    padWords(safeText(student), STUDENT_COLUMNS, '~'),
    padWords(safeText(procedure), PROCEDURE_COLUMNS, '~'),
    level.padEnd(12),
    points.padStart(6),
    right.padStart(5),
    minutes.padStart(6),
    best.padStart(5),
  ]
    .join(' ')
    .trimEnd();
}
