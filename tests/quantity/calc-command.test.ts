import { describe, expect, test } from 'vitest';
import { command } from '../../src/commands/calc.ts';

async function calc(positionals: string[], values: Record<string, string | boolean> = {}) {
  let out = '';
  let err = '';
  const io = {
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      err += text;
    },
    env: {},
    cwd: '.',
  };
  const code = await command.run({ positionals, values }, io);
  return { code, out, err };
}

describe('ohmward calc', () => {
  test.each<[string, string[], Record<string, string>, RegExp]>([
    // 0.5 mm2: 1/58/0.5 * 3 m = 0.1034 ohm solid; stranded 7 % more
    ['wire', ['wire'], { size: '0.5 mm2', length: '3 m' }, /resistance +0\.111 Ω/],
    // published: AWG 18 6.385 ohm per 1000 ft, so 20.95 mohm/m solid
    ['wire by gauge', ['wire'], { size: '18 awg', length: '1000 ft' }, /AWG 18\.0/],
    ['drop', ['drop'], { current: '10 A', length: '5 m', drop: '300 mV' }, /next size +4 mm²/],
    [
      'divider',
      ['divider'],
      { supply: '5 V', upper: '100k', meter: '10 M' },
      /with the meter +4\.9505 V/,
    ],
    ['speed', ['speed'], { teeth: '60', missing: '2', rpm: '800' }, /a counter shows +773\.3 Hz/],
    ['scope', ['scope'], { high: '5 V', rpm: '800', teeth: '60' }, /volts a division +1 V/],
    // by hand: 200 teeth a second, ten points each of a thousand: half a second over ten divisions
    [
      'scope, and how slow it may be',
      ['scope'],
      { high: '5 V', rpm: '200', teeth: '60' },
      /slowest for teeth +50 ms a division/,
    ],
    // published: 5.02 +/- 0.1304 V
    [
      'meter',
      ['meter'],
      {
        reading: '5.02 V',
        accuracy: '2 % + 3',
        range: '20 V',
        counts: '2000',
        from: '4.75',
        to: '5.25',
      },
      /4\.8896 to 5\.1504 V/,
    ],
    // by hand: 6.6 of 22.1 mV is 29.9 % of 3 m, 0.9 m
    [
      'place',
      ['place'],
      { here: '6.6 mV', there: '-15.5 mV', length: '3 m' },
      /place +0\.80? to 1 m from the end fed first\nmost likely +0\.90 m/,
    ],
    [
      'place that cannot be told',
      ['place'],
      { here: '0.2 mV', there: '0.3 mV', length: '3 m' },
      /cannot be located/,
    ],
    ['code', ['code', 'p0335'], {}, /crankshaft position sensor A.*\n.*\n.*0x0335/],
    ['vin', ['vin', '1ZZTESTSXAA000702'], {}, /check digit agrees/],
  ])('%s', async (_, positionals, values, words) => {
    const { code, out, err } = await calc(positionals, values);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(words);
    const json = JSON.parse((await calc(positionals, { ...values, json: true })).out);
    expect(json).toMatchObject({ schemaVersion: 1, sum: positionals[0] });
    expect((await calc(positionals, { ...values, ascii: true })).out).toMatch(/^[\x0a\x20-\x7e]+$/);
  });
  test.each<[string, string[], Record<string, string>, number, RegExp]>([
    [
      'volts for millivolts',
      ['place'],
      { here: '6.6', there: '15.5', length: '3' },
      2,
      /--here: no/,
    ],
    [
      'a joint beyond the end',
      ['place'],
      { here: '6 mV', there: '9 mV', length: '3', joints: '4 m' },
      2,
      /--joints lie/,
    ],
    ['no sum', [], {}, 2, /name a calculation[\s\S]*divider/],
    ['a mistyped sum', ['wyre'], {}, 2, /did you mean "wire"/],
    ['a name every object has', ['constructor'], {}, 2, /there is no calculation called/],
    ['a missing value', ['wire'], { size: '0.5 mm2' }, 2, /--length is missing/],
    ['another dimension', ['wire'], { size: '0.5 mm2', length: '3 V' }, 2, /asks for metres/],
    ['a size of nothing', ['wire'], { size: '0', length: '3 m' }, 2, /is not a wire size/],
    [
      'both ways at once',
      ['speed'],
      { teeth: '60', rpm: '800', frequency: '800' },
      2,
      /--rpm or --frequency/,
    ],
    ['half a tooth', ['speed'], { teeth: '2.5', rpm: '800' }, 2, /whole number/],
    ['a doubt', ['drop'], { current: '10 MA', length: '5', drop: '0.3' }, 2, /m is milli/],
    [
      'a reading beyond the range',
      ['meter'],
      { reading: '25 V', accuracy: '1 %', range: '20 V', counts: '2000' },
      2,
      /beyond the range/,
    ],
    [
      'accuracy in other words',
      ['meter'],
      { reading: '5 V', accuracy: 'good', range: '20 V', counts: '2000' },
      2,
      /not of the form/,
    ],
    [
      'a meter without resistance',
      ['divider'],
      { supply: '5', upper: '1k', meter: '0' },
      2,
      /above zero/,
    ],
  ])('%s is used wrongly', async (_, positionals, values, code, words) => {
    const done = await calc(positionals, values);
    expect(done).toMatchObject({ code, out: '' });
    expect(done.err).toMatch(words);
  });
  test.each([
    [['code', 'P03O5'], /zero and one as digits/],
    [['vin', '1ZZTESTS1AA000702'], /should be X/],
    [['vin', 'short'], /not used|17 signs/],
  ])('%s is wrong input, not wrong use', async (positionals, words) => {
    const done = await calc(positionals);
    expect(done).toMatchObject({ code: 1, err: '' });
    expect(done.out).toMatch(words);
  });
});
