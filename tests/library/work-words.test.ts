/** What the shipped trees ask of hands and eyes: nothing is left out on the bench, nothing sound taken for damage. Common practice, no source. */
import { expect, test } from 'vitest';
import { isTask } from '../../src/procedure/procedure.ts';
import { testOf } from '../../src/procedure/test-of.ts';
import { shipped, trees } from './shipped.ts';

const NAMES = trees.map(({ draft }) => draft.procedure);
const tasksOf = (name: string) =>
  Object.values(shipped(name).linked.procedure.steps).filter(isTask);
const textOf = ({ say, why }: { say: string; why: string }) => `${say} ${why}`;

test.each(NAMES)('%s: a sensor that is taken out is put back before the next test', (name) => {
  const { steps } = shipped(name).linked.procedure;
  for (const step of tasksOf(name)) {
    if (!/take the sensor out/i.test(step.say)) continue;
    // The step that looks into the hole next puts it back.
    const ways = step.kind === 'act' ? [step.go] : step.outcomes.map(({ go }) => go);
    const next = ways.map((id) => steps[id]!).filter(isTask);
    expect([step, ...next].map(({ say }) => say).join(' '), step.id).toMatch(/sensor back in/i);
  }
});

test.each(NAMES)('%s: where hands move the harness for a reading, it is weighed so', (name) => {
  for (const step of tasksOf(name)) {
    const read = testOf(step);
    if (read && /\bmove connector and (?:harness|cable)\b/i.test(step.say))
      expect(read.wiggle, step.id).toBe(true);
    if (read?.wiggle) expect(step.say, step.id).toMatch(/\b(?:move|wiggle|bend)/i);
  }
});

// 60 teeth of which 2 are left out: every turn has one gap, and a sound one.
test.each(['hall-no-signal', 'hall-relay-no-signal', 'reluctor-no-signal'])(
  '%s: the gap that the wheel is made with is not taken for a missing tooth',
  (name) => {
    const judged = tasksOf(name).filter(
      (step) =>
        'probe' in step &&
        ((step.probe?.kind === 'pattern' && step.kind === 'look') ||
          (step.probe?.kind === 'inspect' && step.probe.of === 'target')),
    );
    expect(judged.length).toBeGreaterThan(0);
    for (const step of judged) expect(textOf(step), step.id).toMatch(/gaps? .*(is|are) made with/);
  },
);

test.each(['hall-no-signal', 'hall-relay-no-signal'])(
  '%s: what a slow sweep makes of many teeth is said where the scope is set',
  (name) => {
    const pictures = tasksOf(name).filter(
      (step) => step.kind === 'look' && step.probe.kind === 'pattern',
    );
    expect(pictures.length).toBeGreaterThan(0);
    for (const step of pictures) expect(step.why, step.id).toMatch(/slow sweep.*false slow wave/);
  },
);
