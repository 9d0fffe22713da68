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
/** What lies in the rows that were sent, and not in the address, the rights or the tables: data, constraints, limits. */
const IN_ROWS = /^(22|23|54)/;

/** Whether an error of the driver is about the rows that were sent; others may still go. */
export function isInRows(error: unknown): boolean {
  return IN_ROWS.test(stateOf(error) ?? '');
}

/** An error of the driver as one of ours; the server's own words are kept. */
export function problemOf(error: unknown): SharedProblem | Unreachable {
  if (error instanceof SharedProblem || error instanceof Unreachable) return error;
  const words = error instanceof Error && error.message !== '' ? error.message : errorCodeOf(error);
  const state = stateOf(error);
  const mistake =
    state === null ? MISTAKES.find(({ sign }) => sign.test(`${codeOf(error)} ${words}`)) : null;
  if (mistake) return new SharedProblem(`${mistake.words} (${words})`, mistake.fix);
  // What the server did not say itself came from the network between us.
  if (state === null || PASSING.test(state)) return new Unreachable(words);
  return new SharedProblem(`the database refused: ${words} (${state})`, FIXES[state] ?? SEE_RIGHTS);
}

/** Throws for an address that is none; the driver would look for a host called "base". */
export function expectAddress(url: string): void {
  if (/^(postgres(ql)?|socket):/i.test(url) || url.startsWith('/')) return;
  const { words, fix } = NO_ADDRESS;
  throw new SharedProblem(words, fix);
}

const SEE_RIGHTS = 'check the address in the settings, and the rights of its role';
const FIXES: Readonly<Record<string, string>> = {
  '28P01': 'check the password in the address of the database',
  '3D000': 'make that database first, with createdb',
  '42501': "give the role the right to use the tables, or make them once with the owner's",
};

const NO_ADDRESS = {
  words: 'this is not a database address',
  fix: 'write it as postgresql://NAME@HOST/DATABASE; characters such as @ : / in a password as %40 %3A %2F',
};

/** What no network that is back would cure: the address, and what the driver, TLS and the files it names say of it. */
const MISTAKES: readonly { readonly sign: RegExp; readonly words: string; readonly fix: string }[] =
  [
    {
      sign: /ERR_INVALID_URL|Invalid URL/,
      ...NO_ADDRESS,
    },
    {
      sign: /ERR_SOCKET_BAD_PORT/,
      words: 'the port of the database is none',
      fix: 'check the port in the address, or PGPORT',
    },
    {
      sign: /SECURITY WARNING: Using sslmode/,
      words: 'sslmode in the address needs the certificate of an authority',
      fix: 'name it in the address, sslrootcert=FILE, or write sslmode=verify-full',
    },
    {
      sign: /does not support SSL/,
      words: 'this server offers no encrypted connection',
      fix: 'turn it on there (ssl = on), or drop sslmode from the address on a network you trust',
    },
    {
      sign: /ERR_TLS_CERT_ALTNAME_INVALID/,
      words: 'the certificate of the server is for another host name',
      fix: 'use the host name in its certificate',
    },
    {
      sign: /SELF_SIGNED|UNABLE_TO_VERIFY|UNABLE_TO_GET_ISSUER|CERT_[A-Z_]+/,
      words: 'the certificate of the server is not trusted',
      fix: 'name the certificate of its authority in the address: sslrootcert=FILE',
    },
    {
      sign: /(ENOENT|EACCES|EISDIR|EPERM|ENOTDIR)\b.*\bopen\b/,
      words: 'a file that the address names cannot be read',
      fix: 'check sslrootcert, sslcert and sslkey in the address',
    },
    {
      sign: /^(ERR_TLS|ERR_SSL|ERR_OSSL)/,
      words: 'the encrypted connection was refused',
      fix: 'check the certificates that the address names, and those of the server',
    },
    {
      sign: /password must be a string/,
      words: 'the server asks for a password',
      fix: 'put it in the address, or set PGPASSWORD',
    },
  ];

function codeOf(error: unknown): string {
  const code = (error as { code?: unknown }).code;
  return typeof code === 'string' ? code : '';
}

function stateOf(error: unknown): string | null {
  const code = (error as { code?: unknown }).code;
  const fromServer = (error as { severity?: unknown }).severity !== undefined;
  return fromServer && typeof code === 'string' ? code : null;
}
