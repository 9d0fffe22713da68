/** Help texts, made from the command table. */
import type { CliCommand, CommandTable, Verb } from './command.ts';
import type { GuideTopic } from './help/guide.ts';

const ABOUT = `ohmward finds out whether the sensor, wiring, module or target wheel is at
fault, and proves it before anything is opened or replaced.
`;

/** A usual terminal. */
const COLUMNS = 80;

/** The page of `ohmward --help` and of `ohmward help`, with the topics of the guide. */
export async function programHelp(
  table: CommandTable,
  topics: readonly Pick<GuideTopic, 'name' | 'title'>[],
): Promise<string> {
  const commands = await Promise.all(
    Object.values(table).map(async (load) => (await load()).command),
  );
  const width = Math.max(...commands.map(({ name }) => name.length));
  const { wrapWords } = await import('../ui/parts/wrap-words.ts');
  const lines = commands.flatMap(({ name, summary }) =>
    wrapWords(summary, COLUMNS - width - 4).map(
      (line, at) => `  ${(at === 0 ? name : '').padEnd(width)}  ${line}`,
    ),
  );
  return [
    'ohmward                                  open the start screen',
    'ohmward run hall-no-signal --bench wire.signal.open',
    '                                         try it on a simulated vehicle',
    '',
    ABOUT,
    'Commands',
    ...lines,
    '',
    ...topicLines(topics),
    'Each has --help with examples. Exit codes: 0 done, 1 something wrong in the',
    'input, 2 used wrongly, 130 interrupted. Environment: NO_COLOR,',
    'OHMWARD_SESSIONS (folder of sessions), XDG folders.',
    '',
  ].join('\n');
}

/** The page of `ohmward COMMAND --help`, and of `ohmward COMMAND VERB --help`. */
export function commandHelp(command: Verb & Pick<CliCommand, 'verbs'>): string {
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
    ...verbLines(command.verbs ?? {}),
    ...(options.length > 0 ? ['', 'Options'] : []),
    ...options.map(({ left, right }) => `  ${left.padEnd(width)}  ${right}`),
    '',
    `Exit codes: 0 done, 1 ${command.failure ?? 'something wrong in the input'}, 2 used wrongly, 130 interrupted.`,
    '',
  ].join('\n');
}

function topicLines(topics: readonly Pick<GuideTopic, 'name' | 'title'>[]): string[] {
  if (topics.length === 0) return [];
  const width = Math.max(...topics.map(({ name }) => name.length));
  return [
    'Guide, each page with: ohmward help TOPIC',
    ...topics.map(({ name, title }) => `  ${name.padEnd(width)}  ${title}`),
    '',
  ];
}

function verbLines(verbs: Readonly<Record<string, Verb>>): string[] {
  const names = Object.keys(verbs);
  if (names.length === 0) return [];
  const width = Math.max(...names.map((name) => name.length));
  const lines = Object.entries(verbs).map(
    ([name, { summary }]) => `  ${name.padEnd(width)}  ${summary}`,
  );
  return ['', 'Verbs, each with --help of its own', ...lines];
}
