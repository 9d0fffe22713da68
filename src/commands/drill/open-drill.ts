/** Opens and goes on with drills at the desk: the file, the driver over it, the world behind it. */

import { join } from 'node:path';
import type { Circuit } from '../../circuit/circuit.ts';
import { drawCircuit } from '../../circuit/draw-circuit.ts';
import { loadCircuit } from '../../circuit/load-circuit.ts';
import { decideDrill, revealedBy } from '../../drill/decide-drill.ts';
import { type Drill, evolveDrill, openDrill, replayDrill } from '../../drill/drill.ts';
import {
  type AssignmentNote,
  DRILL_FORMAT,
  type DrillEvent,
  type DrillOpened,
} from '../../drill/drill-events.ts';
import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import { createWorld, type DrillWorld, type MindStore } from '../../drill/drill-world.ts';
import { hideFault, SEED_MAX } from '../../drill/hidden-fault.ts';
import type { Level } from '../../drill/levels.ts';
import { loadFile } from '../../files/load-library.ts';
import { makeFolders } from '../../files/make-folders.ts';
import { sessionFileName } from '../../files/safe-name.ts';
import { errorCode } from '../../log/disk.ts';
import type { LogEvent } from '../../log/event-line.ts';
import { sha256 } from '../../log/hash.ts';
import { nodeDisk } from '../../log/node-disk.ts';
import { resumeSession } from '../../log/open-session.ts';
import { createSession, type SessionWriter } from '../../log/session-writer.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { formatIssue } from '../../source/format-issue.ts';
import type { Checked } from '../../source/issue.ts';
import { nearestName } from '../../source/nearest-name.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import { type FileKind, fileKind, KIND_WORDS } from '../check/file-kind.ts';
import { type Desk, findProcedure, linkFor } from '../session/open-desk.ts';
import { isPath } from '../session/what-is-named.ts';

export interface NewDrill {
  /** Name or path of a procedure, or name of a circuit. */
  readonly procedure: string;
  readonly level: Level;
  readonly seed: number;
  readonly student: string;
  readonly assignment: AssignmentNote | null;
  /** A file of actions does it. */
  readonly fromActions?: boolean;
}

/** The complaint is the same whatever is wrong. */
const COMPLAINT = 'The warning lamp is on and the signal of this sensor is missing or wrong.';

/** Drills lie beside the sessions, in a folder of their own. */
export function drillsFolder(desk: Desk): string {
  return join(desk.sessions(), 'drills');
}

/** A vehicle nobody has had before, most likely. */
export function anySeed(): number {
  return Math.floor(Math.random() * (SEED_MAX + 1));
}

/** Opens a new drill file and everything around it. */
export function beginDrill(desk: Desk, wanted: NewDrill): DrillInHand | Problem {
  const found = subjectOf(desk, wanted.procedure);
  if (isProblem(found)) return found;
  const { circuit, procedure } = found;
  const { level, seed, student, assignment, fromActions = false } = wanted;
  const hidden = hideFault(circuit, level, seed, sha256);
  if (!hidden)
    return {
      problem: `the circuit "${circuit.name}" has no fault for the level "${level.name}"`,
      fix: 'choose another level',
    };
  const now = desk.now();
  const name = sessionFileName(now.at, `drill ${student} ${procedure?.name ?? circuit.name}`);
  const opened: DrillOpened = {
    type: 'drill-opened',
    format: DRILL_FORMAT,
    program: desk.program,
    id: name.replace(/\.jsonl$/, ''),
    student,
    level: level.name,
    seed,
    commitment: hidden.commitment,
    complaint: COMPLAINT,
    earlierRepair: hidden.earlierRepair,
    circuit,
    procedure,
    meter: desk.settings().meter,
    assignment,
    fromActions,
    ...now,
  };
  const folder = drillsFolder(desk);
  try {
    makeFolders(folder, 0o700);
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    return {
      problem: `the folder ${folder} cannot be made: ${words}`,
      fix: 'choose another with: ohmward settings sessions FOLDER',
    };
  }
  const writer = createSession(nodeDisk, folder, name, opened as unknown as LogEvent);
  if (!writer.ok) return { problem: writer.problem.words, fix: writer.problem.fix };
  return inHand(desk, writer.value, openDrill(opened));
}

