/** What the trouble codes of the job sheet say. */
import { type CodeKind, describeCode } from '../identify/describe-code.ts';
import type { Job } from '../procedure/job.ts';
import type { AskOutcome, Step } from '../procedure/procedure.ts';

export interface CodeAnswer {
  readonly outcome: AskOutcome;
  /** As on the job sheet. */
  readonly code: string;
}

/** What the first sensor code of the job answers to `step`; null when it asks no code, or the job has none for it. */
export function codeAnswer(step: Step, { codes }: Job): CodeAnswer | null {
  if (step.kind !== 'ask') return null;
  for (const code of codes) {
    const kind = describeCode(code)?.kind;
    const outcome = kind && step.outcomes.find(({ codeKinds }) => codeKinds?.includes(kind));
    if (outcome) return { outcome, code };
  }
  return null;
}

/** What the codes say of their circuits: those for a position sensor, since no other has a kind. */
export function codeKindsOf({ codes }: Job): CodeKind[] {
  return codes.flatMap((code) => {
    const kind = describeCode(code)?.kind;
    return kind ? [kind] : [];
  });
}
