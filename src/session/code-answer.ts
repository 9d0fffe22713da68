/** What the trouble codes of the job sheet say, and when the fault happens, where a step asks for either. */
import { type CodeKind, describeCode } from '../identify/describe-code.ts';
import type { Job } from '../procedure/job.ts';
import type { AskOutcome, Step } from '../procedure/procedure.ts';
import { CODE_STATE_SHARES } from '../suspects/told-weights.ts';
import { COMING_AND_GOING, toldBy } from './told.ts';

/** The outcome that a code of the job sheet gives to a question of the tree. */
export interface CodeAnswer {
  readonly outcome: AskOutcome;
  /** As on the job sheet: a code, or when it happens. */
  readonly code: string;
}

/**
 * What the job sheet answers to `step`: that it comes and goes, where it tells so, else what the first sensor code says,
 * one that stands now before one that stood; null when the step asks no code, or the job has none for it.
 */
export function codeAnswer(step: Step, job: Job): CodeAnswer | null {
  if (step.kind !== 'ask') return null;
  const { codes, codeStates = {} } = job;
  const fleeting = step.outcomes.find(({ codeKinds }) => codeKinds?.includes('intermittent'));
  const when = (job.circumstances?.happens ?? []).filter((one) => COMING_AND_GOING.has(one));
  if (fleeting && when.length > 0)
    return { outcome: fleeting, code: when.map((one) => `"${one}"`).join(', ') };
  const share = (code: string) => CODE_STATE_SHARES[codeStates[code] ?? 'stored'];
  const standing = [...codes].sort((a, b) => share(b) - share(a));
  for (const code of standing) {
    const kind = describeCode(code)?.kind;
    const outcome = kind && step.outcomes.find(({ codeKinds }) => codeKinds?.includes(kind));
    if (outcome) return { outcome, code };
  }
  return null;
}

/**
 * The same, and what recent work says where it is asked whether the timing can have moved: work on belt, chain, clutch or
 * with the engine out speaks for it. Whether it idles evenly all the same only the vehicle tells, so the answer that looks
 * at the marks stands there. A simulated vehicle answers this question by itself.
 */
export function sheetAnswer(step: Step, job: Job): CodeAnswer | null {
  const said = codeAnswer(step, job);
  const work = job.circumstances?.recentWork?.trim() ?? '';
  if (said || step.kind !== 'ask' || work === '') return said;
  const outcome = step.outcomes.findLast(
    ({ codeKinds = [] }) =>
      codeKinds.length > 0 && codeKinds.every((kind) => kind === 'correlation'),
  );
  const speaks = toldBy(job).some(({ key }) => TIMING_WORK.has(key));
  return outcome && speaks ? { outcome, code: `recent work ("${work}")` } : null;
}
const TIMING_WORK: ReadonlySet<string> = new Set(['recent-work:timing', 'recent-work:engine-out']);

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
