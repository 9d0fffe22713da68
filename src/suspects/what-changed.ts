/** One sentence on what the last reading did to the suspects. */
import type { Ranking } from './rank-suspects.ts';

/** A suspect that moved by less than this has not moved, to a person's eye. */
const MOVED_MIN = 0.02;

/** From this chance on a repair is one that a reading can settle; below the other it is settled. */
const OPEN_FROM = 0.02;
const SETTLED_BELOW = 0.01;
/** Longer lists are cut, as one line is read at a glance. */
const NAMED_MAX = 3;

/**
 * `now unlikely: feed wire, ground wire; "the signal wire is broken" rose to 64 %`, without a full stop: what the
 * reading settled, or where it settled nothing, what fell most; where little moved, the repair that leads. `thing` names what a repair is of; null where it is of no
 * one thing.
 */
export function whatChanged(
  before: Ranking,
  after: Ranking,
  thing: (repair: string) => string | null = () => null,
): string {
  const moves = after.suspects.map((suspect) => {
    const was = before.suspects.find(({ index }) => index === suspect.index)?.chance ?? 0;
    return { suspect, was, by: suspect.chance - was };
  });
  const fell = moves.reduce((a, b) => (b.by < a.by ? b : a));
  const rose = moves.reduce((a, b) => (b.by > a.by ? b : a));
  const settled = settledBy(before, after, thing);
  const parts: string[] = [];
  if (settled.length > 0) parts.push(`now unlikely: ${listed(settled)}`);
  else if (fell.by <= -MOVED_MIN)
    parts.push(
      `"${fell.suspect.words}" fell from ${percent(fell.was)} to ${percent(fell.suspect.chance)}`,
    );
  if (rose.by >= MOVED_MIN)
    parts.push(`"${rose.suspect.words}" rose to ${percent(rose.suspect.chance)}`);
  if (parts.length === 0) {
    const [cause] = after.suspects;
    const [lead] = after.repairs;
    const name = lead ? thing(lead.repair) : null;
    const leads =
      name === null
        ? `"${cause!.words}" leads with ${percent(cause!.chance)}`
        : `${name} leads with ${percent(lead!.chance)}`;
    parts.push(`little changed; ${leads}`);
  }
  if (before.explained && !after.explained)
    parts.push('no single suspect explains all readings any more');
  if (!before.explained && after.explained) parts.push('the readings are explained again');
  return parts.join('; ');
}

/** What was open before and is not any more, the likeliest first. */
function settledBy(
  before: Ranking,
  after: Ranking,
  thing: (repair: string) => string | null,
): string[] {
  const now = new Map(after.repairs.map(({ repair, chance }) => [repair, chance]));
  const things = before.repairs
    .filter(({ repair, chance }) => chance >= OPEN_FROM && (now.get(repair) ?? 0) < SETTLED_BELOW)
    .map(({ repair }) => thing(repair))
    .filter((one) => one !== null);
  return [...new Set(things)];
}

function listed(things: readonly string[]): string {
  const more = things.length - NAMED_MAX;
  const named = things.slice(0, NAMED_MAX).join(', ');
  return more > 0 ? `${named} and ${more} more` : named;
}

/** A chance as a person reads it: never 0 % or 100 %, as neither is ever sure. */
export function percent(chance: number): string {
  if (chance < 0.01) return 'under 1 %';
  if (chance > 0.99) return 'over 99 %';
  return `${Math.round(chance * 100)} %`;
}
