/**
 * Connectors that cannot be reached: said once, and no test that needs a hand or a lead there is proposed; the steps of the
 * tree that need one are gone round. Whoever wants such a step asked all the same takes its answer back.
 */
import type { Circuit } from '../circuit/circuit.ts';
import type { Test } from '../circuit/test.ts';
import { type SetupAndProbe, touchesConnector } from '../circuit/touched-connectors.ts';
import { isTask, type Step } from '../procedure/procedure.ts';
import type { GoneRound } from './answering-test.ts';
import type { Command } from './command.ts';
import type { EventNumber, When } from './events.ts';
import { isAside, type OutOfReach, presentStep, type Session } from './session.ts';

/** Sets a test or a connector aside, or takes it back. */
export type AsideCommand = Extract<Command, { type: 'set-test-aside' | 'set-connector-aside' }>;

/** Whether the connector of a part was said out of reach. */
export function isUnreached({ unreached }: Pick<Session, 'unreached'>, part: string): boolean {
  return unreached.some((one) => one.part === part);
}

/** Whether a test needs a connector that was said out of reach. */
export function needsUnreached({ opened, unreached }: Session, test: Test): boolean {
  const { circuit } = opened;
  return circuit !== null && unreached.some(({ part }) => touchesConnector(circuit, test, part));
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
 * The event for which the present step is gone round: that of the first connector out of reach that it needs. Null where it
 * needs none, has no way round, or was taken back since.
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
 * Place in the way of the first step that was gone round for a connector which was just taken back: it is asked now. Null
 * where none was.
 */
export function reopenedFor({ status, events, trail, answers }: Session): number | null {
  const last = events.at(-1);
  if (status !== 'open' || last?.type !== 'connector-set-aside' || last.aside) return null;
  const place = trail.findIndex(({ answer }) => {
    const event = answer === null ? undefined : answers[answer]?.event;
    if (event?.type !== 'step-impossible' || !('by' in event)) return false;
    const by = events[event.by - 1];
    return by?.type === 'connector-set-aside' && by.part === last.part;
  });
  return place < 0 ? null : place;
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

function isInTheWay({ opened }: Session, step: Step, { part }: OutOfReach): boolean {
  const { circuit } = opened;
  if (circuit === null || !isTask(step) || step.cannot === null) return false;
  return connectorsOfStep(circuit, step).includes(part);
}

/** The command that sets a connector aside in these words, or in the usual ones. */
export function asideCommand({ opened }: Session, part: string, reason = ''): AsideCommand {
  const words = reason.trim() === '' ? unreachedWords(opened.circuit, part) : reason;
  return { type: 'set-connector-aside', part, aside: true, reason: words };
}

/** The command that takes back what was set aside last, a test or a connector; null where nothing is. */
export function asideBack(session: Session): AsideCommand | null {
  for (const [at, event] of [...session.events.entries()].reverse()) {
    if (event.type === 'test-set-aside' && event.aside && isAside(session, event.test))
      return { type: 'set-test-aside', test: event.test, aside: false };
    if (event.type === 'connector-set-aside' && session.unreached.some(({ by }) => by === at + 1))
      return { type: 'set-connector-aside', part: event.part, aside: false, reason: '' };
  }
  return null;
}

/** `the connector of the crankshaft position sensor`. */
export function connectorWords(circuit: Circuit | null, part: string): string {
  return circuit?.connectors.find((one) => one.part === part)?.words ?? part;
}

/** Said of a connector where the person gives no words of their own. */
export function unreachedWords(circuit: Circuit | null, part: string): string {
  return `${connectorWords(circuit, part)} could not be reached`;
}
