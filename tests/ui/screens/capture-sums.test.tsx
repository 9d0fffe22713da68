/** The pages for a capture and for the sums: what they show, what they save, what they leave alone. */
import { describe, expect, it } from 'vitest';
import { QUIET_MS } from '../../../src/ui/screens/deliberate-state.ts';
import { expectWhole } from '../in-process.ts';
import { ENTER, ESC, F } from './keys.ts';
import { walkSession } from './walk.tsx';

const SIZES = [
  [80, 24],
  [60, 20],
] as const;

describe.each(SIZES)('at %i x %i', (columns, rows) => {
  it('a capture is chosen from a list, shown, and saved when confirmed', async () => {
    const { frame, press, driver } = await walkSession({ columns, rows, scope: true });
    await press(F.capture);
    expect(await frame()).toMatchSnapshot('the list');
    await press(ENTER);
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

describe('choosing a capture', () => {
  it('leads from what was found to a known-good one and back', async () => {
    const { frame, press, driver } = await walkSession({ scope: true });
    await press(F.capture, ENTER, 'g');
    expect(await frame()).toContain('Choose a known-good capture');
    expect(await frame()).toContain("Or type the maker's edge positions: falls at 114");
    await press('falls at 20 deg; within 4 deg');
    expect(await frame()).toContain("The maker's edge positions: Enter takes them");
    await press(ESC);
    await press(ESC);
    expect(await frame()).toContain('crank.csv: switched');
    await press('g', 'falls at 114', ENTER);
    expect(await frame()).toContain('crank.csv: switched');
    expect(driver.events()).toHaveLength(1);
  });

  it('opens folders, shows one that is closed to us, and comes back up', async () => {
    const { frame, press } = await walkSession({ scope: true });
    await press(F.capture, 'arch', ENTER);
    expect(await frame()).toContain('Folder: /data/archive');
    expect(await frame()).toContain('There are no captures here.');
    await press(ENTER);
    expect(await frame()).toContain('Folder: /data ');
    await press('locked', ENTER);
    expect(await frame()).toContain('! you are not allowed to read this folder');
    expect(await frame()).toContain('..');
  });

  it('narrows down by what is typed; a name typed in full is that one', async () => {
    const { frame, press } = await walkSession({ scope: true });
    await press(F.capture, 'old');
    const narrowed = await frame();
    expect(narrowed).toContain('old-crank.csv');
    expect(narrowed).not.toContain('> crank.csv');
    await press(ESC);
    expect(await frame()).toContain('> crank.csv');
    await press('crank.csv', ENTER);
    expect(await frame()).toContain('crank.csv: switched');
    expect(await frame()).not.toContain('old-crank');
  });

  it('takes a typed path, says why it cannot be read, and stays', async () => {
    const { frame, press, driver } = await walkSession({ scope: true });
    await press(F.capture, '/data/nowhere.csv');
    expect(await frame()).toContain('Enter uses it as a path');
    await press(ENTER);
    expect(await frame()).toContain('! there is no such file; check the name and the rights');
    await press(ESC, ESC);
    expect(await frame()).toContain('Step 1: Scope picture');
    expect(driver.events()).toHaveLength(1);
  });

  it('shows hostile and endless names harmlessly, each in one row with its size', async () => {
    const { screen, press } = await walkSession({ scope: true, columns: 60, rows: 20 });
    await press(F.capture);
    const lines = await screen.lines();
    expect(lines.find((line) => line.includes('a-name-without'))).toMatch(
      /a-name-without.*….*7\.csv +100 B +9 days ago/,
    );
    expect(lines.find((line) => line.includes('gpj'))).toContain('‹U+202E›gpj.csv');
    expect(lines.find((line) => line.includes('red'))).toContain('␛[31mred␛[2J.csv');
    expectWhole(lines, 60, 20);
  });
});

describe('a capture', () => {
  it('opens by its second key', async () => {
    const { frame, press } = await walkSession({ scope: true });
    await press('\x06');
    expect(await frame()).toContain('Choose a capture');
  });

  it('is not taken by an Enter that is held down from the choice of the file', async () => {
    const { frame, press, later, driver } = await walkSession({ scope: true });
    await press(F.capture, ENTER);
    for (let repeat = 0; repeat < 12; repeat++) await later(33, ENTER);
    expect(driver.events()).toHaveLength(1);
    expect(await frame()).toContain('That Enter came too fast');
    await later(QUIET_MS, ENTER);
    expect(driver.events().at(-1)).toMatchObject({ type: 'look-recorded', look: 'uneven' });
  });

  it('comes from the simulated vehicle with one key, and a file can be chosen instead', async () => {
    const bench = await walkSession({ scope: true, bench: true });
    await bench.press(F.capture);
    expect(await bench.frame()).toContain('bench.csv');
    await bench.press('f');
    expect(await bench.frame()).toContain('Choose a capture');
    await bench.press(ENTER);
    expect(await bench.frame()).toContain('crank.csv: switched');
  });

  it('answers a test outside the procedure, and Esc leads back to it', async () => {
    const { frame, press, driver } = await walkSession({ scope: true });
    await press(F.nextTests);
    await frame();
    await press('3', ENTER, 'y');
    expect(await frame()).toContain('[F12] capture');
    await press(F.capture, ESC);
    expect(await frame()).toContain('A test outside the procedure');
    await press(F.capture, ENTER, ENTER);
    expect(driver.events().at(-1)).toMatchObject({
      type: 'test-recorded',
      shown: { kind: 'number', value: 2.5 },
      capture: { name: 'crank.csv' },
    });
    expect(await frame()).toContain('In the record:');
  });

  it('of several channels can be judged by another one', async () => {
    const { frame, press, driver } = await walkSession({ scope: true });
    await press(F.capture, 'two.csv', ENTER);
    expect(await frame()).toContain('Judged channel: 1 of 2, cam');
    expect(await frame()).toContain('[c] another channel');
    expect(await frame()).not.toContain('[Enter]');
    await press(ENTER);
    expect(driver.events()).toHaveLength(1);
    await press('c');
    expect(await frame()).toContain('Looks like: uneven');
    await press(ENTER);
    expect(driver.events().at(-1)).toMatchObject({ type: 'look-recorded', look: 'uneven' });
  });

  it('is refused at a step that asks for volts of nothing that moves', async () => {
    const { frame, press } = await walkSession();
    await press('y', F.capture);
    expect(await frame()).toContain("! a capture can't answer this step");
  });
});
