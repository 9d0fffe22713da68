/** What cars of one circuit differ in: every value that the circuit file leaves open, in a fixed order, with words. */
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import {
  type Circuit,
  type ModulePart,
  type ModulePin,
  type Part,
  type PotentiometerPart,
  pullEnds,
  type SensorPart,
  type TrackRun,
} from './circuit.ts';
import { wireWords } from './joints.ts';
import {
  BRIDGE_RESISTOR,
  CONTACT,
  copperOf,
  feedChoice,
  pullChoice,
  SUBSTRATE,
  SUBSTRATE_DIODE,
  TWIN_RESISTOR,
  temperatureAround,
} from './open-values.ts';
import { spaced } from './part-faults.ts';
import type { PlanValue } from './plan.ts';
import { sensorKindOf } from './sensors.ts';

/** One quantity in which cars of a circuit differ: a coordinate of the unit cube that they are points of. */
export interface CarQuantity {
  readonly key: string;
  /** For people: `pull-up of the module's signal input`. */
  readonly words: string;
  /** What the circuit says of it; null for what is no value but a matter of chance, even in 0..1. */
  readonly value: Toleranced | null;
  readonly unit: Unit;
  /** Where it is no number but one of several ways, in the order of `value.oneOf`: `reference`, `8 V`, `battery`. */
  readonly ways?: readonly string[];
}

type ValueLookup = (key: string, of: Toleranced) => PlanValue;

const values = new WeakMap<Circuit, ValueLookup>();

/** How draws of a circuit look up a value by its key; throws for a key that is none of its quantities. */
export function valuesOf(circuit: Circuit): ValueLookup {
  const known = values.get(circuit);
  if (known) return known;
  const quantities = new Map(
    quantitiesOf(circuit).map(({ key, value }, place) => [key, { place, value }]),
  );
  /** By what is asked for: thousands of plans of a circuit ask for the same. */
  const asked = new WeakMap<Toleranced, Map<string, PlanValue>>();
  const made: ValueLookup = (key, of) => {
    const ofValue = asked.get(of) ?? new Map<string, PlanValue>();
    if (ofValue.size === 0) asked.set(of, ofValue);
    const found = ofValue.get(key);
    if (found) return found;
    const quantity = quantities.get(key);
    if (!quantity) throw new Error(`car-quantities: no quantity "${key}"`);
    const { place, value } = quantity;
    const wanted = { key, of, place, isOwn: isSame(value, of) };
    ofValue.set(key, wanted);
    return wanted;
  };
  values.set(circuit, made);
  return made;
}

/** Written the same: what is worked out of a circuit file, as a wire's copper, is worked out anew each time. */
function isSame(one: Toleranced | null, other: Toleranced): boolean {
  if (one === other || one === null) return one === other;
  const { oneOf = [] } = one;
  return (
    one.low === other.low &&
    one.high === other.high &&
    one.spread === other.spread &&
    oneOf.length === (other.oneOf?.length ?? 0) &&
    oneOf.every(({ chance, value }, at) => {
      const second = other.oneOf![at]!;
      return chance === second.chance && isSame(value, second.value);
    })
  );
}

/** The quantities of a circuit in the order of the unit cube that its samples and points live in. */
export function quantitiesOf(circuit: Circuit): readonly CarQuantity[] {
  return quantityPlaces(circuit).filter((place) => place !== null);
}

/**
 * The same with a place for every value that a module's pin could have, null where it has none: the place picks the
 * sequence of a quantity, and so keeps it when another pin is described.
 */
export function quantityPlaces(circuit: Circuit): readonly (CarQuantity | null)[] {
  const { battery, celsius, wires, parts, target } = circuit;
  return [
    chance('fault.size', 'size of the fault'),
    chance('target.still', 'where the wheel stands still'),
    chance('target.gap', 'how far too wide the gap is'),
    chance('fault.visible', 'whether the fault is seen'),
    null,
    of('battery.rest', 'battery at rest', battery.rest),
    of('battery.cranking', 'battery while cranking', battery.cranking),
    of('battery.running', 'battery with the engine running', battery.running),
    of('battery.ohms', 'internal resistance of the battery', battery.ohms),
    ...wires.map((wire) =>
      of(`wire.${wire.name}`, `copper of ${wireWords(wire, circuit)}`, copperOf(wire)),
    ),
    ...parts.flatMap((part) => [
      ...partValues(part),
      ...part.pins.map((pin) =>
        of(`contact.${part.name}.${pin}`, `contact at ${part.name}.${pin}`, CONTACT),
      ),
    ]),
    // What came later stands last, so that the others keep their places.
    ...parts.flatMap((part) => (part.kind === 'module' ? waysOf(part) : [])),
    ...parts.flatMap(offsetsOf),
    ...(target?.duty
      ? [of('target.duty', 'duty: part of a turn with the output on', target.duty)]
      : []),
    of('bridge.resistor', 'actual value of the test resistor', BRIDGE_RESISTOR),
    of('temperature', 'temperature of wires and coil', temperatureAround(celsius)),
    ...parts.flatMap(coilValues),
    ...parts.flatMap((part) => (part.kind === 'potentiometer' ? buildsOf(part) : [])),
    ...parts.flatMap((part) => (part.kind === 'module' ? twinsOf(part) : [])),
    ...parts.flatMap((part) => (part.kind === 'hall-switch' ? [substrateOf(part)] : [])),
  ];
}

