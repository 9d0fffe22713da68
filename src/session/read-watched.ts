/**
 * What an instrument showed while something was moved or warmed, as a person types it: `plug: 4.9 V to 5.1 V, 0 drops,
 * 3 min`, or the readings as they come: `plug: 4.98, 5.01, 0.3`.
 */

import type { MeterUnit } from '../circuit/test.ts';
import type { AskStep, Procedure } from '../procedure/procedure.ts';
import { parseReading } from '../quantity/parse-reading.ts';
import type { Command } from './command.ts';
import { wakes } from './intermittent.ts';

/** What such a text is understood with. */
export interface WatchedAsked {
  /** Places that can be named; each is an answer of the step. */
  readonly places: readonly string[];
  /** Of the readings; null where the step watches no meter. */
  readonly unit: MeterUnit | null;
  /** A reading beyond these is a drop; null where nothing is known of it. */
  readonly limits: { readonly low: number; readonly high: number } | null;
}

type Watched = Extract<Command, { type: 'watch-waking' }>;
type Misread = { readonly words: string; readonly fix: string };

/** How it is written, for who did not. */
export const WATCHED_FORM = 'plug: 4.9 V to 5.1 V, 0 drops, 3 min';
const DROPS = /^(?:(\d{1,4}|no)\s+drops?|drops?\s+(\d{1,4}))$/i;
const MINUTES = /^(\d{1,3}(?:\.\d+)?)\s*(?:min|minutes?)$/i;

/** The places of a step that moves or warms something. */
export function placesOfStep(procedure: Procedure, step: AskStep): string[] {
  return step.outcomes.flatMap(({ name }) => (wakes(procedure, step, name) ? [name] : []));
}

/** The command, or why the text is none; without full stops. */
export function readWatched(text: string, asked: WatchedAsked): Watched | Misread {
  const typed = text.trim();
  const [before = '', ...after] = typed.split(':');
  const isNamed = after.length > 0 && /^[\p{L}\p{N} -]+$/u.test(before);
  const named = isNamed ? before.trim() : undefined;
  const rest = isNamed ? after.join(':') : typed;
  const place = placeNamed(named, asked.places);
  if (typeof place === 'object' && place !== null) return place;
  const readings: number[] = [];
  let drops: number | null = null;
  let minutes: number | null = null;
  for (const item of rest.split(/[,;]|\sto\s/).map((one) => one.trim())) {
    if (item === '') continue;
    const counted = DROPS.exec(item);
    const timed = MINUTES.exec(item);
    if (counted) drops = Number((counted[1] ?? counted[2])!.replace(/^no$/i, '0'));
    else if (timed) minutes = Number(timed[1]);
    else {
      const read = asked.unit && parseReading(item, { unit: asked.unit });
      if (read?.status !== 'read')
        return {
          words: `"${item}" is ${asked.unit ? 'no reading' : 'not understood: no meter is watched here'}`,
          fix: `write it as "${asked.unit ? WATCHED_FORM : 'plug: 0 drops, 3 min'}"`,
        };
      readings.push(read.quantity.value);
    }
  }
  if (readings.length === 0 && drops === null)
    return { words: 'this does not say what was seen', fix: `write it as "${WATCHED_FORM}"` };
  const { limits, unit } = asked;
  const beyond = limits
    ? readings.filter((one) => one < limits.low || one > limits.high).length
    : 0;
  const kept = (value: number) => (Number.isFinite(value) ? value : null);
  return {
    type: 'watch-waking',
    place,
    typed,
    unit: readings.length > 0 ? unit : null,
    least: readings.length > 0 ? kept(Math.min(...readings)) : null,
    most: readings.length > 0 ? kept(Math.max(...readings)) : null,
    drops: drops ?? beyond,
    minutes,
  };
}

/** Null where no place is named; a part of its name will do where only one has it. */
function placeNamed(named: string | undefined, places: readonly string[]): string | null | Misread {
  if (named === undefined) return null;
  const said = named.trim().toLowerCase().replaceAll(' ', '-');
  const found = places.filter((one) => one === said);
  const [only, ...others] = found.length > 0 ? found : places.filter((one) => one.startsWith(said));
  if (only !== undefined && others.length === 0) return only;
  return {
    words: `there is no place "${named.trim()}" here`,
    fix: `one of: ${places.join(', ')}; or leave it out`,
  };
}
