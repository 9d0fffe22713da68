/** In what a vehicle departs from the shipped file: in nothing, in one thing, in all, or beyond all ranges. */
import type { PullTo } from './car.ts';
import { drawingOf } from './drawing.ts';
import { drawn, rangesOf } from './ranges.ts';
import { between, logBetween, oneOf, type Random } from './seeded.ts';

/** Values being drawn. */
export interface Values {
  readonly values: Record<string, number>;
  readonly pulls: Record<string, PullTo>;
  feedsBattery: boolean;
}

export interface Stratum {
  readonly name: string;
  /** Circuits it exists for. */
  readonly circuits: readonly string[];
  /** Every value over its whole range, instead of about the shipped one. */
  readonly isFree: boolean;
  /** What is off, on top of that. */
  readonly turn: (random: Random, of: Values, circuit: string) => void;
  readonly fleeting: boolean;
  readonly faults: 1 | 2;
}

const HALL = ['hall-module-fed', 'hall-relay-fed'];
const COIL = ['reluctor-two-wire'];
const THROTTLE = ['throttle-potentiometer'];
const PEDAL = ['pedal-dual'];
const CURRENT = ['current-two-wire'];
const ALL = [...HALL, ...COIL, ...THROTTLE, ...PEDAL, ...CURRENT];
const SIGNALS = ['signal', 'signal-1', 'signal-2'];

const stratum = (
  name: string,
  circuits: readonly string[],
  turn: Stratum['turn'],
  more: Partial<Stratum> = {},
): Stratum => ({ name, circuits, turn, isFree: false, fleeting: false, faults: 1, ...more });

/** Changes one value where the circuit has it. */
function change({ values }: Values, name: string, to: (now: number) => number): void {
  const now = values[name];
  if (now !== undefined) values[name] = to(now);
}

function pull(of: Values, to: PullTo): void {
  for (const pin of SIGNALS) if (of.pulls[pin] !== undefined) of.pulls[pin] = to;
}

export const STRATA: readonly Stratum[] = [
  stratum('nothing-off', ALL, () => {}),
  stratum('pull-up-twice-or-half', HALL, (random, of) => {
    const factor = oneOf(random, [0.5, 2]);
    change(of, 'signal.pull', (now) => now * factor);
  }),
  stratum('pull-up-4-to-10', HALL, (random, of) => {
    const factor = between(random, 4, 10);
    change(of, 'signal.pull', (now) => now * factor);
  }),
  stratum('pull-up-to-8-V-or-battery', HALL, (random, of) => pullHigher(random, of)),
  stratum('coil-200-to-700', COIL, (random, of) =>
    change(of, 'sensor.ohms', () => between(random, 200, 700)),
  ),
  stratum('coil-1200-to-2500', COIL, (random, of) =>
    change(of, 'sensor.ohms', () => between(random, 1200, 2500)),
  ),
  stratum('coil-hot-or-cold', COIL, (random, of) => {
    const celsius = oneOf(random, [between(random, -30, 0), between(random, 70, 120)]);
    change(of, 'sensor.celsius', () => celsius);
  }),
  stratum('input-pull-up', [...THROTTLE, ...PEDAL], (_random, of) => pull(of, 'reference')),
  stratum('inverted', [...THROTTLE, ...PEDAL], (_random, of) => {
    for (const track of ['main', 'track-1', 'track-2']) invert(of, track);
  }),
  stratum('other-ratios', THROTTLE, (random, of) => {
    change(of, 'main.closed', () => between(random, 0.05, 0.15));
    change(of, 'main.open', () => between(random, 0.85, 0.95));
  }),
  stratum('crossing', PEDAL, (_random, of) => {
    change(of, 'track-2.closed', () => 1 - (of.values['track-1.closed'] ?? 0));
    change(of, 'track-2.open', () => 1 - (of.values['track-1.open'] ?? 1));
  }),
  stratum('slope', PEDAL, (random, of) => offsetTrack(random, of)),
  stratum('sense-50-to-300', CURRENT, (random, of) =>
    change(of, 'signal.pull', () => logBetween(random, 50, 300)),
  ),
  stratum('8-V-feed', CURRENT, (random, of) => feedEight(random, of)),
  stratum('all-free', ALL, freeChoices, { isFree: true }),
  stratum('outside', ALL, outside, { isFree: true }),
  stratum('intermittent', ALL, freeChoices, { isFree: true, fleeting: true }),
  stratum('two-faults', ALL, freeChoices, { isFree: true, faults: 2 }),
];

