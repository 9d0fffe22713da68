/** The sums of a step are filled in with what its circuit says, and speak of what turns there. */
import { expect, it } from 'vitest';
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
