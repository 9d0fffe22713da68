/**
 * Minutes that the rest of a procedure will take, by what is likeliest wrong now: each suspect is taken through the tree
 * from the present step as one car shows it, and weighs with its chance.
 */
import type { Model } from '../circuit/model.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { walkFault } from '../proof/walk-faults.ts';
import { minutesOfWays } from '../proof/way-minutes.ts';
import type { SuspectRow } from './advisor.ts';
import type { Session } from './session.ts';
import { situationOf } from './spent-minutes.ts';
import { testTable } from './test-table.ts';

/** Suspects beyond this share of the chances, or beyond so many, hardly move the mean. Our choice. */
const SHARE_WEIGHED = 0.9;
const SUSPECTS_MAX = 12;
/** The car of the model that stands for all. */
const ONE_CAR = [0] as const;

/** Mean over the likeliest suspects, in minutes; null where the session is at no step of a procedure. */
export function minutesLeft(
  session: Session,
  model: Model,
  rows: readonly SuspectRow[],
): number | null {
  const { circuit, procedure, meter } = session.opened;
  const here = session.trail.at(-1)?.step;
  if (!circuit || !procedure || here === undefined || session.status !== 'open') return null;
  const { entries } = testTable(circuit, procedure, meter);
  const minutesOf = minutesOfWays(procedure, entries, situationOf(session));
  let mass = 0;
  let minutes = 0;
  for (const { id, chance } of likeliest(rows)) {
    mass += chance;
    minutes += chance * meanOfWays(procedure, model, { fault: id, from: here }, minutesOf);
  }
  return mass > 0 ? minutes / mass : null;
}

function meanOfWays(
  procedure: Procedure,
  model: Model,
  { fault, from }: { readonly fault: string; readonly from: string },
  minutesOf: ReturnType<typeof minutesOfWays>,
): number {
  const ways = walkFault(procedure, model, fault, { from, samples: ONE_CAR });
  return ways.reduce((sum, way) => sum + way.share * minutesOf(way), 0);
}

function likeliest(rows: readonly SuspectRow[]): SuspectRow['faults'] {
  const faults = rows.flatMap((row) => row.faults).sort((a, b) => b.chance - a.chance);
  let sum = 0;
  const many = faults.findIndex(({ chance }) => {
    sum += chance;
    return sum >= SHARE_WEIGHED;
  });
  return faults.slice(0, Math.min(SUSPECTS_MAX, many < 0 ? SUSPECTS_MAX : many + 1));
}
