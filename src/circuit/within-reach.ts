/**
 * Which faults the module can notice at all, by structure: those of what hangs together with its inputs and its sensor
 * other than by a battery post or the body. A neighbour with a supply and a ground of its own is beyond. Spares the
 * solver the rest.
 */
import {
  type Circuit,
  type Fault,
  type FaultEffect,
  inputTerminals,
  type ModulePart,
  type Part,
  pullEnds,
  sensorOf,
} from './circuit.ts';
import type { TerminalId } from './test.ts';

/** Whether a fault of the circuit is one of them. A wire that touches the battery can be felt at any output. */
export function withinReach(circuit: Circuit): (fault: Fault) => boolean {
  const { name, pins } = sensorOf(circuit);
  const felt = hangingTogether(circuit, [
    ...inputTerminals(circuit),
    ...pins.map((pin) => `${name}.${pin}`),
  ]);
  return ({ effect }) => {
    const touched = touchedBy(effect, circuit);
    return touched === null || touched.some((terminal) => felt.has(terminal));
  };
}

/** These terminals and all that hang together with them other than by a battery post or the body. */
export function hangingTogether(circuit: Circuit, from: readonly TerminalId[]): Set<TerminalId> {
  const links = [
    ...circuit.wires.map(({ from, to }): readonly [TerminalId, TerminalId] => [from, to]),
    ...circuit.parts.flatMap((part) => (part.kind === 'module' ? insideOf(part) : joined(part))),
  ];
  const beside = new Map<TerminalId, TerminalId[]>();
  for (const [one, other] of links) {
    beside.set(one, [...(beside.get(one) ?? []), other]);
    beside.set(other, [...(beside.get(other) ?? []), one]);
  }
  const felt = new Set(from);
  for (const terminal of felt)
    if (!terminal.startsWith('battery.'))
      for (const next of beside.get(terminal) ?? []) felt.add(next);
  return felt;
}

/** All pins of a part feel each other. */
function joined({ name, pins }: Part): (readonly [TerminalId, TerminalId])[] {
  return pins.slice(1).map((pin) => [`${name}.${pins[0]}`, `${name}.${pin}`]);
}

/** Pins of the module on one copper, or that a resistor or an input joins. */
function insideOf({ name, inside }: ModulePart): (readonly [TerminalId, TerminalId])[] {
  return inside.flatMap(({ name: pin, joinedTo, pull, input }) =>
    [
      joinedTo,
      ...(pull ? pullEnds(pull.to).map((end) => (end.kind === 'pin' ? end.pin : null)) : []),
      input?.kind === 'swing' ? input.against : null,
    ].flatMap((other): (readonly [TerminalId, TerminalId])[] =>
      other === null ? [] : [[`${name}.${pin}`, `${name}.${other}`]],
    ),
  );
}

/** Terminals that a fault changes something at; null where that cannot be said of terminals. */
function touchedBy(effect: FaultEffect, circuit: Circuit): readonly TerminalId[] | null {
  const ends = (wire: string) => {
    const found = circuit.wires.find(({ name }) => name === wire);
    return found ? [found.from, found.to] : [];
  };
  switch (effect.kind) {
    case 'wire-open':
    case 'wire-resistive':
      return ends(effect.wire);
    case 'wire-short':
      if (effect.to === 'battery.positive') return null;
      return [...ends(effect.wire), ...(typeof effect.to === 'object' ? ends(effect.to.wire) : [])];
    case 'wires-swapped':
      return effect.terminals;
    case 'contact-open':
    case 'contact-resistive':
      return [effect.terminal];
    case 'part': {
      const part = circuit.parts.find(({ name }) => name === effect.part)!;
      const own = part.kind === 'module' && part.pins.includes(effect.at) ? [effect.at] : part.pins;
      return own.map((pin) => `${part.name}.${pin}`);
    }
    case 'target':
      return null;
  }
}
