/** What a machine may lack: tests that need it are skipped there, and told as skipped. */
import { spawnSync } from 'node:child_process';

/** Whether a program can be started, by an option that only prints something. */
export function isInstalled(program: string, option = '--version'): boolean {
  return spawnSync(program, [option], { stdio: 'ignore' }).status === 0;
}
