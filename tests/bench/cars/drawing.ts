/**
 * The six circuits as they are drawn: which wire runs where, which pins a part has, what the sensor is. Written down
 * again from the drawings, so that a mistake in how the program reads its circuit files shows as a difference.
 */

/** A wire from plug to plug. */
export interface DrawnWire {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly squareMillimetres: number;
  readonly metres: number;
}

/** What a module has behind a pin. */
export interface DrawnPin {
  readonly pin: string;
  readonly does: 'feed' | 'input' | 'ground' | 'bias' | 'joined' | 'driver';
  /** Of a joined pin: the pin whose copper it shares. */
  readonly with?: string;
}

export type SensorKind = 'hall' | 'current' | 'coil' | 'tracks';

export interface DrawnTrack {
  readonly name: string;
  readonly feed: string;
  readonly signal: string;
  readonly ground: string;
}

export interface Drawing {
  readonly circuit: string;
  readonly procedure: string;
  readonly wires: readonly DrawnWire[];
  readonly module: readonly DrawnPin[];
  readonly sensor: SensorKind;
  readonly sensorPins: readonly string[];
  readonly tracks: readonly DrawnTrack[];
  /** Another sensor on the same feed, with pins `feed` and `ground`. */
  readonly neighbour: string | null;
  /** Fuse, relay and ground point stand in the feed and the ground. */
  readonly isRelayFed: boolean;
}

const wire = (
  name: string,
  from: string,
  to: string,
  squareMillimetres: number,
  metres: number,
): DrawnWire => ({ name, from, to, squareMillimetres, metres });

const NO_EXTRAS = { tracks: [], neighbour: null, isRelayFed: false } as const;

