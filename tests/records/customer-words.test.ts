/** What is read out to the owner of a vehicle. */
import { expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { customerWordsFor } from '../../src/records/customer-words.ts';
import { markdownOf } from '../../src/records/markdown.ts';
import { readRecord } from '../../src/records/read-record.ts';
import { reportOf } from '../../src/records/report.ts';
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

it('a value inside a wide range is not called right where the conclusion rests on it', () => {
  const read = readRecord(nodeDisk, 'sessions/sample-quarrelling-pedal.jsonl');
  if (!read.ok) throw new Error(read.words);
  const paper = markdownOf(reportOf(read.record, 'customer'));
  // The two signals touch: 0 V between them is among all that a pedal can show, and is a sign of the fault.
  expect(paper).toMatch(
    /The two signals against each other \| -4\.\d+ to 4\.\d+ V \| .*The voltage is in the range that it should be in\./,
  );
  expect(paper).not.toContain('The voltage is as it should be');
  expect(paper).toContain(
    'A test with nothing wrong in it stands here because its result speaks against another explanation.',
  );
});

it('where each piece of evidence shows something wrong, nothing more is said of it', () => {
  const read = readRecord(nodeDisk, 'sessions/sample-rainy-camshaft.jsonl');
  if (!read.ok) throw new Error(read.words);
  expect(markdownOf(reportOf(read.record, 'customer'))).not.toContain('speaks against another');
});
