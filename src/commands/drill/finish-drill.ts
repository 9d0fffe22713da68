/** What is left to say when a drill is over or was left: the debrief or the score, the file, the way on. */
import { debriefLines, scoreLine } from '../../drill/drill-words.ts';
import { withDebrief } from '../../records/drill-record.ts';
import { recordJson } from '../../records/record-json.ts';
import { recordOf } from '../../records/session-record.ts';
import { safeText } from '../../source/safe-text.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { type Arguments, EXIT, type Io } from '../command.ts';
import { tellUnsaved } from '../session/finish.ts';

/**
 * What of the end is still to be printed: the whole debrief where nobody has seen it, the score where it went with the
 * screen, nothing where the dialogue has just said it.
 */
export type LeftToSay = 'debrief' | 'score' | 'said';

/** Prints it, as JSON with `--json`. The file must be closed. The exit code: `code`, or another where not all is saved. */
export function finishDrill(
  opened: OpenedSession,
  args: Arguments,
  io: Io,
  left: LeftToSay,
  code: number,
): number {
  print(opened, args, io, left);
  return tellUnsaved(opened, io) ? EXIT.wrongInput : code;
}

function print(opened: OpenedSession, args: Arguments, io: Io, left: LeftToSay): void {
  const { driver, drill } = opened;
  if (args.values['json'] === true) {
    const record = recordOf(driver.session(), driver.head());
    io.out(recordJson(withDebrief(record, drill?.debrief() ?? null)));
    return;
  }
  const where = driver.isElsewhere() || driver.unsaved() ? [] : [`Saved: ${driver.path()}`];
  io.out([...linesLeft(opened, left), ...where].map((line) => `${safeText(line)}\n`).join(''));
}

function linesLeft({ driver, drill }: OpenedSession, left: LeftToSay): string[] {
  const debrief = drill?.debrief();
  if (!debrief) {
    const goOn = [`Go on with: ohmward drill --resume ${driver.path()}`];
    return ['The drill is not finished.', ...(driver.unsaved() ? [] : goOn)];
  }
  switch (left) {
    case 'debrief':
      return debriefLines(debrief);
    case 'score':
      return [
        `Score: ${debrief.points} of 100`,
        ...debrief.score.map((part) => scoreLine(part, debrief.facts)),
      ];
    case 'said':
      return [];
  }
}
