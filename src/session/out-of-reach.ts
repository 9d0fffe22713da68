/**
 * Connectors that cannot be reached, and states that the vehicle cannot be had in: said once, and no test that needs a hand
 * or a lead there, or that state, is proposed; the steps of the tree that need one are gone round. Whoever wants such a
 * step asked all the same takes its answer back.
 */
import type { Circuit } from '../circuit/circuit.ts';
import type { Setup, Test, VehicleState } from '../circuit/test.ts';
import { type SetupAndProbe, touchesConnector } from '../circuit/touched-connectors.ts';
import { isTask, type Step } from '../procedure/procedure.ts';
import type { GoneRound } from './answering-test.ts';
import type { Command } from './command.ts';
import {
  type EventNumber,
  type SessionEvent,
  STATES_ASIDE,
  type StateAside,
  type When,
} from './events.ts';
import {
  isAside,
  isSameReach,
  type OutOfReach,
  presentStep,
  type Session,
  type Unreached,
} from './session.ts';

/** Sets a test, a connector or a vehicle state aside, or takes it back. */
export type AsideCommand = Extract<
  Command,
  { type: 'set-test-aside' | 'set-connector-aside' | 'set-state-aside' }
>;

/** A state and those that are reached through it: an engine that does not turn runs and drives no car. */
const WITH_IT: Readonly<Record<StateAside, readonly VehicleState[]>> = {
  'key-on': ['key-on', 'cranking', 'running', 'driving'],
  cranking: ['cranking', 'running', 'driving'],
  running: ['running', 'driving'],
};

/** Whether a connector or a state was said out of reach. */
export function isUnreached({ unreached }: Pick<Session, 'unreached'>, what: Unreached): boolean {
  return unreached.some((one) => isSameReach(one, what));
}

/** The vehicle states that cannot be had, those that are reached through one too; each once. */
export function statesOut({ unreached }: Pick<Session, 'unreached'>): VehicleState[] {
  return [...new Set(unreached.flatMap((one) => ('state' in one ? WITH_IT[one.state] : [])))];
}

/** Whether a test needs a connector or a state that was said out of reach. */
export function needsUnreached({ opened, unreached }: Session, test: Test): boolean {
  return unreached.some((one) =>
    'state' in one
      ? WITH_IT[one.state].includes(test.setup.state)
      : opened.circuit !== null && touchesConnector(opened.circuit, test, one.part),
  );
}

/** The parts whose connectors a step needs, in the circuit's order; none for a conclusion. */
export function connectorsOfStep(circuit: Circuit, step: Step): string[] {
  if (!isTask(step)) return [];
  const { setup } = step;
  const probes =
    step.kind === 'measure' || step.kind === 'look'
      ? [step.probe]
      : step.kind === 'ask'
        ? (step.watched ?? [])
        : [];
  const arranged: SetupAndProbe[] = [
    { setup, probe: null },
    ...probes.map((probe) => ({ setup, probe })),
  ];
  return circuit.connectors.flatMap(({ part }) =>
    arranged.some((one) => touchesConnector(circuit, one, part)) ? [part] : [],
  );
}

/**
 * The event for which the present step is gone round: that of the first connector or state out of reach that it needs.
 * Null where it needs none, has no way round, or was taken back since.
 */
export function goneRoundFor(session: Session): EventNumber | null {
  const { status, unreached, events } = session;
  const step = presentStep(session);
  if (status !== 'open' || !step || unreached.length === 0) return null;
  const back = events.findLastIndex(
    (event) => event.type === 'step-reopened' && event.step === step.id,
  );
  return unreached.find((one) => one.by > back + 1 && isInTheWay(session, step, one))?.by ?? null;
}

/**
 * Place in the way of the first step that was gone round for a connector or a state which was just taken back: it is asked
 * now. Null where none was.
 */
export function reopenedFor({ status, events, trail, answers }: Session): number | null {
  const last = events.at(-1);
  const back = last && reachOf(last);
  if (status !== 'open' || !back || back.aside) return null;
  const place = trail.findIndex(({ answer }) => {
    const event = answer === null ? undefined : answers[answer]?.event;
    if (event?.type !== 'step-impossible' || event.by === undefined) return false;
    const by = reachOf(events[event.by - 1]!);
    return by !== null && isSameReach(by.what, back.what);
  });
  return place < 0 ? null : place;
}

