/** What is typed of the parts that share with the sensor, and written back. */
import { expect, it } from 'vitest';
import { sharesSaid, sharesText } from '../../src/procedure/read-neighbours.ts';

it('nothing typed says nothing; nothing that shares is said with a word', () => {
  expect(sharesSaid('  ')).toBeUndefined();
  expect(sharesSaid('nothing')).toEqual([]);
  expect(sharesText(undefined)).toBe('');
  expect(sharesText([])).toBe('nothing');
});

it('a part is its name, what it shares, whether it works and how one knows', () => {
  expect(sharesSaid(' fuel gauge : feed, Ground,feed, fails too ; lamp: ground')).toEqual([
    { name: 'fuel gauge', shares: ['feed', 'ground'], works: 'fails' },
    { name: 'lamp', shares: ['ground'] },
  ]);
  expect(sharesSaid('gauge: feed, works, how: it follows the pedal')).toEqual([
    { name: 'gauge', shares: ['feed'], works: 'works', how: 'it follows the pedal' },
  ]);
  expect(sharesSaid('twin: feed, sister 5v')).toEqual([
    { name: 'twin', shares: ['feed'], sister: '5V' },
  ]);
});

it('a name alone shares nothing that was named', () => {
  expect(sharesSaid(' gauge ')).toEqual([{ name: 'gauge', shares: [] }]);
});

it('what was written is read as it was', () => {
  const said = sharesSaid('fuel gauge: feed, ground, works; lamp: ground, how: seen')!;
  expect(sharesSaid(sharesText(said))).toEqual(said);
});
