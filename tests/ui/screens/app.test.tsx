/** From the start screen into a session and back. */
import { describe, expect, it } from 'vitest';
import { CTRL_C, CTRL_S, DOWN, ENTER, ESC, F, UP } from './keys.ts';
import { SMALL_JOB } from './small-procedure.ts';
import { walkApp } from './walk.tsx';

describe('start', () => {
  it('offers what can be done, the open session among it', async () => {
    const { frame } = await walkApp();
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Ohmward ───────────────────────────── guided diagnosis of position sensors ─┐
      │ What would you like to do?                                                   │
      │                                                                              │
      │ > 1  New session                                                             │
      │   2  Try it on a simulated vehicle                                           │
      │   3  Go on: 01-01 16:20 Marrow Dray, no start                                │
      │   4  All sessions (2)                                                        │
      │   5  Settings                                                                │
      │   6  Quit                                                                    │
      │                                                                              │
      │ Choose a procedure, write the job sheet, and begin at the vehicle.           │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      │                                                                              │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] select  [Up/Down] choose  [q] quit                                   │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it.each([
    ['q', ['q'], 0],
    ['the last line', ['6'], 0],
    ['Ctrl+C', [CTRL_C], 130],
  ])('is left by %s', async (_, keys, code) => {
    const { press, left } = await walkApp();
    await press(...keys);
    expect(left).toEqual([code]);
  });

  it('goes on with an open session', async () => {
    const { press, services, frame } = await walkApp();
    await press('3');
    expect(services.resumed).toEqual(['sessions/b.jsonl']);
    expect(await frame()).toContain('Before you go on');
  });

  it('finds any session by typing', async () => {
    const { press, services } = await walkApp();
    await press('4', 'tern', ENTER);
    expect(services.resumed).toEqual(['sessions/a.jsonl']);
  });

  it('shows why a session cannot be opened, and returns', async () => {
    const problem = { problem: 'The file is damaged at line 7.', fix: 'Keep it as it is.' };
    const { press, frame } = await walkApp({ problem });
    await press('3');
    expect(await frame()).toContain('The file is damaged at line 7.');
    await press(ENTER);
    expect(await frame()).toContain('What would you like to do?');
  });
});

describe('a new session', () => {
  it('finds a procedure by a code within a span', async () => {
    const { press, frame } = await walkApp();
    await press('1', 'P2123');
    expect(await frame()).toContain('Pedal sensor, limp home  (P2122-P2124 P2127)');
    expect(await frame()).toContain('1 of ');
    await press(ENTER);
    expect(await frame()).toMatch(/Trouble codes +P2123/);
  });

  it('leads from the procedure over the job sheet to the first caution', async () => {
    const { press, services, frame } = await walkApp();
    await press('1', 'sensor no', ENTER);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Job sheet ─────────────────────────────────── Three-wire sensor, no signal ─┐
      │ > Complaint                                                                  │
      │   Trouble codes    -                                                         │
      │   Earlier repairs  -                                                         │
      │   Part replaced    (not stated)  sensor                                      │
      │   What was fitted  (not stated)  new   used part   aftermarket               │
      │   It changed       (not stated)  nothing   for a while   fixed it then       │
      │   When it happens  -                                                         │
      │   What else fails  -                                                         │
      │   Recent work      -                                                         │
      │   Visible damage   -                                                         │
      │   Freeze frame     -                                                         │
      │   Vehicle          -                                                         │
      │   VIN              -                                                         │
      │   Number plate     -                                                         │
      │   Odometer         -                                                         │
      │ field 1 of 21                                                                │
      │                                                                              │
      │                                                                              │
      │ What the customer says, in their own words. The only required field.         │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] next field  [Ctrl+S] begin  [Up/Down] move  [Esc] back               │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
    // Past the nine fields of what was told.
    const past = Array.from({ length: 9 }, () => ENTER);
    await press('Cranks, no start', ENTER, 'p0335', ENTER, ...past, 'Marrow Dray', CTRL_S);
    expect(services.opens).toMatchObject([
      {
        procedureFile: 'procedures/small.yaml',
        vehicle: { kind: 'real' },
        job: { complaint: 'Cranks, no start', codes: ['P0335'], vehicle: { words: 'Marrow Dray' } },
      },
    ]);
    expect(await frame()).toContain('Before you go on');
  });

  it('says that it takes a moment before the circuit is computed', async () => {
    const { press, screen } = await walkApp();
    await press('3');
    const drawn = screen.raw();
    expect(drawn).toContain('computing the circuit');
    expect(drawn.indexOf('Before you go on')).toBeGreaterThan(
      drawn.indexOf('computing the circuit'),
    );
  });

  it('can be begun with Enter alone once there is a complaint', async () => {
    const { press, services } = await walkApp();
    await press('1', ENTER, 'No start', ...Array.from({ length: 21 }, () => ENTER));
    expect(services.opens).toHaveLength(1);
  });

  it('shows what is doubtful on the sheet before it begins', async () => {
    const { press, later, services, frame } = await walkApp();
    await press('1', ENTER, 'No start', ENTER, 'P03401', CTRL_S);
    expect(await frame()).toContain('Before the session begins: is this right?');
    expect(await frame()).toContain('Trouble codes: P03401:');
    await later(10, ENTER); // typed ahead
    expect(services.opens).toEqual([]);
    await press(ESC);
    expect(await frame()).toContain('> Trouble codes    P03401');
    await press(CTRL_S, ENTER);
    expect(services.opens).toMatchObject([{ job: { codes: ['P03401'] } }]);
  });

  it('begins with the sheet of a procedure that was named', async () => {
    const { press, services, frame, left } = await walkApp({
      begin: { screen: 'job', procedureFile: 'procedures/small.yaml', title: 'Three-wire sensor' },
    });
    expect(await frame()).toContain('Job sheet');
    await press(ESC);
    expect(left).toEqual([0]);
    await press('No start', CTRL_S);
    expect(services.opens).toMatchObject([{ vehicle: { kind: 'real' } }]);
  });

  it('does not begin without a complaint', async () => {
    const { press, services, frame } = await walkApp();
    await press('1', ENTER, DOWN, 'P0335', CTRL_S);
    expect(services.opens).toEqual([]);
    expect(await frame()).toContain('Enter the complaint first');
    expect(await frame()).toContain('P0335');
  });

  it('narrows the procedures by title, code and text', async () => {
    const { press, frame } = await walkApp();
    await press('1', 'p2127');
    expect(await frame()).toContain('1 of 2');
    expect(await frame()).not.toContain('Three-wire');
    await press(ESC, 'brakes');
    expect(await frame()).toContain('Nothing matches');
    await press(ENTER, ESC, ESC);
    expect(await frame()).toContain('What would you like to do?');
  });
});

