/**
 * Whether the names in the first event of a session lead to something. A schema knows shapes; that a step goes on to a
 * step there is, that a wire ends at a pin there is, and that a test is read with what it is probed with, it cannot say.
 * What passes here can be walked and computed with.
 */

import {
  type Circuit,
  type FaultEffect,
  isSensor,
  type Part,
  type PullEnd,
  pullEnds,
  type SensorPart,
} from '../circuit/circuit.ts';
import { knownFlaw } from '../circuit/known-values.ts';
import { sensorKindOf } from '../circuit/sensors.ts';
import { looksShownBy, unitShownBy } from '../circuit/shown-by.ts';
import { valueFlaw } from '../circuit/stored-values.ts';
import { connectorsOf, terminalsOf } from '../circuit/terminals.ts';
import type { Look, Probe, Shown, Test } from '../circuit/test.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import { HEALTHY } from '../suspects/prediction-table.ts';
import type { SessionOpened } from './events.ts';

/** What is wrong, as the rest of a sentence that begins with the event, without a full stop; null for nothing. */
export type Flaw = string | null;

/** The first name that leads nowhere. */
export function openingFlaw(opened: SessionOpened): Flaw {
  const { procedure, circuit } = opened;
  return (
    (procedure && procedureFlaw(procedure)) ??
    (circuit && circuitFlaw(circuit)) ??
    knownValuesFlaw(opened) ??
    conclusionFlaw(opened) ??
    vehicleFlaw(opened)
  );
}

/** What the job sheet says is known is of the circuit, and such as it can have. */
function knownValuesFlaw({ circuit, known = [] }: SessionOpened): Flaw {
  if (!circuit) return known.length > 0 ? 'knows values where there is no circuit (known)' : null;
  for (const [index, one] of known.entries()) {
    const odd = knownFlaw(circuit, one);
    if (odd !== null) return `${odd} (known.${index})`;
  }
  return null;
}

function procedureFlaw({ start, steps }: Procedure): Flaw {
  const known = (id: string) => Object.hasOwn(steps, id);
  if (!known(start)) return noStep('procedure.start', start);
  for (const [id, step] of Object.entries(steps)) {
    const at = `procedure.steps.${id}`;
    if (step.id !== id) return `calls the step "${id}" by another name, "${step.id}"`;
    const lost = namedSteps(step).find((other) => !known(other));
    if (lost !== undefined) return noStep(at, lost);
    const odd = stepFlaw(step);
    if (odd !== null) return `${odd} (${at})`;
  }
  return null;
}

function noStep(at: string, id: string): string {
  return `names a step that the procedure does not have, "${id}" (${at})`;
}

function namedSteps(step: Step): readonly string[] {
  if (step.kind === 'conclude')
    return step.otherwise === undefined ? step.retest : [...step.retest, step.otherwise];
  const ways = step.kind === 'act' ? [step.go] : step.outcomes.map(({ go }) => go);
  return step.cannot === null ? ways : [...ways, step.cannot];
}

/** What a step asks for is what its instrument shows. */
function stepFlaw(step: Step): Flaw {
  if (step.kind === 'measure')
    return step.probe === null || unitShownBy(step.probe) === step.unit
      ? null
      : `asks for ${step.unit} where it probes ${step.probe.kind}`;
  if (step.kind !== 'look') return null;
  const named = [...step.expected, ...step.outcomes.flatMap(({ looks }) => looks)];
  const odd = named.find((look) => !looksShownBy(step.probe).includes(look));
  return odd === undefined ? null : `expects "${odd}" where it probes ${step.probe.kind}`;
}

/** Whether an instrument shows such a thing: a number in its unit, or one of its looks. */
export function showsSuch(
  probe: Probe,
  shown: Pick<Shown, 'kind'> & { unit?: string; look?: Look },
): boolean {
  return shown.kind === 'number'
    ? unitShownBy(probe) === shown.unit
    : shown.look !== undefined && looksShownBy(probe).includes(shown.look);
}

