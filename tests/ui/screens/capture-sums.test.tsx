/** The pages for a capture and for the sums: what they show, what they save, what they leave alone. */
import { describe, expect, it } from 'vitest';
import { ENTER, ESC, F } from './keys.ts';
import { walkSession } from './walk.tsx';

const SIZES = [
  [80, 24],
  [60, 20],
] as const;

describe.each(SIZES)('at %i x %i', (columns, rows) => {
  it('a capture is asked for, shown, and saved when confirmed', async () => {
    const { frame, press, driver } = await walkSession({ columns, rows, scope: true });
    await press(F.capture);
    expect(await frame()).toMatchSnapshot('question');
    await press('/data/crank.csv', ENTER);
    expect(await frame()).toMatchSnapshot('what was found');
    expect(driver.events()).toHaveLength(1);
    await press(ENTER);
    expect(driver.events().at(-1)).toMatchObject({
      type: 'look-recorded',
      look: 'uneven',
      outcome: 'uneven',
      capture: { name: 'crank.csv', from: 'file' },
    });
  });

  it('the sums stand on a page of their own', async () => {
    const { frame, press } = await walkSession({ columns, rows, scope: true });
    await press(F.sums);
    expect(await frame()).toMatchSnapshot();
    await press(ESC);
    expect(await frame()).toContain('Step 1: Scope picture');
  });
});

describe('a capture', () => {
  it('that cannot be read leaves the question open and says why', async () => {
    const { frame, press, driver } = await walkSession({ scope: true });
    await press(F.capture, '/nowhere.csv', ENTER);
    expect(await frame()).toContain('! there is no such file; check the name and the rights');
    expect(await frame()).toContain('Measure a capture');
    expect(driver.events()).toHaveLength(1);
  });

  it('is left with Escape, and nothing is saved', async () => {
    const { frame, press, driver } = await walkSession({ scope: true });
    await press('\x06', 'crank.csv', ENTER, ESC);
    expect(await frame()).toContain('Step 1: Scope picture');
    expect(driver.events()).toHaveLength(1);
  });

  it('comes from the simulated vehicle on an empty field, and never from a real one', async () => {
    const bench = await walkSession({ scope: true, bench: true });
    await bench.press(F.capture, ENTER);
    expect(await bench.frame()).toContain('bench.csv');
    const real = await walkSession({ scope: true });
    await real.press(F.capture, ENTER);
    expect(await real.frame()).toContain('Which file?');
  });

  it('is refused at a step that asks for volts', async () => {
    const { frame, press } = await walkSession();
    await press('y', F.capture);
    expect(await frame()).toContain('! this step is not answered by a capture');
  });
});
