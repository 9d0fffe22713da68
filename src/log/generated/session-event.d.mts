// Made from docs/schema/session-event.schema.json by scripts/schemas.mjs. Change the schema, not this file.

/**
 * One line of a session file of format 2: a past fact, each plain JSON. Events of earlier formats are brought into this form when they are read. What no schema can say is checked by deciding each event again from those before it.
 */
export type CheckedEvent = (SessionOpened | CautionAcknowledged | ReadingRecorded | LookRecorded | StepDone | StepImpossible | StepReopened | TestRecorded | TestSetAside | ConnectorSetAside | StateSetAside | ValueSet | ValueTakenBack | ShortPlaced | WakingWatched | NoteAdded | InstrumentsChanged | SessionPaused | SessionResumed | Concluded | RetestRecorded | RetestImpossible | SessionClosed | DriveReported | WorkAnswered | TestStopped | CautionPassedOver | AnswerRevealed | Recovered | SegmentContinued)
/**
 * Number of the event, from 1, over all parts of the session.
 */
export type Seq = number
/**
 * Hash of the line before; null in the first line.
 */
export type Prev = (null | Hash)
/**
 * SHA-256, lower-case hex.
 */
export type Hash = string
/**
 * Wall clock, RFC 3339 with offset.
 */
export type At = string
/**
 * Milliseconds since the session was opened or resumed, from a clock that cannot be set.
 */
export type Elapsed = number
/**
 * Who gives the answers.
 */
export type Hand = ("person" | "answers-file" | "program" | "pipe" | "not-stated")
export type Drive = ("combustion" | "hybrid" | "electric" | "not-stated")
export type Step = (MeasureStep | LookStep | AskStep | ActStep | Conclusion)
export type Family = ("reference" | "ground" | "signal" | "injection" | "bypass" | "actuation" | "continuity" | "pattern" | "neighbour" | "wiggle" | "comparison" | "inspection" | "interview")
export type VehicleState = ("key-off" | "key-on" | "cranking" | "running" | "driving")
export type Through = (("lead" | "test-light" | "lamp") | {
ohms: number
})
export type SignalWord = ("DANGER" | "WARNING" | "CAUTION" | "NOTICE")
export type Hazards = ("rotating-parts" | "hot-parts" | "exhaust-gas" | "unexpected-start" | "vehicle-secured" | "energised-circuit" | "battery" | "high-voltage" | "module-damage" | "instrument-damage" | "fuel" | "airbag" | "harness-damage" | "engine-start" | "ignition-voltage" | "raw-fuel" | "starter-heat" | "engine-damage" | "vehicle-moves" | "traffic" | "other")[]
/**
 * What is read; the red lead is plus.
 */
export type Probe = (VoltsProbe | OhmsProbe | AmpsProbe | LightProbe | LampProbe | PatternProbe | CountsProbe | TimingProbe | InspectProbe)
export type MeasureUnit = ("V" | "ohm" | "A" | "Hz" | "rpm" | "%" | "s" | "deg")
export type LookProbe = (LightProbe | LampProbe | PatternProbe | CountsProbe | TimingProbe | InspectProbe)
/**
 * What an instrument without digits shows.
 */
export type Look = ("lit" | "dim" | "dark" | "full" | "weak" | "uneven" | "flat-high" | "flat-middle" | "flat-low" | "follows" | "still" | "in-step" | "shifted" | "no-signal" | "sound" | "faulty")
export type Chance = number
export type Part = (ModulePart | HallPart | ReluctorPart | PotentiometerPart | CurrentSwitchPart | FusePart | RelayPart | GroundPointPart | NeighbourPart | JointPart)
export type PullTo = (PullToPin | PullToBattery | PullToGround | PullToNothing | PullToVolts | PullToOneOf)
export type PullEnd = (PullToPin | PullToBattery | PullToGround | PullToNothing | PullToVolts)
export type ModuleInput = (LevelsInput | SwingInput)
export type FaultEffect = (WireOpen | WireResistive | WireShort | WiresSwapped | ContactOpen | ContactResistive | PartFails | TargetFails)
/**
 * A value, one of the ways a module can be made, or null for not known.
 */
