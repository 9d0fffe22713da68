/** Every screen at every size: within its borders, in ASCII where asked, and whatever keys come. */

import { describe, expect, it } from 'vitest';
import { parseReading } from '../../../src/quantity/parse-reading.ts';
import { LONG } from '../../campaign.ts';
import fc from '../../seeded-check.ts';
import { expectWhole } from '../in-process.ts';
import { SCREENS } from './every-screen.ts';
import { DOWN, ENTER, F, PAGE_DOWN, TAB, UP } from './keys.ts';
import { walkApp, walkSession } from './walk.tsx';

const SIZES = [
  [60, 16],
  [60, 20],
  [80, 24],
  [100, 30],
] as const;

/** The screens that use colour. */
const COLOURED = ['caution', 'step', 'step with a long remark', 'doubt', 'conclusion'];

describe.each([false, true])('in ASCII only: %s', (ascii) => {
  it.each(Object.keys(SCREENS))('%s is whole at every size', async (name) => {
    const { screen, press } = await walkApp({ columns: 60, rows: 16, look: { ascii } });
    await press(...(SCREENS[name] ?? []));
    for (const [columns, rows] of ascii ? SIZES.slice(0, 1) : SIZES) {
      await screen.resize(columns, rows);
      const lines = await screen.lines();
      expectWhole(lines, columns, rows);
      if (ascii) expect(lines.join('')).toMatch(/^[\x20-\x7e]*$/);
    }
    expect(screen.crashes).toEqual([]);
  });
});

it('follows a resize with the half-typed reading kept', async () => {
  const { screen, press } = await walkSession({ bench: true });
  await press('y', '4.9');
  for (const [columns, rows] of [...SIZES, [40, 10], [80, 24]] as const) {
    await screen.resize(columns, rows);
    if (columns < 60) expect(await screen.text()).toContain('enlarge this window');
    else {
      expectWhole(await screen.lines(), columns, rows);
      expect(await screen.text()).toContain('Reading in volts: 4.9');
    }
  }
});

it('no screen says anything by colour alone: without colour the text is the same', async () => {
  for (const name of COLOURED) {
    const keys = SCREENS[name] ?? [];
    const frames = await Promise.all(
      [true, false].map(async (colour) => {
        const { press, frame } = await walkApp({ look: { colour } });
        await press(...keys);
        return frame();
      }),
    );
    expect(frames[0]).toBe(frames[1]);
  }
});

it('whatever keys come, a session neither crashes nor leaves its frame nor records half an answer', async () => {
  const key = fc.oneof(
    { weight: 3, arbitrary: fc.constantFrom('y', '1', '4.98\r', '5\r', ENTER) },
    {
      weight: 2,
      arbitrary: fc.constantFrom(...'y125.mVcow ', ENTER, TAB, UP, DOWN, PAGE_DOWN),
    },
    { weight: 1, arbitrary: fc.constantFrom(...Object.values(F)) },
  );
  const runs = LONG ? 200 : 4;
  let readings = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(key, { minLength: 20, maxLength: 40 }), async (keys) => {
      const { screen, press, driver } = await walkSession({ bench: true, columns: 60, rows: 16 });
      await press('y');
      for (const one of keys) {
        await press(one);
        expectWhole(await screen.lines(), 60, 16);
      }
      expect(screen.crashes).toEqual([]);
      for (const event of driver.events())
        if (event.type === 'reading-recorded') {
          readings += 1;
          expect(['read', 'doubt']).toContain(parseReading(event.typed, { unit: 'V' }).status);
        }
      await screen.unmount();
    }),
    { numRuns: runs, seed: 7 },
  );
  // The keys came far enough to mean something.
  expect(readings).toBeGreaterThan(0);
});
