/** The frames of a session, whole, as a person sees them on the way through the small procedure. */
import { describe, expect, it } from 'vitest';
import { DOWN, ENTER, F, PAGE_DOWN, TAB } from './keys.ts';
import { walkSession } from './walk.tsx';

describe('a session at 80 x 24', () => {
  it('shows the caution alone and first', async () => {
    const { frame } = await walkSession();
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Before you go on ────────────────────────────────────────────────── step 1 ─┐
      │  ████   ███   █   █  █████  ███   ███   █   █                                │
      │ █      █   █  █   █    █     █   █   █  ██  █                                │
      │ █      █████  █   █    █     █   █   █  █ █ █                                │
      │ █      █   █  █   █    █     █   █   █  █  ██                                │
      │  ████  █   █   ███     █    ███   ███   █   █                                │
      │                                                                              │
      │ The circuit is live. Take off rings and watch, and touch one terminal at a   │
      │ time.                                                                        │
      │                                                                              │
      │ Next: Feed at the sensor. Vehicle: key on, engine off.                       │
      │ The maker's procedure, local rules and qualified practice come first.        │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [y] I have read this and it is so  [F2] back  [F3] can't do this  [?] keys   │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('shows the step with pins, range, sketch and prompt', async () => {
    const { frame, press } = await walkSession();
    await press('y');
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Three-wire sensor, no signal ───────────────────────────── step 1 · key on ─┐
      │ Step 1: Feed at the sensor (about 6 min left)                                │
      │ Vehicle: key on, engine off. CAUTION: The circuit is live.                   │
      │                                                                              │
      │ Back-probe sensor feed, pin 1 (RD/BU) with the red lead, black lead on       │
      │ battery negative.                                                            │
      │ Good is: 4.75 to 5.25 V (computed from the circuit)                          │
      │ Why: No supply, no signal.                                                   │
      │                                                                              │
      │ ┌─ module ───┐                          ┌─ sensor ─┐                         │
      │ │  reference ├───── RD/BU ──────────[R]─┤ 1 feed   │                         │
      │ │     signal ├───── GN ─────────────────┤ 2 signal │                         │
      │ │     ground ├───── BK ─────────────────┤ 3 ground │                         │
      │ └────────────┘                          └──────────┘                         │
      │                                                                              │
      │ ──────────────────────────────────────────────────────────────────────────── │
      │ Reading in volts:                                                            │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] confirm  [F2] back  [F3] can't do this  [F5] suspects                │
      │ [F6] best tests  [?] keys                                                    │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('judges while the number is typed', async () => {
    const { frame, press } = await walkSession({ bench: true });
    await press('y', '4.7');
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Three-wire sensor, no signal ───────────────────────────── step 1 · key on ─┐
      │ Step 1: Feed at the sensor (about 6 min left)                                │
      │ Vehicle: key on, engine off. CAUTION: The circuit is live.                   │
      │                                                                              │
      │ Back-probe sensor feed, pin 1 (RD/BU) with the red lead, black lead on       │
      │ battery negative.                                                            │
      │ Good is: 4.75 to 5.25 V (computed from the circuit)                          │
      │ Why: No supply, no signal.                                                   │
      │                                                                              │
      │ ┌─ module ───┐                          ┌─ sensor ─┐                         │
      │ │  reference ├───── RD/BU ──────────[R]─┤ 1 feed   │                         │
      │ │     signal ├───── GN ─────────────────┤ 2 signal │                         │
      │ │     ground ├───── BK ─────────────────┤ 3 ground │                         │
      │ └────────────┘                          └──────────┘                         │
      │ ──────────────────────────────────────────────────────────────────────────── │
      │ The simulated vehicle: the meter shows 0.02 V                                │
      │ Reading in volts: 4.7                                                        │
      │ ! 4.7 V is LOW: below the expected range                                     │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] confirm  [Tab] take over  [F2] back  [F3] can't do this              │
      │ [F5] suspects  [F6] best tests  [?] keys                                     │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('lists looks with numbers, and says what the last reading changed', async () => {
    const { frame, press } = await walkSession();
    await press('y', '5.01', ENTER, DOWN);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Three-wire sensor, no signal ───────────────────────────── step 2 · key on ─┐
      │ Step 2: Ground under load (<1 min by the clock, about 3 left)                │
      │ Vehicle: key on, engine off. CAUTION: The circuit is live.                   │
      │                                                                              │
      │ LED test light from battery positive to sensor ground, pin 3 (BK).           │
      │ Good is: the light is bright                                                 │
      │ Why: A meter sees full voltage through a joint that carries no current; a    │
      │      light does not.                                                         │
      │                                                                              │
      │ Last reading: "mend the feed wire" rose from 40 to 86 %.                     │
      │                                                                              │
      │ ┌─ module ───┐                          ┌─ sensor ─┐                         │
      │ │  reference ├───── RD/BU ──────────[R]─┤ 1 feed   │                         │
      │ │     signal ├───── GN ─────────────────┤ 2 signal │                         │
      │ │     ground ├───── BK ─────────────────┤ 3 ground │                         │
      │ └────────────┘                          └──────────┘                         │
      │ ──────────────────────────────────────────────────────────────────────────── │
      │   1  the light is bright: the ground carries current                         │
      │ > 2  the light is dim: the ground is poor                                    │
      │   3  the light stays off: the ground is poor                                 │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] choose  [F2] back  [F5] suspects  [F6] best tests  [?] keys          │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('shows the conclusion from top to bottom', async () => {
    const { frame, press } = await walkSession();
    await press('y', '0.02', ENTER);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Conclusion ────────────────────────────────── Three-wire sensor, no signal ─┐
      │ Feed wire open                                                               │
      │ The readings point there.                                                    │
      │                                                                              │
      │ NOT PROVEN YET: 2 independent pieces of evidence missing. Next: Voltage from │
      │   sensor ground, pin 3 (BK) to battery negative (2 min). You can accept it   │
      │   anyway; the record will say so.                                            │
      │                                                                              │
      │ Repair                                                                       │
      │   Put it right: feed wire open.                                              │
      │                                                                              │
      │ Evidence                                                                     │
      │ - Feed at the sensor - feed at the crankshaft position sensor, pin 1 (RD/BU) │
      │   to battery negative - 0.02 V                                               │
      │                                                                              │
      │ Quick tests that would prove it (F6 to do one)                               │
      │ - 2 min: Voltage from sensor ground, pin 3 (BK) to battery negative          │
      │ - <1 min: Test light from sensor feed, pin 1 (RD/BU) to battery negative     │
      │ -- more below: PgDn (17 of 48 lines) --                                      │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] do that test  [a] accept anyway  [o] my own conclusion  [F2] back    │
      │ [F5] suspects  [F6] best tests  [?] keys                                     │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    await press(PAGE_DOWN);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Conclusion ────────────────────────────────── Three-wire sensor, no signal ─┐
      │ - <1 min: Test light from sensor feed, pin 1 (RD/BU) to battery negative     │
      │                                                                              │
      │ What the customer should know                                                │
      │   A wire is to be mended; no part needs replacing.                           │
      │                                                                              │
      │ Must pass after the repair                                                   │
      │ - Feed at the sensor                                                         │
      │ - Ground under load                                                          │
      │                                                                              │
      │ Ruled out                                                                    │
      │ - module reference dead - by: Feed at the sensor: 0.02 V                     │
      │                                                                              │
      │ What was found along the way                                                 │
      │ - Feed at the sensor - 0.02 V: the feed is low                               │
      │                                                                              │
      │ Not tested, or not far enough to rule them out                               │
      │ - Repair or replace the signal wire.                                         │
      │ -- more: PgUp or PgDn (lines 17 to 33 of 48) --                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] do that test  [a] accept anyway  [o] my own conclusion  [F2] back    │
      │ [F5] suspects  [F6] best tests  [?] keys                                     │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    await press(ENTER);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ A test outside the procedure ─────────────────────── then back to the step ─┐
      │ Voltage from sensor ground, pin 3 (BK) to battery negative                   │
      │ Vehicle: key on, engine off.                                                 │
      │ Meter on volts. Red lead: ground at the crankshaft position sensor, pin 3    │
      │ (BK). Black lead: battery negative.                                          │
      │ Why: It parts feed and ground, which stand level now.                        │
      │ Good is: below 0.1 V                                                         │
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
      │ Reading in volts:                                                            │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] confirm  [Esc] not now                                               │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('shows suspects, the best tests, and the path so far', async () => {
    const { frame, press } = await walkSession();
    await press('y', '5.01', ENTER, F.suspects);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Suspects ─────────────────────────────────────── after all readings so far ─┐
      │ Last reading: "mend the feed wire" rose from 40 to 86 %.                     │
      │                                                                              │
      │ >  86 % █████████████████··· mend the feed wire                              │
      │    14 % ██▌················· clean the ground joint                          │
      │    <1 % ▌··················· replace the module                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │ mend the feed wire - because: mend the feed wire: the usual way (86 %).      │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] close  [Up/Down] look closer  [c] conclude with this one             │
      │ [w] in my own words  [v] set a value of this car  [p] locate a short         │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    await press(ENTER, F.nextTests);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ What would tell you most now ───────────────────────────────────────────────┐
      │ > 1  2 min: Voltage from sensor ground, pin 3 (BK) to battery negative       │
      │   2  <1 min: Test light from sensor feed, pin 1 (RD/BU) to battery negative  │
      │   3  4 min: The same voltage with the engine running                         │
      │                                                                              │
      │ Why: It parts feed and ground, which stand level now.                        │
      │ Vehicle: key on, engine off.                                                 │
      │ Needs: meter                                                                 │
      │ Good is: below 0.1 V                                                         │
      │                                                                              │
      │ What it would show, should the repair be                                     │
      │ - mend the feed wire: 12 to 15 mV                                            │
      │ - clean the ground joint: 0.8 to 3 V                                         │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] do this one now  [Up/Down] others  [x] can't do this one             │
      │ [p] nor any like it  [t] any other test  [Esc] close                         │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    await press(ENTER);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ A test outside the procedure ─────────────────────── then back to the step ─┐
      │ Voltage from sensor ground, pin 3 (BK) to battery negative                   │
      │ Vehicle: key on, engine off.                                                 │
      │ Meter on volts. Red lead: ground at the crankshaft position sensor, pin 3    │
      │ (BK). Black lead: battery negative.                                          │
      │ Why: It parts feed and ground, which stand level now.                        │
      │ Good is: below 0.1 V                                                         │
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
      │ Reading in volts:                                                            │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] confirm  [Esc] not now                                               │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    await press('\x1b', F.way);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ What would tell you most now ───────────────────────────────────────────────┐
      │ > 1  2 min: Voltage from sensor ground, pin 3 (BK) to battery negative       │
      │   2  <1 min: Test light from sensor feed, pin 1 (RD/BU) to battery negative  │
      │   3  4 min: The same voltage with the engine running                         │
      │                                                                              │
      │ Why: It parts feed and ground, which stand level now.                        │
      │ Vehicle: key on, engine off.                                                 │
      │ Needs: meter                                                                 │
      │ Good is: below 0.1 V                                                         │
      │                                                                              │
      │ What it would show, should the repair be                                     │
      │ - mend the feed wire: 12 to 15 mV                                            │
      │ - clean the ground joint: 0.8 to 3 V                                         │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] do this one now  [Up/Down] others  [x] can't do this one             │
      │ [p] nor any like it  [t] any other test  [Esc] close                         │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });
});

