/** A test in the words of a report: where the leads are, how the vehicle stands, which instrument looks. */
import type { Circuit } from '../circuit/circuit.ts';
import { LOOK_WORDS } from '../circuit/look-words.ts';
import type { Look, Probe, Setup, VehicleState } from '../circuit/test.ts';
import { formatRange } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import { terminalWords } from './bind-text.ts';
import type { Job } from './job.ts';
import { type ExpectedRange, endsOf, type Step } from './procedure.ts';

const STATE_WORDS: Readonly<Record<VehicleState, string>> = {
  'key-off': 'key off',
  'key-on': 'key on, engine off',
  cranking: 'engine cranking',
  running: 'engine running',
};

/** Where the instrument looks, with the pins and colours of the job; empty when nothing is probed. */
export function whereWords(probe: Probe | null, job: Job, circuit: Circuit | null): string {
  if (probe === null) return '';
  switch (probe.kind) {
    case 'counts':
      return `live data of ${terminalWords(probe.input, job, circuit)}`;
    case 'inspect':
      return thingWords(probe.of, circuit);
    default: {
      const plus = terminalWords(probe.plus, job, circuit);
      return `${plus} to ${terminalWords(probe.minus, job, circuit)}`;
    }
  }
}

/** Where a step of the tree looks. */
export function stepWhere(step: Step, job: Job, circuit: Circuit | null): string {
  return step.kind === 'measure' || step.kind === 'look'
    ? whereWords(step.probe, job, circuit)
    : '';
}

/** `key on, engine off; sensor unplugged; lead from … to …`. */
export function setupWords(setup: Setup, job: Job, circuit: Circuit | null): string {
  const words: string[] = [STATE_WORDS[setup.state] ?? setup.state];
  for (const part of setup.unplugged) words.push(`${thingWords(part, circuit)} unplugged`);
  for (const { from, to, through } of setup.bridges) {
    const what =
      typeof through === 'string' ? through.replace('-', ' ') : `${through.ohms} ohm resistor`;
    words.push(
      `${what} from ${terminalWords(from, job, circuit)} to ${terminalWords(to, job, circuit)}`,
    );
  }
  if (setup.sensor === 'spare') words.push('known-good sensor plugged in');
  if (setup.target === 'moving') words.push('target moving');
  return words.join('; ');
}

/** The instrument of a look or a question; readings carry their own. */
export function instrumentWords(probe: Probe | null): string {
  switch (probe?.kind) {
    case undefined:
      return '';
    case 'volts':
    case 'ohms':
      return 'meter';
    case 'light':
      return 'LED test light';
    case 'lamp':
      return 'filament test lamp';
    case 'pattern':
      return 'scope';
    case 'timing':
      return 'scope, two channels';
    case 'counts':
      return 'live data';
    case 'inspect':
      return 'eyes and fingers';
  }
}

/** A look as people say it; a look of a later version by its name. */
export function lookWords(look: Look): string {
  return LOOK_WORDS[look] ?? look.replace('-', ' ');
}

/** What is expected of a reading: `4.88 to 5.12 V`; an ohmmeter shows `OL` for what lies above all its ranges. */
export function expectedRangeWords(expected: ExpectedRange, unit: Unit): string {
  const { low, high } = endsOf(expected);
  const range = formatRange(low, high, unit);
  return unit === 'ohm' && low > 0 && high === Number.POSITIVE_INFINITY ? `OL or ${range}` : range;
}

/** A part or a connector in the circuit's words; `wire.signal` as "signal wire". */
function thingWords(name: string, circuit: Circuit | null): string {
  const [kind, ...rest] = name.split('.');
  const inner = rest.join(' ').replace(/-/g, ' ');
  if (kind === 'connector' && inner !== '') {
    const connector = circuit?.connectors.find(({ part }) => part === rest.join('.'));
    return connector?.words ?? `${inner} connector`;
  }
  if (kind === 'wire' && inner !== '') return `${inner} wire`;
  const part = circuit?.parts.find((one) => one.name === name);
  return part?.words ?? name.replace(/[.-]/g, ' ');
}
