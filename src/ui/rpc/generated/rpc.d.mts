// Made from docs/schema/rpc.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * One message of a program to ohmward run, resume, retest or drill with --rpc: JSON-RPC 2.0, one message a line. Parameters go by name. What comes back is in rpc-answer.schema.json.
 */
export type Call = ({
jsonrpc: "2.0"
id?: Id
method: Method
params?: Parameters
} & (Hello | Procedures | Sheet | Begin | State | Events | Acknowledge | Reading | Choose | Done | Take | Cannot | Prepare | Tests | Test | Note | Back | Values | SetValue | PreparePlace | Place | Watched | DrivePlan | Capture1 | Captures | Instruments | Suspects | Next | Aside | Weigh | Accept | Conclude | Retests | Retest | Drive | Call1 | Work | Close | KeepGood | Pause | Resume | Move | Sketch | Sums | Calculate | Measure1 | Follow | Repairs | Diagnose | Debrief))
/**
 * Comes back with the answer; without it there is none. A whole number no larger than 2 to the 53, or better a text.
 */
export type Id = (string | number | null)
/**
 * What is asked for.
 */
export type Method = string
/**
 * The version that the program speaks; refused when it is another one.
 */
export type Protocol = number
/**
 * Name of a procedure or of a circuit, or the path of a file.
 */
export type Procedure = string
/**
 * Name of a procedure or of a circuit, or the path of a file.
 */
export type Procedure1 = string
export type Name = string
/**
 * Its tolerances; 1 when left out.
 */
export type Seed = number
/**
 * The fault shows only to who moves the harness.
 */
export type Intermittent = boolean
/**
 * Of a drill; named when left out.
 */
export type Level = ("named" | "unnamed" | "blind" | "intermittent" | "double" | "misled")
/**
 * Of a drill: which vehicle; any when left out.
 */
export type Seed1 = number
/**
 * Of a drill: whose it is.
 */
export type Student = string
/**
 * Number of the first event that is wanted, from 1.
 */
export type From = number
/**
 * Its id. On a simulated vehicle also a list of several.
 * 
 * @minItems 1
 * @maxItems 40
 */
export type Caution = (string | Name[])
/**
 * Name of the person who has read it.
 */
export type Person = string
export type StateName = ("key-off" | "key-on" | "cranking" | "running")
/**
 * Parts whose connector is off.
 * 
 * @maxItems 20
 */
export type Unplugged = Name[]
export type Terminal = string
/**
 * lead, test-light, lamp, or ohms.
 */
export type Through = (("lead" | "test-light" | "lamp") | {
ohms: Ohms
})
/**
 * Resistance in ohms.
 */
export type Ohms = number
/**
 * What is clipped between two terminals.
 * 
 * @maxItems 6
 */
export type ClippedIn = {
from: Terminal
to: Terminal
through: Through
}[]
/**
 * The vehicle's own, or one known to be good.
 */
export type Sensor = ("fitted" | "spare")
/**
 * Whether the target passes the sensor.
 */
export type Target = ("still" | "moving")
/**
 * Which instrument looks at what, as the session file has it.
 */
export type ProbeForm = (TwoLeads | LiveData | EyesAndFingers)
/**
 * Which instrument.
 */
export type Instrument = ("volts" | "ohms" | "light" | "lamp" | "pattern" | "timing" | "amps")
/**
 * Instrument and leads, red first.
 */
export type Measure = string
/**
 * The scope: its tip, its ground.
 */
export type Capture = string
/**
 * Its id in the answer to tests.
 */
export type StandardTest = string
/**
 * Parts whose connector is off; with measure or capture.
 * 
 * @maxItems 20
 */
export type Unplugged1 = Name[]
/**
 * Two terminals and what is between: lead, test-light, lamp or ohms; with measure or capture.
 * 
 * @maxItems 6
 */
export type ClippedIn1 = string[]
/**
 * Instead of the own one of the vehicle; with measure or capture.
 */
export type AGoodSpareSensorIsPluggedIn = boolean
/**
 * By hand or with a magnet; with measure or capture.
 */
export type TheTargetPassesTheSensor = boolean
/**
 * Brings out an intermittent fault.
 */
