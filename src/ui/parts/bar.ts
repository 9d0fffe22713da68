/** A share of a whole as a bar of signs and as words. */

/** A bar of `columns` signs; anything above nothing shows at least one. */
export function bar(share: number, columns: number, ascii: boolean): string {
  const full = Math.min(columns, Math.max(share > 0 ? 1 : 0, Math.round(share * columns)));
  return (ascii ? '#' : '█').repeat(full) + (ascii ? '.' : '·').repeat(columns - full);
}

/** `42 %`, in five columns at most; what is not nothing is never shown as nothing, what is not certain never as all. */
export function percentWords(share: number): string {
  if (share > 0 && share < 0.01) return '<1 %';
  if (share < 1 && share > 0.99) return '>99 %';
  return `${Math.round(share * 100)} %`;
}
