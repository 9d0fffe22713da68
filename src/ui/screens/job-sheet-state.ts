/** The job sheet: fields to a job and back. No React. */
import type { Circuit } from '../../circuit/circuit.ts';
import { checkVin } from '../../identify/check-vin.ts';
import { readCode } from '../../identify/trouble-code.ts';
import { DRIVES, type Drive, type Job, type JobTerminal } from '../../procedure/job.ts';
import { placeExamples, placeProblem } from '../../procedure/place-sensor.ts';
import { HARNESS_HINT, harnessSaid, harnessText } from '../../procedure/read-harness.ts';
import { SHARES_HINT, sharesSaid, sharesText } from '../../procedure/read-neighbours.ts';
import { type Replaceable, replaceablesOf } from '../../procedure/read-repair.ts';
import { readTerminal, terminalRemark } from '../../procedure/read-terminal.ts';
import { readStatedEdges, STATED_FORM } from '../../waveform/stated-edges.ts';
import {
  type Form,
  fieldChoice,
  fieldText,
  type TextInput,
  textInput,
} from '../parts/form-state.ts';
import {
  BATTERY_KEY,
  batteryField,
  batteryKnown,
  batteryProblem,
  isBattery,
} from './battery-field.ts';
import { codesRemark, codesSaid, codesText, codesTyped } from './codes-field.ts';
import { harnessRemark, harnessWrong } from './harness-field.ts';
import { KNOWN_HINT, knownRemark, knownSaid, knownText, knownWrong } from './known-field.ts';
import {
  circuitHere,
  POSITION_KEY,
  SHARES_KEY,
  TERMINAL_KEY,
  type Terminals,
  withPins,
} from './pin-fields.ts';
import { isOfRepair, repairFields, repairRemark, repairsIn } from './repair-fields.ts';
import { sharesRemark, sharesWrong } from './shares-field.ts';
import {
  circumstancesOf,
  HAPPENS_KEY,
  happensProblem,
  toldFields,
  toldRemark,
} from './told-fields.ts';

const KNOWN_KEY = 'known';
const HARNESS_KEY = 'harness';
const STANDS_KEY = 'stands';

/** An empty sheet, or one that holds a ready-made job. Without a circuit nothing can be known of it. */
export function jobSheet(
  job: Job,
  terminals: Terminals,
  circuit: Circuit | null = null,
  parts: readonly Replaceable[] = circuit ? replaceablesOf(circuit) : [],
): Form {
  const { vehicle } = job;
  const sheet: Form = {
    at: 0,
    fields: [
      textInput(
        'complaint',
        'Complaint',
        job.complaint,
        'What the customer says, in their own words. The only required field.',
      ),
      textInput(
        'codes',
        'Trouble codes',
        codesText(job),
        'Separated by spaces, each followed by stored, pending or history: P0365 stored, P0369 pending.',
      ),
      ...repairFields(job, parts),
      ...toldFields(job),
      ...(circuit
        ? [textInput(SHARES_KEY, 'What shares its wiring', sharesText(job.shares), SHARES_HINT)]
        : []),
      ...(circuit ? knownFields(job) : []),
      textInput(
        'vehicle',
        'Vehicle',
        vehicle.words,
        'Make, model, year, engine: as you would tell a colleague.',
      ),
      textInput('vin', 'VIN', vehicle.vin, 'Seventeen characters; the check digit is checked.'),
      textInput('plate', 'Number plate', vehicle.plate, ''),
      textInput('odometer', 'Odometer', vehicle.odometer, 'With its unit, for example 143 200 km.'),
      {
        kind: 'choice',
        key: 'drive',
        label: 'Drive',
        hint: 'Left or Right changes it. Hybrid, electric and not stated add the high-voltage cautions.',
        options: DRIVES.map(driveWords),
        chosen: Math.max(0, DRIVES.indexOf(vehicle.drive)),
      },
      textInput('order', 'Order number', job.order, ''),
      textInput('customer', 'Customer', job.customer, ''),
      ...(circuit
        ? [textInput(HARNESS_KEY, 'Its harness', harnessText(job.harness ?? []), HARNESS_HINT)]
        : []),
      textInput('notes', 'Notes', job.notes, ''),
      ...positionField(job, circuit),
      ...standsField(job, circuit),
    ],
  };
  return withPins(sheet, terminals, circuit, job);
}

/** Which sensor it is; not asked where there is but one. */
function positionField({ position = '' }: Job, circuit: Circuit | null): TextInput[] {
  const examples = circuit && placeExamples(circuit);
  if (!examples) return [];
  const hint = `Only if the trouble codes do not say, for example: ${examples}.`;
  return [textInput(POSITION_KEY, 'Position of the sensor', position, hint)];
}

