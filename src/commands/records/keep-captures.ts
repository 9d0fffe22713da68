/** `records keep`: the captures that passed after a repair, for the next vehicle like it. */
import { isProblem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import { keptWords } from '../../ui/parts/kept-words.ts';
import { type Arguments, EXIT, type Io } from '../command.ts';
import { goodPlaces } from '../session/captures-at-hand.ts';
import { keepGood } from '../session/good-captures.ts';
import { openDesk } from '../session/open-desk.ts';
import { programName } from '../version.ts';
import { oneSession, readNamed, Stop } from './record-arguments.ts';

/** Keeps those of the named session; nothing is kept of one that is damaged. */
export async function keepCaptures(args: Arguments, io: Io): Promise<number> {
  const { session } = await readNamed(oneSession(args, 'keep'), args, io);
  const desk = await openDesk(io, programName());
  if (isProblem(desk)) throw new Stop(EXIT.wrongInput, desk.problem, desk.fix);
  const done = await keepGood(goodPlaces(desk), session);
  if (isProblem(done)) throw new Stop(EXIT.wrongInput, done.problem, done.fix);
  if (args.values['json'] === true) io.out(`${JSON.stringify(done)}\n`);
  else for (const line of keptWords(done)) io.out(`${safeText(line)}\n`);
  return done.left.length === 0 ? EXIT.done : EXIT.wrongInput;
}