/** The first place of a test that the circuit does not have; without a circuit every place may be one. */
export function testFlaw({ setup, probe }: Test, circuit: Circuit | null): Flaw {
  if (!circuit) return null;
  const ends = setup.bridges.flatMap(({ from, to }) => [from, to]);
  const lost = [...leadsOf(probe), ...ends].find(
    (id) => !circuit.terminals.some((one) => one.id === id),
  );
  if (lost !== undefined) return `names a terminal that the circuit does not have, "${lost}"`;
  const loose = setup.unplugged.find(
    (name) => !circuit.connectors.some(({ part }) => part === name),
  );
  return loose === undefined ? null : `unplugs a part that the circuit does not have, "${loose}"`;
}

function leadsOf(probe: Probe): readonly string[] {
  if (probe.kind === 'inspect') return [];
  return probe.kind === 'counts' ? [probe.input] : [probe.plus, probe.minus];
}

/** What the tree and the vehicle name of the circuit. */
function conclusionFlaw({ procedure, circuit }: SessionOpened): Flaw {
  if (!procedure || !circuit) return null;
  for (const step of Object.values(procedure.steps)) {
    const odd =
      step.kind === 'conclude'
        ? unknownFault(circuit, step.faults)
        : 'probe' in step && step.probe
          ? testFlaw({ setup: step.setup, probe: step.probe }, circuit)
          : null;
    if (odd !== null) return `${odd} (procedure.steps.${step.id})`;
  }
  return null;
}

/** The first fault of the list that the circuit does not have. */
export function unknownFault(circuit: Circuit | null, faults: readonly string[]): Flaw {
  const lost = faults.find((id) => !circuit?.faults.some((fault) => fault.id === id));
  return lost === undefined ? null : `names a fault that the circuit does not have, "${lost}"`;
}

/** Only on a simulated vehicle does a walk begin in the middle, and at a step that there is. */
function vehicleFlaw({ from, procedure, circuit, vehicle }: SessionOpened): Flaw {
  if (from !== undefined && (vehicle.kind !== 'bench' || !procedure))
    return 'begins in the middle of a procedure, which only a simulated vehicle does (from)';
  if (from !== undefined && procedure && !Object.hasOwn(procedure.steps, from))
    return noStep('from', from);
  if (vehicle.kind === 'drill' && !circuit) return 'is a drill without a circuit (circuit)';
  if (vehicle.kind !== 'bench' || vehicle.fault === HEALTHY) return null;
  const lost = unknownFault(circuit, [vehicle.fault]);
  return lost && `${lost} (vehicle.fault)`;
}

/** Whether a stored circuit is one that the loader could have made: no name twice, and none that leads nowhere. */
function circuitFlaw(circuit: Circuit): Flaw {
  const { parts, wires, connectors, terminals, target, faults } = circuit;
  const wrong = (words: string, at: string) => `${words} (circuit.${at})`;
  const twice = repeated(parts.map(({ name }) => name));
  if (twice !== null) return wrong(`has two parts called "${twice}"`, 'parts');
  if (parts.filter(isSensor).length !== 1) return wrong('has no one sensor', 'parts');
  if (parts.filter(({ kind }) => kind === 'module').length !== 1)
    return wrong('has no one module', 'parts');
  for (const part of parts) {
    const odd = partFlaw(part);
    if (odd !== null) return wrong(odd, `parts, "${part.name}"`);
  }
  const wire = repeated(wires.map(({ name }) => name));
  if (wire !== null) return wrong(`has two wires called "${wire}"`, 'wires');
  const pins = new Set(
    parts.flatMap(({ name, pins: own, kind }) =>
      own.flatMap((pin) => [`${name}.${pin}`, ...(kind === 'joint' ? [`${name}.${pin}.pin`] : [])]),
    ),
  );
  for (const { name, from, to } of wires)
    for (const end of [from, to])
      if (!pins.has(end) && !POSTS.includes(end) && !end.startsWith('splice.'))
        return wrong(`has a wire to nowhere, "${end}"`, `wires, "${name}"`);
  const value = valueFlaw(circuit);
  if (value) return wrong(value.words, value.at);
  // The rest follows from parts and wires.
  const due = connectorsOf(parts, wires);
  if (!sameNames(due.map(connectorKey), connectors.map(connectorKey)))
    return wrong('has other connectors than its parts and wires give', 'connectors');
  const places = terminalsOf(due, parts).map(({ id }) => id);
  if (
    !sameNames(
      places,
      terminals.map(({ id }) => id),
    )
  )
    return wrong('has other terminals than its connectors give', 'terminals');
  const fault = repeated(faults.map(({ id }) => id));
  if (fault !== null) return wrong(`has two faults called "${fault}"`, 'faults');
  for (const { id, effect, also } of faults)
    for (const one of also ? [effect, also] : [effect]) {
      const odd = effectFlaw(one, circuit, pins, target !== null);
      if (odd !== null) return wrong(odd, `faults, "${id}"`);
    }
  return null;
}

