/** Tests of neighbours that the circuit file has and this car does not. */
import { expect, test } from 'vitest';
import { emptyJob, type Job } from '../../src/procedure/job.ts';
import { fitNeighbours } from '../../src/procedure/read-neighbours.ts';
import { testsToChoose } from '../../src/session/session-tests.ts';
import { shipped } from '../circuit/shipped.ts';
import { sessionAfter } from './sample-tree.ts';

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

test('all other tests stay', () => {
  const all = offered(undefined).length - ofThrottle(undefined).length;
  expect(offered([]).length).toBe(all);
});
