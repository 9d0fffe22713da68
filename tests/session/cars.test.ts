/** The bench on cars that the program does not know, in small: that its vehicle is sound, and that a session on it ends. */
import { describe, expect, it } from 'vitest';
import { compareWithProgram } from '../bench/cars/agreement.ts';
import { libraryCircuit } from '../bench/cars/client.ts';
import { DRAWINGS } from '../bench/cars/drawing.ts';
import { sharedEngine } from '../bench/cars/engine.ts';
import { faultsToDraw, unknownFaults } from '../bench/cars/faults-to-draw.ts';
import { middleCar } from '../bench/cars/middle-car.ts';
import { runCar } from '../bench/cars/run-car.ts';
import { STRATA } from '../bench/cars/strata.ts';
import { Vehicle } from '../bench/cars/vehicle.ts';
import { wilson } from '../bench/cars/wilson.ts';

/** The first session on a circuit makes its tables. */
const SESSION_MS = 300_000;

const stratum = (name: string) => STRATA.find((one) => one.name === name)!;

describe.each(DRAWINGS)('$circuit', (drawing) => {
  it('has only faults that the bench can make', async () => {
    expect(unknownFaults(drawing, await libraryCircuit(drawing.circuit))).toEqual([]);
  });

  it('reads at the bench as in the program, healthy and with a wire open', async () => {
    const circuit = await libraryCircuit(drawing.circuit);
    const open = circuit.faults.find(({ id }) => /^wire\.(signal|plus).*open$/.test(id))!;
    const engine = await sharedEngine();
    const { compared, differences } = await compareWithProgram(circuit, engine, [open.id], 7);
    expect(differences).toEqual([]);
    expect(compared).toBeGreaterThan(5);
  });

  it.each(['nothing-off', 'all-free'])(
    'a session on a car of the stratum %s ends',
    async (name) => {
      const circuit = await libraryCircuit(drawing.circuit);
      const line = await runCar({
        circuit,
        stratum: stratum(name),
        mode: 'tree',
        person: 'exact',
        means: 'all',
        number: 0,
        weights: 'file',
      });
      expect(line.unended, line.why).toBe(false);
      expect(line.unknown).toEqual([]);
      expect(line.tests).toBeGreaterThan(1);
    },
    SESSION_MS,
  );
});

it('a pull-up of twice the ohms reads as a divider says', async () => {
  const circuit = await libraryCircuit('hall-module-fed');
  const car = middleCar(circuit);
  const twice = { ...car, values: { ...car.values, 'signal.pull': 4400 } };
  const shows = await new Vehicle(twice, await sharedEngine()).shows({
    setup: {
      state: 'key-on',
      unplugged: ['sensor'],
      bridges: [{ from: 'sensor.signal', to: 'battery.negative', through: { ohms: 470 } }],
      sensor: 'fitted',
      target: 'still',
    },
    probe: { kind: 'volts', plus: 'sensor.signal', minus: 'battery.negative' },
  });
  // By hand: 5 V times 470 / (4400 + 470), less half a millivolt for the neighbour's load.
  expect(shows.kind === 'number' && shows.value).toBeCloseTo(0.4825, 3);
});

it('a fuse is blown by a short of its feed to ground and not by one of the signal', async () => {
  const circuit = await libraryCircuit('hall-relay-fed');
  const drawing = DRAWINGS.find((one) => one.circuit === circuit.name)!;
  const engine = await sharedEngine();
  const blown = async (id: string) => {
    const fault = faultsToDraw(drawing, circuit).find((one) => one.id === id)!;
    const car = middleCar(circuit, [{ ...fault, trouble: fault.trouble(() => 0.5) }]);
    return (await new Vehicle(car, engine).afterKeyOn()).isFuseBlown;
  };
  expect(await blown('wire.feed.short-to-ground')).toBe(true);
  expect(await blown('wire.signal.short-to-ground')).toBe(false);
});

it('the interval of 8 in 10 is 49.0 to 94.3 %', () => {
  // By hand from Wilson's formula: (0.8 + 0.19207 -+ 0.31258) / 1.38415.
  const { low, high } = wilson(8, 10);
  expect(low).toBeCloseTo(0.4902, 3);
  expect(high).toBeCloseTo(0.9433, 3);
});