export const DRAWINGS: readonly Drawing[] = [
  {
    ...NO_EXTRAS,
    circuit: 'hall-module-fed',
    procedure: 'hall-no-signal',
    wires: [
      wire('feed', 'module.reference', 'sensor.feed', 0.5, 3),
      wire('signal', 'module.signal', 'sensor.signal', 0.5, 3),
      wire('ground', 'module.ground', 'sensor.ground', 0.5, 3),
      wire('throttle-feed', 'module.throttle-reference', 'throttle-position.feed', 0.5, 2),
      wire('throttle-ground', 'module.throttle-ground', 'throttle-position.ground', 0.5, 2),
    ],
    module: [
      { pin: 'reference', does: 'feed' },
      { pin: 'signal', does: 'input' },
      { pin: 'ground', does: 'ground' },
      { pin: 'throttle-reference', does: 'joined', with: 'reference' },
      { pin: 'throttle-ground', does: 'joined', with: 'ground' },
    ],
    sensor: 'hall',
    sensorPins: ['feed', 'signal', 'ground'],
    neighbour: 'throttle-position',
  },
  {
    ...NO_EXTRAS,
    circuit: 'hall-relay-fed',
    procedure: 'hall-relay-no-signal',
    wires: [
      wire('relay-supply', 'battery.positive', 'relay.30', 2.5, 1),
      wire('relay-coil', 'battery.positive', 'relay.86', 0.75, 1),
      wire('relay-control', 'module.relay', 'relay.85', 0.5, 1),
      wire('fuse-supply', 'relay.87', 'fuse.in', 1.5, 0.5),
      wire('feed-trunk', 'fuse.out', 'splice.feed', 0.75, 2),
      wire('feed', 'splice.feed', 'sensor.feed', 0.5, 1),
      wire('signal', 'module.signal', 'sensor.signal', 0.5, 3),
      wire('ground', 'splice.ground', 'sensor.ground', 0.5, 1),
      wire('ground-trunk', 'splice.ground', 'ground-point.eyelet', 0.75, 1),
      wire('neighbour-feed', 'splice.feed', 'speed-sensor.feed', 0.5, 2),
      wire('neighbour-ground', 'splice.ground', 'speed-sensor.ground', 0.5, 2),
    ],
    module: [
      { pin: 'signal', does: 'input' },
      { pin: 'relay', does: 'driver' },
    ],
    sensor: 'hall',
    sensorPins: ['feed', 'signal', 'ground'],
    neighbour: 'speed-sensor',
    isRelayFed: true,
  },
  {
    ...NO_EXTRAS,
    circuit: 'reluctor-two-wire',
    procedure: 'reluctor-no-signal',
    wires: [
      wire('plus', 'module.signal-plus', 'sensor.plus', 0.5, 2.5),
      wire('minus', 'module.signal-minus', 'sensor.minus', 0.5, 2.5),
    ],
    module: [
      { pin: 'signal-plus', does: 'bias' },
      { pin: 'signal-minus', does: 'bias' },
    ],
    sensor: 'coil',
    sensorPins: ['plus', 'minus'],
  },
  {
    ...NO_EXTRAS,
    circuit: 'throttle-potentiometer',
    procedure: 'throttle-position',
    wires: [
      wire('feed', 'module.reference', 'sensor.feed', 0.5, 2.5),
      wire('signal', 'module.signal', 'sensor.signal', 0.5, 2.5),
      wire('ground', 'module.ground', 'sensor.ground', 0.5, 2.5),
      wire('pressure-feed', 'module.pressure-reference', 'pressure-sensor.feed', 0.5, 2),
      wire('pressure-ground', 'module.pressure-ground', 'pressure-sensor.ground', 0.5, 2),
    ],
    module: [
      { pin: 'reference', does: 'feed' },
      { pin: 'signal', does: 'input' },
      { pin: 'ground', does: 'ground' },
      { pin: 'pressure-reference', does: 'joined', with: 'reference' },
      { pin: 'pressure-ground', does: 'joined', with: 'ground' },
    ],
    sensor: 'tracks',
    sensorPins: ['feed', 'signal', 'ground'],
    tracks: [{ name: 'main', feed: 'feed', signal: 'signal', ground: 'ground' }],
    neighbour: 'pressure-sensor',
  },
  {
    ...NO_EXTRAS,
    circuit: 'pedal-dual',
    procedure: 'pedal-position',
    wires: ['1', '2'].flatMap((one) => [
      wire(`feed-${one}`, `module.reference-${one}`, `sensor.feed-${one}`, 0.5, 2),
      wire(`signal-${one}`, `module.signal-${one}`, `sensor.signal-${one}`, 0.5, 2),
      wire(`ground-${one}`, `module.ground-${one}`, `sensor.ground-${one}`, 0.5, 2),
    ]),
    module: ['1', '2'].flatMap((one): DrawnPin[] => [
      { pin: `reference-${one}`, does: 'feed' },
      { pin: `signal-${one}`, does: 'input' },
      { pin: `ground-${one}`, does: 'ground' },
    ]),
    sensor: 'tracks',
    sensorPins: ['feed-1', 'signal-1', 'ground-1', 'feed-2', 'signal-2', 'ground-2'],
    tracks: ['1', '2'].map((one) => ({
      name: `track-${one}`,
      feed: `feed-${one}`,
      signal: `signal-${one}`,
      ground: `ground-${one}`,
    })),
  },
  {
    ...NO_EXTRAS,
    circuit: 'current-two-wire',
    procedure: 'wheel-speed-current',
    wires: [
      wire('feed', 'module.feed', 'sensor.feed', 0.5, 2.5),
      wire('signal', 'module.signal', 'sensor.signal', 0.5, 2.5),
    ],
    module: [
      { pin: 'feed', does: 'feed' },
      { pin: 'signal', does: 'input' },
    ],
    sensor: 'current',
    sensorPins: ['feed', 'signal'],
  },
];

/** The drawing of a circuit. */
export function drawingOf(circuit: string): Drawing {
  const found = DRAWINGS.find((one) => one.circuit === circuit);
  if (!found)
    throw new Error(
      `cars: no circuit "${circuit}"; known: ${DRAWINGS.map((one) => one.circuit).join(', ')}`,
    );
  return found;
}

/** All parts with a plug, and its pins. */
export function plugsOf(
  drawing: Drawing,
): { readonly part: string; readonly pins: readonly string[] }[] {
  return [
    { part: 'module', pins: drawing.module.map(({ pin }) => pin) },
    { part: 'sensor', pins: drawing.sensorPins },
    ...(drawing.neighbour ? [{ part: drawing.neighbour, pins: ['feed', 'ground'] }] : []),
    ...(drawing.isRelayFed
      ? [
          { part: 'fuse', pins: ['in', 'out'] },
          { part: 'relay', pins: ['30', '87', '85', '86'] },
          { part: 'ground-point', pins: ['eyelet'] },
        ]
      : []),
  ];
}
