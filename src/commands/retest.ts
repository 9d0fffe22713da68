/** `ohmward retest SESSION`: after the repair, the tests that must pass, before beside after; closes the record. */

import { benchFor } from '../drill/bench.ts';
import { circuitAtStart } from '../session/known-circuit.ts';
import { DRIVEN_WORDS, readDrive } from '../session/read-drive.ts';
import { readWork } from '../session/read-work.ts';
import { VERDICT_WORDS } from '../session/retest.ts';
import { modelFor } from '../session/session-model.ts';
import { isProblem, type Problem } from '../source/problem.ts';
import type { OpenedSession } from '../ui/app-services.ts';
import { decideFrontEnd } from '../ui/term/colour.ts';
import {
  type Arguments,
  type CliCommand,
  EXIT,
  type Io,
  optionText,
  tellProblem,
  wordTooMany,
} from './command.ts';
import { afterTheSession } from './session/after-the-session.ts';
import { finish, tellUnsaved } from './session/finish.ts';
import { handAtInput } from './session/hand-at-input.ts';
import { namedSession } from './session/named-session.ts';
import { type Desk, openDesk } from './session/open-desk.ts';
import { continueSession, faultProblem } from './session/open-session.ts';
import { codeOfRetest, retestInLines } from './session/retest-in-lines.ts';
import { isForProgram, RPC_OPTION, rpcProblem } from './session/rpc-option.ts';
import { programName } from './version.ts';

export const command: CliCommand = {
  name: 'retest',
  summary: 'after the repair: repeat the failed tests, before and after side by side',
  usage: 'retest SESSION [options]',
  examples: [
    'ohmward retest last                             the newest session, at the vehicle',
    'ohmward retest FILE --bench healthy             a simulated vehicle, repaired',
    'ohmward retest FILE --bench wire.signal.open    a simulated vehicle, not repaired',
    'ohmward retest FILE --drive "away, 80 km"        days later: the trouble codes stayed away',
    'ohmward retest FILE --customer "authorised by R. Example, up to 240 EUR"',
  ],
  options: {
    bench: {
      type: 'string',
      short: 'b',
      value: 'FAULT',
      help: 'what the simulated vehicle has after the repair (healthy)',
    },
    drive: {
      type: 'string',
      value: 'TEXT',
      help: 'what the trouble codes did on the test drive: away or back, then how it was driven',
    },
    customer: {
      type: 'string',
      value: 'TEXT',
      help: 'what the customer said about the work: authorised by, or declined by, then who and how',
    },
    plain: { type: 'boolean', short: 'p', help: 'a dialogue of lines instead of screens' },
    rpc: RPC_OPTION,
    json: { type: 'boolean', help: 'print the closed session as JSON' },
    sessions: { type: 'string', value: 'FOLDER', help: 'where sessions are saved' },
    ascii: { type: 'boolean', help: 'draw with ASCII characters only' },
    color: { type: 'string', value: 'WHEN', help: 'always, never or auto' },
    'no-alt-screen': { type: 'boolean', help: 'stay on the normal screen' },
  },
  failure: 'something wrong in the input, or the tests after the repair do not prove it fixed',
  run: async (args: Arguments, io: Io) => {
    const tooMany = wordTooMany(args, 1) ?? rpcProblem(args);
    if (tooMany) return tellProblem(io, tooMany, EXIT.wrongUse);
    const [named] = args.positionals;
    if (named === undefined)
      return tellProblem(
        io,
        { problem: 'which session?', fix: 'the newest one: ohmward retest last' },
        EXIT.wrongUse,
      );
    const desk = await openDesk(io, programName(), { sessions: optionText(args, 'sessions') });
    if (isProblem(desk)) return tellProblem(io, desk, EXIT.wrongInput);
    const found = namedSession(desk, io, named);
    if (isProblem(found)) return tellProblem(io, found, EXIT.wrongInput);
    const forProgram = isForProgram(args);
    const opened = continueSession(desk, found.path, forProgram ? 'program' : handAtInput());
    if (isProblem(opened)) return tellProblem(io, opened, EXIT.wrongInput);
    const { driver } = opened;
    const said = optionText(args, 'drive');
    if (said !== undefined) return reportDrive(opened, said, desk, args, io);
    const customer = optionText(args, 'customer');
    if (customer !== undefined) return reportWork(opened, customer, desk, args, io);
    const repaired = readyToRetest(opened, optionText(args, 'bench'), forProgram);
    if (isProblem(repaired)) {
      driver.close();
      return tellProblem(io, repaired, EXIT.wrongInput);
    }
    if (forProgram) {
      const { serveSession } = await import('./session/run-rpc.ts');
      return serveSession(desk, repaired, io);
    }
    const plain = args.values['plain'] === true;
    if (decideFrontEnd(io.env, process.stdin, process.stdout, { plain }) === 'screen') {
      const { runOnScreen } = await import('./session/run-on-screen.ts');
      const left = await runOnScreen(desk, repaired, args, io, { retest: true });
      return left === EXIT.done ? codeOfRetest(driver) : left;
    }
    return retestInLines(repaired, desk, args, io);
  },
};

