/** What is left to say when a drill is over or was left: the debrief or the score, the file, the way on. */
import type { DrillInHand } from '../../drill/drill-in-hand.ts';
import { debriefLines, scoreLine } from '../../drill/drill-words.ts';
import { safeText } from '../../source/safe-text.ts';
import type { Arguments, Io } from '../command.ts';

/** Prints it, as JSON with `--json`; `withDebrief` where nobody has seen the debrief yet. */
export function finishDrill(
  hand: DrillInHand,
  args: Arguments,
  io: Io,
  withDebrief: boolean,
): void {
  const { revealed, opened } = hand.drill();
  if (args.values['json'] === true) {
    const { circuit: _circuit, procedure, ...rest } = opened;
    const debrief = hand.debrief();
    const result = {
      ...rest,
      procedure: procedure?.name ?? null,
      path: hand.path(),
      revealed,
      debrief,
    };
    io.out(`${JSON.stringify(result, null, 2)}\n`);
    return;
  }
  const debrief = hand.debrief();
  const lines =
    !revealed || !debrief
      ? ['The drill is not finished.', `Go on with: ohmward drill --resume ${hand.path()}`]
      : withDebrief
        ? debriefLines(debrief)
        : [`Score: ${revealed.points} of 100`, ...revealed.score.map(scoreLine)];
  io.out(`${[...lines, `Saved: ${hand.path()}`].map((line) => safeText(line)).join('\n')}\n`);
}
