import { Box } from 'ink';
import { render } from 'ink-testing-library';
import { describe, expect, it } from 'vitest';
import { useBody } from '../../../src/ui/parts/body-size.ts';
import { FormView } from '../../../src/ui/parts/form-view.tsx';
import { Frame } from '../../../src/ui/parts/frame.tsx';
import { bindingOf, type KeyBinding, keyHintLines } from '../../../src/ui/parts/key-hints.tsx';
import { Words } from '../../../src/ui/parts/safe-words.tsx';
import { TextField } from '../../../src/ui/parts/text-field.tsx';
import { textField } from '../../../src/ui/parts/text-field-state.ts';
import { WindowList } from '../../../src/ui/parts/window-list.tsx';
import { scrolled, windowTop } from '../../../src/ui/parts/window-state.ts';
import { createKeyDecoder } from '../../../src/ui/term/key-decoder.ts';
import { openTestScreen } from '../in-process.ts';

const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'take it' },
  { keys: ['b', 'ctrl-b'], show: 'b', help: 'one step back' },
  { keys: ['ctrl-c'], show: 'Ctrl+C', help: '' },
  { keys: ['?'], show: '?', help: 'all keys' },
];

const LINES = Array.from({ length: 40 }, (_, index) => `line ${index + 1}`);

function Inside() {
  const body = useBody();
  return (
    <Words>{`${body.columns} by ${body.rows}; ${'12.4 V at the sensor feed. '.repeat(6)}`}</Words>
  );
}

describe('Frame', () => {
  it('draws title, aside, body and keys at 60 x 20', async () => {
    const screen = await openTestScreen(
      <Frame title="Feed voltage" aside="saved · 14" keys={KEYS}>
        <Inside />
      </Frame>,
      { columns: 60, rows: 20 },
    );
    const lines = await screen.lines();
    const blank = `│${' '.repeat(58)}│`;
    expect(lines).toEqual([
      `┌─ Feed voltage ${'─'.repeat(30)} saved · 14 ─┐`,
      '│ 56 by 15; 12.4 V at the sensor feed. 12.4 V at the       │',
      '│ sensor feed. 12.4 V at the sensor feed. 12.4 V at the    │',
      '│ sensor feed. 12.4 V at the sensor feed. 12.4 V at the    │',
      '│ sensor feed.                                             │',
      ...Array.from({ length: 11 }, () => blank),
      `├${'─'.repeat(58)}┤`,
      '│ [Enter] take it  [b] one step back  [?] all keys         │',
      `└${'─'.repeat(58)}┘`,
      '',
    ]);
    expect(await screen.cell(0, 3)).toMatchObject({ text: 'F', bold: true });
  });

  it.each([
    [80, 24],
    [60, 20],
    [60, 16],
  ])('fills every row but the last at %d x %d, in ASCII too', async (columns, rows) => {
    for (const ascii of [false, true]) {
      const screen = await openTestScreen(
        <Frame title={'A very long title '.repeat(8)} aside="step 3 of 9" keys={KEYS}>
          <WindowList lines={LINES} rows={50} top={0} />
        </Frame>,
        { columns, rows, look: { ascii } },
      );
      const lines = await screen.lines();
      expect(lines.slice(0, -1).map((line) => [...line].length)).toEqual(
        Array(rows - 1).fill(columns),
      );
      if (ascii) expect(lines.join('')).toMatch(/^[\x20-\x7e]*$/);
    }
  });

  it('keeps foreign text inside: a title with escapes and right-to-left marks is only shown', async () => {
    const screen = await openTestScreen(
      <Frame title={'\x1b]0;owned\x07\u202etitle'} keys={[]}>
        <Words>{'\x1b[2J\x1b[31mred\nnext'}</Words>
      </Frame>,
    );
    const lines = await screen.lines();
    expect(lines[0]).toContain('┌─ ␛]0;owned␇‹U+202E›title ─');
    expect(lines[1]).toContain('│ ␛[2J␛[31mred');
    expect(lines[2]).toContain('│ next');
    expect(screen.raw()).not.toMatch(/\x1b\]|\x07|\u202e|\x1b\[31m/);
  });
});

describe('Words', () => {
  it('shows colour only where there is colour, bold and inverse always', async () => {
    const node = (
      <Words colour="red" bold inverse>
        HIGH
      </Words>
    );
    const plain = await openTestScreen(node, { look: { colour: false } });
    expect(await plain.cell(0, 0)).toMatchObject({
      text: 'H',
      bold: true,
      inverse: true,
      coloured: false,
    });
    const coloured = await openTestScreen(node, { look: { colour: true } });
    expect(await coloured.cell(0, 0)).toMatchObject({ text: 'H', bold: true, coloured: true });
    expect(coloured.raw()).toContain('\x1b[31m');
  });

  it('spells our signs in ASCII and measures them so', async () => {
    const screen = await openTestScreen(<Words width={20}>{'4,7 kΩ ±5 % → 85 °C µ é ⚡'}</Words>, {
      look: { ascii: true },
    });
    expect((await screen.lines()).slice(0, 2)).toEqual(['4,7 kohm +/-5 % ->', '85 degC u e ?']);
  });

  it('never shows the text of another cell when text and width run together (ink#998)', async () => {
    const screen = await openTestScreen(
      <Box flexDirection="column">
        <Words width={5} wrap="cut">
          {'abcdefgh12'}
        </Words>
        <Words width={25} wrap="cut">
          {'abcdefgh1'}
        </Words>
      </Box>,
    );
    expect((await screen.lines()).slice(0, 2)).toEqual(['abcd…', 'abcdefgh1']);
  });

  it('works in the library the Ink world tests with', () => {
    const { lastFrame, unmount } = render(
      <Words width={12} hang={2}>
        {'Back-probe the signal wire'}
      </Words>,
    );
    expect(lastFrame()).toBe('Back-probe\n  the signal\n  wire');
    unmount();
  });
});

