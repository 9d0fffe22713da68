/** The yardstick of docs/library.md does the same job as the tree: it sees what the tree reads, in cars that it does not know. */
import { describe, expect, it } from 'vitest';
import type { Model } from '../../src/circuit/model.ts';
import type { Shown } from '../../src/circuit/test.ts';
import type { LookStep, Step } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { setupOf } from '../circuit/setup.ts';
import { modelOf, NAMES } from '../circuit/shipped.ts';
import { base, end, measure, range, tree } from '../proof/small-tree.ts';
import { shipped } from './shipped.ts';
import { compareMinutes } from './tree-minutes.ts';

const FEW = { samples: 8, expansionsMax: 50 };
const light = NAMES.find((name) => name === 'reluctor-two-wire') ?? NAMES[0]!;
const small = modelOf(light, 8);
const done = end('done', []);

/** A scope step while the engine is cranked; `parts` are the looks of its outcomes. */
function picture(parts: readonly (readonly string[])[], go = 'done'): Step {
  const [plus, minus] = small.circuit.terminals.map(({ id }) => id).filter(isSensorSide);
  return {
    ...base,
    ...{ id: 'picture', kind: 'look', minutes: 5, expected: null },
    setup: setupOf({ state: 'cranking', target: 'moving' }),
    probe: { kind: 'pattern', plus: plus!, minus: minus! },
    outcomes: parts.map((looks, at) => ({ name: `${at}`, words: '', looks, go })),
  } as unknown as Step;
}

const lookOf = (shown: Shown) => (shown.kind === 'look' ? shown.look : null);
const isSensorSide = (id: string) => id.startsWith('sensor.') && !id.endsWith('.pin');
const LOOKS = ['full', 'weak', 'uneven', 'flat-high', 'flat-middle', 'flat-low'];

describe('the cheapest order', () => {
  it('is told of a look no more than the tree makes of it', () => {
    const told = (parts: readonly (readonly string[])[]) =>
      compareMinutes(tree('picture', { picture: picture(parts), done }), small, FEW).optimum;
    // each look by itself tells faults apart, so that the step is worth its minutes
    expect(told(LOOKS.map((look) => [look]))).toBeGreaterThan(5);
    // and in one outcome for all of them there is nothing to be told
    expect(told([LOOKS])).toBe(0);
  });

  it('reads the battery first, as the trees do', () => {
    const probe = { kind: 'volts' as const, plus: 'battery.positive', minus: 'battery.negative' };
    const begun = (parts: readonly (readonly string[])[]) =>
      compareMinutes(
        tree('battery', {
          battery: measure('battery', {
            probe,
            minutes: 0.5,
            outcomes: [range('all', null, null, 'picture')],
          }),
          picture: picture(parts),
          done,
        }),
        small,
        FEW,
      ).optimum;
    // by hand: 0.5 min for the key, 0.5 to walk to the seat and 0.5 to read, though it tells nothing
    expect(begun([LOOKS])).toBeCloseTo(1.5, 9);
  });

  it('is timed in cars that it was not made from, and there the tree has to find what it loses', () => {
    const { linked, model } = shipped('reluctor-no-signal');
    const made = (samples: number) =>
      compareMinutes(linked.procedure, model, { samples, expansionsMax: 1 });
    const [few, more] = [made(2), made(32)];
    // whoever has seen two cars of each fault takes others for another fault
    expect(few.astray).toBeGreaterThan(0.05);
    expect(more.astray).toBeLessThan(few.astray / 3);
    expect(few.tree).toBe(more.tree);
    // so that to know fewer cars is no shorter way
    expect(few.optimum).toBeGreaterThan(more.optimum - 1);
  }, 120_000);

  it('counts no minutes of a car with nothing wrong, and neither does the tree', () => {
    const short = picture([LOOKS.filter((look) => look !== 'full'), ['full']]) as LookStep;
    const [bad, full] = short.outcomes;
    const long: Step = { ...short, outcomes: [bad!, { ...full!, go: 'again' }] };
    const probe = { kind: 'volts' as const, plus: 'battery.positive', minus: 'battery.negative' };
    const again = measure('again', {
      ...{ probe, minutes: 20, outcomes: [range('all', null, null, 'done')] },
    });
    // only faults that spoil the picture in all cars: nobody but a car with nothing wrong reads again
    const cars = Array.from({ length: small.samples }, (_, car) => car);
    const faults = small.circuit.faults.filter(({ id }) =>
      cars.every((car) => lookOf(small.shows(id, testOf(short)!, car)) !== 'full'),
    );
    expect(faults.length).toBeGreaterThan(5);
    const model = { ...small, circuit: { ...small.circuit, faults } };
    const minutes = (steps: Record<string, Step>) =>
      compareMinutes(tree('picture', { ...steps, done }), model as Model, FEW).tree;
    // one car in twenty has nothing wrong: a minute on average, if it counted
    expect(minutes({ picture: long, again }) - minutes({ picture: short })).toBeLessThan(0.001);
  });
});
