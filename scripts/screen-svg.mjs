/**
 * A terminal screen as a self-contained SVG, legible on light and dark pages.
 *
 * Words are set one by one at their cell, so that no font can pull them out of place; lines and bars are drawn as shapes,
 * since fonts leave gaps between them.
 */

const WIDTH = 8.4;
const HEIGHT = 18;
const MARGIN = 12;
const BASELINE = 13.5;

/** By ANSI number, at least 4.5:1 (WCAG 2.2) on the background. */
const LIGHT = [
  '#1f2328',
  '#b3261e',
  '#1a6b34',
  '#7a5200',
  '#0550ae',
  '#7a3ea8',
  '#0b6a79',
  '#1f2328',
];
const DARK = [
  '#e6edf3',
  '#ff8f86',
  '#6fd08a',
  '#e3b341',
  '#79b8ff',
  '#d2a8ff',
  '#76d7e3',
  '#e6edf3',
];
const PAPER = { light: '#ffffff', dark: '#161b22' };

/** From the middle of the cell: up, right, down, left. */
const LINES = {
  '─': [0, 1, 0, 1],
  '│': [1, 0, 1, 0],
  '┌': [0, 1, 1, 0],
  '┐': [0, 0, 1, 1],
  '└': [1, 1, 0, 0],
  '┘': [1, 0, 0, 1],
  '├': [1, 1, 1, 0],
  '┤': [1, 0, 1, 1],
  '┬': [0, 1, 1, 1],
  '┴': [1, 1, 0, 1],
  '┼': [1, 1, 1, 1],
};
const BARS = '▏▎▍▌▋▊▉█';
const SHADES = { '░': 0.25, '▒': 0.5, '▓': 0.75 };

/** Rows of cells `{char, colour, back, bold, inverse, underline}` as SVG text. */
export function screenSvg(rows, title) {
  const columns = rows[0]?.length ?? 0;
  const width = round(columns * WIDTH + 2 * MARGIN);
  const height = round(rows.length * HEIGHT + 2 * MARGIN);
  const body = rows.flatMap((row, at) => rowShapes(row, MARGIN + at * HEIGHT));
  return `${[
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img">`,
    `<title>${escaped(title)}</title>`,
    `<desc>${escaped(
      rows
        .map((row) =>
          row
            .map(({ char }) => char)
            .join('')
            .trimEnd(),
        )
        .join('\n'),
    )}</desc>`,
    `<style>${style('', LIGHT, PAPER.light)}@media (prefers-color-scheme:dark){${style('', DARK, PAPER.dark)}}`,
    'text{font:14px ui-monospace,"DejaVu Sans Mono",Menlo,Consolas,monospace}.b{font-weight:700}.u{text-decoration:underline}path{fill:none;stroke-width:1.2}</style>',
    `<rect class="p" width="${width}" height="${height}" rx="8"/>`,
    ...body,
    '</svg>',
  ].join('\n')}\n`;
}

function style(prefix, colours, paper) {
  const each = colours.map(
    (colour, at) => `.f${at}{fill:${colour}}path.f${at}{fill:none;stroke:${colour}}`,
  );
  return `${prefix}.p{fill:${paper}}path.p{fill:none;stroke:${paper}}${each.join('')}`;
}

function rowShapes(row, top) {
  const shapes = backgrounds(row, top);
  for (let at = 0; at < row.length; at += 1) {
    const cell = row[at];
    const x = MARGIN + at * WIDTH;
    const ink = inkOf(cell);
    const place = BARS.indexOf(cell.char);
    if (cell.char === ' ') continue;
    if (LINES[cell.char]) {
      const end = sameUntil(row, at, (next) => next.char === '─' && cell.char === '─');
      shapes.push(lineShape(cell.char, x, top, end - at, ink));
      at = end - 1;
    } else if (place >= 0) {
      const end = sameUntil(row, at, (next) => next.char === '█' && cell.char === '█');
      const wide = cell.char === '█' ? end - at : (place + 1) / 8;
      shapes.push(rect(x, top + 2, wide * WIDTH, HEIGHT - 4, ink));
      at = cell.char === '█' ? end - 1 : at;
    } else if (SHADES[cell.char]) {
      shapes.push(rect(x, top + 2, WIDTH, HEIGHT - 4, ink, ` opacity="${SHADES[cell.char]}"`));
    } else {
      const end = sameUntil(row, at, (next) => isWord(next.char) && sameLook(next, cell));
      const word = row
        .slice(at, end)
        .map(({ char }) => char)
        .join('');
      const length = round((end - at) * WIDTH);
      shapes.push(
        `<text class="${ink}${cell.bold ? ' b' : ''}${cell.underline ? ' u' : ''}" x="${round(x)}" y="${round(top + BASELINE)}" textLength="${length}" lengthAdjust="spacingAndGlyphs">${escaped(word)}</text>`,
      );
      at = end - 1;
    }
  }
  return shapes;
}

/** Inverse cells and coloured backgrounds, as one rectangle for each run. */
function backgrounds(row, top) {
  const shapes = [];
  for (let at = 0; at < row.length; at += 1) {
    const paper = paperOf(row[at]);
    if (paper === null) continue;
    const end = sameUntil(row, at, (next) => paperOf(next) === paper);
    shapes.push(rect(MARGIN + at * WIDTH, top, (end - at) * WIDTH, HEIGHT, paper));
    at = end - 1;
  }
  return shapes;
}

function inkOf({ colour, back, inverse }) {
  if (inverse || back !== null) return 'p';
  return `f${colour ?? 0}`;
}

function paperOf({ colour, back, inverse }) {
  if (inverse) return `f${colour ?? 0}`;
  return back === null ? null : `f${back}`;
}

function isWord(char) {
  return char !== ' ' && !LINES[char] && !SHADES[char] && !BARS.includes(char);
}

function sameLook(a, b) {
  return inkOf(a) === inkOf(b) && a.bold === b.bold && a.underline === b.underline;
}

function sameUntil(row, from, fits) {
  let end = from + 1;
  while (end < row.length && fits(row[end])) end += 1;
  return end;
}

function lineShape(char, x, top, cells, ink) {
  const [up, right, down, left] = LINES[char];
  const cx = round(x + WIDTH / 2);
  const cy = round(top + HEIGHT / 2);
  const parts = [];
  if (left || right)
    parts.push(`M${left ? round(x) : cx} ${cy}H${right ? round(x + cells * WIDTH) : cx}`);
  if (up || down) parts.push(`M${cx} ${up ? round(top) : cy}V${down ? round(top + HEIGHT) : cy}`);
  return `<path class="${ink}" d="${parts.join('')}"/>`;
}

function rect(x, y, width, height, ink, more = '') {
  return `<rect class="${ink}" x="${round(x)}" y="${round(y)}" width="${round(width)}" height="${round(height)}"${more}/>`;
}

function round(value) {
  return Math.round(value * 100) / 100;
}

function escaped(text) {
  return text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
}
