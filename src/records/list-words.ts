/** A saved session as one line of a list, from its first and last event only. */
import type { SessionEntry } from '../files/list-sessions.ts';
import { freeOrderTitle } from '../procedure/free-order.ts';

/** What a list shows of a session, found in the first and last lines of its file. */
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
  const first = recordIn(entry.first);
  const job = recordIn(first['job']);
  const vehicle = recordIn(job['vehicle']);
  const kind = recordIn(first['vehicle'])['kind'];
  const parts = [vehicle['plate'], vehicle['words'], job['complaint'], titleIn(first)].filter(
    (part): part is string => typeof part === 'string' && part !== '',
  );
  return {
    path: entry.path,
    words: parts.slice(0, 3).join(', '),
    when: (entry.startedAt ?? '').slice(0, 16).replace('T', ' '),
    status: statusOf(entry),
    simulated: kind === 'bench' || kind === 'drill',
    begun: entry.laterTypes?.every((type) => NOTHING_DONE.has(type)) !== true,
  };
}

function titleIn(first: Readonly<Record<string, unknown>>): unknown {
  const [procedure, circuit] = [recordIn(first['procedure']), recordIn(first['circuit'])];
  if (typeof procedure['title'] === 'string') return procedure['title'];
  const title = circuit['title'];
  return typeof title === 'string' ? freeOrderTitle({ title }) : undefined;
}

function statusOf(entry: SessionEntry): ListedSession['status'] {
  if (entry.state === 'unreadable') return 'damaged';
  switch (entry.last?.['type']) {
    case 'session-paused':
      return 'paused';
    case 'concluded':
    case 'retest-recorded':
    case 'retest-impossible':
    case 'work-answered':
      return 'concluded';
    case 'drive-reported':
      return entry.laterTypes?.includes('session-closed') === false ? 'concluded' : 'closed';
    case 'session-closed':
    case 'answer-revealed':
      return 'closed';
    default:
      return 'open';
  }
}

function recordIn(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
