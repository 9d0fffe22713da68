/**
 * Where along a wire a short sits, by voltage drops from both ends. All current goes in at one end and leaves at the short,
 * so the meter between the two ends reads the drop on the copper up to the short; fed at the other end, that on the rest.
 * At equal currents Ua / (Ua + Ub) is the part of the wire's resistance before the short. The short's own resistance is in
 * neither reading: the far piece carries no current and only leads the meter to the short.
 *
 * The same part is what Murray's loop balances on a slide wire, with the wire and its return for the loop (Hawkins
 * Electrical Guide 3, 1917, "Murray loop": a = A / 1000 * r, d = a / M). An ohmmeter cannot do it: the whole wire has a
 * tenth of an ohm, which is what its leads have.
 */

/** A reading and how far it may be off either way. */
export interface Drop {
  readonly volts: number;
  readonly limitVolts: number;
}

/** A stretch of one wire, and what it is joined to the next one by. */
export interface Stretch {
  readonly metres: number;
  /** For each metre, least and most. */
  readonly ohmsPerMetre: readonly [number, number];
  /** Of the contact or splice at its far end, least and most; null at the end of the last one. */
  readonly jointOhms: readonly [number, number] | null;
}

/** The drops that were read, and the wire they were read along. */
export interface PlaceAsk {
  /** Fed at the end that distances count from, and at the other one. */
  readonly fedHere: Drop;
  readonly fedThere: Drop;
  /** Current when fed here by current when fed there; 1 where it was not measured. */
  readonly currents: number;
  readonly stretches: readonly Stretch[];
}

/** Distance from the end where it was fed first. */
export interface PlaceOnWire {
  /** Part of the resistance before the short, 0 to 1. */
  readonly share: number;
  readonly metres: number;
  readonly lowMetres: number;
  readonly highMetres: number;
  readonly lengthMetres: number;
  /** Whether what is left is less than half of the wire. */
  readonly told: boolean;
}

/** Two currents through one lamp differ by no more, or are measured no better. Our choice. */
export const CURRENT_SHARE = 0.03;
/** A length along a harness is measured no better. Our choice. */
export const LENGTH_SHARE = 0.03;
/** More volts than this no sound wire of a harness drops at some tenths of an ampere: a bad joint, or a unit left out. Our choice. */
export const DROP_MAX = 0.5;
/** With more than this part of the wire left nothing is told. Our choice. */
const TOLD_SHARE = 0.5;

/** The place, with every bound taken at its worst; null where there is no drop at all. */
export function placeOnWire({
  fedHere,
  fedThere,
  currents,
  stretches,
}: PlaceAsk): PlaceOnWire | null {
  // Which way round the leads are is of no matter: the sign turns with the end that is fed.
  const here = boundsOf(fedHere);
  const there = boundsOf(fedThere);
  if (here.high + there.high <= 0 || here.is + there.is <= 0) return null;
  const part = (a: number, b: number, ratio: number) => a / (a + b * ratio || 1);
  const lengthMetres = stretches.reduce((sum, { metres }) => sum + metres, 0);
  const shares = {
    is: part(here.is, there.is, currents),
    low: part(here.low, there.high, currents * (1 + CURRENT_SHARE)),
    high: part(here.high, there.low, currents * (1 - CURRENT_SHARE)),
  };
  const usual = stretches.map(({ ohmsPerMetre: [low, high], jointOhms }) => ({
    perMetre: (low + high) / 2,
    joint: jointOhms ? (jointOhms[0] + jointOhms[1]) / 2 : 0,
  }));
  const corners = cornersOf(stretches);
  const reach = (share: number) => corners.map((one) => metresAt(stretches, one, share));
  const low = Math.min(...reach(shares.low)) * (1 - LENGTH_SHARE);
  const high = Math.min(lengthMetres, Math.max(...reach(shares.high)) * (1 + LENGTH_SHARE));
  return {
    share: shares.is,
    metres: metresAt(stretches, usual, shares.is),
    lowMetres: low,
    highMetres: high,
    lengthMetres,
    told: high - low <= TOLD_SHARE * lengthMetres,
  };
}

/** `0.81 to 0.99 m`, in whole centimetres, away from the place. */
export function metresWords({ lowMetres, highMetres }: PlaceOnWire): string {
  // A length that was given in centimetres is not made longer by its last binary digit.
  const low = Math.floor(lowMetres * 100 + 1e-6) / 100;
  const high = Math.ceil(highMetres * 100 - 1e-6) / 100;
  return `${low} to ${high} m`;
}

function boundsOf({ volts, limitVolts }: Drop) {
  const is = Math.abs(volts);
  return { is, low: Math.max(0, is - limitVolts), high: is + limitVolts };
}

interface Corner {
  readonly perMetre: number;
  readonly joint: number;
}

/** Every stretch and joint at its least or its most. */
function cornersOf(stretches: readonly Stretch[]): Corner[][] {
  return stretches.reduce<Corner[][]>(
    (all, { ohmsPerMetre, jointOhms }) =>
      all.flatMap((before) =>
        // Of one wire alone the copper drops out.
        (stretches.length === 1 ? [1] : ohmsPerMetre).flatMap((perMetre) =>
          (jointOhms ?? [0]).map((joint) => [...before, { perMetre, joint }]),
        ),
      ),
    [[]],
  );
}

/** The distance at which this part of the resistance lies behind; within a joint the joint itself. */
function metresAt(stretches: readonly Stretch[], ohms: readonly Corner[], share: number): number {
  const whole = stretches.reduce(
    (sum, { metres }, at) => sum + metres * ohms[at]!.perMetre + ohms[at]!.joint,
    0,
  );
  let left = share * whole;
  let passed = 0;
  for (const [at, { metres }] of stretches.entries()) {
    const { perMetre, joint } = ohms[at]!;
    if (left <= metres * perMetre) return passed + left / perMetre;
    left -= metres * perMetre + joint;
    passed += metres;
    if (left <= 0) return passed;
  }
  return passed;
}
