/** Meter, code and VIN. */
import { checkVin } from '../../identify/check-vin.ts';
import { describeCode } from '../../identify/describe-code.ts';
import { readCode } from '../../identify/trouble-code.ts';
import { formatQuantity, formatRange } from '../../quantity/format-quantity.ts';
import { chanceWithin, meterUncertainty } from '../../quantity/normal.ts';
import { parseAccuracy } from '../../quantity/parse-accuracy.ts';
import { parseQuantity } from '../../quantity/parse-quantity.ts';
import type { Unit } from '../../quantity/quantity.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Options, type Sum, type SumResult, WrongUse } from './sum.ts';

export const meter: Sum = {
  summary: 'the uncertainty of a reading, and the chance that it is within limits',
  usage:
    'meter --reading "5.02 V" --accuracy "0.5 % + 3" --range "6 V" --counts 6000 [--from "4.75 V" --to "5.25 V"]',
  run: (options) => {
    const { value, unit } = readingOf(options);
    const typed = options.text('accuracy') ?? '';
    const accuracy = parseAccuracy(typed);
    if (!accuracy)
      throw new WrongUse(`--accuracy "${safeText(typed)}" is not of the form "0.5 % + 3"`);
    const range = options.needAboveZero('range', unit);
    const counts = options.whole('counts', 1);
    if (Math.abs(value) > range) throw new WrongUse('the reading is beyond the range');
    const found = meterUncertainty({ ranges: [range], counts, ...accuracy }, value);
    const from = options.maybe('from', unit) ?? Number.NEGATIVE_INFINITY;
    const to = options.maybe('to', unit) ?? Number.POSITIVE_INFINITY;
    if (!(to > from)) throw new WrongUse('--to must be above --from');
    const bounded = from > -Infinity || to < Infinity;
    const chance = chanceWithin(value, found.standard, from, to);
    const [low, high] = [value - found.limit, value + found.limit];
    const text = (it: number) =>
      formatQuantity({ value: it, unit }, { ascii: options.ascii, digits: 4 });
    return {
      lines: [
        ['reading', text(value)],
        ['limits', formatRange(low, high, unit, { ascii: options.ascii, digits: 5 })],
        ['accuracy', `+/- ${text(found.limit)}`],
        ['standard uncertainty', text(found.standard)],
        ...(bounded
          ? [
              [
                `chance within ${formatRange(from, to, unit, { ascii: options.ascii })}`,
                `${(chance * 100).toFixed(1)} %`,
              ] as const,
            ]
          : []),
      ],
      data: { value, unit, low, high, ...found, chance: bounded ? chance : null },
    };
  },
};

/** The unit comes with the reading: volts unless another is written. */
function readingOf(options: Options): { value: number; unit: Unit } {
  const typed = options.text('reading');
  if (typed === undefined) throw new WrongUse('--reading is missing');
  const strict = parseQuantity(typed);
  const unit = strict === null || strict.unit === '1' ? 'V' : strict.unit;
  const value = options.need('reading', unit);
  if (!Number.isFinite(value))
    throw new WrongUse('an over-limit reading cannot be compared with limits');
  return { value, unit };
}

export const code: Sum = {
  summary: 'what a trouble code says, or several',
  usage: 'code P0335',
  run: (options) => {
    const typed = options.word('a trouble code, for example P0335');
    const words = options.words();
    // "P 0335" is one code with a blank in it.
    if (words.length < 2 || readCode(typed).status === 'read') return codeSum(typed);
    const sums = words.flatMap((word) => word.split(/[,;]/).filter(Boolean)).map(codeSum);
    return {
      lines: sums.flatMap(({ lines }) => lines),
      data: { codes: sums.map(({ data }) => data) },
      wrong: sums.some(({ wrong }) => wrong === true),
    };
  },
};

function codeSum(typed: string): SumResult {
  const read = readCode(typed);
  if (read.status === 'refused') {
    const fix = read.fix === '' ? '' : `: ${read.fix}`;
    return { lines: [[safeText(typed), read.words + fix]], data: { ...read }, wrong: true };
  }
  const found = describeCode(typed)!;
  const bytes = `0x${found.twoByte.toString(16).toUpperCase().padStart(4, '0')}`;
  const failure = read.failureType;
  return {
    lines: [
      [found.code, found.words],
      [
        'defined by',
        found.definedBy === 'maker'
          ? "the vehicle's maker"
          : found.definedBy === 'standard'
            ? 'the standard'
            : 'nobody yet',
      ],
      ['on the wire', bytes],
      ...(failure === null
        ? []
        : [['failure type', `0x${failure.toString(16).toUpperCase().padStart(2, '0')}`] as const]),
    ],
    data: { ...found, failureType: failure },
  };
}

export const vin: Sum = {
  summary: 'structure and check digit of a vehicle identification number',
  usage: 'vin 1ZZTESTSXAA000702',
  run: (options) => {
    const check = checkVin(options.word('a vehicle identification number'));
    if (check.status === 'refused')
      return {
        lines: [['refused', `${check.words}: ${check.fix}`]],
        data: { ...check },
        wrong: true,
      };
    return {
      lines: [
        ['number', check.vin],
        ['sections', `${check.maker} ${check.descriptor} ${check.indicator}`],
        ['check digit', check.words],
        ...(check.near.length > 0
          ? [['one character away', check.near.slice(0, 5).join(', ')] as const]
          : []),
      ],
      data: { ...check },
      wrong: check.check.binding && !check.check.agrees,
    };
  },
};
