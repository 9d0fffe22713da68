import { describe, expect, it } from 'vitest';
import { createKeyDecoder, type KeyEvent, keyLabel } from '../../../src/ui/term/key-decoder.ts';
import { LONG } from '../../campaign.ts';
import fc from '../../seeded-check.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);

function decode(text: string | Uint8Array): KeyEvent[] {
  const decoder = createKeyDecoder();
  const bytes = typeof text === 'string' ? bytesOf(text) : text;
  return [...decoder.push(bytes), ...decoder.flush()];
}

/** Labels for keys, the pasted text in quotes for pastes. */
const labels = (text: string | Uint8Array) =>
  decode(text).map((event) =>
    event.kind === 'paste' ? JSON.stringify(event.text) : keyLabel(event),
  );

describe('keys', () => {
  it.each([
    // bytes                     keys; sequences from xterm's ctlseqs and the Linux console, from memory
    ['12.4\r', ['1', '2', '.', '4', 'return']],
    ['12.4\r\n7\n', ['1', '2', '.', '4', 'return', '7', 'return']],
    ['\r\r', ['return', 'return']],
    ['\x1b', ['escape']],
    ['\x1b\x1b', ['escape', 'escape']],
    ['\x1bx', ['alt-x']],
    ['\x1b\r', ['alt-return']],
    ['\x1b\x1b[A', ['alt-up']],
    ['\x1b[A\x1b[B\x1b[C\x1b[D', ['up', 'down', 'right', 'left']],
    ['\x1bOA\x1bOH\x1bOF', ['up', 'home', 'end']],
    ['\x1b[H\x1b[F\x1b[1~\x1b[4~', ['home', 'end', 'home', 'end']],
    ['\x1b[5~\x1b[6~\x1b[2~\x1b[3~', ['page-up', 'page-down', 'insert', 'delete']],
    ['\x7f\x08\t\x1b[Z', ['backspace', 'backspace', 'tab', 'shift-tab']],
    ['\x1bOP\x1b[15~\x1b[24~\x1b[[A\x1b[[E', ['f1', 'f5', 'f12', 'f1', 'f5']],
    ['\x1b[1;5P\x1b[1;2P\x1b[1;3A', ['ctrl-f1', 'f1', 'alt-up']],
    ['\x1b[3;5~', ['ctrl-delete']],
    ['\x03\x1a\x00\x1c', ['ctrl-c', 'ctrl-z', 'ctrl-space', 'ctrl-\\']],
    ['\x1bOM\x1bOq\x1bOn', ['return', '1', '.']],
    ['\x1b[13;2u\x1b[97;5u\x1b[27;5;99~', ['return', 'ctrl-a', 'ctrl-c']],
    ['Ωµ中😀 ', ['Ω', 'µ', '中', '😀', 'space']],
    // Not keys at all: focus, mouse, replies to questions nobody asked, unknown keys.
    ['\x1b[I\x1b[O\x1b[<0;10;5M\x1b[12;40R\x1b[?62;c', []],
    ['\x1b]11;rgb:ffff/ffff/ffff\x1b\\\x1b]11;x\x07\x1bP1$r0m\x1b\\a', ['a']],
    ['\x1b[25~\x1b[29~\x1b[57;999Xa', ['a']],
    ['\x1b[200~12.4\r\n13\r\x1b[201~x', ['"12.4\\n13\\n"', 'x']],
    ['\x1b[200~a\x1b[A\x1b\x1b[201~', ['"a\\u001b[A\\u001b"']],
    ['\x1b[200~half', ['"half"']],
    // Cut off in the middle.
    ['\x1b[', ['alt-[']],
    ['\x1bO', ['alt-O']],
    ['\x1b[1;', []],
    ['\x1b[\r', ['alt-[', 'return']],
    ['\x1b[1;\x1b[A', ['up']],
    ['\x1b]0;title\x1b[A', ['up']],
  ])('%j gives %j', (bytes, keys) => {
    expect(labels(bytes)).toEqual(keys);
  });

  it('shows a broken UTF-8 byte and goes on', () => {
    expect(labels(Uint8Array.of(0x61, 0xff, 0x62))).toEqual(['a', '\ufffd', 'b']);
  });

  it('tells what it waits for', () => {
    const waits = (text: string) => {
      const decoder = createKeyDecoder();
      decoder.push(bytesOf(text));
      return decoder.pending;
    };
    expect(['a', '\x1b', '\x1b[', '\x1b[1', '\x1b]', '\x1b]1', '\x1b[200~a'].map(waits)).toEqual([
      null,
      'escape',
      'escape',
      'sequence',
      'escape',
      'sequence',
      'paste',
    ]);
  });

  it('is at rest after a flush, whatever came before', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 40 }), (bytes) => {
        const decoder = createKeyDecoder();
        decoder.push(bytes);
        decoder.flush();
        expect(decoder.pending).toBeNull();
      }),
      { numRuns: 5_000 },
    );
  });

  it('keeps no more than 65,536 signs of a paste and stays bounded in an endless sequence', () => {
    const [paste] = decode(`\x1b[200~${'x'.repeat(200_000)}\x1b[201~`);
    expect(paste?.kind === 'paste' && paste.text.length).toBe(65_536);
    expect(labels(`\x1b[${'1;'.repeat(100_000)}Aa`)).toEqual(['a']);
  });
});

/** Bytes as a terminal, a bad line or a cat on the keyboard would send them. */
const piece = fc.oneof(
  fc.constantFrom(
    '\x1b',
    '\x1b[',
    '\x1bO',
    '\x1b[A',
    '\x1b[1;5P',
    '\x1b[200~',
    '\x1b[201~',
    '\x1b]11;x',
    '\x07',
  ),
  fc.constantFrom(
    '\x1b\\',
    '\x1bP',
    '12.4\r',
    '\r\n',
    'Ω',
    '😀',
    '\x1b[[',
    '\x1b[<0;1;1M',
    '\x18',
    '\x9b',
  ),
  fc.string({ maxLength: 3 }),
);
const traffic = fc.oneof(
  fc.array(piece, { maxLength: 12 }).map((parts) => bytesOf(parts.join(''))),
  fc.uint8Array({ maxLength: 40 }),
);

describe('chunks', () => {
  it('any cutting of any bytes gives the same events, and none of them throws', () => {
    fc.assert(
      fc.property(traffic, fc.array(fc.nat(1000), { maxLength: 8 }), (bytes, cuts) => {
        const whole = decode(bytes);
        const decoder = createKeyDecoder();
        const places = [...new Set(cuts.map((cut) => cut % (bytes.length + 1)))].sort(
          (a, b) => a - b,
        );
        const events: KeyEvent[] = [];
        let from = 0;
        for (const place of [...places, bytes.length]) {
          events.push(...decoder.push(bytes.subarray(from, place)));
          from = place;
        }
        events.push(...decoder.flush());
        expect(events).toEqual(whole);
      }),
      { numRuns: LONG ? 20_000 : 4_000 },
    );
  });

  it('a text event never carries a control code, and no paste keeps its end mark', () => {
    fc.assert(
      fc.property(traffic, (bytes) => {
        for (const event of decode(bytes)) {
          if (event.kind === 'paste') expect(event.text).not.toContain('\x1b[201~');
          else expect(event.text).not.toMatch(/\p{Cc}/u);
        }
      }),
      { numRuns: LONG ? 20_000 : 4_000 },
    );
  });
});
