/** What a schema's validator found, as issues at their place in the file, each with a way out where there is one. */
import { countWords } from '../quantity/count-words.ts';
import type { Issue } from './issue.ts';
import { nearestName } from './nearest-name.ts';
import type { Path, YamlSource } from './yaml-source.ts';

/** One finding of an ajv validator compiled with `verbose`, so far as it is used here. */
export interface SchemaError {
  readonly keyword: string;
  /** JSON pointer to the value. */
  readonly instancePath: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly message?: string;
  readonly schema?: unknown;
  readonly parentSchema?: unknown;
  readonly data?: unknown;
  /** Set by `propertyNames` on the findings about a key. */
  readonly propertyName?: string;
}

/** The first findings tell enough, and each one costs a search of the file. */
const MAX_FINDINGS = 50;

/** Keywords that only wrap the findings of their branches. */
const WRAPPERS = new Set(['if', 'anyOf', 'oneOf', 'allOf', 'propertyNames']);

/** The schemas' pattern for names begins like this. */
const NAME_PATTERN = /^\^\[a-z/;
const NAME_RULE = 'use small letters, digits and hyphens';

/** Issues in the order of the file. Wrapping keywords are left out when a finding inside them says more. */
export function schemaIssues(
  errors: readonly SchemaError[] | null | undefined,
  source: YamlSource,
): Issue[] {
  const issues = telling(errors).map((error) => issueOf(error, source));
  const seen = new Set<string>();
  return issues
    .filter((issue) => {
      const key = `${issue.at.line}:${issue.at.column}:${issue.words}`;
      return seen.has(key) ? false : seen.add(key);
    })
    .sort((a, b) => a.at.line - b.at.line || a.at.column - b.at.column);
}

/** What a shape lacks where the YAML reader has left something out, which it has told. */
const FOLLOWS: ReadonlySet<string> = new Set(['missing-key', 'wrong-type', 'out-of-bounds']);
/** What the YAML reader tells and leaves nothing out for: of a key that stands there twice the first is kept. */
const KEPT: ReadonlySet<string> = new Set(['repeated-key', 'invisible-character']);

/** What the YAML reader has `told`, and what the schema finds beside it. */
export function shapeIssues(
  told: readonly Issue[],
  errors: readonly SchemaError[] | null | undefined,
  source: YamlSource,
): Issue[] {
  const isWhole = told.every(({ code, severity }) => severity !== 'error' || KEPT.has(code));
  const found = schemaIssues(errors, source);
  return [...told, ...found.filter(({ code }) => isWhole || !FOLLOWS.has(code))];
}

/** A finding in a value that came from no file. */
export interface SchemaFinding {
  /** JSON pointer to what is wrong. */
  readonly at: string;
  readonly code: string;
  readonly words: string;
  readonly fix?: string;
}

/** The same for a value that has no lines; `below` are the names above it that stand in the words. */
export function schemaFindings(
  errors: readonly SchemaError[] | null | undefined,
  below: Path = [],
): SchemaFinding[] {
  const above = below.map((name) => `/${name}`).join('');
  const findings = telling(errors).map((error): SchemaFinding => {
    const { code, words, fix } = describe(error, [...below, ...pathOfPointer(error.instancePath)]);
    return { at: `${above}${error.instancePath}`, code, words, ...(fix ? { fix } : {}) };
  });
  const seen = new Set<string>();
  return findings.filter(({ at, words }) => {
    const key = `${at}:${words}`;
    return seen.has(key) ? false : seen.add(key);
  });
}

function telling(errors: readonly SchemaError[] | null | undefined): readonly SchemaError[] {
  const all = errors ?? [];
  const groups = new Set(all.flatMap(({ instancePath }) => above(instancePath)));
  const tags = all.filter(({ keyword }) => keyword === 'discriminator');
  const discriminating = all.filter(
    (error) =>
      !WRAPPERS.has(error.keyword) &&
      !tags.some((other) => saysMore(other, error)) &&
      !(error.keyword === 'type' && groups.has(error.instancePath)),
  );
  return (discriminating.length > 0 ? discriminating : all).slice(0, MAX_FINDINGS);
}

/** A missing word that decides the kind of a thing is told once, with the words there are. */
function saysMore(other: SchemaError, error: SchemaError): boolean {
  return (
    other.keyword === 'discriminator' &&
    error.keyword === 'required' &&
    other.instancePath === error.instancePath &&
    other.params['tag'] === error.params['missingProperty']
  );
}

/**
 * The pointers above a finding. Where a list or a group may stand, what is wrong inside the one that stands there says
 * more than that it is not the other.
 */
function above(pointer: string): string[] {
  const names = pointer.split('/');
  return names.slice(1).map((_, index) => names.slice(0, index + 1).join('/'));
}

function issueOf(error: SchemaError, source: YamlSource): Issue {
  const path = pathOfPointer(error.instancePath);
  const key = error.propertyName ?? unknownKey(error);
  const untagged = error.keyword === 'discriminator' && error.params['tagValue'] === undefined;
  const tag = error.keyword === 'discriminator' && !untagged ? [String(error.params['tag'])] : [];
  const at =
    key !== null
      ? source.locate([...path, key], 'key')
      : source.locate([...path, ...tag], untagged ? 'key' : keyOrValue(error));
  const { code, words, fix } = describe(error, path);
  return { code, severity: 'error', at, words, ...(fix ? { fix } : {}) };
}

/** A missing key is shown at the key of the thing that lacks it. */
function keyOrValue(error: SchemaError): 'key' | 'value' {
  return error.keyword === 'required' ? 'key' : 'value';
}

function unknownKey(error: SchemaError): string | null {
  const name = error.params['additionalProperty'];
  return error.keyword === 'additionalProperties' && typeof name === 'string' ? name : null;
}

interface MistakeWords {
  readonly code: string;
  readonly words: string;
  readonly fix?: string | undefined;
}

/** Keys that early versions knew, and what to do with them now. */
const GONE_KEYS: ReadonlyMap<string, string> = new Map([
  ['cleared', 'leave it out: what is good is told by the readings that rule the rest out'],
]);

function describe(error: SchemaError, path: Path): MistakeWords {
  const { params } = error;
  const where = placeWords(path);
  if (error.propertyName !== undefined)
    return {
      code: 'bad-name',
      words: `"${error.propertyName}" cannot be a name here`,
      fix: NAME_RULE,
    };
  if (error.keyword === 'additionalProperties') {
    const typed = String(params['additionalProperty']);
    return {
      code: 'unknown-key',
      words: `no key "${typed}" is known here`,
      fix: GONE_KEYS.get(typed) ?? keyFix(error, typed),
    };
  }
  if (error.keyword === 'required')
    return {
      code: 'missing-key',
      words: `${where} lacks the key "${String(params['missingProperty'])}"`,
      fix: missingFix(error),
    };
  if (error.keyword === 'enum' || error.keyword === 'const')
    return choice(error, where, allowedOf(error));
  if (error.keyword === 'discriminator' && params['tagValue'] === undefined)
    return {
      code: 'missing-key',
      words: `${where} lacks the key "${String(params['tag'])}"`,
      fix: `one of: ${tagsOf(error).join(', ')}`,
    };
  if (error.keyword === 'discriminator')
    return choice(
      { ...error, data: params['tagValue'] },
      `"${String(params['tag'])}" of ${where}`,
      tagsOf(error),
    );
  if (error.keyword === 'type' && typeof error.data === 'number' && hasUnit(exampleFix(error)))
    return {
      code: 'wrong-type',
      words: `${where} has no unit: ${error.data}`,
      fix: exampleFix(error),
    };
  if (error.keyword === 'type')
    return {
      code: 'wrong-type',
      words: `${where} must be ${typeWords(params['type'])}`,
      fix: numberAlone(error) ?? exampleFix(error),
    };
  if (error.keyword === 'pattern')
    return {
      code: 'bad-form',
      words: `${where} is not written the way it must be`,
      fix:
        exampleFix(error) ?? (NAME_PATTERN.test(String(params['pattern'])) ? NAME_RULE : undefined),
    };
  const isTooMany = error.keyword === 'maxItems' || error.keyword === 'maxProperties';
  return {
    code: 'out-of-bounds',
    words: `${where} ${boundWords(error)}`,
    ...(isTooMany ? { fix: 'leave out what is not needed' } : {}),
  };
}

/** `"steps.feed"`, `item 2 of "codes"`. */
function placeWords(path: Path): string {
  const last = path[path.length - 1];
  if (last === undefined) return 'this file';
  if (!/^\d+$/.test(String(last))) return `"${path.join('.')}"`;
  return `item ${Number(last) + 1} of ${placeWords(path.slice(0, -1))}`;
}

function boundWords({ keyword, params, message }: SchemaError): string {
  const limit = Number(params['limit']);
  switch (keyword) {
    case 'minimum':
      return `must be ${limit} or more`;
    case 'maximum':
      return `must be ${limit} or less`;
    case 'exclusiveMinimum':
      return `must be more than ${limit}`;
    case 'minLength':
      return `must have at least ${countWords(limit, 'letter')}`;
    case 'maxLength':
      return `must have at most ${countWords(limit, 'letter')}`;
    case 'minItems':
      return `must list at least ${countWords(limit, 'thing')}`;
    case 'maxItems':
      return `must list at most ${countWords(limit, 'thing')}`;
    case 'minProperties':
      return `must have at least ${countWords(limit, 'key')}`;
    case 'maxProperties':
      return `must have no more than ${countWords(limit, 'key')}`;
    case 'uniqueItems':
      return `names item ${Number(params['j']) + 1} twice`;
    default:
      return message ?? 'is not allowed';
  }
}

/** Where a bare number is wanted, the one that a text such as `5 min` begins with. */
function numberAlone({ params, data }: SchemaError): string | undefined {
  const number = /^\d+(?:\.\d+)?(?=\s?[a-zA-Z])/.exec(typeof data === 'string' ? data : '')?.[0];
  const isWanted = ['number', 'integer'].includes(String(params['type']));
  return isWanted && number !== undefined ? `write ${number} alone` : undefined;
}

/** Whether an example is a number with a unit. */
function hasUnit(example: string | undefined): boolean {
  return /: \d[\d.]* [a-zA-Z]/.test(example ?? '');
}

/** What is left of a value such as 4,5 V when its comma has ended it. */
const AFTER_COMMA = /^\d+ ?[a-zA-Z]*$/;

function keyFix(error: SchemaError, typed: string): string {
  if (AFTER_COMMA.test(typed))
    return `a comma ends a value here: write "${beforeKey(error.data, typed)}.${typed}" with a point`;
  const known = Object.keys(recordOf(recordOf(error.parentSchema)['properties']));
  const near = nearestName(typed, known);
  if (near !== null) return `did you mean "${near}"?`;
  return known.length > 0 ? `known here: ${known.join(', ')}` : 'remove it';
}

/** The number that stands before a key in its group; nothing where it is something else. */
function beforeKey(group: unknown, key: string): string {
  const entries = Object.entries(recordOf(group));
  const before = entries[entries.findIndex(([name]) => name === key) - 1]?.[1];
  return typeof before === 'number' ? String(before) : '';
}

function choice(error: SchemaError, where: string, allowed: readonly string[]): MistakeWords {
  const typed = typeof error.data === 'string' ? error.data : null;
  const near = typed === null ? null : nearestName(typed, allowed);
  return {
    code: 'unknown-choice',
    words: typed === null ? `${where} must be one of a few words` : `${where} cannot be "${typed}"`,
    fix: near !== null ? `did you mean "${near}"?` : `one of: ${allowed.join(', ')}`,
  };
}

function allowedOf(error: SchemaError): string[] {
  const listed = error.params['allowedValues'];
  return Array.isArray(listed) ? listed.map(String) : [String(error.params['allowedValue'])];
}

/** The allowed words of a discriminated union: read from its branches where they are written out in place. */
function tagsOf(error: SchemaError): string[] {
  const listed = recordOf(error.parentSchema)['x-choices'];
  if (Array.isArray(listed)) return listed.map(String);
  const branches = recordOf(error.parentSchema)['oneOf'];
  if (!Array.isArray(branches)) return [];
  const tag = String(error.params['tag']);
  return branches.flatMap((branch) => {
    const property = recordOf(recordOf(recordOf(branch)['properties'])[tag]);
    return typeof property['const'] === 'string' ? [property['const']] : [];
  });
}

function typeWords(type: unknown): string {
  const names: Record<string, string> = {
    string: 'a text',
    number: 'a number',
    integer: 'a whole number',
    object: 'a group of keys',
    array: 'a list',
    boolean: 'true or false',
    null: 'empty',
  };
  const list = Array.isArray(type) ? type.map(String) : String(type).split(',');
  return list.map((name) => names[name] ?? name).join(' or ');
}

/** `add "start:" (the first step)`: the key, and what the schema says of it. */
function missingFix(error: SchemaError): string {
  const name = String(error.params['missingProperty']);
  const property = recordOf(recordOf(recordOf(error.parentSchema)['properties'])[name]);
  const { description } = property;
  if (typeof description !== 'string') return `add "${name}:"`;
  const about = description.replace(/[.:].*$/s, '');
  return `add "${name}:" (${about.slice(0, 1).toLowerCase()}${about.slice(1)})`;
}

function exampleFix(error: SchemaError): string | undefined {
  const examples = recordOf(error.parentSchema)['examples'];
  return Array.isArray(examples) && examples.length > 0
    ? `for example: ${String(examples[0])}`
    : undefined;
}

/** The names in a JSON pointer. */
export function pathOfPointer(pointer: string): Path {
  return pointer
    .split('/')
    .slice(1)
    .map((step) => step.replace(/~1/g, '/').replace(/~0/g, '~'));
}

function recordOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
