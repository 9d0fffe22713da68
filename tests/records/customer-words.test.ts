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
  expect(test('Along the signal wire, loaded')).toBe(
    'Signal line under load, signal at the engine control module to signal at the crankshaft position sensor',
  );
  expect(test("Look into the sensor's connector")).toBe("Look into the sensor's connector");
  expect(test('Volts at the signal, pin 2')).toBe('Volts at the signal');
  const by = "Along the signal wire, loaded: 4.98 V; Feed against the sensor's own ground: 4.97 V";
  expect(ruledOutBy({ words: '', by, readings: [] })).toBe(
    'Signal line under load, signal at the engine control module to signal at the crankshaft position sensor: 4.98 V; Supply voltage, feed at the crankshaft position sensor to ground at the crankshaft position sensor: 4.97 V',
  );
  const pulled = record.lines.find(({ title }) => title === 'Along the signal wire, loaded')!;
  expect(reading(pulled.event)).toBe(test(pulled.title));
  expect(ruledOutBy({ words: '', by: '', readings: [pulled.event] })).toBe(
    `${test(pulled.title)}: ${pulled.found}`,
  );
  expect(text('from the module, pin K38 (GN), to the feed (RD)')).toBe(
    'from the module, to the feed',
  );
});
