/** One sentence on what the last reading did to the suspects. */
import type { Ranking, Suspect } from './rank-suspects.ts';

/** A suspect that moved by less than this has not moved, to a person's eye. */
const MOVED_MIN = 0.02;

/** `"the feed wire is broken" fell from 31 % to 1 %; "the signal wire is broken" rose to 64 %`, without a full stop. */
export function whatChanged(before: Ranking, after: Ranking): string {
  const moves = after.suspects.map((suspect) => {
    const was = before.suspects.find(({ index }) => index === suspect.index)?.chance ?? 0;
    return { suspect, was, by: suspect.chance - was };
  });
  const fell = moves.reduce((a, b) => (b.by < a.by ? b : a));
  const rose = moves.reduce((a, b) => (b.by > a.by ? b : a));
  const parts: string[] = [];
  if (fell.by <= -MOVED_MIN)
    parts.push(
      `"${fell.suspect.words}" fell from ${percent(fell.was)} to ${percent(fell.suspect.chance)}`,
    );
  if (rose.by >= MOVED_MIN)
    parts.push(`"${rose.suspect.words}" rose to ${percent(rose.suspect.chance)}`);
  if (parts.length === 0) {
    const leader: Suspect = after.suspects[0]!;
    parts.push(`nothing much changed; "${leader.words}" leads with ${percent(leader.chance)}`);
  }
  if (before.explained && !after.explained)
    parts.push('no single suspect explains all readings any more');
  if (!before.explained && after.explained) parts.push('the readings are explained again');
  return parts.join('; ');
}

/** A chance as a person reads it: never 0 % or 100 %, as neither is ever sure. */
export function percent(chance: number): string {
  if (chance < 0.01) return 'under 1 %';
  if (chance > 0.99) return 'over 99 %';
  return `${Math.round(chance * 100)} %`;
}
