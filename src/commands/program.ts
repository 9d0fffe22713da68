/** Picks the command, reads its options, gives it the world, returns its exit code. */
import { parseArgs } from 'node:util';
import { nearestName } from '../source/nearest-name.ts';
import { safeText } from '../source/safe-text.ts';
import type { CliCommand, CommandTable, Io, Option } from './command.ts';
import { EXIT, verbOf } from './command.ts';
import { commandHelp, programHelp } from './help.ts';
import { version } from './version.ts';

/** Each command is loaded when it is called, so that no command pays for another's libraries. */
export const COMMANDS: CommandTable = {
  run: () => import('./run.ts'),
  resume: () => import('./resume.ts'),
  retest: () => import('./retest.ts'),
  check: () => import('./check.ts'),
  draw: () => import('./draw.ts'),
  new: () => import('./new.ts'),
  predict: () => import('./predict.ts'),
  wave: () => import('./wave.ts'),
  calc: () => import('./calc.ts'),
  drill: () => import('./drill.ts'),
  records: () => import('./records.ts'),
  settings: () => import('./settings.ts'),
  completion: () => import('./completion.ts'),
};

/** Runs the program with its arguments; the exit code. */
export async function main(argv: readonly string[], io: Io): Promise<number> {
  const [first, ...rest] = argv;
  if (first === '--version' || first === '-V') {
    io.out(`ohmward ${version}\n`);
    return EXIT.done;
  }
  if (first === '__complete')
    return (await import('./completion/complete-words.ts')).completeWords(rest, COMMANDS, io);
  if (first === '--help' || first === '-h' || first === 'help')
    return helpPage(first === 'help' ? rest : [], io);
  const isCommand = first !== undefined && !first.startsWith('-');
  const name = isCommand ? first : 'run';
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!load) return noCommand(name, io);
  const { command } = await load();
  return runCommand(command, isCommand ? rest : argv, io);
}

/** `ohmward help`: all commands and topics, a command or one verb of it, or a page of the guide. */
async function helpPage([wanted, verb]: readonly string[], io: Io): Promise<number> {
  const { guideTopics, nearTopics } = await import('./help/guide.ts');
  const topics = guideTopics();
  if (wanted === undefined) {
    io.out(await programHelp(COMMANDS, topics));
    return EXIT.done;
  }
  const load = Object.hasOwn(COMMANDS, wanted) ? COMMANDS[wanted] : undefined;
  if (load) {
    io.out(commandHelp(verbOf((await load()).command, verb)));
    return EXIT.done;
  }
  const topic = topics.find(({ name }) => name === wanted);
  if (topic) {
    const { guideText } = await import('./help/guide-text.ts');
    io.out(
      guideText(topic.text, Math.min(process.stdout.columns ?? TERMINAL_COLUMNS, PAGE_COLUMNS)),
    );
    return EXIT.done;
  }
  const near = nearTopics(wanted, [...topics.map(({ name }) => name), ...Object.keys(COMMANDS)]);
  const meant = near.length > 0 ? `; nearest: ${near.join(', ')}` : '';
  io.err(`ohmward help: no command or topic "${safeText(wanted)}"${meant}\n`);
  io.err('See them all with: ohmward help\n');
  return EXIT.wrongUse;
}
/** Longer lines are hard to read, however wide the terminal is. Our choice. */
const PAGE_COLUMNS = 90;
/** Of a pipe, which does not say how wide its reader is. */
const TERMINAL_COLUMNS = 80;

function noCommand(name: string, io: Io): number {
  const near = nearestName(name, Object.keys(COMMANDS));
  io.err(`ohmward: no command "${safeText(name)}"${near ? `; did you mean "${near}"?` : ''}\n`);
  io.err('See them all with: ohmward --help\n');
  return EXIT.wrongUse;
}

async function runCommand(command: CliCommand, argv: readonly string[], io: Io): Promise<number> {
  try {
    const help: Option = { type: 'boolean', short: 'h', help: 'this page' };
    const options: Record<string, Option> = { ...command.options, help };
    const parsed = parseArgs({
      args: [...argv],
      allowPositionals: true,
      options: Object.fromEntries(
        Object.entries(options).map(([name, { type, short, multiple }]) => [
          name,
          { type, ...(short ? { short } : {}), ...(multiple ? { multiple } : {}) },
        ]),
      ),
    });
    if (parsed.values['help']) {
      io.out(commandHelp(verbOf(command, parsed.positionals[0])));
      return EXIT.done;
    }
    const values = parsed.values as Record<string, string | boolean | string[] | undefined>;
    return await command.run({ positionals: parsed.positionals, values }, io);
  } catch (error) {
    if (!isOptionMistake(error)) throw error;
    io.err(`ohmward ${command.name}: ${safeText(optionWords(error, command))}\n`);
    io.err(`See its options with: ohmward ${command.name} --help\n`);
    return EXIT.wrongUse;
  }
}

/** The usual mistakes in our own words; Node's hint about the sign before a path helps nobody here. */
function optionWords(error: Error, { options }: CliCommand): string {
  const { code } = error as NodeJS.ErrnoException;
  const [, name = ''] = error.message.match(/'(?:-\w, )?(-[^' ]*)/) ?? [];
  if (code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION') {
    const known = [...Object.keys(options), 'help'];
    const near = nearestName(name.replace(/^-+/, ''), known);
    return `there is no option "${name}"${near ? `; did you mean "--${near}"?` : ''}`;
  }
  if (code === 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') {
    if (error.message.includes('does not take an argument'))
      return `the option "${name}" takes no value`;
    return `the option "${name}" needs a value; one that begins with "-" is written ${name}=VALUE`;
  }
  return error.message;
}

function isOptionMistake(error: unknown): error is Error {
  const code = error instanceof Error ? (error as NodeJS.ErrnoException).code : undefined;
  return code?.startsWith('ERR_PARSE_ARGS') === true;
}
