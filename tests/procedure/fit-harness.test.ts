/** A connector that the job sheet tells of is a place where the harness is moved. */
import { expect, test } from 'vitest';
import { fitHarness } from '../../src/procedure/fit-harness.ts';
import { stepOf } from '../../src/procedure/procedure.ts';
import { readHarness } from '../../src/procedure/read-harness.ts';
import { wakenBy } from '../../src/session/intermittent.ts';
import { placesOfStep } from '../../src/session/read-watched.ts';
import { shipped } from '../library/shipped.ts';

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
  expect(end.title).toBe('A contact of the connector at the bulkhead that comes and goes');
});

test('sections of the wires are woken along the harness', () => {
  expect(wakenBy(procedure, wiggle)).toContain('wire.signal.1.open');
  expect(wakenBy(procedure, wiggle)).toContain('wire.signal.2.open');
});