describe('a simulated vehicle', () => {
  it('leads over job and fault into a session and back to the start', async () => {
    const { press, services, frame } = await walkApp();
    await press('2', ENTER, 'open', ENTER);
    expect(services.opens).toEqual([
      {
        procedureFile: 'procedures/small.yaml',
        job: SMALL_JOB,
        vehicle: { kind: 'bench', fault: 'wire.feed.open', intermittent: false },
      },
    ]);
    await press('y', F.pause, ENTER);
    expect(services.sessions[0]?.closed()).toBe(true);
    expect(await frame()).toContain('What would you like to do?');
  });
});

describe('settings', () => {
  it('are saved as each field is left', async () => {
    const { press, services, frame } = await walkApp();
    await press('5', 'Ida Kern', ENTER);
    expect(services.settings.values().person).toBe('Ida Kern');
    await press(DOWN, DOWN, DOWN, ' ');
    expect(services.settings.values().instruments).toEqual([
      'meter',
      'test-light',
      'lamp',
      'live-data',
      'lead',
    ]);
    expect(await frame()).toMatchInlineSnapshot(`
      "┌─ Settings ─────────────────────────────────── ~/.config/ohmward/config.json ─┐
      │   Your name                   Ida Kern                                       │
      │   Workshop                    -                                              │
      │   Multimeter                  [x]                                            │
      │   LED test light              [x]                                            │
      │ > Filament test lamp          [x]                                            │
      │   Oscilloscope                [ ]                                            │
      │   Live data                   [x]                                            │
      │   Spare sensor                [ ]                                            │
      │   Resistors                   [ ]                                            │
      │   Jumper leads                [x]                                            │
      │   Milliammeter                [ ]                                            │
      │   A helper                    [ ]                                            │
      │   Meter                       6000-count meter                               │
      │   Volts DC: +/- % of reading  0.5                                            │
      │   Volts DC: + digits          3                                              │
      │ field 5 of 27                                                                │
      │                                                                              │
      │                                                                              │
      │ Draws a quarter of an ampere: never on a module.                             │
      ├──────────────────────────────────────────────────────────────────────────────┤
      │ [Enter] save, next  [Space] tick  [Up/Down] move  [Esc] save, close          │
      └──────────────────────────────────────────────────────────────────────────────┘
      "
    `);
  });

  it('refuse a value that cannot be, and keep the old one', async () => {
    const { press, services, frame } = await walkApp();
    await press('5', ...Array.from({ length: 13 }, () => DOWN));
    expect(await frame()).toContain('> Volts DC: +/- % of reading');
    await press('\x15', '99', ENTER);
    expect(await frame()).toContain('Enter a number from 0 to 20');
    expect(services.settings.values().meter.volts.ofReading).toBe(0.005);
    await press('\x15', '0,8', ENTER);
    expect(services.settings.values().meter.volts.ofReading).toBe(0.008);
  });

  it('say why a folder was not taken', async () => {
    const { press, services, frame } = await walkApp();
    await press('5', ...Array.from({ length: 24 }, () => DOWN), '/nowhere', ENTER);
    expect(await frame()).toContain('that folder is not there');
    await press(ESC, ESC);
    expect(await frame()).toContain('What would you like to do?');
    expect(services.settings.values().sessions).toBe('');
  });

  it('open with the first field again after going up', async () => {
    const { press, frame } = await walkApp();
    await press('5', DOWN, UP);
    expect(await frame()).toContain('> Your name');
  });
});
