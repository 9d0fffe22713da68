/** Tests that do not follow a single wire in use: a spare sensor, ohms, neighbours, eyes and fingers. */
import { moduleOf, type Part, partName, sensorOf, type Wire } from './circuit.ts';
import { apartForOhms } from './met-by-ohms.ts';
import { spaced } from './part-faults.ts';
import { PLAIN_SETUP } from './plain-setup.ts';
import { sensorKindOf } from './sensors.ts';
import type { TerminalId } from './test.ts';
import { type Lead, NEGATIVE, pin, type TestList } from './test-list.ts';
import { hasMarks, MARKS } from './timing-marks.ts';

/** Whether the module follows a good sensor, and what comes of it at the plug where there is no live data. */
export function spareTests(list: TestList): void {
  const module = moduleOf(list.circuit);
  for (const pinInside of module.inside)
    if (pinInside.input) {
      const input = `${module.name}.${pinInside.name}`;
      list.add(
        `${input}.spare`,
        'spare',
        `A good spare sensor plugged in and moved: does the module follow ${pin(input)}`,
        6,
        { kind: 'counts', input },
        ['spare-sensor', 'live-data'],
        {
          ...list.moving(),
          sensor: 'spare',
        },
      );
    }
  for (const lead of list.leads) sparePicture(list, lead);
}

/** What a good sensor gives at the plug: a contact there spoils it as before, a fault inside the old one does not. */
function sparePicture(list: TestList, { here, there }: Lead): void {
  const input = list.inputAt(there);
  if (!input) return;
  const against = input.kind === 'swing' ? `${list.module}.${input.against}` : null;
  const other = list.leads.find((one) => one.there === against);
  list.add(
    `${here}.spare-pattern`,
    'spare',
    `A good spare sensor plugged in and moved: scope at ${pin(here)} of the sensor`,
    8,
    { kind: 'pattern', plus: here, minus: other?.here ?? NEGATIVE },
    ['spare-sensor', 'scope'],
    { ...list.moving(), sensor: 'spare' },
  );
}

/** Ohms along a wire, to ground and to each other wire of the sensor, connectors off. */
export function continuityTests(list: TestList, { wire, here, there }: Lead): void {
  const name = wholeName(wire);
  // From the module's end the sensor may stay plugged in: nothing of it leads to the body.
  if (partName(there) === list.module && wire.role !== 'ground')
    list.ohms(
      `${there}.ohms-to-ground`,
      `Ohms from ${pin(there)} at the module's connector to battery negative, module unplugged`,
      there,
      NEGATIVE,
      { state: 'key-off', unplugged: [list.module] },
    );
  const near = connectorsOff(list, [there], [here]);
  if (connectorOf(there))
    list.ohms(
      `wire.${name}.ohms`,
      `Ohms of the ${spaced(name)} wire from end to end, ${offWords(list, near)}`,
      there,
      here,
      near,
    );
  list.ohms(
    `wire.${name}.ohms-to-ground`,
    `Ohms from ${pin(here)} to battery negative, ${offWords(list, near)}`,
    here,
    NEGATIVE,
    near,
  );
  for (const other of list.leads) {
    if (other.here <= here) continue;
    const far = connectorsOff(list, [there, other.there], [here, other.here]);
    list.ohms(
      `wire.${name}.ohms-to-${wholeName(other.wire)}`,
      `Ohms from ${pin(here)} to ${pin(other.here)}, ${offWords(list, far)}`,
      here,
      other.here,
      far,
    );
  }
}

/** Key off, and off the sensor's connector, those that the wires' other ends are in, and whatever electronics the meter would meet. */
function connectorsOff(list: TestList, ends: readonly TerminalId[], leads: readonly TerminalId[]) {
  const unplugged = [...new Set([...ends.flatMap((end) => connectorOf(end) ?? []), list.sensor])];
  const setup = { ...PLAIN_SETUP, state: 'key-off' as const, unplugged: unplugged.sort() };
  return apartForOhms(list.circuit, setup, leads);
}

/** The connector that a wire ends in; null where it ends at a splice or a battery post. */
function connectorOf(end: TerminalId): string | null {
  const name = partName(end);
  return name === 'splice' || name === 'battery' ? null : name;
}