function of(key: string, words: string, value: Toleranced): CarQuantity {
  return { key, words, value, unit: value.unit };
}

function chance(key: string, words: string): CarQuantity {
  return { key, words, value: null, unit: '1' };
}

function partValues(part: Part): (CarQuantity | null)[] {
  const { name, words } = part;
  const named = (what: string, words: string, value: Toleranced) =>
    of(`${name}.${what}`, words, value);
  switch (part.kind) {
    case 'module':
      return part.inside.flatMap((pin) => pinValues(part, pin));
    case 'fuse':
    case 'relay':
      return [named('ohms', `resistance of the ${words}`, part.ohms)];
    case 'ground-point':
      return [named('ohms', `${words} to battery negative`, part.ohms)];
    case 'neighbour':
      return [
        named('ohms', `load of the ${words}`, part.ohms),
        named('shorted', `${words} when shorted`, part.shorted),
      ];
    case 'joint':
      return [];
    default:
      return sensorValues(part);
  }
}

/** A relay's coil, and what switches it. */
function coilValues(part: Part): CarQuantity[] {
  const { name, words } = part;
  if (part.kind === 'relay' && part.coil)
    return [
      of(`${name}.coil`, `coil of the ${words}`, part.coil.ohms),
      of(`${name}.pulls-in`, `voltage from which the ${words} closes`, part.coil.pullsIn),
    ];
  if (part.kind !== 'module') return [];
  return part.inside.flatMap((pin) =>
    pin.driver
      ? [of(`${name}.${pin.name}.driver`, `the module's switch at ${spaced(pin.name)}`, pin.driver)]
      : [],
  );
}

function sensorValues(part: SensorPart): (CarQuantity | null)[] {
  const { name, words } = part;
  const named = (what: string, said: string, value: Toleranced) =>
    of(`${name}.${what}`, `${said} of the ${words}`, value);
  const { values } = sensorKindOf(part);
  if (part.kind !== 'potentiometer') {
    const own = part as unknown as Readonly<Record<string, Toleranced>>;
    return Object.entries(values ?? {}).map(([what, { said }]) => named(what, said, own[what]!));
  }
  return part.tracks.flatMap((track) => {
    const which = part.tracks.length > 1 ? `${spaced(track.name)}, ` : '';
    return [
      named(`${track.name}.ohms`, `${which}track resistance`, track.ohms),
      named(`${track.name}.wiper`, `${which}wiper resistance`, track.wiper),
      track.closed ? named(`${track.name}.closed`, `${which}position at rest`, track.closed) : null,
      track.open ? named(`${track.name}.open`, `${which}position fully moved`, track.open) : null,
    ];
  });
}

/** Always as many places: output, its resistance and limit, resistor, its voltage, ground. */
function pinValues(module: ModulePart, pin: ModulePin): (CarQuantity | null)[] {
  const key = `${module.name}.${pin.name}`;
  const at = `the module's ${spaced(pin.name)}`;
  const { reference, pull, ground } = pin;
  const volts =
    pull && pullEnds(pull.to).find((end) => end.kind === 'volts' && end.as === undefined);
  return [
    reference && reference.volts !== 'battery'
      ? of(`${key}.volts`, `voltage of ${at}`, reference.volts)
      : null,
    reference && of(`${key}.series`, `internal resistance of ${at}`, reference.series),
    reference && of(`${key}.limit`, `current limit of ${at}`, reference.limit),
    pull && pull.ohmsAs === undefined ? of(`${key}.pull`, pullWords(pin), pull.ohms) : null,
    volts?.kind === 'volts'
      ? of(`${key}.bias`, `voltage behind the ${pullWords(pin)}`, volts.volts)
      : null,
    ground && of(`${key}.ground`, `${at} to battery negative`, ground),
  ];
}

