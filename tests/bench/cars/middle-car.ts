/**
 * The car in the middle of all that the program has left open, and faults of the middle size in it. Values are taken from
 * the program's own list, so that what is compared is how both make a circuit of them and solve it.
 */
import { quantitiesOf } from '../../../src/circuit/car-quantities.ts';
import {
  type Circuit,
  type Fault,
  likeliestEnd,
  moduleOf,
  type PullEnd,
  type Span,
} from '../../../src/circuit/circuit.ts';
import { metresOf } from './add-harness.ts';
import type { Car, CarFault, PullTo, Trouble } from './car.ts';
import { type Drawing, drawingOf } from './drawing.ts';
import type { FaultToDraw } from './faults-to-draw.ts';
import { rangesOf } from './ranges.ts';
import { seeded } from './seeded.ts';
import { plainValues } from './strata.ts';

/** Coil ohms of a circuit file are those of a coil at this temperature. */
const COIL_CELSIUS = 20;

/** The car whose every value is the program's nominal one. */
export function middleCar(circuit: Circuit, faults: readonly CarFault[] = []): Car {
  const drawing = drawingOf(circuit.name);
  const { values, pulls } = plainValues(seeded('middle'), circuit.name, false);
  const nominal = nominalOf(circuit);
  for (const { name, shipped } of rangesOf(drawing))
    values[name] = (shipped.low + shipped.high) / 2;
  for (const name of Object.keys(values)) {
    const found = namesInProgram(name, drawing).find((one) => nominal.has(one));
    values[name] = nominal.get(found ?? '') ?? values[name]!;
  }
  // The second track is at its likeliest half of the first, which is all that the program says of its ends.
  for (const end of ['closed', 'open'])
    if (values[`track-2.${end}`] !== undefined)
      values[`track-2.${end}`] = values[`track-1.${end}`]! / 2;
  // On where the program's nominal sensor is, and without the substrate diode, as there.
  const on = (circuit.target?.onChance ?? 0.5) > 0.5;
  const car: Car = {
    drawing,
    values: {
      ...values,
      celsius: circuit.celsius,
      'sensor.celsius': COIL_CELSIUS,
      'wheel.still': on ? 0 : 1,
      'sensor.substrate': 1,
    },
    pulls: { ...pulls, ...pullsOf(circuit) },
    feedsBattery: drawing.module.some(({ pin }) => nominal.get(`module.${pin}.feed`) === 1),
    faults,
    fleeting: null,
    isFuseBlown: false,
    isRelayReleased: false,
  };
  const lengths = drawing.wires.map(({ name }) => [
    `wire.${name}.metres`,
    metresOf(car, name, nominal.get(`wire.${name}`) ?? 0),
  ]);
  return { ...car, values: { ...car.values, ...Object.fromEntries(lengths) } };
}

/** A fault of the bench with the size that the program's nominal car has it in. */
export function middleFault(drawn: FaultToDraw, circuit: Circuit): CarFault {
  const { weight: _weight, trouble, ...rest } = drawn;
  const fault = circuit.faults.find(({ id }) => id === drawn.id);
  const made = trouble(seeded(drawn.id));
  const size = fault ? sizeOf(fault, circuit) : null;
  return { ...rest, trouble: size === null ? made : withSize(made, size) };
}

/** The geometric middle of a span, or half-way of what only chance sizes, as in the program's nominal car; null without a size. */
function sizeOf({ effect }: Fault, circuit: Circuit): number | null {
  if (effect.kind === 'target') return 0.5;
  if (effect.kind === 'part') {
    const part = circuit.parts.find(({ name }) => name === effect.part);
    if (part?.kind === 'neighbour') return part.shorted.nominal;
  }
  const span: Span | null = 'ohms' in effect ? effect.ohms : 'size' in effect ? effect.size : null;
  return span === null || span.low === span.high ? null : Math.sqrt(span.low * span.high);
}

function withSize(trouble: Trouble, size: number): Trouble {
  if ('ohms' in trouble) return { ...trouble, ohms: size };
  return 'size' in trouble ? { ...trouble, size } : trouble;
}

function nominalOf(circuit: Circuit): ReadonlyMap<string, number> {
  return new Map(
    quantitiesOf(circuit).flatMap(({ key, value }) => (value ? [[key, value.nominal]] : [])),
  );
}

/** What the program may call a value of the bench. */
function namesInProgram(name: string, { neighbour, module }: Drawing): readonly string[] {
  const ground = module.find(({ does }) => does === 'ground')?.pin;
  switch (name) {
    case 'mass.volts':
      return [`module.${ground}.ground-volts`, 'module.ground-volts', 'ground-point.volts'];
    case 'mass.ohms':
      return [`module.${ground}.ground`];
    case 'wheel.duty':
      return ['target.duty'];
    case 'sensor.by-hand':
      return ['sensor.byHand'];
    case 'neighbour.ohms':
      return [`${neighbour}.ohms`];
    case 'signal-minus.own':
      return ['module.signal-plus.bias'];
    // Two resistors of one kind.
    case 'signal-minus.pull':
      return ['module.signal-minus.pull', 'module.signal-plus.pull'];
    default:
      return [name, `module.${name.replace(/\.own$/, '.bias')}`, `sensor.${name}`];
  }
}

/** What each pin of the module is pulled to, of several the likeliest. */
function pullsOf(circuit: Circuit): Record<string, PullTo> {
  return Object.fromEntries(
    moduleOf(circuit).inside.flatMap(({ name, pull }) =>
      pull ? [[name, pullToOf(likeliestEnd(pull.to))]] : [],
    ),
  );
}

function pullToOf(end: PullEnd): PullTo {
  if (end.kind === 'nothing') return 'none';
  return end.kind === 'pin' ? 'reference' : end.kind === 'volts' ? 'own' : end.kind;
}
