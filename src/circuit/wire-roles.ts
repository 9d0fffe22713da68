/** What each wire carries in the healthy circuit, from where it leads: battery, a module's reference, a ground, a signal. */
import type { Part, Wire, WireRole } from './circuit.ts';
import { reachedFrom } from './metal-of.ts';

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
  const roleOf = new Map<string, WireRole>();
  for (const [root, role] of roots)
    for (const here of reachedFrom(root, links)) if (!roleOf.has(here)) roleOf.set(here, role);
  return new Map(wires.map((wire) => [wire.name, roleOf.get(wire.from) ?? 'signal']));
}
