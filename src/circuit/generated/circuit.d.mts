// Made from docs/schema/circuit.schema.json by scripts/schemas.mjs. Change the schema, not this file.

export type Name = string
/**
 * One line for people.
 */
export type Title = string
/**
 * What a technician should know about this kind of circuit; where typical values come from.
 */
export type Notes = string
export type Quantity = string
export type CircuitDraft1 = (ModuleDraft | HallSwitchDraft | ReluctorDraft | PotentiometerDraft | CurrentSwitchDraft | FuseDraft | RelayDraft | GroundPointDraft | NeighbourDraft)
/**
 * What people call it.
 */
export type PlainName = string
/**
 * Another pin of this module, battery, ground, nothing (an input without a resistor), a voltage, or the voltage behind the resistor of another pin; or one of these.
 */
export type OtherEnd = string
/**
 * travel: the two levels are percentages of the travel from the lower to the upper end of the track at this pin.
 */
export type Of = "travel"
/**
 * What people call it.
 */
export type PlainName1 = string
/**
 * What people call it.
 */
export type PlainName2 = string
/**
 * What people call it.
 */
export type PlainName3 = string
/**
 * What people call it.
 */
export type PlainName4 = string
/**
 * What people call it.
 */
export type PlainName5 = string
/**
 * What people call it.
 */
export type PlainName6 = string
/**
 * What people call it.
 */
export type PlainName7 = string
/**
 * What people call it.
 */
export type PlainName8 = string
export type Terminal = string
/**
 * Plain words.
 */
export type WhereItSits = string
/**
 * Tooth pitches of a whole turn, the missing ones counted.
 */
export type Pitches = number
/**
 * Teeth left out as a mark.
 */
export type MissingTeeth = number
/**
 * 0.5 for a camshaft; 0 when it does not turn with the engine.
 */
export type TurnsPerCrankshaftTurn = number
/**
 * What it is made of. A ring of magnets can be weak or face the wrong way, and any ring can have run-out; leave out for a wheel of the engine.
 */
export type RingOnAWheelBearing = ("teeth" | "magnets" | "either")
/**
 * Also the chance that a still target leaves a switched output on. A range where the wheel is not known.
 */
export type PartOfATurnTheOutputIsOn = (number | string)
export type Weight = number
/**
 * Instead of the rule's words.
 */
export type PlainWords = string
/**
 * Faults with the same repair need not be told apart.
 */
export type Repair = string
/**
 * What to do.
 */
export type RepairInWords = string
/**
 * Why this cannot happen here.
 */
export type RuledOutBecause = string

/**
 * A sensor circuit as it is built into a vehicle: parts, wires, what can fail and how likely.
 */
export interface CircuitDraft {
circuit: Name
title: Title
notes?: Notes
temperature?: Quantity
supply?: Battery
parts: Parts
wires: Wires
target?: Target
weights?: HowLikelyEachClassOfFaultIs
faults?: ChangesToTheFaultsThatFollowFromTheStructure
}
/**
 * Voltage at rest (key-off and key-on), while cranking and with the engine running, and the resistance inside.
 */
export interface Battery {
battery?: Quantity
cranking?: Quantity
running?: Quantity
ohms?: Quantity
}
/**
 * Everything with a connector: the module, the sensor, fuses, relays, ground points, neighbours, 60 at most. Exactly one part is the sensor.
 */
export interface Parts {
[k: string]: CircuitDraft1
}
/**
 * A control module, pin by pin: what is behind each pin.
 */
export interface ModuleDraft {
kind: "module"
words?: PlainName
offset?: Quantity
pins: Pins
}
/**
 * Each pin by its name, 150 at most.
 */
export interface Pins {
[k: string]: ModulePinDraft
}
export interface ModulePinDraft {
reference?: RegulatedOutput
pull?: Resistor
input?: Input
"joined-to"?: Name
driver?: Driver
ground?: Ground
}
/**
 * A supply that the module gives out. It limits its current and takes none back.
 */
export interface RegulatedOutput {
volts: Quantity
series?: Quantity
limit?: Quantity
}
/**
 * Pull-up, pull-down, bias or sense resistor inside the module.
 */
export interface Resistor {
to: OtherEnd
ohms: Quantity
alike?: Name
}
/**
 * The module reads this pin. Either two thresholds, or the swing against another pin that it needs.
 */
