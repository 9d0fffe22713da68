/**
 * What a bridge, a light or a lamp would do to the vehicle: the healthy circuit is solved with it and without it, in cars
 * that are hit hardest, and each node is held against what it is made for. One computation for a supply that is fed
 * backwards, an input that is lifted above what its own resistor leads to, an output that has to carry too much, and a
 * fuse that would blow. What each bears is common practice, no source.
 */
import {
  type Circuit,
  isSensor,
  type ModulePart,
  type ModulePin,
  moduleOf,
  type PullEnd,
  sensorOf,
} from './circuit.ts';
import { type HardHit, HitSetup, hardHits, hitValue, type Solved } from './hard-hit.ts';
import { joinedTo } from './nets.ts';
import { feedChoice, pullChoice } from './open-values.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import { sensorKindOf } from './sensors.ts';
import { FUSE_BLOWS_AT } from './supply-limits.ts';
import type { Bridge, Setup, TerminalId } from './test.ts';
import type { TestRefusal } from './test-refusal.ts';

/** So far above its own supply a pin is still safe: from there on its protection diode conducts. */
const ABOVE_SUPPLY_VOLTS = 0.3;
/** A pin of a module without power bears no more. */
const ABOVE_DEAD_VOLTS = 0.5;
/** A bridge that lifts a node by less has done nothing to it. */
const LIFTED_VOLTS = 0.05;
/** A wiper on its track bears no more. */
const WIPER_AMPS = 0.01;

const known = new WeakMap<Circuit, Map<string, TestRefusal | null>>();

/** What these bridges would hurt, in a setup with all of them; null when they hurt nothing. */
export function overloadOf(circuit: Circuit, setup: Setup): TestRefusal | null {
  if (setup.bridges.every((bridge) => isHarmless(circuit, setup, bridge))) return null;
  const ofCircuit = known.get(circuit) ?? new Map<string, TestRefusal | null>();
  known.set(circuit, ofCircuit);
  const key = JSON.stringify(setup);
  const before = ofCircuit.get(key);
  if (before !== undefined) return before;
  const found = firstOverload(circuit, setup);
  ofCircuit.set(key, found);
  return found;
}

/**
 * What needs no computing: a bridge beside a wire that joins the same two places, and one to ground from a place without battery voltage, from the
 * battery itself, or through a light, which draws no more than some 40 mA.
 */
function isHarmless(circuit: Circuit, setup: Setup, { from, to, through }: Bridge): boolean {
  if (joinedTo(circuit, PLAIN_SETUP, from).has(to)) return true;
  const isGround = (end: TerminalId) => joinedTo(circuit, setup, end).has('battery.negative');
  const other = isGround(to) ? from : isGround(from) ? to : null;
  if (other === null) return false;
  if (through === 'test-light' || other === 'battery.positive') return true;
  return !joinedTo(circuit, setup, other).has('battery.positive');
}

function firstOverload(circuit: Circuit, setup: Setup): TestRefusal | null {
  const bridged = new HitSetup(circuit, setup);
  const bare = new HitSetup(circuit, { ...setup, bridges: [] });
  const all = hardHits(circuit).flatMap((car): Overloaded[] => {
    const after = bridged.solved(car);
    if (!after) return [];
    // Only asked for where something is out of bounds.
    const before = () => bare.solved(car);
    const found =
      liftedPin(circuit, setup, car, before, after) ??
      liftedFeed(circuit, setup, car, before, after) ??
      blownFuse(circuit, after) ??
      overloadedOutput(circuit, before, after);
    return found ? [found] : [];
  });
  return all.reduce<Overloaded | null>(
    (worst, one) => (worst && !isWorse(one, worst) ? worst : one),
    null,
  );
}

/** The same car without the bridges. */
type Before = () => Solved | null;
type Overloaded = Extract<TestRefusal, { code: 'lifted' | 'fuse-blows' | 'output-overloaded' }>;

/** Of the same kind and at the same place, but more. */
function isWorse(one: Overloaded, other: Overloaded): boolean {
  if (one.code === 'lifted' && other.code === 'lifted')
    return one.terminal === other.terminal && one.volts > other.volts;
  return one.code === 'fuse-blows' && other.code === 'fuse-blows' && one.amps > other.amps;
}

/** A pin of the plugged module that is lifted above what it is made for. */
function liftedPin(
  circuit: Circuit,
  setup: Setup,
  car: HardHit,
  before: Before,
  after: Solved,
): Overloaded | null {
  const module = moduleOf(circuit);
  if (setup.unplugged.includes(module.name)) return null;
  const isDead = setup.state === 'key-off';
  for (const pin of module.inside) {
    if (!pin.reference && !pin.input && !pin.pull) continue;
    const terminal = `${module.name}.${pin.name}`;
    const at = `${terminal}.pin`;
    const volts = after.volts(at);
    const stands = isDead ? 0 : madeForVolts(circuit, module, pin, car, after);
    const bears = stands + (isDead ? ABOVE_DEAD_VOLTS : ABOVE_SUPPLY_VOLTS);
    if (volts > bears && volts > voltsAt(before, at) + LIFTED_VOLTS)
      return {
        code: 'lifted',
        terminal,
        is: pin.reference ? 'reference' : 'input',
        volts,
        madeForVolts: stands,
        isDead,
      };
  }
  return null;
}

