import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { textField, textFieldAfter } from '../../../src/ui/parts/text-field-state.ts';
import { keyLabel } from '../../../src/ui/term/key-decoder.ts';
import { createKeyboard } from '../../../src/ui/term/keyboard.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
});

function listening(takes = false) {
  const keyboard = createKeyboard();
  const heard: string[] = [];
  keyboard.subscribe(
    (event) => heard.push(keyLabel(event)),
    () => takes,
  );
  const feed = (text: string) => keyboard.feed(new TextEncoder().encode(text));
  return { keyboard, heard, feed };
}

it('text too fast for a hand comes in pieces that keep their blanks', () => {
  const keyboard = createKeyboard();
  let text = '';
  const settled: (() => void)[] = [];
  keyboard.settleWith((done) => void settled.push(done));
  keyboard.subscribe(
    (event) => {
      if (event.kind === 'paste') expect(event.text).not.toBe('');
      text = textFieldAfter(textField(text), event).text;
    },
    () => true,
  );
  const typed = 'green lead, '.repeat(40);
  for (let from = 0; from < typed.length; from += 120) {
    keyboard.feed(new TextEncoder().encode(typed.slice(from, from + 120)));
    for (const done of settled.splice(0)) done();
  }
  while (settled.length > 0) for (const done of settled.splice(0)) done();
  expect(text).toBe(typed);
});

describe('the waiting time', () => {
  it('a lone escape is the Escape key after 50 ms, not before', () => {
    const { heard, feed } = listening();
    feed('\x1b');
    vi.advanceTimersByTime(49);
    expect(heard).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(heard).toEqual(['escape']);
  });

  it('an arrow key cut in two within that time is an arrow key', () => {
    const { heard, feed } = listening();
    feed('\x1b');
    vi.advanceTimersByTime(40);
    feed('[');
    vi.advanceTimersByTime(40);
    feed('A');
    vi.advanceTimersByTime(1000);
    expect(heard).toEqual(['up']);
  });

  it('a begun sequence waits 500 ms, a begun paste 2 s, each since its last byte', () => {
    const { heard, feed } = listening(true);
    feed('\x1b[1;');
    vi.advanceTimersByTime(499);
    feed('5P');
    feed('\x1b[200~a');
    vi.advanceTimersByTime(1999);
    feed('b');
    vi.advanceTimersByTime(1999);
    expect(heard).toEqual(['ctrl-f1']);
    vi.advanceTimersByTime(1);
    expect(heard).toEqual(['ctrl-f1', 'paste']);
  });
});