const POSTS = ['battery.positive', 'battery.negative'];

/** Pins of the parts that always have the same. */
const PINS: Readonly<
  Record<Exclude<Part['kind'], SensorPart['kind'] | 'module' | 'joint'>, readonly string[]>
> = {
  fuse: ['in', 'out'],
  relay: ['30', '87'],
  'ground-point': ['eyelet'],
  neighbour: ['feed', 'ground'],
};

/** Of a relay with a coil. */
const COIL_PINS = ['30', '87', '85', '86'];

function partFlaw(part: Part): Flaw {
  if (!sameNames(pinsOf(part), part.pins)) return 'has other pins than its kind';
  if (part.kind !== 'module') return null;
  const named = part.inside.flatMap(({ pull, input, joinedTo }) => [
    ...(pull ? pullEnds(pull.to).flatMap(pinsNamed) : []),
    ...(input?.kind === 'swing' ? [input.against] : []),
    ...(joinedTo === null ? [] : [joinedTo]),
  ]);
  const lost = named.find((pin) => !part.pins.includes(pin));
  return lost === undefined ? null : `names a pin that it does not have, "${lost}"`;
}

/** The other pin that a resistor's end speaks of. */
function pinsNamed(end: PullEnd): readonly string[] {
  if (end.kind === 'pin') return [end.pin];
  return end.kind === 'volts' && end.as !== undefined ? [end.as] : [];
}

function pinsOf(part: Part): readonly string[] {
  if (part.kind === 'module') return part.inside.map(({ name }) => name);
  // A pin for each wire, whatever they are called.
  if (part.kind === 'joint') return part.pins;
  if (part.kind === 'relay' && part.coil) return COIL_PINS;
  if (!isSensor(part)) return PINS[part.kind];
  const { pins } = sensorKindOf(part);
  if (pins !== null || part.kind !== 'potentiometer') return pins ?? part.pins;
  return [...new Set(part.tracks.flatMap(({ feed, signal, ground }) => [feed, signal, ground]))];
}

function connectorKey({
  part,
  pins,
}: {
  readonly part: string;
  readonly pins: readonly string[];
}): string {
  return [part, ...[...pins].sort()].join(' ');
}

function effectFlaw(
  effect: FaultEffect,
  { wires, parts }: Circuit,
  pins: ReadonlySet<string>,
  hasTarget: boolean,
): Flaw {
  const wireNames = wires.map(({ name }) => name);
  switch (effect.kind) {
    case 'wire-open':
    case 'wire-resistive':
    case 'wire-short': {
      const other =
        effect.kind === 'wire-short' && typeof effect.to === 'object' ? [effect.to.wire] : [];
      const lost = [effect.wire, ...other].find((name) => !wireNames.includes(name));
      return lost === undefined ? null : `is of a wire that does not exist, "${lost}"`;
    }
    case 'contact-open':
    case 'contact-resistive':
      return pins.has(effect.terminal)
        ? null
        : `is of a contact that does not exist, "${effect.terminal}"`;
    case 'wires-swapped': {
      const lost = effect.terminals.find((terminal) => !pins.has(terminal));
      return lost === undefined ? null : `is of a contact that does not exist, "${lost}"`;
    }
    case 'part':
      return parts.some(({ name }) => name === effect.part)
        ? null
        : `is of a part that does not exist, "${effect.part}"`;
    case 'target':
      return hasTarget ? null : 'is of a target, which this circuit does not have';
  }
}

function repeated(names: readonly string[]): string | null {
  const seen = new Set<string>();
  return names.find((name) => seen.size === seen.add(name).size) ?? null;
}

/** The same names, in any order, none of them twice. */
function sameNames(one: readonly string[], other: readonly string[]): boolean {
  const others = new Set(other);
  return (
    one.length === other.length &&
    others.size === other.length &&
    one.every((name) => others.has(name))
  );
}
