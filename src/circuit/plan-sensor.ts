/** The sensor as elements: each kind, whole or with its own failure, fitted or a good spare. */
import type { Toleranced } from '../quantity/quantity.ts';
import type {
  CurrentSwitchPart,
  HallPart,
  PotentiometerPart,
  ReluctorPart,
  SensorPart,
} from './circuit.ts';
import type { Warmth } from './copper-warmth.ts';
import type { Draw, MakeElement, PartEffect, Plan } from './plan.ts';
import type { Setup } from './test.ts';
import { type SensorValue, trackEnds } from './track-ends.ts';

/** Where a track or a spot of it is broken, only leakage along the surface is left. Common practice, no source. */
const BROKEN_TRACK_OHMS = 1e9;
/** The wiper at the very end of its track still touches this much of it. Common practice, no source. */
const TRACK_END_OHMS = 1;

/** A sensor that is being added. */
interface Adding<T extends SensorPart> {
  readonly sensor: T;
  readonly plan: Plan;
  /** The sensor's failure, null for none. */
  readonly own: PartEffect | null;
  /** Node of one of the sensor's own pins. */
  readonly pin: (name: string) => number;
  /** How a value of the sensor is read from a draw, by the name it has in `car-quantities.ts`. */
  readonly reader: SensorValue;
  /** The same of how it is built and where its tracks end: a spare that fits is alike. */
  readonly built: SensorValue;
}

/** Adds the sensor at its own pins. `own` is its failure; a spare has average values and none. */
export function addSensor(
  { plan, setup, warmth }: { readonly plan: Plan; readonly setup: Setup; readonly warmth: Warmth },
  sensor: SensorPart,
  own: PartEffect | null,
  spare: boolean,
): void {
  const built = (name: string, of: Toleranced) => {
    const value = plan.value(`${sensor.name}.${name}`, of);
    return (draw: Pick<Draw, 'value'>): number => draw.value(value);
  };
  const rest = {
    plan,
    own,
    pin: (name: string): number => plan.node(`${sensor.name}.${name}.pin`),
    built,
    // A known-good spare is an average one.
    reader: (name: string, of: Toleranced) => (spare ? () => of.nominal : built(name, of)),
  };
  switch (sensor.kind) {
    case 'hall-switch':
      addHall({ sensor, ...rest });
      return;
    case 'current-switch':
      addCurrentSwitch({ sensor, ...rest });
      return;
    case 'reluctor':
      // A spare comes from the shelf and is as warm as its data say.
      addReluctor({ sensor, ...rest }, setup, spare ? () => 1 : warmth);
      return;
    case 'potentiometer':
      addTracks({ sensor, ...rest });
  }
}

/** A load between feed and ground, and an output that pulls to ground while the feed is high enough. */
function addHall({ sensor, plan, own, pin, reader }: Adding<HallPart>): void {
  const feed = pin('feed');
  const out = pin('signal');
  const ground = pin('ground');
  const mode = own?.mode;
  const offOhms = reader('off', sensor.off);
  if (own?.mode === 'shorted') plan.makers.push(faultResistor(feed, ground, own));
  if (mode === 'dead' || mode === 'shorted') {
    plan.makers.push((draw) => ({
      kind: 'resistor',
      a: out,
      b: ground,
      ohms: offOhms(draw),
    }));
    return;
  }
  const minimum = reader('minimum', sensor.minimum);
  const draws = reader('draws', sensor.draws);
  const onOhms = own?.mode === 'weak-pull-down' ? sizeOf(own) : reader('on', sensor.on);
  const limit = reader('limit', sensor.limit);
  plan.makers.push((draw) => {
    const minVolts = minimum(draw);
    const amps = draws(draw);
    return { kind: 'sink', a: feed, b: ground, amps, minVolts, reverseOhms: minVolts / amps };
  });
  plan.makers.push((draw) => {
    const off = 1 / offOhms(draw);
    const on = mode === 'stuck-low' || (draw.on && mode !== 'stuck-high');
    return {
      kind: 'gated-output',
      out,
      ground,
      feed,
      onSiemens: on ? 1 / onOhms(draw) : off,
      offSiemens: off,
      minVolts: minimum(draw),
      limitAmps: limit(draw),
    };
  });
}

