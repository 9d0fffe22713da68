/** Circuits of very many parts, all of them neighbours that hang on the module's own pins. */
import { readFileSync } from 'node:fs';

/** Of the shipped circuit, beside which the neighbours stand. */
const SHIPPED = 'procedures/circuits/hall-module-fed.yaml';
const SHIPPED_PARTS = 3;

/** How the neighbours hang on it: each on a supply and a ground of its own, or all on those of the sensor. */
export const HANGING = ['own', 'joined'] as const;
export type Hanging = (typeof HANGING)[number];

/** The circuit file with `parts` parts. */
export function manyParts(parts: number, hanging: Hanging): string {
  const neighbours = Array.from({ length: parts - SHIPPED_PARTS }, (_, n) => n);
  const pins = neighbours.map((n) =>
    hanging === 'own'
      ? `      r${n}:
        reference: { volts: 5 V +/- 5 %, series: 0.5 ohm, limit: 50 mA to 150 mA }
      g${n}:
        ground: { ohms: 5 mohm to 50 mohm, offset: 0.2 mV to 40 mV }`
      : `      r${n}: { joined-to: reference }
      g${n}: { joined-to: ground }`,
  );
  // Some 40 mA for all of them together, so that the healthy circuit works.
  const ohms = hanging === 'own' ? '250 ohm to 8 kohm' : '7 kohm to 9 kohm';
  const more = neighbours.map(
    (n) =>
      `  n${n}: { kind: neighbour, words: neighbour ${n}, ohms: ${ohms}, shorted: 0.05 ohm to 20 ohm }`,
  );
  const wires = neighbours.map(
    (n) => `  f${n}: { from: module.r${n}, to: n${n}.feed, size: 0.5 mm2, length: 2 m }
  g${n}: { from: module.g${n}, to: n${n}.ground, size: 0.5 mm2, length: 2 m }`,
  );
  return readFileSync(SHIPPED, 'utf8')
    .replace('      throttle-ground:\n', `${pins.join('\n')}\n      throttle-ground:\n`)
    .replace('wires:\n', `${more.join('\n')}\nwires:\n${wires.join('\n')}\n`);
}
