/** `ohmward` and `ohmward run`: a guided session on the screen, as a dialogue of lines, or without a person. */

import type { Problem } from '../source/problem.ts';
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
import { isForProgram, RPC_OPTION, rpcProblem } from './session/rpc-option.ts';
import { isPath, namesNone } from './session/what-is-named.ts';

export const command: CliCommand = {
  name: 'run',
  summary: 'a guided session, measurement by measurement, to a proven conclusion',
  usage: 'run [PROCEDURE] [options]',
  examples: [
    'ohmward run                                          choose on the screen',
    'ohmward run hall-no-signal                           job sheet, then the first test',
    'ohmward run hall-no-signal --job FILE                the job sheet is in a file',
    'ohmward run hall-no-signal --bench wire.signal.open  on a simulated vehicle with this fault',
    'ohmward run hall-no-signal --answers FILE --json     without a person',
    'ohmward run --rpc                                    for another program',
    'ohmward run my-tree.yaml --bench wire.signal.open --from ground --watch',
    '                                                     try a step, again after each save',
  ],
  options: {
    job: {
      type: 'string',
      short: 'j',
      value: 'FILE',
      help: 'job sheet: complaint, vehicle, pins and wire colours',
    },
    'no-sheet': { type: 'boolean', help: 'start at the vehicle without filling in a job sheet' },
    bench: {
      type: 'string',
      short: 'b',
      value: 'FAULT',
      help: 'simulated vehicle with this fault; "healthy" for none, "job" for the one on the job sheet',
    },
    vehicle: {
      type: 'string',
      value: 'NUMBER',
      help: 'which simulated vehicle: its values; 1 when left out',
    },
    answers: { type: 'string', short: 'a', value: 'FILE', help: 'take the answers from a file' },
    unattended: { type: 'boolean', help: 'let the simulated vehicle answer every step' },
    plain: { type: 'boolean', short: 'p', help: 'a dialogue of lines instead of screens' },
    rpc: RPC_OPTION,
    json: { type: 'boolean', help: 'print the finished session as JSON' },
    from: {
      type: 'string',
      value: 'STEP',
      help: 'start at this step; on a simulated vehicle only, and the session says so',
    },
    preview: { type: 'boolean', help: 'save nothing' },
    watch: {
      type: 'boolean',
      short: 'w',
      help: 'a preview, again after each save of FILE; with --plain, --answers or --unattended',
    },
    sessions: { type: 'string', value: 'FOLDER', help: 'where the session is saved' },
    ascii: { type: 'boolean', help: 'draw with ASCII characters only' },
    color: { type: 'string', value: 'WHEN', help: 'always, never or auto' },
    'no-alt-screen': { type: 'boolean', help: 'stay on the normal screen' },
  },
  run,
};

async function run(args: Arguments, io: Io): Promise<number> {
  const unattended =
    optionText(args, 'answers') !== undefined || args.values['unattended'] === true;
  const wrong = wrongUse(args, unattended);
  if (wrong) return tellProblem(io, wrong, EXIT.wrongUse);
  if (isForProgram(args)) {
    const { runForProgram } = await import('./session/run-rpc.ts');
    return runForProgram(args, io);
  }
  const watch = args.values['watch'] === true;
  const flags = { plain: args.values['plain'] === true };
  const onScreen =
    !unattended &&
    !watch &&
    decideFrontEnd(io.env, process.stdin, process.stdout, flags) === 'screen';
  if (onScreen && namesNone(args)) {
    const { runFromStart } = await import('./session/run-from-start.ts');
    return runFromStart(args, io);
  }
  const { runNamed, watchNamed } = await import('./session/run-session.ts');
  if (watch) return watchNamed(args, io, unattended);
  return runNamed(args, io, unattended ? 'unattended' : onScreen ? 'screen' : 'lines');
}

function wrongUse(args: Arguments, unattended: boolean): Problem | null {
  const tooMany = wordTooMany(args, 1) ?? rpcProblem(args);
  if (tooMany) return tooMany;
  const [named] = args.positionals;
  if (optionText(args, 'from') !== undefined && optionText(args, 'bench') === undefined)
    return {
      problem: '--from needs a simulated vehicle: a real one is tested from the start',
      fix: 'add --bench FAULT, or --bench healthy',
    };
  if (optionText(args, 'from') !== undefined && namesNone(args))
    return {
      problem: '--from needs a procedure to start in',
      fix: 'name it: ohmward run PROCEDURE',
    };
  if (args.values['watch'] !== true) return null;
  if (named === undefined || !isPath(named))
    return {
      problem: '--watch needs a file to watch',
      fix: 'name the procedure by its file, such as ./my-tree.yaml',
    };
  if (!unattended && args.values['plain'] !== true)
    return {
      problem: '--watch goes with --plain, --answers or --unattended',
      fix: 'add --plain to answer yourself, or --unattended to let the simulated vehicle answer',
    };
  return null;
}