/** The last word, of a closed record too. */
function reportDrive(
  opened: OpenedSession,
  said: string,
  desk: Desk,
  args: Arguments,
  io: Io,
): Promise<number> {
  const read = readDrive(said);
  const words = 'type' in read ? DRIVEN_WORDS[read.code] : '';
  return report({ opened, desk, args, io }, read, `--drive "${said}"`, words);
}

/** What the customer said about the work. */
function reportWork(
  opened: OpenedSession,
  said: string,
  desk: Desk,
  args: Arguments,
  io: Io,
): Promise<number> {
  const read = readWork(said);
  const words = 'type' in read ? `the work was ${read.answer} by ${read.by}` : '';
  return report({ opened, desk, args, io }, read, `--customer "${said}"`, words);
}

interface RetestDesk {
  readonly opened: OpenedSession;
  readonly desk: Desk;
  readonly args: Arguments;
  readonly io: Io;
}

/** One command into the record, without a test. */
async function report(
  { opened, desk, args, io }: RetestDesk,
  read: ReturnType<typeof readDrive> | ReturnType<typeof readWork>,
  typed: string,
  recorded: string,
): Promise<number> {
  const { driver } = opened;
  const done = 'type' in read ? driver.perform(read) : null;
  // One that was not finished is left as it was found.
  if (driver.session().status === 'open') driver.perform({ type: 'pause' });
  driver.close();
  if (!('type' in read))
    return tellProblem(io, { problem: `${typed}: ${read.words}`, fix: read.fix }, EXIT.wrongUse);
  if (done && !done.ok)
    return tellProblem(
      io,
      { problem: done.words, fix: done.fix || 'go on with: ohmward resume' },
      EXIT.wrongInput,
    );
  if (args.values['json'] === true) return finish(opened, desk, args, io, EXIT.done);
  const isLost = tellUnsaved(opened, io);
  if (!isLost) io.out(`In the record: ${recorded}.\n`);
  await afterTheSession(opened, desk, io);
  return isLost ? EXIT.wrongInput : EXIT.done;
}

/** The session with what its simulated vehicle has after the repair; a problem when there is nothing to test again. */
function readyToRetest(
  opened: OpenedSession,
  fault: string | undefined,
  forProgram: boolean,
): OpenedSession | Problem {
  const { concluded, closed, opened: first } = opened.driver.session();
  if (!concluded)
    return { problem: 'this session has no conclusion yet', fix: 'go on with: ohmward resume' };
  // Another program may have come for the last word.
  if (closed && !forProgram)
    return {
      problem: `this session is closed: ${VERDICT_WORDS[closed.verdict]}`,
      fix: 'start a new one with: ohmward run; add the test drive with: --drive TEXT',
    };
  if (fault === undefined) return opened;
  const { meter, vehicle } = first;
  const circuit = circuitAtStart(first);
  if (vehicle.kind !== 'bench')
    return {
      problem: 'this session was done on a real vehicle, so the tests after its repair are too',
      fix: 'leave --bench out',
    };
  const unknown = faultProblem(first.procedure?.name ?? circuit?.name ?? '', circuit, fault);
  if (unknown) return unknown;
  return circuit
    ? {
        ...opened,
        repaired: benchFor(modelFor(circuit, meter), first.procedure, { ...vehicle, fault }),
      }
    : opened;
}
