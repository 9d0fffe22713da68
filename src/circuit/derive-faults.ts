/** Everything that can fail in a circuit, from its structure alone: each wire, each contact, each part, the target. */
import {
  type Circuit,
  type Fault,
  type FaultClass,
  type FaultEffect,
  isSensor,
  type Span,
  type TargetMode,
  type Wire,
} from './circuit.ts';
import { leakingPlug } from './leaking-plug.ts';
import { partFaults, RESISTIVE_OHMS, spaced } from './part-faults.ts';
import { sensorKindOf } from './sensors.ts';
import { swappedWires } from './swapped-wires.ts';
import { MARKS } from './timing-marks.ts';

/** How a class's weight is shared among its faults. Common practice, no source. */
const SHARE = {
  open: 1,
  resistive: 1.2,
  shortToGround: 0.5,
  shortToBattery: 0.2,
  shortToWire: 0.3,
};
/** A chafed wire against metal or another wire. Common practice, no source. */
const SHORT_OHMS: Span = { low: 0.01, high: 2 };

/** Faults in the order of the file, each with its share in its class as weight. Sizes are all that a fault can have, noticed or not. */
export function deriveFaults(circuit: Omit<Circuit, 'faults'>): Fault[] {
  return [
    ...circuit.wires.flatMap((wire) => wireFaults(wire, circuit)),
    ...circuit.connectors.flatMap((connector) =>
      connector.pins.flatMap((pin) => contactFaults(circuit, connector.part, pin)),
    ),
    ...leakingPlug(circuit),
    ...circuit.parts.flatMap((part) =>
      isSensor(part) ? sensorKindOf(part).faults(part) : partFaults(part),
    ),
    ...swappedWires(circuit),
    ...targetFaults(circuit),
  ];
}

/** The weight of each class shared out among its faults, by the shares that `deriveFaults` left in `weight`. */
export function shareWeights(
  faults: readonly Fault[],
  classWeights: Readonly<Record<FaultClass, number>>,
): Fault[] {
  const totals = new Map<FaultClass, number>();
  for (const fault of faults)
    totals.set(fault.class, (totals.get(fault.class) ?? 0) + fault.weight);
  return faults.map((fault) => ({
    ...fault,
    weight: (classWeights[fault.class] * fault.weight) / totals.get(fault.class)!,
  }));
}

function wireFaults(wire: Wire, circuit: Omit<Circuit, 'faults'>): Fault[] {
  const words = `the ${spaced(wire.name)} wire`;
  const make = (
    mode: string,
    share: number,
    what: string,
    effect: FaultEffect,
    more: string[] = [],
  ): Fault => ({
    id: `wire.${wire.name}.${mode}`,
    words: `${words} ${what}`,
    repair: `wire.${wire.name}`,
    repairWords: `Repair or replace ${words}.`,
    weight: share,
    subject: [`wire.${wire.name}`, 'harness', ...more],
    class: 'wire',
    visibleChance: 0.5,
    effect,
  });
  const faults = [
    make('open', SHARE.open, 'is broken', { kind: 'wire-open', wire: wire.name }),
    make('resistive', SHARE.resistive, 'has too much resistance', {
      kind: 'wire-resistive',
      wire: wire.name,
      ohms: RESISTIVE_OHMS,
    }),
  ];
  const short = (to: 'battery.negative' | 'battery.positive' | { wire: string }): FaultEffect => ({
    kind: 'wire-short',
    wire: wire.name,
    to,
    ohms: SHORT_OHMS,
  });
  // A ground wire against metal changes nothing; against a feed it blows that feed's fuse, which is another complaint.
  if (wire.role === 'ground') return faults;
  faults.push(
    make('short-to-ground', SHARE.shortToGround, 'is shorted to ground', short('battery.negative')),
  );
  // A wire that carries battery voltage by itself cannot be told from one that touches another such wire.
  if (wire.role === 'supply') return faults;
  faults.push(
    make(
      'short-to-battery',
      SHARE.shortToBattery,
      'is shorted to battery positive',
      short('battery.positive'),
    ),
  );
  for (const other of [...harnessMates(wire, circuit), ...groundsBeside(wire, circuit)])
    faults.push(
      make(
        modeOfTouching(other),
        SHARE.shortToWire,
        `is shorted to the ${spaced(other.name)} wire`,
        short({ wire: other.name }),
        [`wire.${other.name}`],
      ),
    );
  return faults;
}

/** A wire called `ground` is not the body, and one called `battery` is not the post. */
function modeOfTouching({ name }: Wire): string {
  return name === 'ground' || name === 'battery' ? `short-to-${name}-wire` : `short-to-${name}`;
}

function servesNeighbour(wire: Wire, circuit: Omit<Circuit, 'faults'>): boolean {
  return circuit.parts.some(
    (part) =>
      part.kind === 'neighbour' &&
      [wire.from, wire.to].some((end) => end.startsWith(`${part.name}.`)),
  );
}

/**
 * Wires with which a short is a fault of its own, each pair once: signals come first. A sister's signal counts too, since
 * signals run together.
 */
