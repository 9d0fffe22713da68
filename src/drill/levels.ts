/** The levels of a drill: what the student is shown, and what is hidden in the vehicle. */

import type { LevelName } from '../session/events.ts';
import type { Session } from '../session/session.ts';

/** One level by what it shows and what it hides. */
export interface Level {
  readonly name: LevelName;
  /** 1 is the first to try. */
  readonly number: number;
  readonly title: string;
  readonly about: string;
  /** The suspects and their chances may be looked at. */
  readonly suspects: boolean;
  /** What a healthy circuit shows stands beside each reading. */
  readonly expected: boolean;
  /** Faults in the vehicle. */
  readonly faults: 1 | 2;
  /** The fault comes and goes; moving the harness brings it back. */
  readonly intermittent: boolean;
  /** An earlier repair points the wrong way. */
  readonly misled: boolean;
}

const PLAIN = {
  suspects: false,
  expected: true,
  faults: 1,
  intermittent: false,
  misled: false,
} as const;

/** All levels, the easiest first. */
export const LEVELS: readonly Level[] = [
  {
    ...PLAIN,
    name: 'named',
    number: 1,
    title: 'suspects and good values shown',
    about:
      'One fault. Suspects with their chances, and what a healthy circuit shows, are available.',
    suspects: true,
  },
  {
    ...PLAIN,
    name: 'unnamed',
    number: 2,
    title: 'no suspects',
    about:
      'One fault. What a healthy circuit shows is next to each reading; the thinking is up to you.',
  },
  {
    ...PLAIN,
    name: 'blind',
    number: 3,
    title: 'no suspects, no good values',
    about: 'One fault. Readings only: you have to know or work out what is good.',
    expected: false,
  },
  {
    ...PLAIN,
    name: 'intermittent',
    number: 4,
    title: 'an intermittent fault',
    about:
      'One fault in a wire or a contact, present in about half of all readings. Wiggling harness and connectors while reading brings it back, and costs half a minute.',
    intermittent: true,
  },
  {
    ...PLAIN,
    name: 'double',
    number: 5,
    title: 'two faults',
    about: 'Two faults at once, in different places, with different repairs. Name both.',
    faults: 2,
  },
  {
    ...PLAIN,
    name: 'misled',
    number: 6,
    title: 'a misleading earlier repair',
    about:
      'One fault, and a work order that says what was repaired before. The repair may have been done badly, or be irrelevant.',
    misled: true,
  },
];

/** A level by its number or name; null for neither. */
export function levelOf(text: string): Level | null {
  return LEVELS.find(({ name, number }) => name === text || String(number) === text) ?? null;
}

/** A level with what it shows and hides, by its name. */
export function levelNamed(name: LevelName): Level {
  return LEVELS.find((level) => level.name === name)!;
}

/**
 * May what a healthy circuit shows be told in this session: always, except in a drill that goes on at a level that hides
 * it. The words of an outcome and the reasons of a step tell it too.
 */
export function showsGood({
  opened: { vehicle },
  revealed,
}: Pick<Session, 'opened' | 'revealed'>): boolean {
  return vehicle.kind !== 'drill' || revealed !== null || levelNamed(vehicle.level).expected;
}
