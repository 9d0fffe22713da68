/**
 * The regular expressions of the source against their worst texts. Held against each other, not against a clock: a text
 * four times as long may take about four times as long.
 */
import { expect, it } from 'vitest';
import { LONG, shareOf } from '../campaign.ts';
import { aroundFor, regexesIn, unitsFor } from './regexes.ts';

const SIGNS = LONG ? 100_000 : 20_000;
/** Less than this is not looked at closer: a machine has other things to do. */
const WORTH_MS = 15;
const LONGER = 4;
/** An expression that looks at every pair of signs takes `LONGER` times `LONGER`; in the middle of the two, by ratio. */
const GROWTH_MAX = LONGER ** 1.5;
const TRIES = 5;

function cpuMs(regex: RegExp, text: string): number {
  const before = cpuUsed();
  regex.lastIndex = 0;
  if (regex.global) text.replace(regex, '');
  else regex.exec(text);
  return (cpuUsed() - before) / 1000;
}

/** User and system time together: Linux counts the sum exactly, and shares it out by the ticks of a clock. */
function cpuUsed(): number {
  const { user, system } = process.cpuUsage();
  return user + system;
}

/** How much longer a longer text takes, of `TRIES` the least. */
function growthOf(regex: RegExp, textOf: (signs: number) => string): number {
  const least = (text: string) =>
    Math.min(...Array.from({ length: TRIES }, () => cpuMs(regex, text)));
  return least(textOf(SIGNS)) / Math.max(least(textOf(SIGNS / LONGER)), 0.1);
}

it('none takes more than in proportion', { timeout: 3_600_000 }, () => {
  const found = regexesIn('src');
  expect(found.length).toBeGreaterThan(300);
  let texts = 0;
  const worse = found.flatMap(({ where, regex }) => {
    const cases = unitsFor(regex).flatMap((unit) =>
      aroundFor(regex).map(([before, behind]) => ({ unit, before, behind })),
    );
    for (const { unit, before, behind } of shareOf(cases, 6)) {
      const textOf = (signs: number) => before + unit.repeat(signs / unit.length) + behind;
      texts += 1;
      if (cpuMs(regex, textOf(SIGNS)) < WORTH_MS) continue;
      const growth = growthOf(regex, textOf);
      if (growth > GROWTH_MAX)
        return [
          `${where} on ${JSON.stringify([before, unit, behind])}: ${growth.toFixed(0)} times`,
        ];
    }
    return [];
  });
  console.info(`regexes=${found.length} texts=${texts} of ${SIGNS} signs`);
  expect(worse).toEqual([]);
});

it('the check finds one that looks at every pair of signs', () => {
  const textOf = (signs: number) => `${' '.repeat(signs)}x`;
  expect(growthOf(/\s+$/, textOf)).toBeGreaterThan(GROWTH_MAX);
  expect(growthOf(/x\s*$/, textOf)).toBeLessThan(GROWTH_MAX);
});
