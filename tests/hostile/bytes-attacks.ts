/** Hostile captures and session logs: bytes that no instrument and no writer of ours would make. */
import { canonicalJson } from '../../src/log/canonical-json.ts';
import { sealEvent } from '../../src/log/event-line.ts';
import { sampleEvent } from '../log/events.ts';
import type { Kind } from './readers.ts';

interface BytesAttack {
  readonly kind: Kind;
  readonly what: string;
  readonly bytes: Uint8Array;
  /** Null: usable. */
  readonly code: string | null;
  readonly line: number | null;
}

const csv = (
  what: string,
  text: string | Uint8Array,
  code: string | null,
  line: number | null = null,
): BytesAttack => ({
  kind: 'csv',
  what,
  bytes: typeof text === 'string' ? Buffer.from(text) : text,
  code,
  line,
});
const rows = (count: number, row: (n: number) => string) =>
  Array.from({ length: count }, (_, n) => row(n)).join('\n');
const HEAD = 'time,signal (V)\n';

const CSV: readonly BytesAttack[] = [
  csv('a good capture', HEAD + rows(50, (n) => `${n / 1000},${n % 2}`), null),
  csv('nothing', '', 'no-data', 1),
  csv('only line feeds', '\n'.repeat(100_000), 'no-data', 1),
  csv('only words', 'one\ntwo\nthree\n', 'no-data', 1),
  csv('only zeros', '\0'.repeat(10_000), 'not-text', 1),
  csv('UTF-16', Buffer.from(`\ufeff${HEAD}0,1\n1,2\n`, 'utf16le'), 'not-text', 1),
  csv(
    'random bytes',
    Buffer.from(
      rows(500, (n) => String.fromCharCode(n % 256)),
      'latin1',
    ),
    'not-text',
    1,
  ),
  csv('a line of a million digits', `${HEAD}0,1\n1,${'1'.repeat(1_000_000)}\n`, 'line-too-long', 3),
  csv('a line of a million commas', `${HEAD}0,1\n1${','.repeat(1_000_000)}\n`, 'line-too-long', 3),
  csv('a heading of a million letters', `${'a'.repeat(1_000_000)}\n0,1\n1,2\n`, 'no-data', 1),
  csv(
    'a line of fifty thousand blanks in front',
    `${' '.repeat(50_000)}!\n${HEAD}${rows(50, (n) => `${n / 1000},${n % 2}`)}`,
    null,
  ),
  csv('one sample', `${HEAD}0,1\n`, 'too-few-samples', 2),
  csv('time that stands still', HEAD + rows(50, () => '0,1'), 'uneven-time'),
  csv('time that runs back', HEAD + rows(50, (n) => `${50 - n},1`), 'uneven-time'),
  csv('time that jumps', HEAD + rows(50, (n) => `${n < 25 ? n : n * 100},1`), 'uneven-time'),
  csv(
    'words among the numbers',
    HEAD + rows(50, (n) => `${n},${n > 5 ? 'x' : '1'}`),
    'unreadable-values',
    8,
  ),
  csv(
    'infinities',
    HEAD + rows(50, (n) => `${n},${n > 5 ? 'Infinity' : 1}`),
    'unreadable-values',
    8,
  ),
  csv('not numbers', HEAD + rows(50, (n) => `${n},${n > 5 ? 'NaN' : 1}`), 'unreadable-values', 8),
  csv(
    'numbers beyond all bounds',
    HEAD + rows(50, (n) => `${n},${n > 5 ? '1e999' : '1'}`),
    'unreadable-values',
    8,
  ),
  csv(
    'a signal of 3e38 V',
    HEAD + rows(50, (n) => `${n},${n % 2 ? '3e38' : '0'}`),
    'unreadable-values',
    3,
  ),
  csv('formulas', HEAD + rows(50, (n) => `${n},${n > 5 ? '=1+1' : '1'}`), 'unreadable-values', 8),
  csv(
    'escapes among the numbers',
    HEAD + rows(50, (n) => `${n},${n > 5 ? '\u001b[2J' : '1'}`),
    'unreadable-values',
    8,
  ),
  csv('a heading that clears the screen', `time,\u001b[2J (V)\n${rows(50, (n) => `${n},1`)}`, null),
  csv('a heading named __proto__', `time,__proto__\n${rows(50, (n) => `${n},1`)}`, null),
  csv(
    'commas that could be either',
    rows(50, (n) => `${n},${n}`),
    'comma-riddle',
    1,
  ),
  ...['e300', 'e-305'].map((power) =>
    csv(`times of 1${power} s`, HEAD + rows(50, (n) => `${n}${power},${n % 2}`), 'odd-rate', 2),
  ),
  csv('only a time column', `time\n${rows(50, String)}`, 'no-channel', 2),
  csv(
    '500 columns',
    `${rows(1, () => Array.from({ length: 500 }, (_, n) => `c${n}`).join(','))}\n${rows(20, (n) => Array.from({ length: 500 }, () => n).join(','))}`,
    null,
  ),
  csv('no line feed at all', `0 1 `.repeat(100_000), 'no-data', 1),
  csv(
    'half a character at the end',
    Buffer.concat([Buffer.from(HEAD + rows(50, (n) => `${n},1`)), Buffer.from([0x0a, 0xe2, 0x82])]),
    'unreadable-values',
  ),
];