/** Which way a module is made where its circuit leaves that open. */
function waysOf(module: ModulePart): CarQuantity[] {
  return module.inside.flatMap((pin) => {
    const key = `${module.name}.${pin.name}`;
    const { reference, pull } = pin;
    const feed = reference && feedChoice(reference);
    return [
      ...(feed === null
        ? []
        : [
            {
              ...of(`${key}.feed`, `what the module's ${spaced(pin.name)} gives`, feed),
              ways: ['voltage', 'battery'],
            },
          ]),
      ...(pull?.to.kind === 'one-of' && pull.alike === undefined
        ? [
            {
              ...of(`${key}.pull-to`, `what the ${pullWords(pin)} leads to`, pullChoice(pull.to)),
              ways: pull.to.ends.map(({ end }) =>
                end.kind === 'pin' ? end.pin : end.kind === 'volts' ? 'voltage' : end.kind,
              ),
            },
          ]
        : []),
    ];
  });
}

/** How far resistors that are built like another one differ from it. */
function twinsOf({ name, inside }: ModulePart): CarQuantity[] {
  return inside.flatMap((pin) =>
    pin.pull?.ohmsAs === undefined
      ? []
      : [of(`${name}.${pin.name}.twin`, `${pullWords(pin)} against its twin`, TWIN_RESISTOR)],
  );
}

/** How a sensor with tracks is built, where that is left open. */
function buildsOf({ name, words, tracks, turned }: PotentiometerPart): CarQuantity[] {
  return [
    ...(turned
      ? [
          {
            ...of(`${name}.turned`, `which way round the ${words} is built`, turned),
            ways: ['as usual', 'the other way round'],
          },
        ]
      : []),
    ...tracks.flatMap(({ name: track, beside }) => {
      if (!beside) return [];
      const key = `${name}.${track}`;
      const { runs, which, lower } = beside;
      return [
        {
          ...of(`${key}.runs`, `how ${spaced(track)} runs beside ${spaced(beside.track)}`, which),
          ways: runs.map((run) => RUN_WORDS[run]),
        },
        of(`${key}.lower`, `how far ${spaced(track)} lies below ${spaced(beside.track)}`, lower),
      ];
    }),
  ];
}

const RUN_WORDS = {
  half: 'half of it',
  opposite: 'against it',
  lower: 'below it',
} satisfies Readonly<Record<TrackRun, string>>;

/** It conducts only where the chip's ground is lost or in another place. */
function substrateOf({ name, words }: Part): CarQuantity {
  const key = `${name}.${SUBSTRATE}`;
  return {
    ...of(key, `diode from ground to the output inside the ${words}`, SUBSTRATE_DIODE),
    ways: ['none', 'one'],
  };
}

/** How far grounds stand above battery negative by what else flows through them. */
function offsetsOf(part: Part): CarQuantity[] {
  if (part.kind === 'ground-point')
    return part.volts
      ? [of(`${part.name}.volts`, `${part.words} above battery negative`, part.volts)]
      : [];
  if (part.kind !== 'module') return [];
  const own = part.groundVolts
    ? [
        of(
          `${part.name}.ground-volts`,
          "the module's ground above battery negative",
          part.groundVolts,
        ),
      ]
    : [];
  return [
    ...own,
    ...part.inside.flatMap(({ name, groundVolts }) =>
      groundVolts
        ? [
            of(
              `${part.name}.${name}.ground-volts`,
              `the module's ${spaced(name)} above battery negative`,
              groundVolts,
            ),
          ]
        : [],
    ),
  ];
}

/** `pull-up of the module's signal input`, of a pin with a resistor. */
export function pullWords({ name, pull, input }: ModulePin): string {
  const kinds = new Set(pull ? pullEnds(pull.to).map(({ kind }) => kind) : []);
  kinds.delete('nothing');
  const down = kinds.has('ground');
  const is =
    input?.kind !== 'levels'
      ? 'bias resistor'
      : !down
        ? 'pull-up'
        : kinds.size > 1
          ? 'pull-up or pull-down'
          : input.of === 'pull-amps'
            ? 'sense resistor'
            : 'pull-down';
  return `${is} of the module's ${spaced(name)} ${input ? 'input' : 'pin'}`;
}
