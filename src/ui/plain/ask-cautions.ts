/** Cautions in the plain dialogue: shown whole, acknowledged only by the whole word. */
import type { Caution } from '../../procedure/procedure.ts';
import type { OpenedSession } from '../app-services.ts';
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
    if (line.trim().toLowerCase() === 'yes')
      return opened.driver.perform({ type: 'acknowledge-cautions', step }).ok;
    say('Type the whole word "yes" when you have read it, or "pause" to leave.');
  }
}
