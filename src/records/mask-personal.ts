/** Finds the people, the vehicle and the order of a job in free text, and puts `[removed]` in their place. */
import type { SessionRecord } from './record-form.ts';

export const REMOVED = '[removed]';

/** A single name shorter than this would hit too many other words; it is then only looked for as a whole. */
const NAME_LETTERS_MIN = 3;
/** Words in the names of shops that say nothing of which one it is. */
const COMMON = new Set(
  'the and der die das und von van auto autos car cars garage workshop service services motor motors repair repairs werkstatt electric electrics elektrik ltd inc gmbh mrs herr frau miss'.split(
    ' ',
  ),
);

/** Whatever looks like an address, a telephone number (seven digits or more), or an identification number. */
const LOOKS_PERSONAL: readonly RegExp[] = [
  /[\p{L}\p{N}._%+-]{1,64}@[\p{L}\p{N}.-]{1,255}/gu,
  /(?<![\p{L}\p{N}.])\+?\(?\d{2,5}\)?(?:[ ./-]{1,2}\d{2,5}){2,6}(?![\p{L}\p{N}.])/gu,
  /(?<![\p{L}\p{N}.])\+?0\d{6,14}(?![\p{L}\p{N}.])/gu,
  /(?<![\p{L}\p{N}])(?=[A-Z]{0,17}\d)(?=\d{0,17}[A-Z])[A-HJ-NPR-Z0-9]{17}(?![\p{L}\p{N}])/giu,
];

/** A function that masks texts of this record. A text without anything personal comes back as it was. */
export function maskPersonal(record: SessionRecord): (text: string) => string {
  const patterns = [...secretsOf(record).map(patternOf), ...LOOKS_PERSONAL];
  return (text) => {
    const plain = text.normalize('NFKC');
    const masked = patterns.reduce((words, pattern) => words.replace(pattern, REMOVED), plain);
    return masked === plain ? text : masked;
  };
}

/** What must not appear, longest first, so that a whole name goes before its parts. */
function secretsOf({ person, shop, job, id, cautions, work }: SessionRecord): string[] {
  const { vehicle, order, customer, name } = job;
  const readers = [...new Set(cautions.map(({ readBy }) => readBy))];
  const people = [person, customer, ...readers, ...new Set(work.map(({ by }) => by))];
  const whole = [...people, shop, vehicle.vin, vehicle.plate, vehicle.odometer, order, id];
  if (name !== '') whole.push(name);
  const parts = [...people, shop].flatMap((words) =>
    (words.normalize('NFKC').match(/[\p{L}\p{M}\p{N}]+/gu) ?? []).filter(
      (word) => [...word].length >= NAME_LETTERS_MIN && !COMMON.has(word.toLowerCase()),
    ),
  );
  const all = [...new Set([...whole, ...parts].map(signsOf))];
  return all.filter((secret) => secret.length > 1).sort((a, b) => b.length - a.length);
}

/** Letters and digits alone: how a plate or number is spaced and hyphened does not matter. */
function signsOf(text: string): string {
  return text.normalize('NFKC').replace(/[^\p{L}\p{M}\p{N}]/gu, '');
}

/** Blanks and joints people put between the parts of a plate, a number or a name. */
const JOINT = "[\\s\\-._/·,:()'’\\u200b-\\u200d\\u00ad]{0,3}";

function patternOf(secret: string): RegExp {
  const signs = [...secret].join(JOINT);
  return new RegExp(`(?<![\\p{L}\\p{N}])${signs}(?![\\p{L}\\p{N}])`, 'giu');
}
