/** Where the edges of a signal should stand, as the maker's papers state it: "falls at 114 deg, rises at 294; within 4". */
import { nearestAngle, PHASE_DEGREES_MOST, SPREAD_MOST } from './compare-captures.ts';
import type { Phase } from './measure-phase.ts';

/** The edges of one turn as they are stated, and how exactly. */
export interface StatedEdges {
  readonly edges: readonly {
    readonly direction: 'rising' | 'falling';
    /** After the start of the turn of the other signal: the tooth behind its gap. */
    readonly degrees: number;
  }[];
  /** How far they may stand elsewhere. */
  readonly withinDegrees: number;
}

/** How such a text is written, for who did not. */
export const STATED_FORM = 'falls at 114 deg, rises at 294 deg; within 4 deg';

const DEGREE = '(?:\\s*(?:deg|degrees|°))?';
const EDGE = new RegExp(`^(falls|rises)(?:\\s+at)?\\s+(\\d{1,3}(?:\\.\\d+)?)${DEGREE}$`, 'i');
const WITHIN = new RegExp(`^within\\s+(\\d{1,2}(?:\\.\\d+)?)${DEGREE}$`, 'i');
const CYCLE = 720;
const EDGES_MOST = 24;

/** Whether a text is meant so; whatever else it is, it is no file. */
export function looksStated(text: string): boolean {
  return /^\s*(?:falls|rises)\b/i.test(text);
}

/** The edges of such a text; null when it cannot be understood. */
export function readStatedEdges(text: string): StatedEdges | null {
  const [said = '', limit, ...rest] = text.split(';').map((part) => part.trim());
  if (rest.length > 0 || said.length > 1000) return null;
  const edges = said.split(',').flatMap((one) => {
    const [, direction, degrees] = EDGE.exec(one.trim()) ?? [];
    if (direction === undefined || Number(degrees) >= CYCLE) return [];
    return [
      {
        direction: direction.toLowerCase() === 'rises' ? ('rising' as const) : ('falling' as const),
        degrees: Number(degrees),
      },
    ];
  });
  if (edges.length !== said.split(',').length || edges.length > EDGES_MOST) return null;
  if (limit === undefined) return { edges, withinDegrees: PHASE_DEGREES_MOST };
  const within = Number(WITHIN.exec(limit)?.[1] ?? 0);
  return within > 0 ? { edges, withinDegrees: within } : null;
}

/**
 * Mean shift in degrees, positive when they come later than stated, in the pairing that fits best and then is the least.
 * Which of the two turns of a cycle came first in the capture is chance. Null when none fits.
 */
export function statedShift(
  found: Pick<Phase, 'cycleDegrees' | 'edges'>,
  { edges }: StatedEdges,
): number | null {
  const [first] = edges;
  if (!first) return null;
  let best: { shift: number; spread: number } | null = null;
  for (const start of found.edges) {
    if (start.direction !== first.direction) continue;
    const from = nearestAngle(start.degrees - first.degrees, 360);
    const shifts = edges.map(({ direction, degrees }) => {
      const aways = found.edges
        .filter((edge) => edge.direction === direction)
        .map((edge) =>
          nearestAngle(
            edge.degrees - degrees - (start.degrees - first.degrees),
            found.cycleDegrees,
          ),
        );
      const least = aways.reduce<number | null>(
        (near, away) => (near === null || Math.abs(away) < Math.abs(near) ? away : near),
        null,
      );
      return least === null ? null : from + least;
    });
    if (shifts.some((shift) => shift === null)) return null;
    const all = shifts as number[];
    const spread = Math.max(...all) - Math.min(...all);
    if (spread > SPREAD_MOST) continue;
    const shift = all.reduce((sum, one) => sum + one, 0) / all.length;
    const better =
      best === null ||
      spread < best.spread - 1 ||
      (spread < best.spread + 1 && Math.abs(shift) < Math.abs(best.shift));
    if (better) best = { shift, spread };
  }
  return best?.shift ?? null;
}
