/** `run`, `resume`, `retest` and `drill` for another program. */

import { knowablesOf } from '../../circuit/knowable.ts';
import validateJob from '../../procedure/generated/job.mjs';
import { emptyJob } from '../../procedure/job.ts';
import { type LoadedJob, loadJob } from '../../procedure/load-job.ts';
import { replaceablesOf } from '../../procedure/read-repair.ts';
import { harnessTerminals } from '../../procedure/read-terminal.ts';
import { isProblem, type Problem } from '../../source/problem.ts';
import { safeText } from '../../source/safe-text.ts';
import { schemaFindings } from '../../source/schema-issues.ts';
import { HEALTHY } from '../../suspects/prediction-table.ts';
import type { OpenedSession } from '../../ui/app-services.ts';
import { type CallFailure, invalidParam, invalidParams } from '../../ui/rpc/json-rpc.ts';
import type { Params } from '../../ui/rpc/method.ts';
import type { RpcServices, Sheet, Subject } from '../../ui/rpc/rpc-server.ts';
import { type Arguments, EXIT, type Io, optionText, tellProblem } from '../command.ts';
import { programName } from '../version.ts';
import { type Desk, findSubject, freeOrders, startable } from './open-desk.ts';
import { begin, deskFor, OWN_FAULT, wantsSheet } from './run-session.ts';
import { serveRpc } from './serve-rpc.ts';
import { namesNone } from './what-is-named.ts';

type BeginParams = Params<'begin'>;
type Begin = NonNullable<RpcServices['begin']>;

/** A new session. It begins at once where the arguments say all of it, and else when the program says the rest. */
export async function runForProgram(args: Arguments, io: Io): Promise<number> {
  const desk = await deskFor(args, io);
  if (isProblem(desk)) return tellProblem(io, desk, EXIT.wrongInput);
  if (namesNone(args) || wantsSheet(args))
    return serveRpc(
      desk,
      servicesFor(desk, io, 'session', (asked) => tellNotice(beginAsked(desk, args, asked), io)),
      null,
      io,
    );
  const begun = begin(desk, args, { by: 'program' });
  if (isProblem(begun)) return tellProblem(io, begun, EXIT.wrongInput);
  tellNotice(begun, io);
  return serveSession(desk, begun, io);
}

/** A session or a drill that is open already. */
export function serveSession(desk: Desk, opened: OpenedSession, io: Io): Promise<number> {
  return serveRpc(desk, servicesFor(desk, io, 'session', null), opened, io);
}

/** A drill. `begin` opens one that arguments name. */
export async function drillForProgram(
  desk: Desk,
  args: Arguments,
  begun: OpenedSession | Problem | null,
  begin: (args: Arguments) => OpenedSession | Problem,
  io: Io,
): Promise<number> {
  if (begun && isProblem(begun)) return tellProblem(io, begun, EXIT.wrongInput);
  if (begun) tellNotice(begun, io);
  const asking: Begin = (asked) => {
    const odd = (['job', 'bench'] as const).find((key) => asked[key] !== undefined);
    if (odd) return invalidParam(`/params/${odd}`, `a drill has no "${odd}"`);
    const twice = (['level', 'seed', 'student'] as const).find(
      (key) => asked[key] !== undefined && args.values[optionOf(key)] !== undefined,
    );
    if (twice) return invalidParam(`/params/${twice}`, 'it was given on the command line');
    const { procedure, level, seed, student } = asked;
    const opened = begin({
      positionals: procedure === undefined ? [] : [procedure],
      values: {
        ...args.values,
        ...(level === undefined ? {} : { level }),
        ...(seed === undefined ? {} : { vehicle: `${seed}` }),
        ...(student === undefined ? {} : { student }),
      },
    });
    return tellNotice(opened, io);
  };
  return serveRpc(desk, servicesFor(desk, io, 'drill', begun ? null : asking), begun, io);
}

/** What is said of a tree of one's own goes beside the messages, which a program reads. */
function tellNotice<T extends ReturnType<Begin>>(begun: T, io: Io): T {
  if (!isProblem(begun) && 'notice' in begun && begun.notice !== undefined)
    io.err(`${safeText(begun.notice)}\n`);
  return begun;
}

