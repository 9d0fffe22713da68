/**
 * What a person can know of one car: each value of its circuit that stands on a label, in the maker's papers or before a
 * meter, and how the circuit takes it. Not what is a fault's, nor copper and contacts, which nobody knows beforehand.
 */
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import { whichOf } from '../quantity/value-at.ts';
import { type CarQuantity, pullWords, quantitiesOf } from './car-quantities.ts';
import {
  type Circuit,
  type ModulePart,
  type ModulePin,
  type Part,
  type PotentiometerPart,
  type PullEnd,
  pullEnds,
  type SensorPart,
  TRACK_RUNS,
  type Track,
} from './circuit.ts';
import { spaced } from './part-faults.ts';
import { sensorKindOf } from './sensors.ts';

/** A value, or one of the ways a module can be made: `battery`, `ground`, another pin of it. */
export type KnownIs = { readonly value: Toleranced } | { readonly way: string };

/** One thing that can be known. */
export interface Knowable {
  readonly key: string;
  /** Keys of quantities that say a part of the same. */
  readonly also: readonly string[];
  /** For people: `battery at rest`. */
  readonly words: string;
  /** Of its value; null where it is one of the ways and never a value. */
  readonly unit: Unit | null;
  /** What it can be instead of, or without, a value; none for most. */
  readonly ways: readonly string[];
  /** Whether a value of zero or below makes sense: how far a ground stands above battery negative. */
  readonly signed: boolean;
  /** What the circuit says of it. */
  readonly described: readonly KnownIs[];
  /** The circuit of which this is known. */
  readonly put: (is: KnownIs) => Circuit;
}

/** Everything that can be known of cars of this circuit, in the order of the file; its keys stay whatever is put in. */
export function knowablesOf(circuit: Circuit): readonly Knowable[] {
  const { battery, parts, target } = circuit;
  const quantities = new Map(quantitiesOf(circuit).map((one) => [one.key, one]));
  const plain = (key: string, put: (value: Toleranced) => Circuit): Knowable[] =>
    knownValueOf(quantities.get(key), put);
  return [
    ...(['rest', 'cranking', 'running', 'ohms'] as const).flatMap((what) =>
      plain(`battery.${what}`, (value) => ({ ...circuit, battery: { ...battery, [what]: value } })),
    ),
    ...parts.flatMap((part) => {
      const put = (changed: Part): Circuit => ({
        ...circuit,
        parts: parts.map((one) => (one === part ? changed : one)),
      });
      return ofPart(part, put, plain);
    }),
    ...(target?.duty
      ? plain('target.duty', (duty) => ({
          ...circuit,
          target: { ...target, duty, onChance: duty.nominal },
        }))
      : []),
  ];
}

type Put<T> = (changed: T) => Circuit;
type KnowableAs = (key: string, put: Put<Toleranced>) => Knowable[];

function knownValueOf(quantity: CarQuantity | undefined, put: Put<Toleranced>): Knowable[] {
  if (!quantity?.value) return [];
  const { key, words, unit, value } = quantity;
  const described = [{ value }];
  const takes = (is: KnownIs) => put(asValue(is, key));
  const signed = SIGNED.test(key);
  return [{ key, also: [], words, unit, ways: [], signed, described, put: takes }];
}
/** Of a ground: how far it stands above battery negative. */
const SIGNED = /\.ground-volts$|^[^.]+\.volts$/;

function asValue(is: KnownIs, key: string): Toleranced {
  if ('value' in is) return is.value;
  throw new Error(`knowable: "${key}" is a value, and "${is.way}" is none`);
}

function ofPart(part: Part, put: Put<Part>, plain: KnowableAs): Knowable[] {
  const { name } = part;
  switch (part.kind) {
    case 'module':
      return [
        ...plain(`${name}.ground-volts`, (groundVolts) => put({ ...part, groundVolts })),
        ...part.inside.flatMap((pin) => ofPin(part, pin, put, plain)),
      ];
    case 'relay': {
      const { coil } = part;
      return [
        ...plain(`${name}.ohms`, (ohms) => put({ ...part, ohms })),
        ...(coil
          ? [
              ...plain(`${name}.coil`, (ohms) => put({ ...part, coil: { ...coil, ohms } })),
              ...plain(`${name}.pulls-in`, (pullsIn) =>
                put({ ...part, coil: { ...coil, pullsIn } }),
              ),
            ]
          : []),
      ];
    }
    case 'fuse':
    case 'neighbour':
      return plain(`${name}.ohms`, (ohms) => put({ ...part, ohms }));
    case 'ground-point':
      return [
        ...plain(`${name}.ohms`, (ohms) => put({ ...part, ohms })),
        ...plain(`${name}.volts`, (volts) => put({ ...part, volts })),
      ];
    case 'joint':
      return [];
    default:
      return ofSensor(part, put, plain);
  }
}

