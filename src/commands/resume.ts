/** `ohmward resume`: goes on with a saved session where it stopped, after a crash too. */

import { listSessions } from '../files/list-sessions.ts';
import { type ListedSession, listWords } from '../records/list-words.ts';
import { isProblem } from '../source/problem.ts';
import { decideFrontEnd } from '../ui/term/colour.ts';
import {
  type Arguments,
  type CliCommand,
  EXIT,
  type Io,
  optionText,
  tellProblem,
  wordTooMany,
} from './command.ts';
import { finish } from './session/finish.ts';
import { handAtInput } from './session/hand-at-input.ts';
import { namedSession } from './session/named-session.ts';
import { type Desk, openDesk } from './session/open-desk.ts';
import { continueSession } from './session/open-session.ts';
import { isLeftInRetest, retestInLines } from './session/retest-in-lines.ts';
import { isForProgram, RPC_OPTION, rpcProblem } from './session/rpc-option.ts';
import { programName } from './version.ts';

export const command: CliCommand = {
  name: 'resume',
  summary: 'continue a session where it stopped',
  usage: 'resume [SESSION] [options]',
  examples: [
    'ohmward resume            the newest session that is not finished',
    'ohmward resume 20310506   the one whose id or file name starts like this',
    'ohmward resume FILE       this one',
  ],
  options: {
    plain: { type: 'boolean', short: 'p', help: 'a dialogue of lines instead of screens' },
    rpc: RPC_OPTION,
    json: { type: 'boolean', help: 'print the session as JSON when it ends' },
    sessions: { type: 'string', value: 'FOLDER', help: 'where sessions are saved' },
    ascii: { type: 'boolean', help: 'draw with ASCII characters only' },
    color: { type: 'string', value: 'WHEN', help: 'always, never or auto' },
    'no-alt-screen': { type: 'boolean', help: 'stay on the normal screen' },
  },
  run: async (args: Arguments, io: Io) => {
    const tooMany = wordTooMany(args, 1) ?? rpcProblem(args);
    if (tooMany) return tellProblem(io, tooMany, EXIT.wrongUse);
    const desk = await openDesk(io, programName(), { sessions: optionText(args, 'sessions') });
    if (isProblem(desk)) return tellProblem(io, desk, EXIT.wrongInput);
    const found =
      args.positionals[0] === undefined
        ? newestOpen(desk)
        : namedSession(desk, io, args.positionals[0]);
    if (found === null)
      return tellProblem(
        io,
        { problem: 'there is no unfinished session', fix: 'begin one with: ohmward run' },
        EXIT.wrongInput,
      );
    if (isProblem(found)) return tellProblem(io, found, EXIT.wrongInput);
    const forProgram = isForProgram(args);
    const opened = continueSession(desk, found.path, forProgram ? 'program' : handAtInput());
    if (isProblem(opened)) return tellProblem(io, opened, EXIT.wrongInput);
    if (forProgram) {
      const { serveSession } = await import('./session/run-rpc.ts');
      return serveSession(desk, opened, io);
    }
    const inRetest = isLeftInRetest(opened.driver.session());
    const plain = args.values['plain'] === true;
    if (decideFrontEnd(io.env, process.stdin, process.stdout, { plain }) === 'screen') {
      const { runOnScreen } = await import('./session/run-on-screen.ts');
      return runOnScreen(desk, opened, args, io, { retest: inRetest });
    }
    if (inRetest) return retestInLines(opened, desk, args, io);
    const { lineDialogue } = await import('./session/line-dialogue.ts');
    const { plainSession } = await import('../ui/plain/plain-session.ts');
    const dialogue = lineDialogue(io);
    const end = await plainSession(opened, dialogue);
    dialogue.close();
    opened.driver.close();
    return finish(opened, desk, args, io, end === 'input-ended' ? EXIT.interrupted : EXIT.done);
  },
};

/** The newest session that is not finished; one in which nothing was done only when there is no other. */
function newestOpen(desk: Desk): { readonly path: string } | null {
  let empty: ListedSession | null = null;
  for (const { read } of listSessions(desk.sessions()).sessions) {
    const listed = listWords(read());
    if (listed.status !== 'open' && listed.status !== 'paused') continue;
    if (listed.begun) return listed;
    empty ??= listed;
  }
  return empty;
}
