/** Tests of neighbours that the circuit file has and this car does not. */
import { describe, expect, test } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import { fitNeighbours } from '../../src/procedure/read-neighbours.ts';
import { isLookAt } from '../../src/session/absent-parts.ts';
import { allTests } from '../../src/session/advisor.ts';
import type { Command } from '../../src/session/command.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { testsToChoose } from '../../src/session/session-tests.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { shipped } from '../circuit/shipped.ts';
import { sessionAfter } from './sample-tree.ts';
import { EVERYTHING } from './walk-library.ts';

const HALL = shipped('hall-module-fed');
const offered = (shares: Job['shares']) => {
  const circuit = shares ? fitNeighbours(HALL, shares).circuit : HALL;
  const job = { ...emptyJob('x'), ...(shares ? { shares } : {}) };
  return testsToChoose(sessionAfter([], null, { circuit, job }));
};
const ofThrottle = (shares: Job['shares']) =>
  offered(shares).filter(({ test: one }) => JSON.stringify(one).includes('throttle'));

test.each<[string, Job['shares'], boolean]>([
  ['nobody has said what shares the feed', undefined, true],
  ['nothing shares anything', [], false],
  ['another one does', [{ name: 'oil pressure sensor', shares: ['feed'] }], false],
  ['it is named itself', [{ name: 'throttle position sensor', shares: ['feed'] }], true],
  ['only the ground is told of', [{ name: 'fan', shares: ['ground'] }], true],
])("where %s, the tests of the circuit's neighbour stand or not", (_, shares, stand) => {
  expect(ofThrottle(shares).length > 0).toBe(stand);
});

test.each<[string, boolean]>([
  ['throttle-position', true],
  ['connector.throttle-position', true],
  ['wire.throttle-feed', true],
  ['connector.sensor', false],
  ['wire.feed', false],
  ['harness', false],
])('a look at %s is one at a neighbour that is not there: %s', (of, isAbsent) => {
  expect(isLookAt(of, ['throttle-position'], HALL)).toBe(isAbsent);
});

test('all other tests stay', () => {
  const all = offered(undefined).length - ofThrottle(undefined).length;
  expect(offered([]).length).toBe(all);
});

describe('after a feed that is dragged down', () => {
  const low: Command = {
    type: 'record-test',
    test: {
      setup: KEY_ON,
      probe: { kind: 'volts', plus: 'module.reference', minus: 'battery.negative' },
    },
    typed: '0.4',
    shown: { kind: 'number', value: 0.4, unit: 'V' },
    expected: null,
  };
  test.each<[string, Job['shares'], boolean]>([
    ['proposed where nobody has said what shares it', undefined, true],
    ['not proposed where nothing does', [], false],
  ])("the neighbour's plug is %s", (_, shares, isProposed) => {
    const job = { ...emptyJob('x'), ...(shares ? { shares } : {}) };
    // The list ends after a few tests; those with a resistor, which tell as much, would push this one out.
    const instruments = EVERYTHING.filter((one) => one !== 'resistor');
    const session = sessionAfter([low], null, { circuit: HALL, job, instruments });
    const model = createModel(HALL, { samples: 16, seed: 1, meter: STANDARD_SETTINGS.meter });
    const { vehicle } = session.opened;
    const advisor = createAdvisor(model, { procedure: null, job, vehicle });
    const proposed = allTests(advisor, session).map((one) => JSON.stringify(one.test));
    expect(proposed.length).toBeGreaterThan(0);
    expect(proposed.some((one) => one.includes('throttle'))).toBe(isProposed);
  });
});
