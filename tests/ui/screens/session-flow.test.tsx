/** What keys do in a session: what is recorded, what is refused, what is kept. */
import { describe, expect, it } from 'vitest';
import type { Step } from '../../../src/procedure/procedure.ts';
import { QUIET_MS } from '../../../src/ui/screens/deliberate-state.ts';
import type { FakeDriver } from './fake-services.ts';
import { CLEAR, CTRL_C, DOWN, ENTER, ESC, F, PAGE_DOWN, TAB, UP } from './keys.ts';
import { GAS, LIVE, SCOPE_PROCEDURE, TURNS } from './small-procedure.ts';
import { walkSession } from './walk.tsx';

const types = (driver: FakeDriver) => driver.events().map(({ type }) => type);
const last = (driver: FakeDriver) => driver.events().at(-1);

describe('caution', () => {
  it('is acknowledged by y after a pause, and the record holds the text that was shown', async () => {
    const { driver, later, frame } = await walkSession();
    await later(QUIET_MS, 'y');
    expect(last(driver)).toMatchObject({
      type: 'caution-acknowledged',
      step: 'feed',
      state: 'key-on',
      cautions: [{ id: LIVE.id, word: 'CAUTION', text: LIVE.say }],
    });
    expect(await frame()).toContain('Reading in volts');
  });

  it.each([
    ['typed ahead, 299 ms after the screen', QUIET_MS - 1, 'y', 'came too fast'],
    ['Enter', 5000, ENTER, 'Enter is not enough'],
    ['a pasted y', 5000, '\x1b[200~y\x1b[201~', ''],
    ['a capital Y', 5000, 'Y', ''],
    ['a space', 5000, ' ', ''],
  ])('is not acknowledged by %s', async (_, ms, keys, words) => {
    const { driver, later, frame } = await walkSession();
    await later(ms, keys);
    expect(types(driver)).toEqual(['session-opened']);
    expect(await frame()).toContain('Before you go on');
    expect(await frame()).toContain(words);
  });

  it('is not acknowledged by a y held down, whose repeats come without a pause', async () => {
    const { driver, later } = await walkSession();
    await later(0, 'y');
    for (let repeat = 0; repeat < 40; repeat++) await later(33, 'y');
    expect(types(driver)).toEqual(['session-opened']);
    await later(QUIET_MS, 'y');
    expect(last(driver)?.type).toBe('caution-acknowledged');
  });

  it('leads to no capture, which would be an answer', async () => {
    const { start, steps } = SCOPE_PROCEDURE;
    const warned = { ...steps[start], cautions: [LIVE] } as Step;
    const procedure = { ...SCOPE_PROCEDURE, steps: { ...steps, [start]: warned } };
    const { press, frame } = await walkSession({ procedure });
    await press(F.capture);
    expect(await frame()).toContain('Before you go on');
    await press('y', F.capture);
    expect(await frame()).toContain('Choose a capture');
  });

  it('must have been seen to its end first', async () => {
    const { driver, press, frame } = await walkSession({ columns: 60, rows: 16 });
    await press('y', '5', ENTER, '1');
    expect(await frame()).toContain('more below');
    const before = types(driver);
    await press('y');
    expect(types(driver)).toEqual(before);
    expect(await frame()).toContain('There is more below');
    await press(PAGE_DOWN, PAGE_DOWN);
    expect(await frame()).not.toContain('There is more below');
    await press('y');
    expect(last(driver)).toMatchObject({ type: 'caution-acknowledged', state: 'running' });
  });

  it('that was read stands in short where the vehicle state comes again, and stops nothing', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', '5', ENTER);
    expect(await frame()).toContain('Ground under load');
    await press('1');
    expect(await frame()).toContain('Before you go on');
    await press('y', F.back);
    expect(await frame()).toContain('CAUTION: The circuit is live. (Read at step 1.)');
    expect(types(driver).filter((type) => type === 'caution-acknowledged')).toHaveLength(2);
  });
});

