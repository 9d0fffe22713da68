/** What is read out to the owner of a vehicle. */
import { expect, it } from 'vitest';
import { customerWordsFor } from '../../src/records/customer-words.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { shopFor, walkOn } from '../session/walk-library.ts';

it('no pins, no colours, no trade names of tests', () => {
  const shop = shopFor('hall-no-signal');
  const job = {
    ...shop.begun.opened.job,
    terminals: {
      'module.signal': { pin: 'K38', colour: 'GN' },
      'sensor.signal': { pin: '2', colour: '' },
      'sensor.feed': { pin: '', colour: 'RD' },
    },
  };
  const begun = { ...shop.begun, opened: { ...shop.begun.opened, job } };
  const session = walkOn(shop, begun, 'wire.signal.open');
  const record = recordOf(session, { seq: 1, hash: '' });
  const { test, reading, ruledOutBy, text } = customerWordsFor(record);
  expect(test("The module's end while pulled")).toBe(
    'Signal line under load, signal at the engine control module',
  );
  expect(test("Look into the sensor's connector")).toBe("Look into the sensor's connector");
  expect(test('Volts at the signal, pin 2')).toBe('Volts at the signal');
  const by = "The module's end while pulled: 4.98 V; Feed against the sensor's own ground: 4.97 V";
  expect(ruledOutBy({ words: '', by, readings: [] })).toBe(
    'Signal line under load, signal at the engine control module: 4.98 V; Supply voltage, feed at the crankshaft position sensor to ground at the crankshaft position sensor: 4.97 V',
  );
  const pulled = record.lines.find(({ title }) => title === "The module's end while pulled")!;
  expect(reading(pulled.event)).toBe(test(pulled.title));
  expect(ruledOutBy({ words: '', by: '', readings: [pulled.event] })).toBe(
    `${test(pulled.title)}: ${pulled.found}`,
  );
  expect(text('from the module, pin K38 (GN), to the feed (RD)')).toBe(
    'from the module, to the feed',
  );
});
