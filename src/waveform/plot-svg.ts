/** A capture as an SVG picture: self-contained text, readable without colour, light and dark backgrounds alike. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Capture, Channel } from './capture.ts';
import { axisRange } from './plot-range.ts';

/** What is drawn with the curves, and how large. */
export interface SvgOptions {
  readonly title: string;
  readonly width?: number;
  /** Height of each channel's band. */
  readonly bandHeight?: number;
  readonly from?: number;
  readonly to?: number;
  /** Marked values by channel. */
  readonly levels?: readonly (readonly { readonly value: number; readonly name: string }[])[];
  /** The least that the axis covers by channel (`spanLeastOf`), default nothing. */
  readonly spansLeast?: readonly number[];
  /** Marked instants by channel, in seconds from the first sample. */
  readonly marks?: readonly (ArrayLike<number> | undefined)[];
}

const MARGIN = { left: 90, right: 20, top: 40, bottom: 40 } as const;
const GRID_LINES = 5;
/** More marks than this would be a grey bar. */
const MARKS_MOST = 200;

/** The picture as one string. Names are escaped. */
export function plotSvg(capture: Capture, options: SvgOptions): string {
  const { title, width = 960, bandHeight = 180 } = options;
  const count = capture.channels[0]?.samples.length ?? 0;
  const from = Math.max(0, options.from ?? 0);
  const to = Math.min(count / capture.rateHz, options.to ?? Infinity);
  const inner = width - MARGIN.left - MARGIN.right;
  const height = MARGIN.top + MARGIN.bottom + bandHeight * capture.channels.length;
  const x = (seconds: number) => MARGIN.left + ((seconds - from) / (to - from || 1)) * inner;
  const bands = capture.channels.map((channel, at) =>
    band(channel, capture.rateHz, {
      top: MARGIN.top + at * bandHeight,
      height: bandHeight - 30,
      from,
      to,
      inner,
      x,
      levels: options.levels?.[at] ?? [],
      spanLeast: options.spansLeast?.[at] ?? 0,
      marks: options.marks?.[at],
    }),
  );
  const bottom = height - MARGIN.bottom + 5;
  const times = Array.from(
    { length: GRID_LINES + 1 },
    (_, k) => from + ((to - from) * k) / GRID_LINES,
  );
  const axis = times.map((seconds) => {
    const value = seconds + capture.startSeconds;
    const words = formatQuantity({ value, unit: 's' });
    return `<line class="g" x1="${r(x(seconds))}" y1="${MARGIN.top}" x2="${r(x(seconds))}" y2="${bottom}"/><text x="${r(x(seconds))}" y="${bottom + 16}" text-anchor="middle">${escaped(words)}</text>`;
  });
  return [
    `<svg class="capture" xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-label="${escaped(title)}">`,
    `<title>${escaped(title)}</title>`,
    // Scoped, so that the picture may stand inside a page.
    '<style>.capture text{font:12px sans-serif;fill:#222}.capture .g{stroke:#999;stroke-width:.5}.capture .l{stroke:#0072b2;stroke-dasharray:6 4}.capture .c{fill:none;stroke:#222;stroke-width:1}.capture .m{stroke:#d55e00;stroke-width:1}.capture rect{fill:#fff}</style>',
    `<rect width="${width}" height="${height}"/>`,
    `<text x="${MARGIN.left}" y="22" font-weight="bold">${escaped(title)}</text>`,
    ...axis,
    ...bands.flat(),
    '</svg>',
    '',
  ].join('\n');
}

interface Band {
  readonly top: number;
  readonly height: number;
  readonly from: number;
  readonly to: number;
  readonly inner: number;
  readonly x: (seconds: number) => number;
  readonly levels: readonly { readonly value: number; readonly name: string }[];
  readonly spanLeast: number;
  readonly marks: ArrayLike<number> | undefined;
}

function band(channel: Channel, rateHz: number, view: Band): string[] {
  const first = Math.floor(view.from * rateHz);
  const last = Math.min(channel.samples.length, Math.ceil(view.to * rateHz));
  const { low, high } = axisRange(channel.samples, first, last, view);
  const y = (value: number) =>
    view.top + 20 + (1 - (value - low) / (high - low)) * (view.height - 20);
  const show = (value: number) => escaped(formatQuantity({ value, unit: channel.unit }));
  const right = MARGIN.left + view.inner;
  const label = (value: number, words: string) =>
    `<text x="${MARGIN.left - 6}" y="${r(y(value) + 4)}" text-anchor="end">${words}</text>`;
  const marks: string[] = [];
  for (let k = 0; k < Math.min(view.marks?.length ?? 0, MARKS_MOST); k += 1) {
    const at = view.marks![k]!;
    if (at < view.from || at > view.to) continue;
    const foot = view.top + view.height;
    marks.push(
      `<line class="m" x1="${r(view.x(at))}" y1="${foot}" x2="${r(view.x(at))}" y2="${foot + 6}"/>`,
    );
  }
  const crowded = (value: number) =>
    view.levels.some((level) => Math.abs(y(level.value) - y(value)) < 12);
  return [
    `<text x="${MARGIN.left}" y="${view.top + 12}">${escaped(channel.name)}</text>`,
    ...[low, high].filter((value) => !crowded(value)).map((value) => label(value, show(value))),
    ...view.levels.map(
      ({ value, name }) =>
        `<line class="l" x1="${MARGIN.left}" y1="${r(y(value))}" x2="${right}" y2="${r(y(value))}"/>${label(value, `${escaped(name)} ${show(value)}`)}`,
    ),
    `<path class="c" d="${curve(channel.samples, rateHz, first, last, view, y)}"/>`,
    ...marks,
  ];
}

/** The curve: every sample when few, else down and up the extremes of each point of width. */
function curve(
  samples: Float32Array,
  rateHz: number,
  first: number,
  last: number,
  view: Band,
  y: (value: number) => number,
): string {
  const points: string[] = [];
  const columns = Math.floor(view.inner);
  const size = Math.max(1, (last - first) / columns);
  for (let from = first; from < last; from += size) {
    const start = Math.floor(from);
    const end = Math.min(last, Math.max(start + 1, Math.floor(from + size)));
    let least = start;
    let most = start;
    for (let i = start; i < end; i += 1) {
      if (samples[i]! < samples[least]!) least = i;
      if (samples[i]! > samples[most]!) most = i;
    }
    for (const i of least === most ? [least] : least < most ? [least, most] : [most, least])
      points.push(`${r(view.x(i / rateHz))} ${r(y(samples[i]!))}`);
  }
  return points.length === 0 ? '' : `M${points.join('L')}`;
}

const r = (value: number) => String(Math.round(value * 10) / 10);

function escaped(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cf}\p{Cs}]/gu, '?')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
}
