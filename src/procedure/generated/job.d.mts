// Made from docs/schema/job.schema.json by scripts/schemas.mjs. Change the schema, not this file.

export type Name = string
/**
 * What the customer says, and when it happens.
 */
export type Complaint = string
/**
 * The procedure to begin with.
 */
export type Procedure = string
/**
 * @maxItems 60
 */
export type TroubleCodes = string[]
export type InWords = string
export type VehicleIdentificationNumber = string
export type Plate = string
export type Odometer = string
/**
 * Hybrid and electric vehicles bring their own cautions.
 */
export type Drive = ("combustion" | "hybrid" | "electric")
export type OrderNumber = string
export type Customer = string
export type InWords1 = string
/**
 * Its name in the circuit.
 */
export type PartReplaced = string
/**
 * Work done before this job.
 * 
 * @maxItems 40
 */
export type EarlierRepairs = {
words: InWords1
part?: PartReplaced
}[]
export type Pin = (string | number)
/**
 * Letters of IEC 60757, base colour first: RD/BU.
 */
export type WireColour = string
export type Notes = string

/**
 * One vehicle with one complaint. Everything but the complaint may be left out.
 */
export interface JobDraft {
job?: Name
complaint: Complaint
procedure?: Procedure
codes?: TroubleCodes
vehicle?: Vehicle
order?: OrderNumber
customer?: Customer
"earlier-repairs"?: EarlierRepairs
terminals?: PinsAndWireColours
notes?: Notes
}
export interface Vehicle {
words?: InWords
vin?: VehicleIdentificationNumber
plate?: Plate
odometer?: Odometer
drive?: Drive
}
/**
 * By terminal of the circuit.
 */
export interface PinsAndWireColours {
[k: string]: {
pin?: Pin
colour?: WireColour
}
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of JobDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is JobDraft) & { errors?: SchemaError[] | null };
export default validate;
