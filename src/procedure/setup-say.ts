/**
 * What a step's setup asks of the hands, in the words of its text: plugs, what is clipped in, the key, where the leads
 * go. The proof checks the setup and the technician obeys the text, so this part of the text is made of the setup; what
 * the author says beside it must not say otherwise.
 */
import type { Circuit } from '../circuit/circuit.ts';
import { instrumentOf } from '../circuit/instruments.ts';
import { leads } from '../circuit/refuse-test.ts';
import { isNumberProbe } from '../circuit/shown-by.ts';
import type { Bridge, Probe, Setup, TerminalId } from '../circuit/test.ts';
import { andWords } from './draw-graph.ts';
import { fitWords, thingWords } from './test-words.ts';

/**
 * The sentences for a setup and what is read in it, terminals as `{places}`; empty where nothing is arranged or read.
 * What `stands` of the test before is not said again.
 */
export function setupSay(
  setup: Setup,
  probe: Probe | null,
  circuit: Circuit | null,
  stands: Setup | null = null,
): string {
  if (probe?.kind === 'inspect') return '';
  const isArranged = setup.unplugged.length > 0 || setup.bridges.length > 0;
  if (probe === null && !isArranged) return '';
  const isOff =
    stands !== null &&
    setup.unplugged.length > 0 &&
    setup.sensor === stands.sensor &&
    setup.unplugged.join() === stands.unplugged.join();
  const clipped = new Set(stands?.bridges.map(bridgeSay));
  const clips = setup.bridges.map(bridgeSay).filter((say) => !clipped.has(say));
  const isKeyTurned = !isOff || stands.state !== 'key-on';
  return [
    isOff ? sideSay(touched(setup, probe), setup.unplugged).trim() : plugSay(setup, probe, circuit),
    ...clips.map((say) => `Clip a ${say}.`),
    setup.state === 'key-on' && isArranged && isKeyTurned ? 'Key on.' : '',
    probe === null ? '' : leadSay(probe),
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** The same for what a question has its person watch: one round for each place of the leads, live data beside all of them. */
export function watchSay(setup: Setup, watched: readonly Probe[], circuit: Circuit | null): string {
  const [first] = watched;
  if (first === undefined) return '';
  const before = setupSay(setup, first, circuit).slice(0, -leadSay(first).length).trim();
  const leads = watched
    .filter(({ kind }) => kind !== 'counts')
    .map((probe, index, all) => (index === 0 ? leadSay(probe) : roundSay(probe, all[index - 1]!)));
  const live = watched.flatMap((probe) => (probe.kind === 'counts' ? [`{${probe.input}}`] : []));
  return [
    before,
    ...leads.map((say, index) => (index === 0 ? say : `Round ${index + 1}: ${say}`)),
    live.length === 0
      ? ''
      : `${leads.length === 0 ? 'Watch' : 'Also watch'} the live data of ${andWords(live)}.`,
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}

/** Where the leads go next; of the same instrument in fewer words. */
function roundSay(probe: Probe, before: Probe): string {
  if (probe.kind !== before.kind || !isNumberProbe(probe)) return leadSay(probe);
  return `red {${probe.plus}}, black {${probe.minus}}.`;
}

/** What comes off, and which half of its plug is meant. */
function plugSay(setup: Setup, probe: Probe | null, circuit: Circuit | null): string {
  const { unplugged, sensor, state } = setup;
  // A good sensor is plugged in by the author's words: which one, and how it is seated.
  if (sensor === 'spare') return '';
  if (unplugged.length === 0) {
    const key = state === 'key-off' ? ', key off' : state === 'key-on' ? ', key on' : '';
    return `All plugged in${setup.bridges.length > 0 ? '' : key}.`;
  }
  const kinds = unplugged.map((name) => circuit?.parts.find((part) => part.name === name)?.kind);
  const sleep = kinds.includes('module') ? ' wait until the module sleeps,' : '';
  const names = andWords(unplugged.map((name) => `the ${thingWords(name, circuit)}`));
  return `Key off,${sleep} unplug ${names}.${sideSay(touched(setup, probe), unplugged)}`;
}

/** Where a plug is off there are two places of each terminal. */
function sideSay(terminals: readonly TerminalId[], unplugged: readonly string[]): string {
  const open = terminals.filter((id) => unplugged.includes(id.split('.')[0]!));
  if (open.length === 0) return '';
  return open.every((id) => id.endsWith('.pin'))
    ? " Test at the component's own pins."
    : ' Test at the open harness connector.';
}

function bridgeSay({ from, to, through }: Bridge): string {
  const what =
    typeof through === 'string' ? BRIDGE_WORDS[through] : `${fitWords(through.ohms)} resistor`;
  return `${what} from {${from}} to {${to}}`;
}
const BRIDGE_WORDS = {
  lead: 'plain lead',
  'test-light': 'LED test light',
  lamp: 'filament test lamp',
} as const;

/** Which lead goes where. */
function leadSay(probe: Probe): string {
  return instrumentOf(probe).words.say(probe, (place) => `{${place}}`);
}

/** Terminals that a lead or a bridge is put to. */
export function touched({ bridges }: Setup, probe: Probe | null): readonly TerminalId[] {
  const ends = probe === null ? [] : leads(probe);
  return [...ends, ...bridges.flatMap(({ from, to }) => [from, to])];
}
