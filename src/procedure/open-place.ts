/** Braces in a text that make no place, as `{module.feed.`: nothing is put in for them, and they stand on the screen as typed. */
import { nearestName } from '../source/nearest-name.ts';
import { withoutPlaces } from './bind-text.ts';

/** Up to the other brace or a blank; or a closing brace alone. */
const STRAY = /\{[^{}\n]{0,40}\}|\{[^\s{}]*|\}/g;

/** What is said of one such brace, and the way out: the nearest of the names that are known. */
export interface OpenPlace {
  readonly words: string;
  readonly fix: string;
}

/** All of them in a text as its author wrote it. */
export function openPlaces(text: string, known: readonly string[]): OpenPlace[] {
  const found = withoutPlaces(text).match(STRAY) ?? [];
  return found.map((open) => {
    const meant = meantBy(open);
    const near = meant === '' ? null : nearestName(meant, known);
    return {
      words: `${JSON.stringify(open)} is not a place: it would be shown as it is typed`,
      fix: near
        ? `did you mean "{${near}}"?`
        : 'write a place as {part.pin} with both braces, and no other braces',
    };
  });
}

function meantBy(open: string): string {
  return open
    .replace(/[{}]/g, '')
    .trim()
    .toLowerCase()
    .replace(/(?<![.,;:!?])[.,;:!?]+$/, '')
    .replace(/\s+/g, '.');
}