export type HarnessAndConnectorsAreMovedMeanwhile = boolean
/**
 * As a person types it: 4.98 V, 2.2k, OL. A number alone is in the unit that is asked for.
 */
export type ReadingText = (string | number)
/**
 * The meter really shows this, though it looks like a slip.
 */
export type Sure = boolean
export type Text = string
/**
 * What the simulated vehicle shows.
 */
export type Take1 = boolean
/**
 * The meter really shows this, though it looks like a slip.
 */
export type Sure1 = boolean
/**
 * Of one that was made already; no cautions then.
 */
export type WhenItWasMade = string
/**
 * Place in the path of the state, from 0.
 */
export type To = number
/**
 * Its key in the answer to values, or its words.
 */
export type Quantity = string
/**
 * A value as in a circuit file, one of its ways, or unknown for not known after all.
 */
export type Is = string
/**
 * maker, measured, label or other; then words of one's own.
 */
export type From1 = string
/**
 * Fed at the near end, then at the far one; behind ; currents and length where they are known.
 */
export type Drops = string
/**
 * Parts that were off.
 * 
 * @maxItems 20
 */
export type Unplugged2 = Name[]
/**
 * As a person types it.
 */
export type Seen = string
/**
 * Path of the capture; the simulated vehicle makes one when left out.
 */
export type File = string
/**
 * Path of the file with the other channels of the same crank.
 */
export type SecondFile = string
/**
 * Path of a known-good capture; or the angles the edges should be at. What the job sheet states when left out.
 */
export type Against = string
/**
 * Which one is judged, from 1.
 */
export type Channel = number
/**
 * Takes it as the answer; it is only measured when left out.
 */
export type Record = boolean
/**
 * What is in it.
 */
export type Folder = string
/**
 * What it leads to from there, as a person types it.
 */
export type Name1 = string
/**
 * All that are at hand.
 */
export type Instruments1 = ("meter" | "test-light" | "lamp" | "scope" | "live-data" | "spare-sensor" | "resistor" | "lead" | "milliammeter" | "helper")[]
/**
 * As shown on reports.
 */
export type Name2 = string
/**
 * In ohms.
 */
export type InputResistance = number
/**
 * Full scale of each range in V or ohm, rising.
 * 
 * @minItems 1
 * @maxItems 20
 */
export type Ranges = number[]
/**
 * Of the display at full scale.
 */
export type Counts = number
/**
 * 0.005 for half a per cent.
 */
export type ShareOfTheReading = number
/**
 * Counts of the last digit.
 */
export type Digits = number
/**
 * The state that the vehicle cannot be had in, nor in one that is reached through it.
 */
export type State1 = ("key-on" | "cranking" | "running")
/**
 * False: it can be made after all. Left out it is true.
 */
export type Aside1 = boolean
/**
 * Of the circuit.
 * 
 * @maxItems 80
 */
export type Faults = Name[]
/**
 * It rests on one reading that is not made again.
 */
export type AllTheSame = boolean
/**
 * Of the circuit.
 * 
 * @minItems 1
 * @maxItems 80
 */
export type Faults1 = Name[]
/**
 * It rests on one reading that is not made again.
 */
export type AllTheSame1 = boolean
/**
 * What the simulated vehicle shows after its repair.
 */
export type Take2 = boolean
/**
 * The meter really shows this, though it looks like a slip.
 */
export type Sure2 = boolean
/**
 * What they did.
 */
export type Code = ("stayed-away" | "came-back")
/**
 * How it was driven, and what else was seen.
 */
export type Words = string
/**
 * What was said.
 */
export type Answer = ("authorised" | "declined")
/**
 * Who said it.
 */
export type By = string
/**
 * How, and up to what it may cost.
 */
export type Words1 = string
/**
 * Path of the folder.
 */
export type Folder1 = string
/**
 * How wide; 78 when left out.
 */
export type Columns = number
/**
 * Name and options of the sum.
 */
export type Line = string
/**
 * By their names; none gives it up.
 * 
 * @maxItems 10
 */
export type Repairs1 = Name[]

/**
 * By name.
 */
export interface Parameters {

}
/**
 * Which protocol, which program, which methods there are now. At any time.
 */
export interface Hello {
method: "hello"
params?: HelloParameters
}
/**
 * Nothing must be given.
 */
