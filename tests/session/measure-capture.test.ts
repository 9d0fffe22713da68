/** What is kept of a capture that was measured, and how it looks; every signal is drawn by hand. */
import { describe, expect, it } from 'vitest';
import type { SignalKnown } from '../../src/circuit/expected-signal.ts';
import { canonicalJson } from '../../src/log/canonical-json.ts';
import { capturedFindingWords, capturedPhaseWords } from '../../src/session/capture-words.ts';
import { isQuiet, lookOf, measureGiven } from '../../src/session/measure-capture.ts';
import type { Channel } from '../../src/waveform/capture.ts';
import fc from '../seeded-check.ts';
import { channel, fileOf, known, PULSES } from './drawn-capture.ts';
import { captureFlaw } from './event-flaw.ts';

function measured(channels: Channel | Channel[], of: SignalKnown | null = known(), judged = 0) {
  const found = measureGiven(fileOf([channels].flat()), of, judged);
  if (!found) throw new Error('no such channel');
  return found;
}
const numbersOf = (...given: Parameters<typeof measured>) => measured(...given).capture.measures;
const look = (...given: Parameters<typeof measured>) => lookOf(measured(...given));

/** 36 pitches of 20 samples a turn, of which the last has no tooth: 500 pitches a second. */
const CRANK = channel((i) => (i % 20 < 10 && i % 720 < 700 ? 5 : 0), 'V', 'crank');
/** Once in two turns, high from 180 to 380 samples after the crank's first gap: 9 to 19 pitches of 10 degrees. */
const CAM = channel((i) => (i % 1440 >= 900 && i % 1440 < 1100 ? 5 : 0), 'V', 'cam');
/** It stays at 5 V with a flicker of 10 mV to both sides. */
const FLICKER = channel((i) => (i % 2 ? 4.99 : 5.01));

describe('what is kept of a signal', () => {
  it('are the levels of a switched one, not its spikes', () => {
    const spike = channel((i) => (i === 1010 ? 6 : i % 100 < 25 ? 5 : 0));
    expect(numbersOf(spike)).toMatchObject({ kind: 'switched', low: 0, high: 5 });
  });

  it('is the mean of a flat line, twice', () => {
    // by hand: as often 4.99 V as 5.01 V
    expect(numbersOf(FLICKER)).toMatchObject({
      kind: 'steady',
      low: 5,
      high: 5,
      mean: 5,
      ac: 0.01,
    });
  });

  it('is the frequency of its teeth, not how many came in all', () => {
    // by hand: 10 000 samples a second, 20 for each pitch
    expect(numbersOf(CRANK).hertz).toBe(500);
  });

  it('is no duty and no frequency where it switched but once', () => {
    const once = channel((i) => (i < 2000 ? 0 : 5));
    expect(numbersOf(once)).toMatchObject({ kind: 'switched', hertz: null, duty: null });
  });

  it('is the speed where a gap shows the turns, though nothing is known of the wheel', () => {
    // by hand: a turn takes 720 samples, 72 ms; 60 / 0.072 = 833.33
    expect(numbersOf(CRANK, null).rpm).toBe(833.33);
    expect(numbersOf(CRANK, known({ ratio: 0.5 })).rpm).toBe(1666.7);
  });

  it('is no speed that nobody could say', () => {
    expect(numbersOf(CRANK, known({ ratio: 0 })).rpm).toBe(null);
    expect(numbersOf(PULSES, null).rpm).toBe(null);
    const tooth = channel((i) => (i < 2000 ? 0 : i < 2100 ? 5 : 0));
    const wheel = known({ measure: { wheel: { teeth: 60, missing: 2 } } });
    expect(numbersOf(tooth, wheel).rpm).toBe(null);
  });

  it('is a picture of each channel, around so many edges as can be made out', () => {
    const named = { ...PULSES, name: '\u001b[2Jsignal' };
    const { channels } = measured([named, channel(() => 1, 'A', 'other')]).capture;
    expect(channels.map(({ unit }) => unit)).toEqual(['V', 'A']);
    expect(channels[0]!.name).toMatch(/signal$/);
    expect(channels[0]!.name).not.toContain('\u001b');
    // by hand: of 40 pulses in 0.4 s, 40 edges make 20 of them
    for (const { seconds } of channels) expect(seconds).toBeCloseTo(0.2, 3);
    const few = channel((i) => (i % 1000 < 500 ? 5 : 0));
    expect(measured(few).capture.channels[0]).toMatchObject({ from: 0, seconds: 0.4 });
  });
});

