/** What each wire carries in the healthy circuit, from where it leads: battery, a module's reference, a ground, a signal. */
import type { Part, Wire, WireRole } from './circuit.ts';

/** The role of each wire by its name. Wires joined at a splice or through a fuse or relay share their role. */
export function wireRoles(
  wires: readonly Omit<Wire, 'role'>[],
  parts: readonly Part[],
): Map<string, WireRole> {
  const links: (readonly [string, string])[] = [
    ...parts.flatMap((part) =>
      part.kind === 'module'
        ? part.inside.flatMap((pin) =>
            pin.joinedTo === null
              ? []
              : [[`${part.name}.${pin.name}`, `${part.name}.${pin.joinedTo}`] as const],
          )
        : [],
    ),
    ...wires.map((wire) => [wire.from, wire.to] as const),
    ...parts.flatMap((part) =>
      part.kind === 'fuse' || part.kind === 'relay'
        ? [[`${part.name}.${part.pins[0]}`, `${part.name}.${part.pins[1]}`] as const]
        : [],
    ),
  ];
  const roots: (readonly [string, WireRole])[] = [
    ['battery.positive', 'supply'],
    ['battery.negative', 'ground'],
    ...parts.flatMap((part): (readonly [string, WireRole])[] => {
      if (part.kind === 'ground-point') return [[`${part.name}.eyelet`, 'ground']];
      if (part.kind !== 'module') return [];
      return part.inside.flatMap((pin): (readonly [string, WireRole])[] => {
        const name = `${part.name}.${pin.name}`;
        // What a module switches is a ground that comes with the key.
        if (pin.ground || pin.driver) return [[name, 'ground']];
        return pin.reference ? [[name, 'reference']] : [];
      });
    }),
  ];
  const nextTo = new Map<string, string[]>();
  const lead = (from: string, to: string): void => {
    const known = nextTo.get(from);
    if (known) known.push(to);
    else nextTo.set(from, [to]);
  };
  for (const [a, b] of links) {
    lead(a, b);
    lead(b, a);
  }
  const roleOf = new Map<string, WireRole>();
  for (const [root, role] of roots) {
    const open = [root];
    while (open.length > 0) {
      const here = open.pop()!;
      if (roleOf.has(here)) continue;
      roleOf.set(here, role);
      open.push(...(nextTo.get(here) ?? []));
    }
  }
  return new Map(wires.map((wire) => [wire.name, roleOf.get(wire.from) ?? 'signal']));
}
