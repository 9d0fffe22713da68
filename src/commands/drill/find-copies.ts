/**
 * Drills that were handed in twice under different names. The seal and the chain of hashes say nothing of whose drill
 * it is, so a copy with another name in it verifies. Two things give it away that no two honest students share: the id,
 * which has eight random digits, and what was done at the very same milliseconds of the clock.
 */

import { testKey } from '../../circuit/test-key.ts';
import type { ClassDrill } from '../../drill/class-summary.ts';
import type { DoubtfulFile } from './doubtful-file.ts';

/** So many events in a row at the same milliseconds are no chance: a person's pace varies by seconds. */
const SAME_EVENTS = 4;
/** A file of actions is done in less, where the same milliseconds may well come twice. */
const PERSON_MS = 10_000;

/** Each copy is named with another of its kind; which of them is the first one, nobody can tell from the files. */
export function findCopies(drills: readonly ClassDrill[]): DoubtfulFile[] {
  const byId = groupedBy(drills, ({ drill }) => drill.opened.id);
  const byPace = groupedBy(drills, paceOf);
  return drills.flatMap((one): DoubtfulFile[] => {
    const sameId = otherIn(byId.get(one.drill.opened.id), one);
    const samePace = otherIn(byPace.get(paceOf(one) ?? ''), one);
    const copied = (words: string): DoubtfulFile[] => [
      { file: one.file, kind: 'copied', words: `${words}; one of them is a copy` },
    ];
    if (sameId) return copied(`it has the id of ${sameId.file}`);
    return samePace ? copied(`its actions and their times are those of ${samePace.file}`) : [];
  });
}

function groupedBy(
  drills: readonly ClassDrill[],
  keyOf: (drill: ClassDrill) => string | null,
): Map<string, ClassDrill[]> {
  const groups = new Map<string, ClassDrill[]>();
  for (const drill of drills) {
    const key = keyOf(drill);
    if (key !== null) groups.set(key, [...(groups.get(key) ?? []), drill]);
  }
  return groups;
}

function otherIn(group: readonly ClassDrill[] | undefined, one: ClassDrill): ClassDrill | null {
  return group?.find((other) => other !== one) ?? null;
}

/** The vehicle and the first events with their milliseconds, until they are enough; null where they never are. */
function paceOf({ drill, vehicle }: ClassDrill): string | null {
  const { events, opened } = drill;
  const steps = [JSON.stringify([opened.circuit?.name, vehicle.level, vehicle.seed])];
  const times = new Set<number>();
  for (const event of events.slice(1)) {
    const ms = event.elapsed - opened.elapsed;
    times.add(ms);
    const what = 'test' in event ? testKey(event.test) : 'step' in event ? event.step : null;
    steps.push(JSON.stringify([event.type, ms, what]));
    if (times.size >= SAME_EVENTS && ms >= PERSON_MS) return steps.join('\n');
  }
  return null;
}
