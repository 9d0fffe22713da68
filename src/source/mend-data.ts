/**
 * Data that breaks its schema, read as it was most likely meant: a mistyped key or word as the one that is "did you
 * mean", anything else left out. Never used for anything but to find the mistakes beside those already told.
 */
import { nearestName } from './nearest-name.ts';
import { pathOfPointer, type SchemaError } from './schema-issues.ts';
import type { Path } from './yaml-source.ts';

/** What could be read. */
export interface Mended {
  readonly data: unknown;
  /** Paths of what was left out: whatever hangs on them is not known. */
  readonly lost: readonly Path[];
}

/** A mend can lay another mistake open; after so many rounds the rest is given up. */
const ROUNDS_MAX = 5;
/** Values of the right type, however they are written, harm nobody who only reads them. */
const HARMLESS = new Set([
  'pattern',
  'minLength',
  'maxLength',
  'minimum',
  'maximum',
  'uniqueItems',
]);
/** Findings that only say that one of those inside them is wrong. */
const WRAPPERS = new Set(['if', 'anyOf', 'oneOf', 'allOf', 'propertyNames']);

/** The data mended until `findings` has nothing grave to say; null when it cannot be. */
export function mendData(
  data: unknown,
  findings: (data: unknown) => readonly SchemaError[],
): Mended | null {
  const mended = structuredClone(data);
  const lost: Path[] = [];
  for (let round = 0; round < ROUNDS_MAX; round += 1) {
    const all = findings(mended);
    const grave = all.filter(
      ({ keyword, propertyName }) =>
        propertyName === undefined && !HARMLESS.has(keyword) && !WRAPPERS.has(keyword),
    );
    if (grave.length === 0) return { data: mended, lost };
    // The last first: what is taken out of a list moves only what stands behind it.
    const inner = grave.filter(({ keyword }) => keyword !== 'required' && keyword !== 'type');
    for (const error of (inner.length > 0 ? inner : grave).toReversed()) {
      const path = pathOfPointer(error.instancePath);
      if (!mend(mended, path, error)) {
        if (path.length === 0) return null;
        remove(mended, path);
        lost.push(path);
      }
    }
  }
  return null;
}

/** Puts in what was most likely meant; false when nobody can tell. */
function mend(data: unknown, path: Path, error: SchemaError): boolean {
  const { keyword, params } = error;
  if (keyword === 'additionalProperties') {
    const group = valueAt(data, path);
    if (!isGroup(group)) return false;
    const typed = String(params['additionalProperty']);
    const known = Object.keys(recordOf(recordOf(error.parentSchema)['properties']));
    const meant = nearestName(typed, known);
    if (meant !== null && !Object.hasOwn(group, meant)) group[meant] = group[typed];
    delete group[typed];
    return true;
  }
  if (keyword === 'enum' && typeof error.data === 'string') {
    const allowed = params['allowedValues'];
    const meant = Array.isArray(allowed) ? nearestName(error.data, allowed.map(String)) : null;
    return meant !== null && put(data, path, meant);
  }
  return false;
}

function put(data: unknown, path: Path, value: unknown): boolean {
  const holder = valueAt(data, path.slice(0, -1));
  const key = path.at(-1);
  if (key === undefined || !(isGroup(holder) || Array.isArray(holder))) return false;
  (holder as Record<string, unknown>)[key] = value;
  return true;
}

function remove(data: unknown, path: Path): void {
  const holder = valueAt(data, path.slice(0, -1));
  const key = path.at(-1)!;
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else if (isGroup(holder)) delete holder[key];
}

function valueAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null
        ? (value as Record<string, unknown>)[key]
        : undefined,
    data,
  );
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
  return isGroup(value) ? value : {};
}
