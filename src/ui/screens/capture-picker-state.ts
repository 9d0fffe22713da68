/** Choosing a capture file: what Enter takes, and how the rows read. No React. */
import type { CaptureEntry, CaptureFolder } from '../../files/list-captures.ts';
import { safeText } from '../../source/safe-text.ts';
import { ageWords, fileRow, sizeWords } from '../parts/file-words.ts';
import { chosenItem, type PickItem, type PickList } from '../parts/pick-list-state.ts';
import { columnsOf, graphemesOf } from '../parts/wrap-words.ts';

/** A file or folder as a line to choose. */
export interface CaptureItem extends PickItem {
  readonly entry: CaptureEntry;
}

/** Entries as lines to choose from; typing looks for names only. */
export function captureItems({ entries }: CaptureFolder): CaptureItem[] {
  return entries.map((entry) => ({ text: safeText(entry.name), entry }));
}

/** A row of just `width` columns. */
export function captureRow({ entry }: CaptureItem, width: number, mark: string): string {
  const { kind, name, bytes, ageMs } = entry;
  if (kind === 'file')
    return fileRow({ name, size: sizeWords(bytes), age: ageWords(ageMs) }, width, mark);
  const isUp = name === '..';
  return fileRow(
    { name: isUp ? name : `${name}/`, size: isUp ? 'up' : 'folder', age: '' },
    width,
    mark,
  );
}

/**
 * The name that Enter stands for, or null where there is nothing: a typed path; a name typed in full; the marked line;
 * else what was typed, since a file without a usual ending is not in the list.
 */
export function nameTaken(items: readonly CaptureItem[], list: PickList): string | null {
  const typed = list.filter.text.trim();
  if (/[/\\]|^~$|^\.\.?$/.test(typed)) return typed;
  const whole = items.find(({ entry }) => entry.name === typed);
  const name = whole?.entry.name ?? chosenItem(items, list)?.entry.name ?? typed;
  return name === '' ? null : name;
}

/** The end of a path that fits: its last folders tell more than its first. */
export function endOfPath(path: string, width: number, mark: string): string {
  const shown = safeText(path);
  if (columnsOf(shown) <= width) return shown;
  const signs = graphemesOf(shown);
  let from = signs.length;
  let room = width - columnsOf(mark);
  while (from > 0) {
    room -= columnsOf(signs[from - 1]!);
    if (room < 0) break;
    from -= 1;
  }
  return mark + signs.slice(from).join('');
}
