// Made from docs/schema/procedure.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * Short name in small letters; the file is named after it.
 */
export type Name = string
/**
 * What the person who chooses it reads.
 */
export type Title = string
/**
 * What it is for, what to have ready, what it does not cover.
 */
export type About = string
/**
 * Name of the circuit file it is about.
 */
export type Circuit = string
/**
 * Codes it answers.
 * 
 * @maxItems 60
 */
export type TroubleCodes = string[]
export type StepName = string
/**
 * A few words that name the step in lists.
 */
export type Title1 = string
/**
 * Kind of test.
 */
export type Family = ("reference" | "ground" | "signal" | "injection" | "bypass" | "actuation" | "continuity" | "pattern" | "neighbour" | "wiggle" | "comparison" | "inspection" | "interview")
/**
 * State of the vehicle. Stays as it was in the step before only if you write it again. driving is a road test: it reads no instrument.
 */
export type State = ("key-off" | "key-on" | "cranking" | "running" | "driving")
/**
 * Parts whose connector is off during this step.
 * 
 * @maxItems 12
 */
export type Unplugged = string[]
/**
 * What is clipped between two terminals in this step, one or a list.
 */
export type Bridges = (Bridge | Bridge[])
export type Terminal = string
/**
 * lead (a plain wire), test-light (LED), lamp (filament) or a resistance.
 */
export type Through = string
/**
 * A known good sensor is plugged in instead of the vehicle's own.
 */
export type SpareSensor = boolean
/**
 * The target passes the sensor in this step. Always so while cranking or running.
 */
export type TargetMoving = boolean
/**
 * Connectors and harness are moved for this reading too: what then fails counts, and a fault that comes and goes is likely to show. While cranking or running they are moved between two tries, never meanwhile.
 */
export type HarnessMoved = boolean
export type Text = string
/**
 * Of a practised person, all handling included.
 */
export type Minutes = number
/**
 * Names from cautions.yaml beyond those that the vehicle state and the instrument add by themselves. With use they come before each step inside, with conclude they are said with the repair.
 */
export type Cautions = string[]
/**
 * Red lead first, black lead second.
 * 
 * @minItems 2
 * @maxItems 2
 */
export type ProcedureDraft1 = Terminal[]
/**
 * A part, a connector, a wire, the target.
 */
export type EyesAndFingers = string
/**
 * Unit of the number.
 */
export type Unit = ("V" | "ohm" | "A" | "Hz" | "rpm" | "%" | "s" | "deg")
/**
 * Of a signal in V or A: which of its levels a saved capture gives as the number. swing is peak to peak, ac the root mean square without the mean, as a meter on AC shows it.
 */
export type Level = ("low" | "high" | "mean" | "swing" | "ac")
/**
 * A value with its unit.
 */
export type Value = string
/**
 * Of a question: what an instrument shows meanwhile, one after the other where it is a list. A question that brings on a fault is checked against it: each fault that an answer names must show here, in this state.
 */
export type Watch = (Measure | Measure[])
/**
 * 'computed': the outcomes good, low and high get their limits from the circuit. Or a range of a good circuit, such as 4.75 V .. 5.25 V.
 */
export type Expect = string
export type Look = ("lit" | "dim" | "dark" | "full" | "weak" | "uneven" | "flat-high" | "flat-middle" | "flat-low" | "follows" | "still" | "in-step" | "shifted" | "no-signal" | "sound" | "faulty")
/**
 * Several looks that lead to the same step.
 * 
 * @minItems 1
 */
export type Looks = Look[]
/**
 * Of a question: what a trouble code on the job sheet must say for this answer to be marked, and to be what a simulated vehicle answers.
 * 
 * @minItems 1
 */
export type KindsOfCode = ("circuit" | "range" | "low" | "high" | "intermittent" | "correlation")[]
/**
 * @minItems 1
 * @maxItems 40
 */
export type ProcedureDraft2 = string[]
/**
 * For a question: the outcome a simulated vehicle answers when no code of the job sheet does.
 */
export type UsualAnswer = string
/**
 * Name of a sub-procedure.
 */
export type Use = string
/**
 * Ends a sub-procedure with this result.
 */
export type Result = string
/**
 * Faults this conclusion covers; an empty list means that no fault was found, "*" alone that nothing was told.
 * 
 * @maxItems 80
 */
export type Concludes = string[]
/**
 * Of a conclusion: the steps it needs; a step that uses a sub-procedure means all steps in it. If one of them could not be done, the path ends at 'otherwise'.
 * 
 * @minItems 1
 * @maxItems 60
 */
export type Requires = string[]
/**
 * Steps that must pass after the repair.
 */
export type Retest = string[]

/**
 * A decision tree of tests. Each step asks for one thing; its outcomes lead to other steps; a conclusion names the faults it covers.
 */
export interface ProcedureDraft {
procedure: Name
title: Title
about?: About
circuit?: Circuit
codes?: TroubleCodes
needs?: Needs
start: StepName
steps: Steps
}
/**
 * Makes this a sub-procedure: names the caller fills in with 'with', each with a word on what it is. Inside, write $name in leads and {name} in texts.
 */
export interface Needs {
[k: string]: string
}
/**
 * The steps by name.
 */
export interface Steps {
[k: string]: Step
}
export interface Step {
title?: Title1
test?: Family
state?: State
unplug?: Unplugged
bridge?: Bridges
spare?: SpareSensor
moving?: TargetMoving
wiggle?: HarnessMoved
say?: Text
why?: Text
minutes?: Minutes
cautions?: Cautions
measure?: Measure
watch?: Watch
expect?: Expect
outcomes?: Outcomes
usual?: UsualAnswer
cannot?: StepName
go?: StepName
use?: Use
with?: With
results?: Results
result?: Result
conclude?: Concludes
repair?: Text
customer?: Text
requires?: Requires
otherwise?: StepName
retest?: Retest
}
/**
 * Something clipped between two terminals for this step.
 */
export interface Bridge {
from: Terminal
to: Terminal
through?: Through
}
/**
 * What is read. One key: the instrument; its value: where the leads go.
 */
export interface Measure {
volts?: ProcedureDraft1
ohms?: ProcedureDraft1
amps?: ProcedureDraft1
light?: ProcedureDraft1
lamp?: ProcedureDraft1
pattern?: ProcedureDraft1
timing?: ProcedureDraft1
counts?: Terminal
inspect?: EyesAndFingers
reading?: AnotherNumber
}
/**
 * A number that the circuit model knows nothing of.
 */
export interface AnotherNumber {
unit: Unit
level?: Level
low?: Value
high?: Value
}
/**
 * What can come out, by name, and where each leads. The names good, low and high take computed limits.
 */
export interface Outcomes {
[k: string]: Outcome
}
/**
 * Where a result leads. A number has from/to or below/above (the lower end counts, the upper does not); a look has look or looks; a question has words, and may say which trouble codes answer it, and which faults can.
 */
export interface Outcome {
from?: Value
to?: Value
below?: Value
above?: Value
look?: Look
looks?: Looks
words?: Text
"code-kinds"?: KindsOfCode
"only-with"?: ProcedureDraft2
"never-with"?: ProcedureDraft2
because?: Text
go: StepName
}
/**
 * What the sub-procedure needs.
 */
export interface With {
[k: string]: string
}
/**
 * Where each result of the sub-procedure leads.
 */
export interface Results {
[k: string]: StepName
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of ProcedureDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is ProcedureDraft) & { errors?: SchemaError[] | null };
export default validate;