describe('what is kept', () => {
  it('has channel names of 120 signs at most', () => {
    const long = channel((i) => (i % 100 < 25 ? 5 : 0), 'V', '\u{1F697}'.repeat(200));
    const { capture, lines } = measured([long, PULSES]);
    expect(capture.channels[0]!.name).toBe('\u{1F697}'.repeat(120));
    expect(lines[1]).toBe(`Judged channel: 1 of 2, ${'\u{1F697}'.repeat(120)}`);
  });

  it('is plain JSON that reads back the same and has its form, whatever was captured', () => {
    const everything = known({
      measure: { wheel: { teeth: 10, missing: 1 } },
      expected: {
        lowBelow: 1,
        highAbove: 4,
        wheel: { teeth: 10, missing: 1 },
        currents: { low: 0.007, high: 0.014 },
        beforeGap: 'negative',
        gapLevel: 'low',
      },
      ratio: 0,
    });
    const shapes: ((at: number, period: number) => number)[] = [
      (at, period) => (at % period < period / 2 ? 1 : 0),
      (at, period) => (at % period < period / 2 && at % (10 * period) < 9 * period ? 1 : 0),
      (at, period) => Math.sin((2 * Math.PI * at) / period),
      (at, period) => (at % (7 * period) < 2 ? 0 : at / 4000),
      (at, period) => Math.sin(at * at * period),
      () => 1,
    ];
    const signal = fc.record({
      shape: fc.constantFrom(...shapes),
      period: fc.integer({ min: 2, max: 200 }),
      // as much as a sample in single precision holds
      scale: fc.constantFrom(1e-44, 1e-6, 1, 5, 1e6, 3.4e38),
      unit: fc.constantFrom('V' as const, 'A' as const, '1' as const),
    });
    const length = fc.constantFrom(1, 2, 3, 40, 4000);
    const of = fc.constantFrom(null, known(), everything, { ...everything, isTravel: true });
    fc.assert(
      fc.property(
        fc.array(signal, { minLength: 1, maxLength: 3 }),
        length,
        of,
        (signals, n, it) => {
          const channels = signals.map(({ shape, period, scale, unit }, at) => ({
            name: `channel ${at + 1}`,
            unit,
            samples: Float32Array.from({ length: n }, (_, i) => scale * shape(i, period)),
          }));
          const { capture } = measured(channels, it);
          expect(JSON.parse(canonicalJson(capture))).toEqual(capture);
          expect(captureFlaw(capture)).toBeNull();
          expect(
            [...capturedFindingWords(capture), ...capturedPhaseWords(capture)].join(),
          ).not.toMatch(/NaN|OL|undefined/);
        },
      ),
    );
  });
});

