/** The time of events, whatever the clock of the computer says and wherever it stands. */
import { afterEach, expect, it, vi } from 'vitest';
import { startClock } from '../../src/files/clock.ts';
import { sessionFileName, sessionPart } from '../../src/files/safe-name.ts';

const zone = process.env['TZ'];
afterEach(() => {
  vi.useRealTimers();
  if (zone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = zone;
});

/** A flat backup battery, the ends of 32 bits, of four-digit years and of what a Date can hold. */
const CLOCKS = [
  ...[0, -86_400_000, 2 ** 31 * 1000, 2 ** 32 * 1000, 1_930_000_000_000],
  ...[253_402_300_799_000, 253_402_300_800_000, 8.64e15, -8.64e15, -62_135_596_800_000],
];
// Offsets from -11:00 to +14:00, some not of whole hours, one of whole seconds in 1970 (the tz database).
const ZONES = [
  ...['UTC', 'Pacific/Pago_Pago', 'Pacific/Kiritimati', 'Asia/Kathmandu', 'America/St_Johns'],
  ...['Africa/Monrovia', 'Australia/Lord_Howe', 'Europe/Dublin'],
];

it.each(ZONES)('in %s every clock gives a time of the standard, and a name for a file', (tz) => {
  process.env['TZ'] = tz;
  for (const ms of CLOCKS) {
    vi.useFakeTimers({ toFake: ['Date'], now: ms });
    const { at } = startClock()();
    // RFC 3339, section 5.6
    expect(at, `${ms}`).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}[+-]\d\d:\d\d$/);
    expect(sessionPart(sessionFileName(at, 'x')), at).not.toBeNull();
    const isWithin = ms > -3e13 && ms < 253_400_000_000_000;
    if (isWithin) expect(Math.abs(Date.parse(at) - ms), at).toBeLessThan(60_000);
  }
});
