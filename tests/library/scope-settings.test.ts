/** What a scope step says of its settings is what its sums work out from the circuit. */
import { expect, it } from 'vitest';
import { sumsFor } from '../../src/commands/session/session-sums.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { shipped, trees } from './shipped.ts';

/** `1 V a division`, but not the first look at a whole start, which sees no teeth. */
const SAID = /(?<!First )\b(\d+(?:\.\d+)? ?(?:ms|s|mV|V)) a division/g;
const inOnes = (text: string) => {
  const [value = '', unit = ''] = text.split(' ');
  return Number(value) * (unit.startsWith('m') ? 1e-3 : 1);
};

const steps = trees.flatMap(({ draft }) => {
  const { linked, model } = shipped(draft.procedure);
  return Object.values(linked.procedure.steps).flatMap((step) =>
    step.kind === 'look' && step.probe.kind === 'pattern' ? [{ step, model }] : [],
  );
});

it('agrees with the sums at every scope step, in volts and in time', () => {
  let compared = 0;
  for (const { step, model } of steps) {
    const { meter } = STANDARD_SETTINGS;
    const scope = { volts: 8, time: 10 };
    const lines = Object.fromEntries(
      sumsFor(step, { model, meter, ascii: true, scope }).flatMap((sum) => sum.lines),
    );
    for (const [, said = ''] of step.say.matchAll(SAID)) {
      const isVolts = said.endsWith('V');
      const line = (isVolts ? lines['volts a division'] : lines['time a division']) ?? '';
      const ratio = inOnes(said) / inOnes(line);
      // A second track of half the height stands beside the first.
      expect(isVolts ? [1, 2] : [1], `${step.id}: ${said}, ${line}`).toContain(ratio);
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(10);
});

it('calls a wheel that the engine does not turn a wheel', () => {
  const { linked, model } = shipped('wheel-speed-current');
  const step = linked.procedure.steps['picture/scope']!;
  const context = { model, meter: STANDARD_SETTINGS.meter, ascii: true };
  const sums = sumsFor(step, { ...context, scope: { volts: 8, time: 10 } });
  const labels = sums.flatMap((sum) => sum.lines.map(([label]) => label));
  expect(labels).toContain('wheel');
  expect(labels).not.toContain('crankshaft');
});
