/** A meter on milliamperes in series: what it reads, what it takes, where it is refused, how it is judged. */
import { describe, expect, test } from 'vitest';
import { ampsShown, BURDEN_OHMS } from '../../src/circuit/instruments/milliammeter.ts';
import { judgeReading } from '../../src/circuit/judge.ts';
import { parseMeasure } from '../../src/circuit/parse-measure.ts';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import { standardTests } from '../../src/circuit/standard-tests.ts';
import type { Bridge, Probe, Setup } from '../../src/circuit/test.ts';
import { METER, modelOf, shipped, testOf } from './shipped.ts';

const wheel = shipped('current-two-wire');
const amps = (plus: string, minus: string): Probe => ({ kind: 'amps', plus, minus });
const IN_SERIES = amps('sensor.feed', 'sensor.feed.pin');
const OTHER_PIN: Bridge = { from: 'sensor.signal', to: 'sensor.signal.pin', through: 'lead' };
const OPEN: Partial<Setup> = { unplugged: ['sensor'], bridges: [OTHER_PIN] };
const number = (fault: string, probe: Probe, setup: Partial<Setup>): number => {
  const shown = modelOf('current-two-wire').shows(fault, testOf(probe, setup), -1);
  return shown.kind === 'number' ? shown.value : Number.NaN;
};

test('is written like any measurement', () => {
  expect(parseMeasure('amps sensor.feed sensor.feed.pin')).toEqual({ value: IN_SERIES });
});

describe('in the feed of a two-wire current sensor', () => {
  test.each([
    // fault, milliamperes, whence
    ['healthy', 7, 'the wheel rests where the sensor draws the low current'],
    ['sensor.stuck-high', 14, 'the large one'],
    ['sensor.dead', 0, 'none'],
    ['wire.signal.open', 0, 'no way back'],
  ])('%s reads %d mA', (fault, milliamps) => {
    expect(number(fault, IN_SERIES, OPEN) * 1000).toBeCloseTo(milliamps, 3);
  });

  test('the sensor sees its supply less the burden', () => {
    // By hand: 7 mA over the burden and, at the other pin, over a lead of 50 mohm and no contact of 6.3 mohm.
    const across: Probe = { kind: 'volts', plus: 'sensor.feed', minus: 'sensor.signal' };
    const whole = number('healthy', across, {});
    const burden: Bridge = {
      ...{ from: 'sensor.feed', to: 'sensor.feed.pin' },
      through: { ohms: BURDEN_OHMS },
    };
    const pins: Probe = { kind: 'volts', plus: 'sensor.feed.pin', minus: 'sensor.signal.pin' };
    const left = number('healthy', pins, { ...OPEN, bridges: [OTHER_PIN, burden] });
    expect(whole - left).toBeCloseTo(0.007 * (BURDEN_OHMS + 0.05), 4);
  });

  test('more than its largest range blows its fuse, and it shows nothing', () => {
    expect(ampsShown(0.067, METER)).toBe(0.067);
    expect(ampsShown(-0.4, METER)).toBe(-0.4);
    expect(ampsShown(3, METER)).toBe(0);
  });

  test('is a standard test of it, and of no circuit whose sensor speaks by volts', () => {
    const found = standardTests(wheel).filter(({ test: one }) => one.probe.kind === 'amps');
    expect(found.map(({ id, needs }) => [id, needs])).toEqual([
      ['sensor.feed.amps', ['milliammeter', 'lead']],
    ]);
    expect(found[0]!.test.probe).toEqual(IN_SERIES);
    for (const name of ['hall-module-fed', 'reluctor-two-wire'])
      expect(standardTests(shipped(name)).some(({ test: one }) => one.probe.kind === 'amps')).toBe(
        false,
      );
  });
});

test('is read in the feed wire whether the module feeds the sensor or a relay does', () => {
  // The same sensor on the wire of a fuse: what feeds it draws the same milliamperes. Common practice, no source.
  for (const role of ['reference', 'supply'] as const) {
    const wires = wheel.wires.map((wire) =>
      wire.to === 'sensor.feed' || wire.from === 'sensor.feed' ? { ...wire, role } : wire,
    );
    const ids = standardTests({ ...wheel, wires }).map(({ id }) => id);
    expect(ids, role).toContain('sensor.feed.amps');
  }
});

describe('is refused', () => {
  const across = (...terminals: string[]) => ({ code: 'amps-across', terminals });
  test.each([
    // words, probe, setup, reason
    [
      'across the battery',
      amps('battery.positive', 'battery.negative'),
      {},
      across('battery.positive', 'battery.negative'),
    ],
    [
      'from the feed to ground',
      amps('sensor.feed', 'battery.negative'),
      OPEN,
      across('sensor.feed', 'battery.negative'),
    ],
    [
      'beside the sensor',
      amps('sensor.feed', 'sensor.signal'),
      {},
      across('sensor.feed', 'sensor.signal'),
    ],
    [
      'along a wire that is whole',
      amps('module.feed', 'sensor.feed'),
      {},
      { code: 'amps-beside', terminals: ['module.feed', 'sensor.feed'] },
    ],
    [
      'where a lead on the other side shorts the feed',
      IN_SERIES,
      {
        ...OPEN,
        bridges: [{ from: 'sensor.feed.pin', to: 'battery.negative', through: 'lead' } as const],
      },
      { code: 'module-to-ground', terminal: 'module.feed' },
    ],
    ['at its plug, opened', IN_SERIES, OPEN, null],
  ])('%s', (_, probe, setup, reason) => {
    expect(refuseTest(wheel, testOf(probe, setup))).toEqual(reason);
  });
});

describe('is judged by its own accuracy: 1 % and 3 counts of 10 uA at 7 mA', () => {
  test.each([
    [0.007, 'good'],
    [0.0059, 'good'],
    [0.0056, 'borderline'],
    [0.0045, 'low'],
    [0.014, 'high'],
    [0, 'low'],
  ])('%f A against 5.6 to 8.4 mA is %s', (value, verdict) => {
    expect(judgeReading(value, 'A', { low: 0.0056, high: 0.0084 }, METER).verdict).toBe(verdict);
  });
});
