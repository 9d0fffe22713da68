/** Speed and scope. */
import { formatQuantity } from '../../quantity/format-quantity.ts';
import type { Unit } from '../../quantity/quantity.ts';
import {
  rpmOfTeeth,
  type ScopeSettings,
  type ScopeSignal,
  scopeSettings,
  speedOfWheel,
} from '../../quantity/sums.ts';
import { type Options, type Sum, WrongUse } from './sum.ts';

function wheelOf(options: Options) {
  const teeth = options.whole('teeth', 1);
  const missing = options.whole('missing', 0, 0);
  if (missing >= teeth) throw new WrongUse('--missing must be less than --teeth');
  return { teeth, missing, ratio: options.flag('cam') ? 0.5 : 1 };
}

export const speed: Sum = {
  summary: 'speed, teeth and frequency, either way round',
  usage: 'speed --teeth 60 [--missing 2] [--cam] (--rpm 800 | --frequency "800 Hz")',
  run: (options) => {
    const wheel = wheelOf(options);
    const hertz = options.maybe('frequency', 'Hz');
    const typed = options.maybe('rpm', 'rpm');
    if ((hertz === undefined) === (typed === undefined))
      throw new WrongUse('give --rpm or --frequency');
    const rpm = typed ?? rpmOfTeeth(hertz!, wheel);
    if (!(rpm > 0)) throw new WrongUse('the speed must be above zero');
    const found = speedOfWheel(rpm, wheel);
    const text = (value: number, unit: Unit) =>
      formatQuantity({ value, unit }, { ascii: options.ascii, digits: 4 });
    return {
      lines: [
        ['crankshaft', text(found.rpm, 'rpm')],
        ...(options.flag('cam') ? [['camshaft', text(found.wheelRpm, 'rpm')] as const] : []),
        ['tooth frequency', text(found.toothHertz, 'Hz')],
        ...(wheel.missing > 0
          ? [['a counter shows', text(found.averageHertz, 'Hz')] as const]
          : []),
        ['tooth to tooth', text(found.toothSeconds, 's')],
        ...(wheel.missing > 0 ? [['across the gap', text(found.gapSeconds, 's')] as const] : []),
        ['one turn', text(found.turnSeconds, 's')],
      ],
      data: { ...wheel, ...found },
    };
  },
};

export const scope: Sum = {
  summary: 'scope settings for a signal',
  usage: 'scope --low "0 V" --high "5 V" (--frequency "800 Hz" | --rpm 800 (--teeth 60 | --turns))',
  run: (options) => {
    const lowVolts = options.maybe('low', 'V') ?? 0;
    const highVolts = options.need('high', 'V');
    if (!(highVolts > lowVolts)) throw new WrongUse('--high must be above --low');
    const vertical = options.maybe('vertical', '1');
    const horizontal = options.maybe('horizontal', '1');
    const signal: ScopeSignal = {
      lowVolts,
      highVolts,
      ...repetition(options),
      ...(vertical === undefined ? {} : { verticalDivisions: options.whole('vertical', 1) }),
      ...(horizontal === undefined ? {} : { horizontalDivisions: options.whole('horizontal', 1) }),
    };
    const found = scopeSettings(signal);
    const text = (value: number, unit: Unit) =>
      formatQuantity({ value, unit }, { ascii: options.ascii });
    return {
      lines: [
        [
          'volts a division',
          `${text(found.voltsPerDivision, 'V')} (${text(found.screenVolts, 'V')} in all)`,
        ],
        [
          'time a division',
          `${text(found.secondsPerDivision, 's')} (${text(found.screenSeconds, 's')} in all)`,
        ],
        ...longestSweep(options, found, text),
        ['zero line', found.zero === 'centre' ? 'in the middle' : 'one division from the bottom'],
        ['coupling', 'DC'],
        ['trigger', `${text(found.triggerVolts, 'V')}, rising`],
      ],
      data: { ...found },
    };
  },
};

/** A screen of a usual scope has so many points, and a tooth wants so many of them. Common practice, no source. */
const SCREEN_POINTS = 1000;
const POINTS_A_TOOTH = 10;

/** Teeth that come too fast for a slow sweep: what is drawn is then a band, or a slow wave that is not there. */
function longestSweep(
  options: Options,
  { screenSeconds, secondsPerDivision }: ScopeSettings,
  text: (value: number, unit: Unit) => string,
): [string, string][] {
  const isWheelKnown = options.maybe('teeth', '1') !== undefined;
  if (options.maybe('frequency', 'Hz') !== undefined || !isWheelKnown) return [];
  const { toothHertz } = speedOfWheel(options.needAboveZero('rpm', 'rpm'), wheelOf(options));
  const longest =
    SCREEN_POINTS / POINTS_A_TOOTH / toothHertz / (screenSeconds / secondsPerDivision);
  return [
    [
      'slowest for teeth',
      `${text(longest, 's')} a division; slower, they blur into a band or alias into a false slow wave`,
    ],
  ];
}

/** What should repeat on the screen: teeth, ten of them, or whole turns. */
function repetition(options: Options): { hertz: number; repeats: number } {
  const hertz = options.maybe('frequency', 'Hz');
  if (hertz !== undefined) {
    if (!(hertz > 0)) throw new WrongUse('--frequency must be above zero');
    return { hertz, repeats: 4 };
  }
  const rpm = options.needAboveZero('rpm', 'rpm');
  if (options.flag('turns')) {
    const ratio = options.flag('cam') ? 0.5 : 1;
    return { hertz: speedOfWheel(rpm, { teeth: 1, ratio }).turnHertz, repeats: 2 };
  }
  return { hertz: speedOfWheel(rpm, wheelOf(options)).toothHertz, repeats: 10 };
}