/** Where the edges stand, which a capture is judged by; asked where something turns with the crankshaft. */
function standsField({ stands = '' }: Job, circuit: Circuit | null): TextInput[] {
  if (!circuit?.target || circuit.target.turns === 0) return [];
  const hint = `The maker's edge positions in one turn of the other signal: ${STATED_FORM}.`;
  return [textInput(STANDS_KEY, "Maker's edges", stands, hint)];
}

/** The battery has a field of its own. */
function knownFields(job: Job): TextInput[] {
  const rest = (job.known ?? []).filter((said) => !isBattery(said));
  return [
    batteryField(job),
    textInput(KNOWN_KEY, 'Known about this car', knownText(rest), KNOWN_HINT),
  ];
}

/** The job on the sheet; `parts` are those of the circuit that can have been replaced. */
export function jobOf(
  sheet: Form,
  job: Job,
  parts: readonly Replaceable[],
  circuit: Circuit | null = null,
): Job {
  const terminals: Record<string, JobTerminal> = {};
  for (const id of terminalIds(sheet)) {
    const terminal = readTerminal(fieldText(sheet, `${TERMINAL_KEY}${id}`));
    if (terminal) terminals[id] = terminal;
  }
  return {
    name: job.name,
    complaint: fieldText(sheet, 'complaint'),
    ...codesSaid(fieldText(sheet, 'codes')),
    vehicle: {
      words: fieldText(sheet, 'vehicle'),
      vin: fieldText(sheet, 'vin'),
      plate: fieldText(sheet, 'plate'),
      odometer: fieldText(sheet, 'odometer'),
      drive: DRIVES.find((one) => driveWords(one) === fieldChoice(sheet, 'drive')) ?? 'not-stated',
    },
    order: fieldText(sheet, 'order'),
    customer: fieldText(sheet, 'customer'),
    earlierRepairs: repairsIn(sheet, partsHere(sheet, parts, circuit)),
    ...circumstancesOf(sheet),
    terminals,
    ...knownOf(sheet, job),
    ...harnessOf(sheet, job),
    ...sharesOf(sheet, job),
    ...positionOf(sheet, job),
    ...standsOf(sheet, job),
    notes: fieldText(sheet, 'notes'),
  };
}

/** As the other fields say it: `not stated`. */
function driveWords(drive: Drive): string {
  return drive === 'not-stated' ? 'not stated' : drive;
}

/** The parts as they are called where codes and position of the sheet put the sensor. */
function partsHere(
  sheet: Form,
  parts: readonly Replaceable[],
  circuit: Circuit | null,
): readonly Replaceable[] {
  return circuit ? replaceablesOf(circuitHere(sheet, circuit)) : parts;
}

/** Where the sheet has no such field, what the job had stays. */
function positionOf(sheet: Form, job: Job): Pick<Job, 'position'> {
  const isAsked = sheet.fields.some(({ key }) => key === POSITION_KEY);
  const position = isAsked ? fieldText(sheet, POSITION_KEY).toLowerCase() : (job.position ?? '');
  return position === '' ? {} : { position };
}

/** Where the sheet has no such field, what the job had stays. */
function standsOf(sheet: Form, job: Job): Pick<Job, 'stands'> {
  const isAsked = sheet.fields.some(({ key }) => key === STANDS_KEY);
  const stands = isAsked ? fieldText(sheet, STANDS_KEY) : (job.stands ?? '');
  return stands === '' ? {} : { stands };
}

/** Where the sheet has no such field, what the job had stays. */
function knownOf(sheet: Form, job: Job): Pick<Job, 'known'> {
  const isAsked = sheet.fields.some(({ key }) => key === KNOWN_KEY);
  const known = isAsked
    ? [...batteryKnown(fieldText(sheet, BATTERY_KEY)), ...knownSaid(fieldText(sheet, KNOWN_KEY))]
    : (job.known ?? []);
  return known.length === 0 ? {} : { known };
}

/** Where the sheet has no such field, what the job had stays. */
function harnessOf(sheet: Form, job: Job): Pick<Job, 'harness'> {
  const isAsked = sheet.fields.some(({ key }) => key === HARNESS_KEY);
  const harness = isAsked ? harnessSaid(fieldText(sheet, HARNESS_KEY)) : (job.harness ?? []);
  return harness.length === 0 ? {} : { harness };
}

/** Where the sheet has no such field, what the job had stays. */
function sharesOf(sheet: Form, job: Job): Pick<Job, 'shares'> {
  const isAsked = sheet.fields.some(({ key }) => key === SHARES_KEY);
  const shares = isAsked ? sharesSaid(fieldText(sheet, SHARES_KEY)) : job.shares;
  return shares ? { shares } : {};
}

