/**
 * A report as one HTML file: no script, no link, nothing from outside, and a policy in the file that forbids them.
 *
 * Texts pass one escaper; whoever writes markup here does it through `html`, which escapes whatever is put into it.
 * Direction is left to each text (`dir="auto"`, or `<bdi>` where several stand in a line), so that right-to-left names
 * read right and cannot turn their neighbours around.
 */
import { captureOfEnvelopes } from '../waveform/envelope.ts';
import { plotSvg } from '../waveform/plot-svg.ts';
import { drawingSvg } from './drawing.ts';
import { gaugeSvg } from './gauge.ts';
import { htmlStyle } from './html-style.ts';
import type { Block, Cell, Report, Table } from './report-form.ts';
import { textLines } from './text-lines.ts';
import { shapesSvg, wiringShapes } from './wiring-shapes.ts';

/** Markup of ours, as opposed to a text. */
export class Markup {
  readonly source: string;
  constructor(source: string) {
    this.source = source;
  }
}

/** Markup with every inserted text escaped; inserted markup and lists of markup stay as they are. */
export function html(
  words: TemplateStringsArray,
  ...values: readonly (string | Markup | readonly Markup[])[]
): Markup {
  const inserted = values.map((value) => {
    if (value instanceof Markup) return value.source;
    return typeof value === 'string' ? escapeHtml(value) : value.map((one) => one.source).join('');
  });
  return new Markup(words.map((word, i) => word + (inserted[i] ?? '')).join(''));
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Fit for the inside of an element and of a quoted attribute. Controls and other hidden signs become pictures. */
export function escapeHtml(text: string): string {
  return textLines(text)
    .join('\n')
    .replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);
}

/** As wide as the text. */
const PICTURE_WIDTH = 720;

/** The head of a page that runs nothing and fetches nothing; `policy` is what tells the browser so. */
export function htmlHead(title: string, style: string, policy: string): Markup {
  return html`<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<title>${title}</title>
<style>${new Markup(style)}</style>
</head>`;
}

const POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

/** The whole document. */
export function htmlOf(report: Report): string {
  const { title, subtitle, warnings, sections, origin, id, head } = report;
  return html`<!DOCTYPE html>
<html lang="en">
${htmlHead(`${title}: ${subtitle.join(', ')}`, htmlStyle, POLICY)}
<body>
<header>
<h1>${title}</h1>
<p>${subtitle.map((words, i) => html`${i === 0 ? '' : ', '}<bdi>${words}</bdi>`)}</p>
${warnings.map((words) => html`<p class="warning" role="note">${words}</p>\n`)}</header>
<main>
${sections.map(
  ({ heading, blocks }) => html`<section>
<h2>${heading}</h2>
${blocks.map(blockMarkup)}</section>
`,
)}</main>
<footer><p>Session ${id}<br>From ${origin}<br>Head ${head}</p></footer>
</body>
</html>
`.source;
}

function blockMarkup(block: Block): Markup {
  switch (block.kind) {
    case 'facts':
      return html`<dl>
${block.rows.map(([label, text]) => html`<div><dt>${label}</dt><dd dir="auto">${lines(text)}</dd></div>\n`)}</dl>
`;
    case 'text':
      return html`<p dir="auto">${lines(block.text)}</p>\n`;
    case 'list':
      return html`<ul>
${block.items.map((item) => html`<li dir="auto">${lines(item)}</li>\n`)}</ul>
`;
    case 'table':
      return tableMarkup(block);
    case 'picture':
      return new Markup(pictureSvg(block));
    case 'drawing':
      return new Markup(drawingSvg(block.title, block.lines, escapeHtml));
    case 'wiring':
      return new Markup(
        shapesSvg(
          block.title,
          wiringShapes(block.picture, block.readings, block.proven),
          escapeHtml,
        ),
      );
    case 'sign':
      return html`<div class="sign">
${block.labels.map((label) => html`<p><span class="line"></span>${label}</p>\n`)}</div>
`;
  }
}

/** The points kept of a capture. `plotSvg` escapes names and keeps its style to its own picture. */
function pictureSvg({ title, channels, spansLeast }: Extract<Block, { kind: 'picture' }>): string {
  if (!channels.some(({ points }) => points.length > 0)) return '';
  const view = { title, width: PICTURE_WIDTH, bandHeight: 140, spansLeast };
  return plotSvg(captureOfEnvelopes(channels), view);
}

function tableMarkup({ caption, heads, widths, rows }: Table): Markup {
  const total = widths.reduce((sum, width) => sum + width, 0);
  const columns = widths.map(
    (width) => html`<col style="width:${((100 * width) / total).toFixed(1)}%">`,
  );
  return html`<div class="wide"><table>
<caption>${caption}</caption>
<colgroup>${columns}</colgroup>
<thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>
${rows.map((row) => html`<tr>${row.map(cellMarkup)}</tr>\n`)}</tbody>
</table></div>
`;
}

function cellMarkup({ parts, tone, gauge }: Cell): Markup {
  const texts = parts.map((part) => html`<div dir="auto">${lines(part)}</div>`);
  const picture = gauge ? [new Markup(gaugeSvg(gauge))] : [];
  return tone
    ? html`<td class="${tone}">${texts}${picture}</td>`
    : html`<td>${texts}${picture}</td>`;
}

function lines(text: string): Markup[] {
  return textLines(text).map((line, i) => (i === 0 ? html`${line}` : html`<br>${line}`));
}
