/** `ohmward calc`: everyday workshop calculations. */
import { nearestName } from '../source/nearest-name.ts';
import { safeText } from '../source/safe-text.ts';
import { code, meter, vin } from './calc/checks.ts';
import { dividerSum, drop, wire } from './calc/electrical.ts';
import { place } from './calc/place.ts';
import { scope, speed } from './calc/signals.ts';
import { Options, type Sum, type SumResult, WrongUse } from './calc/sum.ts';
import { type Arguments, type CliCommand, EXIT, type Io } from './command.ts';

/** Version of the JSON that this command writes. */
const SCHEMA_VERSION = 1;

/** The sums by their names. */
export const SUMS: Readonly<Record<string, Sum>> = {
  wire,
  drop,
  divider: dividerSum,
  scope,
  speed,
  place,
  meter,
  code,
  vin,
};

export const command: CliCommand = {
  name: 'calc',
  summary: 'everyday workshop calculations',
  usage: `calc ${Object.keys(SUMS).join('|')} [options]`,
  examples: [
    'ohmward calc wire --size "0.5 mm2" --length "3 m"',
    'ohmward calc drop --current "10 A" --length "5 m" --drop "0.3 V"',
    'ohmward calc divider --supply "5 V" --upper "2.2 k" --lower "1 k" --meter "10 M"',
    'ohmward calc scope --high "5 V" --rpm 800 --teeth 60 --missing 2',
    'ohmward calc speed --teeth 60 --missing 2 --rpm 800',
    'ohmward calc meter --reading "5.02 V" --accuracy "0.5 % + 3" --range "6 V" --counts 6000 --from "4.75 V" --to "5.25 V"',
    'ohmward calc place --here "6.6 mV" --there "15.5 mV" --length "3 m"',
    'ohmward calc code P0335',
    'ohmward calc vin 1ZZTESTSXAA000702',
  ],
  options: {
    size: { type: 'string', value: 'SIZE', help: 'wire size, "0.5 mm2" or "18 AWG"' },
    length: { type: 'string', value: 'LENGTH', help: 'length of the copper, "3 m"' },
    temperature: {
      type: 'string',
      value: 'DEGREES',
      help: 'temperature of the wire in degrees Celsius, 20 unless given',
    },
    solid: { type: 'boolean', help: 'solid wire instead of stranded' },
    current: { type: 'string', value: 'AMPERES', help: 'current through the wire' },
    drop: { type: 'string', value: 'VOLTS', help: 'permitted drop' },
    supply: { type: 'string', value: 'VOLTS', help: 'voltage across both resistances' },
    upper: { type: 'string', value: 'OHMS', help: 'resistance on the supply side' },
    lower: {
      type: 'string',
      value: 'OHMS',
      help: 'resistance on the ground side, open unless given',
    },
    meter: { type: 'string', value: 'OHMS', help: "the meter's own resistance" },
    low: { type: 'string', value: 'VOLTS', help: 'low level of the signal, 0 unless given' },
    high: { type: 'string', value: 'VOLTS', help: 'high level of the signal' },
    frequency: { type: 'string', value: 'HERTZ', help: 'frequency of the teeth or the signal' },
    rpm: { type: 'string', value: 'RPM', help: 'speed of the crankshaft' },
    teeth: {
      type: 'string',
      value: 'N',
      help: 'teeth of the wheel, counting the missing ones',
    },
    missing: { type: 'string', value: 'N', help: 'teeth missing in the gap' },
    cam: { type: 'boolean', help: 'the wheel sits on a camshaft, at half the speed' },
    turns: { type: 'boolean', help: 'show two whole turns instead of ten teeth' },
    vertical: {
      type: 'string',
      value: 'N',
      help: 'vertical divisions of the screen, 8 unless given',
    },
    horizontal: {
      type: 'string',
      value: 'N',
      help: 'horizontal divisions of the screen, 10 unless given',
    },
    reading: { type: 'string', value: 'READING', help: 'what the meter shows' },
    accuracy: { type: 'string', value: 'TEXT', help: 'from its data sheet, "0.5 % + 3"' },
    range: { type: 'string', value: 'VALUE', help: 'full scale of the range it is in' },
    counts: { type: 'string', value: 'N', help: 'counts of its display at full scale' },
    from: { type: 'string', value: 'VALUE', help: 'lowest good value' },
    to: { type: 'string', value: 'VALUE', help: 'highest good value' },
    here: { type: 'string', value: 'VOLTS', help: 'drop along the wire, fed at this end' },
    there: { type: 'string', value: 'VOLTS', help: 'drop along it, fed at the other end' },
    joints: {
      type: 'string',
      value: 'LENGTHS',
      help: 'where connectors and splices are, from this end, "1 m, 2.2 m"',
    },
    'current-here': { type: 'string', value: 'AMPERES', help: 'current when fed at this end' },
    'current-there': {
      type: 'string',
      value: 'AMPERES',
      help: 'current when fed at the other end',
    },
    ascii: { type: 'boolean', help: 'plain ASCII' },
    json: { type: 'boolean', help: 'one JSON document, values in SI units' },
  },
  run: async (args, io) => run(args, io),
};

function run(args: Arguments, io: Io): number {
  const name = args.positionals[0];
  const sum = name === undefined || !Object.hasOwn(SUMS, name) ? undefined : SUMS[name];
  if (!sum) {
    const near = name === undefined ? null : nearestName(name, Object.keys(SUMS));
    const words =
      name === undefined
        ? 'name a calculation'
        : `there is no calculation called "${safeText(name)}"`;
    io.err(`ohmward calc: ${words}${near === null ? '' : `; did you mean "${near}"?`}\n`);
    for (const [each, { summary }] of Object.entries(SUMS))
      io.err(`  ${each.padEnd(8)} ${summary}\n`);
    return EXIT.wrongUse;
  }
  const ascii = args.values.ascii === true || io.env.OHMWARD_ASCII === '1';
  let result: SumResult;
  try {
    result = sum.run(new Options(args, ascii));
  } catch (fault) {
    if (!(fault instanceof WrongUse)) throw fault;
    io.err(`ohmward calc ${name}: ${fault.message}\n  ohmward calc ${sum.usage}\n`);
    return EXIT.wrongUse;
  }
  if (args.values.json === true)
    io.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, sum: name, ...result.data })}\n`);
  else io.out(table(result.lines));
  return result.wrong === true ? EXIT.wrongInput : EXIT.done;
}

function table(lines: SumResult['lines']): string {
  const width = Math.max(...lines.map(([label]) => label.length));
  return lines.map(([label, value]) => `${label.padEnd(width)}  ${value}\n`).join('');
}
