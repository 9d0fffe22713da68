/** Drills as files, as the program writes them. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Drill } from '../../src/drill/drill.ts';
import { type LogEvent, sealEvent } from '../../src/log/event-line.ts';

/** The file's text: chained lines. */
export function drillText(drill: Pick<Drill, 'events'>): string {
  let prev: string | null = null;
  let text = '';
  drill.events.forEach((event, index) => {
    const { line, hash } = sealEvent(event as unknown as LogEvent, index + 1, prev);
    text += `${line}\n`;
    prev = hash;
  });
  return text;
}

/** Writes it under `path`. */
export function writeDrill(path: string, drill: Pick<Drill, 'events'>): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, drillText(drill));
}
