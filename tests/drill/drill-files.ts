/** Drills as files, as the program writes them. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { SessionEvent } from '../../src/session/events.ts';
import { sealed } from '../log/events.ts';

/** The file's text: chained lines. */
export function drillText(events: readonly SessionEvent[]): string {
  return sealed(events).text;
}

/** Writes it under `path`. */
export function writeDrill(path: string, events: readonly SessionEvent[]): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, drillText(events));
}
