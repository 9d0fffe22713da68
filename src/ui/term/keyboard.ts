/**
 * Keys on their way from the decoder to whoever listens: in order, one at a time, none lost.
 *
 * After each key the next one waits until the screen has taken the last one in (`settle`), so that the
 * Enter of `12.4⏎` meets the field that already holds 12.4, and a key after a change of screen meets the
 * new screen.
 */
import { createKeyDecoder, type KeyEvent, keyLabel, type Pending } from './key-decoder.ts';

/** The keys of the terminal, handed out one by one. */
export interface Keyboard {
  /** Bytes from the terminal. */
  feed(bytes: Uint8Array): void;
  /** Whole keys from elsewhere: tests, replays. */
  press(...events: KeyEvent[]): void;
  /**
   * Listens until the returned function is called. Keys typed before anyone listened are kept. `takesText` says whether
   * what is typed goes into a field now, and so changes nothing until it is confirmed.
   */
  subscribe(listener: (event: KeyEvent) => void, takesText?: () => boolean): () => void;
  /** How to wait until a key has taken effect; null when nothing needs waiting for. */
  settleWith(settle: ((done: () => void) => void) | null): void;
  /** Sees each key before the listeners and may keep it (true). */
  interceptWith(intercept: ((event: KeyEvent) => boolean) | null): void;
  /** While muted, only Ctrl+C is taken, and text for a field up to the first other key. */
  mute(muted: boolean): void;
  /**
   * Tells how many keys were not taken: while muted, since far too many came at once, or since a paste met no field; 0 once
   * one is taken again.
   */
  countUntakenWith(tell: ((count: number) => void) | null): void;
  /** The key that the listeners were given last. */
  readonly last: KeyEvent | null;
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

/**
 * Keys kept while no one listens or the screen is busy. Text for a field is taken in one piece, so much of it may wait;
 * of other keys each draws the screen anew, and so many at once come of a paste or of someone who leans on the keyboard.
 */
const TEXT_MAX = 10_000;
const KEYS_MAX = 256;

/** So many signs that wait in a row come from a scanner, or a paste that the terminal does not mark. Our choice. */
const BURST_MIN = 64;

/** A keyboard without a terminal; `feed` it. */
export function createKeyboard(): Keyboard {
  const decoder = createKeyDecoder();
  const listeners = new Map<(event: KeyEvent) => void, () => boolean>();
  let queue: KeyEvent[] = [];
  /** How many of them are no text. */
  let others = 0;
  let last: KeyEvent | null = null;
  let settle: ((done: () => void) => void) | null = null;
  let intercept: ((event: KeyEvent) => boolean) | null = null;
  let muted = false;
  let untaken = 0;
  let countUntaken: ((count: number) => void) | null = null;
  let waiting = false;
  let running = false;
  let closed = false;
  let timer: NodeJS.Timeout | undefined;
  let resting: (() => void)[] = [];

  function enqueue(events: readonly KeyEvent[]): void {
    const before = untaken;
    for (const event of events) {
      if (closed) continue;
      if (muted && keyLabel(event) !== 'ctrl-c' && !goesIntoField(event)) {
        untaken += signsOf(event);
        continue;
      }
      if (intercept?.(event)) continue;
      if (!muted && !waiting && queue.length === 0) untaken = 0;
      if (queue.length >= roomFor(event) && keyLabel(event) !== 'ctrl-c') {
        untaken += signsOf(event);
        continue;
      }
      queue.push(event);
      if (!isText(event)) others += 1;
    }
    if (untaken !== before) countUntaken?.(untaken);
    run();
  }

  /** After a key that was not taken, the text that follows may be meant for what that key leads to. */
  function goesIntoField(event: KeyEvent): boolean {
    return untaken === 0 && isText(event) && takesText();
  }

  function roomFor(event: KeyEvent): number {
    return others === 0 && isText(event) && takesText() ? TEXT_MAX : KEYS_MAX;
  }

  function takesText(): boolean {
    return [...listeners.values()].some((takes) => takes());
  }

  /** Text that waits for a field and was not typed by hand, as one piece: a screen drawn for each sign would take minutes. */
  function burst(): KeyEvent | undefined {
    if (queue.length < BURST_MIN || !takesText()) return undefined;
    const end = queue.findIndex((event) => !isSign(event));
    const count = end < 0 ? queue.length : end;
    if (count < BURST_MIN) return undefined;
    const signs = queue.splice(0, count);
    const text = signs.map((sign) => ('text' in sign ? sign.text : '')).join('');
    return { kind: 'paste', isPiece: true, text };
  }

  function run(): void {
    if (running) return;
    running = true;
    try {
      while (!closed && !waiting && listeners.size > 0) {
        const event = burst() ?? queue.shift();
        if (event === undefined) break;
        if (!isText(event)) others -= 1;
        if (event.kind === 'paste' && !takesText()) {
          untaken += signsOf(event);
          countUntaken?.(untaken);
          continue;
        }
        last = event;
        for (const listener of [...listeners.keys()]) listener(event);
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
    subscribe(listener, takesText = () => false) {
      listeners.set(listener, takesText);
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
      if (next && !muted) untaken = 0;
      muted = next;
    },
    countUntakenWith(tell) {
      countUntaken = tell;
    },
    get last() {
      return last;
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
      others = 0;
      clearTimeout(timer);
      run();
    },
  };
}

/** What writes into a field or rubs out there, and does nothing else. */
function isText(event: KeyEvent): boolean {
  if (event.kind === 'paste') return true;
  return !event.ctrl && !event.alt && (event.name === 'text' || event.name === 'backspace');
}

/** A sign that is typed into a field. */
function isSign(event: KeyEvent): boolean {
  return event.kind === 'key' && event.name === 'text' && !event.ctrl && !event.alt;
}

function signsOf(event: KeyEvent): number {
  return event.kind === 'paste' ? [...event.text].length + (event.cut ?? 0) : 1;
}
