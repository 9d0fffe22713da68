/** A switch of two wires: a load that draws one of two currents. */
import type { CurrentSwitchPart } from '../circuit.ts';
import { partFault, SENSOR_SHORT_OHMS, theWords } from '../part-faults.ts';
import { faultResistor } from '../plan.ts';
import type { Adding, OwnTest, SensorKind } from '../sensor-kind.ts';
import { type Lead, pin as pinWords } from '../test-list.ts';

export const currentSwitch: SensorKind<CurrentSwitchPart> = {
  pins: ['feed', 'signal'],
  values: {
    low: { said: 'low current', unit: 'A', usual: '7 mA +/- 20 %' },
    high: { said: 'high current', unit: 'A', usual: '14 mA +/- 20 %' },
    minimum: { said: 'minimum voltage', unit: 'V', usual: '3 V to 4.5 V' },
    reverse: { said: 'reverse resistance', unit: 'ohm', usual: '1 Mohm' },
  },
  hasElectronics: true,
  isSwitched: true,
  faults: (part) => {
    const make = partFault(part);
    const the = theWords(part);
    return [
      make('dead', 'sensor', 1.5, `${the} is dead`, 'dead'),
      make('stuck-low', 'sensor', 0.8, `${the} stays at its low current`, 'stuck-low'),
      make('stuck-high', 'sensor', 0.8, `${the} stays at its high current`, 'stuck-high'),
      make('shorted', 'sensor', 0.3, `${the} is shorted inside`, 'shorted', '', SENSOR_SHORT_OHMS),
    ];
  },
  add: addCurrentSwitch,
  tests: ({ name }, { leads }) => inSeries(name, leads),
  amps: ({ high }) => high.nominal,
};

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

/** It speaks by its current: the meter in its feed wire, the plug open, its other pin on a short lead. */
function inSeries(sensor: string, leads: readonly Lead[]): OwnTest[] {
  const feeds = leads.filter(({ wire }) => wire.role === 'reference' || wire.role === 'supply');
  return feeds.map(({ here }) => ({
    id: `${here}.amps`,
    words: `Milliamperes through ${pinWords(here)} in the sensor's open connector, other pin on a lead`,
    minutes: 4,
    probe: { kind: 'amps', plus: here, minus: `${here}.pin` },
    needs: ['milliammeter', 'lead'],
    setup: {
      unplugged: [sensor],
      bridges: leads
        .filter((lead) => lead.here !== here)
        .map((other) => ({ from: other.here, to: `${other.here}.pin`, through: 'lead' })),
    },
  }));
}