/** At the sensor itself, as its kind has them. */
export function ownTests(list: TestList): void {
  const sensor = sensorOf(list.circuit);
  const at = { leads: list.leads, module: list.module };
  for (const { id, words, minutes, probe, needs, setup } of sensorKindOf(sensor).tests(sensor, at))
    list.add(id, 'signal', words, minutes, probe, needs, setup);
}

/** One that a person has named beside this sensor: what is alike at both needs no limit. */
export function besideNeighbour(
  list: TestList,
  { name, words }: Part,
  [feed]: readonly Lead[],
  ground?: Lead,
): void {
  const at = (end: 'feed' | 'ground') => `${name}.${end}`;
  const isShared = (end: 'feed' | 'ground') =>
    !list.circuit.wires.some(
      ({ from, to }) => to === at(end) && (from === NEGATIVE || from === 'battery.positive'),
    );
  if (feed && isShared('feed')) {
    list.volts(
      `${name}.feed.volts`,
      'neighbour',
      `Volts from feed at the ${words} to battery negative`,
      at('feed'),
      NEGATIVE,
    );
    list.volts(
      `${feed.here}.beside-${name}`,
      'neighbour',
      `Volts from feed at the ${words} to ${pin(feed.here)} at the sensor`,
      at('feed'),
      feed.here,
    );
  }
  if (ground && isShared('ground'))
    list.volts(
      `${ground.here}.beside-${name}`,
      'neighbour',
      `Volts from ${pin(ground.here)} at the sensor to ground at the ${words}`,
      ground.here,
      at('ground'),
    );
}

/** What the feed is without the neighbour. */
export function neighbourTests(list: TestList, part: Part, feeds: readonly Lead[]): void {
  for (const { here } of feeds)
    list.volts(
      `${here}.without-${part.name}`,
      'neighbour',
      `Volts from ${pin(here)} at the sensor to battery negative with the ${part.words} unplugged`,
      here,
      NEGATIVE,
      { unplugged: [part.name] },
      [],
      3,
    );
}

/** Eyes and fingers, wherever there is something to see. */
export function inspections(list: TestList): void {
  const look = (of: string, words: string, minutes: number) =>
    list.add(`${of}.inspection`, 'inspection', words, minutes, { kind: 'inspect', of }, ['eyes'], {
      state: 'key-off',
    });
  for (const { part, words, pins } of list.circuit.connectors) {
    const neighbour = list.circuit.parts.some(
      (one) => one.name === part && one.kind === 'neighbour',
    );
    if (pins.length > 0 && !neighbour)
      look(
        `connector.${part}`,
        `Look at ${words}: pins, crimps, corrosion, seals`,
        part === list.module ? 4 : 2,
      );
  }
  look('harness', 'Look along the harness: chafing, heat, earlier repairs', 6);
  const { target } = list.circuit;
  if (!target) return;
  look('target', `Look at the wheel at the ${target.at}: teeth, seat, gap`, 8);
  if (hasMarks(list.circuit))
    // As long as the look at the wheel, whose cover hides them too; belt or chain may take more. Common practice, no source.
    look(
      MARKS,
      `Turn the engine by hand to the maker's marks: do the ${target.at} and its wheel stand where they should`,
      8,
    );
  if (target.ring === undefined) return;
  look('target.seat', `Look at the seat of the ${list.sensor}: rust, dirt, metal on its tip`, 6);
  look('target.ring', `A magnet card along the ring at the ${target.at}, all the way round`, 8);
  look('target.turning', `Turn the ${target.at} by hand: play, run-out, noise`, 3);
}

/** Of a section the name of the whole wire, which runs from end to end. */
function wholeName({ name, of }: Wire): string {
  return of ?? name;
}

function offWords(
  list: TestList,
  { unplugged }: { readonly unplugged: readonly string[] },
): string {
  const others = list.circuit.parts.filter(
    ({ kind, name }) => kind === 'neighbour' && unplugged.includes(name),
  );
  const own = unplugged.length - others.length;
  const said =
    own === 1 ? 'sensor unplugged' : own === 2 ? 'both connectors off' : 'all connectors off';
  const too = others.map(({ words }) => `the ${words}`).join(' and ');
  return others.length === 0 ? said : `${said}, ${too} too`;
}
