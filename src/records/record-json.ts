/** A record as JSON, exact to the last sign and yet harmless to a terminal that shows it. */
import type { SessionRecord } from './record-form.ts';

/** Everything that is no visible sign and could be obeyed or hide something; JSON may write any sign as an escape. */
const HIDDEN = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}]/gu;

/** Indented JSON in the form of docs/schema/record.schema.json, with a line feed at the end. */
export function recordJson(record: SessionRecord): string {
  return harmlessJson(record);
}

/** Any value as indented JSON with all hidden signs written as escapes. */
export function harmlessJson(value: unknown): string {
  return `${hiddenAsEscapes(JSON.stringify(value, null, 2))}\n`;
}

/** JSON with all hidden signs but the ends of its lines written as escapes: the same value to whoever reads it. */
export function hiddenAsEscapes(json: string): string {
  return json.replace(HIDDEN, (sign) => (sign === '\n' ? sign : escapes(sign)));
}

function escapes(sign: string): string {
  const units = [...Array(sign.length).keys()].map((i) => sign.charCodeAt(i));
  return units.map((unit) => `\\u${unit.toString(16).padStart(4, '0')}`).join('');
}
