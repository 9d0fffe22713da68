/** Every way a finished session file goes bad that we can think of. */
import { nodeDisk } from '../../src/log/node-disk.ts';
import { createSession } from '../../src/log/session-writer.ts';
import { seededRandom } from '../../src/waveform/seeded-random.ts';
import { scratchFolder } from './built-child.ts';
import { NAME, sampleEvent } from './events.ts';

/** A session of so many events from the real writer, and its head. */
export function finishedLog(events: number): {
  bytes: Buffer;
  head: { hash: string; seq: number };
} {
  const scratch = scratchFolder();
  const begun = createSession(nodeDisk, scratch.path, NAME, sampleEvent(0));
  if (!begun.ok) throw new Error(begun.problem.words);
  for (let n = 1; n < events; n += 1) begun.value.append(sampleEvent(n, n % 7 === 0 ? 600 : 0));
  const { hash, seq } = begun.value.last;
  const bytes = Buffer.from(nodeDisk.read(begun.value.path));
  begun.value.close();
  scratch.remove();
  return { bytes, head: { hash, seq } };
}

/** Damaged copies as [what, bytes]: cuts and flipped bits at every `step`-th byte, and all that is done by lines. */
export function* damages(
  good: Buffer,
  step: number,
  seed: number,
): Generator<readonly [string, Buffer]> {
  const random = seededRandom(seed);
  for (let length = 0; length < good.length; length += step)
    yield ['cut', good.subarray(0, length)];
  for (let at = Math.floor(random() * step); at < good.length; at += step)
    for (let k = 0; k < 4; k += 1) {
      const bytes = Buffer.from(good);
      bytes[at] = bytes[at]! ^ (1 << Math.floor(random() * 8));
      yield ['bit', bytes];
    }
  for (let at = 0; at < good.length; at += 512)
    for (const size of [512, 4096]) {
      const bytes = Buffer.from(good);
      bytes.fill(0, at, Math.min(at + size, good.length));
      yield ['zeros', bytes];
    }
  const lines = good.toString('latin1').split('\n').slice(0, -1);
  const join = (list: readonly string[]) => Buffer.from(`${list.join('\n')}\n`, 'latin1');
  for (let i = 0; i < lines.length; i += 1) {
    yield ['line removed', join(lines.toSpliced(i, 1))];
    yield ['line doubled', join(lines.toSpliced(i, 0, lines[i]!))];
    yield ['blank line', join(lines.toSpliced(i, 0, ''))];
    for (let j = i + 1; j < lines.length; j += 1)
      yield ['lines swapped', join(lines.with(i, lines[j]!).with(j, lines[i]!))];
  }
  for (let i = 1; i < lines.length; i += 1) yield ['last lines removed', join(lines.slice(0, i))];
  for (const extra of ['\n', ' ', '\0', '{}\n', '\ufeff'])
    yield ['bytes added', Buffer.concat([good, Buffer.from(extra)])];
  yield ['bytes before', Buffer.concat([Buffer.from('\ufeff'), good])];
}
