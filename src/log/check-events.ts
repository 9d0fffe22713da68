/**
 * From what stands in a file to events that can be replayed: files of earlier versions are brought into today's form,
 * and each event is checked against docs/schema/session-event.schema.json. What no schema can say is checked by
 * `session/history.ts`.
 */
import { SESSION_FORMAT, type SessionEvent } from '../session/events.ts';
import type { SchemaError } from '../source/schema-issues.ts';
import type { StoredEvent } from './event-line.ts';
import validate from './generated/session-event.mjs';
import { upgradeEvents } from './upgrade-events.ts';

/** Why an event does not fit the schema, with the way out. */
export interface EventFlaw {
  /** Its number in the session. */
  readonly seq: number;
  /** What is wrong, as the rest of a sentence that begins with the event; without a full stop. */
  readonly words: string;
  /** The way out, in one sentence without a full stop. */
  readonly fix: string;
}

/** Whatever is wrong with it, a file is evidence. */
export const KEEP_FILE = 'keep the file as it is, and look for a copy of it';
const NEWER = 'if a newer version of this program wrote it, use that version; else look for a copy';

/** Events up to the first that does not fit, and what is wrong with that one. */
export function checkEvents(stored: readonly StoredEvent[]): {
  readonly events: readonly SessionEvent[];
  readonly flaw: EventFlaw | null;
} {
  const newer = newerFormat(stored);
  if (newer) return { events: [], flaw: newer };
  const events: SessionEvent[] = [];
  for (const [index, upgraded] of upgradeEvents(stored).entries()) {
    const { seq, type } = stored[index]!;
    const wrong = (words: string, fix: string = KEEP_FILE) => ({
      events,
      flaw: { seq, words, fix },
    });
    if (seq !== index + 1) return wrong(`should be event ${index + 1}`);
    if (typeof upgraded === 'string') return wrong(upgraded);
    const loose: unknown = upgraded;
    if (!validate(loose)) return wrong(...flawOf(validate.errors ?? [], type));
    const { seq: _seq, prev: _prev, ...event } = loose;
    if ((event.type === 'session-opened') !== (index === 0))
      return wrong(index === 0 ? 'does not open the session' : 'opens the session a second time');
    events.push(event);
  }
  return { events, flaw: null };
}

/** The first event that says it is of a form this version does not know: nothing after it can be judged. */
function newerFormat(stored: readonly StoredEvent[]): EventFlaw | null {
  const event = stored.find(({ format }) => typeof format === 'number' && format > SESSION_FORMAT);
  if (!event) return null;
  return {
    seq: event.seq,
    words: `was written by a newer version of this program (format ${String(event['format'])})`,
    fix: 'go on with that version; this one cannot read what it wrote',
  };
}

/** What the validator found, in words, and the way out. */
function flawOf(errors: readonly SchemaError[], type: string): [words: string, fix: string] {
  const error = tellingError(errors);
  const { keyword, params, instancePath } = error ?? { keyword: '', params: {}, instancePath: '' };
  const path = placeWords(instancePath);
  switch (keyword) {
    case 'discriminator': {
      const tag = String(params['tag']);
      if (path === '') return [`is of the unknown type "${type}"`, NEWER];
      return [`has no valid "${path}.${tag}"`, NEWER];
    }
    case 'required':
      return [`lacks "${below(path, String(params['missingProperty']))}"`, KEEP_FILE];
    case 'additionalProperties': {
      const key = below(path, String(params['additionalProperty']));
      return [`has "${key}", which no event has`, NEWER];
    }
    default:
      return [`has no valid "${path || type}"`, KEEP_FILE];
  }
}

/** Of a choice the finding inside the branch that was meant, where it is clear which; else the choice itself. */
function tellingError(errors: readonly SchemaError[]): SchemaError | undefined {
  const choice = errors.at(-1);
  if (choice?.keyword !== 'anyOf') return choice;
  const inside = errors.filter(({ keyword }) => keyword !== 'anyOf');
  const deepest = Math.max(...inside.map(depthOf));
  const told = inside.filter((one) => depthOf(one) === deepest && one.keyword !== 'type');
  return deepest > depthOf(choice)
    ? inside.find((one) => depthOf(one) === deepest)
    : (oneOf(told) ?? choice);
}

function oneOf(errors: readonly SchemaError[]): SchemaError | undefined {
  return errors.length === 1 ? errors[0] : undefined;
}

function depthOf({ instancePath }: SchemaError): number {
  return instancePath.split('/').length;
}

/** `procedure.steps.feed.kind`, `evidence[0].reading`. */
function placeWords(pointer: string): string {
  return pointer
    .split('/')
    .slice(1)
    .map((part) => part.replace(/~1/g, '/').replace(/~0/g, '~'))
    .reduce((path, part) => (/^\d+$/.test(part) ? `${path}[${part}]` : below(path, part)), '');
}

function below(path: string, key: string): string {
  return path === '' ? key : `${path}.${key}`;
}
