/** What is asked for beside the few repairs that lead: of a fault that comes and goes no test that tells next to nothing. */
import { expect, it } from 'vitest';
import { emptyJob } from '../../src/procedure/job.ts';
import type { Proposal, SuspectRow } from '../../src/session/advisor.ts';
import { chooseSuspects } from '../../src/session/choose-suspects.ts';
import type { ProposedTests } from '../../src/session/proposed-tests.ts';
import { weighConclusion } from '../../src/session/weigh-conclusion.ts';
import { AT_THE_START } from '../../src/suspects/optimum.ts';
import { ALL_MEANS } from '../../src/suspects/test-cost.ts';
import { modelOf } from '../circuit/shipped.ts';
import { sessionAfter } from './sample-tree.ts';

const model = modelOf('hall-module-fed', 8);
const session = sessionAfter([], null);
const space = chooseSuspects(model, session.opened)(session);
const ranking = space.rank([]);
const basis = {
  ...{ model, job: emptyJob('stalls'), space, readings: [] },
  standing: { readings: [], ranking, now: AT_THE_START, means: ALL_MEANS, aside: [] },
};
const row = (repair: string, chance: number): SuspectRow => ({
  ...{ repair, words: repair, chance },
  faults: [{ id: repair, words: repair, chance }],
});
const ROWS = [row('plug', 0.5), row('sensor', 0.43), row('wire', 0.01)];

/** Of a conclusion on the plug, which is not borne out: what is better, where the best test tells so many bits. */
function better(bits: number, isIntermittent: boolean) {
  const proposed = { nextTests: [{ id: 'look', bits } as Proposal] } as unknown as ProposedTests;
  return weighConclusion(['contact.sensor.signal.open'], basis, {
    ...{ rows: () => ROWS, proposed, overturned: null, isIntermittent, nothingFound: null },
  }).better;
}

it('is the test where it tells enough, or where the fault stays', () => {
  expect(better(0.06, true)).toMatchObject({ kind: 'first', proposal: { id: 'look' } });
  expect(better(0.04, false)).toMatchObject({ kind: 'first', proposal: { id: 'look' } });
});

it('are the few that lead where it does not, and the fault comes and goes', () => {
  expect(better(0.04, true)).toMatchObject({
    kind: 'instead',
    row: { words: 'plug Or: sensor', faults: [{ id: 'plug' }, { id: 'sensor' }] },
  });
});
