/** Keys that nobody meant as answers: a megabyte pasted without marks, and a key held down, on every screen. */
import { expect, it } from 'vitest';
import { LONG, shareOf } from '../campaign.ts';
import { expectWhole } from '../ui/in-process.ts';
import { SCREENS } from '../ui/screens/every-screen.ts';
import { DOWN, ENTER, TAB, UP } from '../ui/screens/keys.ts';
import { walkApp, walkSession } from '../ui/screens/walk.tsx';

const MB = 1_000_000;
const PASTED = ['x', 'y', '1', '1\r', 'y\r', 'a\r', ENTER, TAB, DOWN, '語', 'y5\r', 'מ\r\n'];
const HELD = ['y', 'a', 'c', 'o', '1', ENTER, TAB, ' '];
/** What must be read before it is taken. */
const WEIGHTY = ['caution-acknowledged', 'concluded', 'session-closed'];
/** Common settings of a keyboard: so long until a held key comes again, and then so long between. From memory. */
const DELAYS_MS = [250, 500, 660, 950];
const REPEAT_MS = 33;
const REPEATS = LONG ? 60 : 12;
/** More keys than this draw a screen anew each. */
const KEYS_AT_ONCE = 256;

const screens = Object.entries(SCREENS);
const pastes = screens.flatMap(([name, keys]) => PASTED.map((unit) => ({ name, keys, unit })));

it('a megabyte pasted without marks draws few frames, takes nothing and leaves the screen whole', {
  timeout: 3_600_000,
}, async () => {
  let most = 0;
  const tried = shareOf(pastes, pastes.length);
  for (const { name, keys, unit } of tried) {
    const { screen, press, left } = await walkApp();
    await press(...keys);
    const before = screen.frames();
    await screen.send(unit.repeat(MB / unit.length));
    const what = `${JSON.stringify(unit)} on "${name}"`;
    most = Math.max(most, screen.frames() - before);
    expect(screen.frames() - before, what).toBeLessThanOrEqual(2 * KEYS_AT_ONCE);
    // The first key after them takes the line away that says how many were not taken.
    if (left.length === 0) {
      await press(UP);
      expectWhole(await screen.lines(), 80, 24);
    }
    expect(screen.crashes, what).toEqual([]);
    await screen.unmount();
  }
  console.info(`pasted: cases=${tried.length} of ${pastes.length} frames at most=${most}`);
});

const inSession = screens.filter(([, keys]) => keys[0] === '3');
const holds = inSession.flatMap(([name, keys]) =>
  HELD.flatMap((key) => DELAYS_MS.map((delay) => ({ name, keys: keys.slice(1), key, delay }))),
);

it('a key held down acknowledges and concludes nothing beyond its first press', {
  timeout: 3_600_000,
}, async () => {
  const tried = shareOf(holds, 160);
  // Where a press leads to what must be read, whatever the share.
  const always = holds.filter(
    ({ name, key, delay }) =>
      LONG || (delay === 500 && name === 'about to conclude' && key === ENTER),
  );
  for (const { name, keys, key, delay } of new Set([...tried, ...always])) {
    const { screen, driver, press, later } = await walkSession();
    await press(...keys, key);
    const weighty = () => driver.events().filter(({ type }) => WEIGHTY.includes(type)).length;
    const before = weighty();
    await later(delay, key);
    for (let repeat = 0; repeat < REPEATS; repeat += 1) await later(REPEAT_MS, key);
    expect(weighty() - before, `${JSON.stringify(key)} after ${delay} ms on "${name}"`).toBe(0);
    expect(screen.crashes).toEqual([]);
    await screen.unmount();
  }
  console.info(`held: cases=${new Set([...tried, ...always]).size} of ${holds.length}`);
});
