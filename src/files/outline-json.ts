/**
 * The short values of a JSON object, without those that are long: the first line of a session holds its tree and circuit,
 * hundreds of kilobytes, and a list of ten thousand sessions wants the plate. Ten times as fast as reading all of it, and
 * nothing of what is left out stays in memory. What is left out is not looked at either: it may be no JSON.
 */

/** Up to this an object is read whole. Our choice: a job sheet is shorter, a tree is longer. */
const SHORT_BYTES = 8192;
/** Long objects are looked into so deep: a tree has its title right in it, and its steps are left out. */
const DEPTH_MAX = 1;

const [QUOTE, BACKSLASH, COMMA] = [0x22, 0x5c, 0x2c];
const [OPEN_MAP, OPEN_LIST, CLOSE_MAP, CLOSE_LIST] = [0x7b, 0x5b, 0x7d, 0x5d];

/** The object in `bytes`, in canonical form, with its short values, and of its long objects theirs. Throws where a short value is no JSON. */
export function outlineJson(bytes: Buffer, depth = 0): unknown {
  if (bytes.length <= SHORT_BYTES) return JSON.parse(bytes.toString('utf8'));
  if (bytes[0] !== OPEN_MAP || depth > DEPTH_MAX) return undefined;
  const values: [string, unknown][] = [];
  for (const [key, from, to] of partsOf(bytes)) {
    const value = outlineJson(bytes.subarray(from, to), depth + 1);
    if (value !== undefined) values.push([key, value]);
  }
  return Object.fromEntries(values);
}

/** The keys of an object, each with where its value begins and ends. Throws where it does not end. */
function partsOf(bytes: Buffer): [key: string, from: number, to: number][] {
  const parts: [string, number, number][] = [];
  let depth = 0;
  let key = '';
  let from = 0;
  for (let at = 0; at < bytes.length; at += 1) {
    const sign = bytes[at]!;
    if (sign === QUOTE) {
      const end = endOfText(bytes, at);
      if (depth === 1 && from === 0) {
        key = String(JSON.parse(bytes.toString('utf8', at, end + 1)));
        // Behind the colon.
        from = end + 2;
      }
      at = end;
    } else if (sign === OPEN_MAP || sign === OPEN_LIST) depth += 1;
    else if (sign === CLOSE_MAP || sign === CLOSE_LIST) {
      depth -= 1;
      if (depth > 0) continue;
      parts.push([key, from, at]);
      if (at !== bytes.length - 1) break;
      return parts;
    } else if (sign === COMMA && depth === 1) {
      parts.push([key, from, at]);
      from = 0;
    }
  }
  throw new SyntaxError('outlineJson: no object from its first byte to its last');
}

function endOfText(bytes: Buffer, begin: number): number {
  let at = begin + 1;
  while (at < bytes.length && bytes[at] !== QUOTE) at += bytes[at] === BACKSLASH ? 2 : 1;
  return at;
}
