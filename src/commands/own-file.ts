/** A person who names a file of their own as if it were of the library. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** How to name the file `name`.yaml in the current folder, or null when there is none. */
export function ownFile(name: string, cwd: string): string | null {
  const file = [`${name}.yaml`, `${name}.yml`].find((one) => existsSync(join(cwd, one)));
  return file === undefined ? null : `name a file by its path: ./${file}`;
}
