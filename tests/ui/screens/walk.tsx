/** A session or the whole program on a test screen, with a clock that passes a second before each key. */
import type { Problem } from '../../../src/source/problem.ts';
import { App, type AppBegin } from '../../../src/ui/app.tsx';
import type { DrawingStyle } from '../../../src/ui/term/colour.ts';
import { openTestScreen, type TestScreen } from '../in-process.ts';
import {
  type FakeDriver,
  type FakeOptions,
  type FakeServices,
  fakeClock,
  fakeServices,
  fakeSession,
} from './fake-services.ts';

export interface Walk {
  readonly screen: TestScreen;
  /** Sends each key after a second's pause. */
  readonly press: (...keys: string[]) => Promise<void>;
  /** Sends keys so many milliseconds after the last ones. */
  readonly later: (ms: number, keys: string) => Promise<void>;
  /** The frame as one text. */
  readonly frame: () => Promise<string>;
  readonly left: number[];
}

interface Options {
  readonly columns?: number;
  readonly rows?: number;
  readonly look?: Partial<DrawingStyle>;
}

/** The program from its start screen. */
export async function walkApp(
  options: Options & { problem?: Problem; begin?: AppBegin } = {},
): Promise<Walk & { services: FakeServices }> {
  const clock = fakeClock();
  const services = fakeServices(clock, options.problem ? { problem: options.problem } : {});
  const left: number[] = [];
  const onLeave = (code: number) => void left.push(code);
  const begin = options.begin ?? { screen: 'start' };
  const node = <App services={services} begin={begin} onLeave={onLeave} />;
  const screen = await openTestScreen(node, options);
  return { ...walkOn(screen, clock.pass), services, left };
}

/** A session by itself. */
export async function walkSession(
  options: Options & FakeOptions = {},
): Promise<Walk & { driver: FakeDriver }> {
  const clock = fakeClock();
  const { opened, driver } = fakeSession(options);
  const left: number[] = [];
  const screen = await openTestScreen(
    <App
      services={fakeServices(clock)}
      begin={{ screen: 'session', session: opened }}
      onLeave={(code) => left.push(code)}
    />,
    options,
  );
  return { ...walkOn(screen, clock.pass), driver, left };
}

function walkOn(screen: TestScreen, pass: (ms: number) => void) {
  const later = async (ms: number, keys: string) => {
    pass(ms);
    await screen.send(keys);
  };
  return {
    screen,
    later,
    press: async (...keys: string[]) => {
      for (const key of keys) await later(1000, key);
    },
    frame: () => screen.text(),
  };
}
