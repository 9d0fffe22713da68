/**
 * What is said about broken copies of the worked example, word for word, so that every word has been read once:
 * `OHMWARD_GOLDEN=write npx vitest run tests/proof/broken-copies.test.ts` writes tests/proof/broken-copies.txt anew.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { formatIssue } from '../../src/source/format-issue.ts';
import { CIRCUIT, checkParsed, TREE_TEXT } from './example.ts';
import { mutants } from './mutate.ts';

const GOLDEN = 'tests/proof/broken-copies.txt';
const COPIES = 48;

test('what is said about broken copies is as it was read last', () => {
  const parsed = parseProcedure(TREE_TEXT, 'rake.yaml').value!;
  const said = mutants(parsed.draft, CIRCUIT, COPIES, 11)
    .map(({ words, draft }) => {
      const { issues } = checkParsed({ ...parsed, draft });
      const lines = issues.map((issue) => formatIssue(issue));
      return `# ${words}\n\n${lines.join('\n') || 'nothing'}\n`;
    })
    .join('\n');
  if (process.env['OHMWARD_GOLDEN'] === 'write') writeFileSync(GOLDEN, said);
  expect(said).toBe(readFileSync(GOLDEN, 'utf8'));
});
