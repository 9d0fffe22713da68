/** A dialogue of lines with a fake session: what was said, and what was kept. */
import type { SessionEvent } from '../../src/session/events.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { fakeSession } from './screens/fake-services.ts';

/** Answers with `lines`, and then with nothing. */
export async function talk(
  options: Parameters<typeof fakeSession>[0],
  ...lines: readonly string[]
): Promise<{ readonly text: string; readonly events: readonly SessionEvent[] }> {
  const { opened, driver } = fakeSession(options);
  const said: string[] = [];
  const left = [...lines];
  await plainSession(opened, {
    say: (line) => said.push(line),
    ask: async (question) => {
      said.push(question);
      return left.shift() ?? null;
    },
  });
  return { text: said.join('\n'), events: driver.events() };
}
