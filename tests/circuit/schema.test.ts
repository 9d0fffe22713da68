/** The schema of circuit files, and the validator made from it, against ajv at run time. */
import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { expect, test } from 'vitest';
import validate from '../../src/circuit/generated/circuit.mjs';
import { parseYaml } from '../../src/source/parse-yaml.ts';
import { NAMES, textOf } from './shipped.ts';

const schema = JSON.parse(readFileSync('docs/schema/circuit.schema.json', 'utf8'));

test('every property has a title and says what it is, and its examples keep its own rule', () => {
  const ajv = new Ajv.default({ strict: false, discriminator: true });
  ajv.addSchema(schema, 'circuit');
  const visit = (node: unknown, path: string): void => {
    if (typeof node !== 'object' || node === null) return;
    const { properties, ...rest } = node as {
      properties?: Record<string, Record<string, unknown>>;
    };
    for (const [name, property] of Object.entries(properties ?? {})) {
      const at = `${path}/${name}`;
      if (property['const'] === undefined) {
        expect(property['title'], at).toBeTypeOf('string');
        expect(property['description'], at).toBeTypeOf('string');
      }
      const rule = property['$ref'] ? { $ref: `circuit${String(property['$ref'])}` } : property;
      for (const example of (property['examples'] as unknown[] | undefined) ?? [])
        expect(ajv.validate(rule, example), `${at}: ${String(example)}`).toBe(true);
      visit(property, at);
    }
    for (const [key, value] of Object.entries(rest))
      if (key !== 'examples') visit(value, `${path}/${key}`);
  };
  visit(schema, '');
});

test('the checked-in validator agrees with ajv on shipped circuits and on each with one key or value spoilt', () => {
  const ajv = new Ajv.default({ allErrors: true, strict: false, discriminator: true });
  const live = ajv.compile(schema);
  let refused = 0;
  for (const name of NAMES) {
    const data = JSON.parse(JSON.stringify(parseYaml(textOf(name), name).value!.data));
    expect(validate(data)).toBe(true);
    for (const spoilt of spoil(data)) {
      const ours = validate(spoilt);
      expect(ours, JSON.stringify(spoilt)).toBe(live(spoilt));
      if (!ours) refused += 1;
    }
  }
  expect(refused).toBeGreaterThan(300);
});

/** Copies of `data`, each with one value replaced or one key renamed. */
function spoil(data: unknown): unknown[] {
  if (typeof data !== 'object' || data === null)
    return [7, null, ['x']].filter((value) => value !== data);
  return Object.entries(data).flatMap(([key, value]) => {
    const { [key]: _, ...others } = data as Record<string, unknown>;
    return [
      ...spoil(value).map((one) => ({ ...data, [key]: one })),
      others,
      { ...others, [`${key}_`]: value },
    ];
  });
}
