/**
 * Whether the numbers of a circuit that was stored, and not loaded, are such as the loader lets through. Signs
 * and how many there may be of each thing are in the schema of the events.
 */
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import {
  type Circuit,
  type ModuleInput,
  type ModulePin,
  type PotentiometerPart,
  type Pull,
  type PullEnd,
  type PullTo,
  pullEnds,
  type Target,
  type Track,
  type Wire,
} from './circuit.ts';
import { canMeasure } from './input-levels.ts';
import { withinReason } from './within-reason.ts';

/** A value in a stored circuit that cannot be computed with, and why. */
export interface ValueFlaw {
  /** Its path in the circuit. */
  readonly at: string;
  /** Why, as the rest of a sentence that begins with what holds the circuit; without a full stop. */
  readonly words: string;
}

const UNREASONABLE = "has a value that is not found in a vehicle's sensor circuit";
const FROM_NOTHING = 'has a logarithmic range that starts at zero';
const ALTERNATIVES =
  'has one of several values with chances that do not come to 1, or ends that are not theirs';
const UPSIDE_DOWN = 'has a range whose low end is above its high end';
/** The shortest and thickest wire that a circuit file may have, of copper. */
const WIRE_OHMS_MIN = 1e-8;

/** The first such value, or null. */
export function valueFlaw(circuit: Circuit): ValueFlaw | null {
  const { battery, parts, wires, target, faults, celsius } = circuit;
  return (
    rangeFlaw({ battery, parts, wires, target, faults }, '', null) ??
    (isPlain(celsius, 'degC') ? null : { at: 'celsius', words: UNREASONABLE }) ??
    firstOf(wires, (wire) =>
      isWire(wire) ? null : { at: `wires, "${wire.name}"`, words: UNREASONABLE },
    ) ??
    firstOf(parts, (part) => {
      const at = `parts, "${part.name}"`;
      if (part.kind === 'fuse' && !isPlain(part.amps, 'A')) return { at, words: UNREASONABLE };
      if (part.kind === 'potentiometer' && !part.tracks.every((one) => hasEnds(one, part)))
        return { at, words: NO_ENDS };
      if (part.kind !== 'module') return null;
      return firstOf(part.inside, (pin) => pinFlaw(pin, part.inside, `${at}, "${pin.name}"`));
    }) ??
    (target && !isTarget(target)
      ? { at: 'target', words: 'names a wheel that the circuit does not have' }
      : null) ??
    (faults.length > 0 && faults.every(({ weight }) => weight === 0)
      ? { at: 'faults', words: 'has no fault of any weight' }
      : null)
  );
}

/** Ranges, wherever they stand, in the unit that the name nearest above them asks for. */
function rangeFlaw(value: object, at: string, due: Unit | null): ValueFlaw | null {
  const low: unknown = Reflect.get(value, 'low');
  const high: unknown = Reflect.get(value, 'high');
  if (typeof low === 'number' && typeof high === 'number') {
    const nominal: unknown = Reflect.get(value, 'nominal') ?? low;
    if (!(typeof nominal === 'number' && low <= nominal && nominal <= high))
      return { at, words: UPSIDE_DOWN };
    const unit: unknown = Reflect.get(value, 'unit') ?? due;
    if (due === null || unit !== due) return { at, words: 'has a value in the wrong unit' };
    if (Reflect.get(value, 'spread') === 'log' && low <= 0) return { at, words: FROM_NOTHING };
    const oneOf: unknown = Reflect.get(value, 'oneOf');
    if (Array.isArray(oneOf) && !areAlternatives(oneOf, { low, high, unit: due }))
      return { at, words: ALTERNATIVES };
    return withinReason({ low, high, unit: due }) ? null : { at, words: UNREASONABLE };
  }
  return firstOf(Object.entries(value), ([key, inner]) => {
    if (typeof inner !== 'object' || inner === null || CHOICES.has(key)) return null;
    const inside = at === '' ? key : `${at}.${key}`;
    return rangeFlaw(inner, inside, Object.hasOwn(UNIT_OF, key) ? UNIT_OF[key]! : due);
  });
}

/** Of one of several values: each a plain one, the outermost ends those of all, and one of them for certain. */
function areAlternatives(
  oneOf: readonly { readonly chance: number; readonly value: Toleranced }[],
  { low, high, unit }: Pick<Toleranced, 'low' | 'high' | 'unit'>,
): boolean {
  const values = oneOf.map(({ value }) => value);
  return (
    isWhole(oneOf.map(({ chance }) => chance)) &&
    values.every((one) => one.oneOf === undefined && rangeFlaw(one, '', unit) === null) &&
    low === Math.min(...values.map((one) => one.low)) &&
    high === Math.max(...values.map((one) => one.high))
  );
}

/** Chances that come to 1, but for rounding. */
function isWhole(chances: readonly number[]): boolean {
  return Math.abs(chances.reduce((sum, chance) => sum + chance, 0) - 1) < CHANCE_ROUNDING;
}
const CHANCE_ROUNDING = 1e-6;

/** The unit of each value by its name. `size` is in ohms or a share, which is no smaller. */
const UNIT_OF: Readonly<Record<string, Unit>> = {
  ...{ rest: 'V', cranking: 'V', running: 'V', byHand: 'V', volts: 'V', minimum: 'V' },
  ...{ ohms: 'ohm', series: 'ohm', on: 'ohm', off: 'ohm', wiper: 'ohm', reverse: 'ohm' },
  ...{ shorted: 'ohm', ground: 'ohm', size: 'ohm' },
  ...{ draws: 'A', limit: 'A', low: 'A', high: 'A' },
  ...{
    closed: '1',
    open: '1',
    lower: '1',
    duty: '1',
    groundVolts: 'V',
    copper: 'ohm',
  },
  ...{ driver: 'ohm', pullsIn: 'V' },
};

