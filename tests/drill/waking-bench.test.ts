/**
 * The simulated vehicle and the questions that only a person could answer: what the trouble code says, and what was seen
 * while the harness was moved.
 */
import { describe, expect, it } from 'vitest';
import type { Test } from '../../src/circuit/test.ts';
import { answersFor, createBench, createWakingBench } from '../../src/drill/bench.ts';
import { emptyJob } from '../../src/procedure/job.ts';
import { outcomeOfValue, type Procedure, stepOf } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { parseReading } from '../../src/quantity/parse-reading.ts';
import type { VehicleAnswer } from '../../src/session/driver.ts';
import { setupOf } from '../circuit/setup.ts';
import { library, shipped } from '../library/shipped.ts';

const { linked, model } = shipped('hall-relay-no-signal');
const { procedure } = linked;

/** Where the answers of a simulated vehicle lead. */
function endOf(tree: Procedure, answers: (id: string) => VehicleAnswer | null): string {
  let id = tree.start;
  for (let steps = 0; steps < 100; steps += 1) {
    const step = stepOf(tree, id);
    if (step.kind === 'conclude') return id;
    const given = answers(id)?.answer;
    if (step.kind === 'act') id = step.go;
    else if (given?.kind === 'outcome')
      id = step.outcomes.find(({ name }) => name === given.outcome)!.go;
    else if (given?.kind === 'reading' && step.kind === 'measure') {
      const read = parseReading(given.typed, { unit: step.unit });
      if (read.status !== 'read') throw new Error(`${given.typed} at ${id}`);
      id = outcomeOfValue(step, read.quantity.value)!.go;
    } else throw new Error(`${id} has no answer`);
  }
  throw new Error('no end');
}

describe('an intermittent fault', () => {
  it.each([
    ['contact.sensor.signal.open', 'sensor-plug'],
    ['wire.feed.open', 'harness-feed'],
    ['contact.module.signal.resistive', 'module-plug'],
    ['sensor.dead', 'sensor-bad'],
  ])('%s is woken and ends at %s', (fault, end) => {
    const bench = createWakingBench(model, procedure, fault, 3);
    expect(endOf(procedure, (id) => bench.answers(stepOf(procedure, id)))).toBe(end);
    expect(bench.fault).toBe(fault);
  });

  it('answers every instrument like a healthy vehicle while nothing is moved', () => {
    const waking = createWakingBench(model, procedure, 'wire.feed.open', 3);
    const healthy = createBench(model, 'healthy', 3, 'wire.feed.open');
    const read = Object.values(procedure.steps).filter(
      (step) =>
        (step.kind === 'measure' || step.kind === 'look') &&
        step.probe !== null &&
        step.probe.kind !== 'inspect' &&
        !testOf(step)!.wiggle,
    );
    expect(read.length).toBeGreaterThan(20);
    for (const step of read) expect(waking.answers(step), step.id).toEqual(healthy.answers(step));
  });

  it('is there for the eyes, and for who moves the harness while reading', () => {
    const fault = 'contact.sensor.feed.open';
    const waking = createWakingBench(model, procedure, fault, 3);
    const there = createBench(model, fault, 3);
    const feed: Test = {
      setup: setupOf(),
      probe: { kind: 'volts', plus: 'sensor.feed.pin', minus: 'battery.negative' },
    };
    expect(waking.shows(feed)).toEqual(createBench(model, 'healthy', 3, fault).shows(feed));
    expect(waking.shows({ ...feed, wiggle: true })).toEqual(there.shows(feed));
    const plug: Test = {
      setup: setupOf({ state: 'key-off' }),
      probe: { kind: 'inspect', of: 'connector.sensor' },
    };
    expect(waking.shows(plug)).toEqual({ kind: 'look', look: 'faulty' });
  });

  it('that nothing wakes ends like a healthy vehicle', () => {
    const bench = createWakingBench(model, procedure, 'fuse.blown', 3);
    expect(endOf(procedure, (id) => bench.answers(stepOf(procedure, id)))).toBe('no-fault');
  });
});

describe('what the trouble code says', () => {
  const job = (codes: string[]) => ({ ...emptyJob('cuts out'), codes });
  const bench = createBench(model, 'healthy', 3);
  const said = (codes: string[]) => answersFor(bench, job(codes))(stepOf(procedure, 'code'));

  it.each([
    ['the job sheet has it', ['P0344'], 'intermittent, or it runs right now'],
    ['it is the first for a sensor', ['P0300', 'P0341'], 'range, performance or correlation'],
    ['the usual, when there is no code', [], 'circuit, no signal, low, high, or no code'],
  ])('is answered as %s', (_, codes, words) => {
    expect(said(codes)?.words).toBe(words);
  });

  it('leaves every other answer as it is', () => {
    const answers = answersFor(bench, job(['P0344']));
    for (const step of Object.values(procedure.steps))
      if (step.id !== 'code') expect(answers(step), step.id).toEqual(bench.answers(step));
  });
});

describe('the demo jobs', () => {
  it.each(library.jobFiles())(
    '$path: who takes over every answer ends at the fault',
    ({ value }) => {
      const { job, procedure: tree, fault, intermittent } = value!;
      const { linked: own, model: ownModel } = shipped(tree!);
      const bench = intermittent
        ? createWakingBench(ownModel, own.procedure, fault!, 3)
        : createBench(ownModel, fault!, 3);
      const answers = answersFor(bench, job);
      const end = endOf(own.procedure, (id) => answers(stepOf(own.procedure, id)));
      expect(own.procedure.steps[end]).toMatchObject({ faults: expect.arrayContaining([fault]) });
    },
  );
});
