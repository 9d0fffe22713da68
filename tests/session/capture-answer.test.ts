/** Captures drawn by hand as the answer of a step: what is measured, what it looks like, and what is refused. */
import { describe, expect, test } from 'vitest';
import type { SignalKnown } from '../../src/circuit/expected-signal.ts';
import { canonicalJson } from '../../src/log/canonical-json.ts';
import type { LookStep, MeasureStep } from '../../src/procedure/procedure.ts';
import { captureAnswer, takesCapture } from '../../src/session/capture-step.ts';
import type { CaptureMeasured } from '../../src/session/events.ts';
import { capturedWords } from '../../src/session/measure-capture.ts';
import type { Channel } from '../../src/waveform/capture.ts';
import { channel, fileOf, known, measure, PICTURE, PULSES } from './drawn-capture.ts';
import { TREE } from './sample-tree.ts';

function answer(
  step: LookStep | MeasureStep,
  channels: Channel[],
  of: SignalKnown | null = known(),
  name = 'a.csv',
) {
  return captureAnswer({ kind: 'step', step }, fileOf(channels, name), of);
}

const ALL = (['full', 'weak', 'uneven', 'flat-high', 'flat-middle', 'flat-low'] as const).map(
  (look) => ({ name: look, words: look, looks: [look], go: 'fine' }),
);

const lookOf = (...given: Parameters<typeof answer>) => {
  const { ok, ...rest } = answer(...given);
  return ok && 'command' in rest && rest.command.type === 'choose-outcome'
    ? rest.command.look
    : rest;
};

test('a capture answers looks at a pattern, and numbers that no probe takes', () => {
  expect(takesCapture(PICTURE)).toBe(true);
  expect(takesCapture({ ...PICTURE, probe: { kind: 'light', plus: 'a.b', minus: 'c.d' } })).toBe(
    false,
  );
  expect(['Hz', '%', 'rpm'].map((unit) => takesCapture(measure(unit as 'Hz')))).toEqual([
    true,
    true,
    true,
  ]);
  expect(takesCapture(measure('V'))).toBe(false);
  const volts = { kind: 'volts', plus: 'a.b', minus: 'c.d' } as const;
  const probed = { ...measure('V'), probe: volts };
  expect(takesCapture({ ...probed, setup: { ...probed.setup, target: 'still' } })).toBe(false);
  // Of a signal that moves a meter shows the mean, which a capture has too.
  expect(takesCapture({ ...probed, setup: { ...probed.setup, target: 'moving' } })).toBe(true);
  expect(takesCapture(TREE.steps['prepare']!)).toBe(false);
});

describe('a number', () => {
  // by hand: 100 periods a second, a quarter of each high
  test.each<['Hz' | '%', number]>([
    ['Hz', 100],
    ['%', 25],
  ])('in %s is the one measured', (unit, value) => {
    const found = answer(measure(unit), [PULSES]);
    expect(found).toMatchObject({
      ok: true,
      command: { type: 'record-reading', typed: `${value} ${unit}`, value },
      capture: { measures: { kind: 'switched', low: 0, high: 5, hertz: 100, duty: 25, rpm: null } },
    });
    expect(found.ok && found.lines.at(-1)).toBe(`Reading: ${value} ${unit}`);
    expect(found.ok && found.capture.measures.seconds).toBe(0.4);
  });

  test('in rpm takes the wheel, and the crankshaft from the wheel', () => {
    // by hand: 10 teeth at 100 Hz are 10 turns a second of the wheel; at half speed the crank makes 20
    const of = known({ measure: { wheel: { teeth: 10, missing: 0 } } });
    const rpm = (ratio: number | null) => {
      const found = answer(measure('rpm'), [PULSES], { ...of, ratio });
      return found.ok && found.command.type === 'record-reading' ? found.command.value : found;
    };
    expect(rpm(null)).toBeCloseTo(600, 6);
    expect(rpm(0.5)).toBeCloseTo(1200, 6);
  });

  test('is not taken by a step that asks for something else', () => {
    expect(answer(measure('V'), [PULSES])).toMatchObject({ ok: false });
    expect(answer(measure('Hz'), [])).toMatchObject({ ok: false });
  });
});

describe('a look', () => {
  test.each<[string, Channel, SignalKnown | null, string]>([
    ['pulses', PULSES, known(), 'full'],
    ['a line at 5 V', channel(() => 5), known(), 'flat-high'],
    ['a line at 0.1 V', channel(() => 0.1), known(), 'flat-low'],
    ['a line at 2.5 V', channel(() => 2.5), known(), 'flat-middle'],
    // 0.4 V of swing is under the 0.5 V that this circuit's line counts as flat
    ['a small swing', channel((i) => (i % 100 < 50 ? 0.4 : 0)), known(), 'flat-low'],
    ['pulses of which nothing is known', PULSES, null, 'full'],
    ['a slow sweep', channel((i) => 0.5 + i / 1000), known({ isTravel: true }), 'full'],
  ])('%s', (_, signal, of, look) => {
    expect(lookOf({ ...PICTURE, outcomes: ALL }, [signal], of)).toBe(look);
  });

  test('chooses the outcome that holds it, and says so', () => {
    const found = answer(PICTURE, [channel(() => 5)]);
    expect(found).toMatchObject({
      ok: true,
      command: { type: 'choose-outcome', outcome: 'none', look: 'flat-high' },
      capture: { measures: { kind: 'steady', low: 5, high: 5, hertz: null, duty: null } },
    });
    expect(found.ok && found.lines.at(-1)).toMatch(/^Looks like: /);
  });
});

