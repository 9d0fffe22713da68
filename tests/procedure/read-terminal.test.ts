import { describe, expect, it } from 'vitest';
import { readTerminal, terminalRemark } from '../../src/procedure/read-terminal.ts';

describe('a terminal as it is written down', () => {
  it.each([
    ['1 RD/BU', '1', 'RD/BU'],
    ['1 rd-bu', '1', 'RD/BU'],
    ['1RD', '1', 'RD'],
    ['1 red', '1', 'RD'],
    ['2 blue', '2', 'BU'],
    ['12 braun', '12', 'BN'],
    ['5 white/black', '5', 'WH/BK'],
    ['5 white, black', '5', 'WH/BK'],
    ['5 white black', '5', 'WH/BK'],
    ['1/RD', '1', 'RD'],
    ['1, rot', '1', 'RD'],
    ['3 rot-weiß', '3', 'RD/WH'],
    ['3 GRÜN/GELB', '3', 'GN/YE'],
    ['3 green with yellow stripe', '3', 'GN/YE'],
    ['4 sw/ws', '4', 'BK/WH'],
    ['4 rtws', '4', 'RD/WH'],
    ['4 BLK/YEL', '4', 'BK/YE'],
    ['A3', 'A3', ''],
    ['A14 RD/GN', 'A14', 'RD/GN'],
    ['X1/7 grey', 'X1/7', 'GY'],
    ['B 3', 'B 3', ''],
    ['12', '12', ''],
    ['pin 2 brown', '2', 'BN'],
    ['red 1', '1', 'RD'],
    ['bk', '', 'BK'],
    ['red/blue', '', 'RD/BU'],
    ['GNYE', '', 'GN/YE'],
    // Not understood: whole, as typed.
    ['3 light green', '3 light green', ''],
    ['1 XX', '1 XX', ''],
    ['the left one', 'the left one', ''],
  ])('%s', (typed, pin, colour) => {
    expect(readTerminal(typed)).toEqual({ pin, colour });
  });

  it('reads again what it made of it', () => {
    for (const typed of ['5 white/black', 'X1/7 grey', 'GNYE', '3 light green']) {
      const first = readTerminal(typed)!;
      expect(readTerminal(`${first.pin} ${first.colour}`)).toEqual(first);
    }
  });

  it('nothing is nothing', () => expect(readTerminal('  ')).toBeNull());

  it.each([
    ['5 white/black', 'Understood: pin 5, colour WH/BK (white with black).', false],
    ['red', 'Understood: no pin, colour RD (red).', false],
    ['A3', 'Understood: pin A3, no colour.', false],
    ['3 light green', 'No wire colour recognised in "3 light green": kept as typed', true],
    ['1 XX', 'No wire colour recognised in "1 XX"', true],
  ])('says of "%s" what was understood', (typed, words, doubtful) => {
    const said = terminalRemark(typed);
    expect(said.words).toContain(words);
    expect(said.doubtful).toBe(doubtful);
  });
});