describe('a session at 60 x 20', () => {
  const small = { columns: 60, rows: 20 };

  it('keeps what to do, the range and the prompt in view; the sketch has a key', async () => {
    const { frame, press } = await walkSession({ ...small, bench: true });
    await press('y', TAB);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Three-wire sensor, no signal ───────── step 1 · key on ─┐
      │ Step 1: Feed at the sensor (about 6 min left)            │
      │ Vehicle: key on, engine off. CAUTION: The circuit is     │
      │ live.                                                    │
      │                                                          │
      │ Back-probe sensor feed, pin 1 (RD/BU) with the red lead, │
      │ black lead on battery negative.                          │
      │ Good is: 4.75 to 5.25 V (computed from the circuit)      │
      │ Why: No supply, no signal.                               │
      │ ──────────────────────────────────────────────────────── │
      │ The simulated vehicle: the meter shows 0.02 V            │
      │ Reading in volts: 0.02 V                                 │
      │ ! 0.02 V is LOW: below the expected range                │
      │                                                          │
      ├──────────────────────────────────────────────────────────┤
      │ [Enter] confirm  [Tab] take over  [F2] back              │
      │ [F3] can't do this  [F5] suspects  [F6] best tests       │
      │ [F8] wiring  [?] keys                                    │
      └──────────────────────────────────────────────────────────┘
      "
    `);
    await press(F.sketch);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Wiring ─────────────────────────────────────────────────┐
      │ ┌─ module ───┐                          ┌─ sensor ─┐     │
      │ │  reference ├───── RD/BU ──────────[R]─┤ 1 feed   │     │
      │ │     signal ├───── GN ─────────────────┤ 2 signal │     │
      │ │     ground ├───── BK ─────────────────┤ 3 ground │     │
      │ └────────────┘                          └──────────┘     │
      │                                                          │
      │                                                          │
      │                                                          │
      │                                                          │
      │                                                          │
      │                                                          │
      │                                                          │
      │                                                          │
      │                                                          │
      │                                                          │
      ├──────────────────────────────────────────────────────────┤
      │ [Enter] close                                            │
      └──────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('says the minutes in the frame where they do not stand on one line with the title', async () => {
    const { frame, press } = await walkSession(small);
    await press('y', '5', ENTER);
    const lines = (await frame()).split('\n');
    expect(lines[0]).toMatch(/^┌─ (?:<?\d+) min by the clock, about \d+ left ─+ step 2 · /);
    expect(lines[1]).toMatch(/^│ Step 2: [^()]+ +│$/);
    expect(lines[2]).toMatch(/^│ Vehicle: /);
  });

  it('shows two cautions with the signal word in one line, so that all of the text is seen', async () => {
    const { frame, press } = await walkSession(small);
    await press('y', '5', ENTER, '1');
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Before you go on ────────────────────────────── step 3 ─┐
      │ !!!   W A R N I N G   !!!                                │
      │                                                          │
      │ WARNING: The engine turns. Keep hands, hair and leads    │
      │   away from belts and fans. Parking brake on, wheels     │
      │   chocked.                                               │
      │ WARNING: Exhaust gas kills in a closed room. Connect the │
      │   extraction or open the doors first.                    │
      │                                                          │
      │ Next: Engine speed in the live data. Vehicle: ENGINE     │
      │ RUNNING.                                                 │
      │ The maker's procedure, local rules and qualified         │
      │ practice come first.                                     │
      │                                                          │
      │                                                          │
      ├──────────────────────────────────────────────────────────┤
      │ [y] I have read this and it is so  [F2] back             │
      │ [F10] pause  [?] keys                                    │
      └──────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('asks which was meant where m and M differ', async () => {
    const { frame, press } = await walkSession(small);
    await press('y', '5 M', ENTER);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Three-wire sensor, no signal ───────── step 1 · key on ─┐
      │ Step 1: Feed at the sensor (about 6 min left)            │
      │ Vehicle: key on, engine off. CAUTION: The circuit is     │
      │ live.                                                    │
      │                                                          │
      │ Back-probe sensor feed, pin 1 (RD/BU) with the red lead, │
      │ black lead on battery negative.                          │
      │ Good is: 4.75 to 5.25 V (computed from the circuit)      │
      │ Why: No supply, no signal.                               │
      │                                                          │
      │ ──────────────────────────────────────────────────────── │
      │ Reading in volts: 5 M                                    │
      │ What does the meter show?                                │
      │ > 1  5 mV                                                │
      │   2  5 V                                                 │
      ├──────────────────────────────────────────────────────────┤
      │ [Enter] confirm  [F2] back  [F3] can't do this           │
      │ [F5] suspects  [F6] best tests  [F8] wiring  [?] keys    │
      └──────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('explains its keys', async () => {
    const { frame, press } = await walkSession(small);
    await press('y', '?');
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ All keys ───────────────────────────────────────────────┐
      │ F2, Ctrl+B    Back. Take back the last answer. The file  │
      │               keeps it as taken back, and you can change │
      │               it.                                        │
      │ F3, Ctrl+X    Can't do this. This step can't be done     │
      │               here. Asks why and skips it, if the        │
      │               procedure has an alternative.              │
      │ F4, Ctrl+N    Note. Write down something you noticed. It │
      │               goes into the record with the time.        │
      │ F5, Ctrl+P    Suspects. What could be wrong, and how     │
      │               likely, after all readings so far.         │
      │ F6, Ctrl+T    Best tests. The tests that would tell you  │
      │               most now. Do one of them and come back;    │
      │               mark one you can't do here and it is not   │
      │               suggested again.                           │
      │ -- more below: PgDn (14 of 52 lines) --                  │
      ├──────────────────────────────────────────────────────────┤
      │ [Enter] close                                            │
      └──────────────────────────────────────────────────────────┘
      "
    `);
  });
});
