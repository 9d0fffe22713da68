/**
 * Everything that can be wrong with a drawn car. Ids are those of the circuit files, so that weight, repair and the chance
 * of being seen can be taken from there; what a file does not have is marked.
 */
import type { Circuit } from '../../../src/circuit/circuit.ts';
import type { CarFault, ModuleMode, SensorMode, Trouble } from './car.ts';
import { type Drawing, type DrawnWire, plugsOf } from './drawing.ts';
import { between, logBetween, type Random } from './seeded.ts';

/** A fault before its size is drawn. */
export interface FaultToDraw extends Omit<CarFault, 'trouble'> {
  readonly weight: number;
  readonly trouble: (random: Random) => Trouble;
}

interface Draft {
  readonly id: string;
  readonly trouble: (random: Random) => Trouble;
  /** Repairs that mend it: any of them. */
  readonly mends: readonly string[];
  /** The fault of the file whose weight and chance of being seen it borrows, where the file does not have it. */
  readonly like: string;
  readonly share?: number;
}

/** A chafed or corroded joint, over all sizes that cars have. */
const resistive = (random: Random) => logBetween(random, 50, 100e3);
const short = (random: Random) => logBetween(random, 0.01, 2);
/** A film of water, from salty to nearly clean. */
const leaking = (random: Random) => logBetween(random, 2e3, 200e3);

/** All faults of a circuit that a car is drawn from, each with its weight. */
export function faultsToDraw(drawing: Drawing, circuit: Circuit): FaultToDraw[] {
  return draftsOf(drawing).flatMap((draft) => {
    const own = circuit.faults.find(({ id }) => id === draft.id);
    const like = own ?? circuit.faults.find(({ id }) => id === draft.like);
    if (!like) return [];
    return [
      {
        id: draft.id,
        trouble: draft.trouble,
        inFile: own !== undefined,
        mends: draft.mends,
        subject: like.subject,
        visibleChance: like.visibleChance,
        weight: own ? own.weight : like.weight * (draft.share ?? 1),
      },
    ];
  });
}

/** Faults of the file that the bench does not know how to make. */
export function unknownFaults(drawing: Drawing, circuit: Circuit): string[] {
  const known = new Set(draftsOf(drawing).map(({ id }) => id));
  return circuit.faults.map(({ id }) => id).filter((id) => !known.has(id));
}

function draftsOf(drawing: Drawing): Draft[] {
  return [
    ...drawing.wires.flatMap((wire) => wireDrafts(drawing, wire)),
    ...swappedDrafts(drawing),
    ...leakDrafts(drawing),
    ...plugsOf(drawing)
      .filter(({ part }) => part !== drawing.neighbour)
      .flatMap(({ part, pins }) => pins.flatMap((pin) => contactDrafts(`${part}.${pin}`, part))),
    ...sensorDrafts(drawing),
    ...moduleDrafts(drawing),
    ...partDrafts(drawing),
    ...(drawing.sensor === 'tracks' ? [] : wheelDrafts(drawing.sensor === 'current')),
  ];
}

