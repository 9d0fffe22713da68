/** What is known of a tree of one's own before a session follows it: what the last check of this very text found. */
import { isBelow } from '../../files/is-below.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { keptVerdict, treeKey } from '../check/kept-verdicts.ts';
import type { Desk, SessionSubject } from './open-desk.ts';

/** What is to be said of a tree; a shipped one is proven with each version, and one that was found right says nothing. */
export interface TreeNotice {
  readonly words: string;
  /** Mistakes were found; false where nothing is known. */
  readonly isWrong: boolean;
}

/** Null where there is nothing to say. Reads one small file, and computes nothing. */
export function treeNotice(desk: Desk, subject: SessionSubject): TreeNotice | null {
  if (subject.kind === 'free-order') return null;
  const { procedure } = subject;
  const { file } = procedure.source;
  if (isBelow(file, desk.library.folder) || procedure.draft.circuit === undefined) return null;
  const verdict = keptVerdict(desk.env, treeKey(procedure, desk.library));
  const look = `ohmward check ${file}`;
  if (verdict === null)
    return {
      isWrong: false,
      words: `This tree has not been checked as it is now: it may end in a wrong repair. Check it: ${look}`,
    };
  const { errors, at } = verdict;
  if (errors === 0) return null;
  const count = errors === 1 ? '1 error' : `${errors} errors`;
  return {
    isWrong: true,
    words: `The check of ${at.slice(0, 16).replace('T', ' ')} UTC found ${count} in this tree: it may end in a wrong repair. See: ${look}`,
  };
}

/** The session that was just begun, with what is to be said of its tree. */
export function withNotice(
  desk: Desk,
  subject: SessionSubject,
  opened: OpenedSession,
): OpenedSession {
  const notice = treeNotice(desk, subject);
  return notice === null ? opened : { ...opened, notice: notice.words };
}
