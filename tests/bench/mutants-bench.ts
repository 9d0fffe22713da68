/**
 * The check against broken trees: `npm run bench mutants`. `-- --per-kind 4` takes so many instances of each kind in each
 * tree (all without it), `--trees NAME,NAME`, `--kinds NAME,NAME`, `--cars 16` a fault, `--seed 20`. Few cars are drawn at
 * first; harmful ones that are missed are looked at again with `--again 256`, as many as `ohmward check` takes. What was
 * examined is kept, so that a bench that was stopped goes on, and several may share the trees among them; `--write` puts
 * the table of all into docs/broken-trees.md.
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
  /** With the few cars. */
  first: number;
  /** With as many as the check takes. */
  found: number;
}

const ROW_KEYS = ['instances', 'refused', 'harmful', 'first', 'found'] as const;

/** What came of one instance, by its place among those of its tree. */
interface Kept extends Pick<Examined, 'found' | 'refused' | 'harm' | 'cars'> {
  readonly tree: string;
  readonly place: number;
  /** Looked at again with more cars; absent where that was not needed. */
  readonly again?: boolean;
}

/** Examines the instances, prints those that are missed, and the table. */
export async function benchMutants(print: (line: string) => void = console.log): Promise<void> {
  const option = (name: string) => {
    const at = process.argv.indexOf(`--${name}`);
    return at < 0 ? undefined : process.argv[at + 1];
  };
  const perKind = Number(option('per-kind') ?? Number.POSITIVE_INFINITY);
  const cars = Number(option('cars') ?? 16);
  const againCars = Number(option('again') ?? 256);
  const seed = Number(option('seed') ?? 20);
  const names = option('trees')?.split(',') ?? TREES.map(([name]) => name);
  const kinds = option('kinds')?.split(',') ?? KIND_NAMES;
  const rows = new Map(KIND_NAMES.map((kind) => [kind, emptyRow()]));
  const missed: string[] = [];
  const version = `${versionOf(import.meta.url)}-${perKind}-${cars}-${againCars}-${seed}`;
  const store = openStore<Kept>('mutants', version);
  for (const name of names) {
    const start = performance.now();
    const known = new Map(
      store.read().flatMap((kept) => (kept.tree === name ? [[kept.place, kept]] : [])),
    );
    const breaker = lazily(() => new Breaker(name, { checked: cars, judged: cars }));
    // Its harm is known by then: as few cars as can be are judged.
    const second = lazily(() => new Breaker(name, { checked: againCars, judged: 1 }));
    const all = instancesOf(name, perKind, seed);
    for (const [place, instance] of all.entries()) {
      if (!kinds.includes(instance.kind)) continue;
      let examined = known.get(place);
      if (!examined) {
        const { found, refused, harm, cars: more } = breaker().examine(instance);
        examined = { tree: name, place, found, refused, harm, cars: more };
        if (!found && harm.length > 0)
          examined = { ...examined, again: second().examine(instance, false).found };
        store.add(examined);
      }
      take(rows.get(instance.kind)!, examined);
      if (examined.harm.length > 0 && !examined.found && !examined.again) {
        const line = missedWords(name, instance, examined);
        missed.push(line);
        print(`missed: ${line}`);
      }
    }
    print(`${name}: ${all.length} in ${((performance.now() - start) / 1000).toFixed(0)} s`);
  }
  const table = tableOf(rows, { cars, againCars, seed, perKind });
  print(table);
  if (!process.argv.includes('--write')) return;
  const text = readFileSync(DOC, 'utf8');
  const list = missed.map((line) => `- ${line}`).join('\n') || 'None.';
  writeFileSync(DOC, `${text.slice(0, text.indexOf(MARK))}${MARK}\n${table}\n${END}\n${list}\n`);
}

function lazily<Value>(make: () => Value): () => Value {
  let made: Value | null = null;
  return () => (made ??= make());
}

function emptyRow(): Row {
  return { instances: 0, refused: 0, harmful: 0, first: 0, found: 0 };
}

function take(row: Row, { refused, found, harm, again = false }: Kept): void {
  row.instances += 1;
  if (refused) row.refused += 1;
  if (harm.length === 0) return;
  row.harmful += 1;
  if (found) row.first += 1;
  if (found || again) row.found += 1;
}

function missedWords(tree: string, { file, kind, words }: Instance, { harm, cars }: Kept): string {
  const more = cars === 0 ? '' : ` by ${cars} cars`;
  return `${kind}, ${tree}${file === tree ? '' : ` (${file})`}, ${words}: ${harm.join(', ')}${more}`;
}

function tableOf(
  rows: ReadonlyMap<string, Row>,
  {
    cars,
    againCars,
    seed,
    perKind,
  }: { cars: number; againCars: number; seed: number; perKind: number },
): string {
  const sum = emptyRow();
  const lines = [...rows].map(([kind, row]) => {
    for (const key of ROW_KEYS) sum[key] += row[key];
    return rowLine(kind, row);
  });
  const shareOf = (found: number) =>
    `${found} (${(sum.harmful === 0 ? 100 : (100 * found) / sum.harmful).toFixed(1)} %)`;
  const taken = Number.isFinite(perKind) ? `up to ${perKind} a kind and tree` : 'all';
  return [
    `Instances: ${taken}, seed ${seed}. ${cars} cars a fault in the check and ${cars} others in the count of harm; what is missed is checked again with ${againCars}, as many as \`ohmward check\` takes. Of ${sum.harmful} harmful ones that can be run, ${shareOf(sum.first)} are found with ${cars} cars and ${shareOf(sum.found)} with ${againCars}; ${sum.refused} more cannot be run at all, and are told with an error.`,
    '',
    `| kind | instances | cannot be run | harmful | found with ${cars} | with ${againCars} |`,
    '| --- | --- | --- | --- | --- | --- |',
    ...lines,
    rowLine('all', sum),
  ].join('\n');
}

function rowLine(kind: string, row: Row): string {
  return `| ${[kind, ...ROW_KEYS.map((key) => row[key])].join(' | ')} |`;
}
