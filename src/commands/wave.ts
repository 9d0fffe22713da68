/** `ohmward wave`: measures and plots a capture, and holds it against a known-good one. */

import { formatIssue } from '../source/format-issue.ts';
import { safeText } from '../source/safe-text.ts';
import type { TimeView } from '../waveform/align-view.ts';
import type { Capture } from '../waveform/capture.ts';
import { compareCaptures } from '../waveform/compare-captures.ts';
import { markedLevels } from '../waveform/describe-measures.ts';
import { judgeChannel, type SignalExpected } from '../waveform/judge-channel.ts';
import { type MeasureOptions, SIGNAL_KINDS, type SignalKind } from '../waveform/measure-channel.ts';
import { type CaptureMeasures, measureCapture } from '../waveform/measure-phase.ts';
import { measuresJson } from '../waveform/measures-json.ts';
import { spanLeastOf } from '../waveform/plot-range.ts';
import { plotSvg } from '../waveform/plot-svg.ts';
import { tellingView } from '../waveform/telling-view.ts';
import { readCapture } from './calc/read-capture.ts';
import { Options, WrongUse } from './calc/sum.ts';
import { type Arguments, type CliCommand, EXIT, type Io, optionText } from './command.ts';
import { captureLines } from './wave/capture-lines.ts';

/** Version of the JSON that this command writes. */
const SCHEMA_VERSION = 1;
const WIDTH = 80;
const WIDTH_MOST = 400;

export const command: CliCommand = {
  name: 'wave',
  summary: 'measure, judge and plot a capture, alone or against a known-good one',
  usage: 'wave FILE [--against GOOD] [options]',
  examples: [
    'ohmward wave crank.csv --teeth 60 --missing 2 --low-below "1.5 V" --high-above "3.5 V"',
    'ohmward wave crank-and-cam.csv --against good.csv',
    'ohmward wave cam-and-crank.csv --channel 2 --teeth 60 --missing 2',
    'ohmward wave coil.wav --full-scale "20 V" --teeth 36 --missing 1 --lobe negative',
    'ohmward wave pedal.csv --kind sweep --json',
    'ohmward wave crank.csv --as svg > crank.svg',
    'ohmward wave --make hall-module-fed --fault target.damaged --vehicle 3 --rpm 200 --output crank.csv',
  ],
  options: {
    against: { type: 'string', value: 'GOOD', help: 'a known-good capture to compare with' },
    channel: {
      type: 'string',
      value: 'CHANNEL',
      help: 'number or name of the channel that kind, wheel and levels apply to; the first unless given',
    },
    rate: { type: 'string', value: 'HERTZ', help: 'samples per second, if the file does not say' },
    'full-scale': { type: 'string', value: 'VOLTS', help: 'volts at full scale of a sound file' },
    kind: {
      type: 'string',
      value: 'KIND',
      help: `what the signal is: ${SIGNAL_KINDS.join(', ')}; detected unless given`,
    },
    teeth: {
      type: 'string',
      value: 'N',
      help: 'teeth of the wheel, counting the missing ones',
    },
    missing: { type: 'string', value: 'N', help: 'teeth missing in the gap' },
    'low-below': { type: 'string', value: 'VOLTS', help: 'below this the module sees a low' },
    'high-above': { type: 'string', value: 'VOLTS', help: 'above this the module sees a high' },
    sense: {
      type: 'string',
      value: 'OHMS',
      help: 'resistor across which a two-wire current sensor was captured',
    },
    'low-current': {
      type: 'string',
      value: 'AMPERES',
      help: 'low current the sensor should draw, with --high-current',
    },
    'high-current': {
      type: 'string',
      value: 'AMPERES',
      help: 'high current the sensor should draw',
    },
    lobe: {
      type: 'string',
      value: 'SIGN',
      help: "a coil's last lobe before the gap: negative or positive",
    },
    gap: {
      type: 'string',
      value: 'LEVEL',
      help: 'level of a switched signal while the gap passes: low or high',
    },
    from: {
      type: 'string',
      value: 'SECONDS',
      help: 'draw from here, counted from the first sample',
    },
    to: { type: 'string', value: 'SECONDS', help: 'draw up to here' },
    make: {
      type: 'string',
      value: 'CIRCUIT',
      help: 'make a capture of the simulated vehicle instead of reading one',
    },
    fault: { type: 'string', value: 'ID', help: 'its fault; healthy unless given' },
    vehicle: {
      type: 'string',
      value: 'NUMBER',
      help: 'which simulated vehicle: its values and noise; 1 unless given',
    },
    rpm: { type: 'string', value: 'RPM', help: 'its speed; by its state unless given' },
    state: {
      type: 'string',
      value: 'STATE',
      help: 'its state: key-off, key-on, cranking or running; cranking unless given',
    },
    measure: {
      type: 'string',
      value: 'TEXT',
      help: 'where its leads go, "pattern PLUS MINUS"; at the module\'s input unless given',
    },
    output: { type: 'string', value: 'FILE', help: 'where to write it; nothing is overwritten' },
    width: { type: 'string', value: 'N', help: 'columns of the drawing' },
    as: { type: 'string', value: 'FORM', help: 'text or svg' },
    ascii: { type: 'boolean', help: 'plain ASCII' },
    json: { type: 'boolean', help: 'one JSON document, values in SI units' },
  },
  run: async (args, io) => {
    try {
      return await run(args, io);
    } catch (fault) {
      if (!(fault instanceof WrongUse)) throw fault;
      io.err(`ohmward wave: ${fault.message}\n`);
      return EXIT.wrongUse;
    }
  },
};

