/**
 * The tests that look for mutants of one room (OHMWARD_MUTATE): quick, without terminal, without a second solver over
 * whole circuits, and with the same random numbers in every run.
 */
import { defineConfig } from 'vitest/config';
import { BaseSequencer } from 'vitest/node';

const TESTS = {
  quantity: ['tests/quantity', 'tests/outside/{quantity,calc}-*'],
  session: ['tests/session', 'tests/hard/session-model*'],
  suspects: ['tests/suspects', 'tests/outside/suspects-*'],
  circuit: ['tests/circuit', 'tests/outside/circuit-{conformity,diode,textbook}*'],
  proof: ['tests/proof'],
};
/** Campaigns over every circuit and fault, and whole commands: too slow to be repeated for each mutant. */
const TOO_SLOW = [
  'tests/suspects/{guide,calibration}.test.ts',
  'tests/proof/{mutants,check,new}.test.ts',
  'tests/circuit/{schema,predict}.test.ts',
];

/** The runner begins with the longest file; here the first test that fails ends the run, so the shortest goes first. */
class ShortestFirst extends BaseSequencer {
  async sort(files) {
    return (await super.sort(files)).reverse();
  }
}

export default defineConfig({
  test: {
    include: TESTS[process.env.OHMWARD_MUTATE].flatMap((place) => [
      `${place}.test.ts`,
      `${place}/*.test.ts`,
    ]),
    exclude: TOO_SLOW,
    setupFiles: ['scripts/mutate-setup.mjs'],
    env: { CI: 'false', NO_COLOR: '1', OHMWARD_SHORT: '1' },
    sequence: { sequencer: ShortestFirst },
    // The code that is tested is slower by its mutants' switches.
    testTimeout: 120_000,
  },
});
