/** Small wordings of the proof. */
import { formatRange } from '../quantity/format-quantity.ts';
import type { BreakingValue } from './breaking-value.ts';

/** Names shown of a list before the rest is counted. */
export const LISTED_MAX = 4;

/** `a, b and 3 more`. */
export function listed(names: readonly string[], most = LISTED_MAX): string {
  if (names.length <= 1) return names[0] ?? '';
  const shown = names.length > most ? names.slice(0, most - 1) : names.slice(0, -1);
  const last =
    names.length > most ? `${names.length - shown.length} more` : names[names.length - 1]!;
  return `${shown.join(', ')} and ${last}`;
}

/** `"a", "b" or "c"`. */
export function quoted(names: readonly string[], joint: 'or' | 'and'): string {
  const all = names.map((name) => `"${name}"`);
  return all.length <= 1
    ? all.join('')
    : `${all.slice(0, -1).join(', ')} ${joint} ${all[all.length - 1]}`;
}

/** A share in whole per cent, never 0 or 100 for what is neither. */
export function sharePercent(share: number): string {
  const whole = Math.round(share * 100);
  if (share > 0 && whole === 0) return 'under 1 %';
  if (whole === 100 && 1 - share > 1e-9) return '99 %';
  return `${whole} %`;
}

/** A share to one place, so that a single car of many is not nothing: `4.7 %`, `0.4 %`, `100 %`. */
export function finePercent(share: number): string {
  const rounded = Number((share * 100).toFixed(1));
  if (share > 0 && rounded === 0) return 'under 0.1 %';
  if (rounded === 100 && 1 - share > 1e-9) return '99.9 %';
  return `${rounded} %`;
}

/** `12 of 256 cars, 4.7 %`; of cars that end otherwise at another answer to a question the share by answers. */
export function carsWords({ wrong, of, share }: Counted): string {
  const byAnswer = Math.abs(share - wrong / of) > 1e-9 ? ' by the answers' : '';
  return `${wrong} of ${of} cars, ${finePercent(share)}${byAnswer}`;
}
interface Counted {
  readonly wrong: number;
  readonly of: number;
  readonly share: number;
}

/** Where the cars that end wrongly have a value: `pull-up of the module's signal input above 9.1 kΩ`. */
export function breakingWords({ words, unit, low, high, ways, isMostly }: BreakingValue): string {
  if (ways) return `${words}: ${ways.join(' or ')}`;
  const range = formatRange(
    low ?? Number.NEGATIVE_INFINITY,
    high ?? Number.POSITIVE_INFINITY,
    unit,
    { digits: 2 },
  );
  return `${words} ${isMostly ? 'mostly ' : ''}${range}`;
}
