/** Trouble codes: bit layout and meanings (SAE J2012 / ISO 15031-6 as quoted). */
import { describe, expect, test } from 'vitest';
import { describeCode } from '../../src/identify/describe-code.ts';
import { formatCode, readCode } from '../../src/identify/trouble-code.ts';

test.each([
  // by hand from the bit table of the encyclopedia article "OBD-II PIDs": two bits for the letter, two for the first digit
  ['U2103', 0xe103], // 11 is U, 10 the digit
  ['P0135', 0x0135], // 00 is P
  ['P0336', 0x0336],
  ['C0035', 0x4035], // 01 is C
  ['B1000', 0x9000], // 10 is B, 01 the digit
])('%s is sent as its two bytes', (code, bytes) => {
  expect(readCode(code)).toMatchObject({ status: 'read', code, twoByte: bytes });
  expect(formatCode(bytes)).toBe(code);
});

test('the second sign says who defined a code (group tables of SAE J2012 as quoted in public; P34xx and U3xxx from memory)', () => {
  const by = (code: string) => describeCode(code)?.definedBy;
  expect(['P0335', 'P2135', 'P3400', 'C0035', 'B0001', 'U0100'].map(by)).toEqual(
    Array(6).fill('standard'),
  );
  expect(['P1335', 'P3000', 'C1035', 'B2001', 'U1100'].map(by)).toEqual(Array(5).fill('maker'));
  expect(['C3000', 'B3000'].map(by)).toEqual(['reserved', 'reserved']);
  // from memory: the standard keeps P3400 and above, and U3xxx
  expect(['P3500', 'P3999', 'U3000', 'U3003'].map(by)).toEqual(Array(4).fill('standard'));
  expect(['P33FF', 'U2103'].map(by)).toEqual(['maker', 'maker']);
});

describe('generic position-sensor codes', () => {
  // Numbers and meanings of SAE J2012, read again in the list that an open engine-control firmware carries (not copied)
  const kinds = ['circuit', 'range', 'low', 'high', 'intermittent'];
  test.each([
    ['P0335', 'crankshaft', 'A'],
    ['P0340', 'camshaft', 'A bank 1'],
    ['P0345', 'camshaft', 'A bank 2'],
    ['P0365', 'camshaft', 'B bank 1'],
    ['P0385', 'crankshaft', 'B'],
    ['P0390', 'camshaft', 'B bank 2'],
    ['P0120', 'throttle', 'A'],
    ['P0220', 'throttle', 'B'],
    ['P0225', 'throttle', 'C'],
    ['P2120', 'pedal', 'D'],
    ['P2125', 'pedal', 'E'],
    ['P2130', 'pedal', 'F'],
  ])('%s begins a block of five for the %s sensor %s', (first, role, which) => {
    const start = Number.parseInt(first.slice(1), 16);
    for (const [offset, kind] of kinds.entries())
      expect(describeCode(formatCode(start + offset))).toMatchObject({
        sensorRole: role,
        which,
        kind,
      });
  });
  test.each([
    ['P0016', 'camshaft', 'A bank 1', 'the crankshaft'],
    ['P0017', 'camshaft', 'B bank 1', 'the crankshaft'],
    ['P0018', 'camshaft', 'A bank 2', 'the crankshaft'],
    ['P0019', 'camshaft', 'B bank 2', 'the crankshaft'],
    ['P2135', 'throttle', 'A', 'track B'],
    ['P2136', 'throttle', 'A', 'track C'],
    ['P2137', 'throttle', 'B', 'track C'],
    ['P2138', 'pedal', 'D', 'track E'],
    ['P2139', 'pedal', 'D', 'track F'],
    ['P2140', 'pedal', 'E', 'track F'],
  ])('%s compares two signals', (code, role, which, against) => {
    expect(describeCode(code)).toMatchObject({
      kind: 'correlation',
      sensorRole: role,
      which,
      against,
    });
  });
  test.each([
    // from memory: SAE J2012 as it is in use, three numbers a wheel: ring, sensor, supply
    ['C0030', 'left front', 'range', /ring/],
    ['C0031', 'left front', 'circuit', /circuit/],
    ['C0032', 'left front', 'circuit', /supply/],
    ['C0034', 'right front', 'circuit', /circuit/],
    ['C0037', 'left rear', 'circuit', /circuit/],
    ['C003A', 'right rear', 'circuit', /circuit/],
    ['C003B', 'right rear', 'circuit', /supply/],
    // from memory: an older numbering; C0035 means two wheels
    ['C0035', 'right front', 'circuit', /supply; in an older numbering, still in use, left front/],
    ['C0040', 'right front', 'circuit', /older numbering .*of no wheel in today's/],
    ['C0045', 'left rear', 'circuit', /older numbering .*of no wheel in today's/],
    ['C0050', 'right rear', 'circuit', /older numbering .*of no wheel in today's/],
  ])('%s is of the %s wheel', (code, which, kind, words) => {
    expect(describeCode(code)).toMatchObject({ sensorRole: 'wheel', which, kind });
    expect(describeCode(code)!.words).toMatch(words);
  });
  test.each(['C0043', 'C0046', 'C003C', 'C002F'])('%s is of no wheel', (code) => {
    expect(describeCode(code)).toMatchObject({ sensorRole: null });
  });
  test.each([
    // from memory
    ['P0500', 'vehicle-speed', 'circuit'],
    ['P0715', 'transmission-input', 'circuit'],
    ['P0720', 'transmission-output', 'circuit'],
  ])('%s is a %s code', (code, role, kind) => {
    expect(describeCode(code)).toMatchObject({ sensorRole: role, kind });
  });
});
