/**
 * One wiggle that brings a fault on says where that one is. It says nothing of what else may be wrong, and it is one piece
 * of evidence, however many places of the step were moved before.
 */
import { expect, test } from 'vitest';
import { emptyJob } from '../../src/procedure/job.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { openSession } from '../../src/session/evolve.ts';
import { presentConclusion } from '../../src/session/session.ts';
import { shipped } from '../library/shipped.ts';
import { opened } from './sample-tree.ts';
import { EVERYTHING, shopFor, walkOn } from './walk-library.ts';

test.each([
  ['plug', 'sensor-plug'],
  ['harness', 'harness'],
  ['module-plug', 'module-plug'],
])('at the %s', (outcome, end) => {
  const { linked, model } = shipped('wheel-speed-current');
  const { procedure, circuit } = linked;
  const job = { ...emptyJob('cuts out over bumps'), codes: ['C0035'] };
  const begun = openSession(opened(procedure, { job, circuit, instruments: EVERYTHING }));
  const advisor = createAdvisor(model, { procedure, job, vehicle: begun.opened.vehicle });
  const answers = { code: 'intermittent', 'wake-first/wiggle': outcome };
  const session = walkOn(shopFor('wheel-speed-current'), begun, 'healthy', answers);
  const concluded = presentConclusion(session)!;
  expect(concluded.id).toBe(end);
  const { evidence, ruledOut, proven, chance } = advisor.weigh(session, concluded.faults);
  expect(proven).toBe(false);
  // It is likeliest there all the same.
  expect(chance).toBeGreaterThan(0.5);
  const wiggled = session.events.findIndex(
    (event) => event.type === 'look-recorded' && event.step === 'wake-first/wiggle',
  );
  const pieces = evidence.filter(
    (line) => line.counted && 'reading' in line && line.reading === wiggled + 1,
  );
  expect(pieces).toHaveLength(1);
  expect(ruledOut.filter((line) => 'by' in line && line.by.includes(wiggled + 1))).toEqual([]);
});
