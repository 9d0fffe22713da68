/** Reads a session file into its record. A damaged one gives the record of what stands before the damage. */
import type { Disk } from '../log/disk.ts';
import { openSession } from '../log/open-session.ts';
import type { SessionEvent } from '../session/events.ts';
import { checkEvents } from './check-events.ts';
import { checkHistory, type History } from './check-history.ts';
import type { SessionRecord } from './record-form.ts';
import { recordOf } from './session-record.ts';

export type ReadRecord =
  | {
      readonly ok: true;
      readonly record: SessionRecord;
      /** All files of the session, first part first. */
      readonly paths: readonly string[];
      readonly state: 'whole' | 'torn-tail' | 'damaged';
      /** What is wrong, without a full stop; null for a whole session. */
      readonly words: string | null;
      readonly history: History;
      readonly events: readonly SessionEvent[];
    }
  | { readonly ok: false; readonly words: string; readonly fix: string };

/** Reads the session that ends in the file `path`. */
export function readRecord(disk: Disk, path: string): ReadRecord {
  const opened = openSession(disk, path);
  if (!opened.ok) return { ok: false, words: opened.problem.words, fix: opened.problem.fix };
  const { events: stored, log, paths } = opened.value;
  const { events, flaw } = checkEvents(stored);
  const history = checkHistory(events);
  if (!history) {
    const why = flaw ? `event ${flaw.seq} ${flaw.words}` : (log.words ?? 'it has no events');
    return {
      ok: false,
      words: `${path} is no session this program can read: ${why}`,
      fix: 'keep the file as it is, and look for a copy of it',
    };
  }
  const followed = history.session.events.length;
  const last = stored[followed - 1]!;
  const hash = stored[followed]?.prev ?? log.head ?? '';
  const broken = flaw ?? brokenHistory(history, stored);
  const words = log.words ?? (broken && `event ${broken.seq} ${broken.words}`);
  return {
    ok: true,
    record: recordOf(history.session, { seq: last.seq, hash }),
    paths,
    state: log.verdict === 'whole' && broken ? 'damaged' : log.verdict,
    words: words ?? null,
    history,
    events,
  };
}

function brokenHistory({ flaw }: History, stored: readonly { readonly seq: number }[]) {
  return flaw ? { seq: stored[flaw.index]?.seq ?? 0, words: flaw.words } : null;
}