/** Goes on with a drill where it stopped. */
export function continueDrill(
  desk: Desk,
  path: string,
  fromActions = false,
): DrillInHand | Problem {
  const other = notADrill(path);
  if (other) return other;
  const resumed = resumeSession(nodeDisk, path, desk.now(), [drillsFolder(desk)]);
  if (!resumed.ok) return { problem: resumed.problem.words, fix: resumed.problem.fix };
  const { writer, events } = resumed.value;
  const drill = replayDrill(events as unknown as readonly DrillEvent[]);
  if (!drill) {
    writer.close();
    return { problem: `${path} is not a drill`, fix: 'choose another file' };
  }
  const opened = inHand(desk, writer, drill);
  if (isProblem(opened)) return opened;
  if (drill.status === 'revealed') {
    opened.close();
    return { problem: 'this drill has ended', fix: 'start another one' };
  }
  const { refused } = opened.perform({ type: 'resume', program: desk.program, fromActions });
  return refused ? { problem: refused.words, fix: refused.fix } : opened;
}

/** What a file is by its first line, where that is surely no drill: an opened log could have its torn end cut off. */
function notADrill(path: string): Problem | null {
  let text: string;
  try {
    text = new TextDecoder().decode(nodeDisk.read(path));
  } catch (error) {
    errorCode(error);
    return null;
  }
  const [first = ''] = text.split('\n', 1);
  if (first.includes('"type":"session-opened"'))
    return {
      problem: `${path} is a session and no drill`,
      fix: `go on with it by: ohmward resume ${path}`,
    };
  if (first.startsWith('{') && first.includes('"type":')) return null;
  return {
    problem: `${path} is no drill`,
    fix: 'drills are .jsonl files, in drills/ in the folder for sessions',
  };
}

/** A circuit of one's own by its file; null where the file holds a procedure or cannot be told. */
function circuitOfFile(path: string): { readonly circuit: Circuit } | Problem | null {
  const kindFile = loadFile(path, (text, file): Checked<FileKind> => {
    const found = fileKind(text, file);
    return 'kind' in found
      ? { value: found.kind, issues: [] }
      : { value: null, issues: found.issues };
  });
  const kind = kindFile.value;
  if (kind === null || kind === 'procedure') return null;
  if (kind !== 'circuit')
    return {
      problem: `${path} is ${KIND_WORDS[kind]}`,
      fix: 'a drill is on a procedure or on a circuit: name one of these',
    };
  const file = loadFile(path, loadCircuit);
  if (file.value) return { circuit: file.value };
  return {
    problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
    fix: `see all of it with: ohmward check ${path}`,
  };
}

/** A procedure with its circuit, or a circuit alone. */
export function subjectOf(
  desk: Desk,
  name: string,
): { readonly circuit: Circuit; readonly procedure: Procedure | null } | Problem {
  const { circuits, procedures } = desk.library;
  const alone = circuits.get(name);
  if (alone && !procedures.has(name)) return { circuit: alone, procedure: null };
  const own = isPath(name) ? circuitOfFile(name) : null;
  if (own) return isProblem(own) ? own : { ...own, procedure: null };
  const parsed = findProcedure(desk, name);
  if (isProblem(parsed)) {
    const near = nearestName(name, [...procedures.keys(), ...circuits.keys()]);
    return near ? { ...parsed, fix: `did you mean "${near}"?` } : parsed;
  }
  const linked = linkFor(desk, parsed, 'combustion');
  if (isProblem(linked)) return linked;
  if (!linked.circuit)
    return {
      problem: `the procedure "${linked.procedure.name}" has no circuit behind it`,
      fix: `choose another, or a circuit: ${[...circuits.keys()].join(', ')}`,
    };
  return { circuit: linked.circuit, procedure: linked.procedure };
}

const minds: MindStore = new Map();

function inHand(desk: Desk, writer: SessionWriter, begun: Drill): DrillInHand | Problem {
  let drill = begun;
  const { circuit } = begun.opened;
  const world: DrillWorld | null = createWorld(begun.opened, sha256, desk.library.cautions, minds);
  if (!world) return { problem: 'this drill has no vehicle', fix: 'start another one' };
  return {
    drill: () => drill,
    world,
    perform: (command) => {
      const { events, refused } = decideDrill(drill, command, desk.now(), world);
      for (const event of events) {
        const saved = writer.append(event as unknown as LogEvent);
        if (!saved.ok)
          return { refused: { words: saved.problem.words, fix: saved.problem.fix, disk: true } };
        drill = evolveDrill(drill, event);
      }
      return { refused: refused && { ...refused, disk: false } };
    },
    debrief: () => (drill.revealed ? revealedBy(drill, world, drill.revealed).debrief : null),
    sketch: (test, columns) =>
      drawCircuit(circuit, {
        width: columns,
        ascii: desk.settings().ascii,
        ...(test ? { test } : {}),
      }),
    path: () => writer.path,
    close: () => writer.close(),
  };
}
