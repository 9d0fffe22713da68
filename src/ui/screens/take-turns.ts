/** Long work beside the keys: a slice when its turn comes, and a turn for whatever else waits in between. */
import type { Slices } from '../../suspects/slices.ts';

/** So long in one go, in milliseconds: half of what a key may take to the screen. Our choice. */
const TURN_MS = 8;

/** Does the work, then `done`; gives what calls it off. */
export function takeTurns(work: Slices<void>, done: () => void): () => void {
  const goOn = () => {
    const end = performance.now() + TURN_MS;
    try {
      while (!work.next().done) {
        if (performance.now() < end) continue;
        turn = setImmediate(goOn);
        return;
      }
    } catch {
      // Whoever asks for what was worked out meets the error where it can be shown.
    }
    done();
  };
  let turn = setImmediate(goOn);
  return () => clearImmediate(turn);
}
