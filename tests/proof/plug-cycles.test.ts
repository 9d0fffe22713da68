/** A plug that is closed for one step between two that have it open, or opened before anything was moved, is told. */
import { describe, expect, it } from 'vitest';
import type { Setup } from '../../src/circuit/test.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import { earlyPlugs, plugCycleIssues, plugCycles } from '../../src/proof/plug-cycles.ts';
import { proveProcedure } from '../../src/proof/prove-procedure.ts';
import { shareOf } from '../campaign.ts';
import { shipped, trees } from '../library/shipped.ts';
import { base, measure, tree } from './small-tree.ts';

const read = (id: string, ...unplugged: string[]) =>
  measure(id, { setup: { ...base.setup, unplugged } satisfies Setup });
const looked = (id: string, of: string) =>
  ({ ...base, id, kind: 'look', probe: { kind: 'inspect', of }, outcomes: [] }) as unknown as Step;
const asked = (id: string) => ({ ...base, id, kind: 'ask', outcomes: [] }) as unknown as Step;

/** The cycles of a way through these steps in their order. */
function cyclesOf(...steps: readonly Step[]) {
  const named = Object.fromEntries(steps.map((step) => [step.id, step]));
  const procedure: Procedure = tree(steps[0]!.id, named);
  return plugCycles(
    procedure,
    steps.map(({ id }) => ({ step: id, outcome: null })),
  ).map(({ part, closed }) => `${part} at ${closed}`);
}

describe('a way', () => {
  it.each<[string, string[], Step[]]>([
    ['open, closed, open', ['sensor at b'], [read('a', 'sensor'), read('b'), read('c', 'sensor')]],
    ['open twice in a row', [], [read('a', 'sensor'), read('b', 'sensor'), read('c')]],
    [
      'closed for two steps, which are a stage of their own',
      [],
      [read('a', 'sensor'), read('b'), read('c'), read('d', 'sensor')],
    ],
    [
      'a look into the plug opens it',
      ['sensor at b'],
      [looked('a', 'connector.sensor'), read('b'), read('c', 'sensor')],
    ],
    [
      'a look elsewhere closes nothing',
      [],
      [read('a', 'sensor'), looked('b', 'connector.module'), read('c', 'sensor')],
    ],
    ['a question closes nothing', [], [read('a', 'sensor'), asked('b'), read('c', 'sensor')]],
    [
      'another plug for one step',
      ['sensor at b'],
      [read('a', 'sensor'), read('b', 'module'), read('c', 'module', 'sensor')],
    ],
  ])('%s', (_, expected, steps) => {
    expect(cyclesOf(...steps)).toEqual(expected);
  });
});

it('a plug that is opened before the harness was moved is told, where it is opened first', () => {
  const moved = {
    ...base,
    id: 'm',
    kind: 'ask',
    family: 'wiggle',
    outcomes: [],
  } as unknown as Step;
  const steps = [read('a'), read('b', 'sensor'), looked('c', 'connector.sensor'), moved];
  const earlyOf = (...way: readonly Step[]) =>
    earlyPlugs(
      tree(way[0]!.id, Object.fromEntries(way.map((step) => [step.id, step]))),
      way.map(({ id }) => ({ step: id, outcome: null })),
    );
  expect(earlyOf(...steps)).toEqual([{ part: 'sensor', open: 'b', moved: 'm' }]);
  expect(earlyOf(read('a'), moved, read('b', 'sensor'))).toEqual([]);
  // a question moves nothing
  expect(earlyOf(asked('q'), read('b', 'sensor'), moved)).toEqual([
    { part: 'sensor', open: 'b', moved: 'm' },
  ]);
  expect(earlyOf(read('b', 'sensor'), asked('q'))).toEqual([]);
  // who never moves it has nothing to lose by an open plug
  expect(earlyOf(read('a'), read('b', 'sensor'))).toEqual([]);
});

describe('the shipped trees', () => {
  // `ohmward check procedures` tells of all of them; here a share.
  const some = shareOf(
    trees.map(({ draft }) => draft.procedure),
    3,
  );
  it.each(some)('%s have none on a main way', (name) => {
    const { linked, model } = shipped(name);
    const { issues } = proveProcedure(linked, model);
    expect(issues.filter(({ code }) => /plug/.test(code)).map(({ words }) => words)).toEqual([]);
  });
});

it('a cycle is told with what it is on, from a half of a hundredth of all faults on', () => {
  const { linked, model } = shipped('wheel-speed-current');
  const fault = model.circuit.faults[0]!;
  const total = model.circuit.faults.reduce((sum, { weight }) => sum + weight, 0);
  const open = Object.values(linked.procedure.steps).find(
    (step) => step.kind === 'measure' && step.setup.unplugged.join() === 'sensor',
  )!;
  const visits = [open.id, 'across', open.id].map((step) => ({ step, outcome: null }));
  const told = (id: string, share: number) =>
    plugCycleIssues({
      linked,
      model,
      ways: [{ fault: id, share, visits }],
    } as unknown as Parameters<typeof plugCycleIssues>[0]);
  expect(told('healthy', 1)[0]!.words).toContain('on the path of a healthy vehicle');
  expect(told(fault.id, (0.006 * total) / fault.weight)[0]!.words).toContain('1 % of all faults');
  expect(told(fault.id, (0.004 * total) / fault.weight)).toEqual([]);
});
