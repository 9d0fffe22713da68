/** A saved session as one line of a list, from its first and last event only. */
import type { SessionEntry } from '../files/list-sessions.ts';

export interface ListedSession {
  readonly path: string;
  readonly words: string;
  readonly when: string;
  readonly status: 'open' | 'paused' | 'concluded' | 'closed' | 'damaged';
  /** On a simulated vehicle: practice. */
  readonly simulated: boolean;
  /** False when it was opened and left without an answer or a note. */
  readonly begun: boolean;
}

/** What is saved though nothing was done yet. */
const NOTHING_DONE = new Set([
  'session-paused',
  'session-resumed',
  'caution-acknowledged',
  'recovered',
]);

/** Those with something in them first, else in the same order: nobody means to go on with an empty session. */
export function begunFirst<S extends Pick<ListedSession, 'begun'>>(sessions: readonly S[]): S[] {
  return [...sessions.filter(({ begun }) => begun), ...sessions.filter(({ begun }) => !begun)];
}

/** Vehicle and complaint in words, the start, and how it stands by its last event. */
export function listWords(entry: SessionEntry): ListedSession {
  const job = recordIn(recordIn(entry.first)['job']);
  const vehicle = recordIn(job['vehicle']);
  const title = recordIn(recordIn(entry.first)['procedure'])['title'];
  const parts = [vehicle['plate'], vehicle['words'], job['complaint'], title].filter(
    (part): part is string => typeof part === 'string' && part !== '',
  );
  return {
    path: entry.path,
    words: parts.slice(0, 3).join(', '),
    when: (entry.startedAt ?? '').slice(0, 16).replace('T', ' '),
    status: statusOf(entry),
    simulated: recordIn(recordIn(entry.first)['vehicle'])['kind'] === 'bench',
    begun: entry.laterTypes?.every((type) => NOTHING_DONE.has(type)) !== true,
  };
}

function statusOf(entry: SessionEntry): ListedSession['status'] {
  if (entry.state === 'unreadable') return 'damaged';
  switch (entry.last?.['type']) {
    case 'session-paused':
      return 'paused';
    case 'concluded':
    case 'retest-recorded':
    case 'retest-impossible':
      return 'concluded';
    case 'session-closed':
      return 'closed';
    default:
      return 'open';
  }
}

function recordIn(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
