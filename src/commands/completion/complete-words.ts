/**
 * Answers `ohmward __complete -- WORDS`: what could stand where the last of the words is being typed.
 *
 * A line for each offer, `value TAB words`, and a last line `:files` where names of files fit too. What a command takes is
 * read from the same table as its help: options, `a|b|c` in the usage line, and the words in capitals.
 */
import {
  type CliCommand,
  type CommandTable,
  EXIT,
  type Io,
  type Option,
  type Verb,
  verbOf,
} from '../command.ts';
import { guideTopics } from '../help/guide.ts';
import { type CompletionOffer, type Line, type Offers, offersFor } from './offers.ts';

/** The only characters an offer may have: a shell must never find anything to expand in it. */
const SAFE_VALUE = /^[A-Za-z0-9][\w.+-]*$|^--?[a-z][a-z-]*(=[\w.+-]*)?$/;
const WORDS_MAX = 100;
const HELP: Option = { type: 'boolean', short: 'h', help: 'this page' };

/** Prints the answer on `io.out`; the exit code. */
export async function completeWords(
  argv: readonly string[],
  table: CommandTable,
  io: Io,
): Promise<number> {
  const words = wordsOf(argv);
  const typed = words.at(-1) ?? '';
  const { offers, files } = await offersAt(words.slice(0, -1), typed, table, io);
  const fitting = offers.filter(({ value }) => value.startsWith(typed) && SAFE_VALUE.test(value));
  const lines = fitting.map(({ value, words: about }) => `${value}\t${plain(about)}\n`);
  io.out(lines.join('') + (files ? ':files\n' : ''));
  return EXIT.done;
}

/** The words without the leading `--`. Bash hands over `--bench=x` as three words; the sign is dropped. */
function wordsOf(argv: readonly string[]): string[] {
  const given = argv[0] === '--' ? argv.slice(1) : [...argv];
  const words = given.filter((word, at) => word !== '=' || !given[at - 1]?.startsWith('--'));
  return given.at(-1) === '=' && words.length < given.length ? [...words, ''] : words;
}

async function offersAt(
  before: readonly string[],
  typed: string,
  table: CommandTable,
  io: Io,
): Promise<Offers> {
  const [first] = before;
  if (first === undefined) return { offers: await firstWords(typed, table), files: false };
  if (first === 'help')
    return before.length > 1
      ? nothing
      : { offers: [...(await commands(table)), ...topics()], files: false };
  const isCommand = !first.startsWith('-');
  const name = isCommand ? first : 'run';
  const load = Object.hasOwn(table, name) ? table[name] : undefined;
  if (!load) return nothing;
  const { command } = await load();
  return commandOffers(command, isCommand ? before.slice(1) : before, typed, io);
}

const nothing: Offers = { offers: [], files: false };

async function firstWords(typed: string, table: CommandTable): Promise<CompletionOffer[]> {
  if (!typed.startsWith('-')) return commands(table);
  return [
    { value: '--help', words: 'all commands' },
    { value: '--version', words: 'name and version' },
  ];
}

async function commands(table: CommandTable): Promise<CompletionOffer[]> {
  const loaded = await Promise.all(Object.values(table).map((load) => load()));
  return loaded.map(({ command: { name, summary } }) => ({ value: name, words: summary }));
}

function topics(): CompletionOffer[] {
  return guideTopics().map(({ name, title }) => ({ value: name, words: title }));
}

async function commandOffers(
  command: CliCommand,
  before: readonly string[],
  typed: string,
  io: Io,
): Promise<Offers> {
  const options: Record<string, Option> = { ...command.options, help: HELP };
  const read = readBefore(before, options);
  const [word, ...afterWord] = read.positionals;
  const verb = verbOf(command, word);
  const line: Line = {
    command: command.name,
    positionals: verb === command ? read.positionals : afterWord,
    folder: read.values['sessions'] ?? read.values['folder'],
  };
  if (read.open) return valueOffers(read.open, line, io);
  const joined = /^--([a-z][a-z-]*)=/.exec(typed);
  if (joined && !read.ended) {
    const option = options[joined[1] ?? ''];
    if (option?.type !== 'string') return nothing;
    const { offers, files } = await valueOffers(option, line, io);
    const prefix = joined[0];
    return { offers: offers.map((one) => ({ ...one, value: prefix + one.value })), files };
  }
  if (typed.startsWith('-') && !read.ended) return { offers: optionOffers(), files: false };
  const found = await positionalOffers(verb, line, io);
  if (found.offers.length > 0 || found.files || read.ended) return found;
  return { offers: optionOffers(), files: false };

  function optionOffers(): CompletionOffer[] {
    return Object.entries({ ...verb.options, help: HELP })
      .filter(([name, { multiple }]) => multiple || !read.given.has(name))
      .map(([name, { help }]) => ({ value: `--${name}`, words: help }));
  }
}