function wireDrafts(drawing: Drawing, { name, from, to }: DrawnWire): Draft[] {
  const repair = `wire.${name}`;
  const isNeighbours = [from, to].some((end) => end.startsWith(`${drawing.neighbour}.`));
  const make = (
    mode: string,
    trouble: Draft['trouble'],
    like: string,
    more: Partial<Draft> = {},
  ): Draft => ({
    id: `${repair}.${mode}`,
    trouble,
    mends: [repair],
    like: `${repair}.${like}`,
    ...more,
  });
  const ground = make(
    'short-to-ground',
    (random) => ({ kind: 'wire-short', wire: name, to: 'mass', ohms: short(random) }),
    'short-to-ground',
  );
  const battery = make(
    'short-to-battery',
    (random) => ({ kind: 'wire-short', wire: name, to: 'battery', ohms: short(random) }),
    'short-to-battery',
  );
  if (isNeighbours) return name.includes('ground') ? [] : [ground, battery];
  const isGround = name.startsWith('ground');
  return [
    make('open', () => ({ kind: 'wire-open', wire: name }), 'open'),
    make(
      'resistive',
      (random) => ({ kind: 'wire-resistive', wire: name, ohms: resistive(random) }),
      'resistive',
    ),
    ...(isGround
      ? []
      : [
          ground,
          battery,
          ...matesOf(drawing, name).map((mate) =>
            make(
              // A wire called ground is not the body.
              mate === 'ground' ? 'short-to-ground-wire' : `short-to-${mate}`,
              (random) => ({ kind: 'wire-short', wire: name, to: mate, ohms: short(random) }),
              'open',
              // Apart from each other both are mended.
              { share: 0.3, mends: [repair, `wire.${mate}`] },
            ),
          ),
        ]),
  ];
}

/** Wires in the same loom up to the sensor, each pair once: signals first, then feeds, then grounds. */
function matesOf({ wires }: Drawing, name: string): string[] {
  const loom = wires.filter(({ to }) => to.startsWith('sensor.')).map((one) => one.name);
  const rank = (one: string) =>
    one.startsWith('signal') || one === 'plus' ? 0 : one.startsWith('feed') ? 1 : 2;
  const sorted = [...loom].sort((a, b) => rank(a) - rank(b));
  return loom.includes(name) ? sorted.slice(sorted.indexOf(name) + 1) : [];
}

/** Any two wires in each other's place at the plug of a sensor; a coil's are its own failure. */
function swappedDrafts({ sensor, sensorPins, wires }: Drawing): Draft[] {
  if (sensor === 'coil') return [];
  const wireTo = (pin: string) => wires.find(({ to }) => to === `sensor.${pin}`)?.name ?? pin;
  return sensorPins.flatMap((first, at) =>
    sensorPins.slice(at + 1).map((second) => ({
      id:
        sensorPins.length === 2 ? 'sensor.leads-swapped' : `sensor.${first}.swapped-with-${second}`,
      trouble: (): Trouble => ({ kind: 'wires-swapped', wires: [wireTo(first), wireTo(second)] }),
      mends: ['leads.swap'],
      like: '',
    })),
  );
}

/** Water between two pins of the sensor's plug that lie beside each other. */
function leakDrafts({ sensorPins, wires }: Drawing): Draft[] {
  const wireTo = (pin: string) => wires.find(({ to }) => to === `sensor.${pin}`)?.name ?? pin;
  return sensorPins.slice(1).map((second, at) => ({
    id: `contact.sensor.${sensorPins[at]!}.leaks-to-${second}`,
    trouble: (random): Trouble => ({
      kind: 'wire-short',
      wire: wireTo(sensorPins[at]!),
      to: wireTo(second),
      ohms: leaking(random),
    }),
    mends: ['connector.sensor'],
    like: '',
  }));
}

function contactDrafts(terminal: string, part: string): Draft[] {
  const id = `contact.${terminal}`;
  const mends = [`connector.${part}`];
  return [
    { id: `${id}.open`, trouble: () => ({ kind: 'contact-open', terminal }), mends, like: '' },
    {
      id: `${id}.resistive`,
      trouble: (random) => ({ kind: 'contact-resistive', terminal, ohms: resistive(random) }),
      mends,
      like: '',
    },
  ];
}