function terminalIds(sheet: Form): string[] {
  return sheet.fields
    .filter(({ key }) => key.startsWith(TERMINAL_KEY))
    .map(({ key }) => key.slice(TERMINAL_KEY.length));
}

/** What to say about the field being filled in: what was understood, or what is odd. Null to show its hint. */
export function jobRemark(
  sheet: Form,
  parts: readonly Replaceable[],
  circuit: Circuit | null = null,
): string | null {
  const field = sheet.fields[sheet.at];
  if (!field) return null;
  if (isOfRepair(field.key)) return repairRemark(sheet, partsHere(sheet, parts, circuit));
  const text = fieldText(sheet, field.key);
  if (text === '') return null;
  if (field.key === 'codes') return codesRemark(text);
  if (field.key === 'vin') {
    const vin = checkVin(text);
    return vin.status === 'read' ? vin.words : `${vin.words}; ${vin.fix}`;
  }
  if (field.key === BATTERY_KEY && circuit) return batteryProblem(text, circuit);
  if (field.key === KNOWN_KEY && circuit) return knownRemark(text, circuit);
  if (field.key === HARNESS_KEY && circuit) return harnessRemark(text, circuit);
  if (field.key === SHARES_KEY && circuit) return sharesRemark(text, circuit);
  if (field.key.startsWith(TERMINAL_KEY)) return terminalRemark(text).words;
  return toldRemark(sheet, field.key, circuit);
}

/** Something on the sheet that may be a mistake, and its place in the fields. */
export interface Doubt {
  readonly at: number;
  readonly words: string;
}

/** What is doubtful on the sheet; it may well be right, so it keeps nobody from beginning. */
export function jobDoubts(sheet: Form): Doubt[] {
  return sheet.fields.flatMap(({ key, label }, at) => {
    const text = fieldText(sheet, key);
    return text === ''
      ? []
      : doubtsOf(key, text).map((words) => ({ at, words: `${label}: ${words}` }));
  });
}

function doubtsOf(key: string, text: string): string[] {
  if (key === 'codes')
    return codesTyped(text).flatMap((code) => {
      const read = readCode(code);
      return read.status === 'refused' ? [`${code}: ${read.words}; ${read.fix}.`] : [];
    });
  if (key === 'vin') {
    const vin = checkVin(text);
    if (vin.status === 'refused') return [`${vin.words}; ${vin.fix}.`];
    const { agrees, binding } = vin.check;
    return agrees || !binding ? [] : [`${vin.words}.`];
  }
  const terminal = key.startsWith(TERMINAL_KEY) ? terminalRemark(text) : null;
  return terminal?.doubtful ? [terminal.words] : [];
}

/** Where and why what is said of this car cannot be taken; null where it can, and where nothing is said. */
export function fieldProblem(sheet: Form, circuit: Circuit | null): Doubt | null {
  const happens = happensProblem(fieldText(sheet, HAPPENS_KEY));
  if (happens !== null) return { at: placeIn(sheet, HAPPENS_KEY), words: happens };
  const battery = circuit && batteryProblem(fieldText(sheet, BATTERY_KEY), circuit);
  if (battery) return { at: placeIn(sheet, BATTERY_KEY), words: battery };
  const known = circuit && knownWrong(fieldText(sheet, KNOWN_KEY), circuit);
  if (known) return { at: placeIn(sheet, KNOWN_KEY), words: known };
  const harness = circuit && harnessWrong(fieldText(sheet, HARNESS_KEY), circuit);
  if (harness) return { at: placeIn(sheet, HARNESS_KEY), words: harness };
  const shares = circuit && sharesWrong(fieldText(sheet, SHARES_KEY), circuit);
  if (shares) return { at: placeIn(sheet, SHARES_KEY), words: shares };
  const stands = fieldText(sheet, STANDS_KEY);
  if (stands !== '' && !readStatedEdges(stands))
    return {
      at: placeIn(sheet, STANDS_KEY),
      words: `Maker's edges: this is not understood; write it as "${STATED_FORM}".`,
    };
  const position = fieldText(sheet, POSITION_KEY).toLowerCase();
  const words = position === '' ? null : placeProblem({ position }, circuit);
  return words === null ? null : { at: placeIn(sheet, POSITION_KEY), words };
}

function placeIn(sheet: Form, wanted: string): number {
  return sheet.fields.findIndex(({ key }) => key === wanted);
}

/** Why the sheet cannot be taken yet, or null. */
export function jobProblem(sheet: Form): string | null {
  return fieldText(sheet, 'complaint') === ''
    ? 'Enter the complaint first: without it nobody will know later what this was about.'
    : null;
}
