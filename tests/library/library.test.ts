import { basename } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkVin } from '../../src/identify/check-vin.ts';
import { isTask } from '../../src/procedure/procedure.ts';
import { colourWords } from '../../src/procedure/wire-colours.ts';
import { library, shipped, trees } from './shipped.ts';

const CIRCUITS = [
  'current-two-wire',
  'hall-module-fed',
  'hall-relay-fed',
  'pedal-dual',
  'reluctor-two-wire',
  'throttle-potentiometer',
];
/** A "say" this long and twice in two files is a copied step. */
const COPIED_LENGTH = 60;

describe('every shipped file', () => {
  it.each([
    ...library.procedures.files(),
    ...library.circuits.files(),
    ...library.jobFiles(),
    ...library.cautionFiles,
  ])('$path loads without an issue', ({ value, issues }) => {
    expect(issues).toEqual([]);
    expect(value).not.toBeNull();
  });

  it('there is a tree for each of the six circuits', () => {
    expect(trees.map(({ draft }) => draft.circuit).sort()).toEqual(CIRCUITS);
  });

  it.each(trees.map(({ draft }) => draft.procedure))('%s links without an issue', (name) => {
    expect(shipped(name).issues).toEqual([]);
  });

  it('is named like what it holds', () => {
    for (const { path, value } of library.procedures.files())
      expect(`${value?.draft.procedure}.yaml`).toBe(basename(path));
    for (const { path, value } of library.jobFiles())
      expect(`${value?.job.name}.yaml`).toBe(basename(path));
  });
});

describe('sub-procedures', () => {
  const used = new Set(
    library.procedures
      .files()
      .flatMap(({ value }) =>
        Object.values(value?.draft.steps ?? {}).flatMap(({ use }) =>
          use === undefined ? [] : [use],
        ),
      ),
  );
  const families = library.procedures
    .files()
    .flatMap(({ value }) => (value?.draft.needs === undefined ? [] : [value.draft.procedure]));

  it.each(families)('%s is used', (name) => {
    expect(used).toContain(name);
  });

  it.each([
    ['reference and ground', 'feed-then-ground'],
    ['what is lost of a supply', 'supply-by-difference'],
    ['ground', 'ground-way'],
    ['both ends of a feed compared', 'feed-way'],
    ['both ends of a signal compared', 'track-to-module'],
    ['signal', 'tap-at-plug'],
    ['injection, along the wire under load', 'along-signal'],
    ['injection, at the module', 'track-pull'],
    ['continuity from end to end', 'end-to-end'],
    ['continuity to ground', 'ohms-to-ground'],
    ['neighbour', 'dragged-reference'],
    ['known-good comparison', 'known-good'],
    ['spare sensor', 'spare-sensor'],
    ['wheel inspection', 'look-at-wheel'],
  ])('the family %s is one of them: %s', (_, name) => {
    expect(families).toContain(name);
  });

  it('no step is copied from one file to another', () => {
    const seen = new Map<string, string>();
    for (const { path, value } of library.procedures.files())
      for (const [id, { say }] of Object.entries(value?.draft.steps ?? {})) {
        const text = (say ?? '').trim().replace(/\s+/g, ' ');
        if (text.length <= COPIED_LENGTH) continue;
        const other = seen.get(text);
        if (other !== undefined && !other.startsWith(`${path} `))
          throw new Error(`"${id}" of ${path} says the same as ${other}`);
        seen.set(text, `${path} ${id}`);
      }
    expect(seen.size).toBeGreaterThan(100);
  });
});

describe('what a person reads', () => {
  const steps = trees.flatMap(({ draft }) =>
    Object.values(shipped(draft.procedure).linked.procedure.steps).map((step) => ({
      tree: draft.procedure,
      step,
    })),
  );

  it('every measurement and look can be gone round', () => {
    const stuck = steps.filter(({ step }) => 'cannot' in step && step.cannot === null);
    for (const { tree, step } of stuck)
      expect(['act', 'ask'], `${tree} ${step.id}`).toContain(step.kind);
  });

  it('every step says why, every conclusion tells the customer', () => {
    for (const { tree, step } of steps) {
      const where = `${tree} ${step.id}`;
      if (isTask(step)) expect(step.kind === 'act' || step.why !== '', where).toBe(true);
      else expect(step.customer, where).not.toBe('');
    }
  });

  it('how the scope is set is computed, and no text says it too', () => {
    for (const { tree, step } of steps.filter(({ step: { kind } }) => kind === 'look'))
      if (isTask(step)) expect(step.say, `${tree} ${step.id}`).not.toMatch(/\ba division\b/);
  });

  it('a text ends like a sentence and fits a small screen', () => {
    for (const { tree, step } of steps) {
      const texts = isTask(step) ? [step.say, step.why] : [step.say, step.repair, step.customer];
      // A warning that the program puts behind a text is one of the shipped cautions, and read by itself.
      const read = texts.flatMap((text) => text.split(/ (?=WARNING: )/));
      for (const text of read.filter((one) => one !== '')) {
        expect(text, `${tree} ${step.id}`).toMatch(/[.?]$/);
        expect(text.length, `${tree} ${step.id}: ${text}`).toBeLessThanOrEqual(420);
      }
    }
  });
});

describe('demo jobs', () => {
  it('there are five', () => {
    expect(library.jobFiles()).toHaveLength(5);
  });

  it.each(library.jobFiles())('$path fits its procedure', ({ value }) => {
    const { job, procedure } = value!;
    const { model } = shipped(procedure!);
    const terminals = model.circuit.terminals.map(({ id }) => id);
    const places = Object.entries(job.terminals);
    expect(places.length).toBeGreaterThan(3);
    for (const [id, { pin, colour }] of places) {
      expect(terminals).toContain(id);
      expect(pin).not.toBe('');
      expect(colourWords(colour), `${id} ${colour}`).not.toBeNull();
    }
    const vin = checkVin(job.vehicle.vin);
    expect(vin.status === 'read' && vin.check.agrees).toBe(true);
    expect(job.customer).not.toBe('');
  });
});
