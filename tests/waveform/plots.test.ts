import { describe, expect, test } from 'vitest';
import { generateWheels } from '../../src/waveform/generate.ts';
import { measureCapture } from '../../src/waveform/measure-phase.ts';
import { spanLeastOf } from '../../src/waveform/plot-range.ts';
import { plotSvg } from '../../src/waveform/plot-svg.ts';
import { plotText } from '../../src/waveform/plot-text.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import fc from '../seeded-check.ts';

const capture = generateWheels([{ name: 'signal', teeth: 4, sensor: 'hall', low: 0, high: 5 }], {
  rateHz: 1000,
  seconds: 0.1,
  rpm: 600,
  random: seededRandom(1),
});
const [channel] = capture.channels;

describe('text plots', () => {
  test('the noise of a flat line is as small as it is where the axis is told to cover more', () => {
    const samples = Float32Array.from({ length: 400 }, (_, i) => 4.9 + 0.01 * Math.sin(i));
    const flat = { name: 'flat', unit: 'V', samples } as const;
    const rows = (spanLeast: number) =>
      plotText(flat, { width: 40, rows: 5, ascii: true, rateHz: 1000, spanLeast })
        .slice(1, 6)
        .filter((line) => /[#*]/.test(line.slice(line.indexOf('|') + 1)));
    expect(rows(0).length).toBeGreaterThan(3);
    expect(rows(2)).toHaveLength(1);
  });

  test('a square wave in ASCII, with levels, edges, axes and units', () => {
    const lines = plotText(channel!, {
      width: 40,
      rows: 4,
      ascii: true,
      rateHz: 1000,
      levels: [
        { value: 5, name: 'high' },
        { value: 0, name: 'low' },
      ],
      marks: [0.0125, 0.025],
    });
    // By hand: four teeth in 30 columns, each 7.5 wide, the first half of it high; edges after 3.75 and 7.5 columns.
    expect(lines).toEqual([
      'signal',
      'high 5 V |#***#---#**#---#***#---#**#---',
      '         |#   #   #  #   #   #   #  #',
      '         |#   #  ##  #   #   #  ##  #',
      ' low 0 V |----#**#---#***#---#**#---#***',
      '             ^   ^',
      '         +------------------------------',
      '          0 s         50 ms       100 ms',
    ]);
  });
  test('a flat line, one sample and no sample are drawn', () => {
    const flat = { name: 'flat', unit: 'V', samples: new Float32Array(100).fill(5) } as const;
    expect(plotText(flat, { width: 40, ascii: true, rateHz: 100 }).join('\n')).toMatch(/\*{25,}/);
    const one = { ...flat, samples: Float32Array.of(5) };
    expect(plotText(one, { width: 40, ascii: true, rateHz: 100 }).length).toBeGreaterThan(5);
    const none = { ...flat, samples: new Float32Array(0) };
    expect(plotText(none, { width: 40, rateHz: 100 })).toEqual(['flat: nothing to draw']);
  });
  test('no line is wider than asked, whatever the capture', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 200 }),
        fc.integer({ min: 2, max: 20 }),
        fc.boolean(),
        fc.array(fc.float({ min: -1000, max: 1000, noNaN: true }), {
          minLength: 1,
          maxLength: 500,
        }),
        (width, rows, ascii, values) => {
          const samples = Float32Array.from(values);
          const named = { name: 'n'.repeat(300), unit: 'V', samples } as const;
          const lines = plotText(named, {
            width,
            rows,
            ascii,
            rateHz: 100,
            levels: [{ value: 0, name: 'zero' }],
            marks: [0.1],
          });
          for (const line of lines) expect([...line].length).toBeLessThanOrEqual(width);
          if (ascii) for (const line of lines) expect(line).toMatch(/^[\x20-\x7e]*$/);
        },
      ),
    );
  });
  test('a spike of one sample in a million is seen', () => {
    const samples = new Float32Array(1_000_000);
    samples[700_000] = 5;
    const lines = plotText(
      { name: 'a', unit: 'V', samples },
      { width: 60, ascii: true, rateHz: 1e6 },
    );
    expect(lines[1]).toMatch(/^ *5 V \| *[*#]$/);
    expect(lines[1]!.search(/[*#]/)).toBeGreaterThan(40);
  });
});

describe('pictures', () => {
  const svg = plotSvg(capture, {
    title: 'a <b> & "c"\u0000',
    levels: [[{ value: 5, name: 'high' }]],
    marks: [[0.0125]],
  });
  test('names are escaped and every element is closed', () => {
    expect(svg).toContain('<title>a &lt;b&gt; &amp; &quot;c&quot;?</title>');
    const open: string[] = [];
    for (const [, slash, name, self] of svg.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
      if (slash) expect(open.pop()).toBe(name);
      else if (!self) open.push(name!);
    }
    expect(open).toEqual([]);
  });
  test('level, edge, curve and times are there, and no number is broken', () => {
    expect(svg).toMatch(/class="l"/);
    expect(svg).toMatch(/class="m"/);
    expect(svg).toMatch(/class="c" d="M90 /);
    expect(svg).toContain('>100 ms</text>');
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
  });
  test('a flat line with the noise of a meter looks flat, beside a signal that fills its band', () => {
    // The bands are 150 high, the curve has 130 of them; the axis of the flat line covers 2 V, so 20 mV is 1.3.
    const flat = Float32Array.from({ length: 400 }, (_, i) => 4.9 + 0.01 * Math.sin(i));
    const wave = Float32Array.from({ length: 400 }, (_, i) => 2.5 + 2.5 * Math.sin(i / 20));
    const both = {
      rateHz: 1000,
      startSeconds: 0,
      channels: [flat, wave].map((samples, at) => ({ name: `${at}`, unit: 'V' as const, samples })),
    };
    const { channels } = measureCapture(both);
    const spansLeast = channels.map(({ unit, kind }) => spanLeastOf(unit, kind));
    const heights = (drawn: string) =>
      [...drawn.matchAll(/class="c" d="([^"]+)"/g)].map(([, curve]) => {
        const ys = [...curve!.matchAll(/ ([\d.]+)/g)].map(([, y]) => Number(y));
        return Math.max(...ys) - Math.min(...ys);
      });
    const [low, high] = heights(plotSvg(both, { title: 'both', spansLeast }));
    expect(low).toBeCloseTo(1.3, 0);
    expect(high).toBeCloseTo(130, 0);
    expect(heights(plotSvg(both, { title: 'both' }))[0]).toBeCloseTo(130, 0);
  });
  test('a channel that nobody judged shows a small signal, and flicker as flicker', () => {
    // From the flicker of a volts channel, 30 mV: ten times as much.
    expect(spanLeastOf('V', null)).toBeCloseTo(0.3);
    expect(spanLeastOf('V', 'alternating')).toBe(0);
    expect(spanLeastOf('A', 'steady')).toBe(0.02);
  });
  test('a million samples make a picture of a few thousand points', () => {
    const samples = Float32Array.from({ length: 1_000_000 }, (_, i) => Math.sin(i / 50));
    const large = {
      rateHz: 1e6,
      startSeconds: 0,
      channels: [{ name: 'a', unit: 'V', samples }],
    } as const;
    expect(plotSvg(large, { title: 'large' }).length).toBeLessThan(60_000);
  });
});
