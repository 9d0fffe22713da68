/** Captures and sums in the plain dialogue. */
import type { Step } from '../../procedure/procedure.ts';
import type { Performed } from '../../session/driver.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Dialogue } from './plain-session.ts';

/** Measures a capture, says what it shows, and saves it as the answer when the person says yes. */
export async function takeCapture(
  opened: OpenedSession,
  path: string,
  tell: (performed: Performed) => boolean,
  { say, ask }: Dialogue,
): Promise<void> {
  const found = await opened.measureCapture(path === '' ? null : path);
  if (!found.ok) {
    say(`${found.words}; ${found.fix}`);
    return;
  }
  for (const line of found.lines) say(line);
  const line = await ask('Take it as the answer? Type yes: ');
  if (line?.trim().toLowerCase() !== 'yes') say('Nothing was saved.');
  else if (tell(opened.driver.perform(found.command))) say('Saved, with the capture.');
}

/** The sums of this step, or the one that was typed. */
export async function saySums(
  opened: OpenedSession,
  step: Step,
  typed: string,
  say: Dialogue['say'],
): Promise<void> {
  if (typed !== '') {
    for (const line of await opened.calculate(typed, step)) say(line);
    return;
  }
  const sums = opened.sums(step);
  if (sums.length === 0) say('No sum fits this step. Any other: calc NAME, with its values.');
  for (const { title, lines, typed: again } of sums) {
    say(title);
    for (const [label, value] of lines) say(`  ${label}: ${value}`);
    say(`  With other values: calc ${again}`);
  }
}
