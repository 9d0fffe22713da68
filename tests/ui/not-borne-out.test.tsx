/** A conclusion that the readings do not bear out gives something better to do first, on the screen and in lines. */
import { describe, expect, it } from 'vitest';
import type { Advisor } from '../../src/session/advisor.ts';
import type { SessionEvent } from '../../src/session/events.ts';
import {
  DOUBTING_ADVISOR,
  OTHERWISE_ADVISOR,
  OVERTURNING_ADVISOR,
  WIDE_ADVISOR,
} from './screens/fake-services.ts';
import { ENTER } from './screens/keys.ts';
import { walkSession } from './screens/walk.tsx';
import { talk } from './talk.ts';

const OTHER = ['contact.sensor.ground.resistive'];
const concluded = (events: readonly SessionEvent[]) =>
  events.find((event) => event.type === 'concluded');
const tests = (events: readonly SessionEvent[]) =>
  events.filter(({ type }) => type === 'test-recorded');
const flat = (frame: string) => frame.replace(/[│\s]+/g, ' ');

describe('the page of a conclusion', () => {
  const atConclusion = async (advice: Advisor) => {
    const walk = await walkSession({ advice });
    await walk.press('y', '0.02', ENTER);
    return walk;
  };

  it('names the test that tells most, and Enter makes it before anything is concluded', async () => {
    const { driver, press, frame } = await atConclusion(DOUBTING_ADVISOR);
    const text = flat(await frame());
    expect(text).toMatch(/! The readings do not support this yet \(20 %\)\. First: Voltage from /);
    expect(text).toContain('[Enter] do that test');
    await press(ENTER);
    expect(concluded(driver.events())).toBeUndefined();
    expect(await frame()).toContain('Voltage from sensor ground');
    await press('0.02', ENTER);
    expect(tests(driver.events())).toHaveLength(1);
    // Borne out now, and not proven: the next test comes before it is accepted.
    expect(await frame()).toContain('[Enter] do that test');
    await press('a');
    expect(concluded(driver.events())).toBeDefined();
  });

  it('names the other repair where no test is left, and Enter leads to it', async () => {
    const { driver, press, frame } = await atConclusion(OTHERWISE_ADVISOR);
    const text = flat(await frame());
    expect(text).toContain(
      '! The readings do not support this (10 %). They point to: clean the ground joint (90 %).',
    );
    expect(text).toContain('[Enter] conclude that instead');
    await press(ENTER);
    expect(concluded(driver.events())).toBeUndefined();
    expect(await frame()).toContain('Your own conclusion');
    expect(await frame()).toContain('clean the ground joint');
    await press('a');
    expect(concluded(driver.events())).toMatchObject({ conclusion: null, faults: OTHER });
  });

  it('names the answer that its repeats contradict, and Enter takes it back', async () => {
    const { driver, press, frame } = await atConclusion(OVERTURNING_ADVISOR);
    const text = flat(await frame());
    expect(text).toContain('! The procedure got here on one answer: ');
    expect(text).toContain('Repeated, it showed: ');
    expect(text).toContain('[Enter] take it back');
    await press(ENTER);
    expect(driver.events().at(-1)).toMatchObject({ type: 'step-reopened' });
    expect(concluded(driver.events())).toBeUndefined();
  });

  it('says that it leaves too many repairs, calls nothing proven, and Enter makes a test', async () => {
    const { press, frame } = await atConclusion(WIDE_ADVISOR);
    const text = flat(await frame());
    expect(text).toContain('! This leaves too many possible repairs to act on. First: ');
    expect(text).toContain('NOT PROVEN YET: it leaves too many possible repairs.');
    await press(ENTER);
    expect(await frame()).toContain('Voltage from sensor ground');
  });

  it.each([
    ['a test first', DOUBTING_ADVISOR],
    ['another repair', OTHERWISE_ADVISOR],
    ['an answer to take back', OVERTURNING_ADVISOR],
  ])('is accepted all the same by a key of its own, with %s', async (_, advice) => {
    const { driver, press, frame } = await atConclusion(advice);
    expect(await frame()).toContain('[a] accept anyway');
    await press('a');
    expect(tests(driver.events())).toHaveLength(0);
    expect(concluded(driver.events())).not.toMatchObject({ conclusion: null });
    expect(concluded(driver.events())).toMatchObject({ proven: false });
  });
});

describe('the dialogue of lines', () => {
  it('makes the test at yes', async () => {
    const { text, events } = await talk({ advice: DOUBTING_ADVISOR }, 'yes', '0.02', 'yes', '0.02');
    expect(text).toContain('Type yes to do that test, or accept to conclude anyway:');
    expect(tests(events)).toHaveLength(1);
    expect(concluded(events)).toBeUndefined();
  });
  it('takes the answer back at yes', async () => {
    const { text, events } = await talk(
      { advice: OVERTURNING_ADVISOR },
      'yes',
      '0.02',
      'yes',
      'pause',
    );
    expect(text).toContain('Type yes to take it back, or accept to conclude anyway:');
    expect(events.map(({ type }) => type)).toContain('step-reopened');
    expect(concluded(events)).toBeUndefined();
  });
  it('concludes on the other repair at yes', async () => {
    const { text, events } = await talk(
      { advice: OTHERWISE_ADVISOR },
      'yes',
      '0.02',
      'yes',
      'accept',
    );
    expect(text).toContain('Type yes to conclude that instead, or accept to conclude anyway:');
    expect(concluded(events)).toMatchObject({ conclusion: null, faults: OTHER });
  });
});
