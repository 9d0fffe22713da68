/** Whether a path lies within a folder. */
import { isAbsolute, relative, resolve, sep } from 'node:path';

/** True for a file or folder somewhere below `folder`, by the rules of this system; not for the folder itself. */
export function isBelow(path: string, folder: string): boolean {
  const way = relative(resolve(folder), resolve(path));
  // From one drive of Windows to another no way leads, and the other place comes back whole.
  return way !== '' && way.split(sep)[0] !== '..' && !isAbsolute(way);
}
