/** Location of a short on a wire, by drops from both ends. */
import { CONTACT, WIRE_SPREAD } from '../../circuit/open-values.ts';
import { STANDARD_SETTINGS } from '../../files/settings.ts';
import { meterUncertainty } from '../../quantity/normal.ts';
import { parseAccuracy } from '../../quantity/parse-accuracy.ts';
import { parseReading } from '../../quantity/parse-reading.ts';
import { DROP_MAX, metresWords, placeOnWire, type Stretch } from '../../quantity/place-on-wire.ts';
import { copperOhms, STRANDED } from '../../quantity/wire.ts';
import { safeText } from '../../source/safe-text.ts';
import { type Options, type Sum, WrongUse } from './sum.ts';

/** Drops on a wire at some tenths of an ampere, so that a number without unit is asked about. */
const MILLIVOLTS = { low: 1e-5, high: 0.2 };
/** The wire of a harness whose size nobody gives; it counts only where joints are on the way. Common practice, no source. */
const USUAL_M2 = 0.5e-6;

export const place: Sum = {
  summary: 'locate a short along a wire by the drop from each end',
  usage:
    'place --here "6.6 mV" --there "15.5 mV" --length "3 m" [--joints "1 m, 2.2 m"] [--size "0.5 mm2"] [--current-here "0.21 A" --current-there "0.2 A"] [--accuracy "0.5 % + 3" --range "600 mV" --counts 6000]',
  run: (options) => {
    const lengthMetres = options.needAboveZero('length', 'm');
    const found = placeOnWire({
      fedHere: dropOf(options, 'here'),
      fedThere: dropOf(options, 'there'),
      currents: currentsOf(options),
      stretches: stretchesOf(options, lengthMetres),
    });
    if (!found) throw new WrongUse('there is no drop at either end: no current flows');
    const { told } = found;
    return {
      lines: [
        [
          'place',
          told
            ? `${metresWords(found)} from the end fed first`
            : 'cannot be located: more than half of the wire is left',
        ],
        ['most likely', told ? `${found.metres.toFixed(2)} m` : '-'],
        ['part of the resistance', `${(found.share * 100).toFixed(1)} %`],
        ['an ohmmeter', "can't do this: the whole wire is about as much as the meter leads"],
        ['first', 'everything on both wires unplugged, fused lead, never an airbag circuit'],
      ],
      data: { ...found },
    };
  },
};

function dropOf(options: Options, end: 'here' | 'there') {
  const volts = options.need(end, 'V', MILLIVOLTS);
  if (!(Math.abs(volts) <= DROP_MAX))
    throw new WrongUse(`--${end}: no good wire drops that much; write it like "6.6 mV"`);
  const typed = options.text('accuracy');
  const { volts: standard } = STANDARD_SETTINGS.meter;
  const accuracy = typed === undefined ? standard : parseAccuracy(typed);
  if (!accuracy)
    throw new WrongUse(`--accuracy "${safeText(typed ?? '')}" is not of the form "0.5 % + 3"`);
  const range = options.maybe('range', 'V');
  const counts = options.whole('counts', 1, standard.counts);
  const ranges = range === undefined ? standard.ranges : [range];
  return { volts, limitVolts: meterUncertainty({ ...accuracy, ranges, counts }, volts).limit };
}

function currentsOf(options: Options): number {
  const here = options.maybe('current-here', 'A');
  const there = options.maybe('current-there', 'A');
  if (here === undefined && there === undefined) return 1;
  if (here === undefined || there === undefined || !(here > 0) || !(there > 0))
    throw new WrongUse('both currents are needed, each above zero');
  return here / there;
}

function stretchesOf(options: Options, lengthMetres: number): Stretch[] {
  const joints = (options.text('joints') ?? '')
    .split(/[,;]/)
    .map((one) => one.trim())
    .filter((one) => one !== '')
    .map((one) => {
      const read = parseReading(one, { unit: 'm' });
      if (read.status === 'read') return read.quantity.value;
      throw new WrongUse(`--joints "${safeText(one)}" is no distance such as "1.2 m"`);
    });
  const ends = [...joints, lengthMetres];
  if (ends.some((end, at) => end <= (ends[at - 1] ?? 0)))
    throw new WrongUse('--joints lie between the ends, from the one fed first outward');
  const areaM2 = options.maybe('size', 'm2') ?? USUAL_M2;
  if (!(areaM2 > 0)) throw new WrongUse('--size must be above zero');
  const ohms = copperOhms({ areaM2, metres: 1, factor: STRANDED.usual });
  return ends.map((end, at) => ({
    metres: end - (ends[at - 1] ?? 0),
    ohmsPerMetre: [(1 - WIRE_SPREAD) * ohms, (1 + WIRE_SPREAD) * ohms],
    jointOhms: at < joints.length ? [CONTACT.low, CONTACT.high] : null,
  }));
}
