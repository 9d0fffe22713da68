/** Which errors of the driver a person must mend, and which pass with the network: what is sent again rests on it. */
import { expect, it } from 'vitest';
import {
  isInRows,
  problemOf,
  SharedProblem,
  Unreachable,
} from '../../src/records/shared/shared-problem.ts';

/** An error of the system or of TLS, which has a code and no severity. */
const fromSystem = (code: string) =>
  Object.assign(new Error('told by TLS or the system'), { code });
/** An error that the server sent: SQLSTATE of PostgreSQL's appendix A. */
const fromServer = (code: string) =>
  Object.assign(new Error('told by the server'), { code, severity: 'FATAL' });

it.each([
  ['DEPTH_ZERO_SELF_SIGNED_CERT', /not trusted/],
  ['UNABLE_TO_VERIFY_LEAF_SIGNATURE', /not trusted/],
  ['CERT_HAS_EXPIRED', /not trusted/],
  ['ERR_TLS_CERT_ALTNAME_INVALID', /another host name/],
  ['ERR_SOCKET_BAD_PORT', /the port of the database is none/],
])('%s must be mended', (code, words) => {
  const problem = problemOf(fromSystem(code));
  expect(problem).toBeInstanceOf(SharedProblem);
  expect(problem.message).toMatch(words);
});

it.each(['ECONNREFUSED', 'ENOTFOUND', 'ECONNRESET'])('%s passes', (code) => {
  expect(problemOf(fromSystem(code))).toBeInstanceOf(Unreachable);
});

it.each([
  ['admin_shutdown', '57P01'],
  ['crash_shutdown', '57P02'],
  ['cannot_connect_now, while it starts or recovers', '57P03'],
  ['connection_failure', '08006'],
  ['too_many_connections', '53300'],
  ['serialization_failure', '40001'],
  ['deadlock_detected', '40P01'],
])('%s of the server passes', (_, state) => {
  expect(problemOf(fromServer(state))).toBeInstanceOf(Unreachable);
});

it.each([
  ['invalid_password', '28P01', /check the password/],
  ['invalid_catalog_name', '3D000', /make that database first/],
  ['insufficient_privilege', '42501', /the right to use the tables/],
  ['undefined_table', '42P01', /the rights of its role/],
])('%s of the server must be mended', (_, state, fix) => {
  const problem = problemOf(fromServer(state));
  expect(problem).toBeInstanceOf(SharedProblem);
  expect((problem as SharedProblem).fix).toMatch(fix);
});

it('classes 22, 23 and 54 of the server are about the rows that were sent, and nothing of the system is', () => {
  for (const state of ['22021', '23505', '54000'])
    expect([state, isInRows(fromServer(state))]).toEqual([state, true]);
  expect(isInRows(fromServer('57P01'))).toBe(false);
  expect(isInRows(fromServer('42501'))).toBe(false);
  expect(isInRows(fromSystem('23505'))).toBe(false);
});
