/** What Enter takes in the choice of captures. */
import { expect, test } from 'vitest';
import type { CaptureEntry } from '../../../src/files/list-captures.ts';
import { PICK_LIST } from '../../../src/ui/parts/pick-list-state.ts';
import { textField } from '../../../src/ui/parts/text-field-state.ts';
import {
  captureItems,
  endOfPath,
  nameTaken,
} from '../../../src/ui/screens/capture-picker-state.ts';

const entry = (kind: CaptureEntry['kind'], name: string) => ({ kind, name, bytes: 1, ageMs: 1 });
const items = captureItems({
  path: '/data',
  entries: [entry('file', 'old-crank.csv'), entry('file', 'crank.csv'), entry('folder', 'in')],
  leftOut: 0,
  problem: null,
});

test.each([
  ['nothing typed, the marked line', '', 'old-crank.csv'],
  ['a part of a name, the first that has it', 'crank', 'old-crank.csv'],
  ['a whole name, that one', 'crank.csv', 'crank.csv'],
  ['a folder by its name', 'in', 'in'],
  ['a path', 'in/deep/x.csv', 'in/deep/x.csv'],
  ['a path with blanks around it', '  /cart/a b.csv ', '/cart/a b.csv'],
  ['a path of another system', 'C:\\scope\\x.csv', 'C:\\scope\\x.csv'],
  ['the folder above', '..', '..'],
  ['home', '~', '~'],
  ['a file that is not in the list', 'trace.dat', 'trace.dat'],
])('%s: %j', (_, typed, taken) => {
  expect(nameTaken(items, { ...PICK_LIST, filter: textField(typed) })).toBe(taken);
});

test('nothing is taken where nothing is', () => {
  expect(nameTaken([], PICK_LIST)).toBeNull();
});

test('of a long path the end is shown, harmlessly', () => {
  expect(endOfPath('/data', 20, '…')).toBe('/data');
  expect(endOfPath('/a/very/long/way/to/captures', 12, '…')).toBe('…to/captures');
  expect(endOfPath('/\x1b[2J/x', 20, '…')).toBe('/␛[2J/x');
});
