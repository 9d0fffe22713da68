/** What differs between volts, ohms and amperes for everybody; numbers of one room alone stand in a table there, by unit. */
import type { Meter, MeterFunction, MeterUnit, NumberKind } from './test.ts';

/** What holds of all readings in a unit. */
export interface UnitTraits {
  /** The function of a meter that shows it. */
  readonly by: NumberKind;
  /** What it is a number of, as an owner of a car says it. */
  readonly quantity: string;
  /** The function by name, in settings. */
  readonly functionWords: string;
  /** It falls below zero with the leads exchanged. */
  readonly isSigned: boolean;
  /** Readings run over decades: between two lies their geometric mean. */
  readonly runsOverDecades: boolean;
  /** OL is an answer: nothing conducts there. Elsewhere it says that the range was too small. */
  readonly overLimitMeansOpen: boolean;
  /** A step without leads that asks for it is read on the meter; amperes may as well be a clamp's. */
  readonly isMeterAlone: boolean;
  /** Why OL is no answer, in words without a full stop; empty where it is one. */
  readonly overLimitWords: string;
  /** Below what a meter shows that does not measure at all, and why that is no answer yet; null where nothing is known of it. */
  readonly deadMeter: { readonly below: number; readonly words: string } | null;
}

export const METER_UNITS: Readonly<Record<MeterUnit, UnitTraits>> = {
  V: {
    by: 'volts',
    quantity: 'voltage',
    functionWords: 'volts',
    isSigned: true,
    runsOverDecades: false,
    overLimitMeansOpen: false,
    isMeterAlone: true,
    overLimitWords: 'over limit on a volts range: check the range, and that the meter is on volts',
    deadMeter: null,
  },
  ohm: {
    by: 'ohms',
    quantity: 'resistance',
    functionWords: 'ohms',
    isSigned: false,
    runsOverDecades: true,
    overLimitMeansOpen: true,
    isMeterAlone: true,
    overLimitWords: '',
    deadMeter: null,
  },
  A: {
    by: 'amps',
    quantity: 'current',
    functionWords: 'amperes',
    isSigned: true,
    runsOverDecades: false,
    overLimitMeansOpen: false,
    isMeterAlone: false,
    overLimitWords:
      'over limit on a milliampere range: more current than the range can take; disconnect the meter before its fuse blows',
    deadMeter: {
      below: 1e-4,
      words:
        'no current at all is also what a meter with a blown fuse shows, or one with its lead in the volts socket: check the meter first',
    },
  },
};

/**
 * Milliamperes on an ordinary handheld: two ranges, 1 % and 3 counts. Common practice, no source; the meter at hand is
 * told in the settings.
 */
const ORDINARY_AMPS: MeterFunction = {
  ranges: [0.06, 0.4],
  counts: 6000,
  ofReading: 0.01,
  digits: 3,
};

/** The function of a meter that shows a unit. */
export function functionOf(meter: Meter, unit: MeterUnit): MeterFunction {
  return meter[METER_UNITS[unit].by] ?? ORDINARY_AMPS;
}

/** Whether a meter shows this unit. */
export function isMeterUnit(unit: string): unit is MeterUnit {
  return Object.hasOwn(METER_UNITS, unit);
}
