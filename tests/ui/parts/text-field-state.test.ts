import { describe, expect, it } from 'vitest';
import {
  overflowWords,
  type TextFieldState,
  textField,
  textFieldAfter,
} from '../../../src/ui/parts/text-field-state.ts';
import { graphemesOf } from '../../../src/ui/parts/wrap-words.ts';
import { createKeyDecoder, type KeyEvent } from '../../../src/ui/term/key-decoder.ts';
import fc from '../../seeded-check.ts';

const keysOf = (bytes: string): KeyEvent[] => {
  const decoder = createKeyDecoder();
  return [...decoder.push(new TextEncoder().encode(bytes)), ...decoder.flush()];
};

const typedInto = (state: TextFieldState, bytes: string) =>
  keysOf(bytes).reduce(textFieldAfter, state);

/** `ab|c`: the text with its cursor. */
const drawn = ({ text, cursor }: TextFieldState) => {
  const signs = graphemesOf(text);
  return `${signs.slice(0, cursor).join('')}|${signs.slice(cursor).join('')}`;
};

const [LEFT, RIGHT, HOME, END, DELETE] = ['\x1b[D', '\x1b[C', '\x1b[H', '\x1b[F', '\x1b[3~'];

describe('textFieldAfter', () => {
  it.each([
    ['', '12.4', '12.4|'],
    ['12.4', `${LEFT}${LEFT}0`, '120|.4'],
    ['abc', `${HOME}x${END}y`, 'xabcy|'],
    ['abc', '\x7f', 'ab|'],
    ['abc', `${HOME}\x7f`, '|abc'],
    ['abc', `${HOME}${DELETE}`, '|bc'],
    ['abc', `${HOME}\x04`, '|bc'],
    ['abc', DELETE, 'abc|'],
    ['abc', `${LEFT}\x15`, '|c'],
    ['abc', `${LEFT}\x0b`, 'ab|'],
    ['one two  ', '\x17', 'one |'],
    ['one', '\x17\x17', '|'],
    ['abc', '\x01x\x05y', 'xabcy|'],
    ['abc', `${RIGHT}${RIGHT}${HOME}${LEFT}`, '|abc'],
    ['e', '\u0301', 'e\u0301|'],
    ['e\u0301x', `${LEFT}\x7f`, '|x'],
    ['4', '\x1b[200~ 7 k\tohm\r\nx\x07\r\n\x1b[201~', '47 k ohm x|'],
    ['abc', '\x1b[200~\x1b[201~', 'abc|'],
  ])('%j after %j is %j', (text, bytes, outcome) => {
    expect(drawn(typedInto(textField(text), bytes))).toBe(outcome);
  });

  it.each(['\r', '\x1b', '\t', '\x1b[A', '\x1b[5~', '\x1bx', '\x03', '\x1bOP'])(
    'leaves %j to others: the very same object',
    (bytes) => {
      const state = textField('abc');
      expect(typedInto(state, bytes)).toBe(state);
    },
  );

  const pasted = (text: string) => `\x1b[200~${text}\x1b[201~`;

  it('takes a paste of 600 signs whole', () => {
    expect(typedInto(textField('a'), pasted('x'.repeat(600))).text).toHaveLength(601);
  });

  it('keeps what finds room of a longer one, where the cursor is, and says how much did not', () => {
    const full = typedInto(textField('ab'), `${LEFT}${pasted('x'.repeat(4100))}`);
    expect(drawn(full)).toBe(`a${'x'.repeat(3998)}|b`);
    expect(overflowWords(full)).toBe(
      '! 102 characters were too many: a field holds 4000. The rest is kept.',
    );
    expect(overflowWords(typedInto(full, 'y'))).toMatch(/^! 103 characters were too many/);
    expect(overflowWords(typedInto(full, `${LEFT}y`))).toMatch(/^! 1 character was too many/);
    expect(overflowWords(typedInto(full, LEFT))).toBeNull();
    expect(drawn(typedInto(full, '\x7fy'))).toBe(`a${'x'.repeat(3997)}y|b`);
  });

  it('keeps the blanks at the ends of what comes in pieces', () => {
    const piece = { kind: 'paste', isPiece: true, text: ' b ' } as const;
    expect(textFieldAfter(textFieldAfter(textField('a'), piece), piece).text).toBe('a b  b ');
    expect(textFieldAfter(textField('a'), { kind: 'paste', text: ' b ' }).text).toBe('ab');
  });

  it('counts what the decoder has cut off a paste', () => {
    const state = typedInto(textField(), pasted('x'.repeat(70_000)));
    expect(overflowWords(state)).toContain('66000 characters');
  });

  it('the cursor stays within the text, whatever is pressed', () => {
    const press = fc.constantFrom(
      'a',
      'Ω',
      '\u0301',
      ' ',
      LEFT,
      RIGHT,
      HOME,
      END,
      DELETE,
      '\x7f',
      '\x15',
      '\x17',
    );
    fc.assert(
      fc.property(fc.array(press, { maxLength: 30 }), (presses) => {
        const state = typedInto(textField('12.4 V'), presses.join(''));
        expect(state.cursor).toBeGreaterThanOrEqual(0);
        expect(state.cursor).toBeLessThanOrEqual(graphemesOf(state.text).length);
      }),
      { numRuns: 5_000 },
    );
  });
});
