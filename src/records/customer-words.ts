/** Tests and places in words that can be read out to the owner of a vehicle: no trade names of tests, no pins. */
import type { Family } from '../procedure/procedure.ts';
import type { RecordLine, SessionRecord } from './record-form.ts';

/** What kind of test it was. Looks and questions are named by their own titles, which are plain already. */
const PLAIN_TESTS: Partial<Record<Family, string>> = {
  reference: 'Supply voltage',
  ground: 'Ground connection',
  signal: 'Signal line',
  injection: 'Signal line under load',
  bypass: 'Trial with a wire laid beside the old one',
  continuity: 'Wire measured from end to end',
  pattern: 'Signal with the part turning',
  neighbour: 'Trial with the neighbouring part taken off',
};

/** Rewrites the texts of one record. */
export interface CustomerWords {
  /** A test, by its title. */
  readonly test: (title: string) => string;
  /** A list of `test: what was found`. */
  readonly tests: (list: string) => string;
  /** Any text, without pin numbers and wire colours. */
  readonly text: (words: string) => string;
}

/** The words for one record. */
export function customerWordsFor(record: Pick<SessionRecord, 'lines' | 'job'>): CustomerWords {
  const marks = record.job.terminals
    .flatMap(({ pin, colour }) => {
      const ofColour = colour === '' ? '' : ` (${colour})`;
      return pin === '' ? [ofColour] : [`, pin ${pin}${ofColour}`, ` pin ${pin}${ofColour}`];
    })
    .filter((mark) => mark !== '')
    .sort((a, b) => b.length - a.length);
  const text = (words: string) => marks.reduce((left, mark) => left.replaceAll(mark, ''), words);
  const plain = new Map(record.lines.map((line) => [line.title, plainTest(line, text)]));
  const test = (title: string) => plain.get(title) ?? text(title);
  const found = (words: string) => {
    const title = [...plain.keys()].find((one) => words.startsWith(`${one}: `));
    return title === undefined
      ? text(words)
      : `${plain.get(title)}: ${text(words.slice(title.length + 2))}`;
  };
  return { test, text, tests: (list) => list.split('; ').map(found).join('; ') };
}

function plainTest(line: RecordLine, text: (words: string) => string): string {
  const { title, family, where } = line;
  const byMeter = family === 'pattern' && line.kind === 'reading';
  const kind = byMeter
    ? 'Signal voltage with the part turning'
    : (PLAIN_TESTS as Readonly<Record<string, string>>)[family];
  if (kind === undefined) return text(title);
  const place = text(where).replace(/ to battery negative$/, '');
  return place === '' ? kind : `${kind}, ${place}`;
}
