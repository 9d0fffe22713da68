/**
 * Canonical JSON (RFC 8785): one value, one text, so that a hash of it means something.
 *
 * Objects sorted by UTF-16 code units, numbers and strings as ECMAScript writes them, no blanks.
 * Anything JSON cannot hold is a mistake of our own code and throws.
 */

/** No event nests deeper; a cycle is noticed here too. */
const MAX_DEPTH = 100;

/** The canonical text of `value`. Throws on NaN, infinities, undefined, lone surrogates, cycles and objects of a class. */
export function canonicalJson(value: unknown): string {
  return write(value, 0);
}

function write(value: unknown, depth: number): string {
  if (value === null) return 'null';
  switch (typeof value) {
    case 'boolean':
      return value ? 'true' : 'false';
    case 'number':
      if (!Number.isFinite(value)) throw new Error(`canonicalJson: ${value} is no JSON number`);
      return String(value); // -0 becomes 0, as RFC 8785 wants
    case 'string':
      return writeText(value);
    case 'object':
      if (depth >= MAX_DEPTH) throw new Error(`canonicalJson: deeper than ${MAX_DEPTH}`);
      return Array.isArray(value) ? writeList(value, depth) : writeMap(value, depth);
    default:
      throw new Error(`canonicalJson: no place for ${typeof value}`);
  }
}

/** Printable ASCII without quote and backslash, which stands in JSON as it is: nearly every text of an event. */
const PLAIN = /^[ !#-[\]-~]*$/;

function writeText(text: string): string {
  if (PLAIN.test(text)) return `"${text}"`;
  if (!text.isWellFormed()) throw new Error('canonicalJson: lone surrogate in a text');
  return JSON.stringify(text);
}

function writeList(list: readonly unknown[], depth: number): string {
  let out = '[';
  for (let i = 0; i < list.length; i += 1) out += (i > 0 ? ',' : '') + write(list[i], depth + 1);
  return `${out}]`;
}

function writeMap(map: object, depth: number): string {
  const prototype: unknown = Object.getPrototypeOf(map);
  if (prototype !== null && prototype !== Object.prototype)
    throw new Error('canonicalJson: only plain objects have a canonical form');
  let out = '{';
  for (const key of Object.keys(map).sort()) {
    const value = (map as Record<string, unknown>)[key];
    out += `${out.length > 1 ? ',' : ''}${writeText(key)}:${write(value, depth + 1)}`;
  }
  return `${out}}`;
}
