/** What a drill's pages show beside those of any session: how far it is, the repairs to name, what is handed in. */

import { readingsGiven } from '../../drill/drill-act.ts';
import { handInLines, repairChoices } from '../../drill/drill-words.ts';
import { countWords } from '../../quantity/count-words.ts';
import { spentMinutes } from '../../session/spent-minutes.ts';
import type { Paragraph } from '../parts/text-block.ts';
import type { Here } from './pages-state.ts';

/** A drill's level and how far it is; nothing in any other session. */
export function asideOf({ opened, state }: Here): string {
  if (!opened.drill) return '';
  const { session } = state;
  const minutes = Math.round(spentMinutes(session) * 10) / 10;
  return `level ${opened.drill.level.number}, ${countWords(readingsGiven(session), 'reading')}, ${minutes} min`;
}

/** The repairs that can still be named, and giving up. */
export function diagnosisItems({ state }: Here, chosen: readonly string[]) {
  const { circuit } = state.session.opened;
  const left = (circuit ? repairChoices(circuit) : []).filter(
    ({ repair }) => !chosen.includes(repair),
  );
  return [
    ...left.map(({ repair, words }) => ({
      text: words,
      also: repair,
      about: `${words} (${repair})`,
      repair,
    })),
    { text: 'I give up', about: 'Ends the drill and shows the answer.', repair: null },
  ];
}

/** What is handed in when these repairs are chosen. */
export function handInOf({ state }: Here, chosen: readonly string[]): Paragraph[] {
  const { circuit } = state.session.opened;
  const lines = circuit ? handInLines(circuit, chosen) : [];
  return lines.map((text, place) => ({ text, bold: place === 0 }));
}
