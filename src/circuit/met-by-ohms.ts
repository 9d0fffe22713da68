/**
 * What the current of an ohmmeter meets, from one of its leads on: through copper and carbon, which are wires, contacts,
 * fuses, coils and tracks, and through what is clipped in, up to the first electronics or battery post. One rule by kind of
 * part: a module, a sensor with a chip and a neighbour have electronics, of which ohms say nothing and which the meter's
 * own voltage can damage. What a neighbour is no circuit says; it may be a track and is taken for the worse.
 * Common practice, no source.
 */
import { type Circuit, isSensor, type Part } from './circuit.ts';
import { type MetalLink, metalLinks, reachedFrom } from './metal-of.ts';
import { isRelayClosed } from './relay-coil.ts';
import { sensorKindOf } from './sensors.ts';
import type { Setup, TerminalId } from './test.ts';

/** What is met: a battery's plus, and the first part with electronics. */
export interface MetByOhms {
  readonly battery: boolean;
  readonly part: string | null;
}

/** From one lead on, as a healthy circuit stands in this setup. Behind a post or a point of the body nothing counts. */
export function metByOhms(circuit: Circuit, setup: Setup, lead: TerminalId): MetByOhms {
  const found = reachedFrom(lead, conducting(circuit, setup), bodyOf(circuit));
  const met = circuit.parts.find(
    (part) => hasElectronics(part) && part.pins.some((pin) => found.has(`${part.name}.${pin}.pin`)),
  );
  return { battery: found.has('battery.positive'), part: met?.name ?? null };
}

/** The setup with every part unplugged whose electronics the current would meet from one of these leads on. */
export function apartForOhms(circuit: Circuit, setup: Setup, leads: readonly TerminalId[]): Setup {
  for (const lead of leads) {
    const { part } = metByOhms(circuit, setup, lead);
    if (part !== null && !setup.unplugged.includes(part))
      return apartForOhms(
        circuit,
        { ...setup, unplugged: [...setup.unplugged, part].sort() },
        leads,
      );
  }
  return setup;
}

/** Of a neighbour only its ohms are known, so that it is taken for one that has. */
function hasElectronics(part: Part): boolean {
  if (isSensor(part)) return sensorKindOf(part).hasElectronics;
  return part.kind === 'module' || part.kind === 'neighbour';
}

function bodyOf({ parts }: Circuit): ReadonlySet<TerminalId> {
  const points = parts.flatMap(({ kind, name }) =>
    kind === 'ground-point' ? [`${name}.eyelet`] : [],
  );
  return new Set(['battery.positive', 'battery.negative', ...points]);
}

/** Copper, carbon, and what is clipped in. */
function conducting(circuit: Circuit, setup: Setup): MetalLink[] {
  const closed = circuit.parts.filter(
    (part) => part.kind === 'relay' && isRelayClosed(circuit, setup, part),
  );
  return [
    ...metalLinks(circuit, setup, closed),
    ...setup.bridges.map(({ from, to }): MetalLink => [from, to]),
    ...circuit.parts.flatMap((part) =>
      windings(part).map(([a, b]): MetalLink => [`${part.name}.${a}.pin`, `${part.name}.${b}.pin`]),
    ),
  ];
}

/** Pins of one part with a coil or a track between them. */
function windings(part: Part): readonly MetalLink[] {
  if (part.kind === 'relay') return part.coil ? [['86', '85']] : [];
  if (part.kind === 'potentiometer')
    return part.tracks.flatMap(({ feed, signal, ground }): MetalLink[] => [
      [feed, signal],
      [signal, ground],
    ]);
  return part.kind === 'reluctor' ? [['plus', 'minus']] : [];
}
