/** What is left to say when a drill is over or was left: the debrief or the score, the file, the way on. */
import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import { debriefLines, scoreLine } from '../../drill/drill-words.ts';
import { drillRecordJson } from '../../records/drill-record.ts';
import { harmlessJson } from '../../records/record-json.ts';
import { safeText } from '../../source/safe-text.ts';
import type { Arguments, Io } from '../command.ts';

/**
 * What of the end is still to be printed: the whole debrief where nobody has seen it, the score where it went with the
 * screen, nothing where the dialogue has just said it.
 */
export type LeftToSay = 'debrief' | 'score' | 'said';

/** Prints it, as JSON with `--json`. */
export function finishDrill(hand: DrillInHand, args: Arguments, io: Io, left: LeftToSay): void {
  if (args.values['json'] === true) {
    const result = drillRecordJson({ drill: hand.drill(), debrief: hand.debrief() }, hand.path());
    io.out(harmlessJson(result));
    return;
  }
  const lines = [...linesLeft(hand, left), `Saved: ${hand.path()}`];
  io.out(`${lines.map((line) => safeText(line)).join('\n')}\n`);
}

function linesLeft(hand: DrillInHand, left: LeftToSay): string[] {
  const { revealed } = hand.drill();
  const debrief = hand.debrief();
  if (!revealed || !debrief)
    return ['The drill is not finished.', `Go on with: ohmward drill --resume ${hand.path()}`];
  switch (left) {
    case 'debrief':
      return debriefLines(debrief);
    case 'score':
      return [`Score: ${revealed.points} of 100`, ...revealed.score.map(scoreLine)];
    case 'said':
      return [];
  }
}
