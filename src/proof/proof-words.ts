/** Small wordings of the proof. */

/** Names shown of a list before the rest is counted. */
const LISTED_MAX = 4;

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
export function percent(share: number): string {
  const whole = Math.round(share * 100);
  if (share > 0 && whole === 0) return 'under 1 %';
  if (whole === 100 && 1 - share > 1e-9) return '99 %';
  return `${whole} %`;
}
