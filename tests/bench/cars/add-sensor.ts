/** The sensor behind its plug, at one instant: switched output, two currents, coil, tracks. */
import { type Car, type Trouble, valueIn } from './car.ts';
import { type Deck, saturationAmps } from './deck.ts';
import type { DrawnTrack } from './drawing.ts';

/** The sensor at one instant. */
export interface Instant {
  /** A tooth stands before a switch. */
  readonly on: boolean;
  /** Of a coil, as a share of its peak, -1 to 1. */
  readonly swing: number;
  /** Of a wiper, 0 at rest and 1 at the end. */
  readonly travel: number;
  /** The wiper stands on the worn spot. */
  readonly onSpot: boolean;
}

type SensorTrouble = Extract<Trouble, { kind: 'sensor' }>;

/** Where a track is broken only leakage along the surface is left. */
const BROKEN_OHMS = 1e9;
/** A wiper at the very end still touches so much. */
const END_OHMS = 1;
const COPPER_RISE = 0.0039;
/** A current sensor the wrong way round: next to nothing flows. */
const BACKWARDS_SIEMENS = 1e-6;

/** `peak` is the coil's unloaded peak in volts just now. */
export function addSensor(
  deck: Deck,
  car: Car,
  instant: Instant,
  own: SensorTrouble | null,
  peak: number,
): void {
  switch (car.drawing.sensor) {
    case 'hall':
      addHall(deck, car, instant, own);
      return;
    case 'current':
      addCurrent(deck, car, instant, own);
      return;
    case 'coil':
      addCoil(deck, car, instant, own, peak);
      return;
    case 'tracks':
      for (const track of car.drawing.tracks)
        addTrack(deck, car, track, instant, own?.track === track.name ? own : null);
  }
}

function addHall(deck: Deck, car: Car, { on }: Instant, own: SensorTrouble | null): void {
  const [feed, out, ground] = [
    'sensor.feed.pin',
    'sensor.signal.pin',
    'sensor.ground.pin',
  ] as const;
  const off = 1 / valueIn(car, 'sensor.off');
  if (valueIn(car, 'sensor.substrate') < 0.5)
    deck.diode(ground, out, saturationAmps(0.01, 0.75, 1), 1, 2);
  if (own?.mode === 'shorted') deck.resistor(feed, ground, own.size);
  if (own?.mode === 'dead' || own?.mode === 'shorted') {
    deck.resistor(out, ground, 1 / off);
    return;
  }
  const minimum = valueIn(car, 'sensor.minimum');
  const supply = deck.across(feed, ground);
  const draws = valueIn(car, 'sensor.draws');
  deck.bent({
    a: feed,
    b: ground,
    watches: [feed, ground],
    first: { siemens: 0, amps: draws },
    lineAt: (volts) =>
      volts(feed) - volts(ground) > minimum
        ? { siemens: 0, amps: draws }
        : { siemens: draws / minimum, amps: 0 },
    formula: `${draws}*min(1,${supply}/${minimum})`,
  });
  const isOn = own?.mode === 'stuck-low' || (on && own?.mode !== 'stuck-high');
  if (!isOn) {
    deck.resistor(out, ground, 1 / off);
    return;
  }
  const onSiemens = 1 / (own?.mode === 'weak-pull-down' ? own.size : valueIn(car, 'sensor.on'));
  // The output lets go between 0.9 and 1 of the least feed.
  const ramp = `max(0,min(1,(${supply}-${0.9 * minimum})/${0.1 * minimum}))`;
  const siemens = `(${off}+${onSiemens - off}*${ramp})`;
  const limit = valueIn(car, 'sensor.limit');
  deck.bent({
    a: out,
    b: ground,
    watches: [feed, out, ground],
    first: { siemens: onSiemens, amps: 0 },
    lineAt: (volts) => {
      const fed = (volts(feed) - volts(ground) - 0.9 * minimum) / (0.1 * minimum);
      const now = off + (onSiemens - off) * Math.max(0, Math.min(1, fed));
      const amps = (volts(out) - volts(ground)) * now;
      return amps > limit ? { siemens: 0, amps: limit } : { siemens: now, amps: 0 };
    },
    formula: `min(${limit},${deck.across(out, ground)}*${siemens})`,
  });
}

function addCurrent(deck: Deck, car: Car, { on }: Instant, own: SensorTrouble | null): void {
  const [feed, signal] = ['sensor.feed.pin', 'sensor.signal.pin'] as const;
  if (own?.mode === 'dead') return;
  if (own?.mode === 'shorted') {
    deck.resistor(feed, signal, own.size);
    return;
  }
  const high = own?.mode === 'stuck-high' || (on && own?.mode !== 'stuck-low');
  const amps = valueIn(car, high ? 'sensor.high' : 'sensor.low');
  const across = deck.across(feed, signal);
  const minimum = valueIn(car, 'sensor.minimum');
  deck.bent({
    a: feed,
    b: signal,
    watches: [feed, signal],
    first: { siemens: 0, amps },
    lineAt: (volts) => {
      const here = volts(feed) - volts(signal);
      if (here >= minimum) return { siemens: 0, amps };
      return { siemens: here < 0 ? BACKWARDS_SIEMENS : amps / minimum, amps: 0 };
    },
    formula: `${amps}*max(0,min(1,${across}/${minimum}))+min(0,${across})*${BACKWARDS_SIEMENS}`,
  });
}

function addCoil(
  deck: Deck,
  car: Car,
  { swing }: Instant,
  own: SensorTrouble | null,
  peak: number,
): void {
  if (own?.mode === 'coil-open') return;
  const [plus, minus] =
    own?.mode === 'leads-swapped'
      ? (['sensor.minus.pin', 'sensor.plus.pin'] as const)
      : (['sensor.plus.pin', 'sensor.minus.pin'] as const);
  const left = own?.mode === 'shorted-turns' ? own.size : 1;
  const joint = own?.mode === 'coil-resistive' ? own.size : 0;
  const copper =
    valueIn(car, 'sensor.ohms') * (1 + COPPER_RISE * (valueIn(car, 'sensor.celsius') - 20));
  deck.source(plus, minus, swing * peak * left, copper * left + joint);
}

function addTrack(
  deck: Deck,
  car: Car,
  { name, feed, signal, ground }: DrawnTrack,
  { travel, onSpot }: Instant,
  own: SensorTrouble | null,
): void {
  const at =
    valueIn(car, `${name}.closed`) +
    travel * (valueIn(car, `${name}.open`) - valueIn(car, `${name}.closed`));
  const ohms = valueIn(car, `${name}.ohms`);
  const brokenAt = own?.mode === 'track-open' ? own.size : null;
  const upper = brokenAt !== null && at < brokenAt;
  const lower = brokenAt !== null && at >= brokenAt;
  const wiper = `wiper.${name}`;
  const [feedPin, groundPin] = [`sensor.${feed}.pin`, `sensor.${ground}.pin`];
  deck.resistor(feedPin, wiper, upper ? BROKEN_OHMS : Math.max(END_OHMS, ohms * (1 - at)));
  deck.resistor(wiper, groundPin, lower ? BROKEN_OHMS : Math.max(END_OHMS, ohms * at));
  if (own?.mode === 'shorted') deck.resistor(feedPin, groundPin, own.size);
  if (own?.mode === 'wiper-open') return;
  const lifted = own?.mode === 'worn-spot' && onSpot;
  deck.resistor(
    wiper,
    `sensor.${signal}.pin`,
    lifted ? BROKEN_OHMS : valueIn(car, `${name}.wiper`),
  );
}
