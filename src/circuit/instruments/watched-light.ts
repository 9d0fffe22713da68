/** What every light is that is held between two places and looked at. */
import { type Instrument, NEVER_REFUSED } from '../instrument.ts';

/** The traits of a light, beside its element, its name and how bright it looks. */
export const WATCHED_LIGHT = {
  refusal: NEVER_REFUSED,
  minutes: 1.5,
  isReadStill: true,
  needsMotion: false,
  isForDeadCircuit: false,
  canBeMisplaced: false,
} as const satisfies Partial<Instrument>;
