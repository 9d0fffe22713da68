import { describe, expect, test } from 'vitest';
import { alignView } from '../../src/waveform/align-view.ts';
import { compareCaptures, phaseShift } from '../../src/waveform/compare-captures.ts';
import { generateSweep, generateWheels, type WheelSignal } from '../../src/waveform/generate.ts';
import { judgeChannel, type SignalExpected } from '../../src/waveform/judge-channel.ts';
import { measureChannel } from '../../src/waveform/measure-channel.ts';
import { measureCapture } from '../../src/waveform/measure-phase.ts';
import { patternLook } from '../../src/waveform/pattern-look.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';

const HALL: WheelSignal = {
  name: 'crank',
  teeth: 60,
  missing: 2,
  sensor: 'hall',
  low: 0.2,
  high: 5,
  noise: 0.02,
};
const COIL: WheelSignal = {
  name: 'crank',
  teeth: 60,
  missing: 2,
  sensor: 'inductive',
  low: 2.5,
  high: 5,
  noise: 0.01,
};
const CAM: WheelSignal = {
  name: 'cam',
  teeth: 4,
  missing: 1,
  sensor: 'hall',
  low: 0.2,
  high: 5,
  ratio: 0.5,
  atDegrees: 20,
};
const MODULE: SignalExpected = { lowBelow: 1.5, highAbove: 3.5, wheel: { teeth: 60, missing: 2 } };
const TURNING = { rateHz: 50_000, seconds: 0.8, rpm: 800 };

const capture = (
  wheels: readonly WheelSignal[],
  turning: Partial<typeof TURNING & { rpmEnd: number }> = {},
) => generateWheels(wheels, { ...TURNING, ...turning, random: seededRandom(4) });
const kinds = (wheel: WheelSignal, expected: SignalExpected, turning = {}) => {
  const { channels, rateHz } = capture([wheel], turning);
  const options = expected.wheel ? { wheel: expected.wheel } : {};
  return judgeChannel(measureChannel(channels[0]!, rateHz, options), expected).map((it) => it.kind);
};

