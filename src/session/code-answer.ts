/** What the trouble codes of the job sheet say. */
import { type CodeKind, describeCode } from '../identify/describe-code.ts';
import type { Job } from '../procedure/job.ts';
import type { AskOutcome, Step } from '../procedure/procedure.ts';
import { CODE_STATE_SHARES } from '../suspects/told-weights.ts';

/** The outcome that a code of the job sheet gives to a question of the tree. */
export interface CodeAnswer {
  readonly outcome: AskOutcome;
  /** As on the job sheet. */
  readonly code: string;
}

/**
 * What the first sensor code of the job answers to `step`, one that stands now before one that stood; null when it asks
 * no code, or the job has none for it.
 */
export function codeAnswer(step: Step, { codes, codeStates = {} }: Job): CodeAnswer | null {
  if (step.kind !== 'ask') return null;
  const share = (code: string) => CODE_STATE_SHARES[codeStates[code] ?? 'stored'];
  const standing = [...codes].sort((a, b) => share(b) - share(a));
  for (const code of standing) {
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

/** How much of what the codes of each kind say counts: of several, that of the one that stands most. */
export function codeSharesOf({ codes, codeStates = {} }: Job): Partial<Record<CodeKind, number>> {
  const shares: Partial<Record<CodeKind, number>> = {};
  for (const code of codes) {
    const kind = describeCode(code)?.kind;
    if (!kind) continue;
    const share = CODE_STATE_SHARES[codeStates[code] ?? 'stored'];
    shares[kind] = Math.max(shares[kind] ?? 0, share);
  }
  return shares;
}
