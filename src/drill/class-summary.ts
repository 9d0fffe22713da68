/** A class's drills as a table: one line a drill, and what the class as a whole misses. */
import { FAULT_CLASSES, type FaultClass } from '../circuit/circuit.ts';
import type { DrillVehicle, LevelName, ScorePart } from '../session/events.ts';
import type { Session } from '../session/session.ts';
import { spentMinutes } from '../session/spent-minutes.ts';
import { workedMs } from '../session/worked-time.ts';
import { studentKey } from './assignment.ts';
import { readingsGiven } from './drill-act.ts';

/** One file of the folder: a session on a vehicle of a drill. */
export interface ClassDrill {
  readonly file: string;
  readonly drill: Session;
  readonly vehicle: DrillVehicle;
}

/** One drill of one student, as a line of the table. */
export interface ClassRow {
  readonly file: string;
  readonly student: string;
  readonly procedure: string;
  readonly circuit: string;
  readonly level: LevelName;
  /** The seed. */
  readonly vehicle: number;
  /** When it was begun. */
  readonly at: string;
  readonly assignment: string;
  readonly part: number | null;
  readonly finished: boolean;
  readonly right: boolean | null;
  readonly points: number | null;
  readonly parts: readonly ScorePart[];
  readonly readings: number;
  readonly minutes: number;
  readonly yardstickMinutes: number | null;
  readonly clockMinutes: number;
  readonly late: boolean;
  /** Words for what was wrong; empty before the reveal. */
  readonly truth: string;
  readonly classes: readonly FaultClass[];
  readonly stopped: number;
  readonly passedOver: number;
  /** Whether a file of actions or another program did some of it. */
  readonly fromActions: boolean;
}

/** The whole class in numbers. */
export interface ClassSummary {
  /** By student, then assignment and part, then file. */
  readonly rows: readonly ClassRow[];
  readonly students: number;
  readonly finished: number;
  readonly meanPoints: number | null;
  readonly medianPoints: number | null;
  /** Drills by points, ten bins of ten; 100 is in the last. */
  readonly bins: readonly number[];
  /** How the class did with each class of fault, the most missed first. */
  readonly misses: readonly ClassMiss[];
}

/** How often one class of fault was found. */
export interface ClassMiss {
  readonly class: FaultClass;
  readonly right: number;
  readonly total: number;
}

/** The summary of drills that were read. */
export function classSummary(drills: readonly ClassDrill[]): ClassSummary {
  const rows = drills.map(rowOf).sort(inOrder);
  const points = rows.flatMap((row) => (row.points === null ? [] : [row.points]));
  const bins = Array.from(
    { length: 10 },
    (_, bin) => points.filter((one) => Math.min(9, Math.floor(one / 10)) === bin).length,
  );
  return {
    rows,
    students: new Set(rows.map(({ student }) => studentKey(student))).size,
    finished: points.length,
    meanPoints: points.length === 0 ? null : points.reduce((a, b) => a + b, 0) / points.length,
    medianPoints: medianOf(points),
    bins,
    misses: missesOf(rows),
  };
}

function rowOf({ file, drill, vehicle }: ClassDrill): ClassRow {
  const { opened, revealed } = drill;
  const circuit = opened.circuit?.name ?? '';
  const faults =
    opened.circuit?.faults.filter(({ id }) => revealed?.faults.includes(id) === true) ?? [];
  return {
    file,
    student: opened.person,
    procedure: opened.procedure?.name ?? circuit,
    circuit,
    level: vehicle.level,
    vehicle: vehicle.seed,
    at: opened.at,
    assignment: vehicle.assignment?.name ?? '',
    part: vehicle.assignment?.part ?? null,
    finished: revealed !== null,
    right: revealed?.right ?? null,
    points: revealed?.points ?? null,
    parts: revealed?.score ?? [],
    readings: readingsGiven(drill),
    minutes: Math.round(spentMinutes(drill) * 10) / 10,
    yardstickMinutes: revealed?.yardstickMinutes ?? null,
    clockMinutes: Math.round(workedMs(drill.events) / 6_000) / 10,
    late: revealed?.late ?? false,
    truth: faults.map(({ words }) => words).join('; '),
    classes: [...new Set(faults.map((fault) => fault.class))],
    stopped: drill.stopped.length,
    passedOver: drill.passedOver.length,
    fromActions: isFromActions(drill),
  };
}

function isFromActions({ events }: Session): boolean {
  return events.some((event) => 'by' in event && event.by !== 'person');
}

function inOrder(a: ClassRow, b: ClassRow): number {
  return (
    compare(studentKey(a.student), studentKey(b.student)) ||
    compare(a.assignment, b.assignment) ||
    (a.part ?? 0) - (b.part ?? 0) ||
    compare(a.file, b.file)
  );
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function medianOf(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  if (sorted.length === 0) return null;
  return sorted.length % 2 === 1
    ? sorted[Math.floor(middle)]!
    : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function missesOf(rows: readonly ClassRow[]): ClassMiss[] {
  const finished = rows.filter((row) => row.finished);
  return FAULT_CLASSES.flatMap((name): ClassMiss[] => {
    const own = finished.filter(({ classes }) => classes.includes(name));
    if (own.length === 0) return [];
    return [{ class: name, right: own.filter(({ right }) => right).length, total: own.length }];
  }).sort((a, b) => a.right / a.total - b.right / b.total || b.total - a.total);
}
