/**
 * HTML as our reports may hold it, by an allow-list of elements and attributes; anything else throws. Entities are
 * only the six we write. The tree must be balanced.
 */
const FONT = ['font-family', 'font-size', 'fill'];
const ELEMENTS: Readonly<Record<string, readonly string[]>> = {
  html: ['lang'],
  head: [],
  meta: ['charset', 'http-equiv', 'content', 'name'],
  title: [],
  style: [],
  body: [],
  header: [],
  main: [],
  footer: [],
  section: [],
  h1: [],
  h2: [],
  p: ['dir', 'class', 'role'],
  bdi: [],
  br: [],
  dl: [],
  dt: [],
  dd: ['dir'],
  div: ['class', 'dir'],
  ul: [],
  li: ['dir'],
  span: ['class'],
  table: [],
  caption: [],
  colgroup: [],
  col: ['style'],
  thead: [],
  tbody: [],
  tr: [],
  th: ['scope'],
  td: ['class'],
  svg: ['viewBox', 'width', 'height', 'aria-hidden', 'role', 'aria-label', ...FONT],
  text: [
    'x',
    'y',
    'xml:space',
    'textLength',
    'lengthAdjust',
    'font-size',
    'font-weight',
    'text-anchor',
  ],
  line: ['class', 'x1', 'y1', 'x2', 'y2', 'stroke', 'stroke-width'],
  rect: ['class', 'x', 'y', 'width', 'height'],
  path: ['class', 'd'],
};
const EMPTY = new Set(['meta', 'br', 'col', 'line', 'rect', 'path']);
/** The one attribute whose value comes from a session: what a drawing is of. */
const TITLE = 'aria-label';
/** All values the others may have. */
const VALUE =
  /^(en|utf-8|Content-Security-Policy|viewport|color-scheme|referrer|no-referrer|light dark|width=device-width, initial-scale=1|default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;; img-src data:; base-uri &#39;none&#39;; form-action &#39;none&#39;|auto|note|true|img|monospace|sans-serif|start|middle|end|currentColor|preserve|spacingAndGlyphs|col|warning|wide|sign|line|good|bad|unsure|struck|axis|range|mark|width:\d+\.\d%|[\d. ]+|M[\d.]+ 1V13)$/;
const ENTITIES: Readonly<Record<string, string>> = {
  '&amp;': '&',
  // What ends a text from right to left on a line of a drawing.
  '&#8206;': '',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
};

interface HtmlText {
  readonly element: string;
  readonly text: string;
}

/** Texts in order, each with the element it stands in; line breaks as line feeds. */
export function readHtmlStrictly(source: string): HtmlText[] {
  if (!source.startsWith('<!DOCTYPE html>\n')) throw new Error('HTML: no doctype');
  const texts: HtmlText[] = [];
  const open: string[] = [];
  const tokens = source.slice('<!DOCTYPE html>'.length).matchAll(/<([^<>]*)>|([^<]+)|(<)/g);
  let end = 0;
  for (const match of tokens) {
    if (match.index !== end) throw new Error('HTML: signs between tokens');
    end = match.index + match[0].length;
    const [, tag, text, stray] = match;
    if (stray !== undefined) throw new Error('HTML: a stray <');
    const element = open.at(-1) ?? '';
    if (text !== undefined) {
      if (element !== 'style') texts.push({ element, text: decode(text) });
      continue;
    }
    if (tag?.startsWith('/')) {
      if (open.pop() !== tag.slice(1)) throw new Error(`HTML: <${tag}> closes nothing`);
      continue;
    }
    const name = openTag(tag ?? '');
    if (name === 'br') texts.push({ element, text: '\n' });
    if (!EMPTY.has(name)) open.push(name);
  }
  if (open.length > 0) throw new Error(`HTML: <${open.at(-1)}> is not closed`);
  return texts;
}

function openTag(tag: string): string {
  const match = /^([a-z0-9]+)((?: [A-Za-z0-9:-]+="[^"]*")*)\/?$/.exec(tag);
  if (!match) throw new Error(`HTML: <${tag}> is no tag of ours`);
  const [, name = '', attributes = ''] = match;
  const allowed = Object.hasOwn(ELEMENTS, name) ? ELEMENTS[name] : undefined;
  if (!allowed) throw new Error(`HTML: element <${name}>`);
  for (const [, key = '', value = ''] of attributes.matchAll(/ ([A-Za-z0-9:-]+)="([^"]*)"/g)) {
    if (key === TITLE) decode(value);
    if (!allowed.includes(key) || (key !== TITLE && !VALUE.test(value)))
      throw new Error(`HTML: attribute ${key}="${value}" at <${name}>`);
  }
  return name;
}

function decode(text: string): string {
  return text.replace(/&[^;]*;?/g, (entity) => {
    const sign = ENTITIES[entity];
    if (sign === undefined) throw new Error(`HTML: entity ${entity}`);
    return sign;
  });
}