describe('a reading', () => {
  it('is recorded as typed and as understood', async () => {
    const { driver, press } = await walkSession();
    await press('y', '4970 mV', ENTER);
    expect(last(driver)).toMatchObject({
      type: 'reading-recorded',
      typed: '4970 mV',
      value: 4.97,
      outcome: 'good',
      judgement: { verdict: 'good' },
    });
  });

  it('may come with its Enter in one piece, as a meter in keyboard mode sends it', async () => {
    const { driver, press } = await walkSession();
    await press('y', '4.97\r\n');
    expect(types(driver)).toEqual(['session-opened', 'caution-acknowledged', 'reading-recorded']);
  });

  it.each([
    ['', 'type a reading first'],
    ['4.', ''],
    ['4.9 ohm', 'this step asks for volts'],
    ['hello', 'is not a reading'],
  ])('"%s" is not taken', async (typed, words) => {
    const { driver, press, frame } = await walkSession();
    await press('y', typed, ENTER);
    expect(types(driver)).toEqual(['session-opened', 'caution-acknowledged']);
    expect(await frame()).toContain(words);
  });

  it('that cannot be in this vehicle wants a second Enter, after a pause', async () => {
    const { driver, press, later, frame } = await walkSession();
    await press('y', '500');
    expect(await frame()).toContain('500 V is more than is possible here');
    await press(ENTER);
    expect(await frame()).toContain('Press Enter again if that is what the meter shows');
    await later(50, ENTER);
    expect(types(driver)).not.toContain('reading-recorded');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'reading-recorded', value: 500, outcome: 'high' });
  });

  it('that seemed impossible can be corrected instead', async () => {
    const { driver, press } = await walkSession();
    await press('y', '500', ENTER, '\x7f', '\x7f', ENTER);
    expect(last(driver)).toMatchObject({ type: 'reading-recorded', typed: '5', value: 5 });
  });

  it('with m or M in doubt is asked about, and taken as chosen', async () => {
    const { driver, press } = await walkSession();
    await press('y', '5 M', ENTER);
    expect(types(driver)).not.toContain('reading-recorded');
    // 5 mV where 5 V would be good is asked about once more.
    await press('1', ENTER);
    expect(last(driver)).toMatchObject({ type: 'reading-recorded', value: 0.005 });
  });

  it('of a simulated vehicle is taken over with Tab and confirmed with Enter, never by itself', async () => {
    const { driver, press, frame } = await walkSession({ bench: true });
    await press('y', ENTER);
    expect(types(driver)).not.toContain('reading-recorded');
    await press(TAB);
    expect(await frame()).toContain('Reading in volts: 0.02 V');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ typed: '0.02 V', outcome: 'low' });
  });

  it('half typed survives a look at the suspects', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', '4.9', F.suspects, ENTER);
    expect(await frame()).toContain('Reading in volts: 4.9');
    await press('7', ENTER);
    expect(last(driver)).toMatchObject({ typed: '4.97' });
  });
});

describe('a look or an answer', () => {
  it.each([
    ['a digit', ['2'], 'dim', 'weak'],
    ['arrows and Enter', [DOWN, DOWN, ENTER], 'dark', 'weak'],
    ['Enter on the first', [ENTER], 'lit', 'lit'],
    ['arrows past both ends', [UP, DOWN, DOWN, DOWN, DOWN, UP, ENTER], 'dim', 'weak'],
  ])('is given by %s', async (_, keys, look, outcome) => {
    const { driver, press } = await walkSession();
    await press('y', '5', ENTER, ...keys);
    expect(last(driver)).toMatchObject({ type: 'look-recorded', look, outcome });
  });

  it('is not given by a digit the list does not have', async () => {
    const { driver, press } = await walkSession();
    await press('y', '5', ENTER, '4', '0');
    expect(last(driver)?.type).toBe('reading-recorded');
  });

  it('is not given by a key typed before the step was shown', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', '5\r1');
    expect(last(driver)?.type).toBe('reading-recorded');
    expect(await frame()).toContain('before this was on the screen');
    await press('1');
    expect(last(driver)).toMatchObject({ type: 'look-recorded', look: 'lit' });
  });

  it('of a simulated vehicle is marked with Tab', async () => {
    const { driver, press } = await walkSession({ bench: true });
    await press('y', '5', ENTER, TAB, ENTER);
    expect(last(driver)).toMatchObject({ type: 'look-recorded', look: 'dim', outcome: 'weak' });
  });
});

