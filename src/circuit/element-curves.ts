/**
 * Currents and slopes of elements, on typed arrays.
 *
 * Elements with corners are linear in each region and are kept in one until the solver moves them; diodes and lamps are
 * made linear at the present voltage.
 */
import type { Element } from './netlist.ts';
import { wrightOmega } from './wright-omega.ts';

/** An element changes its region only when it is this many volts past the corner: less is rounding of the solver. */
const CORNER_MARGIN_VOLTS = 2e-8;
/** An output begins to limit its current only when that is this share above the limit, for the same reason. */
const LIMIT_MARGIN_SHARE = 2e-8;
/** The ramp of a switched output begins at this share of its least feed, and is this share of it wide. */
const RAMP_FROM = 0.9;
const RAMP_WIDTH = 0.1;
/** Where a diode is first made linear: at this current. */
const DIODE_FIRST_AMPS = 1e-3;

export const RESISTOR = 0;
export const EMF = 1;
export const IDEAL = 2;
export const CURRENT = 3;
const REGULATOR = 4;
const SINK = 5;
export const GATED = 6;
export const DIODE = 7;
export const LAMP = 8;
/** Kinds from here on depend on the voltages. */
export const FIRST_CURVED = REGULATOR;
/** Values per element. */
export const STRIDE = 5;

/** The elements of one circuit. `flow`, `slope` and `feedSlope` are what the last call found. */
export class ElementCurves {
  protected readonly kinds: Uint8Array;
  protected readonly values: Float64Array;
  /** Region of each element with corners. */
  protected readonly regions: Int8Array;
  /** True while no step has been made since the regions were reset. */
  protected fresh = true;
  /** Some element has changed its region, or wants to. */
  protected moved = false;
  /** The current that the last call found, and its slopes. */
  protected flow = 0;
  protected slope = 0;
  protected feedSlope = 0;

  constructor(count: number) {
    this.kinds = new Uint8Array(count);
    this.values = new Float64Array(count * STRIDE);
    this.regions = new Int8Array(count);
  }

  /** Gives resistor `index` another resistance. */
  setOhms(index: number, ohms: number): void {
    this.values[index * STRIDE] = ohms;
  }

  replace(index: number, element: Element): void {
    const { values } = this;
    const at = index * STRIDE;
    switch (element.kind) {
      case 'resistor':
        this.kinds[index] = RESISTOR;
        values[at] = element.ohms;
        return;
      case 'emf':
        this.kinds[index] = element.ohms === 0 ? IDEAL : EMF;
        values[at] = element.volts;
        values[at + 1] = element.ohms === 0 ? 0 : 1 / element.ohms;
        return;
      case 'current':
        this.kinds[index] = CURRENT;
        values[at] = element.amps;
        return;
      case 'regulator':
        this.kinds[index] = REGULATOR;
        values[at] = element.volts;
        values[at + 1] = 1 / element.ohms;
        values[at + 2] = element.limitAmps;
        return;
      case 'sink':
        this.kinds[index] = SINK;
        values[at] = element.amps;
        values[at + 1] = element.minVolts;
        values[at + 2] = 1 / element.reverseOhms;
        return;
      case 'gated-output':
        this.kinds[index] = GATED;
        values[at] = element.onSiemens;
        values[at + 1] = element.offSiemens;
        values[at + 2] = element.minVolts;
        values[at + 3] = element.limitAmps;
        return;
      case 'diode':
        this.kinds[index] = DIODE;
        values[at] = element.saturationAmps;
        values[at + 1] = element.emissionVolts;
        values[at + 2] = element.ohms;
        values[at + 3] = 1 / element.leakOhms;
        return;
      case 'lamp':
        this.kinds[index] = LAMP;
        values[at] = element.coldOhms;
        values[at + 1] = element.risePerRootVolt;
    }
  }

  /** Where the solver begins: regulators on their slope, supplies below their least voltage, outputs switched on and not limited. */
  protected startRegion(index: number): void {
    this.regions[index] = this.kinds[index] === GATED ? 2 << 1 : 1;
    this.values[index * STRIDE + 4] = 0;
  }

  /** Moves the element one region towards `wanted`. */
  protected step(index: number, wanted: number): void {
    const now = this.regions[index]!;
    if (wanted === now) return;
    this.moved = true;
    if (this.kinds[index] !== GATED) {
      this.regions[index] = now + Math.sign(wanted - now);
      return;
    }
    const ramp = now >> 1;
    this.regions[index] = ((ramp + Math.sign((wanted >> 1) - ramp)) << 1) | (wanted & 1);
  }

  /** Region of a regulator (0 off, 1 slope, 2 limit) or a sink (0 backwards, 1 slope, 2 full) at `v`. */
  protected cornerRegion(index: number, v: number): number {
    const { values } = this;
    const at = index * STRIDE;
    const now = this.regions[index]!;
    let low = 0;
    let high = values[at + 1]!;
    if (this.kinds[index] === REGULATOR) {
      low = -values[at]!;
      high = low + values[at + 2]! / values[at + 1]!;
    }
    if (v < low - (now === 1 ? CORNER_MARGIN_VOLTS : 0)) return 0;
    return v > high + (now === 1 ? CORNER_MARGIN_VOLTS : 0) ? 2 : 1;
  }

