/** Name and version of the program, as sessions keep it. */
declare const OHMWARD_VERSION: string | undefined;

/** `1.2.3`, or `source` when run unbundled. */
export const version = typeof OHMWARD_VERSION === 'string' ? OHMWARD_VERSION : 'source';

/** `ohmward 1.2.3`. */
export function programName(): string {
  return `ohmward ${version}`;
}
