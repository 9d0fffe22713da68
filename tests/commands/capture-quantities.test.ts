/**
 * Every quantity that a capture gives, from a CSV file through the whole program: hertz, per cent, rpm and the levels
 * of a signal in a session, again after the repair, in a test outside the tree, and of the channel that was chosen.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { generateWheels } from '../../src/waveform/generate.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { csvOfCapture } from '../../src/waveform/write-csv.ts';
import { eventsOf, makePlace, type Place, runProgram, sessionWithCaptures } from './program.ts';

const LEVELS = { sensor: 'hall', low: 0.2, high: 4.9 } as const;
/** 60 pitches, two teeth missing, as the circuit says; low on a tooth. */
const CRANK = { ...LEVELS, name: 'crank', teeth: 60, missing: 2, onTooth: 'low' } as const;
const CAM = { ...LEVELS, name: 'cam', teeth: 4, missing: 1, ratio: 0.5 } as const;

let place: Place;
beforeEach(() => {
  place = makePlace();
  writeFileSync(join(place.home, 'quantities.yaml'), QUANTITIES);
});
afterEach(() => place.remove());

function put(name: string, wheels: Parameters<typeof generateWheels>[0], rpm = 240): void {
  const random = seededRandom(3);
  const capture = generateWheels(wheels, { rateHz: 20_000, seconds: 1.2, rpm, random });
  writeFileSync(join(place.home, name), csvOfCapture(capture));
}

async function walk(lines: readonly string[]): Promise<string> {
  const all = ['yes', ...lines, 'pause'];
  return (
    await runProgram(
      place,
      ['run', 'quantities.yaml', '--no-sheet', '--plain'],
      `${all.join('\n')}\n`,
    )
  ).out;
}

const file = () => sessionWithCaptures(place);
const captured = (type?: string) =>
  eventsOf(file()).filter(
    (event) => event['capture'] !== undefined && (type === undefined || event.type === type),
  ) as unknown as (Record<string, unknown> & { capture: Record<string, unknown> })[];
/** Each is taken, and then the cautions of the next cranking are read. */
const ANSWERS = Array.from({ length: 7 }, () => ['capture crank.csv', 'yes', 'yes']).flat();

describe('from a file', () => {
  it('come hertz, duty, speed, both levels, the mean, and the picture', async () => {
    put('crank.csv', [CRANK]);
    const out = await walk(ANSWERS);
    expect(out).toContain('Conclusion: Nothing found');
    const values = captured('reading-recorded').map(({ step, value, unit }) => [step, value, unit]);
    // By hand. 60 pitches at 240 rpm: 240 Hz. Two of 60 low halves are missing: high for 50 + 100 / 60 = 51.67 %, and
    // the mean stands that share above 0.2 V: 0.2 + 0.5167 x 4.7 = 2.628 V.
    expect(values).toEqual([
      ['frequency', expect.closeTo(240, 0), 'Hz'],
      ['duty', expect.closeTo(51.67, 0), '%'],
      ['speed', expect.closeTo(240, 0), 'rpm'],
      ['low-level', expect.closeTo(0.2, 3), 'V'],
      ['high-level', expect.closeTo(4.9, 3), 'V'],
      ['mean', expect.closeTo(2.628, 1), 'V'],
    ]);
    for (const event of captured('reading-recorded'))
      expect(event).toMatchObject({ instrument: 'scope', judgement: null, outcome: 'good' });
    expect(captured('look-recorded')[0]).toMatchObject({ look: 'full' });
    expect((await runProgram(place, ['records', 'verify', file()])).code).toBe(0);
  });

  it.each([
    ['too slow a wheel', { ...CRANK }, 100, 0, 'frequency', 'slow'],
    ['a low level that is none', { ...CRANK, low: 1.8 }, 240, 3, 'low-level', 'high'],
    ['a high level that is none', { ...CRANK, high: 3 }, 240, 4, 'high-level', 'low'],
  ])('%s is found by its number', async (_, wheel, rpm, before, step, outcome) => {
    put('crank.csv', [CRANK]);
    put('bad.csv', [wheel], rpm);
    await walk([...ANSWERS.slice(0, 3 * before), 'capture bad.csv', 'yes']);
    expect(captured().at(-1)).toMatchObject({ step, outcome });
  });

  it('an AC value is the root mean square without the mean', async () => {
    writeFileSync(join(place.home, 'coil.yaml'), COIL);
    const coil = { name: 'coil', teeth: 36, sensor: 'inductive', low: 2.5, high: 4.5 } as const;
    put('coil.csv', [coil], 1000);
    const lines = ['yes', 'capture coil.csv', 'yes', 'pause'];
    await runProgram(place, ['run', 'coil.yaml', '--no-sheet', '--plain'], `${lines.join('\n')}\n`);
    // By hand: a sine of 2 V peak on 2.5 V: 2 / sqrt 2.
    expect(captured()[0]).toMatchObject({ value: expect.closeTo(Math.SQRT2, 2), unit: 'V' });
  });

  it('what a capture does not have is said and not made up', async () => {
    writeFileSync(join(place.home, 'flat.csv'), `t (s),a (V)\n${row(() => 4.9)}`);
    writeFileSync(
      join(place.home, 'bare.csv'),
      `t (s),a (A)\n${row((i) => (i % 40 < 20 ? 7 : 14))}`,
    );
    put('crank.csv', [CRANK]);
    expect(await walk(['capture flat.csv', 'no'])).toContain('this capture shows no frequency');
    const out = await walk([...ANSWERS.slice(0, 9), 'capture bare.csv', 'no']);
    expect(out).toContain('this capture is not in volts');
    expect(captured()).toHaveLength(3);
  });
});