describe('judgement', () => {
  test.each<[string, WheelSignal, SignalExpected, string[]]>([
    ['a good Hall signal', HALL, MODULE, []],
    ['a good coil', COIL, { ...MODULE, beforeGap: 'negative' }, []],
    ['stuck high', { ...HALL, low: 4.9, high: 4.9 }, MODULE, ['stuck-high']],
    ['stuck low', { ...HALL, low: 0.1, high: 0.1 }, MODULE, ['stuck-low']],
    ['stuck between the thresholds', { ...HALL, low: 2.5, high: 2.5 }, MODULE, ['stuck-between']],
    ['dead, nothing known of the module', { ...HALL, low: 2.5, high: 2.5 }, {}, ['dead']],
    ['low level lifted by a resistive ground', { ...HALL, low: 1.8 }, MODULE, ['low-not-low']],
    ['high level pulled down', { ...HALL, high: 3.2 }, MODULE, ['high-not-high']],
    ['noise', { ...HALL, noise: 0.5 }, MODULE, ['noisy']],
    [
      'a tooth broken off',
      { ...HALL, damaged: [{ tooth: 20, height: 0 }] },
      MODULE,
      ['missing-teeth'],
    ],
    ['a burr between two teeth', { ...HALL, extra: [20] }, MODULE, ['extra-pulses']],
    ['another wheel', { ...HALL, teeth: 36, missing: 1 }, MODULE, ['pattern']],
    ['one missing where two should be', { ...HALL, missing: 1 }, MODULE, ['pattern']],
    ['a coil with a wide gap', { ...COIL, strength: 0.04 }, MODULE, ['weak']],
    [
      'a coil with a low tooth',
      { ...COIL, damaged: [{ tooth: 20, height: 0.6 }] },
      MODULE,
      ['weak-teeth'],
    ],
    ['a coil at a wheel out of true', { ...COIL, runOut: 0.4 }, MODULE, ['run-out']],
    [
      'a coil with exchanged leads',
      { ...COIL, onTooth: 'low' },
      { ...MODULE, beforeGap: 'negative' },
      ['inverted'],
    ],
    ['rounded edges', { ...HALL, edgeSeconds: 2.2e-4 }, MODULE, ['slow-edges']],
    [
      'wrong currents',
      { ...HALL, sensor: 'current', low: 0.007, high: 0.01, noise: 0 },
      { currents: { low: 0.007, high: 0.014 } },
      ['currents'],
    ],
  ])('%s', (_, wheel, expected, outcome) => {
    expect(kinds(wheel, expected)).toEqual(outcome);
  });

  test('too few samples in a pulse are said, and nothing else', () => {
    expect(kinds(HALL, MODULE, { rateHz: 3200 })).toEqual(['coarse']);
    expect(kinds({ ...HALL, noise: 0 }, MODULE, { rateHz: 8 * 800 })).toEqual([]);
  });

  test('a switched signal the wrong way up', () => {
    const expected: SignalExpected = { ...MODULE, gapLevel: 'low' };
    expect(kinds(HALL, expected)).toEqual([]);
    expect(kinds({ ...HALL, onTooth: 'low' }, expected)).toEqual(['inverted']);
  });

  test.each<[string, WheelSignal, string]>([
    ['a good signal', HALL, 'full'],
    ['a lifted low level', { ...HALL, low: 1.8 }, 'weak'],
    ['a broken tooth', { ...HALL, damaged: [{ tooth: 20, height: 0 }] }, 'uneven'],
    ['stuck high', { ...HALL, low: 5 }, 'flat-high'],
    ['stuck between', { ...HALL, low: 2.5, high: 2.5 }, 'flat-middle'],
    ['stuck low', { ...HALL, high: 0.2 }, 'flat-low'],
  ])('%s answers a step as a look', (_, wheel, look) => {
    const { channels, rateHz } = capture([wheel]);
    const measures = measureChannel(channels[0]!, rateHz, { wheel: MODULE.wheel! });
    expect(patternLook(measures, judgeChannel(measures, MODULE), MODULE)).toBe(look);
  });

  test('a drop-out in one turn is told with its time and tooth', () => {
    const { channels, rateHz } = capture([HALL]);
    const { samples } = channels[0]!;
    // Turn 4 begins at 0.225 s; tooth 31 of it stands at 0.225 + 30 * 1.25 ms.
    const from = Math.round((0.225 + 30 * 0.00125 - 0.0002) * rateHz);
    samples.fill(0.2, from, from + Math.round(0.0009 * rateHz));
    const findings = judgeChannel(measureChannel(channels[0]!, rateHz), MODULE);
    expect(findings.map((it) => it.kind)).toEqual(['drop-out']);
    expect(findings).toEqual([
      { kind: 'drop-out', seconds: [expect.closeTo(0.2625, 3)], pitch: null },
    ]);
  });

  test('lost contact in a sweep is told with its voltage', () => {
    const sweep = generateSweep({
      rateHz: 1000,
      seconds: 4,
      closedVolts: 0.5,
      openVolts: 4.5,
      noise: 0.01,
      dropOuts: [{ at: 0.4, seconds: 0.02, volts: 0 }],
      random: seededRandom(2),
    });
    const findings = judgeChannel(measureChannel(sweep.channels[0]!, 1000));
    expect(findings).toEqual([
      {
        kind: 'contact-lost',
        unit: 'V',
        // by hand: at four tenths of two seconds up, from 0.5 + 0.4 * 4 V; there and back it passes twice
        places: [0.8, 3.2].map((seconds) => ({
          at: expect.closeTo(seconds, 1),
          seconds: expect.closeTo(0.02, 2),
          from: expect.closeTo(2.1, 1),
          to: expect.closeTo(0, 1),
        })),
      },
    ]);
  });

  test('a coil that was not captured in volts is not judged by volts', () => {
    const { channels, rateHz } = capture([{ ...COIL, strength: 0.04 }]);
    const inUnit = (unit: 'V' | '1') =>
      judgeChannel(measureChannel({ ...channels[0]!, unit }, rateHz), MODULE).map((it) => it.kind);
    expect(inUnit('V')).toEqual(['weak']);
    expect(inUnit('1')).toEqual([]);
  });

  test('numbers come with the limit they missed', () => {
    const found = (wheel: WheelSignal, expected: SignalExpected) => {
      const { channels, rateHz } = capture([wheel]);
      return judgeChannel(measureChannel(channels[0]!, rateHz, { wheel: MODULE.wheel! }), expected);
    };
    expect(found({ ...HALL, low: 1.8 }, MODULE)).toEqual([
      { kind: 'low-not-low', of: 'level', volts: expect.closeTo(1.8, 2), limitVolts: 1.5 },
    ]);
    expect(found({ ...HALL, damaged: [{ tooth: 20, height: 0 }] }, MODULE)).toEqual([
      { kind: 'missing-teeth', teeth: [expect.any(Number)], seen: 57, of: 58 },
    ]);
    expect(found({ ...HALL, teeth: 36, missing: 1 }, MODULE)).toEqual([
      {
        kind: 'pattern',
        found: { teeth: 36, missing: 1 },
        wanted: { teeth: 60, missing: 2 },
      },
    ]);
    expect(found({ ...COIL, runOut: 0.4 }, MODULE)).toEqual([
      { kind: 'run-out', share: expect.any(Number), limitShare: 0.3 },
    ]);
  });
});