describe('key table', () => {
  it('finds the binding of a key', () => {
    const [event] = createKeyDecoder().push(Uint8Array.of(0x02));
    expect(event && bindingOf(event, KEYS)?.help).toBe('one step back');
  });

  it('breaks the footer between hints only and leaves out what has no words', () => {
    expect(keyHintLines(KEYS, 34)).toEqual(['[Enter] take it  [b] one step back', '[?] all keys']);
    expect(keyHintLines(KEYS, 33)).toEqual(['[Enter] take it', '[b] one step back  [?] all keys']);
  });
});

describe('WindowList', () => {
  it('shows the window and the position', async () => {
    const screen = await openTestScreen(<WindowList lines={LINES} rows={4} top={9} columns={30} />);
    expect((await screen.lines()).slice(0, 5)).toEqual([
      'line 10',
      'line 11',
      'line 12',
      `${' '.repeat(25)}12/40`,
      '',
    ]);
  });

  it('marks the chosen line with a sign and inverse, and cuts a line too long', async () => {
    const lines = ['short', 'x'.repeat(50)];
    const screen = await openTestScreen(
      <WindowList lines={lines} rows={4} top={0} selected={1} columns={20} />,
    );
    expect((await screen.lines()).slice(0, 3)).toEqual(['  short', `> ${'x'.repeat(17)}…`, '']);
    expect(await screen.cell(1, 0)).toMatchObject({ inverse: true });
    expect(await screen.cell(0, 0)).toMatchObject({ inverse: false });
  });

  it.each([
    // count rows top keep -> top
    [40, 10, 0, 0, 0],
    [40, 10, 0, 8, 0], // nine lines and the position
    [40, 10, 0, 9, 1],
    [40, 10, 20, 3, 3],
    [40, 10, 0, 39, 31],
    [5, 10, 3, 4, 0],
    [40, 10, 39, 39, 31],
  ])(
    'of %d lines in %d rows from %d, keeping %d in view, starts at %d',
    (count, rows, top, keep, start) => {
      expect(windowTop({ count, rows, top, keep })).toBe(start);
    },
  );

  it.each([
    ['page-down', 0, 8],
    ['page-down', 30, 31],
    ['page-up', 5, 0],
    ['down', 31, 31],
    ['up', 3, 2],
    ['end', 0, 31],
    ['home', 20, 0],
  ] as const)('%s from %d of 40 in 10 rows goes to %d', (by, top, next) => {
    expect(scrolled({ count: 40, rows: 10, top, by })).toBe(next);
  });
});

describe('FormView', () => {
  it('shows all options of a choice, or where there is no room the chosen one and its place', async () => {
    const options = ['combustion', 'hybrid', 'electric', 'not-stated'];
    const field = { kind: 'choice', key: 'drive', hint: '', options, chosen: 3 } as const;
    const rowOf = async (label: string) => {
      const chosen = { at: 0, fields: [{ ...field, label }] };
      const form = (
        <Frame title="Sheet" aside="" keys={[]}>
          <FormView form={chosen} rows={6} />
        </Frame>
      );
      const screen = await openTestScreen(form, { columns: 60, rows: 20 });
      return (await screen.lines()).find((line) => line.includes('Drive'));
    };
    expect(await rowOf('Drive')).toContain(' combustion   hybrid   electric  (not-stated)');
    expect(await rowOf('Drive of this vehicle')).toMatch(/ \(not-stated\) {2}4 of 4/);
  });
});

describe('TextField', () => {
  it('keeps the cursor in view in a text longer than the field', async () => {
    const field = { text: 'abcdefghij', cursor: 10 };
    const screen = await openTestScreen(<TextField field={field} width={6} />);
    expect((await screen.lines())[0]).toBe('fghij');
    expect(await screen.cell(0, 5)).toMatchObject({ inverse: true });
    await screen.show(<TextField field={{ ...field, cursor: 0 }} width={6} />);
    expect((await screen.lines())[0]).toBe('abcdef');
    expect(await screen.cell(0, 0)).toMatchObject({ text: 'a', inverse: true });
  });

  it('shows what would otherwise be invisible', async () => {
    const screen = await openTestScreen(<TextField field={textField('a\u200bb')} width={20} />);
    expect((await screen.lines())[0]).toBe('a‹U+200B›b');
  });
});
