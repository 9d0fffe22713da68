import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatQuantity } from '../../src/quantity/format-quantity.ts';
import { type ExpectedReading, parseReading } from '../../src/quantity/parse-reading.ts';
import { UNITS, type Unit } from '../../src/quantity/quantity.ts';

const OL = Number.POSITIVE_INFINITY;

describe('what people type is understood', () => {
  test.each<[string, Unit, number, number]>([
    // typed, expected unit, value in it, one unit of the last digit
    ['4.97', 'V', 4.97, 0.01],
    ['4,97', 'V', 4.97, 0.01],
    ['4.97V', 'V', 4.97, 0.01],
    ['4970 mV', 'V', 4.97, 0.001],
    ['12.6 Vdc', 'V', 12.6, 0.1],
    ['12.6 V DC', 'V', 12.6, 0.1],
    ['12.6 volts', 'V', 12.6, 0.1],
    ['-0.02', 'V', -0.02, 0.01],
    ['\u22120.02', 'V', -0.02, 0.01],
    ['0,234', 'V', 0.234, 0.001],
    ['5 \u00b5V', 'V', 5e-6, 1e-6],
    ['5 \u03bcV', 'V', 5e-6, 1e-6],
    ['5 uV', 'V', 5e-6, 1e-6],
    ['\uff14.\uff15 V', 'V', 4.5, 0.1],
    ['4V7', 'V', 4.7, 0.1],
    ['1,234.5', 'V', 1234.5, 0.1],
    ['1.234,5', 'V', 1234.5, 0.1],
    ['.3 ohm', 'ohm', 0.3, 0.1],
    ['300m\u03a9', 'ohm', 0.3, 0.001],
    ['2.2\u2126', 'ohm', 2.2, 0.1],
    ['2k2', 'ohm', 2200, 100],
    ['2K2', 'ohm', 2200, 100],
    ['4R7', 'ohm', 4.7, 0.1],
    ['R47', 'ohm', 0.47, 0.01],
    ['47R', 'ohm', 47, 1],
    ['1.5 M', 'ohm', 1.5e6, 1e5],
    ['2.2 megohm', 'ohm', 2.2e6, 1e5],
    ['3 milliohms', 'ohm', 0.003, 0.001],
    ['12 500', 'ohm', 12500, 1],
    ['OL', 'ohm', OL, 0],
    ['O.L', 'ohm', OL, 0],
    ['0L', 'ohm', OL, 0],
    ['0.L', 'ohm', OL, 0],
    ['OL M\u03a9', 'ohm', OL, 0],
    ['OL', 'V', OL, 0],
    ['800 rpm', 'rpm', 800, 1],
    ['33 Hz', 'Hz', 33, 1],
    ['1.2 kHz', 'Hz', 1200, 100],
    ['45 %', '%', 45, 1],
    ['32mA', 'A', 0.032, 0.001],
    ['1.5 ms', 's', 0.0015, 0.0001],
    ['3 m', 'm', 3, 1],
    ['0.5 mm\u00b2', 'm2', 5e-7, 1e-7],
    ['20 C', 'degC', 20, 1],
    ['58', '1', 58, 1],
  ])('%s where %s is asked', (typed, unit, value, resolution) => {
    expect(parseReading(typed, { unit })).toMatchObject({
      status: 'read',
      quantity: { value, unit },
      resolution: resolution === 0 ? 0 : expect.closeTo(resolution, 12),
    });
  });

  test('Fahrenheit is turned into Celsius', () => {
    const read = parseReading('68 \u00b0F', { unit: 'degC' }); // by hand: (68 - 32) * 5 / 9
    expect(read.status === 'read' && read.quantity.value).toBeCloseTo(20, 9);
  });
});

describe('while someone is still typing', () => {
  test.each(['', ' ', '-', '+', '.', '4.', '4,', '-4.', 'o', 'O', 'o.', '5e', '12 vo', '12 mi'])(
    '"%s" is unfinished, not wrong',
    (typed) => {
      expect(parseReading(typed, { unit: 'V' })).toEqual({ status: 'unfinished' });
    },
  );
  test('"12 k" is a finished resistance', () => {
    expect(parseReading('12 k', { unit: 'ohm' })).toMatchObject({
      status: 'read',
      quantity: { value: 12000 },
      text: '12 kΩ',
    });
  });
});

describe('a thousandfold doubt is asked, not guessed', () => {
  const values = (typed: string, expected: ExpectedReading) => {
    const parse = parseReading(typed, expected);
    return parse.status === 'doubt'
      ? parse.choices.map((choice) => choice.quantity.value)
      : parse.status === 'read'
        ? parse.quantity.value
        : parse.status;
  };
  test.each<[string, ExpectedReading, number | readonly number[]]>([
    ['1.5 M', { unit: 'V' }, [0.0015, 1.5]],
    ['1.5 MV', { unit: 'V' }, [0.0015, 1.5]],
    ['32 MA', { unit: 'A' }, [0.032, 32]],
    ['300 M', { unit: 'ohm' }, [0.3, 300]],
    ['20 M', { unit: 'ohm' }, [2e7, 0.02]],
    ['20 m', { unit: 'ohm' }, [0.02, 2e7]],
    ['20 m', { unit: 'ohm', usual: { low: 0, high: 0.5 } }, 0.02],
    ['20 M', { unit: 'ohm', usual: { low: 1e6, high: OL } }, 2e7],
    ['20 M', { unit: 'ohm', usual: { low: 0, high: 0.5 } }, [2e7, 0.02]],
    ['0 M', { unit: 'V' }, 0],
    ['1,234', { unit: 'V' }, [1.234, 1234]],
    ['1,234', { unit: 'V', limit: { high: 60 } }, 1.234],
    ['1,200', { unit: 'rpm' }, [1.2, 1200]],
  ])('%s with %o', (typed, expected, outcome) => {
    expect(values(typed, expected)).toEqual(outcome);
  });
});

