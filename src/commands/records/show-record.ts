/** `records show`: a session's transcript, a drill's debrief, or a whole class. */

import { resolve } from 'node:path';
import { nodeDisk } from '../../log/node-disk.ts';
import {
  drillRecordJson,
  drillRecordLines,
  isDrillFile,
  readDrill,
} from '../../records/drill-record.ts';
import { exportRecord } from '../../records/export-record.ts';
import { harmlessJson } from '../../records/record-json.ts';
import { transcriptOf } from '../../records/transcript.ts';
import { isProblem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Arguments, EXIT, type Io, textOf } from '../command.ts';
import { openDesk } from '../session/open-desk.ts';
import { programName } from '../version.ts';
import { oneOf, pathOf, readNamed, Stop } from './record-arguments.ts';

/** Shows what is named, or the class of `--class`. */
export async function showRecord(args: Arguments, io: Io): Promise<number> {
  const folder = textOf(args, 'class');
  if (folder !== undefined) return showFolder(folder, args, io);
  const path = await pathOf(oneOf(args, 'show'), args, io);
  if (isDrillFile(nodeDisk, path)) return showDrill(path, args, io);
  const { record } = await readNamed(path, args, io);
  if (args.values['json'] === true) io.out(exportRecord(record, 'json', 'shop'));
  else io.out(transcriptOf(record));
  return EXIT.done;
}

function showDrill(path: string, args: Arguments, io: Io): number {
  const read = readDrill(nodeDisk, path);
  if ('words' in read)
    throw new Stop(EXIT.wrongInput, read.words, 'see what is wrong with: ohmward records verify');
  if (read.damage !== null)
    io.err(`ohmward: this drill is not as the program wrote it: ${safeText(read.damage)}\n`);
  if (args.values['json'] === true) io.out(harmlessJson(drillRecordJson(read, path)));
  else
    io.out(
      `${drillRecordLines(read)
        .map((line) => safeText(line))
        .join('\n')}\n`,
    );
  return EXIT.done;
}

async function showFolder(folder: string, args: Arguments, io: Io): Promise<number> {
  if (args.positionals.length > 0)
    throw new Stop(EXIT.wrongUse, '--class takes a folder and no session', 'leave the name out');
  const desk = await openDesk(io, programName());
  if (isProblem(desk)) throw new Stop(EXIT.wrongInput, desk.problem, desk.fix);
  const { showClass } = await import('../drill/show-class.ts');
  return showClass(desk, resolve(io.cwd, folder), args, io);
}
