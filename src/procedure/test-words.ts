/** A test in the words of a report: where the leads are, how the vehicle stands, which instrument looks. */
import { type Circuit, partName, sensorOf, type Target } from '../circuit/circuit.ts';
import { instrumentOf } from '../circuit/instruments.ts';
import { wireWords } from '../circuit/joints.ts';
import { lookWords } from '../circuit/look-words.ts';
import { isMeterUnit, METER_UNITS } from '../circuit/meter-units.ts';
import type { Bridge, Probe, Setup, VehicleState } from '../circuit/test.ts';
import { formatQuantity, formatReadings } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import { terminalWords } from './bind-text.ts';
import type { Job } from './job.ts';
import { type ExpectedRange, expectedEnds, type Step } from './procedure.ts';

const STATE_WORDS: Readonly<Record<VehicleState, string>> = {
  'key-off': 'key off',
  'key-on': 'key on, engine off',
  cranking: 'engine cranking',
  running: 'engine running',
  driving: 'driven on the road',
};

/** Where the instrument looks, with the pins and colours of the job; empty when nothing is probed. */
export function probeWhere(probe: Probe | null, job: Job, circuit: Circuit | null): string {
  if (probe === null) return '';
  switch (probe.kind) {
    case 'counts':
      return `live data of ${terminalWords(probe.input, job, circuit)}`;
    case 'inspect':
      return thingWords(probe.of, circuit);
    default: {
      const plus = terminalWords(probe.plus, job, circuit);
      return `${plus} to ${terminalWords(probe.minus, job, circuit)}`;
    }
  }
}

/**
 * Which lead goes where, as sentences; empty when there are no leads. Of a position the second channel is named too,
 * which a step of a tree does by its own text.
 */
export function leadWords(probe: Probe, job: Job, circuit: Circuit | null): string {
  if (probe.kind === 'inspect') return openingWords(probe.of, circuit);
  const said = instrumentOf(probe).words.say(probe, (place) => terminalWords(place, job, circuit));
  return probe.kind === 'timing' ? `${said} Second channel: ${sisterWords(circuit)}.` : said;
}

/** What a look into a connector looks for, which its name does not say; empty for other looks. */
function openingWords(of: string, circuit: Circuit | null): string {
  const [kind, ...part] = of.split('.');
  if (kind !== 'connector') return '';
  const first = isModule(part.join('.'), circuit)
    ? 'The maker says whether to disconnect the battery first. '
    : '';
  return `${first}Open it and look into both halves: bent or pushed-back pins, green corrosion, water, oil, a torn seal. Pull lightly at each wire.`;
}

/** What a position is read against: the shaft that turns with this one. */
function sisterWords(circuit: Circuit | null): string {
  const at = circuit?.target?.at ?? '';
  const other = /\bcam ?shaft\b/.test(at) ? 'crankshaft' : /\bcrank/.test(at) ? 'camshaft' : null;
  const sister = other ? `the ${other} sensor's signal` : 'the signal it is compared with';
  return `${sister}, both in the same crank`;
}

/** Where a step of the tree looks. */
export function stepWhere(step: Step, job: Job, circuit: Circuit | null): string {
  return step.kind === 'measure' || step.kind === 'look'
    ? probeWhere(step.probe, job, circuit)
    : '';
}

/** `key on, engine off`. */
export function stateWords(state: VehicleState): string {
  return STATE_WORDS[state] ?? state;
}

/** The same for a title: `key on`. */
export function shortStateWords(state: VehicleState): string {
  return state.replace('-', ' ');
}

/** How the vehicle stands, without what is clipped to it: `key on, engine off; crankshaft position sensor unplugged`. */
export function vehicleWords(setup: Setup, circuit: Circuit | null): string {
  return standing(setup, circuit, []);
}

/** The same and what is clipped where: `...; lead from … to …`. */
export function setupWords(setup: Setup, job: Job, circuit: Circuit | null): string {
  const clipped = setup.bridges.map((bridge) => bridgeWords(bridge, job, circuit));
  return standing(setup, circuit, clipped);
}

/**
 * What the last test left behind that has to be undone before this one, as a sentence; empty when nothing is. What is
 * to be taken off or clipped on anew is told by the text of a step itself.
 */
export function undoWords(
  before: Setup | null,
  test: { readonly setup: Setup; readonly probe: Probe | null },
  job: Job,
  circuit: Circuit | null,
): string {
  if (!before) return '';
  return firstWords(undoing(before, test, job, circuit));
}

/**
 * The same for a test without a text of its own: also what is taken off, plugged in and clipped on for it. `on` is what
 * surely stands of the test before; where somebody has worked on the vehicle since, nothing does.
 */
