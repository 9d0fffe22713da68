/** Commands in the dialogue of lines: where the disk refuses one, the person is asked for the way on until it is saved or left. */
import type { DrillAction } from '../../drill/drill-act.ts';
import type { Command } from '../../session/command.ts';
import type { Performed } from '../../session/driver.ts';
import { actAt, carryOnIn } from '../carry-on.ts';
import { refusalSentences } from '../parts/sentence.ts';
import type { WordPlace } from './plain-words.ts';

/** Where it is done and who is asked. */
export type Asking = Pick<WordPlace, 'opened' | 'dialogue'>;

/** Does a command. Why it was not done has been said when this resolves. */
export async function performSaved(place: Asking, command: Command): Promise<Performed> {
  const { driver } = place.opened;
  const done = await untilSaved(place, () => driver.perform(command));
  if (!done.ok && !done.disk) place.dialogue.say(refusalLine(done));
  return done;
}

/** Does something at the bench of a drill. What the bench says against it is still to be said. */
export function actSaved(place: Asking, action: DrillAction): Promise<Performed> {
  return untilSaved(place, () => actAt(place.opened, action));
}

const WAYS =
  'Not saved yet. Type "again" to retry, "folder" and a path to continue there, or "leave" to drop this answer: ';

async function untilSaved(
  { opened, dialogue }: Asking,
  tryIt: () => Performed,
): Promise<Performed> {
  const { driver } = opened;
  const { say, ask } = dialogue;
  let done = tryIt();
  while (!done.ok && done.disk) {
    say(refusalLine(done));
    if (driver.isElsewhere()) return done;
    const line = await ask(WAYS);
    if (line === null) return carryOnIn(opened, null);
    const [word = '', folder = ''] = wordAndRest(line);
    if (word === 'leave') {
      say('That was not saved.');
      return done;
    }
    if (word === 'again') done = tryIt();
    else if (word === 'folder' && folder !== '') done = carryOnIn(opened, folder);
    else continue;
    if (done.ok) say(`Saved in ${driver.path()}`);
  }
  return done;
}

function wordAndRest(line: string): readonly string[] {
  const words = line.trim();
  const end = words.search(/\s/);
  return end < 0
    ? [words.toLowerCase()]
    : [words.slice(0, end).toLowerCase(), words.slice(end).trim()];
}

function refusalLine({ words, fix, disk }: Extract<Performed, { ok: false }>): string {
  if (disk) return refusalSentences({ words, fix });
  return fix === '' ? words : `${words}; ${fix}`;
}
