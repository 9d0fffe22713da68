/** The bench on cars that the program does not know, in small: that its vehicle is sound, and that a session on it ends. */
import { describe, expect, it } from 'vitest';
import { compareWithProgram } from '../bench/cars/agreement.ts';
import { type Car, healthyTwin } from '../bench/cars/car.ts';
import { beginClient, libraryCircuit, testsOn } from '../bench/cars/client.ts';
import { drawCar } from '../bench/cars/draw-car.ts';
import { DRAWINGS } from '../bench/cars/drawing.ts';
import { sharedEngine } from '../bench/cars/engine.ts';
import { faultsToDraw, unknownFaults } from '../bench/cars/faults-to-draw.ts';
import { type Means, meansOf } from '../bench/cars/means.ts';
import { middleCar, middleFault } from '../bench/cars/middle-car.ts';
import { moduleSees } from '../bench/cars/module-sees.ts';
import { APART, isNear } from '../bench/cars/near.ts';
import { takenFor } from '../bench/cars/one-told.ts';
import { fullVoltsIn } from '../bench/cars/replies.ts';
import { runCar } from '../bench/cars/run-car.ts';
import { scoreOf } from '../bench/cars/score.ts';
import type { SessionEnd } from '../bench/cars/session-run.ts';
import { STRATA } from '../bench/cars/strata.ts';
import { Vehicle } from '../bench/cars/vehicle.ts';
import { wilson } from '../bench/cars/wilson.ts';
import { LONG } from '../campaign.ts';
import { setupOf } from '../circuit/setup.ts';

/** The first session on a circuit makes its tables. */
const SESSION_MS = 300_000;

/** The circuit on which the ordinary run holds a session. */
const IN_SHORT = 'reluctor-two-wire';

/** A fault of each of these kinds is compared, where the circuit has one. */
const ONE_EACH = [
  /^wire\.(signal|plus).*open$/,
  /^wire\.(signal|plus).*short-to-(ground-|minus)/,
  /-feed\.short-to-/,
  /swapped/,
  /^sensor\.(.*\.)?shorted$/,
];

const stratum = (name: string) => STRATA.find((one) => one.name === name)!;

