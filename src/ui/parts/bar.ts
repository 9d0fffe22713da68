/** A share of a whole as a bar of signs and as words. */

/** A bar of `columns` signs, to half a sign; anything above nothing shows at least that. */
export function bar(share: number, columns: number, ascii: boolean): string {
  const halves = Math.min(
    2 * columns,
    Math.max(share > 0 ? 1 : 0, Math.round(share * 2 * columns)),
  );
  const full = Math.floor(halves / 2);
  const end = halves % 2 === 0 ? '' : ascii ? '-' : '▌';
  const rest = columns - full - end.length;
  return (ascii ? '#' : '█').repeat(full) + end + (ascii ? '.' : '·').repeat(rest);
}

/** `42 %`, in five columns at most; what is not nothing is never shown as nothing, what is not certain never as all. */
export function percentWords(share: number): string {
  if (share > 0 && share < 0.01) return '<1 %';
  if (share < 1 && share > 0.99) return '>99 %';
  return `${Math.round(share * 100)} %`;
}