describe('what cannot be is refused with its own reason', () => {
  test.each<[string, ExpectedReading, string, RegExp]>([
    ['abc', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['5 furlongs', { unit: 'V' }, 'wrong-unit', /"furlongs" is no unit/],
    ['2k2', { unit: 'rpm' }, 'wrong-unit', /"k" is no unit/],
    ['4R7', { unit: 'V' }, 'wrong-dimension', /asks for volts.*ohms/],
    ['32 mA', { unit: 'V' }, 'wrong-dimension', /asks for volts.*amperes/],
    ['800 Hz', { unit: 'rpm' }, 'wrong-dimension', /asks for rpm.*hertz/],
    ['OL V', { unit: 'ohm' }, 'wrong-dimension', /asks for ohms/],
    ['OL', { unit: 'A' }, 'over-limit-elsewhere', /beyond its range/],
    ['12 Vac', { unit: 'V', dc: true }, 'wrong-current', /direct/],
    ['0.4 Vdc', { unit: 'V', dc: false }, 'wrong-current', /alternating/],
    [
      '300 V',
      { unit: 'V', limit: { high: 60, because: 'a 12 V system' } },
      'impossible-value',
      /more than can be here: a 12 V system/,
    ],
    ['-3', { unit: 'ohm' }, 'impossible-value', /cannot be negative/],
    ['120', { unit: '%' }, 'impossible-value', /between 0 and 100/],
    ['-300', { unit: 'degC' }, 'impossible-value', /absolute zero/],
    ['12 kV', { unit: 'V' }, 'impossible-value', /hand-held/],
    ['-OL', { unit: 'ohm' }, 'impossible-value', /cannot be negative/],
    ['1.2.3', { unit: 'V' }, 'number-marks', /points and commas/],
    ['1,23,456', { unit: 'V' }, 'number-marks', /points and commas/],
    ['4.9 5.1', { unit: 'V' }, 'number-marks', /points and commas/],
    ['1 2', { unit: 'V' }, 'two-numbers', /more than one number/],
    ['1e999', { unit: 'V' }, 'impossible-value', /too large/],
    ['9'.repeat(101), { unit: 'V' }, 'too-long', /at most 100/],
  ])('%s', (typed, expected, code, words) => {
    const parse = parseReading(typed, expected);
    expect(parse).toMatchObject({ status: 'refused', code });
    expect(parse.status === 'refused' && parse.words).toMatch(words);
  });
});

describe('laws', () => {
  test('a formatted quantity is read back as itself within its digits', () => {
    const units: Unit[] = ['V', 'A', 'ohm', 'Hz', 'rpm', '%', 's', 'degC', 'deg'];
    fc.assert(
      fc.property(
        fc.constantFrom(...units),
        fc.double({ min: 0.011, max: 99, noNaN: true }),
        fc.integer({ min: 2, max: 9 }),
        fc.boolean(),
        (unit, value, digits, ascii) => {
          const usual = { low: value, high: value };
          const text = formatQuantity({ value, unit }, { digits, ascii });
          const parse = parseReading(text, { unit, usual });
          expect(parse.status).toBe('read');
          if (parse.status !== 'read') return;
          // Half a unit of the last digit, and the integer digits are always kept.
          expect(Math.abs(parse.quantity.value - value)).toBeLessThanOrEqual(
            0.5 * value * 10 ** (1 - digits) * (1 + 1e-9),
          );
        },
      ),
    );
  });

  test('any text of any length gets an answer, and a reading is always within its unit', () => {
    const signs = '0123456789.,-+ eEkKmMRVAOLl%µΩ\u0000\u202e';
    const typed = fc.string({ unit: fc.constantFrom(...signs), maxLength: 120 });
    fc.assert(
      fc.property(
        fc.oneof(typed, fc.string({ maxLength: 120 })),
        fc.constantFrom(...UNITS),
        (text, unit) => {
          const parse = parseReading(text, { unit });
          if (parse.status === 'read') {
            expect(parse.quantity.unit).toBe(unit);
            expect(Number.isNaN(parse.quantity.value)).toBe(false);
          }
          if (parse.status === 'doubt') expect(parse.choices.length).toBeGreaterThan(0);
          if (parse.status === 'refused') expect(parse.words).not.toMatch(/[\u0000-\u001f\u202e]/);
        },
      ),
      { numRuns: process.env.OHMWARD_LONG === '1' ? 200_000 : 2000 },
    );
  });

  test('the normal form of a reading reads as the same value', () => {
    for (const typed of ['4.97', '4970 mV', '2k2', '12°', '0.30', '-0.02'])
      for (const unit of ['V', 'ohm', 'deg'] as const) {
        const first = parseReading(typed, { unit });
        if (first.status !== 'read') continue;
        expect(parseReading(first.text, { unit })).toEqual(first);
      }
  });
});
