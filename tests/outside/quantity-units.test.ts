/** Units against mathjs 15.2.0 (a units library that is not ours) and the SI brochure's prefixes. */
import { unit as outsideUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { parseReading } from '../../src/quantity/parse-reading.ts';
import type { Unit } from '../../src/quantity/quantity.ts';
import { strictUnit } from '../../src/quantity/unit-words.ts';

const NUMBERS = ['1', '4.7', '0.033', '12.6', '980', '2.54'];
const BASES: readonly [ours: string, theirs: string, si: string, unit: Unit, prefixes: string][] = [
  ['V', 'V', 'V', 'V', 'num kM'],
  ['A', 'A', 'A', 'A', 'pnum k'],
  ['ohm', 'ohm', 'ohm', 'ohm', 'um kMG'],
  ['Hz', 'Hz', 'Hz', 'Hz', 'm kMG'],
  ['s', 's', 's', 's', 'pnum '],
  ['m', 'm', 'm', 'm', 'numc k'],
  ['F', 'F', 'F', 'F', 'pnum '],
  ['W', 'W', 'W', 'W', 'num kM'],
  ['ft', 'ft', 'm', 'm', ' '],
  ['min', 'minute', 's', 's', ' '],
  ['mm2', 'mm^2', 'm^2', 'm2', ' '],
  ['cm2', 'cm^2', 'm^2', 'm2', ' '],
];

describe('every prefix and unit gives the value of the second opinion', () => {
  for (const [ours, theirs, si, unit, prefixes] of BASES)
    test.each([...prefixes].map((it) => it.trim()))(`%s${ours}`, (prefix) => {
      for (const digits of NUMBERS) {
        const outside = outsideUnit(Number(digits), `${prefix}${theirs}`).toNumber(si);
        const inside = parseQuantity(`${digits} ${prefix}${ours}`);
        expect(inside?.unit).toBe(unit);
        expect(Math.abs((inside?.value ?? 0) / outside - 1)).toBeLessThan(1e-12);
        // What people type comes to the same, or is doubted or refused where the prefix is mistaken or far too large.
        const typed = parseReading(`${digits}${prefix}${ours}`, { unit });
        if (typed.status === 'read')
          expect(Math.abs(typed.quantity.value / outside - 1)).toBeLessThan(1e-12);
        else expect([...'mkMG', ...(ours === 'F' ? [''] : [])]).toContain(prefix);
      }
    });
});

test('the prefixes in use are those of the SI brochure', () => {
  // BIPM, SI brochure table 7: p -12, n -9, micro -6, m -3, c -2, k 3, M 6, G 9
  const brochure = { pA: -12, nF: -9, uV: -6, mV: -3, cm: -2, kohm: 3, Mohm: 6, Gohm: 9 };
  for (const [word, power] of Object.entries(brochure)) expect(strictUnit(word)?.power).toBe(power);
});

test('the same values as UCUM gives', () => {
  // Computed with @lhncbc/ucum-lhc 7.1.10: 4.7 kOhm = 4700 Ohm, 250 mV = 0.25 V, 1 [in_i] = 25.4 mm
  expect(parseQuantity('4.7 kOhm')?.value).toBe(4700);
  expect(parseQuantity('250 mV')?.value).toBe(0.25);
  const inch = parseReading('1 in', { unit: 'm' });
  expect(inch.status === 'read' && inch.quantity.value).toBeCloseTo(0.0254, 12);
});
