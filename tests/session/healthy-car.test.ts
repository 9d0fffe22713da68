/** A tree followed on a car with nothing wrong: moving and warming in vain is no sign of a fault that comes and goes. */
import { expect, it } from 'vitest';
import { isIntermittent } from '../../src/session/intermittent.ts';
import { presentConclusion } from '../../src/session/session.ts';
import { HEALTHY } from '../../src/suspects/prediction-table.ts';
import { shopFor, walkOn } from './walk-library.ts';

const TREES = [
  'hall-no-signal',
  'hall-relay-no-signal',
  'reluctor-no-signal',
  'throttle-position',
  'pedal-position',
  'wheel-speed-current',
];

it.each(TREES)('%s ends without a fault and speaks of none that comes and goes', (name) => {
  const shop = shopFor(name);
  const ended = walkOn(shop, shop.begun, 'healthy');
  expect(presentConclusion(ended)).toMatchObject({ id: 'no-fault', faults: [] });
  expect(isIntermittent(ended)).toBe(false);
});

it('the suspects of a throttle that was found right begin with nothing wrong', () => {
  const shop = shopFor('throttle-position');
  const { rows } = shop.advisor.suspects(walkOn(shop, shop.begun, 'healthy'));
  expect(rows[0]).toMatchObject({ repair: HEALTHY });
  expect(rows[0]!.chance).toBeGreaterThan(0.9);
});
