/**
 * Broken procedure files and what is said about them, word for word. After a change of words on purpose, read what
 * `OHMWARD_GOLDEN=write npx vitest run tests/procedure/broken.test.ts` has written before you keep it.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ISSUE_CODES } from '../../src/commands/check/issue-codes.ts';
import { type Library, linkProcedure } from '../../src/procedure/link-procedure.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { formatIssue } from '../../src/source/format-issue.ts';
import type { Issue } from '../../src/source/issue.ts';
import { CIRCUIT } from '../proof/example.ts';
import { LIBRARY, modelFor } from '../proof/library.ts';

const FOLDER = 'tests/procedure/broken';
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.yaml'));
const PARTS = readdirSync(`${FOLDER}/families`).map((name) => {
  const parsed = parseProcedure(
    readFileSync(`${FOLDER}/families/${name}`, 'utf8'),
    `families/${name}`,
  );
  return parsed.value!;
});
const LIBRARY_HERE: Library = {
  procedures: new Map(PARTS.map((parsed) => [parsed.draft.procedure, parsed])),
  circuits: new Map([[CIRCUIT.name, CIRCUIT]]),
  cautions: LIBRARY.cautions,
};

function issuesOf(name: string, text: string): readonly Issue[] {
  const parsed = parseProcedure(text, name);
  if (!parsed.readable) return parsed.issues;
  // Cautions come with the library; one file shows what is said when they are missing from it.
  const library =
    name === 'without-cautions.yaml' ? { ...LIBRARY_HERE, cautions: [] } : LIBRARY_HERE;
  const linked = linkProcedure(parsed.readable, library, {
    drive: 'combustion',
    modelOf: (circuit) => modelFor(circuit, 16),
  });
  return [...parsed.issues, ...linked.issues];
}

describe('a broken file is told word for word', () => {
  test.each(FILES)('%s', (name) => {
    const text = readFileSync(`${FOLDER}/${name}`, 'utf8');
    const issues = issuesOf(name, text);
    expect(issues.length).toBeGreaterThan(0);
    const texts = new Map([
      [name, text],
      ...PARTS.map(({ source }) => [source.file, source.text] as const),
    ]);
    const said = `${issues.map((issue) => formatIssue(issue, texts.get(issue.at.file))).join('\n')}\n`;
    const golden = `${FOLDER}/${name.replace('.yaml', '.txt')}`;
    if (process.env['OHMWARD_GOLDEN'] === 'write') writeFileSync(golden, said);
    expect(existsSync(golden), golden).toBe(true);
    expect(said).toBe(readFileSync(golden, 'utf8'));
  });
});

test('every code of the text, the links and the structure is shown by some file', () => {
  const names = Object.keys(ISSUE_CODES);
  const between = (first: string, after: string) => {
    const [from, to] = [names.indexOf(first), names.indexOf(after)];
    if (from < 0 || to <= from) throw new Error(`no codes from ${first} to ${after}`);
    return names.slice(from, to);
  };
  const wanted = [
    ...between('file-too-large', 'unknown-kind'),
    ...between('unknown-key', 'repeated-name'),
    ...between('unknown-step', 'wrong-conclusion'),
    'unknown-procedure',
    'unknown-circuit',
    // A file too large to keep here is shown by the tests of src/source.
  ].filter((code) => code !== 'file-too-large');
  const shown = new Set(
    FILES.flatMap((name) =>
      issuesOf(name, readFileSync(`${FOLDER}/${name}`, 'utf8')).map(({ code }) => code),
    ),
  );
  expect(wanted.filter((code) => !shown.has(code))).toEqual([]);
});

test('calls of calls make no tree that is longer than anybody could follow', () => {
  const chain = (name: string, step: (n: number) => string, end: string, needs = '') =>
    parseProcedure(
      [
        `procedure: ${name}\ntitle: Many steps\n${needs}start: s0\nsteps:`,
        ...Array.from({ length: 40 }, (_, n) => `  s${n}: ${step(n)}`),
        `  s40: ${end}\n`,
      ].join('\n'),
      `${name}.yaml`,
    ).value!;
  const inner = chain(
    'inner',
    (n) => `{ say: Do it., go: s${n + 1} }`,
    '{ result: done }',
    'needs: { }\n',
  );
  const outer = chain(
    'outer',
    (n) => `{ use: inner, results: { done: s${n + 1} } }`,
    '{ conclude: [], say: Nothing was found., repair: None. }',
  );
  const linked = linkProcedure(
    outer,
    { procedures: new Map([['inner', inner]]), circuits: new Map(), cautions: [] },
    { drive: 'combustion', modelOf: (circuit) => modelFor(circuit, 16) },
  );
  expect(linked.value).toBeNull();
  expect(linked.issues.map(({ code, at }) => `${code} ${at.file}:${at.line}`)).toEqual([
    'file-too-large inner.yaml:5',
  ]);
});

test('the unbroken tree behind them has no findings', () => {
  const text = readFileSync(`${FOLDER}/missing-why.yaml`, 'utf8').replace(
    '    measure:',
    '    why: It tells.\n    measure:',
  );
  expect(issuesOf('whole.yaml', text)).toEqual([]);
});