function wavBytes(
  format: Partial<Record<'coding' | 'channels' | 'rate' | 'bits' | 'size' | 'data', number>>,
  samples = 400,
): Buffer {
  const bytes = Buffer.alloc(44 + samples);
  bytes.write('RIFF', 0, 'latin1');
  bytes.writeUInt32LE(36 + samples, 4);
  bytes.write('WAVEfmt ', 8, 'latin1');
  bytes.writeUInt32LE(format.size ?? 16, 16);
  bytes.writeUInt16LE(format.coding ?? 1, 20);
  bytes.writeUInt16LE(format.channels ?? 1, 22);
  bytes.writeUInt32LE(format.rate ?? 8000, 24);
  bytes.writeUInt16LE(format.bits ?? 16, 34);
  bytes.write('data', 36, 'latin1');
  bytes.writeUInt32LE(format.data ?? samples, 40);
  return bytes;
}

const wav = (what: string, bytes: Uint8Array, code: string | null): BytesAttack => ({
  kind: 'wav',
  what,
  bytes,
  code,
  line: code === null ? null : 1,
});

const WAV: readonly BytesAttack[] = [
  wav('a good sound file', wavBytes({}), null),
  wav('only its first twelve bytes', wavBytes({}).subarray(0, 12), 'bad-wav'),
  wav('an end in the format', wavBytes({}).subarray(0, 30), 'bad-wav'),
  wav('no samples', wavBytes({}, 0), 'too-few-samples'),
  wav('one sample', wavBytes({}, 2), 'too-few-samples'),
  wav('more samples announced than there are', wavBytes({ data: 0xffffffff }), null),
  wav('a format longer than the file', wavBytes({ size: 0xffffffff }), 'bad-wav'),
  wav('a format of no length', wavBytes({ size: 0 }), 'bad-wav'),
  wav('no channel', wavBytes({ channels: 0 }), 'wav-coding'),
  wav('65,535 channels', wavBytes({ channels: 65_535 }), 'too-few-samples'),
  wav('no rate', wavBytes({ rate: 0 }), 'wav-coding'),
  wav('no bits', wavBytes({ bits: 0 }), 'wav-coding'),
  wav('seven bits', wavBytes({ bits: 7 }), 'wav-coding'),
  wav('a compressed coding', wavBytes({ coding: 0x55 }), 'wav-coding'),
  wav('an extensible coding without its extension', wavBytes({ coding: 0xfffe }), 'wav-coding'),
  wav('floating point of 16 bits', wavBytes({ coding: 3 }), 'wav-coding'),
  wav(
    'pieces of no length',
    Buffer.concat([Buffer.from('RIFF\0\0\0\0WAVE'), Buffer.alloc(80_000)]),
    'bad-wav',
  ),
  wav('a signal of 3e38', floats([0, 3e38, 0, 3e38, 0, 3e38]), 'unreadable-values'),
  wav(
    'no numbers as samples',
    floats([Number.NaN, Number.POSITIVE_INFINITY, 1, -1e38]),
    'unreadable-values',
  ),
];

function floats(values: readonly number[]): Buffer {
  const bytes = wavBytes({ coding: 3, bits: 32 }, values.length * 4);
  for (const [at, value] of values.entries()) bytes.writeFloatLE(value, 44 + at * 4);
  return bytes;
}