describe('going back', () => {
  it('takes the last answer back and offers it again', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', '4.97 V', ENTER, F.back);
    expect(last(driver)).toMatchObject({ type: 'step-reopened', step: 'feed' });
    expect(await frame()).toContain('Reading in volts: 4.97 V');
    await press(ENTER);
    expect(await frame()).toContain('Ground under load');
  });

  it('offers an earlier look again, and keeps it through a new caution', async () => {
    const { driver, press } = await walkSession();
    await press('y', '5', ENTER, '1', 'y', F.back, 'y', ENTER);
    expect(last(driver)).toMatchObject({ type: 'look-recorded', step: 'light', look: 'lit' });
  });

  it('does not offer a typed value to another step', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', F.cannot, 'plug out of reach', ENTER, F.back);
    expect(await frame()).toMatch(/Reading in volts: +│/);
    expect(last(driver)?.type).toBe('step-reopened');
  });

  it('goes to any answer of the path so far; later answers count again', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', '5', ENTER, '1', F.way, UP, ENTER);
    expect(last(driver)).toMatchObject({ type: 'step-reopened', step: 'feed', answer: 0 });
    await press('y', CLEAR, '5.1', ENTER);
    expect(await frame()).toContain('step 3');
  });

  it('before the first answer is refused in words', async () => {
    const { press, frame } = await walkSession();
    await press('y', F.back);
    expect(await frame()).toContain('! there is no earlier answer to take back');
  });

  it('reopens an accepted conclusion', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', '0.02', ENTER, 'a', F.back);
    expect(driver.session().status).toBe('open');
    expect(await frame()).toContain('Reading in volts: 0.02');
  });
});

describe('what cannot be done, notes, instruments, pause', () => {
  it('asks why a step cannot be done and goes round it', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', F.cannot, ENTER);
    expect(await frame()).toContain('! A reason is needed');
    expect(types(driver)).not.toContain('step-impossible');
    await press('bolted behind the pump', ENTER);
    expect(last(driver)).toMatchObject({
      type: 'step-impossible',
      reason: 'bolted behind the pump',
    });
    expect(await frame()).toContain('Take the plug off');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'step-done', step: 'unplug' });
  });

  it('says so where there is no way round', async () => {
    const { press, frame } = await walkSession();
    await press('y', '5', ENTER, F.cannot);
    expect(await frame()).toContain('no alternative to this step');
  });

  it('records a note and says so', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', F.note, 'green pins?', ENTER);
    expect(last(driver)).toMatchObject({ type: 'note-added', step: 'feed', text: 'green pins?' });
    expect(await frame()).toContain('The note is in the record.');
  });

  it('drops a note on Esc', async () => {
    const { driver, press } = await walkSession();
    await press('y', F.note, 'nothing', ESC);
    expect(types(driver)).not.toContain('note-added');
  });

  it('changes the instruments at hand', async () => {
    const { driver, press } = await walkSession();
    await press('y', F.instruments, DOWN, ' ', DOWN, DOWN, ' ', ENTER);
    expect(last(driver)).toMatchObject({
      type: 'instruments-changed',
      instruments: ['meter', 'scope'],
    });
  });

  it('pauses with the path and the way back in, then leaves', async () => {
    const { driver, press, frame, left } = await walkSession();
    await press('y', F.pause);
    expect(last(driver)?.type).toBe('session-paused');
    expect(await frame()).toContain('ohmward resume dray-no-start');
    await press(ENTER);
    expect(driver.closed()).toBe(true);
    expect(left).toEqual([0]);
  });

  it('leaves at once with Ctrl+C, paused', async () => {
    const { driver, press, left } = await walkSession();
    await press(CTRL_C);
    expect(last(driver)?.type).toBe('session-paused');
    expect(left).toEqual([130]);
    expect(driver.closed()).toBe(true);
  });
});

