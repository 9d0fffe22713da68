/**
 * Any YAML with the place of every key and value, by the parser that knows all of it; what we do not take is told as
 * issues. Repeated keys are looked for here, in proportion to the text: the library's own check is quadratic.
 */
import {
  type Document,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  parseDocument,
  visit,
} from 'yaml';
import type { Checked, Issue, SourceSpan } from './issue.ts';
import { INVISIBLE, MAX_DEPTH, MAX_NODES, REFUSED_KEYS } from './yaml-limits.ts';
import type { Path, YamlSource } from './yaml-source.ts';

/** The first issues tell enough; a broken file can hold tens of thousands. */
const MAX_ISSUES = 50;

/** Whatever YAML allows, each piece with its place. `value` is null only when there is nothing usable at all. */
export function readWholeYaml(text: string, file: string): Checked<YamlSource> {
  const whole: SourceSpan = { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
  const lines = new LineCounter();
  const doc = parseDocumentOf(text, lines);
  const spanOf = (range: readonly number[] | null | undefined): SourceSpan => {
    if (!range) return whole;
    const from = lines.linePos(range[0] ?? 0);
    const to = lines.linePos(range[1] ?? range[0] ?? 0);
    return { file, line: from.line, column: from.col, endLine: to.line, endColumn: to.col };
  };
  const quote = doc.errors.length > 0 ? openQuote(doc) : null;
  const issues = syntaxIssues([...doc.errors, ...doc.warnings], spanOf, quote);
  if (issues.length > 0) return { value: null, issues };
  if (doc.directives?.yaml.explicit && doc.directives.yaml.version !== '1.2')
    return refusedText(
      whole,
      'yaml-version',
      'this file asks for another version of YAML, in which some words mean other things',
      'remove the line that begins with "%YAML"',
    );
  const walk = new Walk(spanOf);
  const data = walk.read(doc.contents as Node | null, 0);
  return {
    value: { file, text, data, locate: (path, what) => locate(doc, path, what ?? 'value', spanOf) },
    issues: walk.issues.slice(0, MAX_ISSUES),
  };
}

/**
 * The library makes an Error of each mistake, and an Error keeps the stack it was made in. Nobody reads those, and in a
 * file of ten thousands of mistakes they take most of the time.
 */
function parseDocumentOf(text: string, lineCounter: LineCounter): Document {
  const kept = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return parseDocument(text, {
      version: '1.2',
      schema: 'core',
      merge: false,
      strict: true,
      uniqueKeys: false,
      stringKeys: true,
      prettyErrors: false,
      resolveKnownTags: false,
      logLevel: 'error',
      lineCounter,
    });
  } finally {
    Error.stackTraceLimit = kept;
  }
}

/** Nothing but the one mistake. */
export function refusedText(
  at: SourceSpan,
  code: string,
  words: string,
  fix?: string,
): Checked<YamlSource> {
  return {
    value: null,
    issues: [{ code, severity: 'error', at, words, ...(fix ? { fix } : {}) }],
  };
}

type ParserMessage = Document['errors'][number] | Document['warnings'][number];

/**
 * What the parser found, but no echoes: once a line stands wrong, every line after it is told as wrong too, and one
 * place is told in several ways. Of each place and of each kind the first is kept, and after a tab only the tab.
 */
function syntaxIssues(
  faults: readonly ParserMessage[],
  spanOf: (range: readonly number[]) => SourceSpan,
  quote: readonly number[] | null,
): Issue[] {
  const tab = faults.findIndex(({ code }) => code === 'TAB_AS_INDENT');
  const kinds = new Set<string>();
  const lines = new Set<number>();
  return (tab < 0 ? faults : faults.slice(0, tab + 1)).flatMap((fault): Issue[] => {
    const isQuote = quote !== null && fault.code === 'MISSING_CHAR' && /quote/.test(fault.message);
    const at = spanOf(isQuote ? quote : fault.pos);
    if (kinds.has(fault.code) || lines.has(at.line)) return [];
    kinds.add(fault.code);
    lines.add(at.line);
    return [
      { code: 'yaml-syntax', severity: 'error', at, ...(isQuote ? OPEN_QUOTE : faultWords(fault)) },
    ];
  });
}

/** A quote that is not closed swallows all that follows, and is missed at the end of the file: it is told where it begins. */
const OPEN_QUOTE = {
  words: 'the quote that begins here is not closed',
  fix: 'close it where the text ends, or leave it out',
};

/** Where the last quoted text begins. */
function openQuote(doc: Document): readonly number[] | null {
  let last: readonly number[] | null = null;
  visit(doc, {
    Scalar: (_, { type, range }) => {
      if (range && (type === 'QUOTE_DOUBLE' || type === 'QUOTE_SINGLE'))
        last = [range[0], range[0] + 1];
    },
  });
  return last;
}

