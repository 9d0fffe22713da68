/** The sums of a scope step speak of what turns there. */
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
