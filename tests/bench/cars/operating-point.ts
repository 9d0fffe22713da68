/** The operating point of a few decks at once: bent elements by their straight pieces, or else by their formulas. */
import type { Deck } from './deck.ts';
import type { Engine } from './engine.ts';

/** Rounds in which every piece has to be found; most circuits need one or two. */
const ROUNDS = 12;

/** Voltage of a place in one of the decks. */
export type VoltsAt = (deck: number, place: string) => number;

/** Null where ngspice finds none. */
export async function operatingPoint(
  engine: Engine,
  decks: readonly Deck[],
  places: readonly string[],
): Promise<VoltsAt | null> {
  const wanted = [
    ...new Set(
      decks.flatMap((deck) => [...places.map((one) => deck.node(one)), ...deck.watched()]),
    ),
  ].filter((node) => node !== '0');
  for (let round = 0; round < ROUNDS; round += 1) {
    const at = await solved(engine, decks, wanted, false);
    if (!at) break;
    const moved = decks.map((deck, index) => deck.settle((place) => at(index, place)));
    if (!moved.includes(true)) return at;
  }
  return solved(engine, decks, wanted, true);
}

async function solved(
  engine: Engine,
  decks: readonly Deck[],
  wanted: readonly string[],
  asFormula: boolean,
): Promise<VoltsAt | null> {
  const found = await engine.solve(
    decks.flatMap((deck) => deck.tied(asFormula)),
    wanted,
  );
  if (!found) return null;
  return (index, place) => {
    const node = decks[index]?.node(place) ?? '0';
    return node === '0' ? 0 : (found.get(node) ?? 0);
  };
}
