import { describe, expect, test } from 'vitest';
import { generateWheels } from '../../src/waveform/generate.ts';
import { readWav } from '../../src/waveform/read-wav.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { csvOfCapture } from '../../src/waveform/write-csv.ts';
import { LONG } from '../campaign.ts';
import fc from '../seeded-check.ts';
import { readCsv } from './read-csv-text.ts';

const shown = (text: string, options = {}) => {
  const { capture, issues } = readCsv(text, options);
  if (!capture) return issues.map((issue) => `${issue.code}@${issue.at.line}`);
  return {
    rateHz: Math.round(capture.rateHz * 1e6) / 1e6,
    start: capture.startSeconds,
    channels: capture.channels.map(({ name, unit, samples }) => [
      name,
      unit,
      Array.from(samples, (value) => Math.round(value * 1e6) / 1e6),
    ]),
  };
};

describe('captures as text in their many forms', () => {
  const rows = [0.1, 4.9, 0.2, 5];
  test.each<[string, string, object, object]>([
    // what, text, options, outcome
    [
      'comma, heading with units',
      'Time (ms),CH1 (mV)\n0,100\n1,4900\n2,200\n3,5000\n',
      {},
      { rateHz: 1000, start: 0, channels: [['CH1', 'V', rows]] },
    ],
    [
      'the unit of the time alone, units behind the names',
      's,cam V,crank mV\n0,0.1,100\n0.001,4.9,4900\n0.002,0.2,200\n0.003,5,5000\n',
      {},
      {
        rateHz: 1000,
        start: 0,
        channels: [
          ['cam', 'V', rows],
          ['crank', 'V', rows],
        ],
      },
    ],
    [
      'milliseconds alone, and a name that ends with a letter',
      'ms,camshaft A\n0,0.1\n1,4.9\n2,0.2\n3,5\n',
      {},
      { rateHz: 1000, start: 0, channels: [['camshaft A', 'V', rows]] },
    ],
    [
      't alone',
      't,cam\n0,0.1\n0.001,4.9\n0.002,0.2\n0.003,5\n',
      {},
      { rateHz: 1000, start: 0, channels: [['cam', 'V', rows]] },
    ],
    [
      'semicolon, decimal comma',
      'Zeit;Signal\r\n0,000;0,1\r\n0,001;4,9\r\n0,002;0,2\r\n0,003;5\r\n',
      {},
      { rateHz: 1000, start: 0, channels: [['Signal', 'V', rows]] },
    ],
    [
      'tab, units row',
      't\tA\tB\ns\tV\tmA\n-0.001\t0.1\t7\n0\t4.9\t14\n0.001\t0.2\t7\n0.002\t5\t14\n',
      {},
      {
        rateHz: 1000,
        start: -0.001,
        channels: [
          ['A', 'V', rows],
          ['B', 'A', [0.007, 0.014, 0.007, 0.014]],
        ],
      },
    ],
    [
      'no heading, climbing first column',
      '0.5,0.1\n0.501,4.9\n0.502,0.2\n0.503,5\n',
      {},
      { rateHz: 1000, start: 0.5, channels: [['channel 2', 'V', rows]] },
    ],
    [
      'one column, rate told',
      '0.1\n4.9\n0.2\n5\n',
      { rateHz: 500 },
      { rateHz: 500, start: 0, channels: [['channel 1', 'V', rows]] },
    ],
    [
      'rate in the heading',
      '# Sample rate: 50 kHz\nsignal\n0.1\n4.9\n0.2\n5\n',
      {},
      { rateHz: 50000, start: 0, channels: [['signal', 'V', rows]] },
    ],
    [
      'interval in the heading',
      'Interval,2e-05\nA,B\n0.1,1\n4.9,1\n0.2,1\n5,1\n',
      {},
      {
        rateHz: 50000,
        start: 0,
        channels: [
          ['A', 'V', rows],
          ['B', 'V', [1, 1, 1, 1]],
        ],
      },
    ],
    [
      'decimal comma in a single column',
      'signal\n0,1\n4,9\n0,2\n5,0\n',
      { rateHz: 10 },
      { rateHz: 10, start: 0, channels: [['signal', 'V', rows]] },
    ],
    [
      'sample numbers are no channel',
      'index,volts\n0,0.1\n1,4.9\n2,0.2\n3,5\n',
      { rateHz: 10 },
      { rateHz: 10, start: 0, channels: [['volts', 'V', rows]] },
    ],
    [
      'quotes, blanks, exponents, byte-order mark',
      '\ufeff"time" , "CH 1"\n0e0 , 1e-1\n1E-3 , 4.9e0\n2e-3 , 0.2\n3e-3 , .5e+1\n',
      {},
      { rateHz: 1000, start: 0, channels: [['CH 1', 'V', rows]] },
    ],
    [
      'last line without its end',
      'time,a\n0,0.1\n1,4.9\n2,0.2\n3,5',
      {},
      { rateHz: 1, start: 0, channels: [['a', 'V', rows]] },
    ],
    [
      'separators at the end of lines',
      'time,a,\n0,0.1,\n1,4.9,\n2,0.2,\n3,5,\n',
      {},
      { rateHz: 1, start: 0, channels: [['a', 'V', rows]] },
    ],
    [
      'blank lines are passed over',
      'time,a\n\n0,0.1\n1,4.9\n\n2,0.2\n3,5\n\n',
      {},
      { rateHz: 1, start: 0, channels: [['a', 'V', rows]] },
    ],
  ])('%s', (_, text, options, outcome) => {
    expect(shown(text, options)).toEqual(outcome);
  });
  test('a line of tabs whose time is missing keeps its value, and every other its place', () => {
    const lines = Array.from({ length: 400 }, (_, k) => `${k === 7 ? '' : k / 1000}\t${k % 5}`);
    const { capture, issues } = readCsv(`Time (s)\tCH1 (V)\n${lines.join('\n')}\n`);
    expect(issues.map(({ code, severity }) => [code, severity])).toEqual([
      ['unreadable-values', 'warning'],
    ]);
    expect(capture?.rateHz).toBeCloseTo(1000);
    expect(Array.from(capture!.channels[0]!.samples)).toEqual(lines.map((_, k) => k % 5));
  });

  test.each<[string, string, string[]]>([
    ['nothing', '', ['no-data@1']],
    ['words only', 'hello\nworld\n', ['no-data@1']],
    ['a program', '\u0000\u0001\u0002', ['not-text@1']],
    ['no time and no rate', 'a,b\n1,2\n3,4\n', ['no-rate@2']],
    ...['1e999', '1e300 Hz', '1e-300'].map((rate): [string, string, string[]] => [
      `a sample rate of ${rate}`,
      `Sample rate: ${rate}\na,b\n1,2\n3,4\n`,
      ['odd-rate@3'],
    ]),
    ...['1e999', '1e-320', '1e300 s'].map((step): [string, string, string[]] => [
      `an interval of ${step}`,
      `Interval: ${step}\na,b\n1,2\n3,4\n`,
      ['odd-rate@3'],
    ]),
    ['a riddle of commas', '0,1\n4,9\n0,2\n', ['comma-riddle@1']],
    [
      'a jump in time',
      `time,a\n${Array.from({ length: 50 }, (_, i) => `${i < 30 ? i : i + 5},1`).join('\n')}\n`,
      ['uneven-time@32'],
    ],
    [
      'time running backwards',
      `time,a\n${Array.from({ length: 50 }, (_, i) => `${i === 30 ? 3 : i},1`).join('\n')}\n`,
      ['uneven-time@32'],
    ],
    ['a line without end', 'x'.repeat(200_000), ['no-data@1']],
    [
      'an endless number',
      `time,a\n${Array.from({ length: 80 }, (_, i) => `${i},1`).join('\n')}\n81,${'1'.repeat(20_000)}\n`,
      ['line-too-long@82'],
    ],
    ['a single sample', 'time,a\n0,1\n', ['too-few-samples@2']],
    ['a time column alone', 'time\n0\n1\n2\n', ['no-channel@2']],
    [
      'values that are words',
      `time,a\n0,1\n${Array.from({ length: 80 }, (_, i) => `${i + 1},${i % 4 === 0 ? 'bad' : 1}`).join('\n')}\n`,
      ['unreadable-values@3'],
    ],
  ])('refuses %s with the place', (_, text, outcome) => {
    expect(shown(text)).toEqual(outcome);
  });

  test('a few unreadable values repeat the one before and are told', () => {
    const text = `time,a\n${Array.from({ length: 300 }, (_, i) => `${i},${i === 150 ? 'OVER' : i}`).join('\n')}\n`;
    const { capture, issues } = readCsv(text);
    expect(issues).toMatchObject([
      { code: 'unreadable-values', severity: 'warning', at: { line: 152 } },
    ]);
    expect(capture?.channels[0]?.samples[150]).toBe(149);
  });

  test.each([
    ['volts', 'a', '1e39'],
    ['volts, within what a sample can hold', 'a', '3e38'],
    ['volts, below nothing', 'a', '-9.9e37'],
    ['kilovolts, that only become too many as volts', 'a (kV)', '1.1e7'],
  ])('a value beyond what any instrument shows is unreadable, in %s', (_, name, value) => {
    const text = `time,${name}\n${Array.from({ length: 300 }, (_, i) => `${i},${i === 150 ? value : 2}`).join('\n')}\n`;
    const { capture, issues } = readCsv(text);
    expect(issues).toMatchObject([{ code: 'unreadable-values', at: { line: 152 } }]);
    const { samples } = capture!.channels[0]!;
    expect(samples[150]).toBe(samples[149]);
  });

  test('a time column for each channel is read once', () => {
    const text = 'time (ms),a,time (ms),b\n0,1,0,5\n1,2,1,6\n2,3,2,7\n';
    expect(shown(text)).toMatchObject({
      rateHz: 1000,
      channels: [
        ['a', 'V', [1, 2, 3]],
        ['b', 'V', [5, 6, 7]],
      ],
    });
  });

  test('five channels give four and a word about it', () => {
    const { capture, issues } = readCsv('time,a,b,c,d,e\n0,1,2,3,4,5\n1,1,2,3,4,5\n2,1,2,3,4,5\n');
    expect(capture?.channels.map((it) => it.name)).toEqual(['a', 'b', 'c', 'd']);
    expect(issues.map((it) => it.code)).toEqual(['too-many-channels']);
  });

  test('times rounded by the logger are still even', () => {
    // 3 us steps written to 1 us near 10 s: steps of 3 only; written with 7 digits: steps of 0, 10 us.
    const coarse = Array.from(
      { length: 200 },
      (_, i) => `${(10 + i * 3e-6).toPrecision(7)},${i % 2}`,
    );
    expect(readCsv(`time,a\n${coarse.join('\n')}\n`).capture?.rateHz).toBeGreaterThan(3e5);
  });

  test('a capture reads back the same whatever the size of the pieces', () => {
    const wheel = { teeth: 12, missing: 1, sensor: 'hall', low: 0.2, high: 5, noise: 0.1 } as const;
    const random = seededRandom(3);
    const capture = generateWheels([wheel, wheel], {
      rateHz: 10_000,
      seconds: 0.03,
      rpm: 3000,
      random,
    });
    const text = csvOfCapture(capture);
    const whole = readCsv(text).capture;
    expect(whole?.rateHz).toBeCloseTo(10_000, 3);
    // Written to a tenth of a millivolt.
    for (const [at, { samples }] of capture.channels.entries())
      for (let i = 0; i < samples.length; i += 1)
        expect(Math.abs(whole!.channels[at]!.samples[i]! - samples[i]!)).toBeLessThan(5.1e-5);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (piece) => {
        expect(readCsv(text, {}, piece).capture).toEqual(whole);
      }),
      { numRuns: 30 },
    );
  });

  test('numbers are read to single precision in every notation', () => {
    const anyNumber = fc.double({ min: -1e9, max: 1e9, noNaN: true });
    fc.assert(
      fc.property(fc.array(anyNumber, { minLength: 3, maxLength: 20 }), (values) => {
        const text = `a;b\n${values.map((value) => `${value};1`).join('\n')}\n`;
        const read = readCsv(text, { rateHz: 1 }).capture?.channels[0]?.samples;
        expect(read).toHaveLength(values.length);
        // Sixteen digits or more are cut at fifteen: one unit of single precision at most.
        for (const [at, value] of values.entries())
          expect(Math.abs(read![at]! - value)).toBeLessThanOrEqual(
            Math.abs(value) * 1.2e-7 + 1e-44,
          );
      }),
      { numRuns: 500 },
    );
  });

  test('any bytes get an answer, never an exception', () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 400 }),
        fc.string({ unit: fc.constantFrom(...'0123456789.,;\t\n\r -e"ab#'), maxLength: 400 }),
        (bytes, text) => {
          for (const chunk of [bytes, new TextEncoder().encode(text)]) {
            const { capture, issues } = readCsv(new TextDecoder().decode(chunk), { rateHz: 1 });
            expect(capture !== null || issues.some((it) => it.severity === 'error')).toBe(true);
          }
        },
      ),
      { numRuns: LONG ? 20_000 : 500 },
    );
  });
});

