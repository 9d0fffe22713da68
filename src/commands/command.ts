/** What a command is: its words for help and completion, its options, and what it does. */
import type { Problem } from '../source/problem.ts';
import { safeText } from '../source/safe-text.ts';

/** One option of a command, for parsing, help and completion alike. */
export interface Option {
  readonly type: 'string' | 'boolean';
  readonly short?: string;
  readonly multiple?: boolean;
  readonly help: string;
  /** Name of the value in help, e.g. `FILE`. */
  readonly value?: string;
}

/** What was typed behind a command, split but not yet understood. */
export interface Arguments {
  readonly positionals: string[];
  readonly values: Record<string, string | boolean | string[] | undefined>;
}

/** The world outside, handed in so that a command can be tested. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly cwd: string;
  /** Of the error output where that is a terminal. */
  readonly terminal?: { readonly columns: () => number | undefined };
}

/** One command of the program, with its verbs where it has several. */
export interface CliCommand extends Verb {
  readonly name: string;
  /** What the word after its name may be, each with a page of its own. Their options are the command's too. */
  readonly verbs?: Readonly<Record<string, Verb>>;
}

/** What runs, and all that help says of it. */
export interface Verb {
  readonly summary: string;
  /** The line after `ohmward`, e.g. `run [PROCEDURE] [options]`. */
  readonly usage: string;
  readonly examples: readonly string[];
  readonly options: Readonly<Record<string, Option>>;
  /** What exit code 1 means here, where that is more than something wrong in the input. */
  readonly failure?: string;
  /** Exit code: 0 done, 1 something wrong in the input, 2 used wrongly, 130 interrupted. */
  readonly run: (args: Arguments, io: Io) => Promise<number>;
}

/** Commands by name, each loaded when it is wanted. */
export type CommandTable = Readonly<Record<string, () => Promise<{ command: CliCommand }>>>;

/** What each exit code means; `crashed` is a fault of the program. */
export const EXIT = { done: 0, wrongInput: 1, wrongUse: 2, crashed: 70, interrupted: 130 } as const;

/** The verb of a command that a word names, or else the command itself: whose usage, options and help hold. */
export function verbOf(command: CliCommand, word: string | undefined): Verb {
  const { verbs = {} } = command;
  return (word !== undefined && Object.hasOwn(verbs, word) ? verbs[word] : undefined) ?? command;
}

/** The options of all verbs; the help of those that not every verb takes begins with the verbs that do. */
export function optionsOf(verbs: Readonly<Record<string, Verb>>): Record<string, Option> {
  const names = new Set(Object.values(verbs).flatMap(({ options }) => Object.keys(options)));
  return Object.fromEntries(
    [...names].flatMap((name) => {
      const takers = Object.entries(verbs).filter(([, { options }]) => options[name]);
      const option = takers[0]?.[1].options[name];
      if (!option) return [];
      const all = takers.length === Object.keys(verbs).length;
      const who = all ? '' : `${takers.map(([verb]) => verb).join(', ')}: `;
      return [[name, { ...option, help: who + option.help }]];
    }),
  );
}

/** The text value of an option, or undefined when it was not given. */
export function optionText(args: Arguments, name: string): string | undefined {
  const value = args.values[name];
  return typeof value === 'string' ? value : undefined;
}

/** A word beyond those that a command takes, such as the second half of a name without quotes; null when there is none. */
export function wordTooMany({ positionals }: Arguments, most: number): Problem | null {
  const word = positionals[most];
  if (word === undefined) return null;
  return {
    problem: `"${word}" is one word too many`,
    fix: 'put words that belong together in quotes; --help shows what is possible',
  };
}

/** Says on the error output what could not be done and the way out; the exit code, for the caller to return. */
export function tellProblem(io: Io, { problem, fix }: Problem, code: number): number {
  io.err(`ohmward: ${safeText(problem, { lines: true })}\n  ${safeText(fix, { lines: true })}\n`);
  return code;
}
