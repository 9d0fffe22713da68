/** Lines of results on the disk, so that a stopped bench goes on where it was. */
import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { RunLine } from './run-car.ts';

const FOLDER = 'node_modules/.cache/ohmward-cars';

/** What makes two runs the same one. */
export type RunKey = Pick<RunLine, 'circuit' | 'stratum' | 'mode' | 'person' | 'means' | 'number'>;

export interface ResultsStore {
  readonly path: string;
  readonly read: () => RunLine[];
  readonly add: (line: RunLine) => void;
}

/** The results of one version of program, library and bench. */
export function openStore(version: string): ResultsStore {
  mkdirSync(FOLDER, { recursive: true });
  const path = resolve(FOLDER, `${version}.jsonl`);
  return {
    path,
    read: () => (existsSync(path) ? linesOf(readFileSync(path, 'utf8')) : []),
    add: (line) => appendFileSync(path, `${JSON.stringify(line)}\n`),
  };
}

/** Ten digits of a hash over the bundle that runs and the library that it reads. */
export function versionOf(bundleUrl: string): string {
  const hash = createHash('sha256').update(readFileSync(fileURLToPath(bundleUrl)));
  for (const entry of readdirSync('procedures', { recursive: true, withFileTypes: true }))
    if (entry.isFile())
      hash.update(entry.name).update(readFileSync(join(entry.parentPath, entry.name)));
  return hash.digest('hex').slice(0, 10);
}

/** One text for a run. */
export function keyOf({ circuit, stratum, mode, person, means, number }: RunKey): string {
  return [circuit, stratum, mode, person, means, number].join('|');
}

/** An incomplete last line is what a stopped bench leaves. */
function linesOf(text: string): RunLine[] {
  return text.split('\n').flatMap((line): RunLine[] => {
    if (!line.endsWith('}')) return [];
    const parsed: RunLine = JSON.parse(line);
    return [parsed];
  });
}
