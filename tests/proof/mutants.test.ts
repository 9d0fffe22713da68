/**
 * Trees broken on purpose: the check must notice. Kinds and what the whole campaign finds: docs/broken-trees.md, made anew
 * by `npm run bench mutants`. Here a share of the kinds, one place each; all of them in the long form.
 */
import { afterAll, describe, expect, test } from 'vitest';
import { LONG, SEED, shareOf } from '../campaign.ts';
import { Breaker, instancesOf } from './break-trees.ts';
import { TREES } from './library.ts';
import { KIND_NAMES } from './mutate.ts';

const CARS = LONG ? 32 : 12;
const PER_KIND = LONG ? 8 : 1;
/** One in so many kinds. */
const ONE_IN = 7;
/** A copy of the pedal's tree takes twenty times as long as one of another. */
const IN_SHORT = TREES.filter(([name]) => LONG || name !== 'pedal-position');
/** Of the copies that are told or harm, over all trees. */
const FOUND_SHARE_MIN = 0.95;

const total = { found: 0, missed: 0 };

describe.each(IN_SHORT.map(([name]) => name))('%s', (name) => {
  test('its harmful copies are found', () => {
    const breaker = new Breaker(name, { checked: CARS, judged: CARS });
    const kinds = shareOf(KIND_NAMES, ONE_IN);
    for (const instance of instancesOf(name, PER_KIND, SEED, kinds)) {
      const { found, refused, harm } = breaker.examine(instance, false);
      // What cannot be run is told with an error, or it could be.
      if (refused) expect(found, instance.words).toBe(true);
      if (found) total.found += 1;
      if (found || harm.length === 0) continue;
      total.missed += 1;
      console.log(`not found: ${name}, ${instance.kind}, ${instance.words}: ${harm.join()}`);
    }
  });
});

afterAll(() => {
  const { found, missed } = total;
  console.log(`broken trees: ${found} found, ${missed} harmful ones not`);
  expect(found).toBeGreaterThanOrEqual(15);
  expect(found / (found + missed)).toBeGreaterThanOrEqual(FOUND_SHARE_MIN);
});
