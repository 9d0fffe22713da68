/**
 * Wires and contacts of a circuit as they are without a fault. A plan is made for each fault, and leaves nearly all of them
 * as they are, mostly at the same nodes: so they are made once, and not once for each plan.
 */
import { valuesOf } from './car-quantities.ts';
import type { Circuit, Part } from './circuit.ts';
import { copperWarmth, type Warmth } from './copper-warmth.ts';
import { CONTACT, copperOf } from './open-values.ts';
import { type MakeElement, type PlanValue, plainResistor } from './plan.ts';
import type { TerminalId } from './test.ts';

/** A short makes a node in the middle of its wire, which moves the numbers of those behind it by one or two. */
const PLACES_KEPT = 4;

/** A wire's copper, or a contact. */
export interface SoundLink {
  readonly value: PlanValue;
  /** The same resistor at other nodes. */
  readonly made: MakeElement[];
}

/** A contact with the names of its two sides. */
export interface SoundContact extends SoundLink {
  readonly terminal: TerminalId;
  readonly pin: TerminalId;
}

/** What plans of one circuit share. */
export interface SoundMakers {
  readonly warmth: Warmth;
  readonly wires: ReadonlyMap<string, SoundLink>;
  readonly contacts: ReadonlyMap<Part, readonly SoundContact[]>;
}

const known = new WeakMap<Circuit, SoundMakers>();

/** Those of a circuit. */
export function soundMakersOf(circuit: Circuit): SoundMakers {
  const found = known.get(circuit);
  if (found) return found;
  const value = valuesOf(circuit);
  const made = {
    warmth: copperWarmth({ value }, circuit.celsius),
    wires: new Map(
      circuit.wires.map((wire) => [
        wire.name,
        { value: value(`wire.${wire.name}`, copperOf(wire)), made: [] },
      ]),
    ),
    contacts: new Map(
      circuit.parts.map((part) => [
        part,
        part.pins.map((pin) => {
          const terminal = `${part.name}.${pin}`;
          const contact = value(`contact.${terminal}`, CONTACT);
          return { terminal, pin: `${terminal}.pin`, value: contact, made: [] };
        }),
      ]),
    ),
  };
  known.set(circuit, made);
  return made;
}

/** The resistor between two nodes. */
export function soundMaker(
  { value, made }: SoundLink,
  a: number,
  b: number,
  warmth: Warmth | null,
): MakeElement {
  for (const maker of made) if (maker.plain!.a === a && maker.plain!.b === b) return maker;
  const maker = plainResistor(a, b, value, { warmth });
  if (made.length === PLACES_KEPT) made.shift();
  made.push(maker);
  return maker;
}