function ofSensor(part: SensorPart, put: Put<Part>, plain: KnowableAs): Knowable[] {
  if (part.kind === 'potentiometer') return ofTracks(part, put, plain);
  return Object.keys(sensorKindOf(part).values ?? {}).flatMap((what) =>
    plain(`${part.name}.${what}`, (value) => put({ ...part, [what]: value })),
  );
}

/** Values of the tracks, and where that is left open which way round they run and how one runs beside another. */
function ofTracks(part: PotentiometerPart, put: Put<Part>, plain: KnowableAs): Knowable[] {
  const { name, tracks, turned } = part;
  const putTrack = (track: Track) => (changed: Partial<Track>) =>
    put({
      ...part,
      tracks: tracks.map((one) => (one.name === track.name ? { ...one, ...changed } : one)),
    });
  return [
    ...tracks.flatMap((track) => {
      const key = `${name}.${track.name}`;
      const { beside } = track;
      return [
        ...(['ohms', 'wiper', 'closed', 'open'] as const)
          .filter((what) => track[what] !== undefined)
          .flatMap((what) =>
            plain(`${key}.${what}`, (value) => putTrack(track)({ [what]: value })),
          ),
        ...(beside
          ? [
              builtOf(plain, `${key}.runs`, [TRACK_RUNS, beside.runs], (run) =>
                putTrack(track)({ beside: { ...beside, runs: [run], which: whichOf([1]) } }),
              ),
              plain(`${key}.lower`, (lower) => putTrack(track)({ beside: { ...beside, lower } })),
            ].flat()
          : []),
      ];
    }),
    ...(turned
      ? builtOf(
          plain,
          `${name}.turned`,
          [TURNED, TURNED.filter((_, at) => turned.oneOf![at]!.chance > 0)],
          (way) => put({ ...part, turned: whichOf(way === 'turned' ? [0, 1] : [1, 0]) }),
        )
      : []),
  ];
}
const TURNED = ['usual', 'turned'] as const;

/** How a sensor is built: one of `ways`, of which the circuit leaves those `open`. */
function builtOf<Way extends string>(
  plain: KnowableAs,
  key: string,
  [ways, open]: readonly [readonly Way[], readonly Way[]],
  put: Put<Way>,
): Knowable[] {
  const takes = (is: KnownIs) => put(ways.find((way) => 'way' in is && way === is.way)!);
  return plain(key, () => put(open[0]!)).map((one) => ({
    ...one,
    unit: null,
    ways,
    described: open.map((way) => ({ way })),
    put: takes,
  }));
}

function ofPin(module: ModulePart, pin: ModulePin, put: Put<Part>, plain: KnowableAs): Knowable[] {
  const key = `${module.name}.${pin.name}`;
  const putPin = (changed: ModulePin, others = module.inside) =>
    put({ ...module, inside: others.map((one) => (one.name === pin.name ? changed : one)) });
  const { reference, pull } = pin;
  return [
    ...(reference
      ? [
          givesOf(module, pin, reference, putPin),
          ...plain(`${key}.series`, (series) =>
            putPin({ ...pin, reference: { ...reference, series } }),
          ),
          ...plain(`${key}.limit`, (limit) =>
            putPin({ ...pin, reference: { ...reference, limit } }),
          ),
        ]
      : []),
    ...(pull
      ? [
          ...plain(`${key}.pull`, (ohms) => {
            const others = module.inside.map((one) => withResistance(one, pin.name, ohms));
            return putPin({ ...pin, pull: { ...pull, ohms } }, others);
          }),
          ...leadsOf(module, pin, pull, putPin),
        ]
      : []),
    ...plain(`${key}.driver`, (driver) => putPin({ ...pin, driver })),
    ...plain(`${key}.ground`, (ground) => putPin({ ...pin, ground })),
    ...plain(`${key}.ground-volts`, (groundVolts) => putPin({ ...pin, groundVolts })),
  ];
}