describe('a capture with two channels', () => {
  const SWAPPED = ['capture both.csv'];

  it('is judged by the first, until another is chosen; the pair gives where the edges stand', async () => {
    put('both.csv', [CAM, CRANK]);
    const out = await walk([...SWAPPED, '2', 'yes']);
    expect(out).toContain('Judged channel: 1 of 2, cam');
    expect(out).toContain('number of another channel (1 cam, 2 crank)');
    expect(out).toContain('Judged channel: 2 of 2, crank');
    expect(captured()[0]).toMatchObject({
      value: expect.closeTo(240, 0),
      capture: {
        channel: 2,
        phases: [expect.objectContaining({ cycleDegrees: 720, channel: 1, reference: 2 })],
      },
    });
    const shown = (await runProgram(place, ['records', 'show', file()])).out;
    expect(shown).toContain('channel 2 of 2, crank');
    expect(shown).toContain('cam in 720° of crank');
    expect((await runProgram(place, ['records', 'verify', file()])).code).toBe(0);
  });

  it('is left with no word, and a channel that is not there is refused', async () => {
    put('both.csv', [CAM, CRANK]);
    const out = await walk([...SWAPPED, '3', '', ...SWAPPED, 'no']);
    expect(out).toContain('this capture has no channel 3; choose one from 1 to 2');
    expect(captured()).toEqual([]);
  });
});

describe('the list of captures', () => {
  it('is numbered, newest first, leads into folders and up again, and numbers beside it are refused', async () => {
    put('crank.csv', [CRANK]);
    mkdirSync(join(place.home, 'archive'));
    const out = await walk(['capture', '9', '2', '1', '1', 'yes']);
    expect(out).toContain(`Captures in ${place.home}\n   1  crank.csv  (`);
    expect(out).toContain('   2  archive/  (folder)');
    expect(out).toContain('There is no number 9 in this list.');
    expect(out).toContain(`Captures in ${join(place.home, 'archive')}`);
    expect(out).toContain('There are no captures here.');
    expect(captured()[0]).toMatchObject({ capture: { name: 'crank.csv' } });
  });

  it('is left with an empty line, takes a typed path, and begins where the last capture was', async () => {
    mkdirSync(join(place.home, 'stick'));
    put('stick/crank.csv', [CRANK]);
    const out = await walk([
      ...['capture', '', 'capture', 'stick/crank.csv', 'yes'],
      ...['yes', 'captures', '1', 'yes'],
    ]);
    expect(out).toContain('Nothing was measured.');
    expect(out).toContain(`Captures in ${join(place.home, 'stick')}\n`);
    expect(captured()).toHaveLength(2);
    expect((await runProgram(place, ['settings', 'captures'])).out.trim()).toBe(
      join(place.home, 'stick'),
    );
  });

  it('shows a name that would obey nothing but the person', async () => {
    put('\u001b[2J\u202e.csv', [CRANK]);
    const out = await walk(['capture', '']);
    expect(out).toContain('␛[2J‹U+202E›.csv');
    expect(out).not.toContain('\u001b[2J');
  });
});