export interface HelloParameters {
protocol?: Protocol
}
/**
 * What a session can begin with. At any time.
 */
export interface Procedures {
method: "procedures"
params?: NoParameters
}
export interface NoParameters {

}
/**
 * What the job sheet of a procedure can name: terminals, parts that can have been replaced, faults of a simulated vehicle. At any time.
 */
export interface Sheet {
method: "sheet"
params: SheetParameters
}
/**
 * Which one.
 */
export interface SheetParameters {
procedure: Procedure
}
/**
 * Begins the session or the drill, once, where the command line has not.
 */
export interface Begin {
method: "begin"
params?: BeginParameters
}
/**
 * What the command line did not say.
 */
export interface BeginParameters {
procedure?: Procedure1
job?: JobSheet
bench?: SimulatedVehicle
level?: Level
seed?: Seed1
student?: Student
}
/**
 * With the keys of job.schema.json, against which it is checked; not in a drill.
 */
export interface JobSheet {

}
/**
 * Instead of a real one; not in a drill.
 */
export interface SimulatedVehicle {
fault: Name
seed?: Seed
intermittent?: Intermittent
}
/**
 * State of the session.
 */
export interface State {
method: "state"
params?: NoParameters
}
/**
 * The events of the session, as the file has them without their chain.
 */
export interface Events {
method: "events"
params?: EventsParameters
}
/**
 * From where on.
 */
export interface EventsParameters {
from?: From
}
/**
 * A person has read a caution and understood it: of the present step, of a test after the repair, or of a test that no step asks for.
 */
export interface Acknowledge {
method: "acknowledge"
params: AcknowledgeParameters
}
/**
 * Which caution, and who has read it.
 */
export interface AcknowledgeParameters {
caution: Caution
person: Person
step?: Name
test?: TestForm
}
/**
 * A test: setup and probe as the session file has them; or in words as in a file of answers, with measure, capture or the name of a standard test.
 */
export interface TestForm {
setup?: SetupForm
probe?: ProbeForm
measure?: Measure
capture?: Capture
test?: StandardTest
state?: StateName
unplug?: Unplugged1
bridges?: ClippedIn1
spare?: AGoodSpareSensorIsPluggedIn
moving?: TheTargetPassesTheSensor
wiggle?: HarnessAndConnectorsAreMovedMeanwhile
}
/**
 * State of vehicle and leads, as the session file has it.
 */
export interface SetupForm {
state: StateName
unplugged: Unplugged
bridges: ClippedIn
sensor: Sensor
target: Target
}
export interface TwoLeads {
kind: Instrument
plus: Terminal
minus: Terminal
}
export interface LiveData {
kind: "counts"
input: Terminal
}
export interface EyesAndFingers {
kind: "inspect"
of: Terminal
}
/**
 * Answers the present step with a number.
 */
export interface Reading {
method: "reading"
params: ReadingParameters
}
/**
 * What was read.
 */
export interface ReadingParameters {
reading: ReadingText
sure?: Sure
}
/**
 * Answers the present step with an outcome, or with what was seen.
 */
export interface Choose {
method: "choose"
params: ChooseParameters
}
/**
 * Which.
 */
export interface ChooseParameters {
choose: Name
}
/**
 * What the present step asks for is done.
 */
export interface Done {
method: "done"
params?: NoParameters
}
/**
 * Answers the present step with what the simulated vehicle shows.
 */
export interface Take {
method: "take"
params?: NoParameters
}
/**
 * The present step cannot be done here.
 */
export interface Cannot {
method: "cannot"
params: CannotParameters
}
/**
 * Why.
 */
export interface CannotParameters {
reason: Text
}
/**
 * What a test would be: its words and minutes, what it takes, what is good, its cautions, and what the simulated vehicle shows. Nothing is done.
 */
export interface Prepare {
method: "prepare"
params: PrepareParameters
}
/**
 * Which.
 */
export interface PrepareParameters {
test: TestForm
}
/**
 * The tests of the procedure and the usual ones of the circuit.
 */
export interface Tests {
method: "tests"
params?: NoParameters
}
/**
 * Records a test that no step asks for, at any time.
 */
export interface Test {
method: "test"
params: TestParameters
}
/**
 * Which test, and one of reading, choose and take.
 */
