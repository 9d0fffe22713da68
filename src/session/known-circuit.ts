/** The circuit that a session is computed with: as it was opened, with what is known of this car. */
import type { Circuit } from '../circuit/circuit.ts';
import { withKnown } from '../circuit/known-values.ts';
import type { SessionEvent, SessionOpened, SetValue, ValueSet } from './events.ts';

/** What of a session tells what is known of its car. */
export interface KnownCar {
  readonly opened: SessionOpened;
  readonly values: readonly { readonly event: ValueSet; readonly takenBack: boolean }[];
  readonly events: readonly SessionEvent[];
}
type KnownHere = Pick<KnownCar, 'opened' | 'values'>;

/** What is known now, each quantity once: of the job sheet and of the session, the later word counting. */
export function knownNow({ opened, values }: KnownHere): readonly SetValue[] {
  const standing = values.flatMap(({ event, takenBack }) => (takenBack ? [] : [event]));
  return lastWords([...(opened.known ?? []), ...standing]);
}

/** The circuit of this car as far as it is known; the same object while the same is known. Null without a circuit. */
export function circuitOf(session: KnownHere): Circuit | null {
  return circuitWith(session.opened.circuit, knownNow(session));
}

/** The circuit as the job sheet has it: what a simulated vehicle is made of. */
export function circuitAtStart({
  circuit,
  known = [],
}: Pick<SessionOpened, 'circuit' | 'known'>): Circuit | null {
  return circuitWith(circuit, lastWords(known));
}

/** The circuit as it was known when `event` of this session happened. */
export function circuitThen(
  { opened, values, events }: KnownCar,
  event: SessionEvent,
): Circuit | null {
  if (values.length === 0) return circuitAtStart(opened);
  const before = events.slice(0, Math.max(0, events.indexOf(event)));
  const back = new Set(before.flatMap((one) => (one.type === 'value-taken-back' ? [one.set] : [])));
  const set = before.flatMap((one, at) =>
    one.type === 'value-set' && !back.has(at + 1) ? [one] : [],
  );
  return circuitWith(opened.circuit, lastWords([...(opened.known ?? []), ...set]));
}

function lastWords(said: readonly SetValue[]): readonly SetValue[] {
  const last = new Map(said.map((one) => [one.quantity, one]));
  return [...last.values()].filter(({ is }) => is !== null);
}

const made = new WeakMap<Circuit, Map<string, Circuit>>();

function circuitWith(circuit: Circuit | null, known: readonly SetValue[]): Circuit | null {
  if (circuit === null || known.length === 0) return circuit;
  const key = JSON.stringify(known.map(({ quantity, is }) => [quantity, is]));
  const all = made.get(circuit) ?? new Map<string, Circuit>();
  made.set(circuit, all);
  const found = all.get(key) ?? withKnown(circuit, known);
  all.set(key, found);
  return found;
}
