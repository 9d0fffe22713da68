/** A car that answers tests: each reading is one ngspice run over a deck with a copy of the circuit for each instant. */
import type { Look, MeterUnit, Setup, Test } from '../../../src/circuit/test.ts';
import { addBattery, addContacts, addParts, addWires, MASS } from './add-harness.ts';
import { addModule } from './add-module.ts';
import { addSensor, type Instant } from './add-sensor.ts';
import { type Car, healthyTwin, type Trouble, valueIn } from './car.ts';
import { Deck } from './deck.ts';
import type { Engine } from './engine.ts';
import {
  addClips,
  addInstrument,
  ampsOf,
  type Instrument,
  looksOfLight,
  ohmsOf,
} from './instrument.ts';
import { operatingPoint } from './operating-point.ts';
import { type Ends, inputsOf, lookOfPattern } from './signal-look.ts';

/** What an instrument shows before a person reads it; `Infinity` is OL. */
export type Shows =
  | { readonly kind: 'number'; readonly value: number; readonly unit: MeterUnit }
  | { readonly kind: 'look'; readonly look: Look };

/** ngspice found no operating point. */
export class Unsolved extends Error {}

/** A part of the travel in even steps. */
const TRAVELS = [0, 0.25, 0.5, 0.75, 1];
/** A fuse is blown by so many times its rating. */
const FUSE_AMPS = 1.35 * 5;
const STOPS_UNDER = 0.6;
const PLAIN: Setup = {
  state: 'key-on',
  unplugged: [],
  bridges: [],
  sensor: 'fitted',
  target: 'still',
};

export class Vehicle {
  readonly car: Car;
  private readonly engine: Engine;
  private readonly resistorShare: number;
  private readonly good = new Map<string, Ends>();

  /** `resistorShare` is what the person's test resistors are, as a share of what is printed on them. */
  constructor(car: Car, engine: Engine, resistorShare = 1) {
    this.car = car;
    this.engine = engine;
    this.resistorShare = resistorShare;
  }

  /**
   * What a test shows; `present` false leaves the fault away, for one that comes and goes. A coil's waves are full from
   * `fullVolts` peak to peak on, where the program said so much.
   */
  async shows(test: Test, present = true, fullVolts: number | null = null): Promise<Shows> {
    const car = present ? this.car : healthyTwin(this.car);
    const { setup, probe } = test;
    switch (probe.kind) {
      case 'volts': {
        const value = await this.mean(car, setup, probe.plus, probe.minus, 'meter');
        return { kind: 'number', value, unit: 'V' };
      }
      case 'ohms': {
        const volts = await this.mean(car, setup, probe.plus, probe.minus, 'ohmmeter');
        return { kind: 'number', value: ohmsOf(volts), unit: 'ohm' };
      }
      case 'amps': {
        const volts = await this.mean(car, setup, probe.plus, probe.minus, 'milliammeter');
        return { kind: 'number', value: ampsOf(volts), unit: 'A' };
      }
      case 'light':
      case 'lamp': {
        const volts = await this.mean(car, setup, probe.plus, probe.minus, probe.kind);
        return { kind: 'look', look: looksOfLight(probe.kind, volts, valueIn(car, 'light.amps')) };
      }
      case 'pattern':
        return {
          kind: 'look',
          look: await this.pattern(car, setup, probe.plus, probe.minus, fullVolts),
        };
      case 'timing': {
        const look = await this.pattern(car, setup, probe.plus, probe.minus);
        if (look.startsWith('flat')) return { kind: 'look', look: 'no-signal' };
        return { kind: 'look', look: isShifted(car) ? 'shifted' : 'in-step' };
      }
      case 'counts': {
        const follows = await this.follows(car, setup, probe.input);
        return { kind: 'look', look: follows ? 'follows' : 'still' };
      }
      case 'inspect':
        throw new Error('vehicle: what eyes see is asked of the person');
    }
  }

  /** AC volts, the mean taken out: of a coil's waves. */
  async acVolts(setup: Setup, plus: string, minus: string, present = true): Promise<number> {
    const car = present ? this.car : healthyTwin(this.car);
    const ends = await this.ends(car, setup, plus, minus, 'meter');
    return (Math.max(...ends.volts) - Math.min(...ends.volts)) / 2 / Math.SQRT2;
  }

