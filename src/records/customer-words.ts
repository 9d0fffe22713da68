/** Tests and places in words that can be read out to the owner of a vehicle: no trade names of tests, no pins. */
import type { Family } from '../procedure/procedure.ts';
import type { RecordLine, RecordRuledOut, RecordTest, SessionRecord } from './record-form.ts';

/** What kind of test it was. Looks and questions are named by their own titles, which are plain already. */
const PLAIN_TESTS: Partial<Record<Family, string>> = {
  reference: 'Supply voltage',
  ground: 'Ground connection',
  signal: 'Signal line',
  injection: 'Signal line under load',
  bypass: 'Trial with a bypass wire',
  continuity: 'Resistance measured',
  pattern: 'Signal while the part moves',
  neighbour: 'Trial with the neighbouring part unplugged',
};

/** Rewrites the texts of one record. */
export interface CustomerWords {
  /** A test of the procedure, by its title. */
  readonly test: (title: string) => string;
  /** The test behind a reading, by the number of its event. */
  readonly reading: (event: number) => string;
  /** What rules a repair out: each test with what was found. */
  readonly ruledOutBy: (one: RecordRuledOut) => string;
  /** Any text, without pin numbers and wire colours. */
  readonly text: (words: string) => string;
}

/** Puts tests and places of one record into a customer's words: without pins, colours and terms of the trade. */
export function customerWordsFor({
  job,
  lines,
  tests,
}: Pick<SessionRecord, 'lines' | 'tests' | 'job'>): CustomerWords {
  const marks = job.terminals
    .flatMap(({ pin, colour }) => {
      const ofColour = colour === '' ? '' : ` (${colour})`;
      return pin === '' ? [ofColour] : [`, pin ${pin}${ofColour}`, ` pin ${pin}${ofColour}`];
    })
    .filter((mark) => mark !== '')
    .sort((a, b) => b.length - a.length);
  const text = (words: string) => marks.reduce((left, mark) => left.replaceAll(mark, ''), words);
  const made = [...lines, ...tests].map((one) => ({ ...one, plain: plainTest(one, text) }));
  const plain = new Map(made.map((one) => [one.title, one.plain]));
  const byEvent = new Map(made.map((one) => [one.event, one]));
  const test = (title: string) => plain.get(title) ?? text(title);
  const reading = (event: number) => byEvent.get(event)?.plain ?? '';
  const found = (words: string) => {
    const title = [...plain.keys()].find((one) => words.startsWith(`${one}: `));
    return title === undefined
      ? text(words)
      : `${plain.get(title)}: ${text(words.slice(title.length + 2))}`;
  };
  // Early versions kept only the words of what was read.
  const said = (list: string) => list.split('; ').map(found).join('; ');
  const ruledOutBy = ({ by, readings }: RecordRuledOut) =>
    readings.length === 0
      ? said(by)
      : readings.map((event) => `${reading(event)}: ${byEvent.get(event)?.found ?? ''}`).join('; ');
  return { test, reading, ruledOutBy, text };
}

function plainTest(line: RecordLine | RecordTest, text: (words: string) => string): string {
  const { title, family, where, reading } = line;
  const byMeter = family === 'pattern' && reading !== null;
  const kind = byMeter
    ? 'Signal voltage while the part moves'
    : (PLAIN_TESTS as Readonly<Record<string, string>>)[family];
  if (kind === undefined) return text(title);
  const place = text(where).replace(/ to battery negative$/, '');
  return place === '' ? kind : `${kind}, ${place}`;
}
