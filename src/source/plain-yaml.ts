/**
 * What people write in these files of YAML, as plain data and without places, some twenty times faster than by the whole
 * of the language: groups and lists by their indent, or in brackets on one line; words, numbers and quoted texts on one
 * line; folded and literal texts. Whatever else YAML allows or forbids is not read here, never read otherwise:
 * `tests/source/plain-yaml.test.ts` holds both readers side by side.
 */
import { INVISIBLE, MAX_DEPTH, MAX_NODES, REFUSED_KEYS } from './yaml-limits.ts';

/** A group or list; null where the text is not plain, or has a mistake. */
export function readPlainYaml(text: string): object | null {
  return INVISIBLE.test(text.replaceAll('\n', '')) ? null : new PlainReader(text).whole();
}

const BLANK = /^ *(?:#.*)?$/;
/** A key, and where its value begins. */
const KEY = /([A-Za-z][\w.-]{0,99}):(?: +|$)/y;
/** Words that nothing in YAML is made of; within brackets they end at a comma or bracket as well. */
const WORDS = /(?:-(?=[.\d]))?[^-?:,[\]{}#&*!|>'"%@` ](?:[^ :]|:(?=[^ ])| +(?=[^ :#]))*/y;
const WORDS_IN_BRACKETS =
  /(?:-(?=[.\d]))?[^-?:,[\]{}#&*!|>'"%@` ](?:[^ :,[\]{}]|:(?=[^ ,[\]{}])| +(?=[^ :#,[\]{}]))*/y;
const QUOTED = /"([^"\\]*)"|'([^']*)'/y;
/** Texts over several lines: folded or as they stand, with or without the last line's end. */
const HEADER = /([>|])(-?) *$/y;
const LINE_END = / *$| +#/y;
const SPACES = / */y;

const NUMBER = /^-?\d{1,15}(?:\.\d{1,15})?$/;
/** All that YAML takes for a number, and more. */
const LIKE_A_NUMBER = /^[-+]?(?:0[ox][\da-f]+|\.?\d[\d.]*(?:e[-+]?\d+)?|\.inf|\.nan)$/i;
const NAMED: ReadonlyMap<string, boolean | null> = new Map([
  ['~', null],
  ['null', null],
  ['true', true],
  ['false', false],
]);

class PlainReader {
  private readonly lines: readonly string[];
  private row = -1;
  /** The line at hand, and where in it reading goes on; -1 past the last line. */
  private line = '';
  private column = 0;
  private isPlain = true;
  private values = 0;

  constructor(text: string) {
    this.lines = text.split('\n');
  }

  whole(): object | null {
    this.nextLine();
    const data = this.column === 0 ? this.block(0) : this.refuse();
    return this.isPlain && this.column < 0 ? data : null;
  }

  /** Ends everything. */
  private refuse(): null {
    this.isPlain = false;
    this.row = this.lines.length;
    this.line = '';
    this.column = -1;
    return null;
  }

  private nextLine(): void {
    do this.row += 1;
    while (this.row < this.lines.length && BLANK.test(this.lines[this.row]!));
    this.line = this.lines[this.row] ?? '';
    this.column = this.row < this.lines.length ? this.line.search(/[^ ]/) : -1;
  }

  private take(form: RegExp): RegExpExecArray | null {
    form.lastIndex = this.column;
    const found = form.exec(this.line);
    if (found) this.column = form.lastIndex;
    return found;
  }

  private count(depth: number): void {
    this.values += 1;
    if (this.values > MAX_NODES || depth > MAX_DEPTH) this.refuse();
  }

  private isItem(): boolean {
    return this.line.startsWith('- ', this.column);
  }

  private block(depth: number): object | null {
    this.count(depth);
    return this.isItem() ? this.list(depth) : this.group(depth);
  }

  private list(depth: number): unknown[] {
    const { column } = this;
    const list: unknown[] = [];
    while (this.column === column && this.isItem()) {
      this.column += 1;
      this.take(SPACES);
      KEY.lastIndex = this.column;
      list.push(KEY.test(this.line) ? this.block(depth + 1) : this.value(column, depth + 1));
    }
    return list;
  }

  private group(depth: number): object {
    const { column } = this;
    const group: Record<string, unknown> = Object.create(null);
    while (this.column === column) {
      const key = this.newKey(group);
      if (key !== null) group[key] = this.valueOfKey(column, depth + 1);
    }
    return group;
  }

  private newKey(group: object): string | null {
    const key = this.take(KEY)?.[1];
    return key === undefined || key in group || REFUSED_KEYS.has(key) ? this.refuse() : key;
  }

  /** What stands behind the key, or under it. */
  private valueOfKey(column: number, depth: number): unknown {
    const isUnder = this.column === this.line.length || this.line[this.column] === '#';
    if (!isUnder) return this.value(column, depth);
    this.nextLine();
    if (this.column > column || (this.column === column && this.isItem())) return this.block(depth);
    this.count(depth);
    return null;
  }

  /** The rest of a line. Nobody takes a line that goes on with it, for it begins further to the right. */
  private value(column: number, depth: number): unknown {
    const header = this.take(HEADER);
    if (header) {
      this.count(depth);
      return this.textUnder(column, header[1] === '>', header[2] === '');
    }
    const value = this.inline(WORDS, depth);
    if (!this.take(LINE_END)) return this.refuse();
    this.nextLine();
    return value;
  }

  private textUnder(column: number, isFolded: boolean, isEnded: boolean): string | null {
    const indent = this.lines[this.row + 1]?.search(/[^ ]/) ?? -1;
    if (indent <= column) return this.refuse();
    let text = '';
    let breaks = 0;
    for (this.row += 1; this.row < this.lines.length; this.row += 1, breaks += 1) {
      const line = this.lines[this.row]!;
      if (line === '') continue;
      const from = line.search(/[^ ]/);
      if (from >= 0 && from <= column) break;
      if (from !== indent) return this.refuse();
      const fold = breaks === 1 ? ' ' : '\n'.repeat(Math.max(0, breaks - 1));
      text += (isFolded ? fold : '\n'.repeat(breaks)) + line.slice(from);
      breaks = 0;
    }
    this.row -= 1;
    this.nextLine();
    return isEnded ? `${text}\n` : text;
  }

  private inline(words: RegExp, depth: number): unknown {
    this.count(depth);
    const sign = this.line[this.column];
    if (sign === '[') return this.listInBrackets(depth);
    if (sign === '{') return this.groupInBrackets(depth);
    const quoted = this.take(QUOTED);
    if (quoted) return quoted[1] ?? quoted[2];
    const found = this.take(words)?.[0];
    return found === undefined ? this.refuse() : this.meaning(found);
  }

  private listInBrackets(depth: number): unknown[] {
    const list: unknown[] = [];
    this.eachInBrackets(']', () => list.push(this.inline(WORDS_IN_BRACKETS, depth + 1)));
    return list;
  }

  private groupInBrackets(depth: number): object {
    const group: Record<string, unknown> = Object.create(null);
    this.eachInBrackets('}', () => {
      const key = this.newKey(group);
      if (key !== null) group[key] = this.inline(WORDS_IN_BRACKETS, depth + 1);
    });
    return group;
  }

  private eachInBrackets(end: string, read: () => void): void {
    do {
      this.column += 1;
      this.take(SPACES);
      if (this.line[this.column] === end) break;
      read();
      this.take(SPACES);
    } while (this.line[this.column] === ',');
    if (this.line[this.column] === end) this.column += 1;
    else this.refuse();
  }

  private meaning(words: string): unknown {
    if (NUMBER.test(words)) return Number(words);
    const named = NAMED.get(words);
    if (named !== undefined) return named;
    return LIKE_A_NUMBER.test(words) || NAMED.has(words.toLowerCase()) ? this.refuse() : words;
  }
}
