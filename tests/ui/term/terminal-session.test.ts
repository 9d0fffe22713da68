import { EventEmitter } from 'node:events';
import { afterEach, describe, expect, it } from 'vitest';
import { ScreenPainter } from '../../../src/ui/term/screen-painter.ts';
import { openTerminal, type TerminalSession } from '../../../src/ui/term/terminal-session.ts';

/** Streams that record; `rooms` false is a line too slow for what was written. */
function streams() {
  const written: string[] = [];
  const raw: boolean[] = [];
  const state = { room: true };
  const stdout = Object.assign(new EventEmitter(), {
    isTTY: true,
    columns: 80,
    rows: 24,
    write(text: string) {
      written.push(text);
      return state.room;
    },
  });
  const stdin = Object.assign(new EventEmitter(), {
    isTTY: true,
    setRawMode: (mode: boolean) => raw.push(mode),
    resume() {},
    pause() {},
  });
  return { written, raw, state, stdin, stdout };
}

const opened: TerminalSession[] = [];
afterEach(() => {
  for (const terminal of opened.splice(0)) terminal.close();
});

function open() {
  const fake = streams();
  const said: string[] = [];
  const ends: string[] = [];
  const terminal = openTerminal({
    stdin: fake.stdin as unknown as NodeJS.ReadStream,
    stdout: fake.stdout as unknown as NodeJS.WriteStream,
    stderr: { write: (text) => said.push(text) },
    farewell: () => 'Saved at x',
    onHangup: (cause) => ends.push(`duties ${cause}`),
    exit: (code) => ends.push(`exit ${code}`),
  });
  opened.push(terminal);
  return { ...fake, terminal, said, ends };
}

const eio = Object.assign(new Error('write EIO'), { code: 'EIO' });

describe('openTerminal', () => {
  it.each([
    ['a write error', ({ stdout }: ReturnType<typeof open>) => stdout.emit('error', eio)],
    ['a read error', ({ stdin }: ReturnType<typeof open>) => stdin.emit('error', eio)],
    ['the end of input', ({ stdin }: ReturnType<typeof open>) => stdin.emit('end')],
  ])(
    '%s is a hang-up: the duties are done, nothing more is written, exit 129',
    async (_, happen) => {
      const it = open();
      const before = it.written.length;
      happen(it);
      expect(it.ends).toEqual(['duties hangup', 'exit 129']);
      expect(it.written.length).toBe(before);
      expect(it.said).toEqual([]);
      expect(it.raw).toEqual([true, false]);
      expect(await it.terminal.closed).toBe('hangup');
    },
  );

  it('an error of a file elsewhere is a crash and not a hang-up', async () => {
    const it = open();
    it.terminal.crash(eio);
    expect(it.ends).toEqual(['duties crash', 'exit 70']);
    expect(it.said.join('')).toContain('write EIO');
    expect(it.said.join('')).toMatch(/\nSaved at x\n$/);
  });

  it('words of an error cannot command the terminal', () => {
    const it = open();
    it.terminal.crash('bad \x1b]0;owned\x07');
    expect(it.said.join('')).toContain('bad ␛]0;owned␇');
  });

  it('duties that fail do not keep the process alive', () => {
    const fake = streams();
    const ends: string[] = [];
    const terminal = openTerminal({
      stdin: fake.stdin as unknown as NodeJS.ReadStream,
      stdout: fake.stdout as unknown as NodeJS.WriteStream,
      stderr: { write: () => true },
      onHangup: () => {
        throw new Error('disk full');
      },
      exit: (code) => ends.push(`exit ${code}`),
    });
    expect(() => terminal.crash(new Error('first'))).toThrow('disk full');
    expect(ends).toEqual(['exit 70']);
  });

  it('closing twice restores once, and a late write error is no event', () => {
    const it = open();
    it.terminal.close();
    const count = it.written.length;
    it.terminal.close();
    it.stdout.emit('error', eio);
    expect(it.written.length).toBe(count);
    expect(it.ends).toEqual([]);
  });

  it('a frame that comes after leaving is not drawn', () => {
    const it = open();
    it.terminal.screen.write('early');
    it.terminal.close();
    it.terminal.screen.write('late');
    expect(it.written.join('')).toContain('early');
    expect(it.written.join('')).not.toContain('late');
  });

  it('leaves no handler on the process', () => {
    const names = [
      'exit',
      'uncaughtException',
      'unhandledRejection',
      'SIGINT',
      'SIGTERM',
      'SIGHUP',
      'SIGQUIT',
      'SIGBREAK',
      'SIGTSTP',
      'SIGCONT',
    ];
    const counts = () => names.map((name) => process.listenerCount(name));
    const before = counts();
    const it = open();
    expect(counts()).toEqual(before.map((count) => count + 1));
    it.terminal.close();
    expect(counts()).toEqual(before);
  });

  it('Ctrl+C ends the program while nobody listens, and is a key once somebody does', () => {
    const it = open();
    const heard: string[] = [];
    const stop = it.terminal.keyboard.subscribe((event) => heard.push(event.kind));
    it.stdin.emit('data', Buffer.from('\x03'));
    expect([heard, it.ends]).toEqual([['key'], []]);
    stop();
    it.stdin.emit('data', Buffer.from('\x03'));
    expect(it.ends).toEqual(['duties signal', 'exit 130']);
  });
});

describe('ScreenPainter', () => {
  it('on a slow line draws the newest frame when there is room, not each one', () => {
    const { written, state, stdout } = streams();
    const painter = new ScreenPainter(stdout as unknown as NodeJS.WriteStream);
    state.room = false;
    for (const frame of ['one', 'two', 'three']) painter.write(frame);
    expect(written).toHaveLength(1);
    state.room = true;
    stdout.emit('drain');
    expect(written).toHaveLength(2);
    expect(written[1]).toContain('three');
    expect(written.join('')).not.toContain('two');
  });

  it('silenced it writes nothing, and repaints all it missed', () => {
    const { written, stdout } = streams();
    const painter = new ScreenPainter(stdout as unknown as NodeJS.WriteStream);
    painter.silence(true);
    painter.write('a\nb');
    expect(written).toEqual([]);
    painter.silence(false);
    painter.repaint();
    expect(written.join('')).toMatch(/\x1b\[1;1Ha\x1b\[K\x1b\[2;1Hb\x1b\[K/);
  });

  it('after a resize clears and draws the very same frame in full', () => {
    const { written, stdout } = streams();
    const painter = new ScreenPainter(stdout as unknown as NodeJS.WriteStream);
    painter.write('a\nb');
    written.length = 0;
    painter.resized();
    expect(written.join('')).toContain('\x1b[2J');
    painter.write('a\nb');
    expect(written.join('')).toMatch(/\x1b\[1;1Ha\x1b\[K\x1b\[2;1Hb\x1b\[K/);
  });

  it('clears what a shorter frame leaves, and leaves the last row empty', () => {
    const { written, stdout } = streams();
    stdout.rows = 4;
    const painter = new ScreenPainter(stdout as unknown as NodeJS.WriteStream);
    painter.write('a\nb\nc\nd\ne');
    expect(written.join('')).not.toMatch(/[de]\x1b/);
    written.length = 0;
    painter.write('a');
    expect(written.join('')).toContain('\x1b[2;1H\x1b[K\x1b[3;1H\x1b[K');
  });
});
