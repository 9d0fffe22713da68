/** Which meter a reading was judged with, when the instruments changed on the way. */
import { expect, it } from 'vitest';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { meterAt } from '../../src/session/meter-at.ts';
import { sessionAfter } from './sample-tree.ts';
import { ACK, DONE, volts } from './shorthand.ts';

const FIRST = STANDARD_SETTINGS.meter;
const OTHER = { ...FIRST, name: 'another' };
const THIRD = { ...FIRST, name: 'a third' };
const change = (meter: typeof FIRST) =>
  ({ type: 'change-instruments', instruments: [], meter }) as const;

it('is the one of the last change before it, and the first one where nothing changed before', () => {
  const session = sessionAfter([
    DONE,
    ACK,
    volts(5),
    change(OTHER),
    change(THIRD),
    { type: 'go-back' },
    volts(5),
    change(OTHER),
  ]);
  const meters = session.events
    .filter((event) => event.type === 'reading-recorded')
    .map((event) => meterAt(session, event).name);
  expect(meters).toEqual([FIRST.name, 'a third']);
});
