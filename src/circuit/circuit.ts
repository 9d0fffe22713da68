/** A circuit as the program uses it: every value in SI units, every fault spelled out, all of it plain JSON. */
import type { Toleranced } from '../quantity/quantity.ts';
import type { TerminalId } from './test.ts';

/** What stands in the place of a fault's id for a circuit without one. */
export const HEALTHY = 'healthy';

/** One circuit as it was loaded: what is there, where leads can go, and every fault that it can have. */
export interface Circuit {
  readonly name: string;
  readonly title: string;
  readonly notes: string;
  readonly celsius: number;
  readonly battery: Battery;
  readonly parts: readonly Part[];
  readonly wires: readonly Wire[];
  readonly connectors: readonly Connector[];
  readonly terminals: readonly Terminal[];
  readonly target: Target | null;
  readonly faults: readonly Fault[];
}

/** Voltage at its posts by what the engine does, and the resistance within. */
export interface Battery {
  readonly rest: Toleranced;
  readonly cranking: Toleranced;
  readonly running: Toleranced;
  readonly ohms: Toleranced;
}

interface PartBase {
  readonly name: string;
  readonly words: string;
  readonly pins: readonly string[];
}

/** The control module: what it feeds, pulls and reads, pin by pin. */
export interface ModulePart extends PartBase {
  readonly kind: 'module';
  readonly inside: readonly ModulePin[];
  /** How far its own ground, which resistors to ground lead to, stands above battery negative, in volts, key on. */
  readonly groundVolts?: Toleranced;
}
/**
 * What can be wrong with a wheel and where it sits; `missing` is one that is gone, or does not turn. A ring of magnets can
 * also be fitted the wrong way round or be weak, and a ring on a bearing run out of true.
 */
export type TargetMode =
  | 'damaged'
  | 'displaced'
  | 'gap-wide'
  | 'missing'
  | 'reversed'
  | 'weak'
  | 'runout';

/** A resistor behind a pin. */
export interface Pull {
  readonly to: PullTo;
  readonly ohms: Toleranced;
  /** The pin with the same resistance: two of one kind, side by side. */
  readonly ohmsAs?: string;
  /** The pin that is built alike: of several ends this one has that which stands at the same place of the other's list. */
  readonly alike?: string;
}

/** What stands behind one pin of a module. */
export interface ModulePin {
  readonly name: string;
  readonly reference: Reference | null;
  readonly pull: Pull | null;
  readonly input: ModuleInput | null;
  readonly ground: Toleranced | null;
  /** A switch to ground that is on while the module has power, as for a relay's coil: its resistance. */
  readonly driver?: Toleranced;
  /** How far the module's ground stands above battery negative by what else flows through its cable, in volts, key on. */
  readonly groundVolts?: Toleranced;
  /** Another pin that is the same copper inside. */
  readonly joinedTo: string | null;
}
/** A supply that the module gives out. */
export interface Reference {
  readonly volts: Toleranced | 'battery';
  /** Chance that this output follows the battery instead of giving `volts`, where the circuit leaves that open. */
  readonly batteryChance?: number;
  readonly series: Toleranced;
  readonly limit: Toleranced;
}
/** Whether it is the battery's voltage, in some cars at least. */
export function followsBattery({ volts, batteryChance }: Reference): boolean {
  return volts === 'battery' || batteryChance !== undefined;
}

/** What a resistor of the module leads to: one end, or one of several where the file leaves it open. */
export type PullTo = PullEnd | { readonly kind: 'one-of'; readonly ends: readonly PullChoice[] };
/** What a resistor of the module leads to. */
export type PullEnd =
  | { readonly kind: 'pin'; readonly pin: string }
  | { readonly kind: 'battery' }
  | { readonly kind: 'ground' }
  /** No resistor: the pin takes the signal as it comes. */
  | { readonly kind: 'nothing' }
  /** `as` names the pin of the same module whose voltage this is, when it is that of another pin's resistor. */
  | { readonly kind: 'volts'; readonly volts: Toleranced; readonly as?: string };