export interface TestParameters {
test: TestForm
reading?: ReadingText
choose?: Name
take?: Take1
sure?: Sure1
made?: WhenItWasMade
note?: Text
}
/**
 * Writes a note.
 */
export interface Note {
method: "note"
params: NoteParameters
}
/**
 * What.
 */
export interface NoteParameters {
text: Text
}
/**
 * Takes back an answer, and a conclusion with it; or the value that was set last, where that was done last.
 */
export interface Back {
method: "back"
params?: BackParameters
}
/**
 * The last answer when left out.
 */
export interface BackParameters {
to?: To
}
/**
 * What can be known of this car, what is known of it, and what the readings have shown.
 */
export interface Values {
method: "values"
params?: NoParameters
}
/**
 * Sets a value of this car; all readings are weighed with it. Until the conclusion.
 */
export interface SetValue {
method: "set-value"
params: SetValueParameters
}
/**
 * What, its value, and from where.
 */
export interface SetValueParameters {
quantity: Quantity
is: Is
from: From1
}
/**
 * How the location of a short is measured along a stretch of wire, and what there is to be placed.
 */
export interface PreparePlace {
method: "prepare-place"
params?: PreparePlaceParameters
}
/**
 * Nothing for the list of shorts; else a wire and what it touches.
 */
export interface PreparePlaceParameters {
wire?: Name
touches?: Name
from?: Name
to?: Name
}
/**
 * Records the drops along a stretch of wire, and where the short is. Until the conclusion.
 */
export interface Place {
method: "place"
params: PlaceParameters
}
/**
 * The stretch, what was off, and both drops.
 */
export interface PlaceParameters {
wire: Name
touches: Name
from?: Name
to?: Name
drops: Drops
unplugged: Unplugged2
}
/**
 * What was seen in one round of moving or warming, which answers nothing: at the present step, or at one that is made again after the repair.
 */
export interface Watched {
method: "watched"
params: WatchedParameters
}
/**
 * One round.
 */
export interface WatchedParameters {
seen: Seen
step?: Name
}
/**
 * What to record on a drive, for a fault that nothing wakes here.
 */
export interface DrivePlan {
method: "drive-plan"
params?: NoParameters
}
/**
 * Measures a saved capture, or one of the simulated vehicle, for the present step, a test after the repair, or a test that no step asks for.
 */
export interface Capture1 {
method: "capture"
params?: CaptureParameters
}
/**
 * In a drill only test, and the capture counts at once.
 */
export interface CaptureParameters {
file?: File
second?: SecondFile
against?: Against
channel?: Channel
step?: Name
test?: TestForm
record?: Record
}
/**
 * Capture files to choose from.
 */
export interface Captures {
method: "captures"
params?: CapturesParameters
}
/**
 * Where the choice begins when left out.
 */
export interface CapturesParameters {
folder?: Folder
name?: Name1
}
/**
 * What is at hand; changes it when anything is given.
 */
export interface Instruments {
method: "instruments"
params?: InstrumentsParameters
}
/**
 * What is left out stays.
 */
export interface InstrumentsParameters {
instruments?: Instruments1
meter?: Meter
}
/**
 * Its accuracy, from its manual.
 */
export interface Meter {
name: Name2
inputOhms: InputResistance
volts: AccuracyForm
ohms: AccuracyForm
amps?: AccuracyForm
}
export interface AccuracyForm {
ranges: Ranges
counts: Counts
ofReading: ShareOfTheReading
digits: Digits
}
/**
 * All that it could be, by chance.
 */
export interface Suspects {
method: "suspects"
params?: NoParameters
}
/**
 * The tests that would tell most now, best first, without those that were set aside.
 */
export interface Next {
method: "next"
params?: NoParameters
}
/**
 * This test can't be done here, and is proposed no more; or can after all. Of a connector or a vehicle state: all that need it, and steps of the tree that need it are skipped.
 */
export interface Aside {
method: "aside"
params: AsideParameters
}
/**
 * Which: a test, a connector or a vehicle state.
 */
export interface AsideParameters {
test?: TestForm
connector?: Name
state?: State1
reason?: Text
aside?: Aside1
}
/**
 * What speaks for a conclusion and what would prove it. Nothing is concluded.
 */