/** What stands on a pin: the supply behind it, of an input also that of its sensor, of a coil's input also its swing. */
function madeForVolts(
  circuit: Circuit,
  module: ModulePart,
  pin: ModulePin,
  car: HardHit,
  after: Solved,
): number {
  const battery = after.volts('battery.positive');
  const own = (one: ModulePin): number => {
    const { reference } = one;
    if (!reference) return 0;
    const { volts } = reference;
    if (volts === 'battery') return battery;
    const choice = feedChoice(reference);
    const isBattery = choice && hitValue(car, { key: `${one.name}.feed`, of: choice }) === 1;
    return isBattery ? battery : volts.nominal;
  };
  if (pin.reference) return own(pin);
  const sensor = sensorOf(circuit);
  const fed = module.inside.filter((one) => one.reference !== null);
  const ofSensor = Math.max(0, ...fed.map(own));
  const end = pin.pull && endIn(pin.pull.to, car);
  if (!end || end.kind === 'ground' || end.kind === 'nothing')
    return ofSensor > 0 ? ofSensor : battery;
  const swing = sensor.kind === 'reluctor' ? sensor.running.high : 0;
  if (end.kind === 'battery') return battery;
  if (end.kind === 'volts') return Math.max(ofSensor, end.volts.low + swing);
  const twin = module.inside.find((one) => one.name === end.pin);
  return Math.max(ofSensor, twin ? own(twin) : 0);
}

function endIn(to: NonNullable<ModulePin['pull']>['to'], car: HardHit): PullEnd {
  if (to.kind !== 'one-of') return to;
  return to.ends[hitValue(car, { key: '.pull-to', of: pullChoice(to) })]!.end;
}

/** Electronics that the module feeds, lifted above that feed while the module is off. */
function liftedFeed(
  circuit: Circuit,
  setup: Setup,
  car: HardHit,
  before: Before,
  after: Solved,
): Overloaded | null {
  const module = moduleOf(circuit);
  if (!setup.unplugged.includes(module.name)) return null;
  for (const part of circuit.parts) {
    const isFed = isSensor(part) ? sensorKindOf(part).hasElectronics : part.kind === 'neighbour';
    if (!isFed || setup.unplugged.includes(part.name)) continue;
    const terminal = `${part.name}.feed`;
    const net = joinedTo(circuit, PLAIN_SETUP, terminal);
    const pin = module.inside.find(
      (one) => one.reference && net.has(`${module.name}.${one.name}.pin`),
    );
    if (!pin) continue;
    const at = `${terminal}.pin`;
    const volts = after.volts(at);
    const stands = madeForVolts(circuit, module, pin, car, after);
    if (volts > stands + ABOVE_SUPPLY_VOLTS && volts > voltsAt(before, at) + LIFTED_VOLTS)
      return { code: 'lifted', terminal, is: 'feed', volts, madeForVolts: stands, isDead: false };
  }
  return null;
}

function blownFuse(circuit: Circuit, after: Solved): Overloaded | null {
  for (const part of circuit.parts) {
    if (part.kind !== 'fuse') continue;
    const across = after.volts(`${part.name}.in.pin`) - after.volts(`${part.name}.out.pin`);
    const amps = Math.abs(across) / part.ohms.nominal;
    if (amps > FUSE_BLOWS_AT * part.amps)
      return { code: 'fuse-blows', fuse: part.words, amps, ratedAmps: part.amps };
  }
  return null;
}

/** The sensor's own output, which has to sink or to carry more than it is made for. */
function overloadedOutput(circuit: Circuit, before: Before, after: Solved): Overloaded | null {
  const sensor = sensorOf(circuit);
  const tooMuch = (terminal: TerminalId, amps: number, bearsAmps: number): Overloaded | null =>
    amps < bearsAmps ? null : { code: 'output-overloaded', terminal, bearsAmps };
  // Of whatever kind it is: an output that protects itself says at what current.
  if ('limit' in sensor) {
    const limit = sensor.limit.low * (1 - 1e-6);
    const found = tooMuch(`${sensor.name}.signal`, after.amps('gated-output'), limit);
    return found && (before()?.amps('gated-output') ?? 0) < limit ? found : null;
  }
  if (sensor.kind !== 'potentiometer') return null;
  for (const { name, signal, wiper } of sensor.tracks) {
    const ends = [`${sensor.name}.${name}.wiper`, `${sensor.name}.${signal}.pin`] as const;
    const amps = (solved: Solved) =>
      Math.abs(solved.volts(ends[0]) - solved.volts(ends[1])) / wiper.nominal;
    const found = tooMuch(`${sensor.name}.${signal}`, amps(after), WIPER_AMPS);
    const bare = found && before();
    if (bare && amps(bare) < WIPER_AMPS) return found;
  }
  return null;
}

function voltsAt(before: Before, name: string): number {
  return before()?.volts(name) ?? Number.POSITIVE_INFINITY;
}