describe('after the repair', () => {
  /** Concludes on a wheel whose tooth is missing. */
  async function conclude(): Promise<void> {
    put('crank.csv', [CRANK]);
    put('torn.csv', [{ ...CRANK, damaged: [{ tooth: 20, height: 0 }] }]);
    // It rests on that one picture, which is asked for again.
    const lines = ['yes', ...ANSWERS.slice(0, 18), 'capture torn.csv', 'yes', 'accept'];
    await runProgram(
      place,
      ['run', 'quantities.yaml', '--no-sheet', '--plain'],
      `${lines.join('\n')}\n`,
    );
    expect(captured('look-recorded')[0]).toMatchObject({ look: 'uneven' });
  }
  const retest = async (lines: readonly string[], bench: readonly string[] = []) =>
    await runProgram(place, ['retest', file(), ...bench], `${['yes', ...lines].join('\n')}\n`);

  it('captures are measured on the spot, kept, and stand beside those before it in the report', async () => {
    await conclude();
    put('after.csv', [CRANK], 250);
    const one = ['capture after.csv', 'yes'];
    const { code, out } = await retest([...one, 'yes', ...one, 'yes', ...one]);
    expect(out).toContain('Verdict: cured');
    expect(code).toBe(0);
    expect(captured('retest-recorded')).toHaveLength(3);
    expect(captured('retest-recorded').at(-1)).toMatchObject({
      step: 'picture',
      look: 'full',
      passed: true,
      capture: { name: 'after.csv', measures: { rpm: expect.closeTo(250, 0) } },
    });
    expect((await runProgram(place, ['records', 'verify', file()])).code).toBe(0);
    const shown = (await runProgram(place, ['records', 'show', file()])).out;
    expect(shown).toContain('The captures before and after the repair: Picture');
    expect(shown).toMatch(/\| speed \| 240(\.\d)? rpm \| 250(\.\d)? rpm \|/);
    expect(shown).toMatch(/wrong with the signal \| crank: tooth 20 is missing .* \| nothing \|/);
    const html = (await runProgram(place, ['records', 'export', file(), '--as', 'html'])).out;
    expect(html.match(/<svg class="capture"/g)).toHaveLength(10);
    const json = JSON.parse(
      (await runProgram(place, ['records', 'export', file(), '--as', 'json'])).out,
    );
    const schema = JSON.parse(readFileSync('docs/schema/record.schema.json', 'utf8')) as object;
    const fits = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    expect(fits(json), JSON.stringify(fits.errors)).toBe(true);
    expect(json.retest.rows.at(-1)).toMatchObject({
      capture: { name: 'after.csv' },
      captureBefore: { name: 'torn.csv' },
    });
    const forClass = ['records', 'export', file(), '--as', 'json', '--for', 'class'];
    expect((await runProgram(place, forClass)).out).not.toContain('after.csv');
  });

  it('the very capture from before the repair proves nothing', async () => {
    await conclude();
    const { out } = await retest(['capture crank.csv', 'yes', '300']);
    expect(out).toContain('the same file that was measured before the repair; capture it again');
    expect(captured('retest-recorded')).toEqual([]);
  });

  it('a simulated vehicle that was not repaired shows it in its capture', async () => {
    const all = Array.from({ length: 7 }, () => ['capture', 'yes', 'yes']).flat();
    const lines = ['yes', ...all.slice(0, -1), 'accept'];
    const bench = ['--bench', 'target.damaged', '--plain'];
    await runProgram(place, ['run', 'quantities.yaml', ...bench], `${lines.join('\n')}\n`);
    expect(captured()).toHaveLength(7);
    const taken = ['capture', 'yes', 'yes', 'capture', 'yes', 'yes', 'capture', 'yes'];
    const { out } = await retest(taken, ['--bench', 'target.damaged']);
    expect(out).toContain('Verdict: not cured');
    expect(captured('retest-recorded').at(-1)).toMatchObject({
      look: 'uneven',
      passed: false,
      capture: { from: 'bench' },
    });
  });
});

describe('a test outside the tree', () => {
  it('is answered by a capture, which is kept, ranked and reported', async () => {
    await runProgram(place, ['settings', 'instruments', 'scope,helper']);
    const bench = [
      'run',
      'hall-no-signal',
      '--bench',
      'target.damaged',
      '--vehicle',
      '7',
      '--plain',
    ];
    const before = ['yes', 'done', '1', 'yes', 'take', 'yes', 'take', 'yes'];
    const asked = (await runProgram(place, bench, `${[...before, 'next'].join('\n')}\n`)).out;
    const number = /^ {2}(\d) {2}Scope picture while cranking/m.exec(asked)?.[1];
    expect(number).toBeDefined();
    const lines = [...before, `do ${number}`, 'yes', 'capture', 'yes', 'pause'];
    const { out } = await runProgram(place, bench, `${lines.join('\n')}\n`);
    expect(out).toContain('A capture can answer this');
    expect(captured('test-recorded')[0]).toMatchObject({
      shown: { kind: 'look', look: 'uneven' },
      capture: { from: 'bench', measures: { kind: 'switched' } },
    });
    expect((await runProgram(place, ['records', 'verify', file()])).code).toBe(0);
    expect((await runProgram(place, ['records', 'show', file()])).out).toContain(
      'Scope picture while cranking',
    );
  });
});

