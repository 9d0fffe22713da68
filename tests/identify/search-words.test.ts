/** What a procedure is found by. Numbers and meanings of codes: SAE J2012 / ISO 15031-6. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { codesAmong, searchWords } from '../../src/identify/search-words.ts';
import { matching } from '../../src/ui/parts/pick-list-state.ts';

const codesOf = (name: string) =>
  /^codes: \[(.*)\]$/m.exec(readFileSync(`procedures/${name}.yaml`, 'utf8'))![1]!.split(', ');
const ITEMS = [
  'hall-no-signal',
  'hall-relay-no-signal',
  'reluctor-no-signal',
  'throttle-position',
  'pedal-position',
  'wheel-speed-current',
].map((name) => ({ text: name, also: searchWords(codesOf(name)).join(' ') }));
const found = (typed: string) => matching(ITEMS, typed).map(({ text }) => text);
const HALL = ['hall-no-signal', 'hall-relay-no-signal'];

describe('a procedure is found by', () => {
  it.each([
    ['exhaust', HALL],
    ['intake', [...HALL, 'reluctor-no-signal']],
    ['exhaust bank 2', HALL],
    ['bank 2', [...HALL, 'reluctor-no-signal']],
    ['cam', [...HALL, 'reluctor-no-signal']],
    ['P0390', [...HALL, 'reluctor-no-signal']],
    // The phase of camshaft A against the crankshaft, which no procedure lists itself.
    ['P0016', [...HALL, 'reluctor-no-signal']],
    ['p0019', [...HALL, 'reluctor-no-signal']],
    // Pedal switch F and its correlation with D.
    ['P2130', ['pedal-position']],
    ['P2139', ['pedal-position']],
    ['P0226', ['throttle-position']],
    ['left rear', ['wheel-speed-current']],
    ['abs', ['wheel-speed-current']],
    ['P0500', []],
  ])('%s', (typed, names) => expect(found(typed)).toEqual(names));
});

it('codes among the words are those that are whole', () => {
  expect(codesAmong('exhaust p0365, P0369 P03')).toEqual(['P0365', 'P0369']);
  expect(codesAmong('')).toEqual([]);
});