export type KnownIs = (null | {
value: Toleranced
} | {
way: string
})
export type Vehicle = (RealVehicle | BenchVehicle | DrillVehicle)
export type ChannelUnit = ("V" | "A" | "1")
export type Finding = (SaidWords | FoundFinding)
/**
 * What is against the signal, with its numbers in SI units; more: so many are not listed.
 */
export type FoundFinding = (Coarse | Dead | Stuck | WrongLevel | Noisy | WrongPulses | ContactsLost | OtherPattern | MissingTeeth | Weak | WeakTeeth | RunOut | Inverted | WrongCurrent | SlowEdges)
export type Phase = (SaidWords | FoundPhase)
export type Shown = (ShownNumber | ShownLook)
export type ExpectedShown = (ExpectedNumber | ExpectedLooks)
/**
 * A reading that speaks for the conclusion; counted: it is an independent piece.
 */
export type EvidenceLine = (EvidenceReading | EvidenceSaid)
/**
 * Number of an event in its session.
 */
export type EventNumber = number
/**
 * A repair that readings rule out.
 */
export type RuledOutLine = (RuledOutRepair | RuledOutSaid)

/**
 * The first event. It holds everything needed to read the session without any other file. rules: version of the rules that judge.
 */
export interface SessionOpened {
type: "session-opened"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
format: 2
rules: number
program: string
by: Hand
id: string
person: string
shop: string
instruments: string[]
meter: Meter
job: Job
procedure: (null | Procedure)
circuit: (null | Circuit)
known?: SetValue[]
cautionRules: CautionRule[]
vehicle: Vehicle
from?: string
}
/**
 * Stated accuracy: +/-(fraction of reading + counts of the last digit), with its ranges.
 */
export interface Meter {
name: string
inputOhms: number
volts: MeterFunction
ohms: MeterFunction
amps?: MeterFunction
}
export interface MeterFunction {
/**
 * @minItems 1
 */
ranges: number[]
counts: number
ofReading: number
digits: number
}
/**
 * The job sheet, with all its keys.
 */
export interface Job {
name: string
complaint: string
codes: string[]
codeStates?: {
[k: string]: "stored" | "pending" | "history"
}
position?: string
stands?: string
vehicle: JobVehicle
order: string
customer: string
earlierRepairs: EarlierRepair[]
circumstances?: Circumstances
terminals: {
[k: string]: JobTerminal
}
known?: KnownSaid[]
harness?: HarnessSaid[]
shares?: ShareSaid[]
notes: string
}
export interface JobVehicle {
words: string
vin: string
plate: string
odometer: string
drive: Drive
}
export interface EarlierRepair {
words: string
part: (string | null)
fitted?: ("new" | "second-hand" | "other-make")
changed?: ("nothing" | "for-a-while" | "cured")
}
/**
 * What was told and seen before anything was touched.
 */
export interface Circumstances {
happens?: ("always" | "cold" | "hot" | "wet" | "bumps" | "cranking")[]
failsWithIt?: string
recentWork?: string
seen?: string
freezeFrame?: string[]
}
export interface JobTerminal {
pin: string
colour: string
}
/**
 * What is known about this car, as the job sheet has it.
 */
export interface KnownSaid {
what: string
is: string
from: string
}
/**
 * A connector, a splice or a wire of this car's harness, as the job sheet has it.
 */
export interface HarnessSaid {
connector?: string
splice?: string
wire?: string
wires?: string[]
at?: string
minutes?: number
length?: string
size?: string
}
export interface ShareSaid {
name: string
shares: ("feed" | "reference" | "ground" | "plug")[]
works?: ("works" | "fails" | "not-known")
how?: string
sister?: string
}
/**
 * The tree as it was walked: sub-procedures folded in, limits as numbers, cautions attached.
 */
