/** Runs a command in a folder of its own and keeps what it says. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import type { CliCommand } from '../../src/commands/command.ts';

interface Said {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A new empty folder with these files in it. */
export function folderWith(files: Readonly<Record<string, string>>): {
  path: string;
  remove: () => void;
} {
  const path = mkdtempSync(join(tmpdir(), 'ohmward-check-'));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(path, name)), { recursive: true });
    writeFileSync(join(path, name), text);
  }
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

/** The command with a line of arguments. Paths in it are taken as they stand, so name them absolutely. */
export async function run(
  command: CliCommand,
  args: readonly string[],
  cwd = process.cwd(),
): Promise<Said> {
  const options = Object.fromEntries(
    Object.entries(command.options).map(([name, { type, multiple }]) => [
      name,
      { type, multiple: multiple === true },
    ]),
  );
  const { positionals, values } = parseArgs({ args: [...args], allowPositionals: true, options });
  let out = '';
  let err = '';
  const code = await command.run(
    { positionals, values: values as Record<string, string | boolean | string[] | undefined> },
    {
      out: (text) => (out += text),
      err: (text) => (err += text),
      env: { NO_COLOR: '1' },
      cwd,
    } as Parameters<CliCommand['run']>[1],
  );
  return { code, out, err };
}