/** A load that draws one of two currents. */
function addCurrentSwitch({ sensor, plan, own, pin, reader }: Adding<CurrentSwitchPart>): void {
  const mode = own?.mode;
  if (mode === 'dead') return;
  const a = pin('feed');
  const b = pin('signal');
  if (own?.mode === 'shorted') {
    plan.makers.push(faultResistor(a, b, own));
    return;
  }
  const lowAmps = reader('low', sensor.low);
  const highAmps = reader('high', sensor.high);
  const minimum = reader('minimum', sensor.minimum);
  const reverse = reader('reverse', sensor.reverse);
  plan.makers.push((draw) => {
    const high = mode === 'stuck-high' || (draw.on && mode !== 'stuck-low');
    return {
      kind: 'sink',
      a,
      b,
      amps: high ? highAmps(draw) : lowAmps(draw),
      minVolts: minimum(draw),
      reverseOhms: reverse(draw),
    };
  });
}

/** A coil: its voltage, by what moves the target, behind its resistance. */
function addReluctor(
  { sensor, plan, own, pin, reader }: Adding<ReluctorPart>,
  { state, target }: Setup,
  warmth: Warmth,
): void {
  if (own?.mode === 'coil-open') return;
  const swapped = own?.mode === 'leads-swapped';
  const plus = pin(swapped ? 'minus' : 'plus');
  const minus = pin(swapped ? 'plus' : 'minus');
  const speed = state === 'cranking' || state === 'running' ? state : 'byHand';
  const coil = reader('ohms', sensor.ohms);
  const volts = reader(speed, sensor[speed]);
  plan.makers.push((draw) => {
    const turns = own?.mode === 'shorted-turns' ? draw.size(own.size) : 1;
    const joint = own?.mode === 'coil-resistive' ? draw.size(own.size) : 0;
    const ohms = coil(draw) * warmth(draw) * turns + joint;
    const peak = target === 'still' ? 0 : volts(draw) * turns;
    return { kind: 'emf', plus, minus, volts: draw.swing * peak, ohms };
  });
}

/** Tracks between feed and ground, each parted by its wiper. */
function addTracks({ sensor, plan, own, pin, reader, built }: Adding<PotentiometerPart>): void {
  for (const track of sensor.tracks) {
    const hurt = own !== null && own.at === track.name ? own : null;
    const feed = pin(track.feed);
    const ground = pin(track.ground);
    const signal = pin(track.signal);
    const wiper = plan.node(`${sensor.name}.${track.name}.wiper`);
    const ends = trackEnds(sensor, track, built);
    const whole = reader(`${track.name}.ohms`, track.ohms);
    const touch = reader(`${track.name}.wiper`, track.wiper);
    const position = (draw: Draw): number => {
      const { closed, open } = ends(draw);
      return closed + draw.travel * (open - closed);
    };
    if (hurt?.mode === 'shorted') plan.makers.push(faultResistor(feed, ground, hurt));
    // A break in the track leaves the part of it that the wiper stands on.
    const broken = hurt?.mode === 'track-open' ? hurt.size : null;
    const part = (draw: Draw, share: number, cut: boolean): number =>
      cut ? BROKEN_TRACK_OHMS : Math.max(TRACK_END_OHMS, whole(draw) * share);
    plan.makers.push((draw) => {
      const at = position(draw);
      const cut = broken !== null && at < draw.size(broken);
      return { kind: 'resistor', a: feed, b: wiper, ohms: part(draw, 1 - at, cut) };
    });
    plan.makers.push((draw) => {
      const at = position(draw);
      const cut = broken !== null && at >= draw.size(broken);
      return { kind: 'resistor', a: wiper, b: ground, ohms: part(draw, at, cut) };
    });
    if (hurt?.mode === 'wiper-open') continue;
    const worn = hurt?.mode === 'worn-spot';
    plan.makers.push((draw) => ({
      kind: 'resistor',
      a: wiper,
      b: signal,
      ohms: worn && draw.onSpot ? BROKEN_TRACK_OHMS : touch(draw),
    }));
  }
}

function faultResistor(a: number, b: number, own: PartEffect): MakeElement {
  const ohms = sizeOf(own);
  return (draw) => ({ kind: 'resistor', a, b, ohms: ohms(draw) });
}

function sizeOf({ size }: PartEffect): (draw: Draw) => number {
  return (draw) => draw.size(size);
}