test('a long name is cut between signs, so that it can be saved', () => {
  const found = answer(PICTURE, [PULSES], known(), `${'a'.repeat(119)}\u{1F697}\u{1F697}.csv`);
  const name = found.ok ? found.capture.name : null;
  expect(name).toBe(`${'a'.repeat(119)}\u{1F697}`);
  expect(() => canonicalJson({ name })).not.toThrow();
});

describe('a capture of a travel', () => {
  const kindOf = (signal: Channel) => {
    const found = answer({ ...PICTURE, outcomes: ALL }, [signal], known({ isTravel: true }));
    return found.ok && found.capture.measures;
  };
  test('is a sweep however it looks, unless it does not move', () => {
    expect(kindOf(channel((i) => 0.5 + i / 1000))).toMatchObject({ kind: 'sweep', low: 0.5 });
    expect(kindOf(PULSES)).toMatchObject({ kind: 'sweep' });
    expect(kindOf(channel(() => 2))).toMatchObject({ kind: 'steady', low: 2, high: 2 });
  });
});

describe('a coil', () => {
  const wave = (volts: number) => channel((i) => volts * Math.sin((2 * Math.PI * i) / 100));
  const look = (volts: number) => lookOf({ ...PICTURE, outcomes: ALL }, [wave(volts)]);
  test('that swings less than the circuit counts as moving is flat, from peak to peak', () => {
    expect(look(2)).toBe('full');
    expect(look(0.3)).toBe('full'); // 0.6 V from peak to peak
    expect(look(0.2)).toBe('flat-low'); // 0.4 V
  });
  test('is told by its peaks', () => {
    const found = answer({ ...PICTURE, outcomes: ALL }, [wave(2)]);
    expect(found.ok && found.capture.measures).toMatchObject({
      kind: 'alternating',
      low: expect.closeTo(-2, 2),
      high: expect.closeTo(2, 2),
      hertz: 100,
      duty: null,
    });
  });
});

describe('findings', () => {
  test('stand in the lines in place of the all-clear', () => {
    const of = known({ expected: { lowBelow: 1, highAbove: 4 } });
    const found = answer(
      { ...PICTURE, outcomes: ALL },
      [channel((i) => (i % 100 < 25 ? 3 : 0))],
      of,
    );
    if (!found.ok) throw new Error(found.words);
    // by hand: 3 V where the module needs 4
    expect(found.capture.findings).toEqual([
      { kind: 'high-not-high', of: 'level', volts: 3, limitVolts: 4 },
    ]);
    expect(found.lines.slice(1, -1)).toEqual([
      'signal: the high level is 3 V, the module needs more than 4 V',
    ]);
    expect(found.command).toMatchObject({ look: 'weak' });
  });
});

describe('what is kept of a capture', () => {
  test('its name without signs that move the cursor, at most 120 of them', () => {
    const name = `\u001b[2J${'n'.repeat(200)}`;
    const found = captureAnswer(
      { kind: 'step', step: PICTURE },
      { ...fileOf([PULSES], name), sha256: 'f'.repeat(64), from: 'bench' },
      known(),
    );
    if (!found.ok) throw new Error(found.words);
    expect(found.capture).toMatchObject({ sha256: 'f'.repeat(64), from: 'bench' });
    expect(found.capture.name).not.toMatch(/\u001b/);
    expect(found.capture.name).toHaveLength(120);
    expect(found.capture.channels).toHaveLength(1);
  });

  test('the first channel is judged, and another one when it is asked for', () => {
    const two = answer(PICTURE, [PULSES, channel(() => 1)]);
    expect(two.ok && two.capture.channels).toHaveLength(2);
    expect(two.channels?.names).toHaveLength(2);
    expect(two.channels?.judged).toBe(0);
    const other = two.channels?.judge(1);
    expect(other?.ok && other.capture.measures.kind).toBe('steady');
    expect(other?.channels?.judged).toBe(1);
    const one = answer(PICTURE, [PULSES]);
    expect(one.ok && one.capture.findings).toEqual([]);
    expect(one.channels).toBeUndefined();
    expect(one.ok && one.lines[1]).toBe('Nothing wrong with this signal.');
  });
});

test.each<[Partial<CaptureMeasured>, string]>([
  [{}, 'switched, 0.1 V and 4.9 V, 200 Hz, duty 50 %, 600 rpm'],
  [{ hertz: 193.34, rpm: 193.34 }, 'switched, 0.1 V and 4.9 V, 193.3 Hz, duty 50 %, 193.3 rpm'],
  [{ kind: 'steady', hertz: null, duty: null, rpm: null }, 'a flat line, 0.1 V'],
  [
    { kind: 'alternating', low: -2, high: 2, duty: null, rpm: null },
    'alternating, -2 V and 2 V, 200 Hz',
  ],
  [{ kind: 'sweep', hertz: null, duty: null, rpm: null }, 'a sweep, 0.1 V and 4.9 V'],
  [
    { unit: 'A', low: 0.007, high: 0.014, rpm: null },
    'switched, 7 mA and 14 mA, 200 Hz, duty 50 %',
  ],
])('%o in one line', (measured, words) => {
  const whole: CaptureMeasured = {
    kind: 'switched',
    unit: 'V',
    samples: 8000,
    seconds: 0.04,
    low: 0.1,
    high: 4.9,
    hertz: 200,
    duty: 50,
    rpm: 600,
  };
  expect(capturedWords({ ...whole, ...measured })).toBe(words);
});
