/** What a person says shares the feed is off for ohms, in the setup and in the words. */
import { expect, test } from 'vitest';
import { refuseTest } from '../../src/circuit/refuse-test.ts';
import { tellingNeighbours } from '../../src/circuit/telling-neighbours.ts';
import { withOhmsApart } from '../../src/procedure/ohms-apart.ts';
import { isTask } from '../../src/procedure/procedure.ts';
import { fitNeighbours } from '../../src/procedure/read-neighbours.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { LIBRARY, link, TREES } from '../proof/library.ts';

const ON_CAR = [{ name: 'oil level sensor', shares: ['feed', 'ground'] as const }];

test.each(TREES)('no step of %s meets a neighbour that is named', (_, parsed) => {
  const { procedure, circuit } = link(parsed, 8).linked!;
  const made = tellingNeighbours(circuit!, fitNeighbours(circuit!, ON_CAR).circuit);
  const fitted = withOhmsApart(procedure, made);
  const refused = (tree: typeof procedure) =>
    Object.values(tree.steps).flatMap((step) => {
      const done = isTask(step) ? testOf(step) : null;
      const refusal = done && refuseTest(made, done);
      return refusal ? [`${step.id}: ${refusal.code}`] : [];
    });
  expect(refused(procedure)).toEqual(
    procedure.name === 'hall-relay-no-signal' ? ['load: ohms-on-electronics'] : [],
  );
  expect(refused(fitted)).toEqual([]);
});

test('the hands are told to unplug it', () => {
  const { procedure, circuit } = link(LIBRARY.procedures.get('hall-relay-no-signal')!, 8).linked!;
  const made = fitNeighbours(circuit!, ON_CAR).circuit;
  const step = withOhmsApart(procedure, made).steps['load']!;
  const { unplugged } = isTask(step) ? step.setup : { unplugged: [] };
  expect(unplugged).toEqual(['fuse', 'oil-level-sensor', 'sensor', 'speed-sensor']);
  expect(step.say).toMatch(
    /unplug the fuse of the engine sensors, the oil level sensor, the camshaft position sensor and the vehicle speed sensor\./,
  );
  expect(step.say).toContain('No new fuse yet.');
});