describe('against a known-good capture', () => {
  const good = measureCapture(capture([HALL, CAM]));
  const differ = (wheels: readonly WheelSignal[], turning = {}) =>
    compareCaptures(measureCapture(capture(wheels, turning)), good).map(
      (it) => `${it.channel} ${it.what}`,
    );
  test('the same vehicle at another speed and another start does not differ', () => {
    expect(
      differ(
        [
          { ...HALL, atDegrees: 123 },
          { ...CAM, atDegrees: 20 + 61.5 },
        ],
        { rpm: 1500 },
      ),
    ).toEqual([]);
  });
  test.each<[string, readonly WheelSignal[], string[]]>([
    ['a lifted low level', [{ ...HALL, low: 1 }, CAM], ['crank low']],
    ['a weak high level', [{ ...HALL, high: 4 }, CAM], ['crank high']],
    ['wider teeth', [{ ...HALL, duty: 0.6 }, CAM], ['crank duty']],
    [
      'a signal the wrong way up',
      [{ ...HALL, onTooth: 'low' }, CAM],
      ['crank duty', 'crank polarity'],
    ],
    ['a broken tooth', [{ ...HALL, damaged: [{ tooth: 20, height: 0 }] }, CAM], ['crank pattern']],
    ['a dead channel', [HALL, { ...CAM, high: 0.2 }], ['cam kind']],
    ['a chain that jumped', [HALL, { ...CAM, atDegrees: 27 }], ['cam phase']],
    ['a channel less', [HALL], [' channels']],
  ])('%s', (_, wheels, outcome) => {
    expect(differ(wheels)).toEqual(outcome);
  });
  test('the shift is told in crankshaft degrees with its sign', () => {
    const late = measureCapture(capture([HALL, { ...CAM, atDegrees: 13 }]));
    // By hand: 7 camshaft degrees back are 14 crankshaft degrees later.
    expect(phaseShift(late.phases[0]!, good.phases[0]!)).toBeCloseTo(14, 0);
  });
  test('exchanged leads and a lower height of a coil', () => {
    const sound = measureCapture(capture([COIL]));
    const bad = measureCapture(capture([{ ...COIL, onTooth: 'low', strength: 0.5 }]));
    expect(compareCaptures(bad, sound).map((it) => it.what)).toEqual(['height', 'polarity']);
  });
  test('the good capture is laid over the same part of a turn at its own speed', () => {
    const fast = measureCapture(capture([{ ...HALL, atDegrees: 90 }], { rpm: 1600 }));
    const slow = measureCapture(capture([HALL]));
    const start = fast.channels[0]!.wheel!.starts[1]!;
    const view = alignView({ from: start + 0.001, to: start + 0.006 }, fast, slow);
    // By hand: half the speed, so twice the times behind a start of a turn.
    const origin = [...slow.channels[0]!.wheel!.starts].find(
      (it) => view.from - it < 0.01 && view.from >= it,
    );
    expect(view.from - origin!).toBeCloseTo(0.002, 4);
    expect(view.to - view.from).toBeCloseTo(0.01, 4);
  });
  test('a capture does not differ from itself', () => {
    expect(compareCaptures(good, good)).toEqual([]);
  });
});
