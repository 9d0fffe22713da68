/** Bytes of a stream as lines, by line feeds alone, each of bounded length. */

/** A line, or why it is none: it has too many bytes, or they are no UTF-8. */
export type SplitLine = { readonly text: string } | { readonly odd: 'too-long' | 'no-text' };

/** Takes bytes as they come and keeps what is not yet a line. */
export interface LineSplitter {
  /** The lines that these bytes end. */
  readonly push: (bytes: Uint8Array) => SplitLine[];
  /** What stands behind the last line feed; null for nothing. */
  readonly end: () => SplitLine | null;
}

const LINE_FEED = 10;
const CARRIAGE_RETURN = 13;

/** A splitter of lines of at most `most` bytes; what is longer is passed over up to its end, and told once. */
export function lineSplitter(most: number): LineSplitter {
  let parts: Uint8Array[] = [];
  let length = 0;
  const add = (bytes: Uint8Array) => {
    length += bytes.length;
    if (length <= most) parts.push(bytes);
    else parts = [];
  };
  const take = (): SplitLine => {
    const line: SplitLine = length > most ? { odd: 'too-long' } : textOf(parts);
    parts = [];
    length = 0;
    return line;
  };
  return {
    push: (bytes) => {
      const lines: SplitLine[] = [];
      let from = 0;
      for (let at = bytes.indexOf(LINE_FEED); at >= 0; at = bytes.indexOf(LINE_FEED, from)) {
        add(bytes.subarray(from, at));
        lines.push(take());
        from = at + 1;
      }
      // A copy: whoever reads the stream may use its memory again.
      if (from < bytes.length) add(bytes.slice(from));
      return lines;
    },
    end: () => (length === 0 ? null : take()),
  };
}

function textOf(parts: readonly Uint8Array[]): SplitLine {
  const all = Buffer.concat(parts);
  const end = all.at(-1) === CARRIAGE_RETURN ? all.length - 1 : all.length;
  try {
    return {
      text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(all.subarray(0, end)),
    };
  } catch {
    return { odd: 'no-text' };
  }
}
