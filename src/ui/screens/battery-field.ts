/**
 * The field of the job sheet for the battery, which is measured before anything else. It is one of the values that are
 * known of a car, in fewer words. No React.
 */
import type { Circuit } from '../../circuit/circuit.ts';
import { readKnown } from '../../circuit/known-values.ts';
import type { Job, KnownSaid } from '../../procedure/job.ts';
import { BATTERY_CALLED, MEASURED } from '../../session/sheet-reading.ts';
import { type TextInput, textInput } from '../parts/form-state.ts';

export const BATTERY_KEY = 'battery';

/** How the battery stands, and what the circuit calls its voltage then. */
const STATES = [
  ['at rest', BATTERY_CALLED['key-on']],
  ['cranking', BATTERY_CALLED.cranking],
  ['running', BATTERY_CALLED.running],
] as const;
const SAID =
  /^(\d{1,3}(?:[.,]\d{1,3})?) ?v?(?:olts?)? ?(at rest|rest|key on|on a charger|charger|cranking|running)?$/i;

/** With what the job knows of it. */
export function batteryField({ known = [] }: Job): TextInput {
  const said = known.filter(isBattery).map(({ what, is }) => `${is} ${stateOf(what)}`);
  return textInput(
    BATTERY_KEY,
    'Battery volts',
    said.join(', '),
    'At rest (key on, or on a charger), cranking or running: 12.4 V at rest, 10.1 V cranking.',
  );
}

function stateOf(what: string): string {
  return STATES.find(([, words]) => words === what)?.[0] ?? '';
}

/** Whether a sentence about the car is one of this field. */
export function isBattery({ what, is, from }: KnownSaid): boolean {
  return stateOf(what) !== '' && from === MEASURED && SAID.test(is);
}

/** `12.4 V at rest, 10.1 V cranking` as what is known of the car; what is no such voltage is left out. */
export function batteryKnown(text: string): KnownSaid[] {
  return partsOf(text).flatMap((part) => partKnown(part) ?? []);
}

function partKnown(part: string): KnownSaid | null {
  const [, volts, said = 'at rest'] = SAID.exec(part) ?? [];
  if (volts === undefined) return null;
  const what = STATES.find(([state]) => state === said.toLowerCase())?.[1] ?? STATES[0][1];
  return { what, is: `${volts.replace(',', '.')} V`, from: MEASURED };
}

function partsOf(text: string): string[] {
  return text
    .split(/;|,(?!\d)/)
    .map((one) => one.trim())
    .filter((one) => one !== '');
}

/** Why the field cannot be taken, or null. */
export function batteryProblem(text: string, circuit: Circuit): string | null {
  for (const part of partsOf(text)) {
    const said = partKnown(part);
    if (!said)
      return `"${part}" is not a battery voltage: write it as 12.4 V at rest, 10.1 V cranking or 14.2 V running.`;
    const read = readKnown(circuit, said.what, said.is);
    if (!read.ok) return `"${part}": ${read.words}; ${read.fix}.`;
  }
  return null;
}
