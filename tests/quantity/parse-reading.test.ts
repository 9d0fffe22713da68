import { describe, expect, test } from 'vitest';
import { formatQuantity } from '../../src/quantity/format-quantity.ts';
import { type ExpectedReading, parseReading } from '../../src/quantity/parse-reading.ts';
import { UNITS, type Unit } from '../../src/quantity/quantity.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';

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
    ['4.97'.padStart(100), 'V', 4.97, 0.01],
    ['4. V', 'V', 4, 1],
    ['4u7 F', 'F', 4.7e-6, 1e-7],
    ['4\u00b57 F', 'F', 4.7e-6, 1e-7],
    ['4k7 ohm', 'ohm', 4700, 100],
    ['4r7', 'ohm', 4.7, 0.1],
    ['4V7 V', 'V', 4.7, 0.1],
    ['3 volt dc', 'V', 3, 1],
    ['3 amp dc', 'A', 3, 1],
    ['12.6 dc', 'V', 12.6, 0.1],
    ['10 ft', 'm', 3.048, 0.3048], // the international foot is 0.3048 m
    [' OL ', 'V', OL, 0],
    ['OL   V', 'V', OL, 0],
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

test.each<[string, ExpectedReading, string]>([
  ['2.20 k', { unit: 'ohm' }, '2.20 k\u03a9'],
  ['5 uV', { unit: 'V' }, '5 \u00b5V'],
  ['.3 ohm', { unit: 'ohm' }, '0.3 \u03a9'],
  ['20 C', { unit: 'degC' }, '20 \u00b0C'],
  ['12 degrees', { unit: 'deg' }, '12\u00b0'],
  ['58', { unit: '1' }, '58'],
  ['0.5 mm2', { unit: 'm2' }, '0.5 mm\u00b2'],
  ['1 ft', { unit: 'm' }, '304.8 mm'], // by hand: 0.3048 m
  ['100.5 ft', { unit: 'm' }, '30.6324 m'], // by hand: 100.5 * 0.3048
  ['68 degF', { unit: 'degC' }, '20 \u00b0C'],
  ['1,234', { unit: 'V', limit: { high: 60 } }, '1.234 V'],
  ['o.l', { unit: 'ohm' }, 'OL'],
])('the normal form of "%s" keeps what was typed', (typed, expected, text) => {
  expect(parseReading(typed, expected)).toMatchObject({ status: 'read', text });
});

test.each<[string, boolean]>([
  ['12 V', true],
  ['12 Vdc', true],
  ['12 Vac', false],
  ['12 V', false],
])('"%s" is no wrong current where direct is asked: %s', (typed, dc) => {
  expect(parseReading(typed, { unit: 'V', dc })).toMatchObject({ status: 'read' });
});

describe('while someone is still typing', () => {
  test.each([
    '',
    ' ',
    '-',
    '+',
    '.',
    '4.',
    '4,',
    '-4.',
    'o',
    'O',
    'o.',
    '5e',
    '>',
    '12 vo',
    '12 mi',
    'OL vo',
  ])('"%s" is unfinished, not wrong', (typed) => {
    expect(parseReading(typed, { unit: 'V' })).toEqual({ status: 'unfinished' });
  });
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
  test.each<[string, ExpectedReading, number | readonly number[] | 'refused']>([
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
    // neither is usual, so the number alone does not decide
    ['20 m', { unit: 'ohm', usual: { low: 1000, high: 5000 } }, [0.02, 2e7]],
    // a tenth of a microvolt cannot be shown; 100 V and a forgotten unit can
    ['0.0001 m', { unit: 'V' }, [100, 0.0001]],
    ['1.5 M', { unit: 'V', limit: { high: 1 } }, [0.0015]],
    ['1.5 M', { unit: 'V', limit: { high: 0.001 } }, 'refused'],
    ['1000000000 m', { unit: 'V' }, 'refused'],
  ])('%s with %o', (typed, expected, outcome) => {
    expect(values(typed, expected)).toEqual(outcome);
  });
});

