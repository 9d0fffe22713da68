/** A value that nothing in the circuit shows is asked about before it counts, on the screen and in the dialogue of lines. */
import { expect, it } from 'vitest';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import type { Advisor } from '../../src/session/advisor.ts';
import type { PossibleValues } from '../../src/session/possible-values.ts';
import { plainSession } from '../../src/ui/plain/plain-session.ts';
import { FAKE_ADVISOR, fakeSession } from './screens/fake-services.ts';
import { ENTER } from './screens/keys.ts';
import { walkSession } from './screens/walk.tsx';

const POSSIBLE: PossibleValues = {
  spans: [
    { low: 0, high: 0 },
    { low: 4.6, high: 5.3 },
  ],
  ...{ overLimit: false, unit: 'V', meter: STANDARD_SETTINGS.meter },
  beside: () => [],
};
let asked = 0;
const advice: Advisor = {
  ...FAKE_ADVISOR,
  diagnosis: (session) => ({
    ...FAKE_ADVISOR.diagnosis(session),
    possible: () => {
      asked += 1;
      return POSSIBLE;
    },
  }),
};
const WORDS = 'nothing in this circuit shows 2.5 V here: it shows 0 V or 4.6 to 5.3 V';

it('is told while it is typed, and taken by a second Enter', async () => {
  const { driver, press, frame } = await walkSession({ advice });
  await press('y');
  expect(asked).toBeGreaterThan(0); // before anything was typed
  await press('2.5');
  const typed = (await frame()).replace(/[│\s]+/g, ' ');
  expect(typed).toContain(WORDS);
  await press(ENTER);
  expect(driver.events().at(-1)?.type).toBe('caution-acknowledged');
  expect((await frame()).replace(/[│\s]+/g, ' ')).toContain('Press Enter again');
  await press(ENTER);
  expect(driver.events().at(-1)).toMatchObject({ type: 'reading-recorded', value: 2.5 });
});

it('in milli where whole volts would be good is asked about as the unit', async () => {
  const { driver, press, frame } = await walkSession({ advice });
  await press('y', '4.98 mV', ENTER);
  const flat = (await frame()).replace(/[│\s]+/g, ' ');
  expect(flat).toContain('4.98 mV: 4.98 V would be good here: check the unit');
  expect(driver.events().at(-1)?.type).toBe('caution-acknowledged');
});

it('is asked about in lines', async () => {
  const { opened, driver } = fakeSession({ advice });
  const said: string[] = [];
  const lines = ['yes', '2.5', '4.98', 'pause'];
  await plainSession(opened, {
    say: (line) => said.push(line),
    ask: async () => lines.shift() ?? null,
  });
  expect(said.join('\n')).toContain(WORDS);
  const read = driver.events().flatMap((one) => (one.type === 'reading-recorded' ? [one] : []));
  expect(read.map(({ typed }) => typed)).toEqual(['4.98']);
});
