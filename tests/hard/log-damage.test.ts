/** Damage to a finished session: none is taken for whole when its head is known, and the first bad line is named. */
import { expect, it } from 'vitest';
import { verifySessionLog } from '../../src/log/read-session.ts';
import { LONG, SEED } from '../campaign.ts';
import { damages, finishedLog } from '../log/damages.ts';

const EVENTS = LONG ? 40 : 25;
const STEP = LONG ? 1 : 4;

it('accepts none as whole, names the first bad line, and keeps every event before it', () => {
  const { bytes: good, head } = finishedLog(EVENTS);
  expect(verifySessionLog(good, head).verdict).toBe('whole');
  expect(verifySessionLog(good, head.hash).verdict).toBe('whole');
  const began = performance.now();
  let files = 0;
  let accepted = 0;
  let misnamed = 0;
  let rejectedGood = 0;
  const wrong: string[] = [];
  for (const [what, bytes] of damages(good, STEP, SEED)) {
    files += 1;
    const log = verifySessionLog(bytes, head);
    const differs = firstDifference(good, bytes);
    const badLine = lineOf(good, differs);
    if (log.verdict === 'whole' || log.verdict === 'grown') accepted += 1;
    if (log.firstBadLine !== badLine) {
      misnamed += 1;
      wrong.push(`${what} at byte ${differs}: line ${badLine}, named ${log.firstBadLine}`);
    }
    // Only when a changed line is the last good-looking one does its event stand among the events.
    if (log.events.length < badLine - 1) rejectedGood += 1;
  }
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  console.info(
    `damage: files=${files} accepted=${accepted} misnamed=${misnamed} rejectedGood=${rejectedGood} in ${seconds} s, log of ${good.length} bytes, seed=${SEED}`,
  );
  expect(wrong.slice(0, 5)).toEqual([]);
  expect({ accepted, misnamed, rejectedGood }).toEqual({
    accepted: 0,
    misnamed: 0,
    rejectedGood: 0,
  });
  expect(files).toBeGreaterThan(LONG ? 50_000 : 10_000);
});

it('without the head a cut at the end of a line goes unseen, which is why the head is kept elsewhere', () => {
  const { bytes: good, head } = finishedLog(EVENTS);
  let unseen = 0;
  for (const [what, bytes] of damages(good, 4 * STEP, SEED)) {
    if (verifySessionLog(bytes).verdict !== 'whole') continue;
    if (what === 'last lines removed') unseen += 1;
    // A whole file can only be one cut at a line's end, or one whose very last line was changed.
    const cutAtLineEnd = bytes.equals(good.subarray(0, bytes.length)) && bytes.at(-1) === 0x0a;
    expect(cutAtLineEnd || lineOf(good, firstDifference(good, bytes)) === EVENTS).toBe(true);
    expect(verifySessionLog(bytes, head.hash).verdict).toBe('damaged');
  }
  expect(unseen).toBe(EVENTS - 1);
});

function firstDifference(a: Buffer, b: Buffer): number {
  const shorter = Math.min(a.length, b.length);
  for (let i = 0; i < shorter; i += 1) if (a[i] !== b[i]) return i;
  return shorter;
}

/** The line that holds byte `at`; behind the last line feed it is the line after the last. */
function lineOf(bytes: Buffer, at: number): number {
  let line = 1;
  for (let i = 0; i < at; i += 1) if (bytes[i] === 0x0a) line += 1;
  return line;
}