describe('a test outside the procedure', () => {
  it('is recorded, and the step is asked again', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', F.nextTests, ENTER, '13.1 mV', ENTER);
    expect(last(driver)).toMatchObject({
      type: 'test-recorded',
      typed: '13.1 mV',
      shown: { kind: 'number', value: 0.0131, unit: 'V' },
    });
    expect(await frame()).toContain('In the record: Voltage from sensor ground, pin 3 (BK)');
    expect(await frame()).toContain('Reading in volts');
  });

  it('may be a look', async () => {
    const { driver, press } = await walkSession();
    await press('y', F.nextTests, DOWN, ENTER, '2');
    expect(last(driver)).toMatchObject({
      typed: 'the light is dim',
      shown: { kind: 'look', look: 'dim' },
    });
  });

  it('is not answered by the Enter that chose it, held down', async () => {
    const { driver, press, later, frame } = await walkSession();
    await press('y', F.nextTests, DOWN, ENTER);
    await later(33, ENTER);
    expect(types(driver)).not.toContain('test-recorded');
    expect(await frame()).toContain('before this was on the screen');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'test-recorded', shown: { look: 'lit' } });
  });

  it('is answered by the simulated vehicle too', async () => {
    const { driver, press, frame } = await walkSession({ bench: true });
    await press('y', F.nextTests, ENTER);
    expect(await frame()).toContain('The simulated vehicle: the meter shows 13.1 mV');
    await press(TAB, ENTER);
    expect(last(driver)).toMatchObject({ type: 'test-recorded', typed: '13.1 mV' });
  });

  it('leaves a caution that was read before in short, where the state comes again', async () => {
    const { press, frame } = await walkSession();
    expect(await frame()).toContain('Take off rings');
    // The engine runs in between, and the live circuit is not asked for again with the key on.
    await press('y', F.nextTests, '3', ENTER, 'y', '13.9', ENTER);
    expect(await frame()).toContain('CAUTION: The circuit is live. (Read at this');
    expect(await frame()).not.toContain('Take off rings');
  });

  it('shows its own cautions first, and they are in the record before the reading', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', F.nextTests, '3', ENTER);
    expect(await frame()).toContain('Before you go on');
    await press('0.2', ENTER);
    expect(types(driver)).not.toContain('test-recorded');
    await press('y');
    expect(last(driver)).toMatchObject({
      type: 'caution-acknowledged',
      step: null,
      state: 'running',
      cautions: [
        { id: TURNS.id, text: TURNS.say },
        { id: GAS.id, text: GAS.say },
      ],
    });
    await press('0.2', ENTER);
    expect(last(driver)?.type).toBe('test-recorded');
  });
});

describe('a conclusion', () => {
  it('says that an Enter came too fast although the last message stands there still', async () => {
    const { driver, press, later, frame } = await walkSession();
    await press('y', '0.02', ENTER, F.note, 'green pins', ENTER);
    expect(await frame()).toContain('The note is in the record.');
    await later(50, ENTER);
    expect(await frame()).toContain('That Enter came too fast');
    expect(driver.session().status).toBe('open');
  });

  it('is accepted with its weight', async () => {
    const { driver, press } = await walkSession();
    await press('y', '0.02', ENTER, 'a');
    expect(last(driver)).toMatchObject({
      type: 'concluded',
      conclusion: 'feed-open',
      faults: ['wire.feed.open'],
      proven: false,
      // The reading is the third event, after the opening and the caution.
      evidence: [{ reading: 3, counted: true }],
    });
  });

  it('is not accepted by an Enter typed ahead', async () => {
    const { driver, press, later, frame } = await walkSession();
    await press('y', '0.02\r\r');
    expect(last(driver)?.type).toBe('reading-recorded');
    await later(QUIET_MS - 1, ENTER);
    expect(await frame()).toContain('came too fast');
    expect(last(driver)?.type).toBe('reading-recorded');
    await later(QUIET_MS, 'a');
    expect(last(driver)?.type).toBe('concluded');
  });

  it('is drawn before its proof and the best tests are computed, which takes seconds', async () => {
    const { screen, press } = await walkSession();
    await press('y', F.nextTests, ESC, '0.02', ENTER);
    const drawn = screen.raw();
    const waits = [
      'every test you can do here',
      'What would tell you most now',
      'weighing the evidence',
      'NOT PROVEN',
    ];
    const places = waits.map((words) => drawn.indexOf(words));
    expect(places).not.toContain(-1);
    expect(drawn.indexOf('2 min: Voltage')).toBeGreaterThan(places[0] ?? 0);
    expect(places[3]).toBeGreaterThan(places[2] ?? 0);
  });

  it('of a simulated vehicle says that it was one', async () => {
    const { press, frame } = await walkSession({ bench: true });
    await press('y', TAB, ENTER, 'a');
    expect(await frame()).toContain('On a simulated vehicle.');
  });

  it('is proven after the tests it asks for', async () => {
    const { driver, press, frame } = await walkSession();
    // Enter makes what would prove it, as long as something would.
    await press('y', '0.02', ENTER, ENTER, '12 mV', ENTER);
    await press(F.nextTests, DOWN, ENTER, '3');
    expect(await frame()).toContain('PROVEN: 1 independent piece of evidence.');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'concluded', proven: true });
  });

  it("can be one's own, from the suspects", async () => {
    const { driver, press } = await walkSession();
    await press('y', '0.02', ENTER, 'o', DOWN, 'c', 'a');
    expect(last(driver)).toMatchObject({
      type: 'concluded',
      conclusion: null,
      ownWords: null,
      faults: ['contact.sensor.ground.resistive'],
    });
  });

  it("in one's own words names no fault, so nothing is weighed for it", async () => {
    const { driver, press, frame } = await walkSession();
    await press('y', '0.02', ENTER, 'o', 'w', 'mouse in the harness', ENTER);
    expect(await frame()).toContain(
      'not weighed, because a conclusion in your own words names no fault',
    );
    await press(ENTER);
    expect(last(driver)).toMatchObject({ faults: [], proven: null, evidence: [] });
  });

  it("can be one's own in words, where there is no circuit", async () => {
    const { driver, press, frame } = await walkSession({ advisor: false });
    await press('y', '0.02', ENTER);
    expect(await frame()).toContain('not weighed');
    await press('o', 'mouse in the harness', ENTER, ENTER);
    expect(last(driver)).toMatchObject({
      conclusion: null,
      ownWords: 'mouse in the harness',
      proven: null,
    });
  });

  it('without a circuit offers neither suspects nor tests, and says why', async () => {
    const { press, frame } = await walkSession({ advisor: false });
    await press('y');
    expect(await frame()).not.toContain('[F5]');
    await press(F.suspects);
    expect(await frame()).toContain('no circuit model');
  });
});

