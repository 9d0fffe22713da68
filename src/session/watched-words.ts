/** Rounds of moving and warming in words: each by itself, and all of a step together. */
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { Drops } from '../waveform/find-drops.ts';
import type { CaptureMeasured, WakingWatched } from './events.ts';

/** `2 drops, of 1.2 ms to 30 ms, below 4 V`. */
export function dropsWords(
  { count, shortestSeconds, longestSeconds, limit }: Drops,
  unit: CaptureMeasured['unit'],
): string {
  const show = (value: number) => formatQuantity({ value, unit: 's' }, { digits: 2 });
  if (count === 0 || shortestSeconds === null || longestSeconds === null) return 'No drop.';
  const of =
    count === 1
      ? `of ${show(longestSeconds)}`
      : `the shortest ${show(shortestSeconds)}, the longest ${show(longestSeconds)}`;
  const below =
    limit === null ? '' : `, below ${formatQuantity({ value: limit, unit }, { digits: 2 })}`;
  return `${countOf(count)}, ${of}${below}.`;
}

type Round = Pick<WakingWatched, 'place' | 'minutes' | 'drops' | 'unit' | 'least' | 'most'>;

/** `plug: 4.9 V to 5.1 V, no drop, 3 min`. */
export function watchedWords({ place, minutes, drops, ...seen }: Round): string {
  const said = [
    ...rangeOf(seen),
    drops === 0 ? 'no drop' : countOf(drops),
    ...(minutes === null ? [] : [minutesOf(minutes)]),
  ].join(', ');
  return place === null ? said : `${place}: ${said}`;
}

/** These rounds in one: the least, the most, all drops, all minutes; null for none. */
export function watchedInAll(rounds: readonly WakingWatched[]): string | null {
  const [first] = rounds;
  if (!first) return null;
  const metered = rounds.filter(({ unit }) => unit !== null && unit === unitOf(rounds));
  const ends = (value: number | null) => value ?? Number.POSITIVE_INFINITY;
  const kept = (value: number) => (Number.isFinite(value) ? value : null);
  return watchedWords({
    ...first,
    place: null,
    unit: unitOf(rounds),
    least: metered.length > 0 ? kept(Math.min(...metered.map(({ least }) => ends(least)))) : null,
    most: metered.length > 0 ? kept(Math.max(...metered.map(({ most }) => ends(most)))) : null,
    drops: rounds.reduce((sum, { drops }) => sum + drops, 0),
    minutes: rounds.some(({ minutes }) => minutes !== null)
      ? rounds.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0)
      : null,
  });
}

function unitOf(rounds: readonly WakingWatched[]): WakingWatched['unit'] {
  return rounds.find(({ unit }) => unit !== null)?.unit ?? null;
}

function rangeOf({ unit, least, most }: Pick<WakingWatched, 'unit' | 'least' | 'most'>): string[] {
  if (unit === null) return [];
  const show = (value: number | null) =>
    formatQuantity({ value: value ?? Number.POSITIVE_INFINITY, unit }, { digits: 4 });
  return [least === most ? show(least) : `${show(least)} to ${show(most)}`];
}

function countOf(drops: number): string {
  return drops === 1 ? '1 drop' : `${drops} drops`;
}

function minutesOf(minutes: number): string {
  return `${Number(minutes.toPrecision(2))} min`;
}
