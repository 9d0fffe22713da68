/**
 * What varies from car to car: for each value the range around the shipped file (as of 215ef3b, so that the bench does
 * not move with the files) and the range over all cars. Common practice, no source, unless said.
 */
import type { Drawing } from './drawing.ts';
import { between, logBetween, type Random } from './seeded.ts';

export interface Range {
  readonly low: number;
  readonly high: number;
  /** Evenly in the logarithm. */
  readonly log?: true;
}

export interface ValueRanges {
  readonly name: string;
  /** As the circuit file has it. */
  readonly shipped: Range;
  /** Over all cars. */
  readonly free: Range;
}

/** A value from a range. */
export function drawn(random: Random, { low, high, log }: Range): number {
  if (low === high) return low;
  return log ? logBetween(random, low, high) : between(random, low, high);
}

const even = (low: number, high: number): Range => ({ low, high });
const log = (low: number, high: number): Range => ({ low, high, log: true });
const about = (middle: number, share: number): Range =>
  even(middle * (1 - share), middle * (1 + share));
const value = (name: string, shipped: Range, free: Range): ValueRanges => ({ name, shipped, free });
const same = (name: string, range: Range): ValueRanges => value(name, range, range);

/** All values of a circuit. Wires and contacts have one each. */
export function rangesOf(drawing: Drawing): ValueRanges[] {
  return [
    value('battery.rest', even(12.3, 12.9), even(11.8, 12.9)),
    value('battery.cranking', even(9.8, 11.2), even(9, 11.3)),
    value('battery.running', even(13.9, 14.5), even(13.5, 14.8)),
    value('battery.ohms', about(0.02, 0), even(0.01, 0.03)),
    value('celsius', about(25, 0), even(-10, 40)),
    // Between engine block or module and battery negative, key on.
    value('mass.volts', even(0, 0), log(0.0002, 0.04)),
    value('mass.ohms', about(0.02, 0), log(0.002, 0.03)),
    ...wireRanges(drawing),
    ...drawing.module.flatMap((pin) => pinRanges(drawing, pin.pin, pin.does)),
    ...sensorRanges(drawing),
    ...neighbourRanges(drawing),
    // What the person brings: the LED light's current at 12 V.
    value('light.amps', about(0.032, 0), even(0.005, 0.04)),
  ];
}

function wireRanges({ wires, module, sensorPins }: Drawing): ValueRanges[] {
  return [
    ...wires.flatMap(({ name, squareMillimetres, metres }) => [
      // Trunks of a relay stay as thick as they are drawn.
      value(
        `wire.${name}.area`,
        about(squareMillimetres, 0),
        squareMillimetres > 0.75 ? about(squareMillimetres, 0.3) : even(0.35, 0.75),
      ),
      value(`wire.${name}.metres`, about(metres, 0.15), even(0.5, 5)),
      // Over 1 Mohm is sound.
      value(`wire.${name}.insulation`, about(1e10, 0), log(2e7, 1e9)),
    ]),
    ...[
      ...module.map(({ pin }) => `module.${pin}`),
      ...sensorPins.map((pin) => `sensor.${pin}`),
    ].map((terminal) => value(`contact.${terminal}`, even(0.005, 0.015), log(0.002, 0.02))),
  ];
}

function pinRanges(
  { sensor, circuit }: Drawing,
  pin: string,
  does: 'feed' | 'input' | 'ground' | 'bias' | 'joined' | 'driver',
): ValueRanges[] {
  switch (does) {
    case 'feed': {
      const limit = circuit === 'current-two-wire' || circuit === 'pedal-dual' ? 0.06 : 0.08;
      return [
        value(`${pin}.volts`, about(5, 0.02), about(5, 0.05)),
        sensor === 'current'
          ? value(`${pin}.series`, about(10, 0), even(2, 15))
          : value(`${pin}.series`, about(0.5, 0), log(0.1, 1)),
        value(`${pin}.limit`, about(limit, 0.2), log(0.02, 0.15)),
        same(`${pin}.bleed`, about(100e3, 0)),
      ];
    }
    case 'input': {
      if (sensor === 'hall')
        return [
          circuit === 'hall-relay-fed'
            ? value(`${pin}.pull`, about(3300, 0.05), log(1e3, 22e3))
            : value(`${pin}.pull`, about(2200, 0.05), log(1e3, 22e3)),
          value(`${pin}.own`, about(5, 0.02), about(5, 0.02)),
        ];
      if (sensor === 'current') return [value(`${pin}.pull`, about(115, 0.02), log(50, 300))];
      return [value(`${pin}.pull`, about(470e3, 0.1), log(10e3, 1e6))];
    }
    case 'driver':
      return [value(`${pin}.driver`, about(0.5, 0.2), log(0.2, 2))];
    case 'bias':
      return [
        value(`${pin}.pull`, about(10e3, 0.05), log(10e3, 100e3)),
        value(`${pin}.own`, about(2.5, 0.04), even(0.5, 2.5)),
      ];
    default:
      return [];
  }
}

