/** A plan to record on a drive: what stands in it, and where there is none. */
import { expect, test } from 'vitest';
import { emptyJob, type Happens } from '../../src/procedure/job.ts';
import { drivePlan, planNote } from '../../src/session/drive-plan.ts';
import { openSession } from '../../src/session/evolve.ts';
import { shipped } from '../library/shipped.ts';
import { LIBRARY_CAUTIONS } from './library-cautions.ts';
import { opened, TREE } from './sample-tree.ts';

function planOf(name: string, happens: Happens[], instruments: string[] = ['meter']) {
  const { procedure, circuit } = shipped(name).linked;
  const job = { ...emptyJob('cuts out'), circumstances: { happens } };
  const facts = { job, circuit, instruments, cautionRules: LIBRARY_CAUTIONS };
  return drivePlan(openSession(opened(procedure, facts)));
}

test('the cautions of a road test come first, and nobody reads while driving', () => {
  const plan = planOf('hall-no-signal', ['bumps']);
  expect(plan?.cautions.map(({ id }) => id)).toContain('road-test');
  expect(plan?.lines.join(' ')).toContain('Alone: start the recording before you set off');
  expect(planOf('hall-no-signal', ['bumps'], ['meter', 'helper'])?.lines.join(' ')).toContain(
    'One person drives; a second one watches',
  );
});

test('it is driven as the job sheet tells, else as the customer does', () => {
  expect(planOf('hall-no-signal', ['cold', 'wet'])?.lines.join(' ')).toMatch(
    /overnight with the leads connected.*drive in rain/,
  );
  expect(planOf('hall-no-signal', [])?.lines.join(' ')).toContain('ask first');
});

test.each(['hall-no-signal', 'reluctor-no-signal', 'throttle-position', 'wheel-speed-current'])(
  '%s: what is recorded has every plug closed, and no ohms',
  (name) => {
    const plan = planOf(name, ['hot']);
    expect(plan?.lines[0]).toMatch(/^(Record|Log)/);
    expect(plan?.lines.join(' ')).not.toMatch(/\bohms\b/);
    expect(planNote(plan!).length).toBeLessThan(5000);
  },
);

test('a tree that wakes nothing has no plan', () => {
  expect(drivePlan(openSession(opened(TREE)))).toBeNull();
});
