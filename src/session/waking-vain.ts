/**
 * What it is worth to have moved or warmed something in vain: the chance that the fault is there, by the same suspects
 * before and after, and what as much again would leave of it. So that nobody wakes for an hour what is elsewhere.
 */
import { type AskStep, stepOf } from '../procedure/procedure.ts';
import type { Advisor } from './advisor.ts';
import type { Command } from './command.ts';
import { decide } from './decide.ts';
import type { When } from './events.ts';
import { evolve } from './evolve.ts';
import { isInVain, wakenBy } from './intermittent.ts';
import { presentStep, type Session } from './session.ts';
import { roundsAt } from './watched-rounds.ts';

/** The command with what came of waking in vain; the very same where it is none, or nobody speaks of a fault that comes and goes. */
export function withVain(
  session: Session,
  command: Command,
  advisor: Pick<Advisor, 'suspects'> | null,
  now: When,
): Command {
  const step = presentStep(session);
  const { procedure, vehicle } = session.opened;
  if (command.type !== 'choose-outcome' || !advisor || !procedure || vehicle.kind === 'drill')
    return command;
  if (step?.kind !== 'ask' || !isInVain(session, step, command.outcome)) return command;
  const before = advisor.suspects(session);
  const decision = before.intermittent ? decide(session, command, now) : null;
  if (!decision?.ok) return command;
  const after = advisor.suspects(decision.events.reduce(evolve, session));
  const faults = new Set(wakenBy(procedure, step));
  const chanceIn = ({ rows }: typeof before) =>
    rows
      .flatMap((row) => row.faults)
      .reduce((sum, { id, chance }) => (faults.has(id) ? sum + chance : sum), 0);
  const vain = {
    minutes: minutesAt(session, step),
    before: hundredths(chanceIn(before)),
    after: hundredths(chanceIn(after)),
  };
  return { ...command, vain };
}

/** What the rounds took where somebody said it, else what the step takes a practised person. */
function minutesAt(session: Session, { id }: AskStep): number {
  const said = roundsAt(session, id).flatMap(({ minutes }) => minutes ?? []);
  if (said.length > 0) return said.reduce((sum, one) => sum + one, 0);
  const { procedure } = session.opened;
  const step = procedure && stepOf(procedure, id);
  return step?.kind === 'ask' ? step.minutes : 0;
}

function hundredths(chance: number): number {
  return Math.round(chance * 100) / 100;
}
