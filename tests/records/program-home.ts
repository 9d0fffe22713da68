/** A home of its own for each test, and the program run in it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { main } from '../../src/commands/program.ts';

export interface ProgramHome {
  /** The folder of the present test, in which its sessions lie too. */
  readonly path: () => string;
  readonly program: (
    ...args: string[]
  ) => Promise<{ readonly code: number; readonly out: string; readonly err: string }>;
}

/** Made before each test of the file that calls it, and removed after it. */
export function programHome(): ProgramHome {
  let home = '';
  beforeEach(() => {
    home = mkdtempSync(join(tmpdir(), 'ohmward-home-'));
  });
  afterEach(() => rmSync(home, { recursive: true, force: true }));
  return {
    path: () => home,
    program: async (...args) => {
      let out = '';
      let err = '';
      const code = await main(args, {
        out: (text) => {
          out += text;
        },
        err: (text) => {
          err += text;
        },
        env: { HOME: home, XDG_CONFIG_HOME: home, OHMWARD_SESSIONS: home },
        cwd: home,
      });
      return { code, out, err };
    },
  };
}
