/**
 * The check against broken trees: `npm run bench mutants`. `-- --per-kind 4` takes so many instances of each kind in each
 * tree (all without it), `--trees NAME,NAME`, `--kinds NAME,NAME`, `--cars 24` a fault, `--seed 20`. What was examined is
 * kept, so that a bench that was stopped goes on, and several may share the trees among them; `--write` puts the table of
 * all into docs/broken-trees.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { Breaker, type Examined, type Instance, instancesOf } from '../proof/break-trees.ts';
import { TREES } from '../proof/library.ts';
import { KIND_NAMES } from '../proof/mutate.ts';
import { openStore, versionOf } from './results-store.ts';

const DOC = 'docs/broken-trees.md';
const MARK = '\n### Counted\n';
const END = '\n### Not found\n';

interface Row {
  instances: number;
  refused: number;
  harmful: number;
  found: number;
}

/** What came of one instance, by its place among those of its tree. */
interface Kept extends Pick<Examined, 'found' | 'refused' | 'harm' | 'cars'> {
  readonly tree: string;
  readonly place: number;
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
  const version = `${versionOf(import.meta.url)}-${perKind}-${cars}-${seed}`;
  const store = openStore<Kept>('mutants', version);
  for (const name of names) {
    const start = performance.now();
    const known = new Map(
      store.read().flatMap((kept) => (kept.tree === name ? [[kept.place, kept]] : [])),
    );
    let breaker: Breaker | null = null;
    const all = instancesOf(name, perKind, seed);
    for (const [place, instance] of all.entries()) {
      if (!kinds.includes(instance.kind)) continue;
      let examined = known.get(place);
      if (!examined) {
        breaker ??= new Breaker(name, { checked: cars, judged: cars });
        const { found, refused, harm, cars: more } = breaker.examine(instance);
        examined = { tree: name, place, found, refused, harm, cars: more };
        store.add(examined);
      }
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
  const text = readFileSync(DOC, 'utf8');
  const list = missed.map((line) => `- ${line}`).join('\n') || 'None.';
  writeFileSync(DOC, `${text.slice(0, text.indexOf(MARK))}${MARK}\n${table}\n${END}\n${list}\n`);
}

function emptyRow(): Row {
  return { instances: 0, refused: 0, harmful: 0, found: 0 };
}

function take(row: Row, { refused, found, harm }: Kept): void {
  row.instances += 1;
  if (refused) row.refused += 1;
  if (harm.length === 0) return;
  row.harmful += 1;
  if (found) row.found += 1;
}

function missedWords(tree: string, { file, kind, words }: Instance, { harm, cars }: Kept): string {
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