export interface Procedure {
name: string
title: string
about: string
circuit: (string | null)
codes: string[]
start: string
steps: {
[k: string]: Step
}
}
export interface MeasureStep {
kind: "measure"
id: string
title: string
family: Family
setup: Setup
say: string
why: string
minutes: number
cautions: Caution[]
cannot: (string | null)
wiggle?: true
probe: (null | Probe)
unit: MeasureUnit
level?: ("low" | "high" | "mean" | "swing" | "ac")
expected: (null | ExpectedRange)
outcomes: RangeOutcome[]
}
/**
 * How everything is arranged before the instrument is read.
 */
export interface Setup {
state: VehicleState
unplugged: string[]
bridges: Bridge[]
sensor: ("fitted" | "spare")
target: ("still" | "moving")
}
/**
 * Something clipped between two terminals for the length of a test.
 */
export interface Bridge {
from: string
to: string
through: Through
}
export interface Caution {
id: string
word: SignalWord
say: string
hazards: Hazards
}
export interface VoltsProbe {
kind: "volts"
plus: string
minus: string
}
export interface OhmsProbe {
kind: "ohms"
plus: string
minus: string
}
export interface AmpsProbe {
kind: "amps"
plus: string
minus: string
}
export interface LightProbe {
kind: "light"
plus: string
minus: string
}
export interface LampProbe {
kind: "lamp"
plus: string
minus: string
}
export interface PatternProbe {
kind: "pattern"
plus: string
minus: string
}
export interface CountsProbe {
kind: "counts"
input: string
}
export interface TimingProbe {
kind: "timing"
plus: string
minus: string
}
export interface InspectProbe {
kind: "inspect"
of: string
}
export interface ExpectedRange {
low: (number | null)
nominal: (number | null)
high: (number | null)
from: ("circuit" | "author")
}
export interface RangeOutcome {
name: string
words: string
go: string
from: (number | null)
to: (number | null)
under?: string[]
}
export interface LookStep {
kind: "look"
id: string
title: string
family: Family
setup: Setup
say: string
why: string
minutes: number
cautions: Caution[]
cannot: (string | null)
wiggle?: true
probe: LookProbe
expected: Look[]
outcomes: LookOutcome[]
}
export interface LookOutcome {
name: string
words: string
go: string
looks: Look[]
}
export interface AskStep {
kind: "ask"
id: string
title: string
family: Family
setup: Setup
say: string
why: string
minutes: number
cautions: Caution[]
cannot: (string | null)
usual: (string | null)
watched?: Probe[]
outcomes: AskOutcome[]
}
export interface AskOutcome {
name: string
words: string
go: string
codeKinds?: ("circuit" | "range" | "low" | "high" | "intermittent" | "correlation")[]
under?: string[]
}
export interface ActStep {
kind: "act"
id: string
title: string
family: Family
setup: Setup
say: string
why: string
minutes: number
cautions: Caution[]
cannot: (string | null)
go: string
}
export interface Conclusion {
kind: "conclude"
id: string
title: string
faults: string[]
say: string
repair: string
customer: string
cleared?: string
requires?: string[]
otherwise?: string
retest: string[]
}
/**
 * The circuit with every value in SI units and every fault spelled out.
 */
export interface Circuit {
name: string
title: string
notes: string
celsius: number
battery: Battery
/**
 * @maxItems 100
 */
parts: Part[]
/**
 * @maxItems 200
 */
wires: Wire[]
/**
 * @maxItems 101
 */
connectors: Connector[]
/**
 * @maxItems 2000
 */
terminals: Terminal[]
target: (null | Target)
/**
 * @maxItems 5000
 */
faults: Fault[]
}
export interface Battery {
rest: Positive
cranking: Positive
running: Positive
ohms: Positive
}
/**
 * A value above zero with its tolerance.
 */
export interface Positive {
nominal: number
low: number
high: number
unit: ("V" | "A" | "ohm" | "Hz" | "rpm" | "%" | "s" | "m" | "m2" | "degC" | "deg" | "F" | "W" | "1")
spread?: "log"
/**
 * @minItems 1
 */
oneOf?: PositiveAlternative[]
}
/**
 * One of several values above zero, and the chance that it is this one.
 */
