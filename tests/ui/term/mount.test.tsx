import { Box } from 'ink';
import { useState } from 'react';
import { describe, expect, it } from 'vitest';
import { Frame } from '../../../src/ui/parts/frame.tsx';
import { Words } from '../../../src/ui/parts/safe-words.tsx';
import { TextField } from '../../../src/ui/parts/text-field.tsx';
import { textField, textFieldAfter } from '../../../src/ui/parts/text-field-state.ts';
import { TextQuestion } from '../../../src/ui/screens/text-question.tsx';
import { keyLabel } from '../../../src/ui/term/key-decoder.ts';
import { useKeys } from '../../../src/ui/term/use-keys.ts';
import { useSize } from '../../../src/ui/term/use-size.ts';
import { openTestScreen } from '../in-process.ts';

/** Asks for a reading, then another: the shape of the program's own prompt. */
function Prompt(props: { onTake: (text: string, label: string) => void; takesText?: boolean }) {
  const { onTake, takesText = false } = props;
  const [field, setField] = useState(textField());
  const [step, setStep] = useState(1);
  useKeys(
    (event) => {
      const label = keyLabel(event);
      if (label === 'return') {
        // Deliberately the plain value of this render, not an updater: the keyboard must make that safe.
        onTake(field.text, `step ${step}`);
        setField(textField());
        setStep(step + 1);
      } else setField(textFieldAfter(field, event));
    },
    { takesText },
  );
  return (
    <Frame title={`Step ${step}`} keys={[{ keys: ['return'], show: 'Enter', help: 'take it' }]}>
      <TextField field={field} width={20} />
    </Frame>
  );
}

function Broken(): never {
  throw new Error('broken part');
}

function Size() {
  const { columns, rows } = useSize();
  return (
    <Box flexDirection="column">
      {Array.from({ length: rows }, (_, row) => row).map((row) => (
        <Words key={row} width={columns}>
          {`${columns}x${rows} row ${row} `.padEnd(columns, '.')}
        </Words>
      ))}
    </Box>
  );
}

describe('keys on a mounted screen', () => {
  it('two readings and their Enters in one piece go to their own steps', async () => {
    const taken: string[] = [];
    const screen = await openTestScreen(
      <Prompt onTake={(text, step) => taken.push(`${step}: ${text}`)} />,
    );
    await screen.send('12.4\r0.31 V\r7');
    expect(taken).toEqual(['step 1: 12.4', 'step 2: 0.31 V']);
    const lines = await screen.lines();
    expect(lines[0]).toContain('Step 3');
    expect(lines[1]).toContain('│ 7');
  });

  it('none of 250 keys in one piece is lost, and React does not call it a loop', async () => {
    const taken: string[] = [];
    const screen = await openTestScreen(<Prompt onTake={(text) => taken.push(text)} />);
    const numbers = Array.from({ length: 50 }, (_, index) => String(1000 + index));
    await screen.send(numbers.map((number) => `${number}\r`).join(''));
    expect(taken).toEqual(numbers);
    expect(screen.crashes).toEqual([]);
  });

  it('Ctrl+F1, a mouse report and a colour reply leave the field empty', async () => {
    const screen = await openTestScreen(<Prompt onTake={() => {}} />);
    await screen.send('\x1b[1;5P\x1b[<0;10;5M\x1b]11;rgb:0/0/0\x07');
    expect((await screen.lines())[1]).toMatch(/^│ +│$/);
  });

  it('keys typed before anyone listens are kept for the first who does', async () => {
    const screen = await openTestScreen(<Words>wait</Words>);
    await screen.send('12');
    await screen.show(<Prompt onTake={() => {}} />);
    expect((await screen.lines())[1]).toContain('│ 12');
  });

  it('a pasted text with line ends becomes one line and is not taken', async () => {
    const taken: string[] = [];
    const screen = await openTestScreen(<Prompt takesText onTake={(text) => taken.push(text)} />);
    await screen.send('\x1b[200~12.4\r\n13\r\n\x1b[201~');
    expect(taken).toEqual([]);
    expect((await screen.lines())[1]).toContain('│ 12.4 13');
  });
});

