// Made from docs/schema/cautions.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * Of the texts, as in BCP 47: en, de, fr-CA. English when it is left out. A shipped text can be put in another language under its own name; in the same language it stays as it is.
 */
export type Language = string
/**
 * DANGER: will kill or injure badly. WARNING: could. CAUTION: could injure lightly. NOTICE: damage to things.
 */
export type SignalWord = ("DANGER" | "WARNING" | "CAUTION" | "NOTICE")
/**
 * What is shown on the screen, in plain sentences.
 */
export type Text = string
/**
 * What it warns of; each vehicle state, and work that the program knows, asks for some of them. A hazard that none of these names is other, and its text tells it.
 * 
 * @minItems 1
 */
export type Hazards = ("rotating-parts" | "hot-parts" | "exhaust-gas" | "unexpected-start" | "vehicle-secured" | "energised-circuit" | "battery" | "high-voltage" | "module-damage" | "instrument-damage" | "fuel" | "airbag" | "harness-damage" | "engine-start" | "ignition-voltage" | "raw-fuel" | "starter-heat" | "engine-damage" | "vehicle-moves" | "traffic" | "other")[]
/**
 * Applies to every step in one of these states.
 */
export type VehicleStates = ("key-off" | "key-on" | "cranking" | "running" | "driving")[]
/**
 * Only for vehicles with one of these.
 */
export type Drives = ("combustion" | "hybrid" | "electric" | "not-stated")[]
/**
 * Applies to every step that uses one of these.
 */
export type When = ("ohms" | "amps" | "light" | "lamp" | "bridge" | "lead" | "fed-wire" | "unplug" | "module-off" | "back-probe" | "spare" | "moving")[]

/**
 * Safety texts by name. Each comes before the prompt of every step it applies to.
 */
export interface CautionsDraft {
language?: Language
cautions: Cautions
}
/**
 * The safety texts by name.
 */
export interface Cautions {
[k: string]: {
word: SignalWord
say: Text
hazards: Hazards
states?: VehicleStates
drives?: Drives
when?: When
}
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of CautionsDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is CautionsDraft) & { errors?: SchemaError[] | null };
export default validate;