export interface PositiveAlternative {
chance: Chance
value: Positive
}
export interface ModulePart {
kind: "module"
name: string
words: string
pins: string[]
inside: ModulePin[]
groundVolts?: Toleranced
}
export interface ModulePin {
name: string
reference: (null | PinReference)
pull: (null | PinPull)
input: (null | ModuleInput)
groundVolts?: Toleranced
driver?: Positive
ground: (null | Positive)
joinedTo: (string | null)
}
export interface PinReference {
volts: ("battery" | Positive)
series: Positive
limit: Positive
batteryChance?: Chance
}
export interface PinPull {
to: PullTo
ohms: Positive
ohmsAs?: string
alike?: string
}
export interface PullToPin {
kind: "pin"
pin: string
}
export interface PullToBattery {
kind: "battery"
}
export interface PullToGround {
kind: "ground"
}
export interface PullToNothing {
kind: "nothing"
}
export interface PullToVolts {
kind: "volts"
volts: Toleranced
as?: string
}
/**
 * A value with its tolerance, in the unit without prefix.
 */
export interface Toleranced {
nominal: number
low: number
high: number
unit: ("V" | "A" | "ohm" | "Hz" | "rpm" | "%" | "s" | "m" | "m2" | "degC" | "deg" | "F" | "W" | "1")
spread?: "log"
/**
 * @minItems 1
 */
oneOf?: Alternative[]
}
/**
 * One of several values, and the chance that it is this one.
 */
export interface Alternative {
chance: Chance
value: Toleranced
}
export interface PullToOneOf {
kind: "one-of"
/**
 * @minItems 1
 */
ends: PullChoice[]
}
export interface PullChoice {
chance: Chance
end: PullEnd
}
export interface LevelsInput {
kind: "levels"
lowBelow: number
highAbove: number
of?: ("pull-amps" | "pull-supply" | "travel")
}
export interface SwingInput {
kind: "swing"
swing: number
against: string
}
export interface HallPart {
kind: "hall-switch"
name: string
words: string
pins: string[]
draws: Positive
minimum: Positive
on: Positive
off: Positive
limit: Positive
}
export interface ReluctorPart {
kind: "reluctor"
name: string
words: string
pins: string[]
ohms: Positive
cranking: Positive
running: Positive
byHand: Positive
}
export interface PotentiometerPart {
kind: "potentiometer"
name: string
words: string
pins: string[]
/**
 * @minItems 1
 */
tracks: Track[]
turned?: Toleranced
}
export interface Track {
name: string
feed: string
signal: string
ground: string
ohms: Positive
wiper: Positive
closed?: Toleranced
open?: Toleranced
beside?: BesideTrack
}
export interface BesideTrack {
track: string
/**
 * @minItems 1
 * @maxItems 12
 */
runs: ("half" | "opposite" | "lower")[]
which: Toleranced
lower: Toleranced
}
export interface CurrentSwitchPart {
kind: "current-switch"
name: string
words: string
pins: string[]
low: Positive
high: Positive
minimum: Positive
reverse: Positive
}
export interface FusePart {
kind: "fuse"
name: string
words: string
pins: string[]
amps: number
ohms: Positive
}
export interface RelayPart {
kind: "relay"
name: string
words: string
pins: string[]
ohms: Positive
coil?: RelayCoil
}
export interface RelayCoil {
ohms: Positive
pullsIn: Positive
}
export interface GroundPointPart {
kind: "ground-point"
name: string
words: string
pins: string[]
ohms: Positive
volts?: Toleranced
}
export interface NeighbourPart {
kind: "neighbour"
name: string
words: string
pins: string[]
ohms: Positive
shorted: Positive
told?: true
}
export interface JointPart {
kind: "joint"
name: string
words: string
pins: string[]
splice: boolean
metres: (number | null)
minutes: (number | null)
}
export interface Wire {
name: string
from: string
to: string
ohms: number
sizeSquareMetres: number
lengthMetres: number
copper?: Positive
of?: string
measured?: true
role: ("supply" | "reference" | "ground" | "signal")
}
export interface Connector {
part: string
words: string
pins: string[]
unplugs: boolean
}
export interface Terminal {
id: string
part: string
pin: string
side: ("harness" | "part" | "post")
words: string
}
export interface Target {
at: string
teeth: (number | null)
missing: number
turns: number
onChance: number
duty?: Toleranced
ring?: ("teeth" | "magnets" | "either")
}
export interface Fault {
id: string
words: string
repair: string
repairWords: string
weight: number
subject: string[]
class: ("connector" | "wire" | "sensor" | "module" | "supply" | "neighbour" | "target")
visibleChance: number
effect: FaultEffect
also?: FaultEffect
}
export interface WireOpen {
kind: "wire-open"
wire: string
}
export interface WireResistive {
kind: "wire-resistive"
wire: string
ohms: Span
}
/**
 * Size of a fault.
 */
