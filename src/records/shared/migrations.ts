/** The tables of the shared database, brought to the form that this program knows, each step once. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Client } from 'pg';
import { sha256 } from '../../log/hash.ts';
import { SharedProblem } from './shared-problem.ts';

/** Name and text of each step, put here by the build; read from their folder when the source runs as it is. */
declare const OHMWARD_MIGRATIONS: readonly (readonly [string, string])[] | undefined;

/** Two carts must not build the tables at once. Any number does, as long as all carts use the same. */
const LOCK = 7_303_014;

/** Brings the tables up to date. A person whose role may not make tables can still work once somebody has. */
export async function migrate(client: Client): Promise<void> {
  if ((await missing(client)).length === 0) return;
  await client.query('BEGIN');
  await client.query('SELECT pg_advisory_xact_lock($1)', [LOCK]);
  await client.query(
    'CREATE TABLE IF NOT EXISTS ohmward_migrations (name text PRIMARY KEY, hash text NOT NULL, at timestamptz NOT NULL DEFAULT now())',
  );
  for (const [name, text] of await missing(client)) {
    await client.query(text);
    await client.query('INSERT INTO ohmward_migrations (name, hash) VALUES ($1, $2)', [
      name,
      sha256(text),
    ]);
  }
  await client.query('COMMIT');
}

/** Steps not yet done. A step that was done otherwise, or that we do not know, means another program's tables. */
async function missing(client: Client): Promise<readonly (readonly [string, string])[]> {
  const known = steps();
  const table = await client.query<{ there: boolean }>(
    "SELECT to_regclass('ohmward_migrations') IS NOT NULL AS there",
  );
  if (table.rows[0]?.there !== true) return known;
  const { rows } = await client.query<{ name: string; hash: string }>(
    'SELECT name, hash FROM ohmward_migrations',
  );
  const done = new Map(rows.map(({ name, hash }) => [name, hash]));
  for (const name of done.keys())
    if (!known.some(([own]) => own === name))
      throw new SharedProblem(
        `the tables of the database are newer than this program ("${name}")`,
        'install a newer Ohmward on this computer',
      );
  for (const [name, text] of known)
    if (done.has(name) && done.get(name) !== sha256(text))
      throw new SharedProblem(
        `the tables of the database were made by another step "${name}" than this program's`,
        'use a database of its own for Ohmward',
      );
  return known.filter(([name]) => !done.has(name));
}

function steps(): readonly (readonly [string, string])[] {
  if (typeof OHMWARD_MIGRATIONS !== 'undefined') return OHMWARD_MIGRATIONS;
  const folder = new URL('./migrations/', import.meta.url);
  return readdirSync(folder)
    .filter((name) => name.endsWith('.sql'))
    .sort()
    .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]);
}