export function arrangeWords(
  { before, on }: { readonly before: Setup | null; readonly on: Setup | null },
  test: { readonly setup: Setup; readonly probe: Probe | null },
  job: Job,
  circuit: Circuit | null,
): string {
  const undo = before ? undoing(before, test, job, circuit) : NOTHING_TO_DO;
  const { setup } = test;
  const clipped = new Set(on?.bridges.map((bridge) => bridgeWords(bridge, job, circuit)));
  const clips = setup.bridges
    .filter((bridge) => !clipped.has(bridgeWords(bridge, job, circuit)))
    .map((bridge) => `clip a ${bridgeWords(bridge, job, circuit, fitWords)}`);
  const isSpareIn = setup.sensor === 'spare' && on?.sensor !== 'spare';
  const off = [
    ...setup.unplugged
      .filter((part) => !on?.unplugged.includes(part))
      .map(
        (part) =>
          `${isModule(part, circuit) ? 'wait until the module sleeps, ' : ''}unplug the ${thingWords(part, circuit)}`,
      ),
    ...(isSpareIn ? ['plug in a known-good sensor in place of the one in the vehicle'] : []),
  ];
  return firstWords({
    isKeyOff: undo.isKeyOff || off.length > 0,
    what: [...undo.what, ...off, ...clips],
  });
}

function isModule(part: string, circuit: Circuit | null): boolean {
  return circuit?.parts.some(({ name, kind }) => name === part && kind === 'module') ?? false;
}

/** Work of the hands before a test. */
interface ToDoFirst {
  readonly isKeyOff: boolean;
  readonly what: readonly string[];
}
const NOTHING_TO_DO: ToDoFirst = { isKeyOff: false, what: [] };

function firstWords({ isKeyOff, what }: ToDoFirst): string {
  const all = [...(isKeyOff ? ['key off'] : []), ...what];
  return all.length === 0 ? '' : `First: ${all.join(', ')}.`;
}

function undoing(
  before: Setup,
  { setup: after, probe }: { readonly setup: Setup; readonly probe: Probe | null },
  job: Job,
  circuit: Circuit | null,
): ToDoFirst {
  const kept = new Set(after.bridges.map((bridge) => bridgeWords(bridge, job, circuit)));
  const off = before.bridges
    .map((bridge) => bridgeWords(bridge, job, circuit))
    .filter((words) => !kept.has(words))
    .map((words) => `remove the ${words}`);
  const isSpareOut = before.sensor === 'spare' && after.sensor === 'fitted';
  // A good sensor goes where the old one was, and an open connector is looked into as it is.
  const isLeftOff = (part: string) =>
    (after.sensor === 'spare' && circuit !== null && sensorOf(circuit).name === part) ||
    (probe?.kind === 'inspect' && probe.of === `connector.${part}`);
  const plugs = [
    ...(isSpareOut ? ['plug the original sensor back in instead of the known-good one'] : []),
    ...before.unplugged
      .filter((part) => !after.unplugged.includes(part))
      .filter((part) => !isLeftOff(part))
      .map((part) => `plug the ${thingWords(part, circuit)} back in`),
  ];
  const isKeyOff = plugs.length > 0 || (off.length > 0 && before.unplugged.some(isLeftOff));
  return { isKeyOff, what: [...off, ...plugs] };
}

/** `470 ohm resistor from … to …`. */
function bridgeWords(
  { from, to, through }: Bridge,
  job: Job,
  circuit: Circuit | null,
  resistor = resistanceWords,
): string {
  const what =
    typeof through === 'string' ? through.replace('-', ' ') : `${resistor(through.ohms)} resistor`;
  return `${what} from ${terminalWords(from, job, circuit)} to ${terminalWords(to, job, circuit)}`;
}

function standing(
  { state, unplugged, sensor, target }: Setup,
  circuit: Circuit | null,
  clipped: readonly string[],
): string {
  // With the engine turning, so does the target.
  const byHand = target === 'moving' && (state === 'key-on' || state === 'key-off');
  return [
    stateWords(state),
    ...unplugged.map((part) => `${thingWords(part, circuit)} unplugged`),
    ...clipped,
    ...(sensor === 'spare' ? ['known-good sensor plugged in'] : []),
    ...(byHand ? [moveWords(circuit)] : []),
  ].join('; ');
}

/** `1 kohm`, `330 ohm`, as authors write them. */
export function resistanceWords(ohms: number): string {
  return formatQuantity({ value: ohms, unit: 'ohm' }, { ascii: true });
}

/**
 * The same of one that is to be clipped in, with the watts it must stand: `330 ohm one-watt`. A short may put the whole
 * battery across it. A quarter watt, which any has, is not said.
 */
export function fitWords(ohms: number): string {
  const watts = BATTERY_MOST ** 2 / ohms;
  const rating = RATINGS.find(([stands]) => watts <= stands);
  const words = rating ? rating[1] : `${Math.ceil(watts)}-watt`;
  return words === '' ? resistanceWords(ohms) : `${resistanceWords(ohms)} ${words}`;
}

