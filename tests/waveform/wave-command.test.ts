import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { command } from '../../src/commands/wave.ts';
import type { Capture } from '../../src/waveform/capture.ts';
import { generateSweep, generateWheels, type WheelSignal } from '../../src/waveform/generate.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { csvOfCapture } from '../../src/waveform/write-csv.ts';

const HALL: WheelSignal = {
  name: 'crank',
  teeth: 36,
  missing: 1,
  sensor: 'hall',
  low: 0.2,
  high: 5,
};
const CAM: WheelSignal = {
  name: 'cam',
  teeth: 4,
  missing: 1,
  sensor: 'hall',
  low: 0.2,
  high: 5,
  ratio: 0.5,
};
const TURNING = { rateHz: 20_000, seconds: 0.6, rpm: 900 };
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'ohmward-wave-'));
  const put = (name: string, capture: Capture) =>
    writeFileSync(join(folder, name), csvOfCapture(capture));
  const random = seededRandom(8);
  put('good.csv', generateWheels([HALL, CAM], { ...TURNING, random }));
  put('cam-first.csv', generateWheels([CAM, HALL], { ...TURNING, random }));
  put(
    'bad.csv',
    generateWheels(
      [
        { ...HALL, low: 1.8 },
        { ...CAM, atDegrees: 9 },
      ],
      { ...TURNING, random },
    ),
  );
  put(
    'pedal.csv',
    generateSweep({ rateHz: 1000, seconds: 2, closedVolts: 0.5, openVolts: 4.5, random }),
  );
  writeFileSync(join(folder, 'words.csv'), 'no numbers\n');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function wave(file: string | null, values: Record<string, string | boolean> = {}) {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => (out += text),
    err: (text: string) => (err += text),
    env: { COLUMNS: '80' },
    cwd: folder,
  };
  const code = await command.run(
    { positionals: file === null ? [] : [file], values },
    { ...io, out: (text) => void io.out(text), err: (text) => void io.err(text) },
  );
  return { code, out, err };
}

describe('ohmward wave', () => {
  test('plots, measures and judges within the width', async () => {
    const { code, out, err } = await wave('good.csv', {
      'low-below': '1.5 V',
      'high-above': '3.5',
      teeth: '36',
      missing: '1',
    });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/wheel +35 pulses in 36 pitches, 1 missing in the gap, 7 whole turns/);
    expect(out).toMatch(/speed +900 rpm/);
    expect(out).toMatch(/cam in 720° of crank/);
    expect(out).toMatch(/nothing wrong with these signals/);
    for (const line of out.split('\n').slice(0, 30))
      expect([...line].length).toBeLessThanOrEqual(80);
  });
  test('the differences to a good capture', async () => {
    const { code, out } = await wave('bad.csv', { against: 'good.csv', 'low-below': '1.5 V' });
    expect(code).toBe(0);
    expect(out).toMatch(/low level is 1\.8 V, the module needs less than 1\.5 V/);
    expect(out).toMatch(/low level is 1\.8 V instead of 0\.2 V/);
    expect(out).toMatch(/^good capture, crank$/m);
    expect(out).toMatch(/cam: 18\.\d crankshaft degrees early/); // by hand: 9 camshaft degrees
  });
  test('ASCII is ASCII', async () => {
    const { out } = await wave('bad.csv', { against: 'good.csv', ascii: true });
    expect(out).toMatch(/^[\x0a\x20-\x7e]+$/);
  });
  test('what is said of the signal is said of the first channel, or of the one that is named', async () => {
    const kinds = async (values: Record<string, string | boolean>) => {
      const said = { 'low-below': '0.1 V', json: true, ...values };
      const { channels, phases } = JSON.parse((await wave('cam-first.csv', said)).out);
      expect(phases).toHaveLength(1);
      return channels.map(({ findings }: { findings: { kind: string }[] }) =>
        findings.map(({ kind }) => kind),
      );
    };
    expect(await kinds({})).toEqual([['low-not-low'], []]);
    expect(await kinds({ channel: '2' })).toEqual([[], ['low-not-low']]);
    expect(await kinds({ channel: 'Crank' })).toEqual([[], ['low-not-low']]);
  });
  test('JSON is one document with SI values and findings', async () => {
    const { out } = await wave('bad.csv', {
      json: true,
      against: 'good.csv',
      'low-below': '1.5 V',
    });
    const document = JSON.parse(out);
    expect(document).toMatchObject({
      schemaVersion: 1,
      seconds: 0.6,
      channels: [
        {
          name: 'crank',
          kind: 'switched',
          wheel: { pulses: 35, pitches: 36 },
          findings: [
            {
              kind: 'low-not-low',
              limitVolts: 1.5,
              words: 'crank: the low level is 1.8 V, the module needs less than 1.5 V',
            },
          ],
        },
        { name: 'cam' },
      ],
      phases: [{ reference: 'crank', channel: 'cam' }],
    });
    expect(document.differences.map((it: { what: string }) => it.what)).toEqual(['low', 'phase']);
  });
  test('a sweep, and a picture of it', async () => {
    expect((await wave('pedal.csv')).out).toMatch(/reversals +1: 4\.5 V after 1 s/);
    expect((await wave('pedal.csv', { as: 'svg' })).out).toMatch(/^<svg [\s\S]*<\/svg>\n$/);
  });
  test.each<[string, string | null, Record<string, string | boolean>, number, RegExp]>([
    ['no file named', null, {}, 2, /name one capture file/],
    [
      'a file that is not there',
      'nope.csv',
      {},
      1,
      /nope\.csv:1:1: error\[cannot-read\] there is no such file/,
    ],
    ['a folder', '.', {}, 1, /not a file/],
    ['a file without numbers', 'words.csv', {}, 1, /no-data/],
    ['a bad good capture', 'good.csv', { against: 'nope.csv' }, 1, /no such file/],
    [
      'a channel that is not there',
      'good.csv',
      { channel: '3' },
      2,
      /no channel "3"; this capture has: 1 crank, 2 cam/,
    ],
    ['an unknown kind', 'good.csv', { kind: 'odd' }, 2, /--kind is one of/],
    ['a rate that is no frequency', 'good.csv', { rate: '5 V' }, 2, /asks for hertz/],
    ['more missing than teeth', 'good.csv', { teeth: '3', missing: '3' }, 2, /less than/],
    ['nothing to draw', 'good.csv', { from: '5' }, 2, /there is nothing between/],
  ])('%s', async (_, file, values, code, words) => {
    const done = await wave(file, values);
    expect(done.code).toBe(code);
    expect(done.err).toMatch(words);
    expect(done.out).toBe('');
  });
});