/** One of several ends and its chance, 0 to 1; at most one of them is a voltage. */
export interface PullChoice {
  readonly chance: number;
  readonly end: PullEnd;
}
/** What the module needs at an input to follow the sensor: two levels to cross, or a swing against another pin. */
export type ModuleInput =
  | {
      readonly kind: 'levels';
      readonly lowBelow: number;
      readonly highAbove: number;
      /**
       * What the two levels are measured in: amperes through the pin's own pull, or shares of what that pull leads to or
       * of the travel of its track, 0 to 1; volts at the pin where it is left out.
       */
      readonly of?: 'pull-amps' | 'pull-supply' | 'travel';
    }
  | { readonly kind: 'swing'; readonly swing: number; readonly against: string };

/** A switch with three wires that pulls its output down: `draws` and `limit` in amperes, `on` and `off` in ohms, off below nine tenths of `minimum` volts. */
export interface HallPart extends PartBase {
  readonly kind: 'hall-switch';
  readonly draws: Toleranced;
  readonly minimum: Toleranced;
  readonly on: Toleranced;
  readonly off: Toleranced;
  readonly limit: Toleranced;
}

/** A coil before a toothed wheel, which makes its own voltage. */
export interface ReluctorPart extends PartBase {
  readonly kind: 'reluctor';
  readonly ohms: Toleranced;
  /** Peak voltage of the unloaded coil by what moves the target. */
  readonly cranking: Toleranced;
  readonly running: Toleranced;
  readonly byHand: Toleranced;
}

/** A sensor of travel: one track or several, with a wiper each. */
export interface PotentiometerPart extends PartBase {
  readonly kind: 'potentiometer';
  readonly tracks: readonly Track[];
  /** Whether all of its tracks run the other way round (1) or not (0); left out where none do. */
  readonly turned?: Toleranced;
}

/** One track by its three pins: the resistance from end to end, that of the wiper, and where the wiper stands. */
export interface Track {
  readonly name: string;
  readonly feed: string;
  readonly signal: string;
  readonly ground: string;
  readonly ohms: Toleranced;
  readonly wiper: Toleranced;
  /** Parts of the track between ground and wiper, 0 to 1; left out where another track tells them. */
  readonly closed?: Toleranced;
  readonly open?: Toleranced;
  readonly beside?: BesideTrack;
}
/** How a second track follows the first: half its position, what is left of the whole, or so much less. */
export const TRACK_RUNS = ['half', 'opposite', 'lower'] as const;
export type TrackRun = (typeof TRACK_RUNS)[number];
/** A track whose ends another one tells. */
export interface BesideTrack {
  /** Name of a track with ends of its own. */
  readonly track: string;
  readonly runs: readonly TrackRun[];
  /** Which of `runs` it is, by number. */
  readonly which: Toleranced;
  /** How much lower it runs where it does, 0 to 1. */
  readonly lower: Toleranced;
}

/** A switch with two wires that draws one of two currents; `minimum` is the least voltage that it works at. */
export interface CurrentSwitchPart extends PartBase {
  readonly kind: 'current-switch';
  readonly low: Toleranced;
  readonly high: Toleranced;
  readonly minimum: Toleranced;
  readonly reverse: Toleranced;
}

/** A fuse: what it carries, and its resistance while it is whole. */
export interface FusePart extends PartBase {
  readonly kind: 'fuse';
  readonly amps: number;
  readonly ohms: Toleranced;
}

/** A relay: its contact, and its coil where the circuit describes that. */
export interface RelayPart extends PartBase {
  readonly kind: 'relay';
  /** Of the closed contact, between 30 and 87. */
  readonly ohms: Toleranced;
  /** Between 86 and 85; without it the contact closes with the key. */
  readonly coil?: RelayCoil;
}

/** The coil of a relay between 86 and 85. */
export interface RelayCoil {
  readonly ohms: Toleranced;
  /** The contact closes from so many volts at the coil. Once closed it holds with far less. */
  readonly pullsIn: Toleranced;
}

/** Where ground wires meet the body, with the resistance to battery negative. */
export interface GroundPointPart extends PartBase {
  readonly kind: 'ground-point';
  readonly ohms: Toleranced;
  /** How far it stands above battery negative by what else flows there, in volts, key on. */
  readonly volts?: Toleranced;
}

