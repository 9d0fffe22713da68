// Made from docs/schema/answers.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * Name of the procedure; may be left out when the command line names it.
 */
export type Procedure = string
/**
 * The step this belongs to; the run stops when another is asked.
 */
export type Step = string
/**
 * As a person types it.
 */
export type Reading = (string | number)
/**
 * Its path.
 */
export type File = string
/**
 * Path of the file with the other channels of the same crank.
 */
export type SecondFile = string
/**
 * Path of a known-good capture; or the angles the edges should be at.
 */
export type Against = string
/**
 * Which one is judged, from 1.
 */
export type Channel = number
/**
 * What was seen in one round of moving or warming at the step, which it does not answer.
 */
export type Watched = string
/**
 * Name of an outcome, or of a look; of a test that no step asks for, of a look.
 */
export type Choose = string
/**
 * A test that no step asks for: instrument and leads, red first.
 */
export type Measure = string
/**
 * The same by the name of a standard test of the circuit.
 */
export type StandardTest = string
/**
 * State of the vehicle in that test.
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
 * Of such a test that was made already: before the job, or at a time of the clock. Its cautions are not asked for.
 */
export type WhenItWasMade = string
/**
 * Such a test cannot be made here, and is proposed no more; false: it can after all. Beside connector and no-state true may be left out.
 */
export type SetAside = boolean
/**
 * The part whose connector cannot be reached: nothing that needs it is proposed, and steps that need it are gone round. With aside: false it can be after all; the reason stands in cannot.
 */
export type ConnectorOutOfReach = string
/**
 * The vehicle cannot be had in this state, nor in one that is reached through it: nothing that needs it is proposed, and steps that need it are gone round. With aside: false it can be after all; the reason stands in cannot.
 */
export type VehicleStateOutOfReach = ("key-on" | "cranking" | "running")
/**
 * Concludes on these faults of the circuit, whatever the tree says.
 * 
 * @minItems 1
 * @maxItems 50
 */
export type OwnConclusion = string[]
/**
 * Concludes with what the person says is wrong.
 */
export type OwnConclusionInWords = string
/**
 * In the words of the circuit or by its key.
 */
export type What = string
/**
 * A value as in a circuit file, or what a module's pin leads to.
 */
export type Is = string
/**
 * maker, measured, label or other; then words of one's own.
 */
export type From = string
/**
 * A wire of the sensor.
 */
export type Wire = string
/**
 * ground, battery, or another wire of the sensor, as in feed-wire.
 */
export type Touches = string
/**
 * Near end of the stretch; the sensor's connector when left out.
 */
export type From1 = string
/**
 * Far end of the stretch; that of the wire when left out.
 */
export type To = string
/**
 * Fed at the near end, then at the far one; behind ; currents and length where they are known.
 */
export type Drops = string
/**
 * Parts that were off: all that hang on both wires.
 * 
 * @maxItems 20
 */
export type Unplugged1 = string[]
export type Done = true
/**
 * Why.
 */
export type CannotDo = string
/**
 * The cautions of this step are read and acknowledged.
 */
export type Acknowledge = true
/**
 * A remark that goes into the record; with a test, next to that test.
 */
export type Note = string
/**
 * Takes back what was done last: an answer, or a value that was set.
 */
export type Back = true
export type Pause = true
/**
 * What the test showed that is asked for before the conclusion: the one reading it rests on, repeated, or the most telling one (from "faults" of its own, where they are given).
 */
export type Repeated = (string | number)
/**
 * After the conclusion: the work is authorised or declined, by whom, and how.
 */
export type TheCustomer = string
/**
 * Beside a conclusion that rests on one reading: it is not made again, and the record says so.
 */
export type AllTheSame = true
/**
 * Accepts the conclusion.
 */
export type Conclude = true
/**
 * In the order in which they are given.
 * 
 * @minItems 1
 * @maxItems 1000
 */
export type Answers = AnswerDraft[]

/**
 * What a person would do in a session, in order, for a run without one: ohmward run PROCEDURE --answers FILE.
 */
export interface AnswersDraft {
procedure?: Procedure
answers: Answers
}
export interface AnswerDraft {
step?: Step
reading?: Reading
captured?: Captured
watched?: Watched
choose?: Choose
measure?: Measure
test?: StandardTest
state?: VehicleState
unplug?: Unplugged
bridges?: ClippedIn
spare?: AGoodSpareSensorIsPluggedIn
moving?: TheTargetPassesTheSensor
wiggle?: HarnessAndConnectorsAreMovedMeanwhile
made?: WhenItWasMade
aside?: SetAside
connector?: ConnectorOutOfReach
"no-state"?: VehicleStateOutOfReach
faults?: OwnConclusion
words?: OwnConclusionInWords
known?: AValueOfThisCar
place?: LocationOfAShort
done?: Done
cannot?: CannotDo
acknowledge?: Acknowledge
note?: Note
back?: Back
pause?: Pause
again?: Repeated
customer?: TheCustomer
accept?: AllTheSame
conclude?: Conclude
}
/**
 * A saved capture answers the step.
 */
export interface Captured {
file: File
second?: SecondFile
against?: Against
channel?: Channel
}
/**
 * What is known about this car is set: what, value, from where. With the value unknown it is not known after all.
 */
export interface AValueOfThisCar {
what: What
is: Is
from: From
}
/**
 * The drops along a stretch of wire, fed at either end with everything on it unplugged.
 */
export interface LocationOfAShort {
wire: Wire
touches: Touches
from?: From1
to?: To
drops: Drops
unplugged: Unplugged1
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of AnswersDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is AnswersDraft) & { errors?: SchemaError[] | null };
export default validate;
