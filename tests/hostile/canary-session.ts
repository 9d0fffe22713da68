/** A session in which every text that a person or a file can give carries orders to a terminal. */
import type { Job } from '../../src/procedure/job.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { SessionOpened } from '../../src/session/events.ts';
import { opened, STILL_TREE } from '../session/sample-tree.ts';

/** Cursor, clipboard, title, bell, eight-bit order, overriding direction, invisible signs; recognisable by 4711. */
export const CANARY =
  'CANARY \u001b[4711;1H \u001b]52;c;NDcxMQ==\u0007 \u001b]0;4711\u001b\\ \u009b4711m \u009d0;4711\u009c ' +
  '\u202e4711\u2066 \u200b\u00ad\u{e0041} \b\r\u000b\u007f END';

type Told = (where: string) => string;

function filled(step: Step, told: Told): Step {
  const common = { ...step, title: told('title'), say: told('say') };
  if (common.kind === 'conclude')
    return { ...common, repair: told('repair'), customer: told('customer') };
  const cautions = common.cautions.map((caution) => ({ ...caution, say: told('caution') }));
  const task = { ...common, why: told('why'), cautions };
  if (task.kind === 'act') return task;
  const words = { words: told('outcome') };
  if (task.kind === 'measure')
    return { ...task, outcomes: task.outcomes.map((one) => ({ ...one, ...words })) };
  if (task.kind === 'look')
    return { ...task, outcomes: task.outcomes.map((one) => ({ ...one, ...words })) };
  return { ...task, outcomes: task.outcomes.map((one) => ({ ...one, ...words })) };
}

const jobOf = (told: Told): Job => ({
  name: 'canary',
  complaint: told('complaint'),
  codes: ['P0335', told('code')],
  vehicle: {
    words: told('vehicle'),
    vin: told('vin'),
    plate: told('plate'),
    odometer: told('odometer'),
    drive: 'combustion',
  },
  order: told('order'),
  customer: told('customer'),
  earlierRepairs: [{ words: told('repaired'), part: null }],
  circumstances: {
    failsWithIt: told('fails with it'),
    recentWork: told('recent work'),
    seen: told('seen'),
    freezeFrame: [told('freeze frame')],
  },
  terminals: { 'sensor.feed': { pin: told('pin'), colour: told('colour') } },
  notes: told('notes'),
});

const procedureOf = (told: Told): Procedure => ({
  ...STILL_TREE,
  title: told('procedure'),
  about: told('about'),
  codes: [told('code')],
  steps: Object.fromEntries(
    Object.entries(STILL_TREE.steps).map(([id, step]) => [id, filled(step, told)]),
  ),
});

/** The first event of a session in which every text of a person or a file ends with this one. */
export function canarySession(text: string = CANARY): SessionOpened {
  const told = (where: string) => `${where} ${text}`;
  const person = { person: told('person'), shop: told('shop'), program: told('program') };
  return { ...opened(), ...person, job: jobOf(told), procedure: procedureOf(told) };
}

const OWN_SEQUENCES = /\u001b\[[?\d;]*[A-Za-z]/g;
const ORDERS =
  /\u001b|[\u0000-\u0009\u000b-\u001f\u007f-\u009f]|\p{Cf}|\p{Zl}|\p{Zp}|\p{Cs}|\p{Co}|\p{Cn}/u;

/** What a terminal would obey in plain output, with its surroundings; null when there is nothing. */
export function orderIn(output: string): string | null {
  const at = output.search(ORDERS);
  return at < 0 ? null : JSON.stringify(output.slice(Math.max(0, at - 60), at + 30));
}

/** The same for a screen's output, which is made of orders: those that no screen of ours gives. */
export function orderInScreen(raw: string): string | null {
  const foreign = /\u001b\[[^A-Za-z]*4711/.exec(raw);
  if (foreign) return JSON.stringify(foreign[0]);
  return orderIn(raw.replace(OWN_SEQUENCES, '').replaceAll('\r\n', '\n').replaceAll('\r', ''));
}