export interface Span {
low: number
high: number
}
export interface WireShort {
kind: "wire-short"
wire: string
to: (("battery.negative" | "battery.positive") | {
wire: string
})
ohms: Span
}
export interface WiresSwapped {
kind: "wires-swapped"
/**
 * @minItems 2
 * @maxItems 2
 */
terminals: [string, string]
}
export interface ContactOpen {
kind: "contact-open"
terminal: string
}
export interface ContactResistive {
kind: "contact-resistive"
terminal: string
ohms: Span
}
export interface PartFails {
kind: "part"
part: string
mode: ("dead" | "stuck-low" | "stuck-high" | "weak-pull-down" | "shorted" | "coil-open" | "shorted-turns" | "coil-resistive" | "leads-swapped" | "track-open" | "wiper-open" | "worn-spot" | "reference-dead" | "reference-low" | "pull-missing" | "input-dead" | "ground-open" | "driver-dead" | "blown" | "contact-open" | "contact-resistive")
at: string
size: Span
}
export interface TargetFails {
kind: "target"
mode: ("damaged" | "displaced" | "gap-wide" | "missing" | "reversed" | "weak" | "runout")
}
/**
 * A value of this car as the job sheet says it.
 */
export interface SetValue {
quantity: string
is: KnownIs
typed: string
from: KnownFrom
}
/**
 * From where it is known, and more about it in the person's words.
 */
export interface KnownFrom {
kind: ("maker" | "measured" | "label" | "other")
words: string
}
/**
 * Which steps and tests a caution comes before.
 */
export interface CautionRule {
id: string
word: SignalWord
say: string
hazards: Hazards
states: VehicleState[]
drives: Drive[]
when: ("ohms" | "amps" | "light" | "lamp" | "bridge" | "lead" | "fed-wire" | "unplug" | "module-off" | "back-probe" | "spare" | "moving")[]
}
export interface RealVehicle {
kind: "real"
}
/**
 * A simulated vehicle with this fault and sample; intermittent: healthy to every test until the harness is moved.
 */
export interface BenchVehicle {
kind: "bench"
fault: string
seed: number
intermittent?: true
}
/**
 * A simulated vehicle whose fault is hidden; commitment: salted hash of the answer.
 */
export interface DrillVehicle {
kind: "drill"
level: ("named" | "unnamed" | "blind" | "intermittent" | "double" | "misled")
seed: number
commitment: Hash
earlierRepair: (string | null)
assignment: (null | AssignmentNote)
}
export interface AssignmentNote {
name: string
part: number
limitMinutes: (number | null)
}
/**
 * step: null for a test that no step asks for. readBy: whom a program names as having read them.
 */
export interface CautionAcknowledged {
type: "caution-acknowledged"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: (string | null)
state: VehicleState
readBy?: string
cautions: ShownCaution[]
}
export interface ShownCaution {
id: string
word: string
text: string
}
/**
 * A number, as typed and as understood in SI units; null is the meter's OL.
 */
