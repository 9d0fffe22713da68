/** After the repair: from the session at rest through the tests that must pass to a closed record. */
import { describe, expect, it } from 'vitest';
import { ENTER, ESC, F, TAB } from './keys.ts';
import { walkSession } from './walk.tsx';

/** A session whose feed was read too low, and its conclusion taken. Before the tests after it the caution is read again. */
async function concluded(options: Parameters<typeof walkSession>[0] = {}) {
  const walk = await walkSession(options);
  await walk.press('y', '0.02', ENTER, 'a');
  expect(await walk.frame()).toContain('[r] test after the repair');
  return walk;
}

it('at rest any test can still be arranged', async () => {
  const { press, frame } = await concluded();
  await press('t');
  expect(await frame()).toContain('made already');
});

const last = (driver: { events: () => readonly { type: string }[] }) => driver.events().at(-1);

describe('after the repair', () => {
  it('the tests that must pass come one by one, with what each showed before, and close the record', async () => {
    const { driver, press, frame } = await concluded();
    await press('r');
    // The feed was tested under this caution a moment ago, but the repair lies between.
    expect(await frame()).toContain('Before you go on');
    await press('y');
    expect(await frame()).toContain('test 1 of 2 · key on');
    expect(await frame()).toContain('Again: Feed at the sensor');
    expect(await frame()).toContain('Before the repair: 0.02 V: the feed is low');
    await press('5.01', ENTER);
    expect(last(driver)).toMatchObject({ type: 'retest-recorded', step: 'feed', passed: true });
    expect(await frame()).toContain('The last test passes now.');
    expect(await frame()).toContain('Before the repair: not measured');
    await press('1');
    expect(last(driver)).toMatchObject({ type: 'retest-recorded', step: 'light', look: 'lit' });
    expect(await frame()).toContain('The failed tests pass now');
    expect(await frame()).toContain('After:  5.01 V (good is 4.75 to 5.25 V)');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'session-closed', verdict: 'cured' });
    expect(await frame()).toContain('Closed as cured: every test');
  });

  it('a test that still fails is said so, and can be done again before anything is closed', async () => {
    const { driver, press, frame } = await concluded();
    await press('r', 'y', '0.02', ENTER);
    expect(await frame()).toContain('! The last test does not pass.');
    await press('1');
    expect(await frame()).toContain('Not cured');
    expect(await frame()).toContain('FAILS: Feed at the sensor');
    await press(F.back, '1', F.back);
    expect(await frame()).toContain('Again: Ground under load');
    await press('2');
    expect(await frame()).toContain('FAILS: Ground under load');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'session-closed', verdict: 'not-cured' });
  });

  it('a test that cannot be made is said so, and the repair is not proven', async () => {
    const { driver, press, frame } = await concluded();
    await press('r', F.cannot);
    expect(await frame()).toContain("This test can't be done");
    await press(ENTER);
    expect(last(driver)?.type).not.toBe('retest-impossible');
    await press('the plug is behind the tank now', ENTER);
    expect(last(driver)).toMatchObject({ type: 'retest-impossible', step: 'feed' });
    expect(await frame()).toContain('The last test was not done.');
    await press('y', '1');
    expect(await frame()).toContain('The repair is not proven');
    expect(await frame()).toContain('Not done: Feed at the sensor');
    expect(await frame()).toContain('could not be done: the plug is behind the tank now');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'session-closed', verdict: 'not-shown' });
  });

  it('is left and gone on with later, where it stopped', async () => {
    const { driver, press, frame } = await concluded();
    await press('r', 'y', '5', ENTER, F.pause);
    expect(await frame()).toContain('Tested so far: 1.');
    await press('r');
    expect(await frame()).toContain('test 2 of 2');
    await press('1', ESC);
    expect(driver.session().status).toBe('concluded');
    await press('r');
    expect(await frame()).toContain('The failed tests pass now');
  });

  it('an Enter typed ahead does not close the record', async () => {
    const { driver, press, later, frame } = await concluded();
    await press('r', 'y', '5', ENTER, '1');
    await later(10, ENTER);
    expect(await frame()).toContain('That Enter came too fast');
    expect(driver.session().closed).toBeNull();
  });

  it('a simulated vehicle shows what it has after the repair', async () => {
    const { driver, press, frame } = await concluded({ bench: true });
    await press('r', 'y');
    expect(await frame()).toContain('The simulated vehicle: 5 V');
    await press(TAB, ENTER);
    expect(last(driver)).toMatchObject({ type: 'retest-recorded', step: 'feed', passed: true });
  });

  it('wiring, sums and keys lie over the test, and what does not belong there says so', async () => {
    const { press, frame } = await concluded();
    await press('r', 'y', F.sketch);
    expect(await frame()).toContain('Wiring');
    await press(ESC, F.sums);
    expect(await frame()).toContain('Sums');
    await press(ESC, F.note);
    expect(await frame()).toContain('not while testing after the repair');
    await press(F.capture);
    expect(await frame()).toContain("a capture can't answer this test");
  });

  it('a full disk is told, and what was tested before is kept', async () => {
    const { driver, press, frame } = await concluded();
    await press('r', 'y');
    driver.fillDisk(1);
    await press('5', ENTER);
    expect(await frame()).toContain('Not saved');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'retest-recorded', step: 'feed' });
  });
});
