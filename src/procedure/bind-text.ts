/** Fills the places of a text from the job: `{sensor.feed}` becomes "sensor feed, pin 1 (RD/BU)". */
import type { Circuit } from '../circuit/circuit.ts';
import type { Job } from './job.ts';

const PLACE = /\{([a-z][a-z0-9-]*(?:\.[a-z0-9][a-z0-9-]*)*)\}/g;

/** The text with every `{terminal}` in the words of this vehicle; a terminal the job says nothing of keeps its name. */
export function bindText(text: string, job: Job, circuit: Circuit | null): string {
  return text.replace(PLACE, (_, id: string) => terminalWords(id, job, circuit));
}

/** A terminal in the words of this vehicle: "sensor feed, pin 1 (RD/BU)". */
export function terminalWords(id: string, job: Job, circuit: Circuit | null): string {
  const known = circuit?.terminals.find((terminal) => terminal.id === id);
  const name = known?.words ?? id.replace(/[.-]/g, ' ');
  const place = job.terminals[harnessSide(id)];
  if (!place || (place.pin === '' && place.colour === '')) return name;
  const pin = place.pin === '' ? '' : ` pin ${place.pin}`;
  const colour = place.colour === '' ? '' : ` (${place.colour})`;
  return `${name}${pin === '' ? '' : ','}${pin}${colour}`;
}

/** The places a text asks for. */
export function namedPlaces(text: string): string[] {
  return [...text.matchAll(PLACE)].map((match) => match[1]!);
}

/** The text without the places it asks for. */
export function withoutPlaces(text: string): string {
  return text.replace(PLACE, ' ');
}

/** A part's own pin has the number of the harness terminal before it. */
function harnessSide(id: string): string {
  return id.replace(/\.pin$/, '');
}
