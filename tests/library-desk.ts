/** What a session is begun from in a test: the library, with sessions in memory, and nothing of who runs it. */
import { type Desk, openDesk } from '../src/commands/session/open-desk.ts';
import { isProblem } from '../src/source/problem.ts';

/** Opens it; throws with the words of the program where the library can't be read. */
export async function libraryDesk(program = 'ohmward test'): Promise<Desk> {
  const desk = await openDesk(
    {
      out: () => {},
      err: () => {},
      env: { HOME: '/nonexistent', XDG_CONFIG_HOME: '/nonexistent' },
      cwd: process.cwd(),
    },
    program,
    { preview: true },
  );
  if (isProblem(desk)) throw new Error(desk.problem);
  return desk;
}
