/**
 * JSON-RPC 2.0 as its specification of 2013-01-04 has it, over one text a message: what is no JSON, no request, an
 * unknown method, a wrong parameter; ids that come back; notifications and batches. What a method does is not known here.
 */
import { hiddenAsEscapes } from '../../records/record-json.ts';
import { doubledName } from '../../source/doubled-name.ts';
import { isWhole } from '../../source/is-whole.ts';
import type { SchemaFinding } from '../../source/schema-issues.ts';
import { Unworkable } from '../../source/unworkable.ts';

/** Codes of the standard, and ours from its range for servers: the session, the vehicle or the disk refused. */
export const CODES = {
  parse: -32700,
  request: -32600,
  method: -32601,
  params: -32602,
  internal: -32603,
  refused: -32000,
} as const;

/** Why a call has no result. */
export interface CallFailure {
  readonly fault: {
    readonly code: number;
    readonly message: string;
    readonly data?: Readonly<Record<string, unknown>>;
  };
}

/** What a call that succeeded answers with. */
export type Result = Readonly<Record<string, unknown>>;

/** What a call comes to. No result has a key `fault`. */
export type Outcome = Result | CallFailure;

/** Does one call; parameters that are left out are an empty group. What it throws is a fault of the program. */
export type Caller = (method: string, params: object) => Outcome | Promise<Outcome>;

/** Where a fault of the program is told. */
export type TellBug = (error: unknown) => void;

/** More messages than any program has to send at once. */
const BATCH_MOST = 100;

/** Whether a call came to an error and not to a result. */
export function isCallFailure(outcome: Outcome): outcome is CallFailure {
  return 'fault' in outcome;
}

/**
 * The line that answers a line, without its end; null when there is nothing to answer. Of a batch only those messages
 * are done and answered before which `goesOn` says so.
 */
export async function answerLine(
  line: string,
  call: Caller,
  bug: TellBug,
  goesOn: () => Promise<boolean> = async () => true,
): Promise<string | null> {
  let message: unknown;
  try {
    message = JSON.parse(line);
  } catch {
    return textOf(response(null, fault(CODES.parse, 'this line is not JSON')));
  }
  const doubled = doubledName(line);
  if (doubled !== null)
    return answerUnread(CODES.request, `"${doubled.toWellFormed()}" stands twice in one group`);
  if (!Array.isArray(message)) {
    const answer = await answerMessage(message, call, bug);
    return answer && textOf(answer);
  }
  if (message.length === 0 || message.length > BATCH_MOST)
    return textOf(response(null, fault(CODES.request, `a batch has 1 to ${BATCH_MOST} messages`)));
  const answers: Result[] = [];
  // One after the other: each call finds the session as the one before has left it.
  for (const one of message) {
    if (!(await goesOn())) break;
    const answer = await answerMessage(one, call, bug);
    if (answer) answers.push(answer);
  }
  return answers.length === 0 ? null : textOf(answers);
}

/** The answer to a line that cannot even be looked at. */
export function answerUnread(code: number, words: string): string {
  return textOf(response(null, fault(code, words)));
}

/** An error with its code and a message without a full stop. */
export function fault(
  code: number,
  message: string,
  data?: CallFailure['fault']['data'],
): CallFailure {
  return { fault: { code, message, ...(data ? { data } : {}) } };
}

/** Parameters that are not as they must be, with each mistake at its place. */
export function invalidParams(findings: readonly SchemaFinding[]): CallFailure {
  const [first] = findings;
  return fault(CODES.params, first?.words ?? 'these parameters are not valid', {
    issues: findings,
  });
}

/** One parameter that is wrong in a way that no schema can say. */
export function invalidParam(at: string, words: string, fix?: string): CallFailure {
  return invalidParams([{ at, code: 'wrong-value', words, ...(fix ? { fix } : {}) }]);
}

type Id = string | number | null;

async function answerMessage(message: unknown, call: Caller, bug: TellBug): Promise<Result | null> {
  if (typeof message !== 'object' || message === null || Array.isArray(message))
    return response(null, notARequest('a message is a group of keys'));
  const { jsonrpc, method, params, id } = message as Readonly<Record<string, unknown>>;
  const known = idOf(id);
  if (id !== undefined && known === undefined)
    return response(
      null,
      notARequest('"id" must be a text, a whole number of at most 15 digits, or null'),
    );
  const back = known ?? null;
  if (jsonrpc !== '2.0') return response(back, notARequest('"jsonrpc" must be "2.0"'));
  if (typeof method !== 'string') return response(back, notARequest('"method" must be a text'));
  if (params !== undefined && (typeof params !== 'object' || params === null))
    return response(back, notARequest('"params" must be a group of keys'));
  const halves = halfSigns(params ?? {});
  if (halves.length > 0) return id === undefined ? null : response(back, invalidParams(halves));
  let outcome: Outcome;
  try {
    outcome = await outcomeOf(method, params, call);
  } catch (error) {
    if (error instanceof Unworkable)
      outcome = fault(CODES.refused, error.message, {
        code: 'cannot-be-computed',
        words: error.message,
        fix: error.fix,
      });
    else {
      bug(error);
      outcome = fault(CODES.internal, 'this is a bug in Ohmward, not your mistake');
    }
  }
  return id === undefined ? null : response(back, outcome);
}

/** Parameters with half a sign in them, as `\ud800` alone: JSON can write it, and no text of a file can hold it. */
function halfSigns(params: object): SchemaFinding[] {
  return Object.entries(params).flatMap(([key, value]): SchemaFinding[] =>
    isWhole(key) && isWhole(value)
      ? []
      : [
          {
            at: `/params/${key.toWellFormed()}`,
            code: 'half-sign',
            words: `"${key.toWellFormed()}" holds half of a sign`,
            fix: 'send both halves of it, or U+FFFD in its place',
          },
        ],
  );
}

function notARequest(words: string): CallFailure {
  return fault(CODES.request, words);
}

/** Undefined for one that would not come back as it was sent. */
function idOf(id: unknown): Id | undefined {
  if (typeof id === 'string' || id === null) return id;
  if (typeof id !== 'number' || !Number.isFinite(id)) return undefined;
  return Math.abs(id) <= Number.MAX_SAFE_INTEGER ? id : undefined;
}

async function outcomeOf(method: string, params: unknown, call: Caller): Promise<Outcome> {
  if (!Array.isArray(params)) return call(method, (params ?? {}) as object);
  if (params.length === 0) return call(method, {});
  return invalidParam('/params', 'parameters go by name', 'send a group of keys');
}

function response(id: Id, outcome: Outcome): Result {
  return isCallFailure(outcome)
    ? { jsonrpc: '2.0', id, error: outcome.fault }
    : { jsonrpc: '2.0', id, result: outcome };
}

/** Without hidden signs, so that no terminal obeys one and no line has two ends. */
function textOf(value: object): string {
  return hiddenAsEscapes(JSON.stringify(value));
}