describe('delivery', () => {
  it('the next key waits until the last one has taken effect', async () => {
    const { keyboard, heard, feed } = listening();
    const pending: (() => void)[] = [];
    keyboard.settleWith((done) => pending.push(done));
    feed('abc');
    expect(heard).toEqual(['a']);
    pending.shift()?.();
    expect(heard).toEqual(['a', 'b']);
    pending.shift()?.();
    pending.shift()?.();
    expect(heard).toEqual(['a', 'b', 'c']);
    await keyboard.idle();
  });

  it('goes on when the screen that was waited for is gone', async () => {
    const { keyboard, heard, feed } = listening();
    keyboard.settleWith(() => {});
    feed('ab');
    keyboard.settleWith(null);
    await keyboard.idle();
    await new Promise((resolve) => setImmediate(resolve));
    expect(heard).toEqual(['a', 'b']);
  });

  it('every listener gets every key; one that left gets none', () => {
    const { keyboard, heard, feed } = listening();
    const other: string[] = [];
    const leave = keyboard.subscribe((event) => other.push(keyLabel(event)));
    feed('a');
    leave();
    feed('b');
    expect([heard, other]).toEqual([['a', 'b'], ['a']]);
  });

  it('muted, it lets only Ctrl+C through', () => {
    const { keyboard, heard, feed } = listening();
    keyboard.mute(true);
    feed('a\r\x1b[200~x\x1b[201~\x03');
    keyboard.mute(false);
    feed('b');
    expect(heard).toEqual(['ctrl-c', 'b']);
  });

  it('muted, it lets text through into a field, up to the first other key', () => {
    const { keyboard, heard, feed } = listening();
    const counts: number[] = [];
    keyboard.countUntakenWith((count) => counts.push(count));
    let takes = true;
    keyboard.subscribe(
      () => {},
      () => takes,
    );
    keyboard.mute(true);
    feed('ab\x7f\x1b[200~long\x1b[201~c\x1b[Ad\re');
    expect(heard).toEqual(['a', 'b', 'backspace', 'paste', 'c']);
    expect(counts.at(-1)).toBe(4);
    keyboard.mute(false);
    feed('f');
    expect(heard.at(-1)).toBe('f');
    expect(counts.at(-1)).toBe(0);
    takes = false;
    keyboard.mute(true);
    feed('g\x1b[200~long\x1b[201~');
    expect(counts.at(-1)).toBe(5);
    expect(heard.at(-1)).toBe('f');
  });

  it('far too many keys at once are counted, and told until one is taken again', () => {
    const keyboard = createKeyboard();
    const counts: number[] = [];
    keyboard.countUntakenWith((count) => counts.push(count));
    keyboard.feed(new TextEncoder().encode('x'.repeat(256 + 200)));
    expect(counts).toEqual([200]);
    keyboard.subscribe(() => {});
    return keyboard.idle().then(() => {
      keyboard.feed(new TextEncoder().encode('y'));
      expect(counts).toEqual([200, 0]);
    });
  });

  it('of a paste into a field ten thousand signs wait, and no more keys behind it than elsewhere', () => {
    const keyboard = createKeyboard();
    const counts: number[] = [];
    keyboard.countUntakenWith((count) => counts.push(count));
    keyboard.settleWith(() => {});
    keyboard.subscribe(
      () => {},
      () => true,
    );
    keyboard.feed(new TextEncoder().encode('x'));
    keyboard.feed(new TextEncoder().encode(`${'x'.repeat(10_000)}xx`));
    expect(counts).toEqual([2]);
    keyboard.feed(new TextEncoder().encode('\r\r'));
    expect(counts).toEqual([2, 4]);
  });

  it('a long unmarked paste into a field is one piece, and what follows it is not part of it', () => {
    const { keyboard, feed } = listening();
    const heard: string[] = [];
    keyboard.subscribe(
      (event) => heard.push(event.kind === 'paste' ? event.text : keyLabel(event)),
      () => true,
    );
    feed(`${'x'.repeat(64)}\rno\r`);
    expect(heard).toEqual(['x'.repeat(64), 'return', 'n', 'o', 'return']);
  });

  it('a marked paste where nothing takes text is counted, and told until a key is taken', () => {
    const { keyboard, heard, feed } = listening();
    const counts: number[] = [];
    keyboard.countUntakenWith((count) => counts.push(count));
    feed(`\x1b[200~${'語'.repeat(600)}\x1b[201~`);
    expect(heard).toEqual([]);
    expect(counts).toEqual([600]);
    feed('\r');
    expect(heard).toEqual(['return']);
    expect(counts).toEqual([600, 0]);
  });

  it('where nothing takes text, each sign is a key, however many come', () => {
    const { heard, feed } = listening();
    feed('j'.repeat(100));
    expect(heard).toEqual(Array(100).fill('j'));
  });

  it('what is intercepted reaches no listener; after close nothing does', () => {
    const { keyboard, heard, feed } = listening();
    keyboard.interceptWith((event) => keyLabel(event) === 'ctrl-z');
    feed('a\x1ab\x1b');
    keyboard.close();
    vi.advanceTimersByTime(1000);
    feed('c');
    expect(heard).toEqual(['a', 'b']);
  });

  it('a listener that throws does not take the next key with it', () => {
    const keyboard = createKeyboard();
    const heard: string[] = [];
    keyboard.subscribe((event) => {
      heard.push(keyLabel(event));
      if (heard.length === 1) throw new Error('first');
    });
    expect(() => keyboard.feed(Uint8Array.of(0x61, 0x62))).toThrow('first');
    keyboard.feed(Uint8Array.of(0x63));
    expect(heard).toEqual(['a', 'b', 'c']);
  });
});
