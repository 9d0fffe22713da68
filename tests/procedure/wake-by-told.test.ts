/** What the job sheet tells of when it happens chooses what is woken first; nothing else of a tree changes. */
import { expect, test } from 'vitest';
import { emptyJob, type Happens } from '../../src/procedure/job.ts';
import { type Procedure, type Step, stepOf, WAKING } from '../../src/procedure/procedure.ts';
import { wakeByTold } from '../../src/procedure/wake-by-told.ts';
import { shipped } from '../library/shipped.ts';

const NAMES = [
  'hall-no-signal',
  'hall-relay-no-signal',
  'reluctor-no-signal',
  'throttle-position',
  'pedal-position',
];
const tree = (name: string) => shipped(name).linked.procedure;
const told = (procedure: Procedure, ...happens: Happens[]) =>
  wakeByTold(procedure, { ...emptyJob('cuts out'), circumstances: { happens } });

/** Where a question that is answered with what it usually comes to leads on, and who leads to it. */
const onward = ({ steps }: Procedure, id: string) => {
  const step = steps[id];
  const outcome = step?.kind === 'ask' && step.outcomes.find(({ name }) => name === step.usual);
  return outcome ? outcome.go : null;
};
/** Steps from `id` on while things are moved and warmed in vain, and the first that is neither. */
function inVain(procedure: Procedure, id: string): string[] {
  const step = stepOf(procedure, id);
  if (step.kind !== 'ask' || !WAKING.includes(step.family)) return [id];
  return [id, ...inVain(procedure, onward(procedure, id)!)];
}

test.each(NAMES)('%s: what happens hot or cold is warmed first, and leads where it led', (name) => {
  const before = tree(name);
  for (const when of ['hot', 'cold'] as const) {
    const after = told(before, when);
    const wiggles = Object.values(before.steps).filter(
      (step) =>
        step.kind === 'ask' && step.family === 'wiggle' && inVain(before, step.id).length === 3,
    );
    expect(wiggles.length).toBeGreaterThan(0);
    for (const { id } of wiggles) {
      const [, heat, past] = inVain(before, id);
      expect(inVain(after, heat!)).toEqual([heat, id, past]);
      // The other answers, and the faults that each can be given under, are as they were.
      for (const one of [id, heat!]) {
        const answers = (of: Procedure) => {
          const step = stepOf(of, one);
          return step.kind === 'ask'
            ? step.outcomes.filter(({ name: it }) => it !== step.usual)
            : [];
        };
        expect(answers(after)).toEqual(answers(before));
      }
    }
  }
});

test('nobody is led past what was there: who led to the one leads to the other', () => {
  const [before, after] = [tree('hall-no-signal'), told(tree('hall-no-signal'), 'hot')];
  const leading = ({ steps }: Procedure, id: string) =>
    Object.values(steps).flatMap((step: Step) =>
      'outcomes' in step && step.outcomes.some(({ go }) => go === id) ? [step.id] : [],
    );
  expect(leading(after, 'wake-second/heat')).toEqual(leading(before, 'wake-second/wiggle'));
  expect(leading(after, 'wake-second/wiggle')).toEqual(['wake-second/heat']);
  const wiggle = stepOf(after, 'wake-second/wiggle');
  const heat = stepOf(after, 'wake-second/heat');
  expect([heat.kind === 'ask' && heat.cannot, wiggle.kind === 'ask' && wiggle.cannot]).toEqual([
    'wake-second/wiggle',
    onward(before, 'wake-second/heat'),
  ]);
});

test('what is told stands before what to do', () => {
  const say = (happens: Happens[], id: string) => {
    const step = stepOf(told(tree('hall-no-signal'), ...happens), `wake-second/${id}`);
    return step.kind === 'conclude' ? '' : step.say;
  };
  expect(say(['hot'], 'heat')).toMatch(/^It happens hot, so heat it before you wiggle it\. /);
  expect(say(['wet'], 'wiggle')).toMatch(/^It happens in the wet: mist connectors and harness/);
  expect(say(['bumps', 'hot'], 'wiggle')).toMatch(/^It happens over bumps/);
  expect(say(['bumps', 'hot'], 'heat')).toMatch(/^It happens hot\. /);
});

test('a sheet that tells nothing of it leaves the tree alone, and moved comes before warmed where both can wake it', () => {
  const before = tree('hall-no-signal');
  expect(told(before)).toBe(before);
  expect(told(before, 'always')).toBe(before);
  expect(inVain(told(before, 'wet', 'cold'), 'wake-second/wiggle')).toEqual(
    inVain(before, 'wake-second/wiggle'),
  );
});
