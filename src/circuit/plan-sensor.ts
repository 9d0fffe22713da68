/** The sensor as elements: each kind, whole or with its own failure, fitted or a good spare. */
import type { Toleranced } from '../quantity/quantity.ts';
import type { SensorPart } from './circuit.ts';
import type { Draw, PartEffect, Plan } from './plan.ts';
import type { Setup } from './test.ts';

/** Adds the sensor at its own pins. `own` is its failure; a spare has average values and none. */
export function addSensor(
  plan: Plan,
  sensor: SensorPart,
  setup: Setup,
  own: PartEffect | null,
  spare: boolean,
): void {
  const pin = (name: string): number => plan.node(`${sensor.name}.${name}.pin`);
  // A known-good spare is an average one.
  const read = (draw: Draw, name: string, of: Toleranced) =>
    spare ? of.nominal : draw.value(`${sensor.name}.${name}`, of);
  const mode = own?.mode;
  if (sensor.kind === 'hall-switch') {
    const feed = pin('feed');
    const out = pin('signal');
    const ground = pin('ground');
    if (mode === 'shorted')
      plan.makers.push((draw) => ({
        kind: 'resistor',
        a: feed,
        b: ground,
        ohms: draw.size(own!.size),
      }));
    if (mode === 'dead' || mode === 'shorted') {
      plan.makers.push((draw) => ({
        kind: 'resistor',
        a: out,
        b: ground,
        ohms: read(draw, 'off', sensor.off),
      }));
      return;
    }
    plan.makers.push((draw) => {
      const minVolts = read(draw, 'minimum', sensor.minimum);
      const amps = read(draw, 'draws', sensor.draws);
      return { kind: 'sink', a: feed, b: ground, amps, minVolts, reverseOhms: minVolts / amps };
    });
    plan.makers.push((draw) => {
      const off = 1 / read(draw, 'off', sensor.off);
      const onOhms = mode === 'weak-pull-down' ? draw.size(own!.size) : read(draw, 'on', sensor.on);
      const on = mode === 'stuck-low' || (draw.on && mode !== 'stuck-high');
      return {
        kind: 'gated-output',
        out,
        ground,
        feed,
        onSiemens: on ? 1 / onOhms : off,
        offSiemens: off,
        minVolts: read(draw, 'minimum', sensor.minimum),
        limitAmps: read(draw, 'limit', sensor.limit),
      };
    });
    return;
  }
  if (sensor.kind === 'current-switch') {
    if (mode === 'dead') return;
    const a = pin('feed');
    const b = pin('signal');
    if (mode === 'shorted') {
      plan.makers.push((draw) => ({ kind: 'resistor', a, b, ohms: draw.size(own!.size) }));
      return;
    }
    plan.makers.push((draw) => {
      const high = mode === 'stuck-high' || (draw.on && mode !== 'stuck-low');
      return {
        kind: 'sink',
        a,
        b,
        amps: read(draw, high ? 'high' : 'low', high ? sensor.high : sensor.low),
        minVolts: read(draw, 'minimum', sensor.minimum),
        reverseOhms: read(draw, 'reverse', sensor.reverse),
      };
    });
    return;
  }
  if (sensor.kind === 'reluctor') {
    if (mode === 'coil-open') return;
    const swapped = mode === 'leads-swapped';
    const plus = pin(swapped ? 'minus' : 'plus');
    const minus = pin(swapped ? 'plus' : 'minus');
    const speed =
      setup.target === 'still'
        ? null
        : setup.state === 'cranking' || setup.state === 'running'
          ? setup.state
          : 'byHand';
    plan.makers.push((draw) => {
      const turns = mode === 'shorted-turns' ? draw.size(own!.size) : 1;
      const ohms =
        read(draw, 'ohms', sensor.ohms) * turns +
        (mode === 'coil-resistive' ? draw.size(own!.size) : 0);
      const peak = speed === null ? 0 : read(draw, speed, sensor[speed]) * turns;
      return { kind: 'emf', plus, minus, volts: draw.swing * peak, ohms };
    });
    return;
  }
  for (const track of sensor.tracks) {
    const hurt = own !== null && own.at === track.name ? own : null;
    const feed = pin(track.feed);
    const ground = pin(track.ground);
    const signal = pin(track.signal);
    const wiper = plan.node(`${sensor.name}.${track.name}.wiper`);
    const position = (draw: Draw) => {
      const closed = read(draw, `${track.name}.closed`, track.closed);
      return closed + draw.travel * (read(draw, `${track.name}.open`, track.open) - closed);
    };
    const ohms = (draw: Draw) => read(draw, `${track.name}.ohms`, track.ohms);
    // A break in the track leaves the part of it that the wiper stands on; the other end keeps only surface leakage.
    const broken = hurt?.mode === 'track-open' ? hurt.size : null;
    const leak = 1e9;
    plan.makers.push((draw) => {
      const cut = broken !== null && position(draw) < draw.size(broken);
      return {
        kind: 'resistor',
        a: feed,
        b: wiper,
        ohms: cut ? leak : Math.max(1, ohms(draw) * (1 - position(draw))),
      };
    });
    plan.makers.push((draw) => {
      const cut = broken !== null && position(draw) >= draw.size(broken);
      return {
        kind: 'resistor',
        a: wiper,
        b: ground,
        ohms: cut ? leak : Math.max(1, ohms(draw) * position(draw)),
      };
    });
    if (hurt?.mode === 'wiper-open') continue;
    const worn = hurt?.mode === 'worn-spot';
    plan.makers.push((draw) => ({
      kind: 'resistor',
      a: wiper,
      b: signal,
      ohms: worn && draw.onSpot ? leak : read(draw, `${track.name}.wiper`, track.wiper),
    }));
  }
}