describe('what is said of a capture', () => {
  it('of one channel: what it is, and that nothing is against it', () => {
    const { lines, capture } = measured(PULSES);
    expect(lines).toEqual([
      'a.csv: switched, 0 V and 5 V, 100 Hz, duty 25 %',
      'Nothing wrong with this signal.',
    ]);
    expect(Object.keys(capture)).not.toContain('channel');
    expect(Object.keys(capture)).not.toContain('phases');
  });

  it('of several: which was judged, and where one stands in the turn of the other', () => {
    // by hand: 9 and 19 pitches of 10 degrees after the tooth behind the gap
    const pair =
      'cam in 720° of crank, from the tooth after its gap: rises at 90.0°, falls at 190.0°';
    const { lines, capture } = measured([CRANK, CAM], known(), 1);
    expect(lines.slice(1)).toEqual([
      'Judged channel: 2 of 2, cam',
      'Nothing wrong with this signal.',
      pair,
    ]);
    const edge = (degrees: number, direction: string) =>
      // five turns of the crank at 10 000 samples a second, so two whole turns of the cam
      ({ degrees, direction, plusMinus: 0, seen: 2 });
    const phase = {
      reference: 1,
      channel: 2,
      cycleDegrees: 720,
      edges: [edge(90, 'rising'), edge(190, 'falling')],
    };
    expect(capture).toMatchObject({ channel: 2, findings: [] });
    expect(capture.phases).toEqual([phase]);
    expect(measured([CRANK, CAM]).capture).toMatchObject({ channel: 1, phases: [phase] });
  });

  it('what is known of the judged channel is not taken for another one’s', () => {
    // Even pulses show no turn but to who knows the teeth, so the other channel cannot be what turns are counted by.
    const of = known({ measure: { wheel: { teeth: 10, missing: 0 } } });
    const other = channel((i) => ((i + 50) % 100 < 25 ? 5 : 0), 'V', 'other');
    const { phases } = measured([other, PULSES], of, 1).capture;
    expect(phases).toMatchObject([{ channel: 1, reference: 2, cycleDegrees: 360 }]);
  });
});

describe('a flat line', () => {
  const quiet = known({ levels: { low: 2, high: 2.25 } });
  const said = (...given: Parameters<typeof measured>) => measured(...given).capture.findings;
  it('is nothing against a circuit in which nothing changes there', () => {
    expect(
      said(
        channel(() => 2),
        quiet,
      ),
    ).toEqual([]);
    expect(
      measured(
        channel(() => 2),
        quiet,
      ).lines.at(-1),
    ).toBe('Nothing wrong with this signal.');
    expect(said(channel(() => 2))).toHaveLength(1);
    expect(
      said(
        channel(() => 2),
        null,
      ),
    ).toHaveLength(1);
  });

  it('is looked for where it moves all the same', () => {
    const of = known({ levels: { low: 2, high: 2.25 }, expected: { lowBelow: 1, highAbove: 4 } });
    expect(
      said(
        channel((i) => (i % 100 < 25 ? 3 : 0)),
        of,
      ),
    ).toHaveLength(1);
  });

  it.each<[string, boolean, SignalKnown | null]>([
    // the healthy circuit moves by 0.25 V, by just the 0.5 V that count as moving, by more
    ['less than counts as moving', true, quiet],
    ['just what counts as moving', false, known({ levels: { low: 2, high: 2.5 } })],
    ['more than counts as moving', false, known()],
    ['nobody knows how much', false, null],
  ])('is expected where the healthy circuit moves by %s: %s', (_, expected, of) => {
    expect(isQuiet(of)).toBe(expected);
  });
});

describe('a look', () => {
  it('of a swing that just counts as moving is none of a flat line', () => {
    const swinging = (volts: number) => channel((i) => (i % 100 < 25 ? volts : 0));
    expect(look(swinging(0.5))).toBe('full');
    expect(look(swinging(0.25))).toBe('flat-low');
  });

  it('of a sweep is flat where it travels less than counts as moving', () => {
    const travel = (volts: number) => channel((i) => 4.25 + (volts * i) / 4000);
    const of = known({ isTravel: true });
    expect(look(travel(0.25), of)).toBe('flat-high');
    expect(look(travel(0.75), of)).toBe('full');
  });

  it('of a current is told by its pulses, whatever swing in volts counts as moving', () => {
    expect(look(channel((i) => (i % 100 < 25 ? 0.014 : 0.007), 'A'))).toBe('full');
    expect(look(channel(() => 0.007, 'A'))).toBe(null);
  });

  it('of a flat line is told by its volts where nothing is known', () => {
    expect(
      look(
        channel(() => 5),
        null,
      ),
    ).toBe('flat-high');
  });
});
