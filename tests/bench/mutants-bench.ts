/**
 * The check against broken trees: `npm run bench mutants`. `-- --per-kind 4` takes so many instances of each kind in each
 * tree (all without it), `--trees NAME,NAME`, `--kinds NAME,NAME`, `--cars 24` a fault, `--seed 20`; `--write` puts the
 * table into docs/broken-trees.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { Breaker, type Examined, type Instance, instancesOf } from '../proof/break-trees.ts';
import { TREES } from '../proof/library.ts';
import { KIND_NAMES } from '../proof/mutate.ts';

const DOC = 'docs/broken-trees.md';
const MARK = '\n## What the check finds\n';

interface Row {
  instances: number;
  refused: number;
  harmful: number;
  found: number;
}

/** Examines the instances, prints those that are missed, and the table. */
export async function benchMutants(print: (line: string) => void = console.log): Promise<void> {
  const option = (name: string) => {
    const at = process.argv.indexOf(`--${name}`);
    return at < 0 ? undefined : process.argv[at + 1];
  };
  const perKind = Number(option('per-kind') ?? Number.POSITIVE_INFINITY);
  const cars = Number(option('cars') ?? 24);
  const seed = Number(option('seed') ?? 20);
  const names = option('trees')?.split(',') ?? TREES.map(([name]) => name);
  const kinds = option('kinds')?.split(',') ?? KIND_NAMES;
  const rows = new Map(KIND_NAMES.map((kind) => [kind, emptyRow()]));
  const missed: string[] = [];
  for (const name of names) {
    const start = performance.now();
    const breaker = new Breaker(name, { checked: cars, judged: cars });
    const all = instancesOf(name, perKind, seed).filter(({ kind }) => kinds.includes(kind));
    for (const instance of all) {
      const examined = breaker.examine(instance);
      take(rows.get(instance.kind)!, examined);
      if (examined.harm.length > 0 && !examined.found) {
        const line = missedWords(name, instance, examined);
        missed.push(line);
        print(`missed: ${line}`);
      }
    }
    print(`${name}: ${all.length} in ${((performance.now() - start) / 1000).toFixed(0)} s`);
  }
  const table = tableOf(rows, { cars, seed, perKind });
  print(table);
  if (!process.argv.includes('--write')) return;
  const [head] = readFileSync(DOC, 'utf8').split(MARK);
  const list = missed.map((line) => `- ${line}`).join('\n') || 'None.';
  writeFileSync(DOC, `${head}${MARK}\n${table}\n\n### Not found\n\n${list}\n`);
}

function emptyRow(): Row {
  return { instances: 0, refused: 0, harmful: 0, found: 0 };
}

function take(row: Row, { refused, found, harm }: Examined): void {
  row.instances += 1;
  if (refused) row.refused += 1;
  if (harm.length === 0) return;
  row.harmful += 1;
  if (found) row.found += 1;
}

function missedWords(
  tree: string,
  { file, kind, words }: Instance,
  { harm, cars }: Examined,
): string {
  const more = cars === 0 ? '' : ` by ${cars} cars`;
  return `${kind}, ${tree}${file === tree ? '' : ` (${file})`}, ${words}: ${harm.join(', ')}${more}`;
}

function tableOf(
  rows: ReadonlyMap<string, Row>,
  { cars, seed, perKind }: { cars: number; seed: number; perKind: number },
): string {
  const sum = emptyRow();
  const lines = [...rows].map(([kind, row]) => {
    for (const key of ['instances', 'refused', 'harmful', 'found'] as const) sum[key] += row[key];
    return `| ${kind} | ${row.instances} | ${row.refused} | ${row.harmful} | ${row.found} |`;
  });
  const share = sum.harmful === 0 ? 100 : (100 * sum.found) / sum.harmful;
  const taken = Number.isFinite(perKind) ? `up to ${perKind} a kind and tree` : 'all';
  return [
    `Instances: ${taken}; ${cars} cars a fault, seed ${seed}. Of ${sum.harmful} harmful ones that can be run, ${sum.found} are found (${share.toFixed(1)} %); ${sum.refused} more cannot be run at all, with an error.`,
    '',
    '| kind | instances | cannot be run | harmful | found |',
    '| --- | --- | --- | --- | --- |',
    ...lines,
    `| all | ${sum.instances} | ${sum.refused} | ${sum.harmful} | ${sum.found} |`,
  ].join('\n');
}