export interface ReadingRecorded {
type: "reading-recorded"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
typed: string
value: (number | null)
unit: MeasureUnit
instrument: string
judgement: (null | Judgement)
outcome: string
go: string
capture?: Capture
by?: number
}
/**
 * chance: that the true value is within what is expected.
 */
export interface Judgement {
verdict: ("good" | "low" | "high" | "borderline" | "impossible")
chance: number
}
/**
 * A capture that gave an answer: which file, what was measured of it.
 */
export interface Capture {
name: string
sha256: Hash
from: ("file" | "bench")
channel?: number
measures: CaptureMeasured
findings: Finding[]
phases?: Phase[]
channels: Envelope[]
second?: SecondFile
against?: (StatedAgainst | GoodAgainst)
shiftDegrees?: number
drops?: Drops
}
/**
 * Of the channel that is judged, in SI units; null where the signal has no such thing.
 */
export interface CaptureMeasured {
kind: ("steady" | "switched" | "alternating" | "sweep")
unit: ChannelUnit
samples: number
seconds: number
low: number
high: number
mean?: number
ac?: number
hertz: (number | null)
duty: (number | null)
rpm: (number | null)
}
/**
 * As an early version wrote it down.
 */
export interface SaidWords {
said: string
}
export interface Coarse {
kind: "coarse"
samplesPerPulse: number
}
export interface Dead {
kind: "dead"
level: number
unit: ChannelUnit
}
export interface Stuck {
kind: ("stuck-high" | "stuck-low" | "stuck-between")
volts: number
}
export interface WrongLevel {
kind: ("low-not-low" | "high-not-high")
of: ("level" | "sweep")
volts: number
limitVolts: number
}
export interface Noisy {
kind: "noisy"
noise: number
swing: number
unit: ChannelUnit
}
export interface WrongPulses {
kind: ("drop-out" | "extra-pulses")
seconds: number[]
pitch: (number | null)
more?: number
}
export interface ContactsLost {
kind: "contact-lost"
places: ContactLost[]
unit: ChannelUnit
more?: number
}
export interface ContactLost {
at: number
seconds: number
from: number
to: number
}
export interface OtherPattern {
kind: "pattern"
found: (null | WheelPattern)
wanted: WheelPattern
}
export interface WheelPattern {
teeth: number
missing: number
}
export interface MissingTeeth {
kind: "missing-teeth"
teeth: number[]
seen: number
of: number
more?: number
}
export interface Weak {
kind: "weak"
volts: number
hertz: number
limitVolts: number
}
export interface WeakTeeth {
kind: "weak-teeth"
teeth: number[]
more?: number
}
export interface RunOut {
kind: "run-out"
share: number
limitShare: number
}
export interface Inverted {
kind: "inverted"
seen: ("low" | "high" | "negative" | "positive")
}
export interface WrongCurrent {
kind: "currents"
state: ("low" | "high")
amperes: number
wantedAmperes: number
}
export interface SlowEdges {
kind: "slow-edges"
edgeSeconds: number
pulseSeconds: number
}
/**
 * Angles of the edges of one channel in the turn of another; channels count from 1.
 */
export interface FoundPhase {
reference: number
channel: number
cycleDegrees: (360 | 720)
edges: PhaseEdge[]
more?: number
}
export interface PhaseEdge {
degrees: number
direction: ("rising" | "falling")
plusMinus: number
seen: number
}
/**
 * Enough of a channel for a small picture.
 */
export interface Envelope {
name: string
unit: ChannelUnit
from: number
seconds: number
/**
 * @maxItems 400
 */
points: number[]
}
/**
 * The file of the other channels of the same crank.
 */
export interface SecondFile {
name: string
sha256: Hash
}
/**
 * Where the edges should be, as the documents state it.
 */
export interface StatedAgainst {
kind: "stated"
typed: string
}
/**
 * A known-good capture that it was compared with.
 */
export interface GoodAgainst {
kind: "good"
name: string
sha256: Hash
from: ("file" | "bench")
channel?: number
measures: CaptureMeasured
phases?: Phase[]
channels: Envelope[]
}
/**
 * Stretches in which the signal was lost. limit: below it a level is lost; null where edges were examined.
 */
