/** Measures as lines of text: one block a channel, then the phases. */
import { formatQuantity, formatRange } from '../quantity/format-quantity.ts';
import type { Unit } from '../quantity/quantity.ts';
import type { Spread } from './capture.ts';
import type { ChannelMeasures } from './measure-channel.ts';
import type { Coil } from './measure-coil.ts';
import type { CaptureMeasures, Phase } from './measure-phase.ts';
import type { Sweep } from './measure-sweep.ts';

/** Which signs the lines may use. */
export interface DescribeOptions {
  readonly ascii?: boolean;
}

const LABEL = 16;

/** Blocks of `label  value` lines with blank lines between. */
export function describeCapture(
  measures: CaptureMeasures,
  options: DescribeOptions = {},
): string[] {
  const names = measures.channels.map(({ name }) => name);
  const blocks = measures.channels.map((channel) => describeChannel(channel, options));
  const phases = measures.phases.map((phase) => describePhase(phase, names, options));
  return [...blocks, ...phases].flatMap((block, at) => (at === 0 ? block : ['', ...block]));
}

/** The levels worth a line in a drawing. */
export function markedLevels(measures: ChannelMeasures): { value: number; name: string }[] {
  if (measures.kind === 'switched')
    return [
      { value: measures.levels.high, name: 'high' },
      { value: measures.levels.low, name: 'low' },
    ];
  return measures.kind === 'alternating' ? [{ value: measures.middle, name: 'mid' }] : [];
}

const KIND_WORDS: Readonly<Record<ChannelMeasures['kind'], string>> = {
  steady: 'steady line',
  switched: 'switched signal',
  alternating: 'alternating signal',
  sweep: 'sweep',
};

/** A label and what stands behind it. */
type MeasureRow = readonly [label: string, value: string];
/** A value in its unit, by default the channel's. */
type Show = (value: number, of?: Unit) => string;

function describeChannel(measures: ChannelMeasures, { ascii = false }: DescribeOptions): string[] {
  const { levels, pulses, wheel, coil, sweep, currents } = measures;
  const unit: Unit = measures.unit;
  const show: Show = (value, of = unit) => formatQuantity({ value, unit: of }, { ascii });
  const rows: MeasureRow[] = [];
  const add = (label: string, value: string) => rows.push([label, value]);
  const spread = (label: string, values: Spread | null, of: Unit) => {
    if (!values) return;
    const { mean, least, most } = values;
    const range =
      most - least > 0.005 * mean ? ` (${formatRange(least, most, of, { ascii })})` : '';
    add(label, show(mean, of) + range);
  };
  if (measures.kind === 'steady') add('level', show(levels.mean));
  if (measures.kind === 'switched') {
    add('low level', show(levels.low));
    add('high level', show(levels.high));
    add('amplitude', show(levels.amplitude));
  }
  if (measures.kind === 'alternating') add('middle', show(measures.middle));
  if (measures.kind !== 'switched') add('peak to peak', show(levels.most - levels.least));
  if (currents) add('currents', `${show(currents.low, 'A')} and ${show(currents.high, 'A')}`);
  add('noise', show(measures.kind === 'switched' ? levels.noise : measures.noise));
  if (pulses.hertz !== null) {
    add('pulses', `${pulses.rising} rising, ${pulses.falling} falling edges`);
    add(
      'frequency',
      `${show(pulses.hertz, 'Hz')} on average, ${show(pulses.regularHertz ?? 0, 'Hz')} from pulse to pulse`,
    );
    spread('period', pulses.periodSeconds, 's');
    if (measures.kind === 'switched') {
      spread('high for', pulses.highSeconds, 's');
      spread('low for', pulses.lowSeconds, 's');
      add('duty', show((pulses.duty ?? 0) * 100, '%'));
      spread('rise 10-90 %', measures.riseSeconds, 's');
      spread('fall 10-90 %', measures.fallSeconds, 's');
    }
  }
  if (wheel) {
    const pitches = Number(wheel.pitches.toFixed(2));
    const gap = wheel.by === 'gap' ? `, ${wheel.missing} missing in the gap` : '';
    add(
      'wheel',
      `${wheel.pulses} pulses in ${pitches} pitches${gap}, ${wheel.turns} whole ${wheel.turns === 1 ? 'turn' : 'turns'}`,
    );
    spread('speed', wheel.rpm, 'rpm');
    if (measures.gapLevel) add('gap', `${measures.gapLevel} while it passes`);
    if (wheel.pitchSwing > 0.005)
      add('pitch swing', `${(wheel.pitchSwing * 100).toFixed(1)} % once a turn`);
    if (wheel.irregular.length > 0)
      add('irregular', `${wheel.irregular.length} teeth missing or too many`);
  }
  if (coil) for (const row of coilRows(coil, show)) rows.push(row);
  if (sweep) for (const row of sweepRows(sweep, show)) rows.push(row);
  const title = `${measures.name}: ${KIND_WORDS[measures.kind]}, ${measures.samples} samples`;
  return [title, ...rows.map(([label, value]) => `  ${label.padEnd(LABEL)} ${value}`)];
}

