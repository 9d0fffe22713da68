/** A drill without a person. */
import { type ActionsFile, commandsFor } from '../../drill/drill-actions.ts';
import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import { formatIssue } from '../../source/format-issue.ts';

/**
 * Does the actions of a file, and returns null, or says which one could not be done. A test that the bench stops for
 * safety, and a caution passed over, are part of the drill: told in `tell`, and the next action follows.
 */
export function runActions(
  hand: DrillInHand,
  file: ActionsFile,
  tell: (words: string) => void,
): string | null {
  for (const index of file.actions.keys()) {
    const wanted = commandsFor(file, index, hand.drill());
    if ('code' in wanted) return formatIssue(wanted, file.source.text);
    if (wanted.acknowledge) hand.perform({ type: 'acknowledge', test: wanted.acknowledge });
    const before = hand.drill().events.length;
    const { refused } = hand.perform(wanted.command);
    if (!refused) continue;
    if (hand.drill().events.length > before) {
      tell(`action ${index + 1}: ${refused.words}. ${refused.fix}`);
      continue;
    }
    const at = file.source.locate(['actions', index]);
    const { words, fix } = refused;
    return formatIssue({ code: 'refused', severity: 'error', at, words, fix }, file.source.text);
  }
  return null;
}
