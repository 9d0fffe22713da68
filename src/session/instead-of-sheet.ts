/** Edges that were stated before, on the job sheet or in this session, and what is told who holds a capture against others. */
import type { Job } from '../procedure/job.ts';
import { safeText } from '../source/safe-text.ts';
import { asksPosition, type CaptureAnswer, type CaptureAsk } from './capture-step.ts';
import type { Session } from './session.ts';

/** The edges of the sheet, where what is asked is a position and they would be taken; null where none are stated. */
export function statedOnSheet(ask: CaptureAsk, { stands }: Pick<Job, 'stands'>): string | null {
  return asksPosition(ask) && stands !== undefined ? stands : null;
}

/** The edges that a position of this session was last held against, where they were typed: they are the same car's. */
export function statedBefore(ask: CaptureAsk, { events }: Pick<Session, 'events'>): string | null {
  if (!asksPosition(ask)) return null;
  const held = events.flatMap((event) =>
    'capture' in event && event.capture?.against ? [event.capture.against] : [],
  );
  const last = held.at(-1);
  return last?.kind === 'stated' ? last.typed : null;
}

/** The answer, with a line that says what was chosen `instead` of the edges on the sheet; the very same where it was not. */
export function insteadOfSheet(
  found: CaptureAnswer,
  stated: string | null,
  instead: string | undefined,
): CaptureAnswer {
  if (stated === null || instead === undefined || instead.trim() === stated.trim()) return found;
  const line = safeText(
    `Not held against the edges on the job sheet (${stated}), but against what was chosen here.`,
  );
  const { channels, lines = [] } = found;
  const judged = channels && {
    ...channels,
    judge: (channel: number) => insteadOfSheet(channels.judge(channel), stated, instead),
  };
  return { ...found, lines: [...lines, line], ...(judged ? { channels: judged } : {}) };
}
