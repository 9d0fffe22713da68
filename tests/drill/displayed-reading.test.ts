/** The number that a simulated meter gives is the one its digits stand for. */
import { expect, it } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import { displayed, readingAnswer } from '../../src/drill/bench.ts';
import { parseReading } from '../../src/quantity/parse-reading.ts';
import { METER, shipped } from '../circuit/shipped.ts';

const model = createModel(shipped('hall-module-fed'), { samples: 1, seed: 1, meter: METER });
/** In every range of the meter and at its ends, in volts or ohms. */
const VALUES = [0, 4e-5, 0.0131, 0.5999, 0.6, 4.9804, 12.68, 59.996, 217.3, 599.9];

it.each(['V', 'ohm'] as const)('in %s', (unit) => {
  const more = unit === 'V' ? [-0.00001, -4.9804] : [2.2049e3, 47.12e3, 1e6, 5.9e7];
  for (const value of [...VALUES, ...more]) {
    const { answer } = readingAnswer(model, { kind: 'number', value, unit });
    if (answer.kind !== 'reading') throw new Error('a number is a reading');
    const read = parseReading(answer.typed, { unit, usual: { low: value, high: value } });
    expect(read).toMatchObject({ status: 'read', quantity: { value: answer.value, unit } });
    const shown = { kind: 'number', value, unit } as const;
    expect(displayed(model, shown)).toEqual({
      words: answer.typed,
      shown: { ...shown, value: answer.value },
    });
  }
});

it('over ranges is OL, without end', () => {
  const value = Number.POSITIVE_INFINITY;
  expect(readingAnswer(model, { kind: 'number', value, unit: 'ohm' }).answer).toEqual({
    kind: 'reading',
    typed: 'OL',
    value,
  });
});