/** Three good lines, and the third as an object to spoil. */
const LINES: string[] = [];
let prev: string | null = null;
for (let n = 0; n < 3; n += 1) {
  const sealed: { line: string; hash: string } = sealEvent(sampleEvent(n), n + 1, prev);
  LINES.push(sealed.line);
  prev = sealed.hash;
}
const third = () => JSON.parse(LINES[2]!) as Record<string, unknown>;

const log = (
  what: string,
  last: string | Uint8Array,
  code: string | null,
  line: number | null = 3,
): BytesAttack => ({
  kind: 'log',
  what,
  bytes: Buffer.concat([
    Buffer.from(`${LINES[0]}\n${LINES[1]}\n`),
    typeof last === 'string' ? Buffer.from(last) : last,
  ]),
  code,
  line,
});
/** The third line with these fields instead; canonical unless `raw`. */
const with3 = (fields: Record<string, unknown>) => `${canonicalJson({ ...third(), ...fields })}\n`;
const whole = (what: string, bytes: Uint8Array | string, code: string, line: number | null) => ({
  kind: 'log' as const,
  what,
  bytes: typeof bytes === 'string' ? Buffer.from(bytes) : bytes,
  code,
  line,
});

const LOG: readonly BytesAttack[] = [
  log('a good last line', `${LINES[2]}\n`, null, null),
  log('half a last line', LINES[2]!.slice(0, 40), 'torn-tail'),
  log('zeros for a last line', `${'\0'.repeat(700)}\n`, 'torn-tail'),
  log('an empty line', '\n', 'damaged'),
  log('no JSON', 'hello\n', 'damaged'),
  log('a list', '[1,2]\n', 'damaged'),
  log('null', 'null\n', 'damaged'),
  log('a number', '1e999\n', 'damaged'),
  log('a text', '"a"\n', 'damaged'),
  log('half a character', Buffer.from([0x22, 0xe2, 0x82, 0x22, 0x0a]), 'damaged'),
  log('a byte-order mark', `\ufeff${LINES[2]}\n`, 'damaged'),
  log('a carriage return', `${LINES[2]}\r\n`, 'damaged'),
  log('a blank behind', `${LINES[2]} \n`, 'damaged'),
  log('the same key twice', `${LINES[2]!.replace('{', '{"at":"x",')}\n`, 'damaged'),
  log(
    'a key __proto__',
    `${LINES[2]!.replace('{', '{"__proto__":{"polluted":true},')}\n`,
    'damaged',
  ),
  log('100,000 lists in each other', `${'['.repeat(100_000)}${']'.repeat(100_000)}\n`, 'damaged'),
  log(
    '200 groups in an event',
    `${LINES[2]!.replace('"id":2', `"id":${'{"a":'.repeat(200)}1${'}'.repeat(200)}`)}\n`,
    'damaged',
  ),
  log('another number', with3({ seq: 4 }), 'damaged'),
  log('no number', with3({ seq: '3' }), 'damaged'),
  log('a number with a fraction', with3({ seq: 3.5 }), 'damaged'),
  log('a huge number', with3({ seq: 1e300 }), 'damaged'),
  log('another link', with3({ prev: 'f'.repeat(64) }), 'damaged'),
  log('a link that is no hash', with3({ prev: 'nobody' }), 'damaged'),
  log('no type', with3({ type: '' }), 'damaged'),
  log('a type that is a group', with3({ type: {} }), 'damaged'),
  log('a day that is none', with3({ at: '2031-02-30T00:00:00Z' }), 'damaged'),
  log('a time without offset', with3({ at: '2031-02-03T00:00:00' }), 'damaged'),
  log('a time that passed backwards', with3({ elapsed: -1 }), 'damaged'),
  log('a lone surrogate', `${LINES[2]!.replace('"feed"', '"\\ud800"')}\n`, 'damaged'),
  log('the line before again', `${LINES[1]}\n`, 'damaged'),
  whole('nothing', '', 'torn-tail', 1),
  whole('only a line feed', '\n', 'damaged', 1),
  whole('only zeros', Buffer.alloc(5000), 'torn-tail', 1),
  whole('a beginning in the middle', `${LINES[1]}\n`, 'damaged', 1),
  whole('a first line of 5 MB without an end', 'x'.repeat(5_000_000), 'torn-tail', 1),
  whole('300,000 line feeds', '\n'.repeat(300_000), 'damaged', 1),
];

export const BYTES_ATTACKS: readonly BytesAttack[] = [...CSV, ...WAV, ...LOG];
