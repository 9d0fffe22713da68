/** A drill's file as it is shown afterwards: what was asked and measured, and the debrief once the answer was revealed. */
import type { Debrief } from '../drill/debrief.ts';
import { revealedBy } from '../drill/decide-drill.ts';
import { type Drill, replayDrill } from '../drill/drill.ts';
import type { DrillEvent } from '../drill/drill-events.ts';
import { debriefLines, openingLines, readingLine } from '../drill/drill-words.ts';
import { createWorld, type MindStore } from '../drill/drill-world.ts';
import { verifyDrill } from '../drill/verify-drill.ts';
import { type Disk, errorCode } from '../log/disk.ts';
import { sha256 } from '../log/hash.ts';
import { openSession } from '../log/open-session.ts';
import { readSessionLog } from '../log/read-session.ts';

export interface DrillRecord {
  readonly drill: Drill;
  /** Null until the answer was revealed. */
  readonly debrief: Debrief | null;
  /** What the program would not have written so, without a full stop; null when there is nothing. */
  readonly damage: string | null;
}

/** Whether the file is a drill's, by its first event. False too for a file that cannot be read. */
export function isDrillFile(disk: Disk, path: string): boolean {
  try {
    const [first] = readSessionLog(disk.read(path)).events;
    if (first?.type === 'drill-opened') return true;
  } catch (error) {
    errorCode(error);
    return false;
  }
  const opened = openSession(disk, path);
  return opened.ok && opened.value.events[0]?.type === 'drill-opened';
}

/** The drill in the file `path`; words when it holds none that can be followed. */
export function readDrill(disk: Disk, path: string): DrillRecord | { readonly words: string } {
  const opened = openSession(disk, path);
  if (!opened.ok) return { words: `${opened.problem.words}; ${opened.problem.fix}` };
  const { events, log } = opened.value;
  try {
    const drill = replayDrill(events as unknown as readonly DrillEvent[]);
    if (!drill) return { words: `${path} is not a drill` };
    const minds: MindStore = new Map();
    const { problems } = verifyDrill(events as unknown as readonly DrillEvent[], sha256, minds);
    const damage = log.words ?? (problems.length > 0 ? problems.join('; ') : null);
    return { drill, debrief: debriefFrom(drill, minds), damage };
  } catch {
    // A file may hold anything under a drill's name.
    return { words: `the events of ${path} are not those of a drill` };
  }
}

function debriefFrom(drill: Drill, minds: MindStore): Debrief | null {
  if (!drill.revealed) return null;
  const world = createWorld(drill.opened, sha256, [], minds);
  return world && revealedBy(drill, world, drill.revealed).debrief;
}

/** Lines to read; before the reveal nothing of the answer, only what was measured so far. */
export function drillRecordLines({ drill, debrief }: DrillRecord): string[] {
  const { student, at } = drill.opened;
  const head = [`Drill of ${student === '' ? 'nobody named' : student}, ${at}`];
  if (debrief) return [...head, ...openingLines(drill), '', ...debriefLines(debrief)];
  const measured =
    drill.readings.length === 0
      ? ['Nothing was measured yet.']
      : drill.readings.map((one) => readingLine(one, drill.opened.circuit));
  return [...head, ...openingLines(drill), '', ...measured, '', 'The drill is not finished.'];
}

/** What programs get of a drill: everything but circuit and steps, which are the library's. */
export function drillRecordJson({ drill, debrief }: Omit<DrillRecord, 'damage'>, path: string) {
  const { circuit: _circuit, procedure, ...rest } = drill.opened;
  return {
    ...rest,
    procedure: procedure?.name ?? null,
    path,
    revealed: drill.revealed,
    debrief,
  };
}
