/**
 * The SARIF output against the schema of the standard (OASIS SARIF 2.1.0, revision rtm.5), as the npm package
 * @microsoft/jest-sarif carries it.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import Draft4 from 'ajv-draft-04';
import { afterAll, expect, test } from 'vitest';
import { command } from '../../src/commands/check.ts';
import { CIRCUIT_TEXT, TREE_TEXT } from '../proof/example.ts';
import { folderWith, run } from '../proof/run-command.ts';

interface Sarif {
  runs: {
    tool: { driver: { rules: { id: string }[] } };
    results: {
      ruleId: string;
      ruleIndex: number;
      level: string;
      locations: {
        physicalLocation: { artifactLocation: { uri: string }; region: { startLine: number } };
      }[];
      partialFingerprints: Record<string, string>;
    }[];
  }[];
}

const folder = folderWith({
  'my trees/rake-wheel-no-speed.yaml': TREE_TEXT.replace(
    'go: high-wire }',
    'go: coil-bad }',
  ).replace(/ +why: The pickup by itself.*\n/, ''),
  'my trees/circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT,
});
afterAll(folder.remove);

let document: Promise<Sarif> | undefined;
/** Made once: no test changes it. */
function sarif(): Promise<Sarif> {
  document ??= made();
  return document;
}
async function made(): Promise<Sarif> {
  const { out, code } = await run(command, [join(folder.path, 'my trees'), '--sarif'], folder.path);
  expect(code).toBe(1);
  return JSON.parse(out) as Sarif;
}

test('the document has the structure of SARIF 2.1.0', async () => {
  const path = createRequire(import.meta.url).resolve('@microsoft/jest-sarif');
  const schema = readFileSync(join(dirname(path), 'schemas/sarif-2.1.0-rtm.5.json'), 'utf8');
  // The schema names formats (uri, date-time) that are told, not tested.
  const ajv = new Draft4.default({
    allErrors: true,
    strict: false,
    unicodeRegExp: false,
    validateFormats: false,
  });
  const validate = ajv.compile(JSON.parse(schema) as object);
  expect(validate(await sarif()), JSON.stringify(validate.errors)).toBe(true);
  expect(validate({ version: '2.1.0', runs: [{ results: [] }] })).toBe(false);
});

test('results point at their rules, and places are relative with per cent signs for blanks', async () => {
  const { runs } = await sarif();
  const { tool, results } = runs[0]!;
  for (const { ruleId, ruleIndex } of results)
    expect(tool.driver.rules[ruleIndex]!.id).toBe(ruleId);
  expect(new Set(results.map(({ level }) => level))).toEqual(new Set(['error', 'warning']));
  for (const { locations } of results)
    expect(locations[0]!.physicalLocation.artifactLocation.uri).toBe(
      'my%20trees/rake-wheel-no-speed.yaml',
    );
});

test('fingerprints do not depend on lines', async () => {
  const before = (await sarif()).runs[0]!.results.map(
    ({ partialFingerprints }) => partialFingerprints['ohmward/v1'],
  );
  expect(new Set(before).size).toBe(before.length);
});
