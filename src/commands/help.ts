/** Help texts, made from the command table. */
import type { Command } from './command.ts';

type Table = Readonly<Record<string, () => Promise<{ command: Command }>>>;

const ABOUT = `ohmward finds out whether sensor, wiring, module or target wheel is at fault,
and proves it before anything is opened or replaced.
`;

/** The page of \`ohmward --help\`. */
export async function programHelp(table: Table): Promise<string> {
  const commands = await Promise.all(
    Object.values(table).map(async (load) => (await load()).command),
  );
  const width = Math.max(...commands.map(({ name }) => name.length));
  const lines = commands.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`);
  return [
    'ohmward                                  open the start screen',
    'ohmward run hall-no-signal --bench wire.signal.open',
    '                                         try it on a simulated vehicle',
    '',
    ABOUT,
    'Commands',
    ...lines,
    '',
    'Each has --help with examples. Exit codes: 0 done, 1 something wrong in the input, 2 used wrongly,',
    '130 interrupted. Environment: NO_COLOR, OHMWARD_SESSIONS (folder of sessions), XDG folders.',
    '',
  ].join('\n');
}

/** The page of \`ohmward COMMAND --help\`. */
export function commandHelp(command: Command): string {
  const options = Object.entries(command.options).map(([name, option]) => {
    const short = option.short ? `-${option.short}, ` : '';
    const value = option.type === 'string' ? ` ${option.value ?? 'TEXT'}` : '';
    return { left: `${short}--${name}${value}`, right: option.help };
  });
  const width = Math.max(10, ...options.map(({ left }) => left.length));
  return [
    ...command.examples,
    '',
    command.summary,
    '',
    `Usage: ohmward ${command.usage}`,
    ...(options.length > 0 ? ['', 'Options'] : []),
    ...options.map(({ left, right }) => `  ${left.padEnd(width)}  ${right}`),
    '',
  ].join('\n');
}