describe.each(DRAWINGS)('$circuit', (drawing) => {
  it('has only faults that the bench can make', async () => {
    expect(unknownFaults(drawing, await libraryCircuit(drawing.circuit))).toEqual([]);
  });

  it('mends each fault by the repair that the program names', async () => {
    const circuit = await libraryCircuit(drawing.circuit);
    const drawn = faultsToDraw(drawing, circuit);
    const repairs = circuit.faults.map(({ id, repair }) => ({ id, repair }));
    expect(repairs.length).toBeGreaterThan(20);
    expect(
      repairs.filter(
        ({ id, repair }) => !drawn.find((one) => one.id === id)?.mends.includes(repair),
      ),
    ).toEqual([]);
  });

  it('reads at the bench as in the program, healthy and with a fault of each kind', async () => {
    const circuit = await libraryCircuit(drawing.circuit);
    const faults = ONE_EACH.flatMap(
      (kind) => circuit.faults.find(({ id }) => kind.test(id))?.id ?? [],
    );
    const engine = await sharedEngine();
    const { compared, differences } = await compareWithProgram(circuit, engine, faults, 7);
    expect(differences).toEqual([]);
    expect(compared).toBeGreaterThan(5);
  });

  // In the ordinary run on the circuit of which a session takes least.
  it.runIf(LONG || drawing.circuit === IN_SHORT)(
    'a session on a car of which all is free ends',
    async () => {
      const circuit = await libraryCircuit(drawing.circuit);
      const line = await runCar({
        circuit,
        stratum: stratum('all-free'),
        mode: 'tree',
        person: 'exact',
        means: 'all',
        number: 0,
        weights: 'file',
        toldEvery: 1,
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

it('the reference of a whole car carries the sensor and what else hangs at it', async () => {
  // Drawn at first with a limit of 24 mA, a sensor of 18 mA and a neighbour of 421 ohm: 2.9 V.
  const circuit = await libraryCircuit('hall-module-fed');
  const engine = await sharedEngine();
  const asked = { circuit, engine, stratum: stratum('all-free'), weights: 'file' } as const;
  const { car } = await drawCar({ ...asked, number: 23 });
  const whole = new Vehicle(healthyTwin(car), engine);
  const [volts] = await whole.restVolts(['module.reference.pin']);
  expect(volts).toBeGreaterThan(0.9 * car.values['reference.volts']!);
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

describe('the module of the bench', () => {
  const seen = async (name: string, id: string, change: Partial<Car> = {}) => {
    const circuit = await libraryCircuit(name);
    const drawing = DRAWINGS.find((one) => one.circuit === name)!;
    const drawn = faultsToDraw(drawing, circuit).find((one) => one.id === id)!;
    const car = { ...middleCar(circuit, [middleFault(drawn, circuit)]), ...change };
    return moduleSees(new Vehicle(car, await sharedEngine()));
  };

  it.each([
    ['reluctor-two-wire', 'wire.minus.short-to-ground', 'low'],
    ['reluctor-two-wire', 'wire.plus.short-to-battery', 'high'],
    ['hall-module-fed', 'wire.throttle-feed.short-to-battery', 'high'],
    // by hand: 4.5 V at rest and 0.5 V fully open
    ['throttle-potentiometer', 'sensor.feed.swapped-with-ground', 'shifted'],
  ])('of the %s notices %s: %s', async (name, id, sees) => {
    expect(await seen(name, id)).toBe(sees);
  });

  it('has no bias to lose where the coil has none', async () => {
    const pulls = { 'signal-plus': 'ground', 'signal-minus': 'ground' } as const;
    expect(await seen('reluctor-two-wire', 'wire.minus.short-to-ground', { pulls })).toBe('good');
  });
});

describe('whether one repair can be told', () => {
  const takenAt = async (id: string, means: Means, name = 'hall-module-fed') => {
    const circuit = await libraryCircuit(name);
    const drawing = DRAWINGS.find((one) => one.circuit === circuit.name)!;
    const fault = faultsToDraw(drawing, circuit).find((one) => one.id === id)!;
    const car = middleCar(circuit, [middleFault(fault, circuit)]);
    const tests = await testsOn(drawing.procedure);
    return takenFor({
      drawn: { car, sees: 'no-signal', tries: { values: 1, faults: 1, unsolved: 0 } },
      ...{ circuit, engine: await sharedEngine() },
      tests: tests.filter((test) => means.cannot(test) === null),
    });
  };
  const from = (part: number) => meansOf('plug-out-of-reach', () => part);

  it(
    'of a broken feed wire: at the plug, and not from the module, where nothing comes back from any of the three',
    async () => {
      expect(
        await takenAt(
          'wire.feed.open',
          meansOf('all', () => 0),
        ),
      ).toBe('none');
      expect(from(0.9).outOfReach).toBe('sensor');
      expect(await takenAt('wire.feed.open', from(0.9))).toMatch(
        /^(wire|contact\.sensor|sensor)\./,
      );
    },
    SESSION_MS,
  );

  it('of an input that is dead: by what the module counts alone', async () => {
    expect(
      await takenAt(
        'module.signal-plus.input-dead',
        meansOf('all', () => 0),
        IN_SHORT,
      ),
    ).toBe('none');
    expect(
      await takenAt(
        'module.signal-plus.input-dead',
        meansOf('no-live-data', () => 0),
        IN_SHORT,
      ),
    ).toBe('nothing wrong');
  });
});

it('7 mA and 14 mA are two readings', () => {
  const amps = (value: number) => ({ kind: 'number', value, unit: 'A' }) as const;
  expect(isNear(amps(0.007), amps(0.014), APART)).toBe(false);
  expect(isNear(amps(0.007), amps(0.0074), APART)).toBe(true);
});

it('over-limit is another reading than 900 ohm, and the same as 20 Mohm of damp insulation', () => {
  const ohms = (value: number) => ({ kind: 'number', value, unit: 'ohm' }) as const;
  expect(isNear(ohms(Infinity), ohms(900), APART)).toBe(false);
  expect(isNear(ohms(2e7), ohms(Infinity), APART)).toBe(true);
});

it.runIf(LONG).each([
  // a fault in the sensor, told from one of its plug by a spare and a scope
  ['no-live-data', 1],
  // the module's own ground, at its pin
  ['plug-out-of-reach', 7],
  // a contact of the module's plug, by a pull-up that is lent there
  ['plug-out-of-reach', 5],
] as const)(
  'a Hall sensor with %s, car %i, is told',
  async (means, number) => {
    const circuit = await libraryCircuit('hall-module-fed');
    const line = await runCar({
      ...{ circuit, stratum: stratum('all-free'), mode: 'tree', person: 'exact', weights: 'file' },
      ...{ means, number, toldEvery: 1 },
    });
    expect(line.takenFor).toBe('none');
    expect(line.rightAlone).toBe(true);
  },
  SESSION_MS,
);

it('the interval of 8 in 10 is 49.0 to 94.3 %', () => {
  // By hand from Wilson's formula: (0.8 + 0.19207 -+ 0.31258) / 1.38415.
  const { low, high } = wilson(8, 10);
  expect(low).toBeCloseTo(0.4902, 3);
  expect(high).toBeCloseTo(0.9433, 3);
});

it('reads off the line that sets the scope from where on the waves of a coil are full', async () => {
  const { call } = await beginClient('reluctor-no-signal');
  const shown = async (kind: 'pattern' | 'timing') =>
    fullVoltsIn(
      (
        await call('prepare', {
          test: {
            setup: setupOf({ state: 'cranking', target: 'moving' }),
            probe: { kind, plus: 'module.signal-plus', minus: 'module.signal-minus' },
          },
        })
      )['scope'],
    );
  // 0.55 of twice the 1 V that the circuit file says of a coil while cranking.
  expect(await shown('pattern')).toBeCloseTo(1.1, 1);
  expect(await shown('timing')).toBeNull();
});

it('leaves a whole car alone where "nothing wrong" leads what is named, and not where a repair does', async () => {
  const circuit = await libraryCircuit(IN_SHORT);
  const engine = await sharedEngine();
  const ask = {
    circuit,
    stratum: stratum('nothing-off'),
    number: 0,
    engine,
    weights: 'file',
  } as const;
  const drawn = await drawCar(ask);
  const whole = { ...drawn, car: healthyTwin(drawn.car) };
  const ended = (group: readonly string[] | null) => {
    const end = { faults: [], group, proven: false, chances: {}, stated: [] };
    return scoreOf(whole, end as unknown as SessionEnd, circuit);
  };
  expect(ended(['healthy', 'connector.module'])).toMatchObject({
    right: true,
    healthyRepaired: false,
  });
  expect(ended(null)).toMatchObject({ right: true, healthyRepaired: false });
  expect(ended(['connector.module', 'healthy'])).toMatchObject({
    right: false,
    healthyRepaired: true,
  });
});
