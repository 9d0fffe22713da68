/** Wire, drop and divider. */
import { formatQuantity } from '../../quantity/format-quantity.ts';
import { parseQuantity } from '../../quantity/parse-quantity.ts';
import type { Unit } from '../../quantity/quantity.ts';
import { divider } from '../../quantity/sums.ts';
import {
  areaForDropM2,
  awgOfArea,
  cableMm2For,
  copperOhms,
  STRANDED,
} from '../../quantity/wire.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Options, type Sum, WrongUse } from './sum.ts';

const show = (options: Options) => (value: number, unit: Unit) =>
  formatQuantity({ value, unit }, { ascii: options.ascii });

/** `0.5 mm2`, `18 AWG`, or a plain number of square millimetres. */
function areaOf(options: Options): number {
  const typed = options.text('size');
  if (typed === undefined)
    throw new WrongUse('--size is missing, for example "0.5 mm2" or "18 AWG"');
  const parsed = parseQuantity(typed.normalize('NFKC').replace(/\bawg\b/i, 'AWG'));
  const area =
    parsed?.unit === 'm2' ? parsed.value : parsed?.unit === '1' ? parsed.value * 1e-6 : 0;
  if (!(area > 0))
    throw new WrongUse(
      `--size "${safeText(typed)}" is not a wire size such as "0.5 mm2" or "18 AWG"`,
    );
  return area;
}

export const wire: Sum = {
  summary: 'resistance of a copper wire, and the drop at a current',
  usage: 'wire --size "0.5 mm2" --length "3 m" [--temperature 20] [--solid] [--current "30 mA"]',
  run: (options) => {
    const areaM2 = areaOf(options);
    const metres = options.needAboveZero('length', 'm');
    const degC = options.maybe('temperature', 'degC') ?? 20;
    const factor = options.flag('solid') ? 1 : STRANDED.usual;
    const ohms = copperOhms({ areaM2, metres, degC, factor });
    const most = options.flag('solid')
      ? ohms
      : copperOhms({ areaM2, metres, degC, factor: STRANDED.most });
    const amps = options.maybe('current', 'A');
    const text = show(options);
    return {
      lines: [
        ['size', `${text(areaM2, 'm2')} (AWG ${awgOfArea(areaM2).toFixed(1)})`],
        ['resistance', text(ohms, 'ohm')],
        ...(most > ohms ? [['at most, by cable standards', text(most, 'ohm')] as const] : []),
        ['per metre', text(ohms / metres, 'ohm')],
        ...(amps === undefined
          ? []
          : [[`drop at ${text(amps, 'A')}`, text(ohms * amps, 'V')] as const]),
      ],
      data: {
        areaM2,
        metres,
        degC,
        ohms,
        ohmsAtMost: most,
        dropVolts: amps === undefined ? null : ohms * amps,
      },
    };
  },
};

export const drop: Sum = {
  summary: 'wire size that keeps the voltage drop within a limit',
  usage: 'drop --current "10 A" --length "5 m" --drop "0.3 V" [--temperature 60] [--solid]',
  run: (options) => {
    const amps = options.needAboveZero('current', 'A');
    const metres = options.needAboveZero('length', 'm');
    const dropVolts = options.needAboveZero('drop', 'V');
    const degC = options.maybe('temperature', 'degC') ?? 20;
    const factor = options.flag('solid') ? 1 : STRANDED.usual;
    const areaM2 = areaForDropM2({ amps, metres, dropVolts, degC, factor });
    const cable = cableMm2For(areaM2);
    const volts =
      cable === null ? null : copperOhms({ areaM2: cable * 1e-6, metres, degC, factor }) * amps;
    const text = show(options);
    return {
      lines: [
        ['copper needed', text(areaM2, 'm2')],
        ['next size', cable === null ? 'none is thick enough' : text(cable * 1e-6, 'm2')],
        ...(volts === null ? [] : [['drop with it', text(volts, 'V')] as const]),
        ['length', 'copper both ways; a body return adds its own'],
      ],
      data: { amps, metres, dropVolts, degC, areaM2, cableMm2: cable, cableDropVolts: volts },
    };
  },
};

/** Ohms of resistors in circuits and of meters' inputs: they tell milli from mega. */
const RESISTORS = { low: 10, high: 1e6 };
const METERS = { low: 1e5, high: 1e8 };

export const dividerSum: Sum = {
  summary: 'a voltage divider, and what a meter across it makes of it',
  usage: 'divider --supply "5 V" --upper "2.2 k" --lower "1 k" [--meter "10 M"]',
  run: (options) => {
    const supplyVolts = options.need('supply', 'V');
    const upperOhms = options.need('upper', 'ohm', RESISTORS);
    const lowerOhms = options.maybe('lower', 'ohm', RESISTORS) ?? Number.POSITIVE_INFINITY;
    const meterOhms = options.maybe('meter', 'ohm', METERS) ?? Number.POSITIVE_INFINITY;
    if (upperOhms + lowerOhms === 0) throw new WrongUse('one of the two must be above zero');
    if (meterOhms === 0) throw new WrongUse('--meter must be above zero');
    const found = divider({ supplyVolts, upperOhms, lowerOhms, meterOhms });
    const text = show(options);
    const exact = (value: number) =>
      formatQuantity({ value, unit: 'V' }, { ascii: options.ascii, digits: 5 });
    return {
      lines: [
        ['voltage', exact(found.volts)],
        ...(meterOhms === Infinity
          ? []
          : [['with the meter', exact(found.withMeterVolts)] as const]),
        ['current', text(found.amps, 'A')],
        ['source resistance', text(found.sourceOhms, 'ohm')],
      ],
      data: { ...found },
    };
  },
};
