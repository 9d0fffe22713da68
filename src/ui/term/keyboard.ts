/**
 * Keys on their way from the decoder to whoever listens: in order, one at a time, none lost.
 *
 * After each key the next one waits until the screen has taken the last one in (`settle`), so that the
 * Enter of `12.4⏎` meets the field that already holds 12.4, and a key after a change of screen meets the
 * new screen.
 */
import { createKeyDecoder, type KeyEvent, keyLabel, type Pending } from './key-decoder.ts';

export interface Keyboard {
  /** Bytes from the terminal. */
  feed(bytes: Uint8Array): void;
  /** Whole keys from elsewhere: tests, replays. */
  press(...events: KeyEvent[]): void;
  /** Listens until the returned function is called. Keys typed before anyone listened are kept. */
  subscribe(listener: (event: KeyEvent) => void): () => void;
  /** How to wait until a key has taken effect; null when nothing needs waiting for. */
  settleWith(settle: ((done: () => void) => void) | null): void;
  /** Sees each key before the listeners and may keep it (true). */
  interceptWith(intercept: ((event: KeyEvent) => boolean) | null): void;
  /** While muted, every key but Ctrl+C is dropped. */
  mute(muted: boolean): void;
  /** Whether anyone listens. */
  readonly heard: boolean;
  /** Resolves when every key so far has been delivered and has taken effect. */
  idle(): Promise<void>;
  /** Forgets what is waiting and takes nothing more. */
  close(): void;
}

/**
 * How long an unfinished input waits for its rest. 50 ms tells the Escape key from a sequence cut on a slow
 * line; nobody sees it. A begun sequence or paste is certain to go on, so it may take longer.
 */
const WAIT_MS: Readonly<Record<Pending, number>> = { escape: 50, sequence: 500, paste: 2000 };

/** Keys kept while no one listens or the screen is busy; beyond it someone leans on the keyboard. */
const QUEUE_MAX = 10_000;

/** A keyboard without a terminal; `feed` it. */
export function createKeyboard(): Keyboard {
  const decoder = createKeyDecoder();
  const listeners = new Set<(event: KeyEvent) => void>();
  let queue: KeyEvent[] = [];
  let settle: ((done: () => void) => void) | null = null;
  let intercept: ((event: KeyEvent) => boolean) | null = null;
  let muted = false;
  let waiting = false;
  let running = false;
  let closed = false;
  let timer: NodeJS.Timeout | undefined;
  let resting: (() => void)[] = [];

  function enqueue(events: readonly KeyEvent[]): void {
    for (const event of events) {
      if (closed || (muted && keyLabel(event) !== 'ctrl-c') || intercept?.(event)) continue;
      if (queue.length < QUEUE_MAX) queue.push(event);
    }
    run();
  }

  function run(): void {
    if (running) return;
    running = true;
    try {
      while (!closed && !waiting && listeners.size > 0) {
        const event = queue.shift();
        if (event === undefined) break;
        for (const listener of [...listeners]) listener(event);
        if (settle === null) continue;
        waiting = true;
        settle(() => {
          waiting = false;
          run();
        });
      }
    } finally {
      running = false;
    }
    if (closed || (!waiting && (queue.length === 0 || listeners.size === 0))) {
      const done = resting;
      resting = [];
      for (const resolve of done) resolve();
    }
  }

  return {
    feed(bytes) {
      if (closed) return;
      clearTimeout(timer);
      const events = decoder.push(bytes);
      if (decoder.pending !== null)
        timer = setTimeout(() => enqueue(decoder.flush()), WAIT_MS[decoder.pending]);
      enqueue(events);
    },
    press: (...events) => enqueue(events),
    subscribe(listener) {
      listeners.add(listener);
      // Not at once: the listener's component is still being mounted.
      if (queue.length > 0) setImmediate(run);
      return () => listeners.delete(listener);
    },
    settleWith(next) {
      settle = next;
      if (next === null && waiting) {
        waiting = false;
        setImmediate(run);
      }
    },
    interceptWith(next) {
      intercept = next;
    },
    mute(next) {
      muted = next;
    },
    get heard() {
      return listeners.size > 0;
    },
    idle: () =>
      new Promise((resolve) => {
        resting.push(resolve);
        run();
      }),
    close() {
      closed = true;
      queue = [];
      clearTimeout(timer);
      run();
    },
  };
}
