// Made from docs/schema/job.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * Short name in small letters; the file is named after it.
 */
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
 * Codes that were read from the vehicle, each with how the module keeps it where that is known: stored, pending or history.
 * 
 * @maxItems 60
 */
export type TroubleCodes = string[]
/**
 * Which sensor it is, where the codes do not say it: a shaft, with its bank where there are several, or a wheel. Every sentence then names it.
 */
export type PositionOfTheSensor = string
/**
 * What the maker states of the signal's edges in the turn of the other one (camshaft in the crankshaft's), counted from the tooth behind its gap. A capture with both is judged by it.
 */
export type WhereTheEdgesAre = string
/**
 * What anyone would call it.
 */
export type InWords = string
/**
 * Seventeen letters and digits; its check digit is checked.
 */
export type VehicleIdentificationNumber = string
/**
 * Number plate.
 */
export type Plate = string
/**
 * As shown on the dial, with its unit.
 */
export type Odometer = string
/**
 * Hybrid and electric vehicles bring their own cautions. Left out it is not-stated, and a caution asks for it.
 */
export type Drive = ("combustion" | "hybrid" | "electric" | "not-stated")
/**
 * The shop's own number for this job.
 */
export type OrderNumber = string
/**
 * As the shop calls the customer.
 */
export type Customer = string
/**
 * What was done.
 */
export type InWords1 = string
/**
 * Its name in the circuit.
 */
export type PartReplaced = string
/**
 * A new one by the maker's number, one from another vehicle, or one of another make.
 */
export type WhatWasFitted = ("new" | "second-hand" | "other-make")
/**
 * Of the complaint: nothing, only for a while, or it was cured then.
 */
export type WhatItChanged = ("nothing" | "for-a-while" | "cured")
/**
 * Work done before this job.
 * 
 * @maxItems 40
 */
export type EarlierRepairs = {
words: InWords1
part?: PartReplaced
fitted?: WhatWasFitted
changed?: WhatItChanged
}[]
/**
 * Always, or when cold, hot, wet, over bumps, while cranking.
 * 
 * @maxItems 6
 */
export type WhenItHappens = ("always" | "cold" | "hot" | "wet" | "bumps" | "cranking")[]
/**
 * In words; nothing where all else works.
 */
export type WhatElseFails = string
/**
 * On the vehicle, before the complaint began.
 */
export type RecentWork = string
/**
 * Without touching anything.
 */
export type VisibleDamage = string
/**
 * What the module kept of the moment, line by line.
 * 
 * @maxItems 40
 */
export type FreezeFrame = string[]
/**
 * Number or letter of the pin.
 */
export type Pin = (string | number)
/**
 * Letters of IEC 60757, base colour first: RD/BU.
 */
export type WireColour = string
/**
 * In the words of the circuit or by its key.
 */
export type What = string
/**
 * A value as in a circuit file, without a tolerance within 2 %; or what a module's pin leads to.
 */
export type Is = string
/**
 * maker, measured, label or other; then words of one's own.
 */
export type From = string
/**
 * Values of the circuit from a label or the maker's documents, or measured. Each may be left out; what is known narrows the rest.
 * 
 * @maxItems 60
 */
export type WhatIsKnownAboutThisCar = {
what: What
is: Is
from: From
}[]
/**
 * Where a connector within the harness is.
 */
export type Connector = string
/**
 * Where a splice of one wire is.
 */
export type Splice = string
/**
 * Name of a wire in the circuit, to say its length or size.
 */
export type Wire = string
/**
 * Names of wires of the circuit that end at the sensor; of a splice one.
 * 
 * @minItems 1
 * @maxItems 24
 */
export type WiresThatPass = string[]
/**
 * Distance along the harness from the sensor's connector.
 */
export type At = string
/**
 * To get at it the first time.
 */
export type Minutes = number
/**
 * Of the wire from end to end.
 */
export type Length = string
/**
 * Cross-section of the wire.
 */
export type Size = string
/**
 * Connectors and splices that the sensor's wires pass through, from the sensor's connector outward, and what is known about the wires. Each connector is a place to measure at, and each side of it is a suspect of its own.
 * 
 * @maxItems 24
 */
export type HarnessOfThisCar = {
connector?: Connector
splice?: Splice
wire?: Wire
wires?: WiresThatPass
at?: At
minutes?: Minutes
length?: Length
size?: Size
}[]
/**
 * What it is called.
 */
export type Name1 = string
/**
 * What both have: a feed or reference, a ground, or a connector other than the sensor's own.
 * 
 * @minItems 1
 * @maxItems 4
 */
export type Shares = ("feed" | "reference" | "ground" | "plug")[]
/**
 * Whether it does; left out or not-known where nobody knows.
 */
export type Works = ("works" | "fails" | "not-known")
/**
 * In words.
 */
export type HowItIsKnown = string
/**
 * Only for one of the same kind on the same module: the level on its own signal with its connector off, key on.
 */
export type OpenLevelOfASister = string
/**
 * Each neighbour on this car that has the sensor's feed, reference, ground or connector too, by its name. An empty list says that nothing shares them. It moves chances by the weights in docs/maths.md, gives the circuit what can drag the feed down, and is never evidence for a proof.
 * 
 * @maxItems 12
 */
export type WhatSharesWithTheSensor = {
name: Name1
shares: Shares
works?: Works
how?: HowItIsKnown
sister?: OpenLevelOfASister
}[]
/**
 * What the vehicle of this job has when it is simulated: a fault of the procedure's circuit, or healthy.
 */
export type FaultOfTheSimulatedVehicle = string
/**
 * The simulated vehicle reads like a healthy one until its harness is moved or its sensor warmed.
 */
export type Intermittent = boolean
/**
 * Anything else that the next person should know.
 */
export type Notes = string

/**
 * One vehicle with one complaint. Everything but the complaint may be left out.
 */
export interface JobDraft {
job?: Name
complaint: Complaint
procedure?: Procedure
codes?: TroubleCodes
position?: PositionOfTheSensor
stands?: WhereTheEdgesAre
vehicle?: Vehicle
order?: OrderNumber
customer?: Customer
"earlier-repairs"?: EarlierRepairs
circumstances?: BeforeAnythingIsTouched
terminals?: PinsAndWireColours
known?: WhatIsKnownAboutThisCar
harness?: HarnessOfThisCar
shares?: WhatSharesWithTheSensor
"simulated-fault"?: FaultOfTheSimulatedVehicle
intermittent?: Intermittent
notes?: Notes
}
/**
 * What is known of the vehicle.
 */
export interface Vehicle {
words?: InWords
vin?: VehicleIdentificationNumber
plate?: Plate
odometer?: Odometer
drive?: Drive
}
/**
 * What was told and seen. Each may be left out; each moves chances by the weights in docs/maths.md, but for the freeze frame.
 */
export interface BeforeAnythingIsTouched {
happens?: WhenItHappens
"fails-with-it"?: WhatElseFails
"recent-work"?: RecentWork
seen?: VisibleDamage
"freeze-frame"?: FreezeFrame
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
