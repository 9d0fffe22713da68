/** The record of a session that is being worked on; a conclusion out of a file passes for no more than the file says. */
import { notJudgedAgain } from '../../records/judged-by.ts';
import type { Head, SessionRecord } from '../../records/record-form.ts';
import { recordOf } from '../../records/session-record.ts';
import type { Session } from '../../session/session.ts';

/** `isAsFiled` says that the conclusion in force was read and not made here, so that nobody has recomputed it. */
export function recordNow(session: Session, head: Head, isAsFiled: boolean): SessionRecord {
  const record = recordOf(session, head);
  return isAsFiled ? notJudgedAgain(record) : record;
}

/** Whether a session that was read from a file with a conclusion still stands by that one; a drill is verified by its seed. */
export function isSameFiled({ opened, concluded }: Session, now: Session): boolean {
  return opened.vehicle.kind !== 'drill' && concluded !== null && now.concluded === concluded;
}