async function run(args: Arguments, io: Io): Promise<number> {
  const [file, ...others] = args.positionals;
  const circuit = optionText(args, 'make');
  if (circuit !== undefined) {
    if (file !== undefined) throw new WrongUse('name a file to read or --make one, not both');
    const { makeCapture } = await import('./wave/make-capture.ts');
    return makeCapture(circuit, new Options(args, true), io);
  }
  if (file === undefined || others.length > 0) throw new WrongUse('name one capture file');
  const ascii = args.values.ascii === true || io.env.OHMWARD_ASCII === '1';
  const options = new Options(args, ascii);
  const form = options.text('as') ?? 'text';
  if (form !== 'text' && form !== 'svg') throw new WrongUse('--as is text or svg');
  const width =
    options.maybe('width', '1') === undefined ? terminalWidth(io) : options.whole('width', 1);
  const { measure, expected } = settingsOf(options);
  const found = await load(file, options, io);
  if (found === null) return EXIT.wrongInput;
  const against = options.text('against');
  const good = against === undefined ? null : await load(against, options, io);
  if (against !== undefined && good === null) return EXIT.wrongInput;
  const chosen = channelOf(options, found);
  const measuring = (of: Capture) =>
    measureCapture(
      of,
      of.channels.map((_, at) => (at === chosen ? measure : {})),
    );
  const measures = measuring(found);
  const goodMeasures = good && measuring(good);
  const differences = goodMeasures && compareCaptures(measures, goodMeasures);
  const findings = measures.channels.map((channel, at) =>
    judgeChannel(channel, at === chosen ? expected : {}),
  );
  if (args.values.json === true) {
    const document = {
      schemaVersion: SCHEMA_VERSION,
      ...measuresJson(measures, findings),
      ...(goodMeasures && { good: measuresJson(goodMeasures, []), differences }),
    };
    io.out(`${JSON.stringify(document)}\n`);
    return EXIT.done;
  }
  const view = viewOf(options, measures, width);
  if (form === 'svg') io.out(svg(found, measures, file, view));
  else {
    const other = good && goodMeasures ? { capture: good, measures: goodMeasures } : null;
    const report = { findings, differences, good: other, width, ascii, view };
    io.out(`${captureLines(found, measures, report).join('\n')}\n`);
  }
  return EXIT.done;
}

/** Position of the channel that the other options are said of. */
function channelOf(options: Options, { channels }: Capture): number {
  const named = options.text('channel');
  if (named === undefined) return 0;
  const byName = channels.findIndex(({ name }) => name.toLowerCase() === named.toLowerCase());
  const at = byName >= 0 ? byName : /^\d+$/.test(named) ? Number(named) - 1 : -1;
  if (at >= 0 && at < channels.length) return at;
  const known = channels.map(({ name }, index) => `${index + 1} ${name}`).join(', ');
  throw new WrongUse(safeText(`there is no channel "${named}"; this capture has: ${known}`));
}

