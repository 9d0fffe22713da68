/** A connector that the job sheet tells of is a place where the harness is moved. */
import { expect, test } from 'vitest';
import { createModel } from '../../src/circuit/model.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { fitHarness } from '../../src/procedure/fit-harness.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { stepOf } from '../../src/procedure/procedure.ts';
import { readHarness } from '../../src/procedure/read-harness.ts';
import { createAdvisor } from '../../src/session/create-advisor.ts';
import { decide } from '../../src/session/decide.ts';
import { evolve, openSession } from '../../src/session/evolve.ts';
import { wakenBy } from '../../src/session/intermittent.ts';
import { placesOfStep } from '../../src/session/read-watched.ts';
import { presentConclusion } from '../../src/session/session.ts';
import { shipped } from '../library/shipped.ts';
import { opened, when } from '../session/sample-tree.ts';
import { EVERYTHING } from '../session/walk-library.ts';

const { linked } = shipped('hall-no-signal');
const { harness } = readHarness(linked.circuit!, [
  { connector: 'at the bulkhead', wires: ['feed', 'signal'], at: '1 m' },
  { splice: 'at the loom', wires: ['ground'], at: '2 m' },
]);
const { procedure } = fitHarness(harness, linked);
const wiggle = stepOf(procedure, 'wake-second/wiggle');
const CONTACTS = ['feed', 'signal'].flatMap((wire) => [
  `contact.bulkhead.${wire}.open`,
  `contact.bulkhead.${wire}.resistive`,
]);

test('its contacts, and no splice, are a place of the step that moves the harness', () => {
  if (wiggle.kind !== 'ask') throw new Error('it asks');
  expect(placesOfStep(procedure, wiggle)).toEqual(['plug', 'bulkhead', 'harness', 'module-plug']);
  const place = wiggle.outcomes.find(({ name }) => name === 'bulkhead');
  expect(place?.words).toBe('it drops out at the connector at the bulkhead');
  expect([...(place?.under ?? [])].sort()).toEqual(CONTACTS);
  expect(wiggle.say).toContain('Move the connector at the bulkhead by itself.');
});

test('it ends with the connector alone', () => {
  const end = stepOf(procedure, 'harness@bulkhead');
  if (end.kind !== 'conclude') throw new Error('it ends');
  expect([...end.faults].sort()).toEqual(CONTACTS);
  expect(end.title).toBe('An intermittent contact in the connector at the bulkhead');
});

test('sections of the wires are woken along the harness', () => {
  expect(wakenBy(procedure, wiggle)).toContain('wire.signal.1.open');
  expect(wakenBy(procedure, wiggle)).toContain('wire.signal.2.open');
});

test('a tree that asks which wire it was has the connector as a place too', () => {
  const relay = shipped('hall-relay-no-signal').linked;
  const at = readHarness(relay.circuit!, [
    { connector: 'at the bulkhead', wires: ['signal'], at: '1 m' },
  ]).harness;
  const { procedure: tree } = fitHarness(at, relay);
  const moved = stepOf(tree, 'intermittent/wiggle');
  if (moved.kind !== 'ask') throw new Error('it asks');
  expect(placesOfStep(tree, moved)).toContain('bulkhead');
  const { go } = moved.outcomes.find(({ name }) => name === 'bulkhead')!;
  expect(stepOf(tree, go)).toMatchObject({
    faults: ['contact.bulkhead.signal.open', 'contact.bulkhead.signal.resistive'],
  });
});

const { circuit } = fitHarness(harness, linked);
const job = { ...emptyJob('cuts out'), codes: ['P0339'] };
const tree = { ...procedure, start: wiggle.id };
const first = openSession(opened(tree, { job, circuit, instruments: EVERYTHING }));
const model = createModel(circuit!, { samples: 16, seed: 1, meter: STANDARD_SETTINGS.meter });
const { vehicle } = first.opened;
const advisor = createAdvisor(model, { procedure: tree, job, vehicle });

test.each(['bulkhead', 'harness'])('what was woken at "%s" is a piece of evidence', (outcome) => {
  const session = [
    { type: 'acknowledge-cautions' } as const,
    { type: 'choose-outcome', outcome } as const,
  ].reduce((now, command) => {
    const decision = decide(now, command, when(1));
    if (!decision.ok) throw new Error(decision.refusal.code);
    return decision.events.reduce(evolve, now);
  }, first);
  const { faults } = presentConclusion(session)!;
  expect(advisor.weigh(session, faults).evidence).toEqual([{ counted: true, reading: 3 }]);
});
