/** Battery, wires, contacts, fuse, relay, ground point and neighbours of a car, as lines of a deck. */
import type { Setup } from '../../../src/circuit/test.ts';
import { type Car, type Trouble, valueIn } from './car.ts';
import { type Deck, NEGATIVE } from './deck.ts';
import { plugsOf } from './drawing.ts';

/** Copper at 20 degC in ohm mm2/m, and its rise a kelvin (IEC 60028). */
const COPPER = 0.017241;
const COPPER_RISE = 0.00393;
/** The module's and the engine's mass: apart from the battery's negative post by what other consumers push through. */
export const MASS = 'mass';
/** Cranking pushes more through the ground than the key alone. Common practice, no source. */
const MASS_SHARE = { 'key-off': 0, 'key-on': 1, cranking: 3, running: 1.5 } as const;

export type VehicleState = keyof typeof MASS_SHARE;

/** The battery, and the offset of the mass. */
export function addBattery(deck: Deck, car: Car, state: VehicleState): void {
  const name = state === 'cranking' || state === 'running' ? state : 'rest';
  deck.source(
    'battery.positive',
    NEGATIVE,
    valueIn(car, `battery.${name}`),
    valueIn(car, 'battery.ohms'),
  );
  deck.source(MASS, NEGATIVE, valueIn(car, 'mass.volts') * MASS_SHARE[state], 1e-4);
}

/** Every wire, with what is wrong with it. */
export function addWires(deck: Deck, car: Car, troubles: readonly Trouble[]): void {
  const shorts = troubles.filter((one) => one.kind === 'wire-short');
  for (const { name, from, to } of car.drawing.wires) {
    const ohms = copperOhms(car, name);
    const open = troubles.some((one) => one.kind === 'wire-open' && one.wire === name);
    const worse = troubles.find((one) => one.kind === 'wire-resistive' && one.wire === name);
    const extra = worse?.kind === 'wire-resistive' ? worse.ohms : 0;
    const end = endOf(car, name, to, troubles);
    const middle = `middle.${name}`;
    deck.resistor(middle, NEGATIVE, valueIn(car, `wire.${name}.insulation`));
    deck.resistor(from, middle, ohms / 2);
    if (!open) deck.resistor(middle, end, ohms / 2 + extra);
  }
  for (const one of shorts) {
    const other =
      one.to === 'mass' ? MASS : one.to === 'battery' ? 'battery.positive' : `middle.${one.to}`;
    deck.resistor(`middle.${one.wire}`, other, one.ohms);
  }
}

function copperOhms(car: Car, wire: string): number {
  return valueIn(car, `wire.${wire}.metres`) * ohmsPerMetre(car, wire);
}

/** How long a wire of this car has to be for so many ohms. */
export function metresOf(car: Car, wire: string, ohms: number): number {
  return ohms / ohmsPerMetre(car, wire);
}

function ohmsPerMetre(car: Car, wire: string): number {
  const warm = 1 + COPPER_RISE * (valueIn(car, 'celsius') - 20);
  return (COPPER * warm) / valueIn(car, `wire.${wire}.area`);
}

/** Where a wire ends: in another's place when two are swapped at the sensor. */
function endOf(car: Car, name: string, to: string, troubles: readonly Trouble[]): string {
  for (const one of troubles)
    if (one.kind === 'wires-swapped' && one.wires.includes(name)) {
      const other = one.wires.find((wire) => wire !== name);
      return car.drawing.wires.find((wire) => wire.name === other)?.to ?? to;
    }
  return to;
}

/** Every contact of a plug that is on. */
export function addContacts(
  deck: Deck,
  car: Car,
  unplugged: readonly string[],
  troubles: readonly Trouble[],
): void {
  for (const { part, pins } of plugsOf(car.drawing)) {
    if (unplugged.includes(part)) continue;
    for (const pin of pins) {
      const terminal = `${part}.${pin}`;
      if (troubles.some((one) => one.kind === 'contact-open' && one.terminal === terminal))
        continue;
      const worse = troubles.find(
        (one) => one.kind === 'contact-resistive' && one.terminal === terminal,
      );
      const extra = worse?.kind === 'contact-resistive' ? worse.ohms : 0;
      deck.resistor(terminal, `${terminal}.pin`, valueIn(car, `contact.${terminal}`) + extra);
    }
  }
}

/** Neighbour, fuse, relay and ground point. */
export function addParts(
  deck: Deck,
  car: Car,
  setup: Pick<Setup, 'state' | 'unplugged' | 'bridges'>,
  troubles: readonly Trouble[],
): void {
  const { neighbour, isRelayFed } = car.drawing;
  const of = (part: string) => troubles.find((one) => one.kind === 'part' && one.part === part);
  if (neighbour) {
    const own = of(neighbour);
    const ohms = own?.kind === 'part' ? own.ohms : valueIn(car, 'neighbour.ohms');
    deck.resistor(`${neighbour}.feed.pin`, `${neighbour}.ground.pin`, ohms);
  }
  if (!isRelayFed) return;
  deck.resistor('ground-point.eyelet.pin', MASS, valueIn(car, 'ground-point.ohms'));
  const fuse = of('fuse');
  if (!car.isFuseBlown && fuse === undefined)
    deck.resistor('fuse.in.pin', 'fuse.out.pin', valueIn(car, 'fuse.ohms'));
  const relay = of('relay');
  deck.resistor('relay.86.pin', 'relay.85.pin', valueIn(car, 'relay.coil'));
  if ((relay?.kind === 'part' && relay.mode === 'open') || !isRelayClosed(car, setup)) return;
  const extra = relay?.kind === 'part' ? relay.ohms : 0;
  deck.resistor('relay.30.pin', 'relay.87.pin', valueIn(car, 'relay.ohms') + extra);
}

/** By leads at its own coil pins, or by the plugged module that has its key. */
function isRelayClosed(
  { isRelayReleased }: Car,
  { state, unplugged, bridges }: Pick<Setup, 'state' | 'unplugged' | 'bridges'>,
): boolean {
  const isFed = (pin: string) =>
    bridges.some(({ from, to }) => [from, to].includes(`relay.${pin}.pin`));
  if (isFed('86') && isFed('85')) return true;
  const isOn = state !== 'key-off' && !unplugged.includes('module') && !unplugged.includes('relay');
  return isOn && !isRelayReleased;
}
