/**
 * Half of a sign, as `\ud800` alone: JSON can write it in six letters, and no text of a file can hold it, so that a session
 * could not be saved with it.
 */

/** Whether all texts in what JSON gave are whole. Without recursion: it may be nested a hundred thousand deep. */
export function isWhole(value: unknown): boolean {
  const open = [value];
  while (open.length > 0) {
    const one = open.pop();
    if (typeof one === 'string' && !one.isWellFormed()) return false;
    if (typeof one === 'object' && one !== null)
      for (const [key, inner] of Object.entries(one)) open.push(key, inner);
  }
  return true;
}
