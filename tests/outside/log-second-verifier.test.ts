/**
 * A second reading of the format by a few lines that use none of our code: JSON.parse, node:crypto and the package
 * `canonicalize`. It must agree with ours on every damaged file.
 */
import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { expect, it } from 'vitest';
import { verifySessionLog } from '../../src/log/read-session.ts';
import { damages, finishedLog } from '../log/damages.ts';

/** True when every line is canonical, numbered, chained, and the last one's hash is `head`. */
function isWhole(bytes: Buffer, head: string): boolean {
  const lines = bytes.toString('latin1').split('\n');
  if (lines.pop() !== '') return false;
  let prev: string | null = null;
  for (const [i, latin] of lines.entries()) {
    const line = Buffer.from(latin, 'latin1');
    try {
      const event = JSON.parse(line.toString());
      const text = Buffer.from(canonicalize(event)!);
      if (event.seq !== i + 1 || event.prev !== prev || !text.equals(line)) return false;
    } catch {
      return false;
    }
    prev = createHash('sha256').update(line).digest('hex');
  }
  return prev === head;
}

it('agrees on the whole file and on 2,000 damaged ones', () => {
  const { bytes: good, head } = finishedLog(12);
  expect([isWhole(good, head.hash), verifySessionLog(good, head.hash).verdict]).toEqual([
    true,
    'whole',
  ]);
  let files = 0;
  for (const [what, bytes] of damages(good, 8, 41)) {
    files += 1;
    const ours = verifySessionLog(bytes, head.hash).verdict === 'whole';
    if (ours !== isWhole(bytes, head.hash)) expect.fail(`the two disagree: ${what}`);
  }
  expect(files).toBeGreaterThan(2000);
});
