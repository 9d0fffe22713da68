/**
 * The fields of the job sheet that ask for pins and wire colours, as this car has them: called after the place where codes
 * and position put the sensor, and of neighbours only those that are named as sharing something. No React.
 */
import type { Circuit } from '../../circuit/circuit.ts';
import { isOnlyOf } from '../../circuit/with-neighbours.ts';
import { emptyJob, type Job, type JobTerminal } from '../../procedure/job.ts';
import { atPlaceOf } from '../../procedure/place-sensor.ts';
import { neighbourOf, sharesSaid } from '../../procedure/read-neighbours.ts';
import { type Form, fieldText, type TextInput, textInput } from '../parts/form-state.ts';
import { codesSaid } from './codes-field.ts';

/** Before the id of a terminal in the key of its field. */
export const TERMINAL_KEY = 'terminal ';
/** Key of the field for the place of the sensor. */
export const POSITION_KEY = 'position';
/** Key of the field for what shares with the sensor. */
export const SHARES_KEY = 'shares';

/** Terminals that the wiring diagram gives a pin and a colour. */
export type Terminals = readonly { readonly id: string; readonly words: string }[];

/** The sheet with the fields for these pins as the rest of it has them; what was typed into one stays. */
export function withPins(
  sheet: Form,
  terminals: Terminals,
  circuit: Circuit | null,
  job: Pick<Job, 'terminals'>,
): Form {
  const here = circuit && circuitHere(sheet, circuit);
  const unnamed = here ? unnamedIn(sheet, here) : [];
  const current = sheet.fields[sheet.at];
  const known = new Map(sheet.fields.map((field) => [field.key, field]));
  const pins = terminals.flatMap(({ id, words }): TextInput[] => {
    const field = known.get(`${TERMINAL_KEY}${id}`);
    const said = here?.terminals.find((one) => one.id === id)?.words ?? words;
    const typed = field?.kind === 'text' ? field.field : null;
    const made = pinField(id, said, job.terminals[id]);
    const isAsked =
      (field !== undefined && field === current) ||
      (typed ?? made.field).text !== '' ||
      !here ||
      !isOnlyOf(id, unnamed, here);
    return isAsked ? [typed ? { ...made, field: typed } : made] : [];
  });
  const rest = sheet.fields.filter(({ key }) => !key.startsWith(TERMINAL_KEY));
  const fields = [...rest, ...pins];
  const at = current ? fields.findIndex(({ key }) => key === current.key) : sheet.at;
  return { fields, at: at < 0 ? Math.min(sheet.at, fields.length - 1) : at };
}

/** The circuit as it is called where codes and position of the sheet put the sensor. */
export function circuitHere(sheet: Form, circuit: Circuit): Circuit {
  const position = fieldText(sheet, POSITION_KEY).toLowerCase();
  const job: Job = {
    ...emptyJob(''),
    codes: codesSaid(fieldText(sheet, 'codes')).codes,
    ...(position === '' ? {} : { position }),
  };
  return atPlaceOf(job, { circuit, procedure: null }).circuit;
}

/** Pin and colour as they are typed. */
export function terminalText(terminal: JobTerminal | undefined): string {
  return terminal ? `${terminal.pin} ${terminal.colour}`.trim() : '';
}

function pinField(id: string, words: string, terminal: JobTerminal | undefined): TextInput {
  return textInput(
    `${TERMINAL_KEY}${id}`,
    words,
    terminalText(terminal),
    `${words}: pin and wire colour from the wiring diagram, for example 1 RD/BU or 1 red/blue. They are then shown in every step.`,
  );
}

/** Neighbours of the circuit that the sheet does not name as sharing something with the sensor. */
function unnamedIn(sheet: Form, circuit: Circuit): string[] {
  const said = sharesSaid(fieldText(sheet, SHARES_KEY)) ?? [];
  const named = said.map(({ name }) => neighbourOf(circuit, name).name);
  return circuit.parts.flatMap(({ kind, name }) =>
    kind === 'neighbour' && !named.includes(name) ? [name] : [],
  );
}
