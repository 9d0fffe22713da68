/** Values of a circuit file in the unit that is meant, with what to write instead when they are not. */
import { parseToleranced } from '../quantity/parse-quantity.ts';
import type { Toleranced, Unit } from '../quantity/quantity.ts';
import { saysOneOf, splitChoices } from '../quantity/split-choices.ts';
import { withPoint } from '../quantity/with-point.ts';

/** A value with its tolerance, or what is wrong with what stands there and what to write instead. */
export type ReadValue =
  | { readonly ok: true; readonly value: Toleranced }
  | { readonly ok: false; readonly words: string; readonly fix: string };

const EXAMPLES: Partial<Record<Unit, string>> = {
  V: '5 V +/- 2 %',
  A: '8 mA +/- 40 %',
  ohm: '2.2 kohm +/- 5 %',
  m: '3 m',
  m2: '0.5 mm2',
  degC: '25 degC',
  '%': '12 % +/- 2 %',
};

/** `2.2 kohm +/- 5 %`, `1 kohm to 22 kohm` or `one of: 5 V, 8 V` in `unit`, or why not. */
export function readToleranced(text: string, unit: Unit): ReadValue {
  const value = parseToleranced(text);
  const pointed = withPoint(text);
  if (value === null && pointed !== null && parseToleranced(pointed) !== null)
    return {
      ok: false,
      words: 'it has a decimal comma',
      fix: `write it with a point: ${pointed}`,
    };
  const fix = `write it like ${EXAMPLES[unit] ?? `1 ${unit}`}`;
  if (value === null) {
    const split = saysOneOf(text)
      ? splitChoices(text, (one) => parseToleranced(one) !== null)
      : null;
    if (split?.ok === false) return split;
    if (split) {
      const odd = split.choices.find((one) => parseToleranced(one.text) === null);
      const words = odd ? `"${odd.text}" is not a value with a unit` : 'its units differ';
      return {
        ok: false,
        words,
        fix: `write it like "one of: ${EXAMPLES[unit] ?? `1 ${unit}`}, ..."`,
      };
    }
    return { ok: false, words: 'it is not a value with a unit', fix };
  }
  if (value.unit !== unit)
    return { ok: false, words: `it is in ${value.unit}, and ${unit} is needed`, fix };
  if (!Number.isFinite(value.low) || !Number.isFinite(value.high))
    return { ok: false, words: 'it is not finite', fix };
  return { ok: true, value };
}
