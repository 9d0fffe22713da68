/** Asks about a reading that looks like a slip of the hand, before it is taken. */
import type { MeasureStep } from '../../procedure/procedure.ts';
import { parseReading } from '../../quantity/parse-reading.ts';
import { doubtReading } from '../../session/doubt-reading.ts';
import { expectedReading } from '../../session/expected-reading.ts';
import { judgeStep } from '../../session/judge-step.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Dialogue } from './plain-session.ts';

/** Null when `line` can be taken as it is, or is taken all the same; else what was typed in its place, at the end of input nothing. */
export async function confirmReading(
  opened: OpenedSession,
  step: MeasureStep,
  line: string,
  { say, ask }: Dialogue,
): Promise<string | null> {
  const read = parseReading(line, expectedReading(step, opened.limits(step)));
  if (read.status !== 'read') return null;
  const { meter } = opened.driver.session();
  const doubt = doubtReading(read.quantity.value, step.unit, (value) =>
    judgeStep(step, value, meter),
  );
  if (doubt === null) return null;
  say(`${read.text}: ${doubt}.`);
  const answer = await ask('Type yes if the meter really shows this, or read again: ');
  if (answer === null) return '';
  return answer.trim().toLowerCase() === 'yes' ? null : answer.trim();
}
