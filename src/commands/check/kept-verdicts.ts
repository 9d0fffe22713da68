/**
 * What the last whole check said of a tree, kept by the text of everything that it depends on. A proof takes seconds, and
 * a session must not wait for one: it looks here instead, and a tree that was changed since has no verdict.
 */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { cacheFolder, type Env } from '../../files/folders.ts';
import { readTextFile } from '../../files/read-text.ts';
import { nodeDisk } from '../../log/node-disk.ts';
import { writeWholeFile } from '../../log/write-whole.ts';
import type { Library } from '../../procedure/link-procedure.ts';
import type { ParsedProcedure } from '../../procedure/parse-procedure.ts';
import { version } from '../version.ts';

/** A whole check of one tree. */
export interface TreeVerdict {
  /** Of all texts that the proof depends on. */
  readonly key: string;
  readonly errors: number;
  /** UTC. */
  readonly at: string;
}

/** The oldest are forgotten. Our choice: a class writes some, and the file stays small. */
const KEPT_MAX = 200;

/** The same for the same tree, sub-procedures, circuit, cautions and program, wherever the files lie. */
export function treeKey(parsed: ParsedProcedure, library: Library): string {
  const found = treesIn(parsed, library);
  const circuit = library.circuits.get(parsed.draft.circuit ?? '') ?? null;
  const hash = createHash('sha256');
  for (const { source } of found) hash.update(`${source.text}\u0000`);
  return hash.update(JSON.stringify([circuit, library.cautions, version])).digest('hex');
}

/** A tree and its sub-procedures, theirs included. */
export function treesIn(
  parsed: ParsedProcedure,
  { procedures }: Pick<Library, 'procedures'>,
): ReadonlySet<ParsedProcedure> {
  const found = new Set([parsed]);
  for (const one of found)
    for (const { use } of Object.values(one.draft.steps)) {
      const inner = use === undefined ? undefined : procedures.get(use);
      if (inner) found.add(inner);
    }
  return found;
}

/** Keeps the verdicts of a check. It is a cache: where nothing can be written, nothing is lost but the words. */
export function keepVerdicts(env: Env, verdicts: readonly TreeVerdict[]): void {
  const path = fileOf(env);
  if (path === null || verdicts.length === 0) return;
  const keys = new Set(verdicts.map(({ key }) => key));
  const kept = [...readAll(path).filter(({ key }) => !keys.has(key)), ...verdicts];
  writeWholeFile(nodeDisk, path, `${JSON.stringify(kept.slice(-KEPT_MAX))}\n`);
}

/** What the last check of this very tree said; null where none is kept. */
export function keptVerdict(env: Env, key: string): TreeVerdict | null {
  const path = fileOf(env);
  return path === null ? null : (readAll(path).findLast((one) => one.key === key) ?? null);
}

function fileOf(env: Env): string | null {
  const folder = cacheFolder(env);
  return folder === null ? null : join(folder, 'checks.json');
}

/** What cannot be read as this is as good as nothing. */
function readAll(path: string): TreeVerdict[] {
  const read = readTextFile(path);
  if ('problem' in read) return [];
  try {
    const all: unknown = JSON.parse(read.text);
    return Array.isArray(all) ? all.filter(isVerdict) : [];
  } catch {
    return [];
  }
}

function isVerdict(value: unknown): value is TreeVerdict {
  if (typeof value !== 'object' || value === null) return false;
  const { key, errors, at } = value as Record<string, unknown>;
  const isMoment = typeof at === 'string' && /^\d{4}-\d\d-\d\dT\d\d:\d\d/.test(at);
  return typeof key === 'string' && isMoment && Number.isSafeInteger(errors);
}
