/** What the words after `run` name. */
import { type Arguments, optionText } from '../command.ts';

/** Whether a word names a file rather than a procedure of the library. */
export function isPath(nameOrPath: string): boolean {
  return /[/\\]|\.ya?ml$/.test(nameOrPath);
}

/** Whether the person is still to be asked what to begin. */
export function namesNone(args: Arguments): boolean {
  return args.positionals[0] === undefined && optionText(args, 'job') === undefined;
}
