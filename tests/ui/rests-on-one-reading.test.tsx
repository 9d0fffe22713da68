/** A conclusion that rests on one reading asks for it again first, on the screen and in the dialogue of lines. */
import { describe, expect, it } from 'vitest';
import type { SessionEvent } from '../../src/session/events.ts';
import { HANGING_ADVISOR } from './screens/fake-services.ts';
import { ENTER } from './screens/keys.ts';
import { walkSession } from './screens/walk.tsx';
import { talk } from './talk.ts';

const OPTIONS = { advice: HANGING_ADVISOR };
const concluded = (events: readonly SessionEvent[]) =>
  events.find((event) => event.type === 'concluded');
const tests = (events: readonly SessionEvent[]) =>
  events.filter(({ type }) => type === 'test-recorded');

describe('the page of a conclusion', () => {
  const atConclusion = async (more: { readonly columns?: number; readonly rows?: number } = {}) => {
    const walk = await walkSession({ ...OPTIONS, ...more });
    await walk.press('y', '0.02', ENTER);
    return walk;
  };

  it.each([
    [80, 24],
    [60, 20],
  ])('says so in sight, with the repeat as what Enter does, at %d x %d', async (columns, rows) => {
    const { frame } = await atConclusion({ columns, rows });
    const text = (await frame()).replace(/[│\s]+/g, ' ');
    expect(text).toMatch(/! This rests on one reading: [^.]+, 0\.02 V\. Repeat it first\./);
    expect(text).toContain('[Enter] repeat it');
    expect(text).toContain('[a] accept anyway');
  });

  it('makes it again with Enter, and is then weighed anew and accepted', async () => {
    const { driver, press, frame } = await atConclusion();
    await press(ENTER);
    expect(await frame()).toContain('Voltage from sensor ground');
    await press('0.02', ENTER);
    expect(tests(driver.events())).toHaveLength(1);
    expect(await frame()).not.toContain('rests on one reading');
    await press('a');
    expect(concluded(driver.events())).not.toHaveProperty('restsOn');
  });

  it('is accepted all the same by another key, and the record says on what it rests', async () => {
    const { driver, press, frame } = await atConclusion();
    await press('a');
    expect(concluded(driver.events())).toMatchObject({ proven: false, restsOn: 3 });
    expect(await frame()).toContain('It rests on one reading.');
  });

  it('is not accepted by that key typed ahead or held down', async () => {
    const { driver, later, frame } = await atConclusion();
    for (const ms of [100, 33, 33]) await later(ms, 'a');
    expect(concluded(driver.events())).toBeUndefined();
    expect(await frame()).toContain('That key came too fast');
  });

  it("of one's own comes back after the repeat", async () => {
    const { driver, press, frame } = await walkSession({ ...OPTIONS, free: true });
    await press(ENTER, '0.02', ENTER, 'c', 'c');
    expect(await frame()).toContain('Repeat it first.');
    await press(ENTER, '0.02', ENTER);
    expect(await frame()).toContain('Your own conclusion');
    expect(await frame()).not.toContain('Repeat it first.');
    await press('a');
    expect(concluded(driver.events())).toMatchObject({ conclusion: null });
  });

  it('where it rests on more and is not proven, is accepted by that key, and Enter makes what would prove it', async () => {
    const { frame, press, driver } = await walkSession();
    await press('y', '0.02', ENTER);
    expect(await frame()).toContain('[a] accept anyway');
    expect((await frame()).replace(/[│\s]+/g, ' ')).toContain('Next: Voltage from sensor ground');
    await press(ENTER, '0.02', ENTER);
    expect(tests(driver.events())).toHaveLength(1);
  });
});

describe('the dialogue of lines', () => {
  it('asks first whether it is made again, and yes makes it', async () => {
    const { text, events } = await talk(OPTIONS, 'yes', '0.02', 'yes', '0.02', 'accept');
    expect(text).toMatch(/This rests on one reading: .*, 0\.02 V\. Repeat it first\./);
    expect(text).toContain('Type yes to repeat it, or accept to conclude anyway:');
    expect(tests(events)).toHaveLength(1);
    expect(concluded(events)).not.toHaveProperty('restsOn');
  });

  it('accepts all the same by a word of its own', async () => {
    const { events } = await talk(OPTIONS, 'yes', '0.02', 'accept');
    expect(tests(events)).toHaveLength(0);
    expect(concluded(events)).toMatchObject({ restsOn: 3 });
  });

  it("asks the same of a conclusion of one's own", async () => {
    const { text, events } = await talk(
      OPTIONS,
      'yes',
      '0.02',
      'conclude 2',
      'no',
      'conclude 2',
      'accept',
    );
    expect(text).toContain('Nothing was concluded.');
    expect(text).toContain('It rests on one reading.');
    expect(concluded(events)).toMatchObject({ conclusion: null, restsOn: 3 });
  });
});
