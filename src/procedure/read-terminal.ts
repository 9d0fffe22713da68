/** Reads what a person writes down of a terminal: the pin, and the colour of its wire. */
import type { Circuit } from '../circuit/circuit.ts';
import type { JobTerminal } from './job.ts';
import { colourWords, readColour } from './wire-colours.ts';

/** A number or letters of a connector: `1`, `A12`, `B 3`, `X1/7`. Longer than this it is something else. */
const PIN = /^[\p{L}\d]{1,4}(?:[\s./:-]?[\p{L}\d]{1,4})?$/u;
const BETWEEN = /[\s/,;:+-]+/g;

/** `1 RD/BU`, `5 white/black`, `12 braun`: the pin and the colour; null for nothing. What is not understood stays whole in `pin`. */
export function readTerminal(typed: string): JobTerminal | null {
  const text = typed.trim();
  if (text === '') return null;
  const alone = readColour(text);
  if (alone !== null) return { pin: '', colour: alone };
  for (const { index, 0: gap } of text.matchAll(BETWEEN)) {
    const found = inOrder(text.slice(0, index), text.slice(index + gap.length));
    if (found) return found;
  }
  const close = /^(\d+)(\p{L}.*)$/u.exec(text);
  return (close && inOrder(close[1]!, close[2]!)) ?? { pin: pinOf(text), colour: '' };
}

/** Pin and colour, whichever comes first; of a colour all that belongs to it. */
function inOrder(before: string, after: string): JobTerminal | null {
  const last = readColour(after);
  if (last !== null && isPin(before)) return { pin: pinOf(before), colour: last };
  const first = readColour(before);
  if (first !== null && /\d/.test(after) && isPin(after))
    return { pin: pinOf(after), colour: first };
  return null;
}

function isPin(text: string): boolean {
  return PIN.test(pinOf(text));
}

function pinOf(text: string): string {
  return text.replace(/^(?:pin|terminal|klemme)\s+/i, '');
}

/** What was understood of it, for the person to check; `doubtful` when no more than what was typed. */
export function terminalRemark(typed: string): {
  readonly words: string;
  readonly doubtful: boolean;
} {
  const terminal = readTerminal(typed);
  if (!terminal) return { words: '', doubtful: false };
  const { pin, colour } = terminal;
  const inWords = colour === '' ? '' : ` (${colourWords(colour)})`;
  if (colour !== '')
    return {
      words: `Understood: ${pin === '' ? 'no pin' : `pin ${pin}`}, colour ${colour}${inWords}.`,
      doubtful: false,
    };
  if (PIN.test(pin) && /^\p{L}?\d+\p{L}?$|^\p{Lu}\d*$|^\p{L}+[\s./:-]?\d+$/u.test(pin))
    return { words: `Understood: pin ${pin}, no colour.`, doubtful: false };
  return {
    words: `No wire colour recognised in "${typed.trim()}": kept as typed. Write pin and colour, for example 1 RD/BU or 1 red/blue.`,
    doubtful: true,
  };
}

/** Terminals of the harness: a job sheet can give each its pin and wire colour. */
export function harnessTerminals({ terminals }: Circuit): { id: string; words: string }[] {
  return terminals.filter(({ side }) => side === 'harness').map(({ id, words }) => ({ id, words }));
}
