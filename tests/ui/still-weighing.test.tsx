/** A reading is weighed between the keys: what is typed meanwhile stands on the screen before the weighing is done. */
import { afterEach, describe, expect, it } from 'vitest';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import type { Advisor } from '../../src/session/advisor.ts';
import type { Session } from '../../src/session/session.ts';
import { Unworkable } from '../../src/source/unworkable.ts';
import { FAKE_ADVISOR } from './screens/fake-services.ts';
import { DOWN, ENTER } from './screens/keys.ts';
import { walkSession } from './screens/walk.tsx';

/** All of them end with their test: one that weighs for ever takes most of the time of whatever else runs in this process. */
const weighing: { isDone: boolean }[] = [];
afterEach(async () => {
  for (const state of weighing.splice(0)) state.isDone = true;
  await new Promise((resolve) => setImmediate(resolve));
});

/** An advisor that weighs a reading until it is told that it is done, and counts who could not wait. */
function slowAdvisor() {
  const done = new WeakSet<Session>();
  const state = { isDone: false, slices: 0, askedTooSoon: 0 };
  weighing.push(state);
  const advisor: Advisor = {
    ...FAKE_ADVISOR,
    diagnosis: (session) => {
      if (!done.has(session)) state.askedTooSoon += 1;
      return FAKE_ADVISOR.diagnosis(session);
    },
    suspects: (session) => {
      if (!done.has(session)) state.askedTooSoon += 1;
      return FAKE_ADVISOR.suspects(session);
    },
    isReady: (session) => done.has(session),
    *prepare(session) {
      while (!state.isDone) {
        state.slices += 1;
        yield;
      }
      done.add(session);
    },
  };
  return { advisor, state };
}

describe('while a reading is weighed', () => {
  it('what is typed at the next prompt is shown and judged, and nothing waits for the suspects', async () => {
    const { advisor, state } = slowAdvisor();
    const { press, frame } = await walkSession({ advice: advisor });
    await press('y');
    const before = state.slices;
    await press('4', '.', '9');
    const shown = await frame();
    expect(shown).toContain('Reading in volts: 4.9');
    expect(shown).toContain('4.9 V is GOOD');
    expect(state.slices).toBeGreaterThan(before);
    expect(state.askedTooSoon).toBe(0);
  });

  it('the next step stands there and says so, and what the reading told once that is known', async () => {
    const { advisor, state } = slowAdvisor();
    const { press, frame } = await walkSession({ advice: advisor });
    state.isDone = true;
    await press('y');
    state.isDone = false;
    await press('4.9', ENTER);
    expect(await frame()).toContain('Ground under load');
    expect(await frame()).toContain('Last reading: still being weighed.');
    const tooSoon = state.askedTooSoon;
    await press(DOWN);
    expect(await frame()).toContain('Last reading: still being weighed.');
    expect(state.askedTooSoon).toBe(tooSoon);
    state.isDone = true;
    expect(await frame()).toContain('Last reading: "mend the feed wire" rose');
  });

  it('a value that nothing shows is asked about before a second Enter takes it', async () => {
    const { advisor } = slowAdvisor();
    const possible = () => ({
      spans: [{ low: 4.6, high: 5.3 }],
      ...{ overLimit: false, unit: 'V' as const, meter: STANDARD_SETTINGS.meter },
      beside: () => [],
    });
    const advice: Advisor = {
      ...advisor,
      diagnosis: (session) => ({ ...FAKE_ADVISOR.diagnosis(session), possible }),
    };
    const { driver, press, frame } = await walkSession({ advice });
    await press('y', '2.5');
    expect(await frame()).not.toContain('nothing in this circuit');
    await press(ENTER);
    expect(driver.events().at(-1)?.type).toBe('caution-acknowledged');
    expect((await frame()).replace(/[│\s]+/g, ' ')).toContain(
      'Press Enter again if that is what the meter shows. 2.5 V: nothing in this circuit shows 2.5 V here',
    );
    await press(ENTER);
    expect(driver.events().at(-1)).toMatchObject({ type: 'reading-recorded', value: 2.5 });
  });

  it('what cannot be worked out is told, and not weighed for ever', async () => {
    const isRead = (session: Session) =>
      session.events.some(({ type }) => type === 'reading-recorded');
    const fail = (session: Session) => {
      if (isRead(session)) throw new Unworkable('the circuit cannot be computed', 'mend it');
    };
    const advice: Advisor = {
      ...FAKE_ADVISOR,
      isReady: (session) => !isRead(session),
      suspects: (session) => fail(session) ?? FAKE_ADVISOR.suspects(session),
      *prepare(session) {
        yield;
        fail(session);
      },
    };
    const { driver, press, screen } = await walkSession({ advice });
    await press('y', '4.9', ENTER);
    // whoever runs the screen ends the program with these words, and the session is saved
    expect(String(screen.crashes[0])).toContain('the circuit cannot be computed');
    expect(driver.events().at(-1)).toMatchObject({ type: 'reading-recorded', value: 4.9 });
  });
});
