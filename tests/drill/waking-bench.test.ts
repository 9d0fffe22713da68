/** The simulated vehicle whose fault comes and goes: healthy to every test, found by who moves and warms. */
import { describe, expect, it } from 'vitest';
import { createBench, createWakingBench } from '../../src/drill/bench.ts';
import { outcomeOfValue, type Procedure, stepOf } from '../../src/procedure/procedure.ts';
import { parseReading } from '../../src/quantity/parse-reading.ts';
import type { VehicleAnswer } from '../../src/session/driver.ts';
import { shipped } from '../library/shipped.ts';

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

describe('a fault that comes and goes', () => {
  it.each([
    ['contact.sensor.signal.open', 'sensor-plug'],
    ['wire.feed.open', 'harness'],
    ['contact.module.signal.resistive', 'module-plug'],
    ['sensor.dead', 'sensor-bad'],
  ])('%s is woken and ends at %s', (fault, end) => {
    const bench = createWakingBench(model, procedure, fault, 3);
    expect(endOf(procedure, (id) => bench.answers(stepOf(procedure, id)))).toBe(end);
    expect(bench.fault).toBe(fault);
  });

  it('answers every measurement and look like a healthy vehicle', () => {
    const waking = createWakingBench(model, procedure, 'wire.feed.open', 3);
    const healthy = createBench(model, 'healthy', 3);
    const read = Object.values(procedure.steps).filter(
      (step) => (step.kind === 'measure' || step.kind === 'look') && step.probe !== null,
    );
    expect(read.length).toBeGreaterThan(20);
    for (const step of read) expect(waking.answers(step), step.id).toEqual(healthy.answers(step));
  });

  it('that nothing wakes ends like a healthy vehicle', () => {
    const bench = createWakingBench(model, procedure, 'wire.relay-supply.open', 3);
    expect(endOf(procedure, (id) => bench.answers(stepOf(procedure, id)))).toBe('no-fault');
  });
});
