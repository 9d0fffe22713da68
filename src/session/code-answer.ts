/** The question what the trouble code says, answered by the codes of the job sheet. */
import { describeCode } from '../identify/describe-code.ts';
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
