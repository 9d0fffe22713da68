/** Tests along what feeds the sensor and grounds it: the wires at its plug, and the fuses and relays before them. */
import { followsBattery, type Part, partName, type RelayPart } from './circuit.ts';
import { metalOf } from './metal-of.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import type { Bridge, Probe, TerminalId } from './test.ts';
import { type Lead, NEGATIVE, POSITIVE, pin, type TestList } from './test-list.ts';

/** At the sensor's feed, with and without a load, and at its far end. */
export function feedTests(
  list: TestList,
  { here, there, wire }: Lead,
  ground: Lead | undefined,
): void {
  const off = { unplugged: [list.sensor] };
  const say = pin(here);
  list.volts(
    `${here}.volts`,
    'reference',
    `Volts from ${say} at the sensor to battery negative`,
    here,
    NEGATIVE,
  );
  // Where the module passes the battery on, nothing else shows that the wire touches battery.
  const { reference } = list.pinAt(there) ?? {};
  if (reference && followsBattery(reference))
    list.volts(
      `${here}.off-volts`,
      'reference',
      `Volts from ${say} at the sensor to battery negative, key off`,
      here,
      NEGATIVE,
      { state: 'key-off' },
    );
  if (ground)
    list.volts(
      `${here}.to-ground`,
      'reference',
      `Volts from ${say} to ${pin(ground.here)} at the sensor`,
      here,
      ground.here,
    );
  list.volts(
    `${here}.open-volts`,
    'reference',
    `Volts from ${say} to battery negative, sensor unplugged`,
    here,
    NEGATIVE,
    off,
  );
  if (ground)
    list.volts(
      `${here}.open-to-ground`,
      'reference',
      `Volts from ${say} to ${pin(ground.here)}, sensor unplugged`,
      here,
      ground.here,
      off,
    );
  const light = (minus: TerminalId): Probe => ({ kind: 'light', plus: here, minus });
  list.add(
    `${here}.light`,
    'reference',
    `LED light from ${say} to battery negative, sensor unplugged`,
    1.5,
    light(NEGATIVE),
    ['test-light'],
    off,
  );
  if (ground)
    list.add(
      `${here}.light-to-ground`,
      'reference',
      `LED light from ${say} to ${pin(ground.here)}, sensor unplugged`,
      1.5,
      light(ground.here),
      ['test-light'],
      off,
    );
  if (wire.role === 'supply' && ground)
    list.add(
      `${here}.lamp`,
      'reference',
      `Filament lamp from ${say} to battery negative, sensor unplugged`,
      1.5,
      { kind: 'lamp', plus: here, minus: NEGATIVE },
      ['lamp'],
      off,
    );
  const under: Bridge = { from: here, to: NEGATIVE, through: 'test-light' };
  list.volts(
    `${here}.loaded`,
    'reference',
    `Volts from ${say} to battery negative with the LED light as load, sensor unplugged`,
    here,
    NEGATIVE,
    { ...off, bridges: [under] },
    ['test-light'],
  );
  if (partName(there) === list.module)
    list.volts(
      `${there}.volts`,
      'reference',
      `Volts from ${pin(there)} at the module to battery negative`,
      there,
      NEGATIVE,
    );
}

/** What is lost on the way to battery negative, with and without a load. */
export function groundTests(list: TestList, { here, there }: Lead): void {
  const off = { unplugged: [list.sensor] };
  const say = pin(here);
  list.volts(
    `${here}.drop`,
    'ground',
    `Voltage drop from ${say} at the sensor to battery negative`,
    here,
    NEGATIVE,
  );
  list.add(
    `${here}.light`,
    'ground',
    `LED light from battery positive to ${say}, sensor unplugged`,
    1.5,
    { kind: 'light', plus: POSITIVE, minus: here },
    ['test-light'],
    off,
  );
  const load: Bridge = { from: POSITIVE, to: here, through: 'test-light' };
  list.volts(
    `${here}.loaded-drop`,
    'ground',
    `Voltage drop of ${say} with the LED light as load from battery positive, sensor unplugged`,
    here,
    NEGATIVE,
    { ...off, bridges: [load] },
    ['test-light'],
  );
  // From the other end, where the sensor's plug cannot be reached: what the module itself loses.
  if (partName(there) === list.module)
    list.volts(
      `${there}.drop`,
      'ground',
      `Voltage drop from ${pin(there)} at the module to battery negative`,
      there,
      NEGATIVE,
    );
}

/**
 * A fuse by itself, and what is behind it on a resistor in its place: with all that it feeds, and with one of them off at a
 * time. Ohms say nothing of electronics; behind a resistor what is shorted leaves next to no volts.
 */
export function fuseTests(list: TestList, { name, words, kind }: Part): void {
  if (kind !== 'fuse') return;
  const [into, out] = [`${name}.in`, `${name}.out`];
  list.ohms(`${name}.alone`, `Ohms of the ${words}, taken out`, `${into}.pin`, `${out}.pin`, {
    state: 'key-off',
    unplugged: [name],
  });
  const inPlace: Bridge = { from: into, to: out, through: { ohms: IN_PLACE_OHMS } };
  const burden = (id: string, off: readonly Part[]) =>
    list.volts(
      `${name}.${id}`,
      'reference',
      [
        `Volts behind ${IN_PLACE_OHMS} ohm in place of the ${words}`,
        ...off.map((part) => `${part.words} unplugged`),
      ].join(', '),
      out,
      NEGATIVE,
      { unplugged: [name, ...off.map((part) => part.name)], bridges: [inPlace] },
      ['resistor'],
      3,
    );
  burden('burden', []);
  const { circuit } = list;
  const relays = circuit.parts.filter((part) => part.kind === 'relay');
  const behind = metalOf(circuit, { ...PLAIN_SETUP, unplugged: [name] }, out, relays);
  for (const part of circuit.parts)
    if (
      (part.name === list.sensor || part.kind === 'neighbour') &&
      part.pins.some((each) => behind.has(`${part.name}.${each}`))
    )
      burden(`burden-without-${part.name}`, [part]);
}
/** One of a watt stands the whole battery across it. */
const IN_PLACE_OHMS = 330;

/** On both sides of each fuse and of each relay's contact. */
export function supplyTests(list: TestList, part: Part): void {
  if (part.kind !== 'fuse' && part.kind !== 'relay') return;
  for (const name of part.pins) {
    const terminal = `${part.name}.${name}`;
    list.volts(
      `${terminal}.volts`,
      'reference',
      `Volts at ${part.words}, ${name}, to battery negative`,
      terminal,
      NEGATIVE,
    );
  }
}

/** What reaches a relay's coil, and the relay by itself on fused leads, coil and contact. */
export function relayTests(list: TestList, { name, words, coil }: RelayPart): void {
  if (!coil) return;
  list.volts(
    `${name}.coil-volts`,
    'reference',
    `Volts at the coil of the ${words}, 86 to 85`,
    `${name}.86`,
    `${name}.85`,
  );
  list.add(
    `${name}.alone`,
    'continuity',
    `Ohms of the contact of the ${words}, its coil on fused leads from the battery, relay unplugged`,
    3,
    { kind: 'ohms', plus: `${name}.30.pin`, minus: `${name}.87.pin` },
    ['meter', 'lead'],
    {
      state: 'key-off',
      unplugged: [name],
      bridges: [
        { from: POSITIVE, to: `${name}.86.pin`, through: 'lead' },
        { from: NEGATIVE, to: `${name}.85.pin`, through: 'lead' },
      ],
    },
  );
}
