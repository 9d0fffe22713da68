/**
 * Keeps the program small beside whatever else runs on the laptop. V8 by itself lets the heap grow to three times what
 * is in use before it cleans up; here it cleans a little more often. `tests/bench/program-bench.ts` measures both the
 * memory and the keys.
 */
import { setFlagsFromString } from 'node:v8';

/** The heap may grow by this share of what is in use. */
const GROWTH_PERCENT = 40;
/** Engines this was tried on (Node 20 to 26). An engine that does not know the setting would complain on the screen. */
const TRIED = { from: 11, to: 14 };

/** Asks for it, where the engine is known to heed it at any time: the share is read anew at each collection. */
export function keepHeapSmall(engine: string = process.versions.v8): void {
  const major = Number.parseInt(engine, 10);
  if (major >= TRIED.from && major <= TRIED.to)
    setFlagsFromString(`--heap-growing-percent=${GROWTH_PERCENT}`);
}
