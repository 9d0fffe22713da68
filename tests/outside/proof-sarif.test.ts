/**
 * The SARIF output against the standard (OASIS SARIF 2.1.0). The official schema could not be fetched; what is checked
 * here is our own transcription of the parts in use, from memory.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
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

async function sarif(): Promise<Sarif> {
  const { out, code } = await run(command, [join(folder.path, 'my trees'), '--sarif'], folder.path);
  expect(code).toBe(1);
  return JSON.parse(out) as Sarif;
}

test('the document has the structure of SARIF 2.1.0', async () => {
  const schema = JSON.parse(
    readFileSync('tests/outside/proof-sarif.schema.json', 'utf8'),
  ) as object;
  const ajv = new Ajv({ allErrors: true, formats: { uri: (text: string) => URL.canParse(text) } });
  const validate = ajv.compile(schema);
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