test('choices are told with their digits', () => {
  const parse = parseReading('1,234', { unit: 'V' });
  const words = parse.status === 'doubt' && parse.choices.map((choice) => choice.words);
  expect(words).toEqual(['1.234 V', '1.234 kV']);
});

describe('what cannot be is refused with its own reason', () => {
  test.each<[string, ExpectedReading, string, RegExp]>([
    ['abc', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['5 furlongs', { unit: 'V' }, 'wrong-unit', /"furlongs" is not a unit/],
    ['2k2', { unit: 'rpm' }, 'wrong-unit', /"k" is not a unit/],
    ['4R7 vo', { unit: 'V' }, 'wrong-unit', /"vo" is not a unit/],
    ['4k7 kohm', { unit: 'ohm' }, 'wrong-unit', /"kohm" is not a unit/],
    ['4k7 xyz', { unit: 'ohm' }, 'wrong-unit', /"xyz" is not a unit/],
    ['5 megohmfoo', { unit: 'ohm' }, 'wrong-unit', /"megohmfoo" is not a unit/],
    // names that every JavaScript object has are no units
    ['5 constructor', { unit: 'V' }, 'wrong-unit', /"constructor" is not a unit/],
    ['5 mconstructor', { unit: 'V' }, 'wrong-unit', /"mconstructor" is not a unit/],
    ['5 milli__proto__', { unit: 'V' }, 'wrong-unit', /"milli__proto__" is not a unit/],
    ['5 Hz dc', { unit: 'Hz' }, 'wrong-unit', /"Hz dc" is not a unit/],
    ['12 Vdcx', { unit: 'V' }, 'wrong-unit', /"Vdcx" is not a unit/],
    [`5 ${'x'.repeat(30)}`, { unit: 'V' }, 'wrong-unit', /"x{20}" is not a unit/],
    ['5 ab\u0007c', { unit: 'V' }, 'wrong-unit', /"ab\?c" is not a unit/],
    ['..', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['xOL', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['xo', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['o.x', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['OL 123456789', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['OL xx', { unit: 'V' }, 'not-a-reading', /not a reading/],
    ['-OL', { unit: 'V' }, 'impossible-value', /leads swapped/],
    ['4R7', { unit: 'V' }, 'wrong-dimension', /asks for volts.*ohms/],
    ['32 mA', { unit: 'V' }, 'wrong-dimension', /asks for volts.*amperes/],
    ['800 Hz', { unit: 'rpm' }, 'wrong-dimension', /asks for rpm.*hertz/],
    ['OL V', { unit: 'ohm' }, 'wrong-dimension', /asks for ohms/],
    ['OL', { unit: 'A' }, 'over-limit-elsewhere', /over range/],
    ['12 Vac', { unit: 'V', dc: true }, 'wrong-current', /direct/],
    ['0.4 Vdc', { unit: 'V', dc: false }, 'wrong-current', /alternating/],
    [
      '300 V',
      { unit: 'V', limit: { high: 60, because: 'a 12 V system' } },
      'impossible-value',
      /more than is possible here: a 12 V system/,
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
  test('with the way out beside it, where there is one', () => {
    const fix = (typed: string, expected: ExpectedReading) => {
      const parse = parseReading(typed, expected);
      return parse.status === 'refused' && 'fix' in parse ? parse.fix : null;
    };
    expect(fix('32 mA', { unit: 'V' })).toMatch(/volts/);
    expect(fix('12 Vac', { unit: 'V', dc: true })).toMatch(/DC/);
    expect(fix('12 Vdc', { unit: 'V', dc: false })).toMatch(/AC/);
    expect(fix('-OL', { unit: 'V' })).toMatch(/range/);
    expect(fix('-OL', { unit: 'ohm' })).toMatch(/dead/);
    expect(fix('OL V', { unit: 'ohm' })).toBeNull();
    expect(fix('9'.repeat(101), { unit: 'V' })).toBeNull();
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
      { numRuns: LONG ? 200_000 : 2000 },
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
