/** Writes a file that a command makes for its person, and says how to look at it. */
import { writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { errorCodeOf } from '../files/error-code.ts';
import { makeFolders } from '../files/make-folders.ts';
import { safeText } from '../source/safe-text.ts';
import { EXIT, type Io } from './command.ts';

/** Writes `text` to `named`, its folders too, and never over a file that is there; the exit code. */
export function writeNewFile(
  { named, text, maker, reader }: Readonly<Record<'named' | 'text' | 'maker' | 'reader', string>>,
  io: Io,
): number {
  const path = resolve(io.cwd, named);
  const shown = safeText(named);
  try {
    makeFolders(dirname(path));
    writeFileSync(path, text, { flag: 'wx' });
  } catch (error) {
    const code = errorCodeOf(error);
    const why =
      code === 'EEXIST' ? 'already exists and is left as it is' : `cannot be written (${code})`;
    io.err(`ohmward ${maker}: ${shown} ${why}\n`);
    return EXIT.wrongInput;
  }
  io.out(`${shown} is written; look at it with: ohmward ${reader} ${shown}\n`);
  return EXIT.done;
}
