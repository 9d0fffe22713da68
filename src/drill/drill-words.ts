/** A drill in words, for the screens, the dialogue and the terminal alike. Nothing here knows the answer before the debrief does. */

import type { Circuit } from '../circuit/circuit.ts';
import { countWords } from '../quantity/count-words.ts';
import type { ScorePart } from '../session/events.ts';
import { repairsWords } from '../session/repairs-words.ts';
import type { Session } from '../session/session.ts';
import { EVIDENCE_RATIO } from '../suspects/evidence-ratio.ts';
import { percent } from '../suspects/what-changed.ts';
import { type Debrief, type ReadingNote, repairWordsOf } from './debrief.ts';
import { levelNamed } from './levels.ts';
import { type ScoreFacts, scoreWords } from './score.ts';
import { SURE_ENOUGH } from './yardstick.ts';

/** What the student is told at the start; none for a session that is no drill. */
export function openingLines({ opened }: Session): string[] {
  const { vehicle, procedure, circuit, job } = opened;
  if (vehicle.kind !== 'drill') return [];
  const { assignment, earlierRepair } = vehicle;
  const level = levelNamed(vehicle.level);
  const limit = assignment?.limitMinutes ?? null;
  return [
    procedure?.title ?? circuit?.title ?? '',
    `Level ${level.number}, ${level.title}. ${level.about}`,
    `Complaint: ${job.complaint}`,
    ...(earlierRepair === null || !circuit
      ? []
      : [
          `According to the work order this was done two weeks ago: ${repairWordsOf(circuit, earlierRepair)}`,
        ]),
    ...(assignment
      ? [
          `Assignment ${assignment.name}, part ${assignment.part}${limit === null ? '' : `, ${limit} minutes on the clock`}.`,
        ]
      : []),
    `Vehicle ${vehicle.seed}. The answer is sealed as ${vehicle.commitment.slice(0, 16)}.`,
  ];
}

/** Repairs to choose a diagnosis from, in the order of the circuit. */
export function repairChoices(circuit: Circuit): { repair: string; words: string }[] {
  const repairs = [...new Set(circuit.faults.map(({ repair }) => repair))];
  return repairs.map((repair) => ({ repair, words: repairWordsOf(circuit, repair) }));
}

/** What is read before a diagnosis is handed in: first the repairs in full; none for a drill that is given up. */
export function handInLines(circuit: Circuit, repairs: readonly string[]): string[] {
  if (repairs.length === 0)
    return [
      'Give up without a diagnosis?',
      'The answer is shown, and only safety scores points then.',
    ];
  const words = repairs.map((repair) => repairWordsOf(circuit, repair));
  return [`Hand in: ${repairsWords(words)}`, 'This ends the drill.'];
}

/** The debrief, paragraph by paragraph; an empty line stands between the sections. */
export function debriefLines(debrief: Debrief): string[] {
  const { yardstick } = debrief;
  return [
    debrief.right ? 'RIGHT.' : debrief.named.length === 0 ? 'GIVEN UP.' : 'NOT RIGHT.',
    `Actual fault: ${debrief.truth}.`,
    `Repair: ${repairsWords(debrief.repairs)}`,
    `You said: ${debrief.named.length === 0 ? 'nothing.' : repairsWords(debrief.named)}`,
    ...debrief.alike.map(
      (words) => `On this vehicle no test here can tell it from: ${words} Either counts.`,
    ),
    '',
    `Score: ${debrief.points} of 100`,
    ...debrief.score.map((part) => scoreLine(part, debrief.facts)),
    '',
    ...evidenceLines(debrief),
    '',
    `What you did: ${countWords(debrief.readings.length, 'reading')}, ${round(debrief.minutes)} min`,
    ...debrief.readings.map(
      (note, index) =>
        `${String(index + 1).padStart(2)}. ${note.words}: ${note.found}; ${note.minutes} min; ${saidWords(note, debrief.right)}`,
    ),
    '',
    `The best plan on this vehicle: ${countWords(yardstick.steps.length, 'reading')}, ${round(yardstick.minutes)} min (${round(yardstick.expectedMinutes)} min on average over all faults)`,
    ...yardstick.steps.map(
      ({ words, found, minutes }, index) =>
        `${String(index + 1).padStart(2)}. ${words}: ${found}; ${round(minutes)} min`,
    ),
    yardstick.chance >= SURE_ENOUGH
      ? `    and then the diagnosis was ${percent(yardstick.chance)} certain.`
      : `    and then no test was worth its minutes: the leading suspect stood at ${percent(yardstick.chance)}.`,
    '',
    `Next: ${debrief.next}`,
  ];
}

/** Why something was not done, and the way out, as two sentences. */
export function refusalLines({ words, fix }: { words: string; fix: string }): string[] {
  return [sentence(words), sentence(fix)];
}

function sentence(words: string): string {
  const end = /[.?!]["']?$/.test(words) ? '' : '.';
  return `${upper(words)}${end}`;
}

function upper(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

/** A part of the score as a line of a table: name, points, most, reason. */
export function scoreLine(part: ScorePart, facts: ScoreFacts): string {
  const { name, points, most } = part;
  if (name === 'danger')
    return `  ${name.padEnd(9)} ${String(points).padStart(3)}        ${scoreWords(part, facts)}`;
  return `  ${name.padEnd(9)} ${String(points).padStart(3)} of ${most}  ${scoreWords(part, facts)}`;
}

/** What speaks for the true repair; it proves a diagnosis only where the diagnosis was right. */
function evidenceLines({ right, evidence, left, readings }: Debrief): string[] {
  const none = right ? 'No reading proved it.' : 'No reading pointed clearly to the right repair.';
  const some = right
    ? 'What proved it, strongest first:'
    : 'What pointed to the right repair, strongest first:';
  return [
    evidence.length === 0 ? none : some,
    ...evidence.map(
      ({ words, found, ratio, against }) =>
        `- ${words}: ${found}. ${upper(times(ratio))} more likely with the right repair than with this rival: ${against}`,
    ),
    ...(right && left !== null
      ? [`No reading pointed clearly away from the strongest rival left: ${left}`]
      : []),
    ...(right && readings.some(({ ratio, proves }) => !proves && ratio >= EVIDENCE_RATIO)
      ? [
          `A reading counts if it is at least ${EVIDENCE_RATIO} times more likely than with the strongest rival left; one of each kind and place counts.`,
        ]
      : []),
  ];
}

/** What a reading said, and against whom. */
function saidWords({ toldNothing, ratio, against, proves }: ReadingNote, right: boolean): string {
  if (toldNothing) return 'told nothing new';
  if (proves)
    return `${right ? 'a proof: ' : ''}${times(ratio)} more likely with the right repair than with: ${against}`;
  if (ratio >= 1.05)
    return `made the right repair ${times(ratio)} more likely against the leading rival at that point: ${against}`;
  if (ratio <= 0.95)
    return `made the leading rival at that point ${times(1 / ratio)} more likely against the right repair: ${against}`;
  return 'moved other suspects';
}

function times(ratio: number): string {
  if (ratio > 999) return 'over 999 times';
  return `${ratio < 10 ? Math.round(ratio * 10) / 10 : Math.round(ratio)} times`;
}

function round(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
