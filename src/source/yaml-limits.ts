/** What a file of ours may hold, however it is read. */

/** Above these a file is no procedure, circuit or job that a person wrote. */
export const MAX_DEPTH = 32;
export const MAX_NODES = 20_000;
export const REFUSED_KEYS: ReadonlySet<string> = new Set([
  '__proto__',
  'constructor',
  'prototype',
  '<<',
]);
export const INVISIBLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\p{Zl}\p{Zp}]/u;
