/** Before a test in the plain dialogue: its cautions, acknowledged only by the whole word, and how the vehicle stands. */
import type { Caution, Step } from '../../procedure/procedure.ts';
import type { OpenedSession } from '../app-services.ts';
import { cautionLine, testOf, undoLine, vehicleLine } from '../screens/step-words.ts';
import type { Dialogue } from './plain-session.ts';

/** True when there was nothing to acknowledge or it is acknowledged; false when the person leaves here. */
export async function askCautions(
  opened: OpenedSession,
  pending: readonly Caution[],
  step: string,
  { say, ask }: Dialogue,
): Promise<boolean> {
  if (pending.length === 0) return true;
  for (const { word, say: text } of pending) say(`${word}: ${opened.bind(text)}`);
  say("The maker's procedure, local rules and qualified practice come first.");
  while (true) {
    const line = await ask('Read and understood? Type yes: ');
    if (line === null || line.trim().toLowerCase() === 'pause') return false;
    if (line.trim().toLowerCase() === 'yes') {
      const done = opened.driver.perform({ type: 'acknowledge-cautions', step });
      if (!done.ok) say(`${done.words} ${done.fix}`);
      return done.ok;
    }
    say('Type the whole word "yes" when you have read it, or "pause" to leave.');
  }
}

/** How the vehicle must stand, what to undo first, and the cautions that hold. */
export function sayStanding(
  { driver, bind }: OpenedSession,
  step: Exclude<Step, { kind: 'conclude' }>,
  say: Dialogue['say'],
): void {
  const session = driver.session();
  say(vehicleLine(step.setup, session));
  const undo = testOf(step) === null ? '' : undoLine(step.setup, session);
  if (undo !== '') say(undo);
  const cautions = bind(cautionLine(step.cautions));
  if (cautions !== '') say(cautions);
}
