/** Any test and free order on the screen: whole frames, and what keys do there. */
import { describe, expect, it } from 'vitest';
import { expectWhole } from '../in-process.ts';
import { DOWN, ENTER, ESC, F, TAB, UP } from './keys.ts';
import { SMALL_JOB } from './small-procedure.ts';
import { walkSession } from './walk.tsx';

const RIGHT = '\x1b[C';
const SIZES = [
  [80, 24],
  [60, 20],
  [60, 16],
] as const;

describe('any test at 80 x 24', () => {
  it('is a form that begins as the step has it', async () => {
    const { frame, press } = await walkSession();
    await press('y', F.anyTest, F.anyTest);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Any test ───────────────────────────────────────────────────────────────────┐
      │ > Vehicle     key on                                                         │
      │   Instrument  voltmeter                                                      │
      │   Red lead    sensor feed, pin 1 (RD/BU)                                     │
      │   Black lead  battery negative                                               │
      │   Unplugged   nothing                                                        │
      │   Clipped in  nothing                                                        │
      │   Sensor      the vehicle's own                                              │
      │   Target      stands still                                                   │
      │   Harness     left alone                                                     │
      │                                                                              │
      │ ┌─ module ───┐                          ┌─ sensor ─┐                         │
      │ │  reference ├───── RD/BU ──────────[R]─┤ 1 feed   │                         │
      │ │     signal ├───── GN ─────────────────┤ 2 signal │                         │
      │ │     ground ├───── BK ─────────────────┤ 3 ground │                         │
      │ └────────────┘                          └──────────┘                         │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [m] do this test  [t] the standard tests  [arrows] arrange  [Esc] close      │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('is found by the instrument, the place and the state of the vehicle as well as by its words', async () => {
    const { frame, press } = await walkSession();
    await press('y', F.anyTest, 'volts sensor.feed key-on');
    const found = await frame();
    // the title of the step says neither volts nor key-on
    expect(found).toContain('> Feed at the sensor');
    expect(found).not.toContain('Nothing matches');
  });

  it('is chosen from the tests of procedure and circuit by typing', async () => {
    const { frame, press } = await walkSession();
    await press('y', F.anyTest, 'live data');
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Which test? ────────────────────────────────────────────────────── 5 of 45 ─┐
      │ Search: live data                                                            │
      │                                                                              │
      │ > Live data: does the module follow signal                                   │
      │   A temporary wire from signal at the sensor to signal at the module: does … │
      │   A temporary wire from feed at the sensor to reference at the module: does… │
      │   A temporary wire from ground at the sensor to ground at the module: does … │
      │   A good spare sensor plugged in and moved: does the module follow signal    │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │ Live data: does the module follow signal. Live data: live data of signal at  │
      │ the engine control module. Vehicle: engine cranking. 1 min.                  │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] select  [Tab] made already  [Ins] arrange one  [Up/Down] choose      │
      │ [letters] search  [Esc] back                                                 │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('then says where the leads go and asks what they show', async () => {
    const { frame, press, driver } = await walkSession({ bench: true });
    await press('y', F.anyTest, 'feed to ground at the sensor', ENTER);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ A test outside the procedure ─────────────────────── then back to the step ─┐
      │ Volts from feed to ground at the sensor                                      │
      │ Vehicle: key on, engine off.                                                 │
      │ Meter on volts. Red lead: feed at the crankshaft position sensor, pin 1      │
      │ (RD/BU). Black lead: ground at the crankshaft position sensor, pin 3 (BK).   │
      │ Good is: 4.7 to 5.07 V                                                       │
      │                                                                              │
      │ ┌─ module ───┐                          ┌─ sensor ─┐                         │
      │ │  reference ├───── RD/BU ──────────[R]─┤ 1 feed   │                         │
      │ │     signal ├───── GN ─────────────────┤ 2 signal │                         │
      │ │     ground ├───── BK ─────────────────┤ 3 ground │                         │
      │ └────────────┘                          └──────────┘                         │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │ ──────────────────────────────────────────────────────────────────────────── │
      │ The simulated vehicle: the meter shows 13.1 mV                               │
      │ Reading in volts:                                                            │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] confirm  [Tab] take over  [Esc] not now                              │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    await press(TAB, ENTER);
    expect(driver.events().at(-1)).toMatchObject({ type: 'test-recorded', typed: '13.1 mV' });
    expect(await frame()).toContain('In the record: Volts from feed to ground at the sensor');
    expect(await frame()).toContain('Step 1: Feed at the sensor');
  });
});

describe('a test that was made already', () => {
  it('is found by what a drill takes, written down with when and a note, and passes its step over', async () => {
    const { frame, press, driver } = await walkSession({ free: true });
    await press('t', 'state key-on; volts sensor.feed battery.negative', TAB);
    expect(await frame()).toMatch(/Made +before the job/);
    await press('4,98', ENTER, 'cold engine');
    expect(await frame()).toMatch(/It showed +4,98/);
    await press(ENTER);
    expect(driver.events().at(-1)).toMatchObject({
      ...{ type: 'test-recorded', typed: '4,98', made: 'before the job', note: 'cold engine' },
      test: { setup: { state: 'key-on' }, probe: { plus: 'sensor.feed' } },
      shown: { kind: 'number', value: 4.98, unit: 'V' },
    });
  });

  it('typed without the state of the key is read with the key on, as it is on a live circuit', async () => {
    const { frame, press, driver } = await walkSession({ free: true });
    await press('t', 'volts sensor.feed battery.negative');
    const listed = await frame();
    expect(listed).toMatch(/Vehicle: key[ │\n]+on, engine off\./);
    expect(listed.match(/[ >] Volts from feed at the sensor to battery negative +│/g)).toHaveLength(
      1,
    );
    await press(TAB, '4,98', '\x13');
    expect(driver.events().at(-1)).toMatchObject({ test: { setup: { state: 'key-on' } } });
  });

  it('wants a time that there is, and what it showed', async () => {
    const { frame, press, driver } = await walkSession({ free: true });
    await press('t', 'volts sensor.feed key-on', TAB, DOWN, '\x13');
    expect(await frame()).toContain('What did it show?');
    await press('5', UP, '\x15', '25:10', '\x13');
    expect(await frame()).toContain('or a time of the clock such as 14:05');
    await press('\x15', '9:10', '\x13');
    expect(driver.events().at(-1)).toMatchObject({ made: '09:10', typed: '5' });
  });
});

describe('any test', () => {
  it.each(SIZES)('is whole at %i x %i, its lists and its question too', async (columns, rows) => {
    const { screen, press } = await walkSession({ columns, rows, free: true });
    const lists = [
      [ESC, DOWN, DOWN, ENTER],
      [ESC, DOWN, DOWN, DOWN, ENTER],
    ];
    for (const keys of [['t'], [F.anyTest], ['t'], ...lists]) {
      await press(...keys);
      expectWhole(await screen.lines(), columns, rows);
    }
    expect(await screen.text()).toContain('Clip something in');
  });

  it('opens by its second key, from the best tests, and closes by the key that opened it', async () => {
    const { frame, press } = await walkSession();
    await press('y', '\x16');
    expect(await frame()).toContain('─ Which test? ─');
    await press('\x16');
    expect(await frame()).toContain('─ Any test ─');
    await press('\x16');
    expect(await frame()).toContain('Reading in volts');
    await press(F.nextTests, 't');
    expect(await frame()).toContain('─ Which test? ─');
    await press(ESC);
    expect(await frame()).toContain('What would tell you most now');
  });

  it('turns with Left and Right, and asks for its cautions before it is made', async () => {
    const { frame, press, driver } = await walkSession({ free: true });
    await press('t', F.anyTest, RIGHT, RIGHT, RIGHT);
    expect(await frame()).toContain('> Vehicle     running');
    expect(await frame()).toContain('passes the sensor');
    await press('m');
    expect(await frame()).toContain('Before you go on');
    expect(await frame()).toContain('a test of your own');
    await press(ESC);
    expect(await frame()).toContain('─ Any test ─');
    await press('m', 'y', '0.2', ENTER);
    expect(driver.events().at(-1)).toMatchObject({
      type: 'test-recorded',
      test: { setup: { state: 'running', target: 'moving' } },
    });
  });

  it('is made after the conclusion, from the session at rest', async () => {
    const { frame, press, driver } = await walkSession();
    await press('y', '0.02', ENTER, 'a', 't', F.anyTest, 'm', '12', ENTER);
    expect(driver.events().at(-1)).toMatchObject({ type: 'test-recorded', typed: '12' });
    expect(await frame()).toContain('In the record:');
    expect(await frame()).toContain('[r] test after the repair');
  });

  it('that cannot be in this vehicle is asked about as a step is', async () => {
    const { frame, press, driver } = await walkSession({ free: true });
    await press('t', F.anyTest, 'm', '500', ENTER);
    expect(await frame()).toContain('Press Enter again if that is what the meter shows');
    expect(driver.events()).toHaveLength(1);
  });
});

describe('free order at 80 x 24', () => {
  it('shows the complaint, what was read, and what would tell most', async () => {
    const { frame, press } = await walkSession({ free: true });
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Free order ─────────────────────────────────────────────────────── 0 tests ─┐
      │ Complaint: Cranks but does not start                                         │
      │                                                                              │
      │ Nothing has been read yet.                                                   │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │ What would tell you most now                                                 │
      │ > 1  2 min: Voltage from sensor ground, pin 3 (BK) to battery negative       │
      │   2  <1 min: Test light from sensor feed, pin 1 (RD/BU) to battery negative  │
      │   3  4 min: The same voltage with the engine running                         │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] do the marked test  [t] any test  [c] conclude  [F5] suspects        │
      │ [F10] pause  [?] keys                                                        │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    await press(ENTER, '0.05', ENTER, DOWN, ENTER, '2');
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Free order ─────────────────────────────────────────────────────── 2 tests ─┐
      │ Complaint: Cranks but does not start                                         │
      │                                                                              │
      │ What was read                                                                │
      │ 1  Voltage drop from ground at the sensor to battery negative - 0.05 V: good │
      │ 2 LED light, red at sensor.feed, black at battery.negative - the light is    │
      │    dim                                                                       │
      │                                                                              │
      │ Last reading: "mend the feed wire" rose from 40 to 86 %.                     │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │ What would tell you most now                                                 │
      │ > 1  2 min: Voltage from sensor ground, pin 3 (BK) to battery negative       │
      │   2  <1 min: Test light from sensor feed, pin 1 (RD/BU) to battery negative  │
      │   3  4 min: The same voltage with the engine running                         │
      │ In the record: Test light from sensor feed, pin 1 (RD/BU) to battery         │
      │ negative, the light is dim.                                                  │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] do the marked test  [t] any test  [c] conclude  [F5] suspects        │
      │ [F10] pause  [?] keys                                                        │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('keeps the last readings in view, and all of them behind a key', async () => {
    const { frame, press } = await walkSession({ free: true });
    for (let reading = 1; reading <= 8; reading += 1) await press(ENTER, `0.0${reading}`, ENTER);
    expect(await frame()).toContain('What was read, the last 6 of 8');
    expect(await frame()).not.toContain('10 mV');
    await press(F.way);
    expect(await frame()).toContain('─ What was read ─');
    expect(await frame()).toContain('0.01 V');
  });

  it('ends in a conclusion of one’s own, which is weighed', async () => {
    const { frame, press, driver } = await walkSession({ free: true });
    await press(ENTER, '0.05', ENTER, 'c', 'c');
    expect(await frame()).toContain('NOT PROVEN YET');
    await press('a');
    expect(driver.events().at(-1)).toMatchObject({
      type: 'concluded',
      conclusion: null,
      faults: ['wire.feed.open'],
      evidence: [{ reading: 2, counted: true }],
    });
    expect(await frame()).toContain('The feed wire is broken');
  });

  it('without a circuit takes notes and a conclusion in words', async () => {
    const { frame, press, driver } = await walkSession({ free: true, advisor: false });
    expect(await frame()).toContain('This session has no circuit model.');
    await press('c', 'mouse in the harness', ENTER);
    expect(await frame()).toContain(
      'not weighed, because a conclusion in your own words names no fault',
    );
    await press(ENTER);
    expect(driver.events().at(-1)).toMatchObject({ ownWords: 'mouse in the harness' });
  });

  it('pauses after so many tests', async () => {
    const { frame, press } = await walkSession({ free: true });
    await press(ENTER, '0.05', ENTER, F.pause);
    expect(await frame()).toContain('Paused after 1 test.');
  });

  it('paused, it calls saved only what is in its file', async () => {
    const { frame, press, driver } = await walkSession({ free: true });
    Object.assign(driver, { unsaved: () => ({ words: 'The file is gone.', fix: '' }) });
    await press(ENTER, '0.05', ENTER, F.pause);
    const paused = await frame();
    expect(paused).toContain('Paused after 1 test, and not saved where it was.');
    expect(paused).toContain('The file is gone.');
    expect(paused).not.toContain('is saved.');
    expect(paused).not.toContain('Continue later');
  });

  it.each(SIZES)('is whole at %i x %i with a long complaint', async (columns, rows) => {
    const complaint = 'It stalls when it is hot and starts again after half an hour. '.repeat(4);
    const { screen, press } = await walkSession({
      columns,
      rows,
      free: true,
      job: { ...SMALL_JOB, complaint },
    });
    await press(ENTER, '0.05', ENTER);
    expectWhole(await screen.lines(), columns, rows);
    expect(await screen.text()).toContain('> 1  2 min');
  });
});