export interface Drops {
count: number
shortestSeconds: (number | null)
longestSeconds: (number | null)
limit: (number | null)
least: number
most: number
}
/**
 * A look or an answer.
 */
export interface LookRecorded {
type: "look-recorded"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
look: (null | Look)
outcome: string
go: string
capture?: Capture
vain?: WakingVain
by?: number
}
/**
 * Of a step that moved or warmed something in vain: the chance, 0 to 1, that the fault is there, before and after, and the minutes that it took.
 */
export interface WakingVain {
minutes: number
before: number
after: number
}
export interface StepDone {
type: "step-done"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
go: string
}
export interface StepImpossible {
type: "step-impossible"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
reason: string
go: string
by?: number
}
/**
 * The answer of this step is taken back; answer: its position among all answers, from 0.
 */
export interface StepReopened {
type: "step-reopened"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
answer: number
}
/**
 * A test that no step asked for.
 */
export interface TestRecorded {
type: "test-recorded"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
test: Test
typed: string
shown: Shown
expected: (null | ExpectedShown)
judgement: (null | Judgement)
capture?: Capture
made?: string
note?: string
}
/**
 * wiggle: the harness is moved while the instrument is watched.
 */
export interface Test {
setup: Setup
probe: Probe
wiggle?: true
}
/**
 * In SI units; null is the meter's OL.
 */
export interface ShownNumber {
kind: "number"
value: (number | null)
unit: ("V" | "ohm" | "A")
}
export interface ShownLook {
kind: "look"
look: Look
}
/**
 * Null is an open end.
 */
export interface ExpectedNumber {
kind: "number"
low: (number | null)
high: (number | null)
}
export interface ExpectedLooks {
kind: "look"
looks: Look[]
}
/**
 * A test that the person cannot make, which is proposed no more; aside: false for one that can be made after all.
 */
export interface TestSetAside {
type: "test-set-aside"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
test: Test
aside: boolean
}
/**
 * The connector of a part cannot be reached, with the reason in words, so that nothing is proposed that needs it; aside: false where it can be after all, with an empty reason.
 */
export interface ConnectorSetAside {
type: "connector-set-aside"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
part: string
aside: boolean
reason: string
}
/**
 * The vehicle cannot be had in this state, with the reason in words, so that nothing is proposed that needs it or one that is reached through it; aside: false where it can be after all, with an empty reason.
 */
export interface StateSetAside {
type: "state-set-aside"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
state: ("key-on" | "cranking" | "running")
aside: boolean
reason: string
}
/**
 * A value of this car that the person knows; is: null for not known after all.
 */
export interface ValueSet {
type: "value-set"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
quantity: string
is: KnownIs
typed: string
from: KnownFrom
}
/**
 * What was set last is taken back. set: number of the event that set it.
 */
export interface ValueTakenBack {
type: "value-taken-back"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
set: number
}
/**
 * Where along a stretch of wire a short sits, by the drops along it. Distances count from the near end, stretch.from.
 */
export interface ShortPlaced {
type: "short-placed"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
stretch: ShortStretch
unplugged: string[]
typed: string
drops: ShortDrops
place: PlaceOnWire
}
/**
 * A whole wire, what it touches (a battery post or another wire), and the two places that the drops are read between.
 */
export interface ShortStretch {
wire: string
touches: string
from: string
to: string
}
/**
 * Volts along the stretch, fed at either end; amperes where both were measured; metres where they were typed.
 */
export interface ShortDrops {
fedFromVolts: number
fedToVolts: number
fedFromAmps: (number | null)
fedToAmps: (number | null)
lengthMetres: (number | null)
}
/**
 * share: part of the resistance before the short, 0 to 1; told: whether less than half of the stretch is left.
 */
export interface PlaceOnWire {
share: number
metres: number
lowMetres: number
highMetres: number
lengthMetres: number
told: boolean
}
/**
 * One round of moving or warming at a step that wakes a fault, and what was seen meanwhile. place: the answer of the step named after it; unit: null where only drops were counted; least, most: null with a unit is the meter's OL.
 */
