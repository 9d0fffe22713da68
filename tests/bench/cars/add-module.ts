/** The module behind its plug: feeds with their limit, pull-ups and what they are pulled to, grounds. */
import { MASS, type VehicleState } from './add-harness.ts';
import { type Car, type Trouble, valueIn } from './car.ts';
import type { Deck } from './deck.ts';

/** A battery-fed output that is low loses in its worn switch what is missing of so many volts. */
const WORN_SWITCH_VOLTS = 12;
const JOINT_OHMS = 0.002;

/** Adds the plugged module; without the key its outputs and rails are at the mass. */
export function addModule(
  deck: Deck,
  car: Car,
  state: VehicleState,
  troubles: readonly Trouble[],
): void {
  const isOn = state !== 'key-off';
  const hurt = (mode: string, pin: string) =>
    troubles.find((one) => one.kind === 'module' && one.mode === mode && one.pin === pin);
  for (const { pin, does, with: twin } of car.drawing.module) {
    const at = `module.${pin}.pin`;
    switch (does) {
      case 'joined':
        deck.resistor(at, `module.${twin}.pin`, JOINT_OHMS);
        break;
      case 'ground':
        if (!hurt('ground-open', pin)) deck.resistor(at, MASS, valueIn(car, 'mass.ohms'));
        break;
      case 'driver':
        if (isOn && !hurt('driver-dead', pin))
          deck.resistor(at, MASS, valueIn(car, `${pin}.driver`));
        break;
      case 'feed': {
        deck.resistor(at, MASS, valueIn(car, `${pin}.bleed`));
        const low = hurt('reference-low', pin);
        if (isOn && !hurt('reference-dead', pin))
          addFeed(deck, car, pin, low?.kind === 'module' ? low.size : null);
        break;
      }
      default:
        if (!hurt('pull-missing', pin)) addPull(deck, car, pin, isOn);
    }
  }
  const undescribed = car.values['undescribed.ohms'];
  if (undescribed !== undefined) deck.resistor('module.reference.pin', MASS, undescribed);
}

/** A regulator that only gives, up to its limit; or a switch from the battery. */
function addFeed(deck: Deck, car: Car, pin: string, left: number | null): void {
  const at = `module.${pin}.pin`;
  const from = car.feedsBattery ? 'battery.positive' : MASS;
  const whole = car.feedsBattery ? 0 : valueIn(car, `${pin}.volts`);
  const missing = left === null ? 0 : (1 - left) * (car.feedsBattery ? WORN_SWITCH_VOLTS : whole);
  const limit = valueIn(car, `${pin}.limit`);
  const ohms = valueIn(car, `${pin}.series`);
  const linear = { siemens: 1 / ohms, amps: (whole - missing) / ohms };
  deck.bent({
    a: from,
    b: at,
    watches: [from, at],
    first: linear,
    lineAt: (volts) => {
      const amps = linear.amps + (volts(from) - volts(at)) * linear.siemens;
      if (amps > limit) return { siemens: 0, amps: limit };
      return amps < 0 ? { siemens: 0, amps: 0 } : linear;
    },
    formula: `max(0,min(${limit},(${whole - missing}+${deck.across(from, at)})/${ohms}))`,
  });
}

function addPull(deck: Deck, car: Car, pin: string, isOn: boolean): void {
  const at = `module.${pin}.pin`;
  const ohms = valueIn(car, `${pin}.pull`);
  switch (car.pulls[pin]) {
    case 'own':
      deck.source(at, MASS, isOn ? valueIn(car, `${pin}.own`) : 0, ohms);
      return;
    case 'reference':
      deck.resistor(at, `module.${pin.replace('signal', 'reference')}.pin`, ohms);
      return;
    case 'battery':
      deck.resistor(at, isOn ? 'battery.positive' : MASS, ohms);
      return;
    case 'ground':
      deck.resistor(at, MASS, ohms);
      return;
    default:
      // No pull at all: the input's own leakage.
      deck.resistor(at, MASS, 20e6);
  }
}
