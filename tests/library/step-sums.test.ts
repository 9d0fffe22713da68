/** The sums of a step are filled in with what its circuit says, and speak of what turns there. */
import { expect, it, vi } from 'vitest';
import { WrongUse } from '../../src/commands/calc/sum.ts';
import { SUMS } from '../../src/commands/calc.ts';
import { sumsFor } from '../../src/commands/session/session-sums.ts';
import { STANDARD_SETTINGS } from '../../src/files/settings.ts';
import { shipped } from './shipped.ts';

it('calls a wheel that the engine does not turn a wheel', () => {
  const { linked, model } = shipped('wheel-speed-current');
  const step = linked.procedure.steps['picture/scope']!;
  const context = { model, meter: STANDARD_SETTINGS.meter, ascii: true };
  const sums = sumsFor(step, { ...context, scope: { volts: 8, time: 10 } });
  const labels = sums.flatMap((sum) => sum.lines.map(([label]) => label));
  expect(labels).toContain('wheel');
  expect(labels).not.toContain('crankshaft');
});

it('works out what the meter itself does to a line that is only pulled up', () => {
  const { linked, model } = shipped('hall-no-signal');
  const { meter } = STANDARD_SETTINGS;
  const context = { model, meter, ascii: true, scope: { volts: 8, time: 10 } };
  const step = linked.procedure.steps['level/at-plug']!;
  const divider = sumsFor(step, context).find(({ name }) => name === 'divider');
  // By hand: the pull-up's 1 to 22 kohm have their middle at the root of 22, 4.69 kohm; 5 V * 10 M / (10 M + 4.69 k).
  expect(divider?.lines).toEqual([
    ['voltage', '5 V'],
    ['with the meter', '4.9977 V'],
    ['current', '0 A'],
    ['source resistance', '4.69 kohm'],
  ]);
});

it('leaves out a sum that does not take what the circuit says, and hides no fault of our own', () => {
  const { linked, model } = shipped('hall-no-signal');
  const context = { model, meter: STANDARD_SETTINGS.meter, ascii: true };
  const sums = () =>
    sumsFor(linked.procedure.steps['level/at-plug']!, {
      ...context,
      scope: { volts: 8, time: 10 },
    });
  const whole = sums().map(({ name }) => name);
  expect(whole).toContain('divider');
  const run = vi.spyOn(SUMS['divider']!, 'run');
  run.mockImplementationOnce(() => {
    throw new WrongUse('too much');
  });
  expect(sums().map(({ name }) => name)).toEqual(whole.filter((name) => name !== 'divider'));
  run.mockImplementationOnce(() => {
    throw new Error('ours');
  });
  expect(sums).toThrow('ours');
  run.mockRestore();
});