function row(volts: (sample: number) => number): string {
  return Array.from({ length: 2000 }, (_, i) => `${(i / 1000).toFixed(4)},${volts(i)}\n`).join('');
}

const QUANTITIES = `
procedure: quantities
title: Every quantity of a capture
about: A test of captures.
circuit: hall-module-fed
start: frequency
steps:
  frequency:
    title: Frequency
    test: pattern
    state: cranking
    say: Measure the frequency of {module.signal}.
    why: It follows the speed.
    measure: { reading: { unit: Hz } }
    expect: 150 Hz .. 400 Hz
    outcomes:
      slow: { below: 150 Hz, words: too slow, go: bad }
      good: { from: 150 Hz, to: 400 Hz, words: as it cranks, go: duty }
      fast: { above: 400 Hz, words: too fast, go: bad }
  duty:
    title: Duty
    test: pattern
    state: cranking
    say: Measure the duty.
    why: Teeth and gaps are alike.
    measure: { reading: { unit: "%" } }
    expect: 45 % .. 60 %
    outcomes:
      low: { below: 45 %, words: too low, go: bad }
      good: { from: 45 %, to: 60 %, words: even, go: speed }
      high: { above: 60 %, words: too high, go: bad }
  speed:
    title: Speed
    test: pattern
    state: cranking
    say: Measure the speed.
    why: The engine must crank.
    measure: { reading: { unit: rpm } }
    expect: 150 rpm .. 400 rpm
    outcomes:
      low: { below: 150 rpm, words: too slow, go: bad }
      good: { from: 150 rpm, to: 400 rpm, words: it cranks, go: low-level }
      high: { above: 400 rpm, words: too fast, go: bad }
  low-level:
    title: Low level
    test: pattern
    state: cranking
    say: Measure the low level.
    why: The sensor must pull down.
    measure: { reading: { unit: V, level: low } }
    expect: 0 V .. 0.8 V
    outcomes:
      good: { below: 0.8 V, words: pulls down, go: high-level }
      high: { above: 0.8 V, words: does not pull down, go: bad }
  high-level:
    title: High level
    test: pattern
    state: cranking
    say: Measure the high level.
    why: The pull-up must pull up.
    measure: { reading: { unit: V, level: high } }
    expect: 4.5 V .. 5.5 V
    outcomes:
      low: { below: 4.5 V, words: too low, go: bad }
      good: { from: 4.5 V, words: pulls up, go: mean }
  mean:
    title: Mean
    test: pattern
    state: cranking
    say: Measure the mean.
    why: It toggles.
    measure: { volts: [module.signal, battery.negative] }
    expect: computed
    outcomes:
      low: { words: too low, go: bad }
      good: { words: in the middle, go: picture }
      high: { words: too high, go: bad }
  picture:
    title: Picture
    test: pattern
    state: cranking
    say: Look at the picture.
    why: Teeth may be missing.
    measure: { pattern: [module.signal, battery.negative] }
    outcomes:
      full: { words: full, go: fine }
      other: { looks: [weak, uneven, flat-high, flat-middle, flat-low], words: not full, go: bad }
  fine:
    title: Nothing found
    conclude: []
    say: Everything is right.
    repair: Nothing.
    retest: [picture]
  bad:
    title: The target
    conclude: [target.damaged]
    say: It is wrong.
    repair: Replace it.
    retest: [frequency, picture, mean]
`;

const COIL = `
procedure: coil
title: A coil
about: A test of captures.
start: ac
steps:
  ac:
    title: AC volts
    test: pattern
    state: running
    say: Measure the AC volts.
    why: They grow with speed.
    measure: { reading: { unit: V, level: ac } }
    outcomes:
      any: { below: 100 V, words: something, go: end }
      more: { above: 100 V, words: much, go: end }
  end:
    title: End
    conclude: []
    say: The end.
    repair: Nothing.
    retest: [ac]
`;
