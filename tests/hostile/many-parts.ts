/** Circuits of very many parts, all of them neighbours that hang on the module's own pins. */
import { readFileSync } from 'node:fs';

/** Of the shipped circuit, beside which the neighbours stand. */
const SHIPPED = 'procedures/circuits/hall-module-fed.yaml';
const SHIPPED_PARTS = 3;

/** `fuses` of them in a row in the sensor's feed. */
export function fusesInARow(fuses: number): string {
  const all = Array.from({ length: fuses }, (_, n) => n);
  const next = (n: number) => (n + 1 < fuses ? `f${n + 1}.in` : 'sensor.feed');
  const size = 'size: 0.5 mm2, length: 2 m';
  return readFileSync(SHIPPED, 'utf8')
    .replace(/^ {2}feed: .*$/m, `  feed: { from: module.reference, to: f0.in, ${size} }`)
    .replace(
      'wires:\n',
      `${all.map((n) => `  f${n}: { kind: fuse }\n`).join('')}wires:\n${all
        .map((n) => `  f${n}: { from: f${n}.out, to: ${next(n)}, ${size} }\n`)
        .join('')}`,
    );
}

/** `relays` in a row in the sensor's feed, each with a coil and a switch of the module. */
export function relaysInARow(relays: number): string {
  const all = Array.from({ length: relays }, (_, n) => n);
  const size = 'size: 0.5 mm2, length: 2 m';
  const wires = all.map(
    (n) => `  c${n}: { from: battery.positive, to: k${n}.86, ${size} }
  d${n}: { from: module.d${n}, to: k${n}.85, ${size} }
  k${n}: { from: ${n === 0 ? 'battery.positive' : `k${n - 1}.87`}, to: k${n}.30, ${size} }
`,
  );
  return readFileSync(SHIPPED, 'utf8')
    .replace(/^ {2}feed: .*$/m, `  feed: { from: k${relays - 1}.87, to: sensor.feed, ${size} }`)
    .replace(
      '      throttle-ground:\n',
      `${all.map((n) => `      d${n}: { driver: {} }\n`).join('')}      throttle-ground:\n`,
    )
    .replace(
      'wires:\n',
      `${all.map((n) => `  k${n}: { kind: relay, coil: 60 ohm to 120 ohm }\n`).join('')}wires:\n${wires.join('')}`,
    );
}

/** `pins` of the module joined to one wire of the sensor, each with what stands behind it. */
export function pinsTogether(pins: number, wire: 'feed' | 'signal', behind: string): string {
  const all = Array.from({ length: pins }, (_, n) => n);
  const size = 'size: 0.5 mm2, length: 2 m';
  const from = wire === 'feed' ? 'reference' : 'signal';
  return readFileSync(SHIPPED, 'utf8')
    .replace(
      new RegExp(`^ {2}${wire}: .*$`, 'm'),
      `  ${wire}: { from: splice.s, to: sensor.${wire}, ${size} }
  own: { from: module.${from}, to: splice.s, ${size} }`,
    )
    .replace(
      '      throttle-ground:\n',
      `${all.map((n) => `      p${n}: { ${behind} }\n`).join('')}      throttle-ground:\n`,
    )
    .replace(
      'wires:\n',
      `wires:\n${all.map((n) => `  p${n}: { from: module.p${n}, to: splice.s, ${size} }\n`).join('')}`,
    );
}

/** How the neighbours hang on it: each on a supply and a ground of its own, or all on those of the sensor. */
export type Hanging = 'own' | 'joined';

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

export const REFERENCE = 'reference: { volts: 5 V }';
export const PULL = 'pull: { to: reference, ohms: 1 kohm to 22 kohm }';

/** As much of each kind as is still worked out, with its title. */
export const AT_THE_LIMITS: readonly (readonly [string, string])[] = [
  ['57 neighbours on a supply of their own', manyParts(60, 'own')],
  ['27 neighbours on the supply of the sensor', manyParts(30, 'joined')],
  ['21 fuses in a row', fusesInARow(21)],
  ['8 relays in a row, each with its coil', relaysInARow(8)],
  ['20 pulled pins on the signal', pinsTogether(20, 'signal', PULL)],
  ['19 references on the feed', pinsTogether(19, 'feed', REFERENCE)],
];
