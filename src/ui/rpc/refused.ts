/** What a session, its vehicle or its disk refuses, as a fault with code, words and way out; and what a change comes to. */

import type { Caution } from '../../procedure/procedure.ts';
import type { Command } from '../../session/command.ts';
import type { Performed } from '../../session/driver.ts';
import type { OpenedSession } from '../app-services.ts';
import { type CallFailure, CODES, fault, type Outcome, type Result } from './json-rpc.ts';
import { cautionViews, eventsFrom, stateOf } from './state-view.ts';

/** A refusal by its code; further facts stand beside it. */
export function refusedCall(
  code: string,
  words: string,
  fix = '',
  facts: Readonly<Record<string, unknown>> = {},
): CallFailure {
  return fault(CODES.refused, words, { ...facts, code, words, fix });
}

/** Does a command: the events it came to and the state after them, or why not. `pending` are the cautions it may be refused for. */
export function performCall(
  opened: OpenedSession,
  command: Command,
  pending: readonly Caution[] = [],
): Outcome {
  const before = opened.driver.session().events.length;
  const done = opened.driver.perform(command);
  return done.ok ? changedSince(opened, before) : refusedBy(opened, done, pending);
}

/** The events after the first `before`, and the state. */
export function changedSince(opened: OpenedSession, before: number): Result {
  return { events: eventsFrom(opened, before + 1), state: stateOf(opened) };
}

/** Why a command had no effect. */
export function refusedBy(
  opened: OpenedSession,
  { refusal, words, fix, disk }: Extract<Performed, { ok: false }>,
  pending: readonly Caution[] = [],
): CallFailure {
  if (disk) return refusedByDisk(opened, { words, fix });
  if (refusal?.code !== 'caution-first')
    return refusedCall(refusal?.code ?? 'refused', words, fix, refusal ?? {});
  const cautions = cautionViews(
    opened,
    pending.filter(({ id }) => refusal.cautions.includes(id)),
  );
  return refusedCall(refusal.code, words, 'call "acknowledge" for each of them', { cautions });
}

/** Nothing was saved: the way out is another folder. */
export function refusedByDisk(
  { driver }: OpenedSession,
  { words, fix }: { readonly words: string; readonly fix: string },
): CallFailure {
  if (driver.isElsewhere()) return refusedCall('elsewhere', words, fix);
  return refusedCall('disk', words, `${fix} Another folder: call "move".`);
}
