/** Whether a job sheet leaves the chances before the first reading as they usually are. */
import type { Job } from '../procedure/job.ts';
import { codeKindsOf } from './code-answer.ts';
import { toldBy } from './told.ts';

/** Whether the sheet moves the chances before any reading: a part that was replaced, a code that says how the signal was, or what was told. */
export function movesOdds(job: Job): boolean {
  const isReplaced = job.earlierRepairs.some(({ part }) => part !== null);
  return isReplaced || codeKindsOf(job).length > 0 || toldBy(job).length > 0;
}
