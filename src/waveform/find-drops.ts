/**
 * Stretches in which a signal is lost, in a long capture taken while something is moved: of a level that should stand,
 * where it is far from where it mostly stands; of a signal that toggles, where the next edge stays away.
 */
import { medianOf } from './capture.ts';
import { edgesGoing } from './find-edges.ts';
import type { ChannelMeasures } from './measure-channel.ts';

/** How often and for how long the signal was lost. */
export interface Drops {
  readonly count: number;
  /** Null where there is none. */
  readonly shortestSeconds: number | null;
  readonly longestSeconds: number | null;
  /** Below it a level is lost, in the unit of the channel; null where edges were looked at. */
  readonly limit: number | null;
  /** Lowest and highest sample. */
  readonly least: number;
  readonly most: number;
}

/** A level that stands is lost below this share of its usual value. Our choice. */
const LEVEL_SHARE = 0.8;
/** An edge is overdue after so many usual distances beyond the gap of the wheel. Our choice. */
const OVERDUE = 2.5;
/** Lost stretches that are nearer to each other than this are one: a contact chatters. Our choice. */
const CHATTER_SECONDS = 0.002;
/** Edges that show what distance is usual. */
const EDGES_LEAST = 6;

/** The drops in `samples`, as measured; `missing` teeth make the gap of the wheel. */
export function findDrops(
  samples: Float32Array,
  { kind, edges, levels, sampleSeconds }: ChannelMeasures,
  missing = 0,
): Drops {
  const { least, most } = levels;
  const isToggling = (kind === 'switched' || kind === 'alternating') && isRegular(edges.times);
  const found = isToggling
    ? overdueEdges(edgesGoing(edges, 'rising'), samples.length * sampleSeconds, missing)
    : lowStretches(samples, sampleSeconds, usual(samples));
  return { ...found, least, most };
}

type LostEdges = Omit<Drops, 'least' | 'most'>;

/** A signal that toggles does so most of the time; a few steps of a level are drops of it. */
function isRegular(times: Float64Array): boolean {
  if (times.length < EDGES_LEAST * 2) return false;
  const apart = Array.from(times.subarray(1), (time, at) => time - times[at]!);
  const middle = medianOf(apart);
  return apart.filter((one) => one < OVERDUE * middle).length > 0.8 * apart.length;
}

function overdueEdges(times: Float64Array, seconds: number, missing: number): LostEdges {
  const apart = Array.from(times.subarray(1), (time, at) => time - times[at]!);
  const pitch = medianOf(apart);
  const most = (missing + OVERDUE) * pitch;
  const ends = [times[0] ?? 0, ...apart, seconds - (times.at(-1) ?? 0)];
  const lost = ends.filter((one) => one > most).map((one) => one - (missing + 1) * pitch);
  return dropsOf(lost, null);
}

function lowStretches(samples: Float32Array, sampleSeconds: number, level: number): LostEdges {
  const limit = LEVEL_SHARE * level;
  const isLost = (value: number) => (level >= 0 ? value < limit : value > limit);
  const found: { from: number; to: number }[] = [];
  for (let i = 0; i < samples.length; i += 1) {
    if (!isLost(samples[i]!)) continue;
    const last = found.at(-1);
    if (last && (i - last.to) * sampleSeconds <= CHATTER_SECONDS) last.to = i + 1;
    else found.push({ from: i, to: i + 1 });
  }
  return dropsOf(
    found.map(({ from, to }) => (to - from) * sampleSeconds),
    limit,
  );
}

/** Where the level mostly stands: the middle of many samples, which drops do not move. */
function usual(samples: Float32Array): number {
  const step = Math.max(1, Math.floor(samples.length / 20_000));
  return medianOf(samples.filter((_, at) => at % step === 0));
}

function dropsOf(seconds: readonly number[], limit: number | null): LostEdges {
  const count = seconds.length;
  return {
    count,
    shortestSeconds: count === 0 ? null : seconds.reduce((least, one) => Math.min(least, one)),
    longestSeconds: count === 0 ? null : seconds.reduce((most, one) => Math.max(most, one)),
    limit,
  };
}
