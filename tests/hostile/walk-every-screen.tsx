/** Every screen of a session in which all that comes from a person, a file or the model holds one text. */
import type { LogEvent } from '../../src/log/event-line.ts';
import { driveSession } from '../../src/log/session-driver.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { openSession } from '../../src/session/evolve.ts';
import { App } from '../../src/ui/app.tsx';
import type { OpenedSession } from '../../src/ui/app-services.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { NAME } from '../log/events.ts';
import { FaultyDisk } from '../log/faulty-disk.ts';
import { when } from '../session/sample-tree.ts';
import { openTestScreen, type TestScreen } from '../ui/in-process.ts';
import { fakeClock, fakeServices, fakeSession } from '../ui/screens/fake-services.ts';
import { DOWN, ENTER, ESC, F, PAGE_DOWN } from '../ui/screens/keys.ts';
import { canarySession } from './canary-session.ts';

/** Goes through them and looks at each; the screen is left unmounted. */
export async function walkEveryScreen(
  text: string,
  size: { readonly columns: number; readonly rows: number },
  look: (screen: TestScreen) => Promise<void>,
) {
  const disk = new FaultyDisk(seededRandom(1));
  const first = canarySession(text);
  const made = createSession(disk, '/sessions', NAME, first as unknown as LogEvent);
  if (!made.ok) throw new Error(made.problem.words);
  let second = 0;
  const now = () => {
    second = (second + 1) % 60;
    return when(second);
  };
  const driver = driveSession({
    writer: made.value,
    session: openSession(first),
    now,
    vehicle: null,
  });
  driver.perform({ type: 'add-note', text: text });
  const fake = fakeSession().opened;
  const opened: OpenedSession = {
    ...fake,
    driver,
    bind: (text) => `${text} ${text}`,
    terminalWords: (id) => `${id} ${text}`,
    sketch: () => [text],
    advisor: {
      ...fake.advisor!,
      suspects: () => ({
        rows: [
          {
            repair: 'x',
            words: text,
            chance: 0.9,
            faults: [{ id: 'x', words: text, chance: 0.9 }],
          },
        ],
        changed: text,
        intermittent: true,
        unexplained: text,
        unexplainedBy: { reading: null, pair: null },
        group: text,
        groupRepairs: ['x'],
      }),
      nextTests: (session) =>
        fake.advisor!.nextTests(session).map((one) => ({ ...one, words: text, why: text })),
    },
  };
  const clock = fakeClock();
  const screen = await openTestScreen(
    <App
      services={fakeServices(clock)}
      begin={{ screen: 'session', session: opened }}
      onLeave={() => {}}
    />,
    size,
  );
  const press = async (...keys: string[]) => {
    for (const key of keys) {
      clock.pass(1000);
      await screen.send(key);
      await look(screen);
    }
  };
  const looks = [
    F.help,
    ESC,
    F.suspects,
    ESC,
    F.nextTests,
    DOWN,
    ESC,
    F.way,
    DOWN,
    ESC,
    F.sketch,
    ESC,
  ];
  // A caution counts once it was seen to its end.
  const toEnd = size.rows < 30 ? Array.from({ length: 8 }, () => PAGE_DOWN) : [];
  await press(...looks, F.note, `\u001b[200~${text.replaceAll('\u001b', '')}\u001b[201~`, ENTER);
  await press(
    ENTER,
    ...looks,
    ...toEnd,
    'y',
    '4.98 V',
    ENTER,
    ...toEnd,
    'y',
    ...looks,
    '2',
    ...looks,
    ENTER,
    ENTER,
  );
  await press(F.instruments, ESC, F.pause);
  await screen.unmount();
  return { screen, driver };
}
