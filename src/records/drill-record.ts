/** A drill's record with its debrief: the one place where records ask for one, since it weighs every reading anew. */
import { debriefOf } from '../drill/debrief.ts';
import { debriefLines } from '../drill/drill-words.ts';
import { createWorld, type MindStore } from '../drill/drill-world.ts';
import { sha256 } from '../log/hash.ts';
import type { Session } from '../session/session.ts';
import type { SessionRecord } from './record-form.ts';

/** The record of `session` with the debrief; as it was for any other session, and before the answer was revealed. */
export function withDebrief(
  record: SessionRecord,
  session: Session,
  minds: MindStore = new Map(),
): SessionRecord {
  const { drill } = record;
  if (!drill) return record;
  return { ...record, drill: { ...drill, debrief: debriefOfSession(session, minds) } };
}

function debriefOfSession(session: Session, minds: MindStore): readonly string[] | null {
  const { circuit, meter, vehicle } = session.opened;
  if (!session.revealed || !circuit || vehicle.kind !== 'drill') return null;
  const { level, seed } = vehicle;
  const world = createWorld({ circuit, meter, level, seed }, sha256, [], minds);
  return world && debriefLines(debriefOf(session, world));
}