function sensorDrafts({ sensor, tracks }: Drawing): Draft[] {
  const make = (
    mode: SensorMode,
    size: (random: Random) => number = () => 1,
    track = '',
  ): Draft => ({
    id: track ? `sensor.${track}.${mode}` : `sensor.${mode}`,
    trouble: (random) => ({ kind: 'sensor', mode, track, size: size(random) }),
    mends: mode === 'leads-swapped' ? ['leads.swap'] : ['sensor.replace'],
    like: '',
  });
  const inside = (random: Random) => logBetween(random, 1, 20);
  switch (sensor) {
    case 'hall':
      return [
        make('dead'),
        make('stuck-low'),
        make('stuck-high'),
        make('weak-pull-down', (random) => logBetween(random, 300, 30e3)),
        make('shorted', inside),
      ];
    case 'current':
      return [make('dead'), make('stuck-low'), make('stuck-high'), make('shorted', inside)];
    case 'coil':
      return [
        make('coil-open'),
        make('shorted-turns', (random) => between(random, 0.2, 0.7)),
        make('coil-resistive', resistive),
        make('leads-swapped'),
      ];
    case 'tracks':
      return tracks.flatMap(({ name }) => [
        make('track-open', (random) => between(random, 0.3, 0.7), name),
        make('wiper-open', undefined, name),
        make('worn-spot', (random) => between(random, 0.2, 0.8), name),
        make('shorted', inside, name),
      ]);
  }
}

function moduleDrafts({ module, sensor }: Drawing): Draft[] {
  const make = (
    pin: string,
    id: string,
    mode: ModuleMode,
    size = (_random: Random) => 1,
  ): Draft => ({
    id: `module.${pin}.${id}`,
    trouble: (random) => ({ kind: 'module', mode, pin, size: size(random) }),
    mends: ['module.replace'],
    like: '',
  });
  return module.flatMap(({ pin, does }) => {
    if (does === 'feed')
      return [
        make(pin, 'dead', 'reference-dead'),
        make(pin, 'low', 'reference-low', (random) =>
          sensor === 'current' ? between(random, 0.2, 0.45) : between(random, 0.5, 0.85),
        ),
      ];
    if (does === 'ground') return [make(pin, 'open', 'ground-open')];
    if (does === 'driver') return [make(pin, 'driver-dead', 'driver-dead')];
    if (does === 'joined') return [];
    return [make(pin, 'pull-missing', 'pull-missing'), make(pin, 'input-dead', 'input-dead')];
  });
}

function partDrafts({ neighbour, isRelayFed }: Drawing): Draft[] {
  const part = (
    id: string,
    name: string,
    mode: 'open' | 'resistive' | 'shorted',
    size: (random: Random) => number = () => 0,
  ): Draft => ({
    id: `${name}.${id}`,
    trouble: (random) => ({ kind: 'part', part: name, mode, ohms: size(random) }),
    mends: [`${name}.replace`],
    like: '',
  });
  return [
    ...(neighbour
      ? [part('shorted', neighbour, 'shorted', (random) => logBetween(random, 0.1, 8))]
      : []),
    ...(isRelayFed
      ? [
          part('blown', 'fuse', 'open'),
          part('contact-open', 'relay', 'open'),
          // Its contact stays open all the same, and a coil draws too little to be seen elsewhere.
          part('coil-open', 'relay', 'open'),
          part('contact-resistive', 'relay', 'resistive', resistive),
        ]
      : []),
  ];
}

function wheelDrafts(hasRing: boolean): Draft[] {
  const make = (
    mode: 'damaged' | 'displaced' | 'gap-wide' | 'missing',
    mends: string,
    size: (random: Random) => number = () => 1,
    id: string = mode,
  ): Draft => ({
    id: `target.${id}`,
    trouble: (random) => ({ kind: 'wheel', mode, size: size(random) }),
    mends: [mends],
    like: id === 'missing' ? 'target.damaged' : '',
    share: 0.3,
  });
  return [
    make('damaged', 'target.replace'),
    make('displaced', 'target.align'),
    make('gap-wide', 'target.gap', (random) => random()),
    make('missing', 'target.replace'),
    ...(hasRing
      ? [
          make('missing', 'target.replace', undefined, 'reversed'),
          make('gap-wide', 'target.replace', (random) => random(), 'weak'),
          make('damaged', 'target.bearing', undefined, 'runout'),
        ]
      : []),
  ];
}