export interface Input {
"low-below"?: Quantity
"high-above"?: Quantity
swing?: Quantity
of?: Of
against?: Name
}
/**
 * The module switches this pin to ground while it has power, as for the coil of a relay.
 */
export interface Driver {
ohms?: Quantity
}
/**
 * The pin is a ground of the module.
 */
export interface Ground {
ohms?: Quantity
offset?: Quantity
}
/**
 * Hall switch with open-collector output. Pins: feed, signal, ground.
 */
export interface HallSwitchDraft {
kind: "hall-switch"
words?: PlainName1
draws?: Quantity
minimum?: Quantity
on?: Quantity
off?: Quantity
limit?: Quantity
}
/**
 * Variable reluctance coil. Pins: plus, minus.
 */
export interface ReluctorDraft {
kind: "reluctor"
words?: PlainName2
ohms?: Quantity
cranking?: Quantity
running?: Quantity
"by-hand"?: Quantity
}
/**
 * One or more tracks moved together. Pins as the tracks name them.
 */
export interface PotentiometerDraft {
kind: "potentiometer"
words?: PlainName3
turned?: Quantity
tracks: Tracks
}
/**
 * Each track by its name.
 */
export interface Tracks {
[k: string]: TrackDraft
}
export interface TrackDraft {
feed: Name
signal: Name
ground: Name
ohms: Quantity
wiper?: Quantity
closed?: Quantity
open?: Quantity
beside?: Name
runs?: Quantity
lower?: Quantity
}
/**
 * Two-wire active sensor that switches between two currents. Pins: feed, signal.
 */
export interface CurrentSwitchDraft {
kind: "current-switch"
words?: PlainName4
low?: Quantity
high?: Quantity
minimum?: Quantity
reverse?: Quantity
}
/**
 * A fuse. Pins: in, out.
 */
export interface FuseDraft {
kind: "fuse"
words?: PlainName5
amps?: Quantity
ohms?: Quantity
}
/**
 * A relay contact. Pins, with the terminal numbers of DIN 72552: 30 (in), 87 (out); with a coil also 86 (its feed) and 85 (its switched side). Without a coil the contact is closed whenever the key is on.
 */
export interface RelayDraft {
kind: "relay"
words?: PlainName6
ohms?: Quantity
coil?: Quantity
"pulls-in"?: Quantity
}
/**
 * A stud on the body. Pin: eyelet.
 */
export interface GroundPointDraft {
kind: "ground-point"
words?: PlainName7
ohms?: Quantity
offset?: Quantity
}
/**
 * Another part on the same feed or ground, as a load. Pins: feed, ground.
 */
export interface NeighbourDraft {
kind: "neighbour"
words?: PlainName8
ohms: Quantity
shorted?: Quantity
}
/**
 * Each wire by its name, from one terminal to another, 150 at most. Names like splice.feed make a joint of several wires.
 */
export interface Wires {
[k: string]: WireDraft
}
export interface WireDraft {
from: Terminal
to: Terminal
size: Quantity
length: Quantity
}
/**
 * What moves past the sensor: a toothed wheel; leave out for a sensor moved by hand or foot.
 */
export interface Target {
at: WhereItSits
teeth?: Pitches
missing?: MissingTeeth
turns?: TurnsPerCrankshaftTurn
ring?: RingOnAWheelBearing
on?: PartOfATurnTheOutputIsOn
}
/**
 * Relative weight of a whole class, shared out among its faults. 0 rules the class out.
 */
export interface HowLikelyEachClassOfFaultIs {
connector?: Weight
wire?: Weight
sensor?: Weight
module?: Weight
supply?: Weight
neighbour?: Weight
target?: Weight
}
/**
 * By fault id: another weight, other words, another size, another repair, or ruled out with the reason.
 */
export interface ChangesToTheFaultsThatFollowFromTheStructure {
[k: string]: FaultChangeDraft
}
export interface FaultChangeDraft {
weight?: Weight
words?: PlainWords
repair?: Repair
"repair-words"?: RepairInWords
ohms?: Quantity
"ruled-out"?: RuledOutBecause
}

import type { SchemaError } from '../../source/schema-issues.ts';
/** True when `data` has the shape of CircuitDraft; `errors` of the last call otherwise. */
declare const validate: ((data: unknown) => data is CircuitDraft) & { errors?: SchemaError[] | null };
export default validate;
