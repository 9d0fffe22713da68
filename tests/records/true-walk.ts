/** Walks through the invented procedure with nothing made up: limits, what is good and evidence are the circuit's. */
import { computedRange } from '../../src/procedure/expected-range.ts';
import type { Procedure, Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import type { SessionOpened } from '../../src/session/events.ts';
import { expectedShown } from '../../src/session/expected-shown.ts';
import { followAdvisor } from '../../src/session/follow-advisor.ts';
import { circuitAtStart } from '../../src/session/known-circuit.ts';
import { presentConclusion, type Session } from '../../src/session/session.ts';
import { modelFor } from '../../src/session/session-model.ts';
import { modelHere } from '../../src/session/step-here.ts';
import { begin, CIRCUIT, FINISHED, PROCEDURE, type Walk } from './sample-session.ts';

/** The procedure with the limits that its circuit gives. */
export const TRUE_PROCEDURE: Procedure = {
  ...PROCEDURE,
  steps: Object.fromEntries(
    Object.entries(PROCEDURE.steps).map(([id, step]) => [id, withLimits(step)]),
  ),
};

function withLimits(step: Step): Step {
  if (step.kind !== 'measure' || step.probe === null || step.expected?.from !== 'circuit')
    return step;
  const { setup, probe, expected: made } = step;
  const expected = computedRange(modelFor(CIRCUIT, begin().session.meter), { setup, probe });
  const limit = (value: number | null) =>
    value === made.low ? expected!.low : value === made.high ? expected!.high : value;
  const outcomes = step.outcomes.map((one) => ({
    ...one,
    from: limit(one.from),
    to: limit(one.to),
  }));
  return { ...step, expected, outcomes };
}

/** The commands on a session so opened, each with what the program itself puts to it. */
export function trueWalk(
  change: Partial<SessionOpened> = {},
  commands: readonly Command[] = FINISHED,
): Walk {
  const start = begin({ procedure: TRUE_PROCEDURE, ...change });
  const { opened } = start.session;
  const circuit = circuitAtStart(opened);
  if (!circuit) throw new Error('true-walk: there is no circuit to be true to');
  const model = modelFor(circuit, opened.meter);
  const advisor = followAdvisor((now) => modelHere(now, model), opened);
  return commands.reduce((walk, command) => walk.do(truly(walk.session, command)), start);

  function truly(session: Session, command: Command): Command {
    if (command.type === 'record-test')
      return { ...command, expected: expectedShown(modelHere(session, model), command.test) };
    if (command.type !== 'conclude') return command;
    const faults = command.own?.faults ?? presentConclusion(session)?.faults ?? [];
    return { ...command, weighed: advisor.weigh(session, faults) };
  }
}