  /** Current at zero volts and slope of a regulator or a sink in its present region. */
  protected corner(index: number): void {
    const { values } = this;
    const at = index * STRIDE;
    const region = this.regions[index]!;
    this.feedSlope = 0;
    this.slope = 0;
    this.flow = 0;
    if (this.kinds[index] === REGULATOR) {
      if (region === 2) this.flow = values[at + 2]!;
      else if (region === 1) {
        this.slope = values[at + 1]!;
        this.flow = values[at]! * values[at + 1]!;
      }
    } else if (region === 2) this.flow = values[at]!;
    else this.slope = region === 1 ? values[at]! / values[at + 1]! : values[at + 2]!;
  }

  /** Twice the part of the ramp (0 below, 1 on it, 2 above), plus 1 when the output limits its current. */
  protected gatedRegion(index: number, v: number, feedVolts: number): number {
    const { values } = this;
    const at = index * STRIDE;
    const now = this.regions[index]! >> 1;
    const least = values[at + 2]!;
    const margin = now === 1 ? CORNER_MARGIN_VOLTS : 0;
    const ramp = feedVolts < RAMP_FROM * least - margin ? 0 : feedVolts > least + margin ? 2 : 1;
    const past = (this.regions[index]! & 1) === 0 ? LIMIT_MARGIN_SHARE : 0;
    const limited = v * this.gatedSiemens(index, feedVolts) > values[at + 3]! * (1 + past);
    return (ramp << 1) | (limited ? 1 : 0);
  }

  protected gatedSiemens(index: number, feedVolts: number): number {
    const at = index * STRIDE;
    const least = this.values[at + 2]!;
    const share = Math.min(1, Math.max(0, (feedVolts - RAMP_FROM * least) / (RAMP_WIDTH * least)));
    return this.values[at + 1]! + (this.values[at]! - this.values[at + 1]!) * share;
  }

  /** The voltage of the feed as far as it moves a switched output. */
  protected rampVolts(index: number, feedVolts: number): number {
    const least = this.values[index * STRIDE + 2]!;
    return Math.min(least, Math.max(RAMP_FROM * least, feedVolts));
  }

  /** A switched output in its present region; `feedVolts` lies on the ramp. */
  protected gated(index: number, v: number, feedVolts: number): void {
    const { values } = this;
    const at = index * STRIDE;
    const region = this.regions[index]!;
    const least = values[at + 2]!;
    this.feedSlope = 0;
    if ((region & 1) === 1) {
      this.slope = 0;
      this.flow = values[at + 3]!;
      return;
    }
    const ramp = region >> 1;
    const siemens =
      ramp === 0 ? values[at + 1]! : ramp === 2 ? values[at]! : this.gatedSiemens(index, feedVolts);
    this.slope = siemens;
    this.flow = siemens * v;
    if (ramp === 1) this.feedSlope = (v * (values[at]! - values[at + 1]!)) / (RAMP_WIDTH * least);
  }

  /** Where a diode is made linear: at `v`, except at the first step and, without series resistance, too far up. */
  protected diodePoint(index: number, v: number): number {
    const { values } = this;
    const at = index * STRIDE;
    const emission = values[at + 1]!;
    if (this.fresh) {
      const junction = emission * Math.log(DIODE_FIRST_AMPS / values[at]!);
      values[at + 4] = junction;
      return junction + DIODE_FIRST_AMPS * values[at + 2]!;
    }
    if (values[at + 2] !== 0) return v;
    // Junction limiting as in SPICE (Nagel, 1975): above the critical voltage follow the logarithm.
    const last = values[at + 4]!;
    const critical = emission * Math.log(emission / (Math.SQRT2 * values[at]!));
    let point = v;
    if (v > critical && Math.abs(v - last) > 2 * emission) {
      const rise = last > 0 ? 1 + (v - last) / emission : 0;
      point =
        last > 0
          ? rise > 0
            ? last + emission * Math.log(rise)
            : critical
          : emission * Math.log(v / emission);
      this.moved = true;
    }
    values[at + 4] = point;
    return point;
  }

  protected diode(index: number, v: number): void {
    const { values } = this;
    const at = index * STRIDE;
    const saturation = values[at]!;
    const emission = values[at + 1]!;
    const ohms = values[at + 2]!;
    const leak = values[at + 3]!;
    this.feedSlope = 0;
    if (ohms === 0) {
      const rise = Math.exp(v / emission);
      this.flow = saturation * (rise - 1) + leak * v;
      this.slope = (saturation * rise) / emission + leak;
      return;
    }
    const scale = emission / ohms;
    const omega = wrightOmega((v + saturation * ohms) / emission + Math.log(saturation / scale));
    this.flow = scale * omega - saturation + leak * v;
    this.slope = omega / (1 + omega) / ohms + leak;
  }

  protected lamp(index: number, v: number): void {
    const at = index * STRIDE;
    const rise = this.values[at + 1]! * Math.sqrt(Math.abs(v));
    const ohms = this.values[at]! + rise;
    this.feedSlope = 0;
    this.flow = v / ohms;
    this.slope = (this.values[at]! + rise / 2) / (ohms * ohms);
  }
  /** Current at `v` of an element that depends on the voltages, whatever its region; `feedVolts` counts for a switched output. */
  protected currentAt(index: number, v: number, feedVolts: number): number {
    const { values } = this;
    const at = index * STRIDE;
    switch (this.kinds[index]) {
      case DIODE:
        this.diode(index, v);
        return this.flow;
      case LAMP:
        this.lamp(index, v);
        return this.flow;
      case GATED:
        return Math.min(values[at + 3]!, v * this.gatedSiemens(index, feedVolts));
      case REGULATOR:
        return Math.max(0, Math.min(values[at + 2]!, (values[at]! + v) * values[at + 1]!));
      default:
        return v < 0 ? v * values[at + 2]! : values[at]! * Math.min(1, v / values[at + 1]!);
    }
  }
}
