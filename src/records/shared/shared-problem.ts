/** What can go wrong with the shared database: something a person must mend, or a network that will be back. */
import { errorCodeOf } from '../../files/error-code.ts';

/** Trying again does not help. */
export class SharedProblem extends Error {
  readonly fix: string;
  constructor(words: string, fix: string) {
    super(words);
    this.fix = fix;
  }
}

/** The database cannot be reached now; everything stays as it is, and a later try goes on. */
export class Unreachable extends Error {}

/** Classes of SQLSTATE that pass: connection, resources, shutdown, and transactions in each other's way. */
const PASSING = /^(08|53|57|40)/;
/** Integrity constraints. */
const BROKEN_RULE = /^23/;

/** Whether an error of the driver is a rule of the tables that was not kept. */
export function isBrokenRule(error: unknown): boolean {
  return BROKEN_RULE.test(stateOf(error) ?? '');
}

/** An error of the driver as one of ours; the server's own words are kept. */
export function problemOf(error: unknown): SharedProblem | Unreachable {
  if (error instanceof SharedProblem || error instanceof Unreachable) return error;
  const words = error instanceof Error && error.message !== '' ? error.message : errorCodeOf(error);
  const state = stateOf(error);
  // What the server did not say itself came from the network between us.
  if (state === null || PASSING.test(state)) return new Unreachable(words);
  return new SharedProblem(`the database refused: ${words} (${state})`, FIXES[state] ?? SEE_RIGHTS);
}

const SEE_RIGHTS = 'check the address in the settings, and the rights of its role';
const FIXES: Readonly<Record<string, string>> = {
  '28P01': 'check the password in the address of the database',
  '3D000': 'make that database first, with createdb',
  '42501': "give the role the right to use the tables, or make them once with the owner's",
};

function stateOf(error: unknown): string | null {
  const code = (error as { code?: unknown }).code;
  const fromServer = (error as { severity?: unknown }).severity !== undefined;
  return fromServer && typeof code === 'string' ? code : null;
}