  /** Volts of places against the module's mass, key on and everything at rest. */
  async restVolts(places: readonly string[], car = this.car): Promise<readonly number[]> {
    const found: number[] = [];
    for (const place of places) found.push(await this.mean(car, PLAIN, place, MASS, 'none'));
    return found;
  }

  /** Both ends of the signal inside the module, at each of its inputs, while the target moves. */
  async inputEnds(state: Setup['state'], car = this.car): Promise<readonly Ends[]> {
    const setup: Setup = { ...PLAIN, state, target: 'moving' };
    const found: Ends[] = [];
    for (const { plus, minus } of inputsOf(car.drawing))
      found.push(
        await this.ends(car, setup, `${plus}.pin`, minus === MASS ? MASS : `${minus}.pin`, 'none'),
      );
    return found;
  }

  /** The look of the signal at an input, as a scope there would show it. */
  async inputLook(state: Setup['state'], input: number, car = this.car): Promise<Look> {
    const at = inputsOf(car.drawing)[input];
    if (!at) throw new Error(`vehicle: no input ${input}`);
    const setup: Setup = { ...PLAIN, state, target: 'moving' };
    return this.pattern(car, setup, `${at.plus}.pin`, at.minus === MASS ? MASS : `${at.minus}.pin`);
  }

  /** The same car, its fuse blown where the fault blows it. */
  async afterKeyOn(): Promise<Car> {
    if (!this.car.drawing.isRelayFed) return this.car;
    const volts = await this.mean(this.car, PLAIN, 'fuse.in.pin', 'fuse.out.pin', 'none');
    const isWhole = !this.car.faults.some(
      ({ trouble }) => trouble.kind === 'part' && trouble.part === 'fuse',
    );
    const blows = isWhole && Math.abs(volts) / valueIn(this.car, 'fuse.ohms') > FUSE_AMPS;
    const coil = await this.mean(this.car, PLAIN, 'relay.86.pin', 'relay.85.pin', 'none');
    return {
      ...this.car,
      isFuseBlown: blows,
      isRelayReleased: coil < valueIn(this.car, 'relay.pulls-in'),
    };
  }

  private async pattern(
    car: Car,
    setup: Setup,
    plus: string,
    minus: string,
    fullVolts: number | null = null,
  ): Promise<Look> {
    const ends = await this.ends(car, setup, plus, minus, 'meter');
    const plain: Setup = { ...PLAIN, state: setup.state, target: 'moving' };
    const key = `${setup.state} ${plus} ${minus}`;
    const good =
      this.good.get(key) ?? (await this.ends(healthyTwin(car), plain, plus, minus, 'meter'));
    this.good.set(key, good);
    return lookOfPattern(car, plus, ends, good, fullVolts);
  }

  private async follows(car: Car, setup: Setup, input: string): Promise<boolean> {
    if (setup.unplugged.includes('module') || setup.state === 'key-off') return false;
    const at = inputsOf(car.drawing).find(({ plus }) => plus === input);
    if (!at) return false;
    const pin = input.slice('module.'.length);
    const dead = car.faults.some(
      ({ trouble }) =>
        trouble.kind === 'module' && trouble.mode === 'input-dead' && trouble.pin === pin,
    );
    if (dead) return false;
    const minus = at.minus === MASS ? MASS : `${at.minus}.pin`;
    const ends = await this.ends(car, setup, `${input}.pin`, minus, 'none');
    return at.follows(car, ends, async () =>
      this.ends(
        healthyTwin(car),
        { ...PLAIN, state: setup.state, target: 'moving' },
        `${input}.pin`,
        minus,
        'none',
      ),
    );
  }

  /** What a meter, lamp or light settles at: a mean over the turns of a wheel, the end of a travel. */
  private async mean(
    car: Car,
    setup: Setup,
    plus: string,
    minus: string,
    instrument: Instrument,
  ): Promise<number> {
    const { sensor } = car.drawing;
    if (sensor === 'tracks' && setup.target === 'moving') {
      const [end] = await this.solve(car, setup, plus, minus, instrument, [
        { on: false, swing: 0, travel: 1, onSpot: false },
      ]);
      return end ?? 0;
    }
    const { volts } = await this.ends(car, setup, plus, minus, instrument);
    const [first = 0, second = first] = volts;
    if (volts.length === 1) return first;
    const duty = valueIn(car, 'wheel.duty');
    return duty * first + (1 - duty) * second;
  }