function sensorRanges({ sensor, circuit, tracks }: Drawing): ValueRanges[] {
  switch (sensor) {
    case 'hall':
      return [
        value(
          'sensor.draws',
          about(circuit === 'hall-relay-fed' ? 0.01 : 0.008, 0.4),
          even(0.003, 0.02),
        ),
        circuit === 'hall-relay-fed'
          ? value('sensor.minimum', about(4.5, 0), even(4.5, 6))
          : value('sensor.minimum', about(3.8, 0), even(3, 4.5)),
        value('sensor.on', about(50, 0.5), about(50, 0.5)),
        // Low level in volts; over all cars it says how well the output pulls.
        value('sensor.low-level', even(0.05, 0.4), even(0.05, 0.4)),
        value('sensor.off', about(2e6, 0.5), log(3e5, 1e7)),
        value('sensor.limit', about(0.04, 0.25), even(0.02, 0.05)),
        same('sensor.substrate', even(0, 1)),
        value('wheel.duty', about(circuit === 'hall-relay-fed' ? 0.4 : 0.5, 0), even(0.2, 0.8)),
        same('wheel.still', even(0, 1)),
      ];
    case 'current':
      return [
        value('sensor.low', about(0.007, 0.15), about(0.007, 0.2)),
        value('sensor.high', about(0.014, 0.15), about(0.014, 0.2)),
        value('sensor.minimum', about(4.5, 0), even(4, 5)),
        same('wheel.duty', about(0.5, 0)),
        same('wheel.still', even(0, 1)),
      ];
    case 'coil':
      return [
        // At 20 degC; copper adds 0.39 % a kelvin.
        value('sensor.ohms', about(900, 0.15), log(200, 2500)),
        value('sensor.celsius', about(20, 0), even(-10, 110)),
        value('sensor.cranking', about(1, 0.4), about(1, 0.4)),
        value('sensor.running', about(4, 0.4), about(4, 0.4)),
        value('sensor.by-hand', about(0.25, 0.5), about(0.25, 0.5)),
        same('wheel.duty', about(0.5, 0)),
        same('wheel.still', even(0, 1)),
      ];
    case 'tracks':
      return tracks.flatMap(({ name }) => trackRanges(circuit, name));
  }
}

/** Ends of a track are in `draw-values.ts`, since the second track follows the first. */
function trackRanges(circuit: string, name: string): ValueRanges[] {
  const ohms = circuit === 'throttle-potentiometer' ? 4000 : name === 'track-1' ? 2000 : 3000;
  return [
    value(`${name}.ohms`, about(ohms, 0.2), log(1e3, 10e3)),
    value(`${name}.wiper`, about(300, 0.5), log(50, 1000)),
  ];
}

function neighbourRanges({ neighbour, isRelayFed, circuit }: Drawing): ValueRanges[] {
  if (neighbour === null) return [];
  const ohms = circuit === 'hall-module-fed' ? 4000 : 1000;
  return [
    value('neighbour.ohms', about(ohms, 0.2), log(250, 8e3)),
    ...['feed', 'ground'].map((pin) =>
      value(`contact.${neighbour}.${pin}`, even(0.005, 0.015), log(0.002, 0.02)),
    ),
    ...(isRelayFed
      ? [
          ...[
            'fuse.in',
            'fuse.out',
            'relay.30',
            'relay.87',
            'relay.85',
            'relay.86',
            'ground-point.eyelet',
          ].map((terminal) => value(`contact.${terminal}`, even(0.005, 0.015), log(0.002, 0.02))),
          value('fuse.ohms', about(0.015, 0), even(0.01, 0.02)),
          value('relay.ohms', about(0.02, 0.5), log(0.005, 0.05)),
          value('relay.coil', about(85, 0.1), even(60, 120)),
          value('relay.pulls-in', about(6.5, 0.05), even(5, 7.5)),
          value('ground-point.ohms', about(0.005, 0.5), log(0.001, 0.02)),
        ]
      : []),
  ];
}
