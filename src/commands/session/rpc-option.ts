/** The option that puts another program in a person's place. */
import type { Problem } from '../../source/problem.ts';
import type { Arguments, Option } from '../command.ts';

export const RPC_OPTION: Option = {
  type: 'boolean',
  help: 'for another program: JSON-RPC 2.0 on standard input and output, one message per line',
};

/** Options by which somebody else answers, or which print something else. */
const OTHERS = [
  'plain',
  'json',
  'answers',
  'unattended',
  'watch',
  'actions',
  'class',
  'csv',
  'html',
] as const;

/** Whether another program drives. */
export function isForProgram({ values }: Arguments): boolean {
  return values['rpc'] === true;
}

/** What does not go with the option; null when all does. */
export function rpcProblem(args: Arguments): Problem | null {
  const other = isForProgram(args)
    ? OTHERS.find((name) => args.values[name] !== undefined && args.values[name] !== false)
    : undefined;
  if (other === undefined) return null;
  return { problem: `--${other} does not go with --rpc`, fix: 'leave one of them out' };
}