/** Charged, engine running; common practice, no source. */
const BATTERY_MOST = 14.6;
/** Watts in which resistors are sold; common practice, no source. */
const RATINGS: readonly (readonly [number, string])[] = [
  [0.25, ''],
  [0.5, 'half-watt'],
  [1, 'one-watt'],
  [2, 'two-watt'],
  [5, 'five-watt'],
  [10, 'ten-watt'],
  [25, '25-watt'],
  [50, '50-watt'],
];

/** A potentiometer is moved itself; other sensors have something pass them. */
function moveWords(circuit: Circuit | null): string {
  if (circuit?.target?.at.endsWith('wheel')) return `${circuit.target.at} turned by hand`;
  return circuit?.parts.some(({ kind }) => kind === 'potentiometer')
    ? 'sensor moved through its travel'
    : 'target moved past the sensor';
}

/** The instrument of a look or a question; readings carry their own. */
export function instrumentWords(probe: Probe | null): string {
  return probe === null ? '' : instrumentOf(probe).words.tool;
}

/** What is expected of a reading: `4.88 to 5.12 V`; an ohmmeter shows `OL` for what lies above all its ranges. */
export function expectedRangeWords(expected: ExpectedRange, unit: Unit): string {
  const { low: least, high } = expectedEnds(expected);
  // The meter's accuracy reaches below zero; a resistance does not.
  const traits = isMeterUnit(unit) ? METER_UNITS[unit] : null;
  const low = traits?.isSigned === false ? Math.max(0, least) : least;
  const range = formatReadings(low, high, unit);
  const isOpen = traits?.overLimitMeansOpen && low > 0 && high === Number.POSITIVE_INFINITY;
  return isOpen ? `OL or ${range}` : range;
}

/** What is good at a step and who says so, for whoever is about to read there; null where nothing is expected. */
export function goodWords(step: Step): string | null {
  if (step.kind === 'look')
    return step.expected.length === 0 ? null : step.expected.map(lookWords).join(', or ');
  if (step.kind !== 'measure' || !step.expected) return null;
  return goodRangeWords(step.expected, step.unit);
}

/** A good range and who says so: `4.81 to 5.18 V (computed from the circuit)`. */
export function goodRangeWords(expected: ExpectedRange, unit: Unit): string {
  const range = expectedRangeWords(expected, unit);
  return expected.from === 'circuit'
    ? `${range} (computed from the circuit)`
    : `${range} (from the procedure)`;
}

/** A wire to a neighbour that nobody named, whose own name may be another part's; null for others. */
function wireOfAssumed(name: string, circuit: Circuit | null): string | null {
  const wire = circuit?.wires.find((one) => one.name === name);
  const ends = wire ? [partName(wire.from), partName(wire.to)] : [];
  const part = circuit?.parts.find((one) => ends.includes(one.name) && one.kind === 'neighbour');
  if (!wire || part?.kind !== 'neighbour' || part.told) return null;
  return `${wire.role === 'ground' ? 'ground' : 'feed'} wire of the ${part.words}`;
}

/** A part or a connector in the circuit's words; `wire.signal` as "signal wire", a section of it by what it lies between. */
export function thingWords(name: string, circuit: Circuit | null): string {
  const [kind, ...rest] = name.split('.');
  const inner = rest.join(' ').replace(/-/g, ' ');
  if (kind === 'connector' && inner !== '') {
    const connector = circuit?.connectors.find(({ part }) => part === rest.join('.'));
    return connector?.words ?? `${inner} connector`;
  }
  if (kind === 'wire' && inner !== '') {
    const wire = circuit?.wires.find((one) => one.name === rest.join('.') && one.of !== undefined);
    if (wire && circuit) return wireWords(wire, circuit).replace(/^the /, '');
    return wireOfAssumed(rest.join('.'), circuit) ?? `${inner} wire`;
  }
  if (kind === 'target' && circuit?.target) return targetWords(inner, circuit.target);
  const part = circuit?.parts.find((one) => one.name === name);
  return part?.words ?? name.replace(/[.-]/g, ' ');
}

/** What a repair is of, in a word or two: "signal wire" of `wire.signal`; null for leads and what is no one thing. */
export function thingOfRepair(repair: string, circuit: Circuit): string | null {
  const { connectors, parts, wires, target } = circuit;
  const name = repair.replace(/\.replace$/, '');
  const isThing =
    parts.some((part) => part.name === name) ||
    wires.some((wire) => name === `wire.${wire.name}`) ||
    connectors.some(({ part }) => name === `connector.${part}`) ||
    (target !== null && name.startsWith('target'));
  if (!isThing) return null;
  return thingWords(name, circuit);
}

/** What of a wheel or ring is looked at. */
function targetWords(what: string, { at, ring }: Target): string {
  const wheel = ring === undefined ? `wheel at the ${at}` : `ring at the ${at}`;
  if (what === 'seat') return `seat of the sensor at the ${at}`;
  if (what === 'marks') return `maker's marks of the timing at the ${at}`;
  return what === 'turning' ? `${at} as it turns` : wheel;
}
