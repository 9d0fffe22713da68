/** What a validator finds, as issues with places and ways out. */
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { parseYaml } from '../../src/source/parse-yaml.ts';
import { type SchemaError, schemaFindings, schemaIssues } from '../../src/source/schema-issues.ts';

const ajv = new Ajv({ allErrors: true, verbose: true, discriminator: true });
const validate = ajv.compile({
  type: 'object',
  required: ['name'],
  additionalProperties: false,
  properties: {
    name: { type: 'string', minLength: 2, maxLength: 5 },
    state: { enum: ['key-off', 'key-on'] },
    minutes: { type: 'number', minimum: 1, maximum: 9 },
    codes: {
      type: 'array',
      maxItems: 2,
      uniqueItems: true,
      items: { type: 'string', pattern: '^P', examples: ['P0335'] },
    },
    limit: { type: 'string', examples: ['4.75 V'] },
    either: { oneOf: [{ type: 'string' }, { type: 'array', items: { type: 'string' } }] },
    steps: { type: 'object', minProperties: 1, propertyNames: { pattern: '^[a-z]+$' } },
    part: {
      type: 'object',
      required: ['kind'],
      discriminator: { propertyName: 'kind' },
      oneOf: [
        { properties: { kind: { const: 'fuse' } }, required: ['kind'] },
        { properties: { kind: { const: 'relay' } }, required: ['kind'] },
      ],
    },
  },
});

function found(text: string): string[] {
  const source = parseYaml(text, 'x.yaml').value!;
  expect(validate(source.data)).toBe(false);
  return schemaIssues(validate.errors as SchemaError[], source).map(
    ({ code, at, words, fix }) =>
      `${code} ${at.line}:${at.column} ${words}${fix ? `; ${fix}` : ''}`,
  );
}

describe('each kind of finding', () => {
  test.each([
    ['nam: ab\nname: ab', ['unknown-key 1:1 no key "nam" is known here; did you mean "name"?']],
    [
      'cleared: ab\nname: ab',
      [
        'unknown-key 1:1 no key "cleared" is known here; leave it out: what is good is told by the readings that rule the rest out',
      ],
    ],
    [
      'name: ab\nzzzzzz: 1',
      [
        'unknown-key 2:1 no key "zzzzzz" is known here; known here: name, state, minutes, codes, limit, either, steps, part',
      ],
    ],
    ['state: key-on', ['missing-key 1:1 this file lacks the key "name"; add "name:"']],
    [
      'name: ab\nstate: key_on',
      ['unknown-choice 2:8 "state" cannot be "key_on"; did you mean "key-on"?'],
    ],
    [
      'name: ab\nstate: flying',
      ['unknown-choice 2:8 "state" cannot be "flying"; one of: key-off, key-on'],
    ],
    ['name: ab\nlimit: 100', ['wrong-type 2:8 "limit" has no unit: 100; for example: 4.75 V']],
    [
      '{ name: ab, limit: 4,5 V }',
      [
        'wrong-type 1:20 "limit" has no unit: 4; for example: 4.75 V',
        'unknown-key 1:22 no key "5 V" is known here; a comma ends a value here: write "4.5 V" with a point',
      ],
    ],
    ['name: ab\nminutes: 5 min', ['wrong-type 2:10 "minutes" must be a number; write 5 alone']],
    ['name: [a]', ['wrong-type 1:1 "name" must be a text']],
    ['name: a', ['out-of-bounds 1:7 "name" must have at least 2 letters']],
    ['name: abcdef', ['out-of-bounds 1:7 "name" must have at most 5 letters']],
    ['name: ab\nminutes: 0', ['out-of-bounds 2:10 "minutes" must be 1 or more']],
    ['name: ab\nminutes: 10', ['out-of-bounds 2:10 "minutes" must be 9 or less']],
    [
      'name: ab\ncodes: [P1, X2]',
      ['bad-form 2:13 item 2 of "codes" is not written the way it must be; for example: P0335'],
    ],
    [
      'name: ab\ncodes: [P1, P2, P3]',
      ['out-of-bounds 2:1 "codes" must list at most 2 things; leave out what is not needed'],
    ],
    ['name: ab\ncodes: [P1, P1]', ['out-of-bounds 2:1 "codes" names item 2 twice']],
    ['name: ab\nsteps: {}', ['out-of-bounds 2:1 "steps" must have at least 1 key']],
    [
      'name: ab\nsteps: { Bad Name: 1 }',
      ['bad-name 2:10 "Bad Name" cannot be a name here; use small letters, digits and hyphens'],
    ],
    [
      'name: ab\npart: { kind: fuze }',
      ['unknown-choice 2:15 "kind" of "part" cannot be "fuze"; did you mean "fuse"?'],
    ],
  ])('%j', (text, expected) => {
    expect(found(text)).toEqual(expected);
  });
});

test('all findings at once, in the order of the file, none twice', () => {
  const all = found('name: a\nstate: off\nminutes: many\nzz: 1');
  expect(all.map((line) => line.split(' ')[0])).toEqual([
    'out-of-bounds',
    'unknown-choice',
    'wrong-type',
    'unknown-key',
  ]);
});

test('a missing word that decides a kind in one place hides none that is missing elsewhere', () => {
  const validateTwo = ajv.compile({
    type: 'object',
    properties: {
      part: {
        type: 'object',
        required: ['kind'],
        discriminator: { propertyName: 'kind' },
        oneOf: [{ properties: { kind: { const: 'fuse' } }, required: ['kind'] }],
      },
      capture: { type: 'object', required: ['kind'] },
    },
  });
  expect(validateTwo({ part: {}, capture: {} })).toBe(false);
  const findings = schemaFindings(validateTwo.errors as SchemaError[], []);
  expect(findings.map(({ at, code }) => [at, code])).toEqual([
    ['/part', 'missing-key'],
    ['/capture', 'missing-key'],
  ]);
});

test('a wrapping keyword is silent when a finding inside it says more', () => {
  expect(found('name: ab\neither: [1]')).toEqual([
    'wrong-type 2:10 item 1 of "either" must be a text',
  ]);
});

describe('findings in a value without lines', () => {
  test('have a pointer for a place, below what the value is part of', () => {
    expect(validate({ name: 'a', codes: ['P0335', 3], minuts: 4 })).toBe(false);
    const findings = schemaFindings(validate.errors as SchemaError[], ['params']);
    expect(findings.map(({ at, code }) => [at, code])).toEqual([
      ['/params', 'unknown-key'],
      ['/params/name', 'out-of-bounds'],
      ['/params/codes/1', 'wrong-type'],
    ]);
    expect(findings[0]?.fix).toBe('did you mean "minutes"?');
    expect(findings[2]?.words).toBe('item 2 of "params.codes" must be a text');
  });
});