describe('sound files', () => {
  const wav = (coding: number, bits: number, channels: number, data: Uint8Array, rate = 44_100) => {
    const bytes = new Uint8Array(44 + data.length);
    const view = new DataView(bytes.buffer);
    const put = (at: number, text: string) => bytes.set(new TextEncoder().encode(text), at);
    put(0, 'RIFF');
    view.setUint32(4, 36 + data.length, true);
    put(8, 'WAVEfmt ');
    view.setUint32(16, 16, true);
    view.setUint16(20, coding, true);
    view.setUint16(22, channels, true);
    view.setUint32(24, rate, true);
    view.setUint32(28, (rate * channels * bits) / 8, true);
    view.setUint16(32, (channels * bits) / 8, true);
    view.setUint16(34, bits, true);
    put(36, 'data');
    view.setUint32(40, data.length, true);
    bytes.set(data, 44);
    return bytes;
  };
  const of = (samples: Int16Array | Float32Array | Uint8Array) => new Uint8Array(samples.buffer);
  test.each<[string, Uint8Array, number[][]]>([
    [
      '16 bits, two channels',
      wav(1, 16, 2, of(Int16Array.of(0, 16384, -32768, 32767))),
      [
        [0, -1],
        [0.5, 32767 / 32768],
      ],
    ],
    ['8 bits', wav(1, 8, 1, Uint8Array.of(128, 0, 255)), [[0, -1, 127 / 128]]],
    ['24 bits', wav(1, 24, 1, Uint8Array.of(0, 0, 0x40, 0, 0, 0x80)), [[0.5, -1]]],
    ['floating point', wav(3, 32, 1, of(Float32Array.of(0.25, -0.75))), [[0.25, -0.75]]],
  ])('%s', (_, bytes, values) => {
    const { capture, issues } = readWav(bytes, { file: 'a.wav' });
    expect(issues).toEqual([]);
    expect(capture?.rateHz).toBe(44_100);
    expect(capture?.channels.map((it) => Array.from(it.samples))).toEqual(
      values.map((row) => row.map(Math.fround)),
    );
  });
  test('five channels give four and a word about it', () => {
    const { capture, issues } = readWav(wav(1, 8, 5, new Uint8Array(10).fill(128)), {
      file: 'a.wav',
    });
    expect(capture?.channels).toHaveLength(4);
    expect(issues.map(({ code }) => code)).toEqual(['too-many-channels']);
  });
  test('full scale turns fractions into volts', () => {
    const bytes = wav(1, 16, 1, of(Int16Array.of(16384, -16384)));
    const { capture } = readWav(bytes, { file: 'a.wav', fullScaleVolts: 20 });
    expect(capture?.channels[0]).toMatchObject({ unit: 'V', samples: Float32Array.of(10, -10) });
  });
  const padded = wav(1, 24, 1, new Uint8Array(16));
  new DataView(padded.buffer).setUint16(32, 4, true);
  test.each<[string, Uint8Array, string]>([
    ['compressed', wav(2, 4, 1, Uint8Array.of(1, 2, 3, 4)), 'wav-coding'],
    ['empty', wav(1, 16, 1, new Uint8Array(0)), 'too-few-samples'],
    ['cut off in its heading', wav(1, 16, 1, new Uint8Array(8)).slice(0, 20), 'bad-wav'],
    ['without channels', wav(1, 16, 0, new Uint8Array(8)), 'wav-coding'],
    ['24 bits in four bytes each, which no two programs read alike', padded, 'wav-coding'],
  ])('%s is refused', (_, bytes, code) => {
    expect(readWav(bytes, { file: 'a.wav' }).issues).toMatchObject([{ code }]);
  });
});
