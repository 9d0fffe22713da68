/** Drills as files, as the program writes them. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Drill } from '../../src/drill/drill.ts';
import { sealed } from '../log/events.ts';

/** The file's text: chained lines. */
export function drillText(drill: Pick<Drill, 'events'>): string {
  return sealed(drill.events).text;
}

/** Writes it under `path`. */
export function writeDrill(path: string, drill: Pick<Drill, 'events'>): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, drillText(drill));
}
