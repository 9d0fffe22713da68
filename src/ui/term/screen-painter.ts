/**
 * The only writer to the screen. Ink hands over whole frames (its `debug` mode does just that); this
 * compares lines and sends the changed ones to their absolute places.
 *
 * Ink's own writer moves relative to where it believes the cursor is, wipes the scrollback when a frame is as
 * tall as the terminal (ink#382), leaves copies on resize (ink#816), goes silent under CI and cannot repaint
 * after a suspension (ink#989). Absolute places need none of these cared for.
 */
import { EventEmitter } from 'node:events';

const BEGIN = '\x1b[?2026h'; // synchronized output: the terminal shows the frame in one go, or ignores the mark
const END = '\x1b[?2026l';
const CLEAR = '\x1b[m\x1b[2J\x1b[H';

/** A size to fall back on where the terminal does not tell. */
const FALLBACK = { columns: 80, rows: 24 };

/** What Ink gets as its output, emits `size` on a new terminal size. */
export class ScreenPainter extends EventEmitter {
  readonly #out: NodeJS.WriteStream;
  #frame: readonly string[] = [];
  #shown: readonly string[] | null = null; // null: what is on the screen is unknown
  #silent = false;
  #blocked = false;

  constructor(out: NodeJS.WriteStream) {
    super();
    this.setMaxListeners(0);
    this.#out = out;
  }

  get columns(): number {
    return this.#out.columns || FALLBACK.columns;
  }

  get rows(): number {
    return this.#out.rows || FALLBACK.rows;
  }

  /** Takes a frame. An empty one is Ink's way of settling, not a frame. */
  write(frame: string): boolean {
    if (frame !== '') {
      this.#frame = frame.replace(/\n$/, '').split('\n');
      this.#paint();
    }
    return true;
  }

  /** Draws everything anew, over whatever is there. */
  repaint(): void {
    this.#shown = null;
    this.#paint();
  }

  /** The terminal has another size: clear now, listeners bring a fitting frame. */
  resized(): void {
    if (!this.#silent) this.#out.write(CLEAR);
    this.#shown = null;
    this.#frame = [];
    this.emit('size');
  }

  /** Keeps frames back (suspended, left) or, with false, lets them through again. */
  silence(silent: boolean): void {
    this.#silent = silent;
  }

  #paint(): void {
    if (this.#silent || this.#blocked || this.#frame.length === 0) return;
    // The last row stays empty: a sign in its last column would scroll some terminals.
    const lines = this.#frame.slice(0, this.rows - 1);
    const before = this.#shown;
    const parts: string[] = before === null ? [CLEAR] : [];
    for (let row = 0; row < Math.max(lines.length, before?.length ?? 0); row++) {
      const line = lines[row] ?? '';
      if (line !== (before?.[row] ?? '')) parts.push(`\x1b[${row + 1};1H${line}\x1b[K`);
    }
    this.#shown = lines;
    if (parts.length === 0) return;
    // On a slow line frames are not queued: the newest is drawn when there is room again.
    if (this.#out.write(BEGIN + parts.join('') + END)) return;
    this.#blocked = true;
    this.#out.once('drain', () => {
      this.#blocked = false;
      this.#paint();
    });
  }
}