function pullHigher(random: Random, of: Values): void {
  if (random() < 0.5) pull(of, 'battery');
  else {
    pull(of, 'own');
    change(of, 'signal.own', () => between(random, 7.6, 8.4));
  }
}

function feedEight(random: Random, of: Values): void {
  of.feedsBattery = false;
  change(of, 'feed.volts', () => between(random, 7.6, 8.4));
}

function invert({ values }: Values, track: string): void {
  const closed = values[`${track}.closed`];
  if (closed === undefined) return;
  values[`${track}.closed`] = 1 - closed;
  values[`${track}.open`] = 1 - (values[`${track}.open`] ?? 0);
}

/** The same slope with a constant offset. */
function offsetTrack(random: Random, { values }: Values): void {
  const offset = between(random, 0.06, 0.1);
  values['track-1.closed'] = between(random, 0.15, 0.2);
  values['track-1.open'] = between(random, 0.8, 0.92);
  values['track-2.closed'] = values['track-1.closed'] - offset;
  values['track-2.open'] = values['track-1.open'] - offset;
}

/** What is a choice and not a number, over all cars. */
function freeChoices(random: Random, of: Values, circuit: string): void {
  const { values } = of;
  // A charger is on now and then; smart charging may keep the running voltage low.
  if (random() < 0.15) values['battery.rest'] = between(random, 13.2, 14.8);
  if (random() < 0.1) values['battery.running'] = between(random, 12.5, 15);
  // A damp harness.
  if (random() < 0.1)
    for (const name of Object.keys(values))
      if (name.endsWith('.insulation')) values[name] = logBetween(random, 1e6, 2e7);
  if (HALL.includes(circuit)) {
    const to = random();
    if (to < 0.3) pullHigher(random, of);
    else pull(of, circuit === 'hall-module-fed' && to < 0.75 ? 'reference' : 'own');
  }
  if (CURRENT.includes(circuit) && random() < 0.4) feedEight(random, of);
  if (COIL.includes(circuit)) {
    const isUnbiased = random() < 0.1;
    for (const pin of ['signal-plus', 'signal-minus']) {
      of.pulls[pin] = isUnbiased ? 'ground' : 'own';
      values[`${pin}.own`] = values['signal-plus.own'] ?? 0;
      // Two resistors of one kind.
      values[`${pin}.pull`] = isUnbiased
        ? 1e6
        : (values['signal-plus.pull'] ?? 0) * between(random, 0.98, 1.02);
    }
  }
  if (THROTTLE.includes(circuit) || PEDAL.includes(circuit)) {
    pull(of, oneOf(random, ['ground', 'reference', 'none']));
    freeTracks(random, of, circuit);
  }
}

function freeTracks(random: Random, of: Values, circuit: string): void {
  const { values } = of;
  const first = PEDAL.includes(circuit) ? 'track-1' : 'main';
  values[`${first}.closed`] = between(random, 0.05, 0.15);
  values[`${first}.open`] = between(random, 0.85, 0.95);
  if (PEDAL.includes(circuit)) {
    const kind = oneOf(random, ['half', 'opposite', 'offset']);
    if (kind === 'half') {
      values['track-2.closed'] = values['track-1.closed']! / 2;
      values['track-2.open'] = values['track-1.open']! / 2;
    } else if (kind === 'opposite') {
      values['track-2.closed'] = 1 - values['track-1.closed']!;
      values['track-2.open'] = 1 - values['track-1.open']!;
    } else offsetTrack(random, of);
  }
  if (random() < 0.3) for (const track of ['main', 'track-1', 'track-2']) invert(of, track);
}

