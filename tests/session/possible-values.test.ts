/** A value that no state of the circuit gives is doubted, with what could be shown and the slip that would explain it. */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { doubtReading } from '../../src/session/doubt-reading.ts';
import { judgeTest } from '../../src/session/judge-step.ts';
import { impossibleWords, type PossibleValues } from '../../src/session/possible-values.ts';
import { reachOf } from '../../src/suspects/shown-reach.ts';
import { KEY_ON, setupOf } from '../circuit/setup.ts';
import { shopFor } from './walk-library.ts';

const { meter } = STANDARD_SETTINGS;
const volts = (value: number) => ({ kind: 'number', value, unit: 'V' }) as const;

describe('the reach of a test', () => {
  it('is from least to most of each suspect, its ways apart, joined where they touch', () => {
    const car = (off: number, on: number) => [
      { shown: volts(off), share: 0.5 },
      { shown: volts(on), share: 0.5 },
    ];
    expect(
      reachOf([
        [car(5, 0.1), car(4.8, 0.3)],
        [car(4.9, 0.2), car(5.2, 0.2)],
      ]),
    ).toEqual({
      spans: [
        { low: 0.1, high: 0.3 },
        { low: 4.8, high: 5.2 },
      ],
      overLimit: false,
    });
    expect(reachOf([[[{ shown: volts(Number.POSITIVE_INFINITY), share: 1 }]]])).toEqual({
      spans: [],
      overLimit: true,
    });
  });
});

describe('a value', () => {
  const possible: PossibleValues = {
    spans: [
      { low: 0, high: 0 },
      { low: 4.6, high: 5.3 },
    ],
    overLimit: false,
    ...{ unit: 'V', meter },
    beside: () => [{ words: 'battery feed at the sensor', span: { low: 11.8, high: 14.4 } }],
  };
  const said = (value: number) => impossibleWords(possible, value, (one) => one > 4.7);

  it.each([0, 0.005, 0.03, 4.6, 5, 5.3, 5.6, 4.2])('%d V is possible', (value) => {
    expect(said(value)).toBeNull();
  });
  it.each([
    [0.5, 'shows 0.5 V here: it shows 0 V or 4.6 to 5.3 V; 5 V would fit: check unit and point'],
    [48.2, 'shows 48.2 V here: it shows 0 V or 4.6 to 5.3 V; 4.82 V would fit'],
    [12.6, '; battery feed at the sensor would show that: check where both leads are'],
    [2.5, '; check both leads'],
  ])('%d V is not', (value, words) => {
    expect(said(value)).toContain(`nothing in this circuit shows`);
    expect(said(value)).toContain(words);
  });
});

describe('on a shipped circuit', () => {
  const { advisor, begun } = shopFor('hall-no-signal');
  const feed: Test = {
    setup: KEY_ON,
    probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
  };
  const open: Test = {
    setup: setupOf({ unplugged: ['sensor'] }),
    probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
  };
  const good = { kind: 'number', low: 4.7, high: 5.3 } as const;
  const doubt = (test: Test, value: number) =>
    doubtReading(
      value,
      'V',
      (one) => judgeTest(volts(one), good, meter),
      () => advisor.diagnosis(begun).possible(test),
    );

  it.each([
    [open, 4.98, null],
    [open, 0.0002, null],
    [open, 12.4, null], // shorted to the battery
    [open, 0.00498, /4\.98 V would be good here: check the unit/],
    [
      open,
      30,
      /nothing in this circuit shows 30 V here: it shows 0 to .* 1\d\.?\d* V; 3 V would fit/,
    ],
    [open, 49.8, /4\.98 V would fit: check unit and point/],
    [feed, 2.5, null], // a resistive wire shows anything
  ])('%j, %d V', (test, value, words) => {
    if (words === null) expect(doubt(test, value)).toBeNull();
    else expect(doubt(test, value)).toMatch(words);
  });

  it('is worked out once for a state and a test, written in whatever way', () => {
    const diagnosis = advisor.diagnosis(begun);
    const once = diagnosis.possible(open);
    expect(once).not.toBeNull();
    expect(diagnosis.possible(structuredClone(open))).toBe(once);
    const light = { ...open, probe: { ...open.probe, kind: 'light' } } as Test;
    expect(diagnosis.possible(light)).toBeNull();
  });
});

it('what a fault shows is never doubted, on any car', () => {
  for (const name of ['hall-no-signal', 'throttle-position']) {
    const { advisor, begun, model, linked } = shopFor(name);
    const steps = Object.values(linked.procedure!.steps).flatMap((step) =>
      step.kind === 'measure' && step.probe ? [{ setup: step.setup, probe: step.probe }] : [],
    );
    const doubted: string[] = [];
    let asked = 0;
    for (const test of steps.slice(0, 8)) {
      const possible = advisor.diagnosis(begun).possible(test)!;
      for (const { id } of model.circuit.faults)
        for (let sample = 32; sample < 56; sample += 1) {
          const shown = model.shows(id, test, sample);
          if (shown.kind !== 'number') continue;
          asked += 1;
          if (impossibleWords(possible, shown.value, () => false) !== null)
            doubted.push(`${id} ${JSON.stringify(test.probe)} ${shown.value}`);
        }
    }
    expect(asked).toBeGreaterThan(1000);
    // One in a hundred may lie beyond what a few dozen cars have shown; it is asked about, and taken.
    expect(doubted.length / asked, doubted.slice(0, 20).join('\n')).toBeLessThan(0.01);
  }
});