describe('the frame on the terminal', () => {
  it.each([
    [80, 24],
    [60, 20],
    [60, 16],
    [132, 50],
  ])('%d x %d is filled but for the last row', async (columns, rows) => {
    const screen = await openTestScreen(<Size />, { columns, rows });
    const lines = await screen.lines();
    expect(lines.slice(0, -1)).toEqual(
      Array.from({ length: rows - 1 }, (_, row) =>
        `${columns}x${rows - 1} row ${row} `.padEnd(columns, '.'),
      ),
    );
    expect(lines.at(-1)).toBe('');
  });

  it('one changed line sends one line, and never a scrollback wipe', async () => {
    const screen = await openTestScreen(<Prompt onTake={() => {}} />);
    const before = screen.raw().length;
    await screen.send('5');
    const sent = screen.raw().slice(before);
    expect(sent.match(/\x1b\[\d+;1H/g)).toEqual(['\x1b[2;1H']);
    expect(sent.length).toBeLessThan(200);
    expect(screen.raw()).not.toContain('\x1b[3J');
  });

  it('a storm of resizes ends in a clean screen, with what was typed', async () => {
    const screen = await openTestScreen(<Prompt onTake={() => {}} />);
    await screen.send('12.4');
    for (let turn = 0; turn < 30; turn++)
      await screen.resize(60 + ((turn * 37) % 90), 16 + ((turn * 11) % 40));
    await screen.resize(70, 18);
    const fresh = await openTestScreen(<Prompt onTake={() => {}} />, { columns: 70, rows: 18 });
    await fresh.send('12.4');
    expect(await screen.text()).toBe(await fresh.text());
  });

  it('below 60 x 16 it asks for room, takes no blind key, and comes back as it was', async () => {
    const taken: string[] = [];
    const screen = await openTestScreen(<Prompt onTake={(text) => taken.push(text)} />);
    await screen.send('12.4');
    const whole = await screen.text();
    await screen.resize(40, 10);
    expect(await screen.text()).toContain('Please enlarge this window: 60 x');
    expect(await screen.text()).toContain('40 x 10');
    await screen.send('99\r');
    expect(taken).toEqual([]);
    expect((await screen.text()).replace(/\s+/g, ' ')).toContain('So far 3 keys were not taken.');
    await screen.resize(80, 24);
    expect(await screen.text()).toContain('! 3 keys were not taken. Any key continues.');
    await screen.send('\x1b[D\x1b[C');
    expect(await screen.text()).toBe(whole);
  });

  it('a paste where nothing takes text is told, and goes nowhere', async () => {
    const screen = await openTestScreen(<Prompt onTake={() => {}} />);
    await screen.send(`\x1b[200~${'x'.repeat(600)}\x1b[201~`);
    expect(await screen.text()).toContain('! 600 keys were not taken. Any key continues.');
  });

  it('text still goes into its field while nothing can be seen', async () => {
    const taken: string[] = [];
    const screen = await openTestScreen(
      <TextQuestion
        title="Note"
        question="What did you see?"
        message={null}
        onAnswer={(text) => taken.push(text)}
        onClose={() => taken.push('closed')}
      />,
    );
    const letters = 'abcdefghijklmnopqrstuvwxyz'.repeat(7).slice(0, 180);
    await screen.send(letters.slice(0, 20));
    await screen.resize(40, 10);
    expect((await screen.text()).replace(/\s+/g, ' ')).toContain('text still goes into its field');
    await screen.send(letters.slice(20, 160));
    await screen.send('\x1b');
    await screen.resize(80, 24);
    await screen.send(`${letters.slice(160)}\r`);
    expect(taken).toEqual([letters]);
  });

  it('one column by one row does not crash', async () => {
    const screen = await openTestScreen(<Prompt onTake={() => {}} />, { columns: 1, rows: 1 });
    await screen.resize(2, 2);
    expect(screen.crashes).toEqual([]);
  });

  it('an error while drawing reaches the terminal session, not a page of Ink', async () => {
    const screen = await openTestScreen(<Broken />);
    expect(screen.crashes).toEqual([new Error('broken part')]);
    expect(await screen.text()).not.toContain('broken part');
  });
});