function harnessMates(wire: Wire, circuit: Omit<Circuit, 'faults'>): Wire[] {
  const { name } = circuit.parts.find(isSensor)!;
  const touches = (one: Wire): boolean => pinAt(one, name) !== null;
  const isMate = (one: Wire): boolean =>
    one.role === 'signal' || (one.role === 'reference' && touches(one));
  const order = (one: Wire) => (one.role === 'signal' ? 0 : 1) * 1000 + circuit.wires.indexOf(one);
  return circuit.wires.filter(
    (other) =>
      (touches(wire) || touches(other)) &&
      isMate(wire) &&
      isMate(other) &&
      order(wire) < order(other),
  );
}

/** The ground wires of the sensor, which run beside what its signals and references carry. */
function groundsBeside(wire: Wire, circuit: Omit<Circuit, 'faults'>): Wire[] {
  const sensor = circuit.parts.find(isSensor)!;
  if (pinAt(wire, sensor.name) === null) return [];
  const grounds =
    sensor.kind === 'potentiometer' ? sensor.tracks.map(({ ground }) => ground) : ['ground'];
  return circuit.wires.filter((other) => {
    const at = pinAt(other, sensor.name);
    return other.role === 'ground' && at !== null && grounds.includes(at);
  });
}

/** The pin of a part at which a wire ends, or null. */
function pinAt(wire: Wire, part: string): string | null {
  const end = [wire.from, wire.to].find((one) => one.startsWith(`${part}.`));
  return end === undefined ? null : end.slice(part.length + 1);
}

function contactFaults(circuit: Omit<Circuit, 'faults'>, part: string, pin: string): Fault[] {
  const terminal = `${part}.${pin}`;
  const wire = circuit.wires.find((one) => one.from === terminal || one.to === terminal);
  if (wire && servesNeighbour(wire, circuit)) return [];
  const connector = circuit.connectors.find((one) => one.part === part)!;
  const base = {
    repair: `connector.${part}`,
    repairWords: `Clean, refit or replace the terminals at ${connector.words}.`,
    subject: [`contact.${terminal}`, `connector.${part}`],
    class: 'connector' as const,
    visibleChance: 0.8,
  };
  return [
    {
      ...base,
      id: `contact.${terminal}.open`,
      words: `the ${spaced(pin)} contact at ${connector.words} is open`,
      weight: SHARE.open,
      effect: { kind: 'contact-open', terminal },
    },
    {
      ...base,
      id: `contact.${terminal}.resistive`,
      words: `the ${spaced(pin)} contact at ${connector.words} is corroded`,
      weight: SHARE.resistive,
      effect: { kind: 'contact-resistive', terminal, ohms: RESISTIVE_OHMS },
    },
  ];
}

/** Where each is looked for: eyes on the wheel, a magnet card along a ring, the sensor's seat, the bearing as it turns. */
function targetFaults({ target }: Omit<Circuit, 'faults'>): Fault[] {
  if (!target) return [];
  const { at, ring } = target;
  const replace = ['target.replace', `Replace the wheel at the ${at}.`] as const;
  const wheel = [
    targetFault('damaged', 1, `the wheel at the ${at} is damaged`, ...replace, 0.8, [
      'target',
      'target.ring',
    ]),
    targetFault(
      'displaced',
      1,
      `the wheel at the ${at} is out of position`,
      'target.align',
      `Correct the position of the wheel at the ${at}: timing, key, fastening.`,
      0.3,
      ['target', MARKS],
    ),
    targetFault(
      'gap-wide',
      0.7,
      `the gap between sensor and wheel at the ${at} is too wide`,
      'target.gap',
      'Seat the sensor and set the gap.',
      0.7,
      ['target', 'target.seat'],
    ),
    targetFault(
      'missing',
      0.3,
      `the wheel at the ${at} is missing, or does not turn`,
      ...replace,
      0.8,
      ['target', 'target.ring'],
    ),
  ];
  if (ring === undefined) return wheel;
  const runout = targetFault(
    'runout',
    0.4,
    `the ring at the ${at} runs out of true`,
    'target.bearing',
    `Replace the bearing at the ${at}, or true its ring.`,
    0.6,
    ['target', 'target.turning'],
  );
  if (ring === 'teeth') return [...wheel, runout];
  // No eye tells which side of a sealed bearing the magnets are on; a magnet card does.
  return [
    ...wheel,
    targetFault(
      'reversed',
      0.5,
      `the magnet ring at the ${at} is on the wrong side`,
      // A bearing that was pressed out is not fitted again. Common practice, no source.
      'target.replace',
      `Replace the bearing at the ${at}, its magnet ring towards the sensor.`,
      0.9,
      ['target.ring'],
    ),
    targetFault('weak', 0.5, `the magnet ring at the ${at} is weak`, ...replace, 0.7, [
      'target.ring',
    ]),
    runout,
  ];
}

function targetFault(
  mode: TargetMode,
  weight: number,
  words: string,
  repair: string,
  repairWords: string,
  visibleChance: number,
  subject: readonly string[] = ['target'],
): Fault {
  return {
    id: `target.${mode}`,
    words,
    repair,
    repairWords,
    weight,
    subject,
    class: 'target',
    visibleChance,
    effect: { kind: 'target', mode },
  };
}
