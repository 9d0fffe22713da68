/** docs/writing-procedures.md says only what is so. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ISSUE_CODES } from '../../src/commands/check/issue-codes.ts';
import { tableText } from '../../src/commands/check/report-text.ts';
import { command as check } from '../../src/commands/check.ts';
import { command as draw } from '../../src/commands/draw.ts';
import { command as fresh } from '../../src/commands/new.ts';
import { CIRCUIT_TEXT, checkExample, FIRST_PART, TREE_TEXT } from './example.ts';

const PAGE = readFileSync('docs/writing-procedures.md', 'utf8');

test('its example is proved without a finding', () => {
  const { issues, proof } = checkExample();
  expect(issues).toEqual([]);
  expect(proof!.rows.length).toBeGreaterThan(20);
});

test('the part shown first is the beginning of the whole', () => {
  expect(TREE_TEXT.startsWith(FIRST_PART)).toBe(true);
  expect(CIRCUIT_TEXT).toMatch(/^circuit: rake-wheel-pickup\n/);
});

test('the lines of the table and of the slip are those that the program prints', () => {
  const { linked, proof } = checkExample();
  const lines = tableText({
    path: '',
    linked: linked!,
    proof: proof!,
    model: undefined as never,
  }).split('\n');
  const told = PAGE.split('\n').filter((one) => / 100 % +[a-z-]+ +ok +\d/.test(one));
  expect(told.length).toBeGreaterThan(0);
  for (const line of told) expect(lines).toContain(line);
  const slip = checkExample(
    ['go: high-wire }', 'go: swap }'],
    ['go: coil-bad }', 'go: high-wire }'],
    ['go: swap }', 'go: coil-bad }'],
  );
  const lost = slip.issues.find(({ words }) => words.startsWith('"good" of "coil" loses'))!;
  const [, said] = PAGE.match(/^error\[wrong-conclusion\] (.*), \.\.\.$/m)!;
  expect(lost.words.startsWith(said!)).toBe(true);
  expect(PAGE).toContain(`  ${lost.fix}`);
});

test('the findings and options it names exist', () => {
  const codes = [...PAGE.matchAll(/^\| (`[^|]*`) \|/gm)].flatMap(([, cell]) =>
    [...cell!.matchAll(/`([a-z-]+)`/g)].map((match) => match[1]!),
  );
  expect(codes.length).toBeGreaterThan(6);
  for (const code of codes) expect(ISSUE_CODES).toHaveProperty(code);
  const used = [...PAGE.matchAll(/ohmward (check|draw|new)([^\n`]*)/g)].flatMap(([, name, rest]) =>
    [...rest!.matchAll(/--([a-z]+)/g)].map(([, option]) => [name!, option!] as const),
  );
  expect(used.length).toBeGreaterThan(4);
  for (const [name, option] of used) {
    const { options } = { check, draw, new: fresh }[name as 'check' | 'draw' | 'new'];
    expect(Object.keys(options), option).toContain(option);
  }
});
