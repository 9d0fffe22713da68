/** The real world for `main`: standard streams, exit codes, and the last net for a bug of ours. */
import { safeText } from '../source/safe-text.ts';
import { Unworkable } from '../source/unworkable.ts';
import type { Io } from './command.ts';
import { EXIT } from './command.ts';

/** Runs `main` with the process's own streams and leaves with its code. */
export async function startProgram(
  main: (argv: readonly string[], io: Io) => Promise<number>,
): Promise<void> {
  // A closed pipe (`ohmward ... | head`) is no error.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(EXIT.done);
  });
  const io: Io = {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    env: process.env,
    cwd: process.cwd(),
    ...(process.stderr.isTTY && { terminal: { columns: () => process.stderr.columns } }),
  };
  try {
    process.exitCode = await main(process.argv.slice(2), io);
  } catch (error) {
    if (error instanceof Unworkable) {
      io.err(`ohmward: ${safeText(`${error.message}; ${error.fix}`)}\n`);
      process.exitCode = EXIT.wrongInput;
      return;
    }
    const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
    io.err(
      `ohmward: this is a bug in Ohmward, not your mistake\n${safeText(words, { lines: true })}\n`,
    );
    process.exitCode = EXIT.crashed;
  }
}
