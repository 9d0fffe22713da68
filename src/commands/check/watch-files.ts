/** Calls back after files in some folders have really changed: saves come as several events, and some change nothing. */
import { createHash } from 'node:crypto';
import { type FSWatcher, watch } from 'node:fs';

/** Editors write in two or three strokes; they are over within this. */
const SETTLE_MS = 40;

/** What is read again and again, and who is told when it has changed. */
export interface WatchOptions<T> {
  /** Reads everything anew. */
  readonly read: () => T;
  readonly foldersOf: (read: T) => readonly string[];
  /** What makes two states of the disk the same. */
  readonly contentOf: (read: T) => string;
  readonly changed: (read: T) => void;
  readonly signal: AbortSignal;
}

/** Runs until `signal` aborts. `changed` is called once at the start, then after each change of content. */
export function watchFiles<T>({
  read,
  foldersOf,
  contentOf,
  changed,
  signal,
}: WatchOptions<T>): Promise<void> {
  const watchers = new Map<string, FSWatcher>();
  let last = '';
  let timer: NodeJS.Timeout | null = null;
  const look = () => {
    timer = null;
    if (signal.aborted) return;
    const now = read();
    for (const folder of foldersOf(now)) {
      if (watchers.has(folder)) continue;
      const watcher = openWatcher(folder, later, () => watchers.delete(folder));
      if (watcher) watchers.set(folder, watcher);
    }
    const print = createHash('sha256').update(contentOf(now)).digest('hex');
    if (print === last) return;
    last = print;
    changed(now);
  };
  const later = () => {
    timer ??= setTimeout(look, SETTLE_MS);
  };
  look();
  return new Promise((resolve) => {
    const stop = () => {
      if (timer) clearTimeout(timer);
      for (const watcher of watchers.values()) watcher.close();
      resolve();
    };
    if (signal.aborted) stop();
    else signal.addEventListener('abort', stop, { once: true });
  });
}

/** A folder that is taken away is looked for again at the next change. */
function openWatcher(folder: string, later: () => void, gone: () => void): FSWatcher | null {
  try {
    const watcher = watch(folder, later);
    watcher.on('error', () => {
      watcher.close();
      gone();
      later();
    });
    return watcher;
  } catch {
    return null;
  }
}
