/**
 * What it is worth to have moved or warmed something in vain: the chance that the fault is there, by the same suspects
 * before and after, and what as much again would leave of it. So that nobody wakes for an hour what is elsewhere.
 */
import { type AskStep, stepOf } from '../procedure/procedure.ts';
import type { Advisor } from './advisor.ts';
import type { Command } from './command.ts';
import { decide } from './decide.ts';
import type { WakingVain, When } from './events.ts';
import { evolve } from './evolve.ts';
import { isInVain, WOKEN_CHANCE, wakenBy } from './intermittent.ts';
import { presentStep, type Session } from './session.ts';

/** As much again is worth it while it would take so many hundredths off the chance. Our choice. */
const WORTH = 0.1;

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

/** The stop rule, as sentences. */
export function vainWords({ minutes, before, after }: WakingVain): string {
  const left = hundredths((after * (1 - WOKEN_CHANCE)) / (1 - WOKEN_CHANCE * after));
  const worth =
    after - left < WORTH ? 'stop waking it there.' : 'worth it where nothing else tells more.';
  const fell = after < before ? 'fell' : 'went';
  return `Nothing in ${Number(minutes.toPrecision(2))} minutes of waking: the chance that it is there ${fell} from ${percent(before)} to ${percent(after)}. As much again would leave ${percent(left)}: ${worth}`;
}

/** What came of the answer that was given last, where it was one of waking in vain; else null. */
export function lastVain({ events }: Session): string | null {
  const last = events.findLast(({ type }) => type !== 'caution-acknowledged');
  return last?.type === 'look-recorded' && last.vain ? vainWords(last.vain) : null;
}

/** What the rounds took where somebody said it, else what the step takes a practised person. */
function minutesAt({ watched, opened }: Session, { id }: AskStep): number {
  const said = watched.flatMap(({ step, minutes }) => (step === id ? (minutes ?? []) : []));
  if (said.length > 0) return said.reduce((sum, one) => sum + one, 0);
  const step = opened.procedure && stepOf(opened.procedure, id);
  return step?.kind === 'ask' ? step.minutes : 0;
}

function hundredths(chance: number): number {
  return Math.round(chance * 100) / 100;
}

function percent(chance: number): string {
  return `${Math.round(chance * 100)} %`;
}
