/** A switch of three wires: a load between feed and ground, and an output that pulls to ground. */
import type { HallPart } from '../circuit.ts';
import { SUBSTRATE, SUBSTRATE_DIODE } from '../open-values.ts';
import { partFault, RESISTIVE_OHMS, SENSOR_SHORT_OHMS, theWords } from '../part-faults.ts';
import { type Draw, faultResistor, type Plan, sizeOf } from '../plan.ts';
import type { Adding, SensorKind } from '../sensor-kind.ts';

export const hallSwitch: SensorKind<HallPart> = {
  pins: ['feed', 'signal', 'ground'],
  values: {
    draws: { said: 'supply current', unit: 'A', usual: '3 mA to 20 mA' },
    minimum: { said: 'minimum supply voltage', unit: 'V', usual: '3 V to 4.5 V' },
    on: { said: 'output resistance when on', unit: 'ohm', usual: '20 ohm to 200 ohm' },
    off: { said: 'output leakage when off', unit: 'ohm', usual: '1 Mohm to 20 Mohm' },
    limit: { said: 'current limit of the output', unit: 'A', usual: '25 mA to 60 mA' },
  },
  hasElectronics: true,
  isSwitched: true,
  faults: (part) => {
    const make = partFault(part);
    const the = theWords(part);
    return [
      make('dead', 'sensor', 1.5, `${the} is dead`, 'dead'),
      make('stuck-low', 'sensor', 0.7, `the output of ${the} stays on`, 'stuck-low'),
      make('stuck-high', 'sensor', 1, `the output of ${the} stays off`, 'stuck-high'),
      make(
        'weak-pull-down',
        'sensor',
        0.5,
        `the output of ${the} pulls down weakly`,
        'weak-pull-down',
        '',
        RESISTIVE_OHMS,
      ),
      make(
        'shorted',
        'sensor',
        0.3,
        `${the} is shorted inside from feed to ground`,
        'shorted',
        '',
        SENSOR_SHORT_OHMS,
      ),
    ];
  },
  add: addHall,
  tests: () => [],
  amps: ({ draws }) => draws.nominal,
};

/** A load between feed and ground, and an output that pulls to ground while the feed is high enough. */
function addHall({ sensor, plan, own, isLifted, pin, reader }: Adding<HallPart>): void {
  const feed = pin('feed');
  const out = pin('signal');
  const ground = pin('ground');
  if (isLifted) addSubstrate(plan, ground, out, reader(SUBSTRATE, SUBSTRATE_DIODE));
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

/** The junction between a chip and its output transistor, which some have: it conducts where the output lies below ground. */
function addSubstrate(plan: Plan, ground: number, out: number, has: (draw: Draw) => number): void {
  plan.makers.push((draw) => ({
    ...{ kind: 'diode', a: ground, b: out, emissionVolts: THERMAL_VOLTS, ohms: SUBSTRATE_OHMS },
    saturationAmps: has(draw) === 1 ? SUBSTRATE_SATURATION_AMPS : NO_DIODE_AMPS,
    leakOhms: Infinity,
  }));
}
/** kT/q at 300.15 K. */
const THERMAL_VOLTS = 0.0258649;
/** Silicon: 0.75 V at 10 mA. Common practice, no source. */
const SUBSTRATE_SATURATION_AMPS = 0.01 / Math.expm1(0.75 / THERMAL_VOLTS);
const SUBSTRATE_OHMS = 2;
/** So little that it takes more volts than any car has. */
const NO_DIODE_AMPS = 1e-300;