/** What stands before the word being typed. `open` is the option that still waits for its value. */
function readBefore(before: readonly string[], options: Readonly<Record<string, Option>>) {
  const positionals: string[] = [];
  const values: Record<string, string> = {};
  const given = new Set<string>();
  let open: Option | null = null;
  let openName = '';
  let ended = false;
  for (const word of before) {
    if (open) {
      values[openName] = word;
      open = null;
    } else if (ended || !/^-./.test(word)) positionals.push(word);
    else if (word === '--') ended = true;
    else {
      const [name, value] = optionNamed(word, options);
      const option = options[name];
      given.add(name);
      if (option?.type !== 'string') continue;
      if (value === undefined) {
        open = option;
        openName = name;
      } else values[name] = value;
    }
  }
  return { positionals, values, given, open, ended };
}

/** `--job=x` is job and x, `-j` is job. */
function optionNamed(
  word: string,
  options: Readonly<Record<string, Option>>,
): [string, string | undefined] {
  if (!word.startsWith('--')) {
    const found = Object.entries(options).find(([, { short }]) => short === word.slice(1, 2));
    return [found?.[0] ?? '', word.length > 2 ? word.slice(2) : undefined];
  }
  const at = word.indexOf('=');
  return at < 0 ? [word.slice(2), undefined] : [word.slice(2, at), word.slice(at + 1)];
}

async function valueOffers(option: Option, line: Line, io: Io): Promise<Offers> {
  const choices = choicesIn(option.help);
  if (choices.length > 0) return { offers: plainOffers(choices), files: false };
  return offersFor(option.value ?? '', line, io);
}

async function positionalOffers(verb: Verb, line: Line, io: Io): Promise<Offers> {
  const places = placesIn(verb);
  const place = places[line.positionals.length] ?? (places.length > 1 ? places.at(-1) : undefined);
  const repeated = verb.usage.includes('...') ? places.at(-1) : undefined;
  const word = place ?? repeated;
  if (word === undefined) return nothing;
  if (word.includes('|')) {
    const open = line.positionals.length === 0;
    return open ? { offers: plainOffers(word.split('|')), files: false } : nothing;
  }
  return offersFor(word, line, io);
}

/** The places after the command's name in its usage line: `list|find` or a word in capitals. */
function placesIn({ usage }: Verb): string[] {
  const [, ...words] = usage.replace(/\[options\]|\s\[?--.*$/g, '').split(/\s+/);
  return words
    .map((word) => word.replace(/[[\].]/g, ''))
    .filter((word) => /^[A-Z]+$/.test(word) || /^[a-z-]+(\|[a-z-]+)+$/.test(word));
}

/** The choices that a help text lists: `always, never or auto`. None when it says anything else. */
export function choicesIn(help: string): string[] {
  const list = help
    .replace(/\([^()]*\)/g, '')
    .replace(/^.*: /, '')
    .replace(/;.*/, '');
  const words = list.split(/,| or /).map((word) => word.trim());
  const choices = words.length > 1 && words.every((word) => /^[a-z][a-z0-9-]*$/.test(word));
  return choices ? words : [];
}

function plainOffers(values: readonly string[]): CompletionOffer[] {
  return values.map((value) => ({ value, words: '' }));
}

/** One line of plain text: titles come from files. */
function plain(words: string): string {
  return words
    .replace(/[\p{C}\s]+/gu, ' ')
    .trim()
    .slice(0, WORDS_MAX);
}