export interface WakingWatched {
type: "waking-watched"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
place: (string | null)
typed: string
unit: ("V" | "ohm" | "A" | null)
least: (number | null)
most: (number | null)
drops: number
minutes: (number | null)
capture?: Capture
}
export interface NoteAdded {
type: "note-added"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: (string | null)
text: string
}
export interface InstrumentsChanged {
type: "instruments-changed"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
instruments: string[]
meter: Meter
}
export interface SessionPaused {
type: "session-paused"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
}
/**
 * Form and rules of the events from here on: another version of the program may go on with a session.
 */
export interface SessionResumed {
type: "session-resumed"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
program: string
format: 2
rules: number
by: Hand
}
/**
 * conclusion: the tree's, or null for one of the person's own, with faults or in ownWords. proven: null without a circuit to weigh it with.
 */
export interface Concluded {
type: "concluded"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
conclusion: (string | null)
ownWords: (string | null)
faults: string[]
evidence: EvidenceLine[]
ruledOut: RuledOutLine[]
proven: (boolean | null)
/**
 * Number of the event of the one reading that it rests on; absent where it rests on none alone.
 */
restsOn?: number
}
export interface EvidenceReading {
counted: boolean
reading: EventNumber
}
export interface EvidenceSaid {
counted: boolean
said: SaidEvidence
}
/**
 * As an early version wrote it down.
 */
export interface SaidEvidence {
test: string
where: string
found: string
pointsTo: string
}
export interface RuledOutRepair {
repair: string
by: EventNumber[]
}
export interface RuledOutSaid {
/**
 * As an early version wrote it down.
 */
said: {
words: string
by: string
}
}
/**
 * After the repair: one of the tests that must pass.
 */
export interface RetestRecorded {
type: "retest-recorded"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
typed: string
value: (number | null)
look: (null | Look)
outcome: string
passed: boolean
capture?: Capture
}
export interface RetestImpossible {
type: "retest-impossible"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
step: string
reason: string
}
export interface SessionClosed {
type: "session-closed"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
verdict: ("cured" | "not-cured" | "changed" | "not-shown" | "no-retest")
}
/**
 * The last word: the vehicle was driven after the repair, and the trouble codes stayed away or came back.
 */
export interface DriveReported {
type: "drive-reported"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
code: ("stayed-away" | "came-back")
words: string
}
/**
 * The customer has authorised or declined the work that the conclusion asks for; the last one counts.
 */
export interface WorkAnswered {
type: "work-answered"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
answer: ("authorised" | "declined")
by: string
words: string
}
/**
 * On a drill: the bench stopped a test that does damage or hurts.
 */
export interface TestStopped {
type: "test-stopped"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
test: Test
hazard: ("ohms-on-live" | "lamp-on-module" | "clipped-in")
}
/**
 * On a drill: a test was asked for before these cautions were acknowledged.
 */
export interface CautionPassedOver {
type: "caution-passed-over"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
cautions: string[]
}
/**
 * The last event of a drill: what was wrong, and what the answer earned.
 */
export interface AnswerRevealed {
type: "answer-revealed"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
faults: string[]
repairs: string[]
salt: string
right: boolean
score: ScorePart[]
points: number
minutes: number
yardstickMinutes: number
late: boolean
}
export interface ScorePart {
name: ("diagnosis" | "evidence" | "time" | "safety" | "danger")
points: number
most: number
}
/**
 * Written by the log: what a crash left of a last line was cut off and kept in this file.
 */
export interface Recovered {
type: "recovered"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
bytes: number
hash: Hash
file: string
}
/**
 * Written by the log: the first event of a later part, which goes on from this hash in this file.
 */
export interface SegmentContinued {
type: "segment-continued"
seq: Seq
prev: Prev
at: At
elapsed: Elapsed
continues: Hash
file: string
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of CheckedEvent; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is CheckedEvent) & { errors?: SchemaError[] | null };
export default validate;