function isPlain(value: number, unit: Unit): boolean {
  return withinReason({ low: value, high: value, unit });
}

/** Its resistance was worked out from the rest when the circuit was loaded. */
function isWire({ ohms, sizeSquareMetres, lengthMetres }: Wire): boolean {
  if (!isPlain(sizeSquareMetres, 'm2') || !isPlain(lengthMetres, 'm')) return false;
  return ohms >= WIRE_OHMS_MIN && isPlain(Math.max(1, ohms), 'ohm');
}

function pinFlaw(
  { input, pull }: ModulePin,
  inside: readonly ModulePin[],
  at: string,
): ValueFlaw | null {
  const ends = pull ? pullEnds(pull.to) : [];
  if (pull && !hasTwins(pull, inside)) return { at, words: NO_TWIN };
  if (pull?.to.kind === 'one-of') {
    const voltages = ends.filter(({ kind }) => kind === 'volts').length;
    if (voltages > 1 || !isWhole(pull.to.ends.map(({ chance }) => chance)))
      return { at, words: ENDS };
  }
  return input && inputFlaw(input, ends, at);
}

/** Ends of its own, or a track beside it that has some and a chance for each way to run. */
function hasEnds({ closed, open, beside }: Track, { tracks, turned }: PotentiometerPart): boolean {
  if (turned && !isChoice(turned, 2)) return false;
  if (!beside) return closed !== undefined && open !== undefined;
  const other = tracks.find(({ name }) => name === beside.track);
  return (
    other?.closed !== undefined &&
    other.open !== undefined &&
    isChoice(beside.which, beside.runs.length)
  );
}

/** Numbers of ways to be built and no values of a vehicle: `hasEnds` looks at them. */
const CHOICES: ReadonlySet<string> = new Set(['which', 'turned']);

/** One of so many things, by its number from 0. */
function isChoice({ nominal, oneOf }: Toleranced, count: number): boolean {
  if (oneOf === undefined) return nominal === 0 && count === 1;
  return (
    oneOf.length === count &&
    isWhole(oneOf.map(({ chance }) => chance)) &&
    oneOf.every(({ value }, at) => value.low === at && value.high === at) &&
    oneOf.some(({ value }) => value.low === nominal)
  );
}
const NO_ENDS = 'has a track that ends nowhere';

/** The pins whose rail or resistance it has, if any, have one of their own. */
function hasTwins({ to, ohmsAs, alike }: Pull, inside: readonly ModulePin[]): boolean {
  const pullOf = (name: string) => inside.find((pin) => pin.name === name)?.pull;
  const isOwnRail = (end: PullEnd) => end.kind === 'volts' && end.as === undefined;
  const rails = pullEnds(to).flatMap((end) => (end.kind === 'volts' && end.as ? [end.as] : []));
  return (
    (alike === undefined || hasSameChoice(to, pullOf(alike))) &&
    rails.every((name) => pullEnds(pullOf(name)?.to ?? { kind: 'ground' }).some(isOwnRail)) &&
    (ohmsAs === undefined || (pullOf(ohmsAs) != null && pullOf(ohmsAs)?.ohmsAs === undefined))
  );
}

/** Whether the pull of the other pin has a choice of its own, with as many ends and the same chances; or neither has one. */
function hasSameChoice(to: PullTo, other: Pull | null | undefined): boolean {
  const chances = (one: PullTo) =>
    one.kind === 'one-of' ? String(one.ends.map(({ chance }) => chance)) : '';
  return other != null && other.alike === undefined && chances(to) === chances(other.to);
}

function inputFlaw(input: ModuleInput, ends: readonly PullEnd[], at: string): ValueFlaw | null {
  const levels = input.kind === 'swing' ? [input.swing] : [input.lowBelow, input.highAbove];
  const of = input.kind === 'levels' ? input.of : undefined;
  if (!levels.every((one) => isPlain(one, of ? LEVEL_UNITS[of] : 'V')))
    return { at, words: UNREASONABLE };
  if (input.kind === 'levels' && input.lowBelow >= input.highAbove) return { at, words: LEVELS };
  return of && of !== 'travel' && !canMeasure(of, ends) ? { at, words: NO_RESISTOR[of] } : null;
}

const LEVEL_UNITS = { 'pull-amps': 'A', 'pull-supply': '1', travel: '1' } as const;
const LEVELS = 'has an input whose low level is not below its high level';

const NO_TWIN = 'has a resistor that is like that of a pin which has none of its own';
const ENDS = 'has a resistor whose chances do not come to 1, or that leads to two voltages';
const NO_RESISTOR = {
  'pull-amps': 'has levels in amperes and no resistor to ground',
  'pull-supply': 'has levels in shares of a supply and no pull-up',
} as const;

function isTarget({ teeth, missing }: Target): boolean {
  return teeth === null || missing < teeth;
}

/** The first flaw of the list. */
function firstOf<T>(all: readonly T[], flawOf: (one: T) => ValueFlaw | null): ValueFlaw | null {
  for (const one of all) {
    const flaw = flawOf(one);
    if (flaw) return flaw;
  }
  return null;
}
