// Made from docs/schema/drill-actions.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * Name of a procedure or of a circuit.
 */
export type Procedure = string
/**
 * How much help there is, or what makes it harder.
 */
export type Level = ("named" | "unnamed" | "blind" | "intermittent" | "double" | "misled")
/**
 * Number that fixes the hidden fault and the tolerances.
 */
export type Seed = number
/**
 * Instrument and leads, red first.
 */
export type Measure = string
/**
 * The scope saves what it sees: its tip, its ground.
 */
export type Capture = string
/**
 * State of the vehicle.
 */
export type VehicleState = ("key-off" | "key-on" | "cranking" | "running")
/**
 * Parts whose connector is off.
 * 
 * @maxItems 20
 */
export type Unplugged = string[]
/**
 * Two terminals and what is between: lead, test-light, lamp or ohms.
 * 
 * @maxItems 6
 */
export type ClippedIn = string[]
/**
 * Instead of the own one of the vehicle.
 */
export type AGoodSpareSensorIsPluggedIn = boolean
/**
 * By cranking, by hand or with a magnet.
 */
export type TheTargetPassesTheSensor = boolean
/**
 * Brings out an intermittent fault.
 */
export type HarnessAndConnectorsAreMovedMeanwhile = boolean
/**
 * Name of a standard test instead of a measurement; see them with the word "tests" in the dialogue.
 */
export type StandardTest = string
export type DoTheProcedureSPresentStep = true
/**
 * The cautions of this test or step are read and acknowledged.
 */
export type Acknowledge = true
/**
 * A remark that goes into the record.
 */
export type Note = string
/**
 * Names of repairs.
 * 
 * @minItems 1
 * @maxItems 2
 */
export type Diagnosis = string[]
export type GiveUp = true
/**
 * In the order in which they are done.
 * 
 * @minItems 1
 * @maxItems 500
 */
export type Actions = ActionDraft[]

/**
 * What a student would do in a drill, in order, for a run without one: ohmward drill --actions FILE.
 */
export interface ActionsDraft {
procedure?: Procedure
level?: Level
seed?: Seed
actions: Actions
}
export interface ActionDraft {
measure?: Measure
capture?: Capture
state?: VehicleState
unplug?: Unplugged
bridges?: ClippedIn
spare?: AGoodSpareSensorIsPluggedIn
moving?: TheTargetPassesTheSensor
wiggle?: HarnessAndConnectorsAreMovedMeanwhile
test?: StandardTest
follow?: DoTheProcedureSPresentStep
acknowledge?: Acknowledge
note?: Note
diagnose?: Diagnosis
"give-up"?: GiveUp
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of ActionsDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is ActionsDraft) & { errors?: SchemaError[] | null };
export default validate;
