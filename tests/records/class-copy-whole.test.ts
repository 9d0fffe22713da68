/**
 * A class's copy of every kind of session that there is: those of the guide, and those that earlier versions wrote. Each
 * value is there as in the shop's record, with names masked; what is not there stands in the list below, and nothing else.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { nodeDisk } from '../../src/log/node-disk.ts';
import { maskPersonal, REMOVED } from '../../src/records/mask-personal.ts';
import { readRecord } from '../../src/records/read-record.ts';
import { recordForClass } from '../../src/records/record-for-class.ts';
import type { SessionRecord } from '../../src/records/record-form.ts';
import { recordOf } from '../../src/records/session-record.ts';
import { fullWalk } from './full-walk.ts';
import { fileOf, finishedWalk, freeWalk } from './sample-session.ts';

const SCHEMA: Schema = JSON.parse(readFileSync('docs/schema/record.schema.json', 'utf8'));

/** Who, whose, when and where, by the key under which it stands in a record. */
const LEFT_OUT =
  /(^|\.)(id|at|startedAt|endedAt|person|shop|order|customer|name|vin|plate|odometer|picture|prices|howToVerify|student|assignment|seed|readBy|sha256)$|^picture\.|\.beside\.|^prices\.|^work\.\d+\.by$/;

function recordIn(folder: string, name: string): [string, SessionRecord] {
  const read = readRecord(nodeDisk, join(folder, name));
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read)}`);
  return [name, read.record];
}

const inFolder = (folder: string) =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.jsonl'))
    .map((name) => recordIn(folder, name));
const walked = [
  fullWalk((field) => `zq${field.replaceAll(' ', '')}`),
  finishedWalk(),
  freeWalk(),
].map((walk, index): [string, SessionRecord] => [
  `walk ${index + 1}`,
  recordOf(walk.session, fileOf(walk).head),
]);

it.each([...inFolder('sessions'), ...inFolder('tests/log/versions'), ...walked])(
  'keeps what names nobody: %s',
  (_, record) => {
    const mask = maskPersonal(record);
    const wanted = leaves(record).map(
      ([path, value]) => [path, typeof value === 'string' ? mask(value) : value] as const,
    );
    const copy = new Map(leaves(recordForClass(record)));
    const missed = wanted.filter(
      ([path, value]) => !LEFT_OUT.test(path) && copy.get(path) !== value,
    );
    expect(missed.map(([path, value]) => ({ path, value, is: copy.get(path) }))).toEqual([]);
    expect([...copy.values()].filter((value) => value === REMOVED).length).toBeLessThan(copy.size);
  },
);

it('keeps what names nobody of a record that holds every key of its form', () => {
  const record = filled(SCHEMA, counter()) as SessionRecord;
  const mask = maskPersonal(record);
  const copy = new Map(leaves(recordForClass(record)));
  const missed = leaves(record).filter(
    ([path, value]) =>
      !LEFT_OUT.test(path) &&
      copy.get(path) !== value &&
      !(typeof value === 'string' && copy.get(path) === mask(value)),
  );
  expect(missed.map(([path, value]) => ({ path, value, is: copy.get(path) }))).toEqual([]);
});

type Schema = Readonly<Record<string, unknown>>;

/** Every key with a value of its own; of several forms that a value may have the fullest. */
function filled(schema: Schema, next: () => number): unknown {
  const { type, properties, items, $ref, oneOf, anyOf } = schema;
  if (typeof $ref === 'string') {
    const { definitions } = SCHEMA as { definitions: Record<string, Schema> };
    return filled(definitions[$ref.replace('#/definitions/', '')]!, next);
  }
  const several = (oneOf ?? anyOf) as readonly Schema[] | undefined;
  if (several) {
    const all = several.map((one) => filled(one, next));
    return all.toSorted((a, b) => leaves(b).length - leaves(a).length)[0];
  }
  if ('const' in schema) return schema['const'];
  if (Array.isArray(schema['enum'])) return schema['enum'][0];
  if (properties)
    return Object.fromEntries(
      Object.entries(properties).map(([key, one]) => [key, filled(one as Schema, next)]),
    );
  if (items) return [filled(items as Schema, next)];
  const kinds = [type].flat();
  if (kinds.includes('number') || kinds.includes('integer')) return next();
  if (kinds.includes('string')) return `zq${next()}`;
  if (kinds.includes('boolean')) return true;
  return null;
}

/** Numbers that are not found in each other. */
function counter(): () => number {
  let last = 1000;
  return () => {
    last += 1;
    return last;
  };
}

/** Every number, text and truth value with the way to it. */
function leaves(value: unknown, path = ''): [path: string, value: unknown][] {
  if (typeof value !== 'object' || value === null)
    return value === undefined ? [] : [[path, value]];
  return Object.entries(value).flatMap(([key, one]) => leaves(one, path ? `${path}.${key}` : key));
}
