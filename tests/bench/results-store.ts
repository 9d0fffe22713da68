/** Lines of results on the disk, so that a stopped bench goes on where it was. */
import { createHash } from 'node:crypto';
import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { RunLine } from './cars/run-car.ts';

const CACHE = 'node_modules/.cache';

/** What makes two runs the same one. */
export type RunKey = Pick<RunLine, 'circuit' | 'stratum' | 'mode' | 'person' | 'means' | 'number'>;

export interface ResultsStore<Line> {
  readonly path: string;
  readonly read: () => Line[];
  readonly add: (line: Line) => void;
}

/** The results of a bench by one version of program, library and bench. */
export function openStore<Line extends object>(bench: string, version: string): ResultsStore<Line> {
  const folder = resolve(CACHE, `ohmward-${bench}`);
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `${version}.jsonl`);
  return {
    path,
    read: () => (existsSync(path) ? linesOf<Line>(readFileSync(path, 'utf8')) : []),
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
function linesOf<Line>(text: string): Line[] {
  return text.split('\n').flatMap((line): Line[] => {
    if (!line.endsWith('}')) return [];
    const parsed: Line = JSON.parse(line);
    return [parsed];
  });
}