export interface Weigh {
method: "weigh"
params?: WeighParameters
}
/**
 * The tree's own conclusion when left out.
 */
export interface WeighParameters {
faults?: Faults
}
/**
 * Accepts the conclusion that the tree has come to.
 */
export interface Accept {
method: "accept"
params?: AcceptParameters
}
/**
 * Whether it is accepted all the same.
 */
export interface AcceptParameters {
sure?: AllTheSame
}
/**
 * A conclusion of one's own, whatever the tree says.
 */
export interface Conclude {
method: "conclude"
params: ConcludeParameters
}
/**
 * Faults of the circuit, or words.
 */
export interface ConcludeParameters {
faults?: Faults1
words?: Text
sure?: AllTheSame1
}
/**
 * The tests that must pass after the repair, with the readings before and after.
 */
export interface Retests {
method: "retests"
params?: NoParameters
}
/**
 * Answers a test after the repair.
 */
export interface Retest {
method: "retest"
params: RetestParameters
}
/**
 * Which step, and one of reading, choose, take and cannot.
 */
export interface RetestParameters {
step: Name
reading?: ReadingText
choose?: Name
take?: Take2
cannot?: Text
sure?: Sure2
}
/**
 * Reports what the trouble codes did once the vehicle was driven; also of a closed record.
 */
export interface Drive {
method: "drive"
params: Parameters1
}
/**
 * What the codes did, and how it was driven.
 */
export interface Parameters1 {
code: Code
words?: Words
}
/**
 * What the customer is told on the telephone: three sentences, and prices by the rates of the shop. Nothing is done.
 */
export interface Call1 {
method: "call"
params?: NoParameters
}
/**
 * What the customer said about the work, after a conclusion.
 */
export interface Work {
method: "work"
params: Parameters2
}
/**
 * Who said what.
 */
export interface Parameters2 {
answer: Answer
by: By
words?: Words1
}
/**
 * Closes the record with what the tests after the repair say.
 */
export interface Close {
method: "close"
params?: NoParameters
}
/**
 * Keeps the captures that passed after the repair as known-good ones of this vehicle.
 */
export interface KeepGood {
method: "keep-good"
params?: NoParameters
}
/**
 * Pauses the session. The end of input does the same.
 */
export interface Pause {
method: "pause"
params?: NoParameters
}
/**
 * Goes on with a paused session.
 */
export interface Resume {
method: "resume"
params?: NoParameters
}
/**
 * After the disk has refused: goes on in another folder, and saves there what was not saved.
 */
export interface Move {
method: "move"
params: MoveParameters
}
/**
 * Where to.
 */
export interface MoveParameters {
folder: Folder1
}
/**
 * The wiring as lines of text, with the leads of the present step or of a test on it.
 */
export interface Sketch {
method: "sketch"
params?: SketchParameters
}
/**
 * Nothing must be given.
 */
export interface SketchParameters {
test?: TestForm
columns?: Columns
}
/**
 * The small sums that fit the present step.
 */
export interface Sums {
method: "sums"
params?: NoParameters
}
/**
 * One sum with values of one's own.
 */
export interface Calculate {
method: "calculate"
params: CalculateParameters
}
/**
 * As for ohmward calc.
 */
export interface CalculateParameters {
line: Line
}
/**
 * In a drill: makes any test at the vehicle.
 */
export interface Measure1 {
method: "measure"
params: MeasureParameters
}
/**
 * Which.
 */
export interface MeasureParameters {
test: TestForm
}
/**
 * In a drill: does the present step of the procedure.
 */
export interface Follow {
method: "follow"
params?: NoParameters
}
/**
 * In a drill: what the diagnosis can be.
 */
export interface Repairs {
method: "repairs"
params?: NoParameters
}
/**
 * In a drill: gives the diagnosis, which ends it.
 */
export interface Diagnose {
method: "diagnose"
params: DiagnoseParameters
}
/**
 * Of the answer to repairs.
 */
export interface DiagnoseParameters {
repairs: Repairs1
}
/**
 * In a drill that has ended: what was wrong, what the readings said, the score.
 */
export interface Debrief {
method: "debrief"
params?: NoParameters
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of Call; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is Call) & { errors?: SchemaError[] | null };
export default validate;