function settingsOf(options: Options): { measure: MeasureOptions; expected: SignalExpected } {
  const kind = options.text('kind');
  if (kind !== undefined && !SIGNAL_KINDS.includes(kind as SignalKind))
    throw new WrongUse(`--kind is one of ${SIGNAL_KINDS.join(', ')}`);
  const lobe = options.text('lobe');
  if (lobe !== undefined && lobe !== 'negative' && lobe !== 'positive')
    throw new WrongUse('--lobe is negative or positive');
  const gap = options.text('gap');
  if (gap !== undefined && gap !== 'low' && gap !== 'high')
    throw new WrongUse('--gap is low or high');
  const missing = options.whole('missing', 0, 0);
  const wheel =
    options.text('teeth') === undefined ? undefined : { teeth: options.whole('teeth', 1), missing };
  if (wheel && missing >= wheel.teeth) throw new WrongUse('--missing must be less than --teeth');
  const lowBelow = options.maybe('low-below', 'V');
  const highAbove = options.maybe('high-above', 'V');
  const senseOhms = options.maybe('sense', 'ohm');
  if (senseOhms !== undefined && !(senseOhms > 0)) throw new WrongUse('--sense must be above zero');
  const [low, high] = [options.maybe('low-current', 'A'), options.maybe('high-current', 'A')];
  if ((low === undefined) !== (high === undefined))
    throw new WrongUse('--low-current and --high-current go together');
  return {
    measure: {
      ...(kind === undefined ? {} : { kind: kind as SignalKind }),
      ...(wheel && { wheel }),
      ...(senseOhms === undefined ? {} : { senseOhms }),
    },
    expected: {
      ...(wheel && { wheel }),
      ...(lowBelow === undefined ? {} : { lowBelow }),
      ...(highAbove === undefined ? {} : { highAbove }),
      ...(lobe === undefined ? {} : { beforeGap: lobe }),
      ...(gap === undefined ? {} : { gapLevel: gap }),
      ...(low === undefined || high === undefined ? {} : { currents: { low, high } }),
    },
  };
}

async function load(file: string, options: Options, io: Io): Promise<Capture | null> {
  const rateHz = options.maybe('rate', 'Hz');
  if (rateHz !== undefined && !(rateHz > 0)) throw new WrongUse('--rate must be above zero');
  const fullScaleVolts = options.maybe('full-scale', 'V');
  const { capture, issues } = await readCapture(file, io.cwd, {
    ...(rateHz === undefined ? {} : { rateHz }),
    ...(fullScaleVolts === undefined ? {} : { fullScaleVolts }),
  });
  for (const issue of issues) io.err(`${safeText(formatIssue(issue), { lines: true })}\n`);
  return capture;
}

/** Edges drawn at most in a column unless a part was asked for. */
const EDGES_A_COLUMN = 0.5;

/** The part to draw: as asked, else all of it, else as much around the first gap as can be made out. */
function viewOf(options: Options, measures: CaptureMeasures, width: number): TimeView {
  const end = measures.seconds;
  const [from, to] = [options.maybe('from', 's'), options.maybe('to', 's')];
  if (from !== undefined || to !== undefined) {
    const asked = { from: from ?? 0, to: Math.min(end, to ?? end) };
    if (!(asked.to > asked.from)) throw new WrongUse('there is nothing between --from and --to');
    return asked;
  }
  return tellingView(measures, Math.floor(width * EDGES_A_COLUMN));
}

function terminalWidth(io: Io): number {
  const stated = Number(io.env.COLUMNS ?? process.stdout.columns ?? WIDTH);
  return Number.isFinite(stated) && stated > 0 ? Math.min(WIDTH_MOST, stated) : WIDTH;
}

function svg(capture: Capture, measures: CaptureMeasures, file: string, view: TimeView): string {
  return plotSvg(capture, {
    title: file.split(/[\\/]/).at(-1) ?? file,
    ...view,
    levels: measures.channels.map(markedLevels),
    spansLeast: measures.channels.map(({ unit, kind }) => spanLeastOf(unit, kind)),
    marks: measures.channels.map((channel) => channel.edges.times),
  });
}