/** What may go over range, by circuit. */
const BEYOND: Readonly<Record<string, readonly string[]>> = {
  'hall-module-fed': ['signal.pull', 'sensor.draws'],
  'hall-relay-fed': ['signal.pull', 'sensor.draws'],
  'reluctor-two-wire': ['sensor.ohms', 'signal-plus.pull', 'signal-minus.pull'],
  'throttle-potentiometer': ['main.ohms', 'signal.pull'],
  'pedal-dual': ['track-1.ohms', 'track-2.ohms', 'signal-1.pull', 'signal-2.pull'],
  'current-two-wire': ['signal.pull'],
};

/** One value 1.2 to 3 times over range, or a neighbour that nobody described. */
function outside(random: Random, of: Values, circuit: string): void {
  freeChoices(random, of, circuit);
  const names = BEYOND[circuit] ?? [];
  const hasFeed = rangesOf(drawingOf(circuit)).some(({ name }) => name === 'reference.volts');
  if (hasFeed && random() < 0.3) {
    of.values['undescribed.ohms'] = logBetween(random, 250, 2000);
    return;
  }
  const name = oneOf(random, names);
  const range = rangesOf(drawingOf(circuit)).find((one) => one.name === name);
  if (!range) throw new Error(`strata: no range of "${name}" in ${circuit}`);
  const factor = between(random, 1.2, 3);
  of.values[name] = random() < 0.5 ? range.free.low / factor : range.free.high * factor;
}

/** The values about the shipped file or over their ranges, before anything is turned. */
export function plainValues(random: Random, circuit: string, isFree: boolean): Values {
  const drawing = drawingOf(circuit);
  const values: Record<string, number> = {};
  for (const { name, shipped, free } of rangesOf(drawing))
    values[name] = drawn(random, isFree ? free : shipped);
  // One bias behind two resistors of one kind in one module, as over all cars below.
  if (values['signal-minus.pull'] !== undefined) {
    values['signal-minus.pull'] = (values['signal-plus.pull'] ?? 0) * between(random, 0.98, 1.02);
    values['signal-minus.own'] = values['signal-plus.own'] ?? 0;
  }
  const pulls: Record<string, PullTo> = {};
  for (const { pin, does } of drawing.module) {
    if (does === 'bias') pulls[pin] = 'own';
    if (does === 'input')
      pulls[pin] =
        drawing.sensor === 'hall'
          ? circuit === 'hall-module-fed'
            ? 'reference'
            : 'own'
          : 'ground';
  }
  for (const { name } of drawing.tracks) {
    const ends = SHIPPED_ENDS[name];
    if (!ends) throw new Error(`strata: no ends of the track "${name}"`);
    const [closed, open] = ends;
    values[`${name}.closed`] = drawn(random, closed);
    values[`${name}.open`] = drawn(random, open);
  }
  return { values, pulls, feedsBattery: circuit === 'current-two-wire' };
}

type Ends = readonly [{ low: number; high: number }, { low: number; high: number }];
/** Ends of the tracks as the shipped files have them. */
const SHIPPED_ENDS: Readonly<Record<string, Ends>> = {
  main: [
    { low: 0.1176, high: 0.1224 },
    { low: 0.873, high: 0.927 },
  ],
  'track-1': [
    { low: 0.147, high: 0.153 },
    { low: 0.834, high: 0.886 },
  ],
  'track-2': [
    { low: 0.07425, high: 0.07575 },
    { low: 0.42355, high: 0.43645 },
  ],
};

/** The strata that a circuit has, in the order above. */
export function strataOf(circuit: string): readonly Stratum[] {
  return STRATA.filter(({ circuits }) => circuits.includes(circuit));
}
