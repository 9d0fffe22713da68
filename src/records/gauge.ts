/** A reading beside its expected range as a small picture: a bar for the range, a mark for the reading. */
import type { Gauge } from './report-form.ts';

const WIDTH = 120;
const HEIGHT = 14;
/** Room on both sides of what is shown, as a part of it. */
const MARGIN = 0.15;

/** Where range and reading lie on a line from 0 to 1; open ends reach the edge. */
export function gaugePlaces({ low, high, value }: Gauge): {
  readonly from: number;
  readonly to: number;
  readonly mark: number;
} {
  const known = [low, high, value].filter((one): one is number => one !== null);
  const least = Math.min(...known);
  const span = Math.max(...known) - least || Math.abs(least) || 1;
  const place = (number: number) => (number - least + MARGIN * span) / (span * (1 + 2 * MARGIN));
  return {
    from: low === null ? 0 : place(low),
    to: high === null ? 1 : place(high),
    mark: value === null ? 1 : place(value),
  };
}

/** Inline SVG of numbers only; screen readers pass over it, since the words beside it say the same. */
export function gaugeSvg(gauge: Gauge): string {
  const { from, to, mark } = gaugePlaces(gauge);
  const x = (part: number) => (2 + part * (WIDTH - 4)).toFixed(1);
  const width = Math.max(2, (to - from) * (WIDTH - 4)).toFixed(1);
  const at = Number(x(mark));
  return [
    `<svg viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" aria-hidden="true">`,
    `<line class="axis" x1="0" y1="7" x2="${WIDTH}" y2="7"/>`,
    `<rect class="range" x="${x(from)}" y="4" width="${width}" height="6"/>`,
    `<path class="mark" d="M${at.toFixed(1)} 1V13"/>`,
    '</svg>',
  ].join('');
}
