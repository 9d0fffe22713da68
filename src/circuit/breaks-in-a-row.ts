/**
 * Breaks that are one and the same to a module. Where wires, contacts and parts with two pins follow each other and
 * nothing branches off, one current flows through all of them: a break anywhere stops it, and some ohms more anywhere
 * hold it back alike. So one answer holds for the whole row.
 */
import { type Circuit, effectsOf, type Fault, type FaultEffect, type Part } from './circuit.ts';
import { reachesCoil } from './relay-coil.ts';

/** How the links of a row are called. */
const wireLink = (name: string) => `wire ${name}`;
const contactLink = (terminal: string) => `contact ${terminal}`;
const partLink = (name: string) => `part ${name}`;

/** Tells of a break, or of a bad contact, the row it sits in; null of every other fault. */
export function rowsOf(circuit: Circuit): (fault: Fault) => string | null {
  const rows = joinedLinks(circuit);
  const relays = circuit.parts.filter((part) => part.kind === 'relay');
  return (fault) => {
    const [effect, ...others] = effectsOf(fault);
    const link = effect && others.length === 0 ? linkOf(effect) : null;
    if (link === null) return null;
    // Beside a coil a fault is also asked whether it leaves too little there.
    const coils = relays.filter((relay) => reachesCoil(circuit, fault, relay));
    return [rows(link), ...coils.map(({ name }) => name)].join('|');
  };
}

/** Whether a fault lets no current through where it sits. */
export function stopsCurrent({ effect }: Fault): boolean {
  if (effect.kind === 'part') return effect.mode === 'blown' || effect.mode === 'contact-open';
  return effect.kind === 'wire-open' || effect.kind === 'contact-open';
}

function linkOf(effect: FaultEffect): string | null {
  if ('terminal' in effect) return contactLink(effect.terminal);
  if (effect.kind === 'wire-open' || effect.kind === 'wire-resistive') return wireLink(effect.wire);
  if (effect.kind !== 'part') return null;
  const { mode, part } = effect;
  const isWay = mode === 'blown' || mode === 'contact-open' || mode === 'contact-resistive';
  return isWay ? partLink(part) : null;
}

/** The name of one link of each row, for every link of it. */
function joinedLinks({ wires, parts }: Circuit): (link: string) => string {
  const root = new Map<string, string>();
  const find = (link: string): string => {
    const next = root.get(link);
    return next === undefined ? link : find(next);
  };
  const join = (one: string, other: string): void => {
    const [from, to] = [find(one), find(other)];
    if (from !== to) root.set(from, to);
  };
  const ends = new Map<string, { readonly link: string; readonly isGround: boolean }[]>();
  for (const { name, from, to, role } of wires)
    for (const end of [from, to])
      ends.set(end, [
        ...(ends.get(end) ?? []),
        { link: wireLink(name), isGround: role === 'ground' },
      ]);
  for (const [end, [one, other, ...more]] of ends) {
    if (!one || more.length > 0) continue;
    const isSplice = !parts.some(({ name }) => end.startsWith(`${name}.`));
    if (end.startsWith('battery.')) continue;
    // A sensor whose ground is lost is another one than a sensor whose feed is.
    if (other && isSplice && one.isGround === other.isGround) join(one.link, other.link);
    if (!other && !isSplice) join(one.link, contactLink(end));
  }
  for (const part of parts)
    for (const pin of waysThrough(part)) {
      const terminal = `${part.name}.${pin}`;
      const isGround = ends.get(terminal)?.some((end) => end.isGround) ?? true;
      if (!isGround) join(contactLink(terminal), partLink(part.name));
    }
  return find;
}

/** The two pins between which one current flows and nowhere else. */
function waysThrough(part: Part): readonly string[] {
  if (part.kind === 'fuse' || part.kind === 'neighbour') return part.pins;
  return part.kind === 'relay' ? ['30', '87'] : [];
}