function servicesFor(
  desk: Desk,
  io: Io,
  kind: RpcServices['kind'],
  begin: Begin | null,
): RpcServices {
  return {
    bug: (error) => {
      const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
      io.err(`${safeText(words, { lines: true })}\n`);
    },
    program: programName(),
    kind,
    // A drill hides a fault of a circuit.
    procedures: () => listed(desk).filter(({ circuit }) => kind === 'session' || circuit !== null),
    sheet: (name) => sheetOf(desk, name),
    begin,
  };
}

function listed(desk: Desk): Subject[] {
  return [
    ...startable(desk).map(({ draft }) => ({
      name: draft.procedure,
      title: draft.title,
      about: draft.about ?? '',
      codes: draft.codes ?? [],
      circuit: draft.circuit ?? null,
    })),
    ...freeOrders(desk).map((one) => ({ ...one, codes: [] })),
  ];
}

function sheetOf(desk: Desk, name: string): Sheet | Problem {
  const subject = findSubject(desk, name);
  if (isProblem(subject)) return subject;
  const circuit =
    subject.kind === 'free-order'
      ? subject.circuit
      : desk.library.circuits.get(subject.procedure.draft.circuit ?? '');
  if (!circuit) return { terminals: [], parts: [], values: [], faults: [] };
  const faults = circuit.faults.map(({ id, words }) => ({ id, words }));
  return {
    terminals: harnessTerminals(circuit),
    parts: replaceablesOf(circuit),
    values: knowablesOf(circuit).map(({ key, words }) => ({ id: key, words })),
    faults: [{ id: HEALTHY, words: 'no fault at all' }, ...faults],
  };
}

/** The option that says the same as a parameter. */
function optionOf(key: 'level' | 'seed' | 'student'): string {
  return key === 'seed' ? 'vehicle' : key;
}

/** What the command line leaves out; what it has said is not said again. */
function beginAsked(
  desk: Desk,
  args: Arguments,
  asked: BeginParams,
): OpenedSession | Problem | CallFailure {
  const { procedure, bench, job } = asked;
  const odd = (['level', 'seed', 'student'] as const).find((key) => asked[key] !== undefined);
  if (odd) return invalidParam(`/params/${odd}`, `"${odd}" belongs to a drill`);
  const [given] = args.positionals;
  if (given !== undefined && procedure !== undefined)
    return invalidParam('/params/procedure', `"${given}" was named on the command line`);
  if (bench && optionText(args, 'bench') !== undefined)
    return invalidParam('/params/bench', 'the simulated vehicle was named on the command line');
  const sheet = sheetSent(job);
  if ('code' in sheet) return { fault: sheet };
  const named = given ?? procedure;
  const positionals = named === undefined ? [] : [named];
  if (!bench) return begin(desk, { ...args, positionals }, { sheet, by: 'program' });
  const isOwn = bench.fault === OWN_FAULT;
  return begin(
    desk,
    { positionals, values: { ...args.values, bench: OWN_FAULT, vehicle: `${bench.seed ?? 1}` } },
    {
      sheet: {
        ...sheet,
        fault: isOwn ? sheet.fault : bench.fault,
        intermittent: bench.intermittent ?? (isOwn && sheet.intermittent),
      },
      by: 'program',
    },
  );
}

/** A job sheet as a job file has it, or what is wrong with it. */
function sheetSent(job: object | undefined): LoadedJob | CallFailure['fault'] {
  if (!job) return { job: emptyJob(''), procedure: null, fault: null, intermittent: false };
  if (!validateJob(job)) return invalidParams(schemaFindings(validateJob.errors, JOB)).fault;
  // JSON is YAML, so what reads a file reads this too.
  const { value, issues } = loadJob(JSON.stringify(job), 'job');
  if (value) return value;
  const findings = issues.map(({ code, words, fix }) => ({
    at: '/params/job',
    code,
    words,
    ...(fix ? { fix } : {}),
  }));
  return invalidParams(findings).fault;
}
const JOB = ['params', 'job'];
