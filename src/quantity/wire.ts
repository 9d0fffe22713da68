/**
 * Copper wire: resistance from size, length and temperature.
 *
 * Standard annealed copper (IACS): 58 MS/m at 20 degC, 0.393 % a degree. American wire gauge by its defining
 * formula (ASTM B258): 0.005 in at gauge 36, 39 equal steps to 0.46 in at 0000.
 */

/** Resistivity of annealed copper at 20 degC in ohm metres: 1/58 ohm mm2/m (IACS). */
const COPPER_OHM_METRES = 1e-6 / 58;
/** Rise of copper's resistance per kelvin, referred to 20 degC (IACS). */
const COPPER_PER_KELVIN = 0.00393;

/**
 * How much more a flexible stranded conductor resists than solid copper of its nominal area. `most` is what the
 * limits of IEC 60228 class 5 allow (39.0 against 34.5 mohm/m at 0.5 mm2, 13.3 against 11.5 at 1.5 mm2); `usual`
 * lies half-way, since strands are longer than the wire and its copper area is a little under the nominal one.
 */
export const STRANDED = { usual: 1.07, most: 1.16 } as const;

/** A length of copper whose resistance is wanted. */
export interface CopperWire {
  readonly areaM2: number;
  /** One way; a circuit has two wires. */
  readonly metres: number;
  /** Conductor temperature, default 20. */
  readonly degC?: number;
  /** Factor for stranding, default 1 (solid); see `STRANDED`. */
  readonly factor?: number;
}

/** Resistance in ohms. Not for temperatures below -100 degC, where the straight line ends. */
export function copperOhms({ areaM2, metres, degC = 20, factor = 1 }: CopperWire): number {
  return ((COPPER_OHM_METRES * metres) / areaM2) * factor * (1 + COPPER_PER_KELVIN * (degC - 20));
}

/** How many times its resistance at `fromCelsius` copper has at `toCelsius`. Not below -100 degC. */
export function copperRise(fromCelsius: number, toCelsius: number): number {
  return (1 + COPPER_PER_KELVIN * (toCelsius - 20)) / (1 + COPPER_PER_KELVIN * (fromCelsius - 20));
}

/** Diameter in metres of solid wire of American gauge `gauge`; 0, -1, -2, -3 stand for 0, 00, 000, 0000. */
export function awgDiameterM(gauge: number): number {
  return 0.005 * 0.0254 * 92 ** ((36 - gauge) / 39);
}

/** Area in square metres of solid wire of American gauge `gauge`. */
export function awgAreaM2(gauge: number): number {
  return (Math.PI / 4) * awgDiameterM(gauge) ** 2;
}

/** The gauge, not rounded, whose area is `areaM2`. */
export function awgOfArea(areaM2: number): number {
  const diameter = Math.sqrt((4 * areaM2) / Math.PI);
  return 36 - (39 * Math.log(diameter / (0.005 * 0.0254))) / Math.log(92);
}

/** Nominal areas of flexible vehicle cable in mm2 (IEC 60228 class 5 and the smaller sizes of the trade). */
const CABLE_MM2 = [
  0.22, 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120,
] as const;

/** A current, a length and the volts that may be lost on it, for the size of wire that keeps to them. */
export interface AllowedDrop {
  readonly amps: number;
  /** Length of copper the current flows through: both wires together if the return is a wire too. */
  readonly metres: number;
  readonly dropVolts: number;
  readonly degC?: number;
  readonly factor?: number;
}

/** Least copper area in square metres that keeps the drop within `dropVolts`. */
export function areaForDropM2({
  amps,
  metres,
  dropVolts,
  degC = 20,
  factor = 1,
}: AllowedDrop): number {
  return (copperOhms({ areaM2: 1, metres, degC, factor }) * Math.abs(amps)) / dropVolts;
}

/** The smallest nominal cable not under `areaM2`, in mm2, or null when none is thick enough. */
export function cableMm2For(areaM2: number): number | null {
  const least = areaM2 * 1e6 * (1 - SIZE_SLACK);
  return CABLE_MM2.find((mm2) => mm2 >= least) ?? null;
}

/** A size that misses by a rounding of its own arithmetic is taken. */
const SIZE_SLACK = 1e-9;
