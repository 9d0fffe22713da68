/** An answer as a program sends it: understood as a person's would be, and asked about where it looks like a slip. */
import type { Judgement } from '../../circuit/judge.ts';
import type { Step } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { type ExpectedReading, parseReading } from '../../quantity/parse-reading.ts';
import type { Command } from '../../session/command.ts';
import { doubtReading } from '../../session/doubt-reading.ts';
import type { TakenReading, VehicleAnswer } from '../../session/driver.ts';
import { expectedReading } from '../../session/expected-reading.ts';
import { judgeStep } from '../../session/judge-step.ts';
import type { PossibleValues } from '../../session/possible-values.ts';
import { refusalWords } from '../../session/refusal.ts';
import { vehicleCommand } from '../../session/vehicle-command.ts';
import type { OpenedSession } from '../app-services.ts';
import { possibleIn } from '../screens/prompt-state.ts';
import { type CallFailure, invalidParam } from './json-rpc.ts';
import { refusedCall } from './refused.ts';

/** One of the first three. */
export interface SentAnswer {
  readonly reading?: string | number;
  readonly choose?: string;
  readonly take?: boolean;
  /** The meter really shows it. */
  readonly sure?: boolean;
}

/** The keys of an answer of which just one is sent. */
export const ANSWER_KEYS = ['reading', 'choose', 'take'] as const;

/** The answer to a step as a command; `shows` is what a simulated vehicle shows there. */
export function answerCommand(
  opened: OpenedSession,
  step: Step | null,
  answer: SentAnswer,
  shows: VehicleAnswer | null,
): Command | CallFailure {
  if (answer.take) return taken(step, shows);
  if (answer.choose !== undefined) return chosen(step, answer.choose);
  if (answer.reading === undefined) return sendOneOf(ANSWER_KEYS);
  if (step?.kind !== 'measure') return wrongKind(step);
  const { meter } = opened.driver.session();
  const read = readNumber({
    reading: answer.reading,
    sure: answer.sure ?? false,
    expected: expectedReading(step, opened.limits(step)),
    judge: (value) => judgeStep(step, value, meter),
    possible: possibleIn(opened, opened.driver.session(), testOf(step)),
  });
  return 'fault' in read ? read : { type: 'record-reading', ...read };
}

/** How many of these keys are sent. */
export function countSent<K extends string>(
  sent: { readonly [key in K]?: unknown },
  keys: readonly K[],
): number {
  return keys.filter((key) => sent[key] !== undefined && sent[key] !== false).length;
}

/** Just one of these keys has to be there. */
export function sendOneOf(keys: readonly string[]): CallFailure {
  return invalidParam('/params', `send one of: ${keys.join(', ')}`);
}

/** A reading that a program sent, and what it is held against. */
export interface SentReading {
  readonly reading: string | number;
  readonly sure: boolean;
  readonly expected: ExpectedReading;
  readonly judge: (value: number) => Judgement | null;
  /** What can be shown there at all; null where nobody knows. */
  readonly possible: () => PossibleValues | null;
}

/** Text and SI value, `Infinity` for OL; or why it is no reading, or is doubted. */
export function readNumber({
  reading,
  sure,
  expected,
  judge,
  possible,
}: SentReading): TakenReading | CallFailure {
  const typed = String(reading);
  const read = parseReading(typed, expected);
  switch (read.status) {
    case 'unfinished':
      return refusedCall(
        'unfinished-reading',
        'this reading is empty or incomplete',
        'send the whole reading',
      );
    case 'doubt':
      return refusedCall('ambiguous-reading', read.words, 'send it as one of the choices', {
        choices: read.choices.map(({ words }) => words),
      });
    case 'refused':
      return refusedCall(read.code, read.words, read.fix);
    case 'read': {
      const { value } = read.quantity;
      const doubt =
        judge(value)?.verdict === 'impossible'
          ? 'this circuit cannot give that reading: check the leads, the range and the unit'
          : doubtReading(value, expected.unit, judge, possible);
      if (doubt === null || sure) return { typed, value };
      return refusedCall('doubtful-reading', doubt, 'read again, or send it with "sure"');
    }
  }
}

function taken(step: Step | null, shows: VehicleAnswer | null): Command | CallFailure {
  const command = step && shows ? vehicleCommand(step, shows) : null;
  return command ?? silent();
}

/** A real vehicle says nothing by itself, and a simulated one knows only what its circuit does. */
export function silent(): CallFailure {
  return refusedCall(
    'vehicle-silent',
    'no simulated vehicle has an answer here',
    'send what was read, or what was seen',
  );
}

/** A look stands for the outcome that holds it. */
function chosen(step: Step | null, name: string): Command | CallFailure {
  if (step?.kind !== 'look' && step?.kind !== 'ask') return wrongKind(step);
  const seen =
    step.kind === 'look'
      ? step.outcomes
          .flatMap(({ looks, name: outcome }) => looks.map((look) => ({ look, outcome })))
          .find(({ look }) => look === name)
      : undefined;
  return { type: 'choose-outcome', outcome: name, ...seen };
}

function wrongKind(step: Step | null): CallFailure {
  const facts = { step: step?.id ?? null, wanted: step?.kind ?? null };
  const { words, fix } = refusalWords({ code: 'wrong-kind', ...facts });
  return refusedCall('wrong-kind', words, fix, facts);
}

/** A number as events keep it: null for the meter's OL. */
export function kept(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
