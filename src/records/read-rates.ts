/** What the shop asks for: `96 EUR; module repair 350; sensor connector 38`, the hour first, then price lines. */

/** The shop's prices, in its currency. */
export interface Rates {
  readonly hour: number;
  readonly currency: string;
  readonly lines: readonly { readonly words: string; readonly price: number }[];
}

/** A price with up to two decimals; comma or point. */
const PRICE = /^\d{1,7}(?:[.,]\d{1,2})?$/;

/** The rates; null for an empty text; or why they are not understood, without a full stop. */
export function readRates(
  text: string,
): Rates | null | { readonly words: string; readonly fix: string } {
  if (text.trim() === '') return null;
  const [first = '', ...others] = text.split(';').map((one) => one.trim());
  const [amount = '', currency = '', ...more] = first.split(/\s+/);
  const hour = priceOf(amount);
  if (hour === null || !/^\p{L}{1,8}$|^\p{Sc}$/u.test(currency) || more.length > 0)
    return {
      words: `"${first}" is not an hourly rate`,
      fix: 'begin with it and its currency: 96 EUR; module repair 350; sensor connector 38',
    };
  const lines: Rates['lines'][number][] = [];
  for (const one of others.filter((line) => line !== '')) {
    const at = one.lastIndexOf(' ');
    const price = priceOf(one.slice(at + 1));
    if (at < 0 || price === null)
      return { words: `"${one}" has no price`, fix: 'end each line with it: module repair 350' };
    lines.push({ words: one.slice(0, at).trim(), price });
  }
  return { hour, currency, lines };
}

function priceOf(text: string): number | null {
  return PRICE.test(text) ? Number(text.replace(',', '.')) : null;
}

/** `38.40 EUR`. */
export function priceWords(price: number, { currency }: Pick<Rates, 'currency'>): string {
  return `${price.toFixed(2)} ${currency}`;
}
