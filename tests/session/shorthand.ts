/** The commands of a session over the sample tree, in few words. */
import type { Look } from '../../src/circuit/test.ts';
import { outcomeOfValue, type Procedure, type Step } from '../../src/procedure/procedure.ts';
import type { Command } from '../../src/session/command.ts';
import { decide } from '../../src/session/decide.ts';
import type { Session } from '../../src/session/session.ts';
import { KEY_ON } from '../circuit/setup.ts';
import { TREE, when } from './sample-tree.ts';

export const DONE: Command = { type: 'mark-done' };
export const ACK: Command = { type: 'acknowledge-cautions' };
export const PAUSE: Command = { type: 'pause' };
export const RESUME: Command = { type: 'resume', program: 'ohmward test', by: 'person' };
export const CONCLUDE: Command = { type: 'conclude' };
export const CLOSE: Command = { type: 'close', verdict: 'no-retest' };
export const EXTRA: Command = {
  type: 'record-test',
  test: {
    setup: KEY_ON,
    probe: { kind: 'volts', plus: 'sensor.feed', minus: 'battery.negative' },
  },
  typed: '5',
  shown: { kind: 'number', value: 5, unit: 'V' },
  expected: null,
};
export const volts = (value: number): Command => ({
  type: 'record-reading',
  typed: ` ${value} V `,
  value,
});
export const sees = (outcome: string): Command => ({ type: 'choose-outcome', outcome });
/** After the repair, with the outcome of what was shown unless another is named. */
export function again(step: string, part: object): Command {
  const shown = part as Partial<Extract<Command, { type: 'record-retest' }>>;
  const { value = null, look = null } = shown;
  const outcome = outcomeAgain(TREE.steps[step], value, look);
  return { type: 'record-retest', step, typed: '', value, look, outcome, ...shown };
}

function outcomeAgain(step: Step | undefined, value: number | null, look: Look | null): string {
  if (step?.kind === 'measure')
    return outcomeOfValue(step, value ?? Number.POSITIVE_INFINITY)?.name ?? '';
  if (step?.kind !== 'look') return '';
  const named = step.outcomes.find(({ looks }) => look !== null && looks.includes(look));
  return (named ?? step.outcomes[0])?.name ?? '';
}

export const cannot = (step: string) =>
  ({ type: 'cannot-retest', step, reason: ' no way in ' }) as const;

/** The sample tree with other values in one step; a key that is given as undefined is left out. */
export function withStep(id: string, part: object): Procedure {
  const kept = Object.entries({ ...TREE.steps[id], ...part }).filter(
    ([, value]) => value !== undefined,
  );
  return { ...TREE, steps: { ...TREE.steps, [id]: Object.fromEntries(kept) as unknown as Step } };
}

export function said(session: Session, command: Command): unknown {
  const decision = decide(session, command, when(9));
  return decision.ok ? decision.events[0]!.type : decision.refusal.code;
}

export const LOOK = [DONE, ACK, volts(5), ACK];
export const END = [...LOOK, sees('none')];
export const CONCLUDED = [...END, CONCLUDE];
