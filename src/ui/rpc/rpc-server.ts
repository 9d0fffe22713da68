/**
 * A session or a drill for another program: one line in, the line that answers it out. Without streams, clock and
 * disk; what begins a session comes in.
 */

import { isProblem, type Problem } from '../../source/problem.ts';
import { type SchemaError, schemaFindings } from '../../source/schema-issues.ts';
import type { OpenedSession } from '../app-services.ts';
import { ADVICE_METHODS } from './advice-methods.ts';
import { AID_METHODS } from './aid-methods.ts';
import { ANSWER_METHODS } from './answer-methods.ts';
import { CAPTURE_METHODS } from './capture-methods.ts';
import { DRILL_METHODS } from './drill-methods.ts';
import validate from './generated/rpc.mjs';
import {
  answerLine,
  type CallFailure,
  CODES,
  fault,
  invalidParams,
  type Outcome,
  type TellBug,
} from './json-rpc.ts';
import {
  type Call,
  DESK_METHODS,
  type DeskMethod,
  type Methods,
  type Params,
  type SessionMethod,
} from './method.ts';
import { PLACE_METHODS } from './place-methods.ts';
import { refusedCall } from './refused.ts';
import { RETEST_METHODS } from './retest-methods.ts';
import { stateOf } from './state-view.ts';
import { TEST_METHODS } from './test-methods.ts';

/** Version of the protocol: methods and keys are only added within one. */
export const PROTOCOL = 1;

/** What a session can begin with. */
export interface Subject {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly codes: readonly string[];
  /** Null for a procedure without one. */
  readonly circuit: string | null;
}

/** What a job sheet can name; without a circuit nothing. */
export interface Sheet {
  readonly terminals: readonly Named[];
  readonly parts: readonly Named[];
  /** What of the car can be known. */
  readonly values: readonly Named[];
  /** Of a simulated vehicle. */
  readonly faults: readonly Named[];
}
interface Named {
  readonly id: string;
  readonly words: string;
}

/** What lies around a session. */
export interface RpcServices {
  /** Name and version. */
  readonly program: string;
  readonly kind: 'session' | 'drill';
  readonly procedures: () => readonly Subject[];
  readonly sheet: (procedure: string) => Sheet | Problem;
  /** Told of what should not have happened. */
  readonly bug: TellBug;
  /** Null where the command line has begun it. */
  readonly begin: ((asked: Params<'begin'>) => OpenedSession | Problem | CallFailure) | null;
}

/** Answers the lines of one other program. */
export interface RpcServer {
  /** Answers are given in the order of the lines, each when it is settled. */
  readonly answer: (line: string) => Promise<string | null>;
  readonly opened: () => OpenedSession | null;
}

const METHODS: Methods = {
  ...ANSWER_METHODS,
  ...TEST_METHODS,
  ...CAPTURE_METHODS,
  ...AID_METHODS,
  ...ADVICE_METHODS,
  ...PLACE_METHODS,
  ...RETEST_METHODS,
  ...DRILL_METHODS,
};

/**
 * A server; `begun` is the session that the command line has begun. Between the calls of a batch `goesOn` is asked whether
 * the next one is still to be done.
 */
export function rpcServer(
  services: RpcServices,
  begun: OpenedSession | null,
  goesOn?: () => Promise<boolean>,
): RpcServer {
  let opened = begun;

  const atDesk = (call: Call<DeskMethod>): Outcome => {
    switch (call.method) {
      case 'hello':
        return hello(call.params);
      case 'procedures':
        return { procedures: services.procedures() };
      case 'sheet': {
        const sheet = services.sheet(call.params.procedure);
        return isProblem(sheet)
          ? refusedCall('no-such-procedure', sheet.problem, sheet.fix)
          : { ...sheet };
      }
      case 'begin':
        return begin(call.params);
    }
  };
  const hello = ({ protocol }: Params<'hello'>): Outcome => {
    if (protocol !== undefined && protocol !== PROTOCOL)
      return refusedCall(
        'other-protocol',
        `this program speaks version ${PROTOCOL} of the protocol`,
      );
    const place = placeOf(opened, services);
    const names = Object.entries(METHODS).flatMap(([name, { where }]) =>
      isAt(where, place) ? [name] : [],
    );
    return {
      protocol: PROTOCOL,
      program: services.program,
      kind: place,
      begun: opened !== null,
      methods: [...DESK_METHODS, ...names],
    };
  };
  const begin = (asked: Params<'begin'>): Outcome => {
    if (opened || !services.begin)
      return refusedCall('already-begun', 'the session has begun', 'start the program again');
    const found = services.begin(asked);
    if ('fault' in found) return found;
    if (isProblem(found)) return refusedCall('cannot-begin', found.problem, found.fix);
    opened = found;
    return { state: stateOf(found) };
  };

  const call = async (method: string, params: object): Promise<Outcome> => {
    if (!isMethod(method)) return fault(CODES.method, `there is no method "${method}"`);
    const sent: unknown = { jsonrpc: '2.0', method, params };
    if (!validate(sent)) return invalidParams(schemaFindings(validate.errors as SchemaError[]));
    const checked = sent as Call;
    if (isAtDesk(checked)) return atDesk(checked);
    if (!opened) return refusedCall('no-session', 'no session has begun', 'call "begin" first');
    const place = placeOf(opened, services);
    if (!isAt(METHODS[checked.method].where, place)) return elsewhere(method, place);
    return run(checked, opened, services.program);
  };
  return { answer: (line) => answerLine(line, call, services.bug, goesOn), opened: () => opened };
}

function run<M extends SessionMethod>(
  { method, params }: Call<M>,
  opened: OpenedSession,
  program: string,
): Outcome | Promise<Outcome> {
  return METHODS[method].run(opened, params, program);
}

type ServerKind = RpcServices['kind'];

/** A session that is gone on with may be a drill. */
function placeOf(opened: OpenedSession | null, { kind }: RpcServices): ServerKind {
  if (!opened) return kind;
  return opened.drill ? 'drill' : 'session';
}

function isAt(where: Methods[SessionMethod]['where'], place: ServerKind): boolean {
  return where === 'anywhere' || where === place;
}

function elsewhere(method: string, place: ServerKind): CallFailure {
  return place === 'drill'
    ? refusedCall(
        'vehicle-answers',
        `in a drill the vehicle answers by itself, so there is no "${method}"`,
        'call "measure", "follow" or "capture", and "diagnose" at the end',
      )
    : refusedCall('no-drill', 'this session is not a drill', 'call "hello" to see what there is');
}

function isMethod(name: string): boolean {
  return DESK.has(name) || Object.hasOwn(METHODS, name);
}
const DESK: ReadonlySet<string> = new Set(DESK_METHODS);

function isAtDesk(call: Call): call is Call<DeskMethod> {
  return DESK.has(call.method);
}
