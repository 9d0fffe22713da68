/** What a job file says is known is held against the circuit, each mistake at its line. */
import { expect, test } from 'vitest';
import { knownIssues } from '../../src/commands/check/known-issues.ts';
import { sharesIssues } from '../../src/commands/check/shares-issues.ts';
import { loadJob } from '../../src/procedure/load-job.ts';
import { shipped } from '../circuit/shipped.ts';

const CIRCUIT = shipped('hall-module-fed');

function issuesOf(...lines: readonly string[]) {
  const text = ['complaint: stalls', 'known:', ...lines, ''].join('\n');
  const { value, issues } = loadJob(text, 'job.yaml');
  expect(issues).toEqual([]);
  return knownIssues({ path: 'job.yaml', text }, value?.job.known, CIRCUIT);
}

test('what is right has no issue', () => {
  expect(
    issuesOf(
      '  - { what: battery at rest, is: 12.4 V, from: measured }',
      '  - { what: module.signal.pull, is: 4.7 kohm, from: maker }',
      '  - { what: module.signal.pull-to, is: battery, from: label }',
    ),
  ).toEqual([]);
});

test.each([
  ['what: batery at rest, is: 12.4 V, from: measured', 'unknown-quantity', 11],
  ['what: battery at rest, is: 12.4 A, from: measured', 'bad-value', 32],
  ['what: battery at rest, is: 5 kV, from: measured', 'out-of-reason', 32],
  ['what: battery at rest, is: 12 V, from: hearsay', 'unknown-source', 44],
])('{ %s } is told at its place', (entry, code, column) => {
  const issues = issuesOf(
    '  - { what: battery.ohms, is: 20 mohm, from: maker }',
    `  - { ${entry} }`,
  );
  expect(issues).toHaveLength(1);
  expect(issues[0]).toMatchObject({ code, at: { file: 'job.yaml', line: 4, column: column + 2 } });
  expect(issues[0]?.fix).not.toBe('');
});

test('a neighbour that does not fit is told at its line, and where there is no circuit', () => {
  const text = [
    'complaint: stalls',
    'shares:',
    '  - { name: oil sensor, shares: [feed] }',
    '  - { name: module, shares: [feed] }',
    '',
  ].join('\n');
  const { value } = loadJob(text, 'job.yaml');
  const issues = (circuit: typeof CIRCUIT | null) =>
    sharesIssues({ path: 'job.yaml', text }, value?.job.shares, circuit);
  expect(issues(CIRCUIT)).toMatchObject([{ code: 'bad-share', at: { line: 4 } }]);
  expect(issues(null)).toMatchObject([{ code: 'no-circuit', at: { line: 2 } }]);
});

test('an entry that says not all of it is refused by its shape', () => {
  const { value, issues } = loadJob(
    'complaint: x\nknown:\n  - { what: battery at rest, is: 12 V }\n',
    'job.yaml',
  );
  expect(value).toBeNull();
  expect(issues[0]).toMatchObject({ at: { line: 3 } });
});