describe('a page over the step', () => {
  it.each([
    ['the keys', '?', 'All keys'],
    ['the suspects', '\x10', 'Suspects'],
    ['the best tests', '\x14', 'What would tell you most now'],
    ['the path so far', '\x19', 'The path so far'],
    ['the wiring', '\x0c', 'Wiring'],
    ['the sums', '\x12', 'Sums'],
  ])('%s closes by the key that opened it, a Ctrl key too', async (_, key, title) => {
    const { press, frame } = await walkSession();
    await press('y', key);
    expect(await frame()).toContain(`─ ${title} ─`);
    await press(key);
    expect(await frame()).toContain('Reading in volts');
  });
});

describe('a full disk', () => {
  it('is not answered by what a meter had typed ahead', async () => {
    const { driver, press, frame, left } = await walkSession();
    await press('y');
    driver.fillDisk(1);
    // Two readings in one piece: of the second, 3 would leave and 1 or Enter would try again.
    await press('5\r31\r');
    expect(await frame()).toContain('Not saved');
    expect(left).toEqual([]);
    expect(types(driver)).not.toContain('reading-recorded');
    await press('1');
    expect(last(driver)).toMatchObject({ type: 'reading-recorded', typed: '5' });
  });

  it('says what is safe; trying again saves the same answer', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y');
    driver.fillDisk(2);
    await press('5', ENTER);
    expect(await frame()).toContain('Not saved');
    expect(await frame()).toContain('2 events are safe.');
    await press(ENTER);
    expect(await frame()).toContain('Not saved');
    await press(ENTER);
    expect(last(driver)).toMatchObject({ type: 'reading-recorded', typed: '5' });
    expect(await frame()).toContain('Ground under load');
  });

  it('lets the session go on in another folder, and comes back when that fails too', async () => {
    const { driver, press, frame } = await walkSession();
    await press('y');
    driver.fillDisk(9);
    await press('5', ENTER, '2', '/nowhere', ENTER);
    expect(await frame()).toContain('That folder cannot be written.');
    await press('2', '/stick', ENTER);
    expect(last(driver)).toMatchObject({ type: 'reading-recorded', typed: '5' });
    await press(F.pause);
    expect(await frame()).toContain('/stick/dray-no-start.part2.jsonl');
  });

  it('lets one leave without the answer', async () => {
    const { driver, press, left } = await walkSession();
    await press('y');
    driver.fillDisk(9);
    await press('5', ENTER, '3');
    expect(left).toEqual([0]);
    expect(types(driver)).not.toContain('reading-recorded');
  });
});