function coilRows({ slow, fast, runOut, beforeGap }: Coil, show: Show): MeasureRow[] {
  const at = ({ peakToPeak, hertz }: Coil['slow']) =>
    `${show(peakToPeak, 'V')} peak to peak at ${show(hertz, 'Hz')}`;
  return [
    ['at low speed', at(slow)],
    ['at high speed', at(fast)],
    ['run-out', `${(runOut * 100).toFixed(1)} % once a turn`],
    ...(beforeGap ? [['before the gap', `${beforeGap} lobe`] as const] : []),
  ];
}

function sweepRows(
  { start, end, least, most, dropOuts, reversals }: Sweep,
  show: Show,
): MeasureRow[] {
  const turns = reversals
    .slice(0, 5)
    .map(({ value, seconds }) => `${show(value)} after ${show(seconds, 's')}`);
  return [
    ['start and end', `${show(start)} and ${show(end)}`],
    ['minimum and maximum', `${show(least)} and ${show(most)}`],
    ['drop-outs', String(dropOuts.length)],
    ['reversals', reversals.length === 0 ? '0' : `${reversals.length}: ${turns.join(', ')}`],
  ];
}

function describePhase(phase: Phase, names: readonly string[], options: DescribeOptions): string[] {
  return [phaseTitle(phase, names, options), ...edgesOf(phase, options).map((it) => `  ${it}`)];
}

/**
 * A pair of channels in one line: where the edges of one stand in the turn of the other. `names` are the channels', by
 * number: text from a file, to be made harmless by who shows it. `more` edges are only counted.
 */
export function phaseWords(
  phase: Phase & { readonly more?: number },
  names: readonly string[],
  options: DescribeOptions = {},
): string {
  const edges = edgesOf(phase, options);
  const rest = edges.length + (phase.more ?? 0) - EDGES_NAMED;
  const more = rest > 0 ? ` and ${rest} more` : '';
  return `${phaseTitle(phase, names, options)}: ${edges.slice(0, EDGES_NAMED).join(', ')}${more}`;
}
const EDGES_NAMED = 8;

function phaseTitle(
  phase: Phase,
  names: readonly string[],
  { ascii = false }: DescribeOptions,
): string {
  const degree = ascii ? ' deg' : '°';
  const [name, reference] = [names[phase.channel], names[phase.reference]];
  return `${name} in ${phase.cycleDegrees}${degree} of ${reference}, from the tooth after its gap`;
}

function edgesOf(phase: Phase, { ascii = false }: DescribeOptions): string[] {
  const degree = ascii ? ' deg' : '°';
  return phase.edges.map((edge) => {
    const scatter =
      edge.plusMinus >= 0.05 ? ` ${ascii ? '+/-' : '±'}${edge.plusMinus.toFixed(1)}` : '';
    return `${edge.direction === 'rising' ? 'rises at' : 'falls at'} ${edge.degrees.toFixed(1)}${scatter}${degree}`;
  });
}
