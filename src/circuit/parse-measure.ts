/** Measurements and bridges as people type them: `volts sensor.feed battery.negative`, `sensor.signal battery.negative test-light`. */
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { nearestName } from '../source/nearest-name.ts';
import { PROBE_KINDS } from './instruments.ts';
import type { Bridge, Probe } from './test.ts';

/** What was meant, or why it cannot be read. */
export type Parsed<T> = { readonly value: T } | { readonly words: string };

type OneName = 'counts' | 'inspect';
const KINDS: readonly string[] = PROBE_KINDS;
/** Measurements with two leads. */
export const TWO_LEADS = PROBE_KINDS.filter(
  (kind): kind is Exclude<Probe['kind'], OneName> => kind !== 'counts' && kind !== 'inspect',
);

/** One measurement. The red lead comes first. */
export function parseMeasure(text: string): Parsed<Probe> {
  const [kind = '', ...names] = text.trim().split(/\s+/);
  if (!KINDS.includes(kind)) {
    const near = nearestName(kind, KINDS);
    return {
      words: `"${kind}" is not a measurement; ${near ? `did you mean "${near}"?` : `one of: ${KINDS.join(', ')}`}`,
    };
  }
  const two = TWO_LEADS.find((one) => one === kind);
  if (two) {
    const [plus, minus] = names;
    if (names.length !== 2)
      return {
        words: `"${kind}" needs two terminals, for example "${kind} sensor.signal battery.negative"`,
      };
    return { value: { kind: two, plus: plus!, minus: minus! } };
  }
  const [name] = names;
  if (name === undefined || names.length > 1)
    return {
      words: `"${kind}" needs one name, for example "${kind} ${kind === 'counts' ? 'module.signal' : 'connector.sensor'}"`,
    };
  return {
    value: kind === 'counts' ? { kind: 'counts', input: name } : { kind: 'inspect', of: name },
  };
}

/** Something clipped in: two terminals and `lead`, `test-light`, `lamp` or ohms such as `470ohm`. */
export function parseBridge(text: string): Parsed<Bridge> {
  const [from = '', to = '', ...through] = text.trim().split(/\s+/);
  const name = through.join(' ');
  if (name === '')
    return {
      words: `"${text}" is not a bridge; write two terminals and what goes between them, for example "sensor.signal battery.negative 470 ohm"`,
    };
  if (name === 'lead' || name === 'test-light' || name === 'lamp')
    return { value: { from, to, through: name } };
  const ohms = parseQuantity(name);
  if (ohms?.unit === 'ohm' && ohms.value > 0 && Number.isFinite(ohms.value))
    return { value: { from, to, through: { ohms: ohms.value } } };
  return {
    words: `"${name}" cannot be clipped in; one of: lead, test-light, lamp, or ohms such as 470 ohm`,
  };
}
