/** What a person says of driving the vehicle after the repair: `away, 80 km and three cold starts`, `back after 12 km`. */
import type { Command } from './command.ts';
import type { DrivenCode } from './events.ts';

const BEGINNINGS: Readonly<Record<string, DrivenCode>> = {
  away: 'stayed-away',
  'stayed away': 'stayed-away',
  back: 'came-back',
  'came back': 'came-back',
};

/** What it begins with, longest first. */
const BEGINS = /^(stayed[ -]away|came[ -]back|away|back)(?![\p{L}\p{N}])[\s,;:.-]*/iu;

/** The command, or why the text is none; without a full stop. */
export function readDrive(
  text: string,
): Extract<Command, { type: 'report-drive' }> | { readonly words: string; readonly fix: string } {
  const said = text.trim();
  const found = BEGINS.exec(said);
  const code = BEGINNINGS[found?.[1]?.toLowerCase().replace('-', ' ') ?? ''];
  if (!found || !code)
    return {
      words: 'it does not begin with "away" or "back"',
      fix: 'say what the trouble codes did, then how it was driven: away, 80 km and three cold starts',
    };
  return { type: 'report-drive', code, words: said.slice(found[0].length).trim() };
}

export const DRIVEN_WORDS: Readonly<Record<DrivenCode, string>> = {
  'stayed-away': 'the trouble codes stayed away',
  'came-back': 'the trouble codes came back',
};
