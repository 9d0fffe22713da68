/** What a customer said of the work: `authorised by R. Example, by telephone, up to 240 EUR`, `declined by R. Example`. */
import type { Command } from './command.ts';
import type { WorkAnswer } from './events.ts';

const BEGINS = /^(authori[sz]ed|declined)(?![\p{L}\p{N}])[\s:]*(?:by(?![\p{L}\p{N}]))?/iu;

/** The command, or why the text is none; without a full stop. */
export function readWork(
  text: string,
): Extract<Command, { type: 'answer-work' }> | { readonly words: string; readonly fix: string } {
  const said = text.trim();
  const found = BEGINS.exec(said);
  const fix = 'write who said it and how: authorised by R. Example, by telephone, up to 240 EUR';
  if (!found) return { words: 'it does not begin with "authorised" or "declined"', fix };
  const rest = said.slice(found[0].length);
  const end = rest.search(/[,;]/);
  const by = (end < 0 ? rest : rest.slice(0, end)).trim();
  // Without a name behind it, what may be spent stands where the name would.
  if (by === '' || /^(?:up to(?![\p{L}\p{N}])|\d)/iu.test(by))
    return { words: 'it does not say by whom', fix };
  const answer: WorkAnswer = /^d/i.test(said) ? 'declined' : 'authorised';
  return { type: 'answer-work', answer, by, words: end < 0 ? '' : rest.slice(end + 1).trim() };
}