/** What an output of the module gives: a voltage, or the battery's. */
function givesOf(
  module: ModulePart,
  pin: ModulePin,
  reference: NonNullable<ModulePin['reference']>,
  putPin: Put<ModulePin>,
): Knowable {
  const key = `${module.name}.${pin.name}`;
  const { volts, batteryChance, series, limit } = reference;
  const isBattery = volts === 'battery';
  return {
    key: `${key}.volts`,
    also: [`${key}.feed`],
    words: `voltage of the module's ${spaced(pin.name)}`,
    unit: 'V',
    ways: ['battery'],
    signed: false,
    described: [
      ...(isBattery ? [] : [{ value: volts }]),
      ...(isBattery || batteryChance !== undefined ? [{ way: 'battery' }] : []),
    ],
    put: (is) =>
      putPin({
        ...pin,
        reference: { volts: 'value' in is ? is.value : 'battery', series, limit },
      }),
  };
}

/** What the resistor behind a pin leads to; nothing where it can be but ground, or is another pin's rail. */
function leadsOf(
  module: ModulePart,
  pin: ModulePin,
  pull: NonNullable<ModulePin['pull']>,
  putPin: (changed: ModulePin, others: readonly ModulePin[]) => Circuit,
): Knowable[] {
  const key = `${module.name}.${pin.name}`;
  const { input } = pin;
  const ends = pullEnds(pull.to);
  const isTwin = ends.some((end) => end.kind === 'volts' && end.as !== undefined);
  if (isTwin || pull.alike !== undefined || (input?.kind === 'levels' && input.of === 'pull-amps'))
    return [];
  const levelsNeedSupply = input?.kind === 'levels' && input.of === 'pull-supply';
  const supplies = module.inside.flatMap(({ name, reference }) =>
    reference && name !== pin.name ? [name] : [],
  );
  const endOf = (is: KnownIs): PullEnd => {
    if ('value' in is) return { kind: 'volts', volts: is.value };
    return is.way === 'battery' || is.way === 'ground' || is.way === 'nothing'
      ? { kind: is.way }
      : { kind: 'pin', pin: is.way };
  };
  return [
    {
      key: `${key}.pull-to`,
      also: [`${key}.bias`],
      words: `what the ${pullWords(pin)} leads to`,
      unit: 'V',
      ways: ['battery', ...(levelsNeedSupply ? [] : ['ground', 'nothing']), ...supplies],
      signed: false,
      described: ends.map((end) =>
        end.kind === 'volts' ? { value: end.volts } : { way: pinOrKind(end) },
      ),
      put: (is) => {
        const to = endOf(is);
        const place = ends.findIndex((end) => pinOrKind(end) === pinOrKind(to));
        const others = module.inside.map((one) =>
          withRail(withWay(one, pin.name, place), pin.name, to),
        );
        return putPin({ ...pin, pull: { ...pull, to } }, others);
      },
    },
  ];
}

/** A pin whose resistor is of one kind with that of the pin `of` follows it. */
function withResistance(pin: ModulePin, of: string, ohms: Toleranced): ModulePin {
  return pin.pull?.ohmsAs === of ? { ...pin, pull: { ...pin.pull, ohms } } : pin;
}

const pinOrKind = (end: PullEnd) => (end.kind === 'pin' ? end.pin : end.kind);

/** A pin that is built like the pin `of` has the end at the same `place`; another one than any listed (-1) says nothing of it. */
function withWay(pin: ModulePin, of: string, place: number): ModulePin {
  if (pin.pull?.alike !== of) return pin;
  const { alike, ...pull } = pin.pull;
  const to = pullEnds(pull.to)[place];
  return { ...pin, pull: to ? { ...pull, alike, to } : pull };
}

/** A pin whose resistor leads to the rail of the pin `of` follows it. */
function withRail(pin: ModulePin, of: string, to: PullEnd): ModulePin {
  const { pull } = pin;
  const isTwin = pull && pullEnds(pull.to).some((end) => end.kind === 'volts' && end.as === of);
  if (!isTwin) return pin;
  return { ...pin, pull: { ...pull, to: to.kind === 'volts' ? { ...to, as: of } : to } };
}
