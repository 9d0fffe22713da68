/** Reads a job file: shape, trouble codes, wire colours. Nothing but the complaint is required. */
import type { Checked, Issue } from '../source/issue.ts';
import { parseShaped } from '../source/parse-shaped.ts';
import validate, { type JobDraft } from './generated/job.mjs';
import { emptyJob, type Job } from './job.ts';
import { colourProblem } from './wire-colours.ts';

/** A job and the procedure it asks for, if it names one. */
export interface LoadedJob {
  readonly job: Job;
  readonly procedure: string | null;
  /** What the vehicle has when it is simulated; null when the job does not say. */
  readonly fault: string | null;
  /** The simulated vehicle shows its fault only to who moves the harness. */
  readonly intermittent: boolean;
}

/** The job in `text`; null with issues when it cannot be used. */
export function loadJob(text: string, file: string): Checked<LoadedJob> {
  const { value: shaped, issues: told } = parseShaped(text, file, validate);
  if (!shaped) return { value: null, issues: told };
  const { data: draft, source } = shaped;
  const issues: Issue[] = [...told];
  for (const [terminal, { colour }] of Object.entries(draft.terminals ?? {})) {
    const problem = colour === undefined ? null : colourProblem(colour);
    const at = source.locate(['terminals', terminal, 'colour']);
    if (problem) issues.push({ code: 'unknown-colour', severity: 'warning', at, ...problem });
  }
  return {
    value: {
      job: jobOf(draft),
      procedure: draft.procedure ?? null,
      fault: draft['simulated-fault'] ?? null,
      intermittent: draft['intermittent'] ?? false,
    },
    issues,
  };
}

function jobOf(draft: JobDraft): Job {
  const none = emptyJob(draft.complaint.trim());
  const terminals = Object.entries(draft.terminals ?? {}).map(([id, { pin, colour }]) => [
    id,
    { pin: pin === undefined ? '' : String(pin), colour: (colour ?? '').toUpperCase() },
  ]);
  return {
    ...none,
    name: draft.job ?? '',
    ...codesSaid(draft.codes ?? []),
    vehicle: { ...none.vehicle, ...draft.vehicle },
    ...(draft.position !== undefined && { position: draft.position }),
    ...(draft.stands !== undefined && { stands: draft.stands }),
    order: draft.order ?? '',
    customer: draft.customer ?? '',
    earlierRepairs: (draft['earlier-repairs'] ?? []).map(({ words, part, fitted, changed }) => ({
      words,
      part: part ?? null,
      ...(fitted && { fitted }),
      ...(changed && { changed }),
    })),
    ...circumstancesOf(draft.circumstances),
    terminals: Object.fromEntries(terminals),
    ...(draft.known && { known: draft.known }),
    ...(draft.harness && { harness: draft.harness }),
    ...(draft.shares && { shares: draft.shares }),
    notes: draft.notes ?? '',
  };
}

/** `P0335` and `P0369 pending` as codes, and how the module keeps them where that is said. */
function codesSaid(said: readonly string[]): Pick<Job, 'codes' | 'codeStates'> {
  const split = said.map((one) => one.split(' '));
  const states = split.flatMap(([code, state]) => (state === undefined ? [] : [[code, state]]));
  return {
    codes: split.map(([code]) => code!),
    ...(states.length > 0 && { codeStates: Object.fromEntries(states) }),
  };
}

function circumstancesOf(draft: JobDraft['circumstances']): Pick<Job, 'circumstances'> {
  if (!draft || Object.keys(draft).length === 0) return {};
  const { happens, seen } = draft;
  const [failsWithIt, recentWork] = [draft['fails-with-it'], draft['recent-work']];
  const freezeFrame = draft['freeze-frame'];
  return {
    circumstances: {
      ...(happens && { happens }),
      ...(failsWithIt && { failsWithIt }),
      ...(recentWork && { recentWork }),
      ...(seen && { seen }),
      ...(freezeFrame && { freezeFrame }),
    },
  };
}
