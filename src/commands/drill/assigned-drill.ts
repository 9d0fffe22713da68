/** The next drill of an assignment for a student, or the one asked for. */

import { type Assignment, loadAssignment, seedFor, studentKey } from '../../drill/assignment.ts';
import { levelNamed } from '../../drill/levels.ts';
import { type LooseEvent, listSessions } from '../../files/list-sessions.ts';
import { loadFile } from '../../files/load-library.ts';
import { sha256 } from '../../log/hash.ts';
import { formatIssue } from '../../source/format-issue.ts';
import type { Problem } from '../../source/problem.ts';
import type { Desk } from '../session/open-desk.ts';
import { drillsFolder, type NewDrill } from './open-drill.ts';

/** What to open; a problem when the file cannot be used, nobody is named, or all is done. */
export function assignedDrill(
  desk: Desk,
  path: string,
  student: string,
  asked: string | undefined,
): NewDrill | Problem {
  const file = loadFile(path, loadAssignment);
  if (!file.value)
    return {
      problem: file.issues.map((issue) => formatIssue(issue, file.text)).join('\n'),
      fix: `see everything with: ohmward check ${path}`,
    };
  const assignment = file.value;
  if (studentKey(student) === '')
    return { problem: 'an assignment needs a name', fix: 'add --student NAME' };
  const done = finishedParts(desk, assignment, student);
  const part =
    asked === undefined
      ? assignment.drills.findIndex((_, index) => !done.has(index + 1)) + 1
      : Number(asked);
  if (part === 0)
    return {
      problem: `all ${assignment.drills.length} drills of "${assignment.name}" are done`,
      fix: 'hand in the folder of your drills, or repeat one with --part NUMBER',
    };
  const drill = assignment.drills[part - 1];
  if (!drill)
    return {
      problem: `the assignment has no part "${asked}"`,
      fix: `give a number from 1 to ${assignment.drills.length}`,
    };
  return {
    subject: drill.procedure,
    level: levelNamed(drill.level),
    seed: seedFor(assignment, part, student, sha256),
    student: student.trim(),
    assignment: { name: assignment.name, part, limitMinutes: drill.limitMinutes },
  };
}

/** Parts that this student has finished, by the first and last line of each file. */
function finishedParts(desk: Desk, { name }: Assignment, student: string): Set<number> {
  const { sessions } = listSessions(drillsFolder(desk));
  const parts = sessions.flatMap(({ read }) => {
    const { first, last } = read();
    const drill = first && drillHead(first);
    if (!drill || (last?.['type'] !== 'answer-revealed' && last?.['type'] !== 'drill-revealed'))
      return [];
    const same = studentKey(drill.student) === studentKey(student);
    return drill.assignment === name && same ? [drill.part] : [];
  });
  return new Set(parts);
}

/** Whose drill it is and which part of which assignment, by its first line in either form; null for anything else. */
function drillHead(
  first: LooseEvent,
): { readonly student: string; readonly assignment: string; readonly part: number } | null {
  const vehicle = recordIn(first['vehicle']);
  const isEarly = first['type'] === 'drill-opened';
  if (!isEarly && vehicle['kind'] !== 'drill') return null;
  const note = recordIn(isEarly ? first['assignment'] : vehicle['assignment']);
  return {
    student: String(first[isEarly ? 'student' : 'person']),
    assignment: String(note['name']),
    part: Number(note['part']),
  };
}

function recordIn(value: unknown): LooseEvent {
  return typeof value === 'object' && value !== null ? (value as LooseEvent) : {};
}
