/** What the readings have shown of the car in front is told beside the suspects, and beside what is good. */
import { describe, expect, it } from 'vitest';
import type { Advisor } from '../../src/session/advisor.ts';
import type { CarView } from '../../src/session/car-view.ts';
import type { GoodHere } from '../../src/session/good-here.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { FAKE_ADVISOR, fakeSession } from './screens/fake-services.ts';
import { ENTER, F } from './screens/keys.ts';
import { walkSession } from './screens/walk.tsx';

const BATTERY: CarView['values'][number] = {
  ...{ quantity: 'battery.rest', words: 'battery at rest', shown: '11.9 V', unit: 'V' },
  ...{ low: 11.85, high: 11.95, by: 3 },
};
const NONE = { chance: 0.03, value: null };
const EIGHT_VOLTS = {
  ...{ quantity: 'module.reference.volts', words: "voltage of the module's reference" },
  ...{ described: '4.75 to 5.25 V', shown: 'about 8 V', by: 3 },
};

/** The usual advisor with a car, once something was read. */
function adviceOn(misfit: CarView['misfit'], here: GoodHere | null = null): Advisor {
  return {
    ...FAKE_ADVISOR,
    diagnosis: (session) => ({
      ...FAKE_ADVISOR.diagnosis(session),
      car: { values: session.answers.length > 0 ? [BATTERY] : [], misfit },
      goodHere: () => (session.events.length >= (here?.from ?? 0) ? here : null),
    }),
  };
}

const flat = (frame: string) => frame.replace(/[│\s]+/g, ' ');

describe('this car', () => {
  it.each([
    [80, 24, ' (from Feed at the sensor, 5 V)'],
    [60, 20, ''],
  ])('stands on the page of suspects at %d x %d', async (columns, rows, source) => {
    const advice = adviceOn(NONE);
    const { press, frame } = await walkSession({ advice, columns, rows });
    await press('y', '5', ENTER, F.suspects);
    expect(flat(await frame())).toContain(`This car: battery at rest 11.9 V${source}.`);
  });

  it('stands beside what the last reading changed, where there is room', async () => {
    const { press, frame } = await walkSession({ advice: adviceOn(NONE), rows: 30 });
    await press('y');
    expect(await frame()).not.toContain('This car');
    await press('5', ENTER);
    expect(await frame()).toContain('Last reading:');
    expect(await frame()).toContain('This car: battery at rest 11.9 V.');
    const small = await walkSession({ advice: adviceOn(NONE), columns: 60, rows: 16 });
    await small.press('y', '5', ENTER);
    expect(await small.frame()).not.toContain('This car');
  });
});

describe('a car that is not as described', () => {
  it('is no suspect below ten per cent, and one of them from there on', async () => {
    const few = await walkSession({ advice: adviceOn({ chance: 0.09, value: null }) });
    await few.press('y', '5', ENTER, F.suspects);
    expect(await few.frame()).not.toContain('not as described');
    const some = await walkSession({ advice: adviceOn({ chance: 0.12, value: null }) });
    await some.press('y', '5', ENTER, F.suspects);
    const rows = (await some.frame()).split('\n').filter((line) => / %/.test(line));
    // Between 13.5 and 0.5 per cent.
    expect(rows.findIndex((row) => row.includes('12 %'))).toBeGreaterThan(
      rows.findIndex((row) => row.includes('14 %')),
    );
    await some.press('\x1b[B', '\x1b[B');
    expect(flat(await some.frame())).toContain('none stands out yet');
    // It is nothing to conclude with.
    await some.press('c');
    expect(await some.frame()).toContain('Suspects');
  });

  it('says which value disagrees with which reading, and how it is set right', async () => {
    const advice = adviceOn({ chance: 0.34, value: EIGHT_VOLTS });
    const { press, frame } = await walkSession({ advice });
    await press('y', '5', ENTER, F.suspects);
    expect(flat(await frame())).toContain(
      "! This car does not match its circuit file (34 %): voltage of the module's reference described 4.75 to 5.25 V; the readings say about 8 V. The reading most at odds with it: Feed at the sensor, 5 V. If so, set it on the page of suspects.",
    );
  });
});

describe('what is good', () => {
  const expected = { kind: 'number', low: 4.9, high: 5 } as const;

  it('is told for this car, with the reading that tells it, where that is narrower', async () => {
    const here = { expected: { ...expected, low: 0, high: 0.02 }, from: 2, isWide: false };
    const { press, frame } = await walkSession({ advice: adviceOn(NONE, here), free: true });
    await press(ENTER, '0.02', ENTER, ENTER);
    expect(flat(await frame())).toMatch(
      /Good is: below 0\.1 V; for this car 0 to 20 mV, from [^.]+, 0\.02 V/,
    );
  });

  it('says that a wide one alone tells you little', async () => {
    const here = { expected: { ...expected, low: 1, high: 14 }, from: null, isWide: true };
    const { press, frame } = await walkSession({ advice: adviceOn(NONE, here) });
    await press('y');
    expect(flat(await frame())).toContain('so wide that the value alone tells you little');
  });
});

it('all of it is said in the dialogue of lines', async () => {
  const here = { expected: { kind: 'number', low: 0, high: 9 }, from: null, isWide: true } as const;
  const advice = adviceOn({ chance: 0.34, value: EIGHT_VOLTS }, here);
  const { opened } = fakeSession({ advice });
  const said: string[] = [];
  const lines = ['yes', '5', 'yes', 'suspects'];
  await plainSession(opened, {
    say: (line) => said.push(line),
    ask: async () => lines.shift() ?? null,
  });
  const text = said.join('\n');
  expect(text).toContain('alone tells you little');
  expect(text).toContain('This car: battery at rest 11.9 V.');
  expect(text).toContain('This car: battery at rest 11.9 V (from Feed at the sensor, 5 V).');
  expect(text).toContain('      34 %  This car does not match its circuit file');
  expect(text).toContain('If so, set it with: known');
});