/** The usual slips in our own words; the parser's for all others. */
function faultWords({ code, message }: ParserMessage): { words: string; fix?: string } {
  switch (code) {
    case 'TAB_AS_INDENT':
      return { words: 'a tab stands before this line', fix: 'indent with spaces' };
    case 'MULTIPLE_DOCS':
      return {
        words: 'a second document begins in this file',
        fix: 'keep one document per file; remove the line "---"',
      };
    case 'BAD_INDENT':
      return {
        words: 'this line is not indented like the lines it belongs with',
        fix: 'start it in the same column; also look for a missing ":", quote or bracket just before it',
      };
    case 'BLOCK_AS_IMPLICIT_KEY':
      return {
        words: 'a key with a ":" stands inside a text here',
        fix: 'put a text that holds ": " in quotes; if this is a key, start its line and the one above in the same column',
      };
    case 'MULTILINE_IMPLICIT_KEY':
      return {
        words: 'this line is not "key: value"',
        fix: 'look for a missing ":" or a line break in the key',
      };
    case 'MISSING_CHAR':
      return {
        words: `something is missing here: ${oneLine(message)}`,
        fix: 'look for a missing ":", quote or bracket just before this place',
      };
    default:
      return { words: `this is not valid YAML: ${oneLine(message)}` };
  }
}

function oneLine(message: string): string {
  return message.replace(/\s+/g, ' ').trim();
}

/** One pass over the nodes: limits, repeated keys, odd characters, and the data itself. */
class Walk {
  readonly issues: Issue[] = [];
  private nodes = 0;
  private stopped = false;
  private readonly spanOf: (range: readonly number[] | null | undefined) => SourceSpan;

  constructor(spanOf: (range: readonly number[] | null | undefined) => SourceSpan) {
    this.spanOf = spanOf;
  }

  read(node: Node | null, depth: number): unknown {
    if (node === null || this.stopped) return null;
    this.nodes += 1;
    if (this.nodes > MAX_NODES || depth > MAX_DEPTH) {
      this.stopped = true;
      const words =
        depth > MAX_DEPTH ? `more than ${MAX_DEPTH} levels deep` : `more than ${MAX_NODES} values`;
      this.add('file-too-large', node, `this file has ${words}`, 'split it into several files');
      return null;
    }
    const { anchor } = node as { anchor?: string };
    if (anchor !== undefined || (!isMap(node) && !isSeq(node) && !isScalar(node))) {
      this.add(
        'yaml-alias',
        node,
        'anchors and aliases (& and *) are not used here',
        'write the text out',
      );
      return null;
    }
    if (isMap(node)) return this.readMap(node, depth);
    if (isSeq(node)) return node.items.map((item) => this.read(item as Node | null, depth + 1));
    if (isScalar(node)) return this.readScalar(node);
    return null;
  }

  private readMap(node: { items: { key: unknown; value: unknown }[] }, depth: number): unknown {
    const result: Record<string, unknown> = Object.create(null);
    const seen = new Set<string>();
    for (const pair of node.items) {
      const keyNode = pair.key as Node;
      const key = isScalar(keyNode) ? String(keyNode.value) : '';
      if (!isScalar(keyNode) || key === '')
        this.add(
          'bad-key',
          keyNode,
          'a key here is not a plain word',
          'write a name before the ":"',
        );
      else if (REFUSED_KEYS.has(key))
        this.add('bad-key', keyNode, `"${key}" cannot be used as a key`, 'choose another name');
      else if (seen.has(key))
        this.add(
          'repeated-key',
          keyNode,
          `"${key}" appears twice here`,
          'remove or rename one of them',
        );
      else {
        this.checkText(key, keyNode);
        seen.add(key);
        result[key] = this.read(pair.value as Node | null, depth + 1);
      }
    }
    return result;
  }

  private readScalar(node: Node & { value: unknown }): unknown {
    const { value } = node;
    if (typeof value === 'string') this.checkText(value, node);
    if (typeof value === 'number' && !Number.isFinite(value))
      this.add('bad-number', node, 'this number is not finite', 'leave it out, or write a number');
    return value;
  }

  private checkText(text: string, node: Node): void {
    const odd = text.replace(/[\n\t]/g, '').match(INVISIBLE);
    if (!odd) return;
    const point = odd[0].codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
    this.add(
      'invisible-character',
      node,
      `this text holds the invisible character U+${point}`,
      'retype it',
    );
  }

  private add(code: string, node: Node, words: string, fix?: string): void {
    const at = this.spanOf(node.range);
    this.issues.push({ code, severity: 'error', at, words, ...(fix ? { fix } : {}) });
  }
}

function locate(
  doc: Document,
  path: Path,
  what: 'key' | 'value',
  spanOf: (range: readonly number[] | null | undefined) => SourceSpan,
): SourceSpan {
  let node = doc.contents as Node | null;
  let best = node?.range;
  for (const [depth, step] of path.entries()) {
    const last = depth === path.length - 1;
    if (isMap(node)) {
      const pair = node.items.find(
        (item) => isScalar(item.key) && String(item.key.value) === String(step),
      );
      if (!pair) break;
      const keyRange = (pair.key as Node).range;
      node = pair.value as Node | null;
      // A group begins with its first member, so its own key stands for it and for members it lacks.
      const group = isMap(node) || isSeq(node);
      best = group || (last && what === 'key') ? keyRange : (node?.range ?? keyRange);
    } else if (isSeq(node)) {
      node = (node.items[Number(step)] as Node | undefined) ?? null;
      if (!node) break;
      best = node.range;
    } else break;
  }
  return spanOf(best);
}