  /** The signal between two places at every instant that counts. */
  private async ends(
    car: Car,
    setup: Setup,
    plus: string,
    minus: string,
    instrument: Instrument,
  ): Promise<Ends> {
    const instants = instantsOf(car, setup);
    const volts = await this.solve(car, setup, plus, minus, instrument, instants);
    return { volts, instants };
  }

  private async solve(
    car: Car,
    setup: Setup,
    plus: string,
    minus: string,
    instrument: Instrument,
    instants: readonly Instant[],
  ): Promise<number[]> {
    const decks = instants.map((instant, index) => {
      const deck = new Deck('abcdefgh'.charAt(index));
      build(deck, car, setup, instant);
      addClips(deck, car, setup.bridges, this.resistorShare);
      addInstrument(deck, car, instrument, plus, minus);
      return deck;
    });
    const at = await operatingPoint(this.engine, decks, [plus, minus]);
    if (!at)
      throw new Unsolved(
        `${car.drawing.circuit} ${car.faults.map(({ id }) => id).join()}: ${instrument} ${plus} ${minus} in ${JSON.stringify(setup)}`,
      );
    return decks.map((_, index) => at(index, plus) - at(index, minus));
  }
}

function build(deck: Deck, car: Car, setup: Setup, instant: Instant): void {
  const troubles = car.faults.map(({ trouble }) => trouble);
  // Nothing is measured on the road.
  const state = setup.state === 'driving' ? 'running' : setup.state;
  addBattery(deck, car, state);
  addWires(deck, car, troubles);
  addContacts(deck, car, setup.unplugged, troubles);
  addParts(deck, car, { ...setup, state }, troubles);
  if (!setup.unplugged.includes('module')) addModule(deck, car, state, troubles);
  // A spare is whole; two wires that are swapped in the plug stay so.
  const own = troubles.find((one) => one.kind === 'sensor');
  const kept = own && (setup.sensor === 'fitted' || own.mode === 'leads-swapped') ? own : null;
  const speed = setup.state === 'cranking' || setup.state === 'running' ? setup.state : 'by-hand';
  const peak = car.drawing.sensor === 'coil' ? valueIn(car, `sensor.${speed}`) : 0;
  addSensor(deck, car, instant, kept, peak);
}

/** The ends of what the sensor does in a setup; one instant for a target at rest. */
function instantsOf(car: Car, setup: Setup): readonly Instant[] {
  const { sensor } = car.drawing;
  const wheel = car.faults.map(({ trouble }) => trouble).find((one) => one.kind === 'wheel');
  const turns = setup.state === 'cranking' || setup.state === 'running';
  const moves = setup.target === 'moving' || (turns && (sensor === 'hall' || sensor === 'coil'));
  const still = { on: false, swing: 0, travel: 0, onSpot: false };
  const stops =
    wheel?.mode === 'missing' || (wheel?.mode === 'gap-wide' && wheel.size < STOPS_UNDER);
  switch (sensor) {
    case 'tracks': {
      if (!moves) return [still];
      const worn = isWorn(car);
      return [
        ...TRAVELS.map((travel) => ({ ...still, travel })),
        ...(worn === null ? [] : [{ ...still, travel: worn, onSpot: true }]),
      ];
    }
    case 'coil': {
      const share =
        wheel?.mode === 'missing' ? 0 : wheel?.mode === 'gap-wide' ? 0.08 + 0.32 * wheel.size : 1;
      return moves
        ? [
            { ...still, swing: share },
            { ...still, swing: -share },
          ]
        : [still];
    }
    default:
      if (!moves) return [{ ...still, on: !stops && valueIn(car, 'wheel.still') < 0.5 }];
      return [{ ...still, on: !stops }, still];
  }
}

function isWorn(car: Car): number | null {
  for (const { trouble } of car.faults)
    if (trouble.kind === 'sensor' && trouble.mode === 'worn-spot') return trouble.size;
  return null;
}

/** The signal is in the wrong position. */
function isShifted(car: Car): boolean {
  return car.faults.some(({ trouble }) => isShifting(trouble));
}

function isShifting(trouble: Trouble): boolean {
  return (
    (trouble.kind === 'wheel' && trouble.mode === 'displaced') ||
    (trouble.kind === 'sensor' && trouble.mode === 'leads-swapped')
  );
}
