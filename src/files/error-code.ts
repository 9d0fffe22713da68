/** What the system calls an error, `ENOENT` or `EACCES`; its own words when it has no code. */
export function errorCodeOf(error: unknown): string {
  return String((error as NodeJS.ErrnoException).code ?? error);
}