/** What else hangs on the same feed or ground, as a load that can be shorted. */
export interface NeighbourPart extends PartBase {
  readonly kind: 'neighbour';
  readonly ohms: Toleranced;
  readonly shorted: Toleranced;
  /** A person says that it is on this car; absent where only the circuit file does. */
  readonly told?: true;
}
/**
 * What joins wires on their way to the sensor: a connector within the harness, or a splice. A pin for each wire, called like
 * it: the wire comes from the sensor to the pin and goes on from `PIN.pin`, with the contact between.
 */
export interface JointPart extends PartBase {
  readonly kind: 'joint';
  /** It does not come apart. */
  readonly splice: boolean;
  /** Along the harness from the sensor's connector; null where nobody has measured it. */
  readonly metres: number | null;
  /** Minutes to get at it the first time; null where nobody has said. */
  readonly minutes: number | null;
}

/** A part that senses; a circuit has exactly one. */
export type SensorPart = HallPart | ReluctorPart | PotentiometerPart | CurrentSwitchPart;

/** Anything that a circuit can hold, told apart by its `kind`. */
export type Part =
  | ModulePart
  | SensorPart
  | FusePart
  | RelayPart
  | GroundPointPart
  | NeighbourPart
  | JointPart;

export const SENSOR_KINDS = ['hall-switch', 'reluctor', 'potentiometer', 'current-switch'] as const;

/** A wire between two terminals, or one section of it where joints part it. */
export interface Wire {
  readonly name: string;
  readonly from: TerminalId;
  readonly to: TerminalId;
  /** Copper, at the harness temperature. */
  readonly ohms: number;
  readonly sizeSquareMetres: number;
  readonly lengthMetres: number;
  /** Copper of every length and size that the wire may have; without it `ohms` within the usual spread. */
  readonly copper?: Toleranced;
  readonly role: WireRole;
  /** Of a section between joints: the name of the whole wire. */
  readonly of?: string;
  /** `lengthMetres` is that of this car; absent where it is only a usual one. */
  readonly measured?: true;
}
/** What a wire carries in the healthy circuit. */
export type WireRole = 'supply' | 'reference' | 'ground' | 'signal';

/** A connector is named like its part; `unplugged` in a setup holds such names. */
export interface Connector {
  readonly part: string;
  readonly words: string;
  readonly pins: readonly string[];
  /** A ground point is bolted and does not count as a connector that is taken off for a test. */
  readonly unplugs: boolean;
}

/** A place where a lead can be put. */
export interface Terminal {
  readonly id: TerminalId;
  readonly part: string;
  readonly pin: string;
  /** Back of the connector; the part's own pin behind it; a battery post. */
  readonly side: 'harness' | 'part' | 'post';
  readonly words: string;
}

/** What passes the sensor: a wheel of the engine or a ring at a wheel bearing. */
export interface Target {
  readonly at: string;
  readonly teeth: number | null;
  readonly missing: number;
  readonly turns: number;
  /** Part of a turn that a switched output is on, and so the chance that a still target leaves it on. */
  readonly onChance: number;
  /** The same where it is not known; `onChance` is then its middle. */
  readonly duty?: Toleranced;
  /** Of a ring on a wheel bearing: what it may be made of. Absent for a wheel of the engine. */
  readonly ring?: Ring;
}

/** What a ring at a wheel bearing is made of. */
export type Ring = 'teeth' | 'magnets' | 'either';

export const FAULT_CLASSES = [
  'connector',
  'wire',
  'sensor',
  'module',
  'supply',
  'neighbour',
  'target',
] as const;

/** The kind of thing that is wrong, for the summaries of a class. */
export type FaultClass = (typeof FAULT_CLASSES)[number];

/** One thing wrong with the circuit. */
export interface Fault {
  readonly id: string;
  readonly words: string;
  /** What puts it right; faults with the same repair need not be told apart. */
  readonly repair: string;
  readonly repairWords: string;
  /** Relative weight before any reading. */
  readonly weight: number;
  /** Names of the things it sits in: part, wire, contact, connector, target. */
  readonly subject: readonly string[];
  readonly class: FaultClass;
  /** Chance that eyes and fingers find it when the thing it sits in is inspected. */
  readonly visibleChance: number;
  readonly effect: FaultEffect;
  /** The effect of a second fault that is there at the same time; only where a model was asked for a pair. */
  readonly also?: FaultEffect;
}

