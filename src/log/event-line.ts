/**
 * One line of the session file: the event with its number and the hash of the line before.
 *
 * The line is the canonical JSON of `{seq, at, elapsed, type, ...payload, prev}` and a line feed; its hash is the
 * SHA-256 of the line without the line feed, so `sha256sum` and any JSON reader can check a log without us.
 */
import { canonicalJson } from './canonical-json.ts';
import { sha256 } from './hash.ts';

/**
 * Something that happened, whatever else it holds. `at` is wall-clock time in RFC 3339 with offset, `elapsed` monotonic
 * milliseconds.
 */
export interface LogEvent {
  readonly type: string;
  readonly at: string;
  readonly elapsed: number;
}

/**
 * An event as it stands in the file; beyond these keys nothing of it has been checked. `seq` counts from 1; `prev` is
 * null only in the first line of a session.
 */
export interface StoredEvent extends LogEvent {
  readonly seq: number;
  readonly prev: string | null;
  readonly [key: string]: unknown;
}

/** Type of the first event of a later part: `continues` is the head it goes on from, `file` the part that holds it. */
export const CONTINUED = 'segment-continued';

/** The line (without line feed) and its hash. Throws when the event is not fit for a log, which is our bug. */
export function sealEvent(
  event: LogEvent,
  seq: number,
  prev: string | null,
): { line: string; hash: string } {
  if ('seq' in event || 'prev' in event) throw new Error('sealEvent: seq and prev are not yours');
  const stored: StoredEvent = { ...event, seq, prev };
  const flaw = flawOf(stored);
  if (flaw) throw new Error(`sealEvent: ${flaw}`);
  const line = canonicalJson(stored);
  if (line.includes(PROTOTYPE_KEY)) throw new Error('sealEvent: no event has such a key');
  return { line, hash: sha256(line) };
}

/** The event in a line, or in words why it is none. */
export function parseLine(line: Uint8Array): { event: StoredEvent } | { flaw: string } {
  let text: string;
  let value: unknown;
  try {
    text = STRICT_UTF8.decode(line);
  } catch {
    return { flaw: 'is not UTF-8' };
  }
  try {
    value = JSON.parse(text);
  } catch {
    return { flaw: 'is not JSON' };
  }
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    return { flaw: 'is not a JSON object' };
  if (!isCanonical(value, text)) return { flaw: 'is not in canonical form' };
  if (text.includes(PROTOTYPE_KEY)) return { flaw: 'has a key that no event has' };
  const flaw = flawOf(value as Record<string, unknown>);
  return flaw ? { flaw } : { event: value as StoredEvent };
}

/** In canonical text a key and nothing else: inside a text the quotes would be escaped. */
const PROTOTYPE_KEY = '"__proto__":';

const STRICT_UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function isCanonical(value: object, text: string): boolean {
  try {
    return canonicalJson(value) === text;
  } catch {
    return false; // a lone surrogate written as \ud800, or nested beyond any event
  }
}

function flawOf(event: Readonly<Record<string, unknown>>): string | null {
  if (!Number.isSafeInteger(event.seq) || (event.seq as number) < 1) return 'has no event number';
  if (typeof event.type !== 'string' || event.type === '') return 'has no event type';
  if (typeof event.at !== 'string' || !isRfc3339(event.at)) return 'has no RFC 3339 time';
  if (typeof event.elapsed !== 'number' || !(event.elapsed >= 0) || event.elapsed === Infinity)
    return 'has no elapsed time';
  const { prev } = event;
  if (prev !== null && !(typeof prev === 'string' && /^[0-9a-f]{64}$/.test(prev)))
    return 'has no link to the line before';
  return null;
}

const RFC_3339 =
  /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(?:\.\d{1,9})?(?:Z|[+-](\d\d):(\d\d))$/;

/** Whether a text is a date and time of RFC 3339 with its offset; a leap second (:60) is allowed. */
export function isRfc3339(text: string): boolean {
  const match = RFC_3339.exec(text);
  if (!match) return false;
  const [year, month, day, hour, minute, second] = match.slice(1, 7).map(Number) as number[];
  const offsetHour = Number(match[7] ?? 0);
  const offsetMinute = Number(match[8] ?? 0);
  if (month! < 1 || month! > 12 || day! < 1 || day! > daysIn(year!, month!)) return false;
  return hour! <= 23 && minute! <= 59 && second! <= 60 && offsetHour <= 23 && offsetMinute <= 59;
}

function daysIn(year: number, month: number): number {
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  if (month === 2) return leap ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
