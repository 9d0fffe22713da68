/** What to tell the person when saving fails: what happened, what is safe, what to do. */

/** Why something was not saved. `code` is the system's name (`ENOSPC`) or one of ours in kebab-case. */
export interface WriteProblem {
  readonly code: string;
  /** What happened and what is safe, in whole sentences. */
  readonly words: string;
  /** What to do next, in one sentence. */
  readonly fix: string;
  /** The same where the session ends with it and nobody goes on from here. */
  readonly atTheEnd: { readonly words: string; readonly fix: string };
  /** Events of this session that are surely on the disk. */
  readonly safeEvents: number;
  /** True when the same writer may be asked again; false when only another file or folder can help. */
  readonly canRetry: boolean;
}

/** A value, or why there is none. */
export type Tried<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: WriteProblem };

/** The good case of a `Tried`. */
export function done<T>(value: T): Tried<T> {
  return { ok: true, value };
}

/** What is known at the moment of failure. */
export interface Failure {
  readonly code: string;
  /** File or folder concerned; system errors seldom name it. */
  readonly path: string;
  readonly safeEvents: number;
  /** RFC 3339 time of the last safe event. */
  readonly safeUntil?: string | null;
  readonly canRetry: boolean;
  /** True when it was reading that failed: nothing was to be saved. */
  readonly reading?: boolean;
  /** True for a file that is written as a whole: the old one or the new one is there, and events are not spoken of. */
  readonly whole?: boolean;
  /** How the next step ends, from the comma on, when the general way does not fit. */
  readonly next?: string;
}

/** The bad case of a `Tried`, put into words. */
export function failed(failure: Failure): { readonly ok: false; readonly problem: WriteProblem } {
  const { code, path, safeEvents, canRetry } = failure;
  const cause = (failure.reading ? READING_CAUSES[code] : null) ??
    CAUSES[code] ?? [`the system refused with ${code}`, 'check the disk'];
  const safe = failure.reading || failure.whole ? '' : ` ${sentence(safeWords(failure))}.`;
  const words = `${sentence(cause[0])} (${path}).${safe}`;
  const fix = `${sentence(cause[1])}${failure.next ?? (canRetry ? RETRY : ELSEWHERE)}.`;
  const atTheEnd = isHomeless(code)
    ? {
        words: `${sentence(cause[0])} (${path}). What was in it alone is lost.`,
        fix: 'Write down what you measured, and check the disk.',
      }
    : { words, fix: `${sentence(cause[1])}.` };
  return { ok: false, problem: { code, words, fix, atTheEnd, safeEvents, canRetry } };
}

/** The program alone still holds the file. */
function isHomeless(code: string): boolean {
  return code === 'file-gone' || code === 'file-replaced';
}

/** What the system's refusal means, in words that begin small. */
export function causeWords(code: string): string {
  return CAUSES[code]?.[0] ?? `the system refused with ${code}`;
}

const RETRY = ', then try again; or go on in another folder';
const ELSEWHERE =
  ', and try again or go on in another folder: a new part of the session begins and this event is written again';

/** Code: what happened, what to do about it. */
const CAUSES: Readonly<Record<string, readonly [string, string]>> = {
  ENOSPC: ['the disk is full', 'free some space'],
  EDQUOT: ['your disk quota is used up', 'free some space'],
  EFBIG: ['the file has reached its size limit', 'raise the limit for file sizes'],
  EIO: ['the disk reported a fault', 'check the disk and its cable'],
  EROFS: ['the disk is read-only', 'make it writable'],
  EACCES: ['writing is not allowed there', 'ask for the right to write there'],
  EPERM: ['writing is not allowed there', 'ask for the right to write there'],
  ENOENT: ['the file or its folder is gone', 'check that the disk is still plugged in'],
  ENODEV: ['the disk is gone', 'plug it in again'],
  ENXIO: ['the disk is gone', 'plug it in again'],
  EEXIST: ['a file of that name already exists', 'choose another name'],
  ELOOP: ['a link is where the file should be', 'remove the link'],
  EISDIR: ['a folder is where the file should be', 'move the folder away'],
  'not-a-file': ['a pipe or a device is where the file should be', 'move it away'],
  ENOTDIR: ['a file is where the folder should be', 'move the file away'],
  ENAMETOOLONG: ['the name is too long for this disk', 'choose a folder with a shorter path'],
  EMFILE: ['too many files are open', 'close other programs'],
  ENFILE: ['too many files are open', 'close other programs'],
  'no-progress': ['the disk accepts no more data', 'check the disk'],
  'file-gone': ['the session file was deleted while in use', 'leave this program running'],
  'file-replaced': [
    'another file was put in the place of the session file',
    'leave this program running',
  ],
  'file-barred': ['the rights to the session file were taken away while in use', 'give them back'],
  'file-changed': ['something else wrote to the session file', 'close the other program'],
  'open-elsewhere': [
    'the session is also open in another window, and was continued there',
    'continue there',
  ],
  'segment-closed': ['this session file is closed after an earlier fault', 'check the disk'],
  damaged: ['the session file is damaged', 'keep the file as it is'],
  'nothing-saved': ['the file holds no complete event', 'keep the file as it is'],
  'continued-elsewhere': ['the session continued in a later part', 'resume the later part'],
  'earlier-part-missing': ['an earlier part of the session is missing', 'bring it here'],
};

/** The same where something was to be read. */
const READING_CAUSES: Readonly<Record<string, readonly [string, string]>> = {
  EACCES: ['reading is not allowed there', 'ask for the right to read it'],
  EPERM: ['reading is not allowed there', 'ask for the right to read it'],
  EISDIR: ['this is a folder, not a session file', 'name a file inside it'],
  'not-a-file': ['this is a pipe or a device, not a session file', 'move it out of the folder'],
};

function safeWords({ code, safeEvents, safeUntil }: Failure): string {
  if (isHomeless(code))
    return 'the events so far are still held by this program, which writes them again in the new place';
  if (safeEvents === 0) return 'nothing of this session is saved yet';
  const until = safeUntil ? `, up to ${safeUntil}` : '';
  return safeEvents === 1 ? `1 event is safe${until}` : `${safeEvents} events are safe${until}`;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
