/** What a step needs and nobody has ticked as at hand, in words. No React. */
import { TOOLS, type Tool } from '../../circuit/tools.ts';
import { isTask, type Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import type { Session } from '../../session/session.ts';
import { needsOf } from '../../suspects/test-entries.ts';

/**
 * That instruments of a step are not ticked, and the way round it, with `keys` for the list of instruments and for a step that
 * cannot be done; null where all are at hand, and on a drill, whose bench has everything.
 */
export function notTickedWords(
  { instruments, opened }: Session,
  step: Step,
  keys: { readonly instruments: string; readonly cannot: string },
): string | null {
  const test = testOf(step);
  if (!test || opened.vehicle.kind === 'drill') return null;
  const missing = needsOf(test).filter(
    (need): need is Tool => need in TOOLS && !instruments.includes(need),
  );
  if (missing.length === 0) return null;
  const names = missing.map((need) => TOOLS[need].words.toLowerCase().replace(/^led/, 'LED'));
  const round = isTask(step) && step.cannot !== null ? ` No such thing here: ${keys.cannot}.` : '';
  return `Not ticked as at hand (${keys.instruments}): ${names.join(', ')}.${round}`;
}
