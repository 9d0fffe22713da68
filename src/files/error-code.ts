/** The system's names for its errors. */
import { constants } from 'node:os';

/** What the system calls an error, `ENOENT` or `EACCES`; its own words when it has no code. */
export function errorCodeOf(error: unknown): string {
  return systemCode(error) ?? String(error);
}

/** The same, null for an error that is none of the system's. */
export function systemCode(error: unknown): string | null {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string')
    return null;
  const { code } = error;
  const number = 'errno' in error && typeof error.errno === 'number' ? Math.abs(error.errno) : 0;
  return UNNAMED.test(code) ? (NAMES.get(number) ?? code) : code;
}

/** Node names only what exists on every system: a used-up quota comes as "Unknown system error -122". */
const UNNAMED = /^unknown/i;
const NAMES: ReadonlyMap<number, string> = new Map(
  Object.entries(constants.errno).map(([name, number]) => [number, name]),
);