/** Everything that is wrong at once; nothing in a healthy circuit. */
export function effectsOf(fault: Fault | null): readonly FaultEffect[] {
  if (fault === null) return [];
  return fault.also ? [fault.effect, fault.also] : [fault.effect];
}

/** From least to most. Of a fault's size any value between, in even steps of its logarithm. */
export interface Span {
  readonly low: number;
  readonly high: number;
}

/** What a fault does to the circuit: to a wire, a contact, a part or the target. */
export type FaultEffect =
  | { readonly kind: 'wire-open'; readonly wire: string }
  | { readonly kind: 'wire-resistive'; readonly wire: string; readonly ohms: Span }
  /** From the middle of the wire to a battery post, or to the middle of another wire. */
  | {
      readonly kind: 'wire-short';
      readonly wire: string;
      readonly to: 'battery.negative' | 'battery.positive' | { readonly wire: string };
      readonly ohms: Span;
    }
  /** Two wires have changed places in a plug. */
  | { readonly kind: 'wires-swapped'; readonly terminals: readonly [TerminalId, TerminalId] }
  | { readonly kind: 'contact-open'; readonly terminal: TerminalId }
  | { readonly kind: 'contact-resistive'; readonly terminal: TerminalId; readonly ohms: Span }
  /** A part's own failure. `at` is the pin or track, `size` a resistance or a share, as the mode needs. */
  | {
      readonly kind: 'part';
      readonly part: string;
      readonly mode: PartMode;
      readonly at: string;
      readonly size: Span;
    }
  | { readonly kind: 'target'; readonly mode: TargetMode };

/** How a part itself can fail. */
export type PartMode =
  | 'dead'
  | 'stuck-low'
  | 'stuck-high'
  | 'weak-pull-down'
  | 'shorted'
  | 'coil-open'
  | 'shorted-turns'
  | 'coil-resistive'
  | 'leads-swapped'
  | 'track-open'
  | 'wiper-open'
  | 'worn-spot'
  | 'reference-dead'
  | 'reference-low'
  | 'pull-missing'
  | 'input-dead'
  | 'ground-open'
  | 'driver-dead'
  | 'blown'
  | 'contact-open'
  | 'contact-resistive';

/** What a resistor of the module leads to, of several the likeliest. */
export function likeliestEnd(to: PullTo): PullEnd {
  if (to.kind !== 'one-of') return to;
  return to.ends.reduce((best, one) => (one.chance > best.chance ? one : best)).end;
}

/** Everything that a resistor of the module may lead to. */
export function pullEnds(to: PullTo): readonly PullEnd[] {
  return to.kind === 'one-of' ? to.ends.map(({ end }) => end) : [to];
}

/** The one sensor of the circuit; throws where it has none, which loading refuses. */
export function sensorOf(circuit: Pick<Circuit, 'parts'>): SensorPart {
  const sensor = circuit.parts.find(isSensor);
  if (!sensor) throw new Error('circuit: a loaded circuit has one sensor');
  return sensor;
}

/** The module that reads the sensor. */
export function moduleOf(circuit: Circuit): ModulePart {
  const module = circuit.parts.find((part) => part.kind === 'module');
  if (module?.kind !== 'module') throw new Error('circuit: a loaded circuit has one module');
  return module;
}

/** Whether a part is the one that senses. */
export function isSensor(part: Part): part is SensorPart {
  return (SENSOR_KINDS as readonly string[]).includes(part.kind);
}

/** The module's inputs as harness terminals, `module.signal`, in the order of its pins. */
export function inputTerminals(circuit: Circuit): TerminalId[] {
  const module = moduleOf(circuit);
  return module.inside
    .filter((pin) => pin.input !== null)
    .map((pin) => `${module.name}.${pin.name}`);
}

/** The part of a terminal: `sensor` of `sensor.feed` and of `sensor.feed.pin`. */
export function partName(terminal: TerminalId): string {
  return terminal.slice(0, terminal.indexOf('.'));
}
