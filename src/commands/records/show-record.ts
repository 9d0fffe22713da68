/** `records show`: a session's transcript, a drill's debrief, or a whole class. */

import { resolve } from 'node:path';
import { debriefFrom, withDebrief } from '../../records/drill-record.ts';
import { exportRecord } from '../../records/export-record.ts';
import { notJudgedAgain } from '../../records/judged-by.ts';
import { transcriptOf } from '../../records/transcript.ts';
import { isProblem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Arguments, EXIT, type Io, optionText } from '../command.ts';
import { openDesk } from '../session/open-desk.ts';
import { programName } from '../version.ts';
import { oneSession, readStanding, Stop, sessionPathOf } from './record-arguments.ts';

/** Shows what is named, or the class of `--class`. */
export async function showRecord(args: Arguments, io: Io): Promise<number> {
  const folder = optionText(args, 'class');
  if (folder !== undefined) return showFolder(folder, args, io);
  const name = oneSession(args, 'show');
  const path = await sessionPathOf(name, args, io);
  const { record: plain, session, flaw } = await readStanding(path, args, io);
  const record = withDebrief(notJudgedAgain(plain), debriefFrom(session));
  if (args.values['json'] === true) io.out(exportRecord(record, 'json', 'shop'));
  else io.out(transcriptOf(record));
  // Recomputing takes the circuit's model and seconds; what is shown must not pass for what came through that.
  if (!flaw)
    io.err(
      `Shown as its file has it; nothing was recomputed. To have it recomputed: ohmward records verify ${safeText(name)}\n`,
    );
  return flaw ? EXIT.wrongInput : EXIT.done;
}

async function showFolder(folder: string, args: Arguments, io: Io): Promise<number> {
  if (args.positionals.length > 0)
    throw new Stop(EXIT.wrongUse, '--class takes a folder and no session', 'leave the name out');
  const desk = await openDesk(io, programName());
  if (isProblem(desk)) throw new Stop(EXIT.wrongInput, desk.problem, desk.fix);
  const { showClass } = await import('../drill/show-class.ts');
  return showClass(desk, resolve(io.cwd, folder), args, io);
}
