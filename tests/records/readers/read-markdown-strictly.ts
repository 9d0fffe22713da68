/**
 * Markdown as our reports may hold it. By the CommonMark and GFM specifications a text without unescaped
 * punctuation that begins markup is text, so anything of that kind outside our own few constructs throws.
 */

/** Signs that begin or end inline markup (CommonMark 0.31, chapter 6; GFM 6.5) unless escaped. */
const INLINE = new Set('`*_[]<>|~&$');
const PUNCTUATION = /[!-/:-@[-`{-~]/;

/** The texts of the document: headings, paragraphs, items, labels, cells. */
export function readMarkdownStrictly(source: string): string[] {
  return source.split('\n').flatMap((line) => lineTexts(line));
}

function lineTexts(line: string): string[] {
  if (line === '') return [];
  if (/^\| --- (?:\| --- )*\|$/.test(line)) return [];
  if (line.startsWith('| ') && line.endsWith(' |')) return cells(line).map((cell) => plain(cell));
  const heading = /^#{1,2} (.*)$/.exec(line);
  if (heading) return [plain(heading[1]!)];
  const warning = /^> \*\*(.*)\*\*$/.exec(line);
  if (warning) return [plain(warning[1]!)];
  const fact = /^- \*\*(.*?):\*\* (.*)$/.exec(line);
  if (fact) return [plain(fact[1]!), plain(fact[2]!)];
  const caption = /^\*\*(.*)\*\*$/.exec(line);
  if (caption) return [plain(caption[1]!)];
  const item = /^- (.*)$/.exec(line);
  const text = item ? item[1]! : line;
  notABlock(text);
  return [plain(text)];
}

/** Chapter 4 and 5 of CommonMark: what begins or underlines a block at the start of a line. */
function notABlock(text: string): void {
  const starts = [
    /^ {4}|^\t/,
    /^ {0,3}#{1,6}(?:[ \t]|$)/,
    /^ {0,3}[-+*](?:[ \t]|$)/,
    /^ {0,3}\d{1,9}[.)](?:[ \t]|$)/,
    /^ {0,3}>/,
    /^ {0,3}(?:=+|-+)[ \t]*$/,
    /^ {0,3}(?:(?:- *){3,}|(?:_ *){3,}|(?:\* *){3,})$/,
    /^ {0,3}(?:`{3,}|~{3,})/,
    /^ {0,3}\[[^\]]*\]:/,
    /^ {0,3}\|/,
  ];
  for (const start of starts)
    if (start.test(text)) throw new Error(`Markdown: block start in ${JSON.stringify(text)}`);
}

/** Splits at pipes that are not escaped, as GFM tables do. */
function cells(line: string): string[] {
  const found: string[] = [];
  let cell = '';
  for (let i = 1; i < line.length; i += 1) {
    if (line[i] === '\\') {
      cell += line.slice(i, i + 2);
      i += 1;
    } else if (line[i] === '|') {
      found.push(cell.trim());
      cell = '';
    } else cell += line[i];
  }
  return found;
}

function plain(text: string): string {
  let out = '';
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i]!;
    const next = text[i + 1] ?? '';
    if (sign === '\\' && PUNCTUATION.test(next)) {
      out += next;
      i += 1;
    } else if (sign === '\\')
      throw new Error(`Markdown: a bare backslash in ${JSON.stringify(text)}`);
    else if (INLINE.has(sign))
      throw new Error(`Markdown: unescaped ${sign} in ${JSON.stringify(text)}`);
    else out += sign;
  }
  // GFM 6.9: bare addresses become links; looked for in the source, where an escape breaks them.
  if (/https?:\/\/|ftp:\/\/|www\.|mailto:|xmpp:|[A-Za-z0-9._-]@[A-Za-z0-9_-]/i.test(text))
    throw new Error(`Markdown: an automatic link in ${JSON.stringify(text)}`);
  return out;
}
