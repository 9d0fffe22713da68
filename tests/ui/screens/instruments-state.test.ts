/** What is said of an instrument where it is ticked. */
import { expect, it } from 'vitest';
import { INSTRUMENT_WORDS } from '../../../src/ui/screens/instruments-state.ts';

it('promises of no instrument that a module bears it: that is worked out for each test', () => {
  for (const { about } of Object.values(INSTRUMENT_WORDS)) expect(about).not.toMatch(/\bsafe\b/);
  expect(INSTRUMENT_WORDS['test-light'].about).toContain('each test works out');
});
