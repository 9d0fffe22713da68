/**
 * Tests at the connectors and splices of this car's harness. Along one wire they halve what is suspected: the drop under
 * load up to a joint tells on which side of it an open or a bad joint lies, ohms with it open on which side a short.
 */
import { type JointPart, partName } from './circuit.ts';
import { acrossJoint, endWords, type Passed, wayFrom, wireWords } from './joints.ts';
import type { Bridge, Setup, TerminalId } from './test.ts';
import { type Lead, NEGATIVE, POSITIVE, pin, type TestFamily, type TestList } from './test-list.ts';

/** Of each wire, at each joint on its way; `pull` is what loads a signal wire from the sensor's connector. */
export function jointTests(list: TestList, lead: Lead, pull: Bridge | null): void {
  const { passed } = wayFrom(list.circuit, lead.wire, lead.here);
  for (const one of passed) {
    underLoad(list, lead, one, pull);
    if (!one.joint.splice) testsApart(list, lead, one);
  }
}

/** How much of what the load draws is lost up to the joint, and in its contact. */
function underLoad(
  list: TestList,
  lead: Lead,
  { joint, near, far }: Passed,
  pull: Bridge | null,
): void {
  const { here, wire } = lead;
  const at = `${pin(near)} at the ${joint.words}`;
  const off = { unplugged: [list.sensor] };
  const family = FAMILY[wire.role];
  if (wire.role !== 'ground') {
    list.volts(`${near}.volts`, family, `Volts from ${at} to battery negative`, near, NEGATIVE);
    list.volts(
      `${near}.open-volts`,
      family,
      `Volts from ${at} to battery negative, sensor unplugged`,
      near,
      NEGATIVE,
      off,
    );
    list.volts(
      `${far}.open-volts`,
      family,
      `Volts from ${at}, far side, to battery negative, sensor unplugged`,
      far,
      NEGATIVE,
      off,
    );
  }
  const load = loadOf(lead, pull);
  if (!load) return;
  const { bridge, words, need } = load;
  const loaded: Partial<Setup> = { ...off, bridges: [bridge] };
  const add = (id: string, what: string, plus: TerminalId, minus: TerminalId) =>
    list.volts(
      `${near}.${id}`,
      family,
      `${what}, with ${words}, sensor unplugged`,
      plus,
      minus,
      loaded,
      [need],
    );
  add('loaded', `Volts from ${at} to battery negative`, near, NEGATIVE);
  const drop = `Voltage drop of the ${pin(near)} wire`;
  const parts = list.circuit.parts;
  add('drop', `${drop} from the ${joint.words} to ${endWords(parts, here)}`, near, here);
  add('contact-drop', `${drop} across the ${joint.words}`, far, near);
}

function loadOf(
  { here, wire }: Lead,
  pull: Bridge | null,
): {
  readonly bridge: Bridge;
  readonly words: string;
  readonly need: 'test-light' | 'resistor';
} | null {
  const light = 'the LED light';
  if (wire.role === 'ground')
    return {
      bridge: { from: POSITIVE, to: here, through: 'test-light' },
      words: `${light} as load from battery positive`,
      need: 'test-light',
    };
  if (wire.role !== 'signal')
    return {
      bridge: { from: here, to: NEGATIVE, through: 'test-light' },
      words: `${light} as load`,
      need: 'test-light',
    };
  if (!pull || typeof pull.through !== 'object') return null;
  return {
    bridge: pull,
    words: `${pull.through.ohms} ohm at the sensor's connector`,
    need: 'resistor',
  };
}

/** With the joint open either side stands by itself: what still touches something is on the side that is looked at. */
function testsApart(
  list: TestList,
  { here, there, wire }: Lead,
  { joint, near, far }: Passed,
): void {
  const { sections } = wayFrom(list.circuit, wire, here);
  const at = sections.findIndex(({ from, to }) => [from, to].includes(near));
  const beyond = sections.slice(at + 1);
  const unplugged = [joint.name, list.sensor];
  const apart = { state: 'key-off' as const, unplugged };
  const say = pin(near);
  list.ohms(
    `${near}.ohms-to-ground`,
    `Ohms from ${say} at the sensor's connector to battery negative, sensor and the ${joint.words} apart`,
    here,
    NEGATIVE,
    apart,
  );
  if (at === 0)
    list.ohms(
      `${near}.ohms`,
      `Ohms of ${wireWords(sections[0]!, list.circuit)}, both apart`,
      here,
      near,
      apart,
    );
  const end = partName(there);
  const last = beyond.at(-1);
  if (!last || end === 'splice' || end === 'battery') return;
  const others: readonly JointPart[] = wayFrom(list.circuit, wire, here).passed.map(
    (one) => one.joint,
  );
  if (joint !== others.at(-1)) return;
  const alone = { state: 'key-off' as const, unplugged: [joint.name, end] };
  list.ohms(
    `${near}.far-ohms`,
    `Ohms of ${wireWords(last, list.circuit)}, both apart`,
    there,
    far,
    alone,
  );
  list.ohms(
    `${near}.far-ohms-to-ground`,
    `Ohms from ${say} at the ${joint.words}, far side, to battery negative, both ends apart`,
    acrossJoint(near),
    NEGATIVE,
    alone,
  );
}

const FAMILY: Readonly<Record<Lead['wire']['role'], TestFamily>> = {
  supply: 'reference',
  reference: 'reference',
  ground: 'ground',
  signal: 'signal',
};