/** What an event says of a connector or a state; null for every other one. */
function reachOf(
  event: SessionEvent,
): { readonly what: Unreached; readonly aside: boolean } | null {
  if (event.type === 'connector-set-aside')
    return { what: { part: event.part }, aside: event.aside };
  if (event.type === 'state-set-aside') return { what: { state: event.state }, aside: event.aside };
  return null;
}

/** The step as it is gone round for what event `by` says; null where it is not. */
export function roundBy(
  session: Session,
  step: Step | null,
  by: EventNumber,
  now: When,
): GoneRound | null {
  const found = session.unreached.find((one) => one.by === by);
  if (!found || !step || !isTask(step) || step.cannot === null) return null;
  if (!isInTheWay(session, step, found)) return null;
  return {
    ...{ type: 'step-impossible', step: step.id, reason: found.reason, go: step.cannot, by },
    ...now,
  };
}

function isInTheWay({ opened }: Session, step: Step, one: OutOfReach): boolean {
  const { circuit } = opened;
  if (!isTask(step) || step.cannot === null) return false;
  if ('state' in one) return WITH_IT[one.state].includes(step.setup.state);
  return circuit !== null && connectorsOfStep(circuit, step).includes(one.part);
}

/** The state that a step or a test needs, where it can be said that it cannot be had; null with the key off. */
export function stateToSay({ state }: Setup): StateAside | null {
  return STATES_ASIDE.find((one) => one === state) ?? null;
}

/** The command that sets a connector aside in these words, or in the usual ones. */
export function asideCommand({ opened }: Session, part: string, reason = ''): AsideCommand {
  const words = reason.trim() === '' ? unreachedWords(opened.circuit, part) : reason;
  return { type: 'set-connector-aside', part, aside: true, reason: words };
}

/** The same of a state of the vehicle. */
export function stateAsideCommand(state: StateAside, reason = ''): AsideCommand {
  const words = reason.trim() === '' ? NOT_HAD[state] : reason;
  return { type: 'set-state-aside', state, aside: true, reason: words };
}

/** The command that takes back what was set aside last: a test, a connector or a state; null where nothing is. */
export function asideBack(session: Session): AsideCommand | null {
  for (const [at, event] of [...session.events.entries()].reverse()) {
    if (event.type === 'test-set-aside' && event.aside && isAside(session, event.test))
      return { type: 'set-test-aside', test: event.test, aside: false };
    const found = session.unreached.find(({ by }) => by === at + 1);
    if (found) return reachBack(found);
  }
  return null;
}

/** The command that says of a connector or a state that it can be had after all. */
export function reachBack(what: Unreached): AsideCommand {
  const rest = { aside: false, reason: '' } as const;
  return 'part' in what
    ? { type: 'set-connector-aside', part: what.part, ...rest }
    : { type: 'set-state-aside', state: what.state, ...rest };
}

/** `the connector of the crankshaft position sensor`. */
export function connectorWords(circuit: Circuit | null, part: string): string {
  return circuit?.connectors.find((one) => one.part === part)?.words ?? part;
}

/** `cranking or a running engine`: what is set aside with a state, in words. */
export function stateNeedWords(state: StateAside): string {
  return NEEDS[state];
}

const NEEDS: Readonly<Record<StateAside, string>> = {
  'key-on': 'the key on',
  cranking: 'cranking or a running engine',
  running: 'a running engine',
};

/** Said of a state where the person gives no words of their own. */
export function notHadWords(state: StateAside): string {
  return NOT_HAD[state];
}

const NOT_HAD: Readonly<Record<StateAside, string>> = {
  'key-on': 'the key could not be switched on',
  cranking: 'the engine could not be cranked',
  running: 'the engine could not be run',
};

/** Said of a connector where the person gives no words of their own. */
export function unreachedWords(circuit: Circuit | null, part: string): string {
  return `${connectorWords(circuit, part)} could not be reached`;
}
