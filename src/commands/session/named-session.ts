/** The session that a person means, to go on with: named in the same ways as for `ohmward records`. */
import { sessionAtPath, sessionFileIn, sessionInIndex } from '../../records/find-session.ts';
import { indexPath, openIndex } from '../../records/record-index.ts';
import type { Problem } from '../../source/problem.ts';
import type { Io } from '../command.ts';
import type { Desk } from './open-desk.ts';

/** A path, a file name in the sessions folder, an id, the beginning of either, or `last`. */
export function namedSession(
  desk: Desk,
  { cwd, env }: Pick<Io, 'cwd' | 'env'>,
  name: string,
): { readonly path: string } | Problem {
  const folder = desk.sessions();
  const path = sessionAtPath(desk.disk, cwd, name) ?? sessionFileIn(desk.disk, folder, name);
  if (path !== null) return { path };
  const opened = openIndex(desk.disk, folder, indexPath(env, folder));
  if ('words' in opened)
    return { problem: opened.words, fix: 'name another folder with --sessions' };
  const found = sessionInIndex(opened.index, name);
  return found.ok ? { path: found.path } : { problem: found.words, fix: found.fix };
}
