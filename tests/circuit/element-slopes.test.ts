/**
 * What the solver steps by: the slope of each element is the derivative of its current (central differences of the
 * curves themselves), and a diode's step is limited as in SPICE. Formula of the limit: L. W. Nagel, SPICE2, Memorandum
 * ERL-M520, Berkeley 1975, junction limiting; from memory.
 */
import { describe, expect, test } from 'vitest';
import { ElementCurves } from '../../src/circuit/element-curves.ts';
import type { Element } from '../../src/circuit/netlist.ts';

const STEP_VOLTS = 1e-5;

/** The curves of one element, opened for looking at. */
class Curve extends ElementCurves {
  private readonly kind: Element['kind'];

  constructor(element: Element) {
    super(1);
    this.kind = element.kind;
    this.replace(0, element);
    this.startRegion(0);
    this.fresh = false;
  }

  /** Current and slopes at `v`, with `feedVolts` where it counts. */
  at(v: number, feedVolts = 0) {
    if (this.kind === 'diode') this.diode(0, v);
    else if (this.kind === 'lamp') this.lamp(0, v);
    else if (this.kind === 'gated-output') {
      this.regions[0] = this.gatedRegion(0, v, feedVolts);
      this.gated(0, v, this.rampVolts(0, feedVolts));
    } else {
      this.regions[0] = this.cornerRegion(0, v);
      this.corner(0);
      this.flow += this.slope * v;
    }
    return { flow: this.flow, slope: this.slope, feedSlope: this.feedSlope };
  }

  current(v: number, feedVolts = 0): number {
    return this.currentAt(0, v, feedVolts);
  }

  /** Where a diode that was last linear at `last` volts is made so when the step leads to `v`. */
  limited(last: number, v: number): { readonly point: number; readonly moved: boolean } {
    this.fresh = false;
    this.values[4] = last;
    this.moved = false;
    const point = this.diodePoint(0, v);
    return { point, moved: this.moved };
  }

  first(): number {
    this.fresh = true;
    return this.diodePoint(0, 99);
  }
}

const DIODE: Element = {
  kind: 'diode',
  a: 1,
  b: 0,
  saturationAmps: 1e-12,
  emissionVolts: 0.05,
  ohms: 0,
  leakOhms: 1e6,
};
const OUTPUT: Element = {
  kind: 'gated-output',
  out: 1,
  ground: 0,
  feed: 2,
  onSiemens: 0.1,
  offSiemens: 0.001,
  minVolts: 4,
  limitAmps: 0.04,
};
const ELEMENTS: [string, Element, number[]][] = [
  ['a diode', DIODE, [-1, 0, 0.3, 0.6, 1.2]],
  ['a diode with resistance', { ...DIODE, ohms: 30 }, [-1, 0, 0.6, 1.5, 4]],
  ['a lamp', { kind: 'lamp', a: 1, b: 0, coldOhms: 5, risePerRootVolt: 12 }, [-9, 0.1, 3, 12]],
  [
    'a sink',
    { kind: 'sink', a: 1, b: 0, amps: 0.008, minVolts: 4, reverseOhms: 1e6 },
    [-2, 1, 3.9, 6],
  ],
  [
    'a regulator',
    { kind: 'regulator', from: 0, out: 1, volts: 5, ohms: 2, limitAmps: 0.08 },
    [-6, -4.95, -4, 1],
  ],
  ['an output that is on', OUTPUT, [-0.2, 0.1, 0.39, 2]],
];

describe.each(ELEMENTS)('%s', (name, element, volts) => {
  const feed = name === 'an output that is on' ? 5 : 0;
  test.each(volts)('has the slope of its current at %d V', (v) => {
    const curve = new Curve(element);
    const { flow, slope } = curve.at(v, feed);
    const rise = curve.current(v + STEP_VOLTS, feed) - curve.current(v - STEP_VOLTS, feed);
    const expected = rise / (2 * STEP_VOLTS);
    expect(flow).toBeCloseTo(curve.current(v, feed), 12);
    expect(Math.abs(slope - expected)).toBeLessThanOrEqual(1e-9 + 1e-5 * Math.abs(expected));
  });
});

test('on the ramp of its feed an output has the slope of its current by the feed too', () => {
  const curve = new Curve(OUTPUT);
  for (const [v, feed, ramp] of [
    [0.2, 3.8, 1],
    [0.2, 3.5, 0],
    [0.2, 4.5, 0],
    [3, 3.8, 0], // limited: neither voltage moves it
  ] as const) {
    const { feedSlope } = curve.at(v, feed);
    const rise = curve.current(v, feed + STEP_VOLTS) - curve.current(v, feed - STEP_VOLTS);
    expect(feedSlope, `${v} V, ${feed} V`).toBeCloseTo(rise / (2 * STEP_VOLTS), 6);
    expect(feedSlope !== 0, `${v} V, ${feed} V`).toBe(ramp === 1);
  }
});

describe('the step of a diode', () => {
  const curve = new Curve(DIODE);
  const vt = 0.05;
  const critical = vt * Math.log(vt / (Math.SQRT2 * 1e-12));
  test('begins at a milliampere, with what its resistance takes', () => {
    const junction = vt * Math.log(1e-3 / 1e-12);
    expect(curve.first()).toBeCloseTo(junction, 12);
    expect(new Curve({ ...DIODE, ohms: 30 }).first()).toBeCloseTo(junction + 0.03, 12);
  });
  test.each([
    ['below the critical voltage', 0.2, critical - 0.001],
    ['that is small', 1.25, 1.25 + 1.9 * vt],
    ['that is small downwards', 1.4, 1.4 - 1.9 * vt],
  ])('%s is taken whole', (_, last, v) => {
    expect(curve.limited(last, v)).toEqual({ point: v, moved: false });
  });
  test.each([
    ['far up follows the logarithm', 1.2, 5, 1.2 + vt * Math.log(1 + (5 - 1.2) / vt)],
    ['far up from nothing begins at its own logarithm', 0, 5, vt * Math.log(5 / vt)],
    ['far up from below nothing as well', -3, 5, vt * Math.log(5 / vt)],
    ['down by more than it stood at ends at the critical voltage', 3, critical + 0.01, critical],
  ])('%s', (_, last, v, point) => {
    const found = curve.limited(last, v);
    expect(found.point).toBeCloseTo(point, 12);
    expect(found.moved).toBe(true);
  });
  test('with a resistance in series needs no limit', () => {
    expect(new Curve({ ...DIODE, ohms: 30 }).limited(0, 50)).toEqual({ point: 50, moved: false });
  });
});
