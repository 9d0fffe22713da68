/** The house's own rules: imports run down, names tell the story, what is generated is up to date. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, normalize, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LONGEST, SMALL_FIRST } from './slow-first.ts';
import { exportsOf, functionsOf, saysMore } from './source-shape.ts';

/** From top to bottom, as in DEVELOPERS.md. A room may import itself and what stands below it. */
const HOUSE = [
  'cli.ts',
  'commands',
  'ui',
  'records',
  'log',
  'files',
  'drill',
  'session',
  'proof',
  'suspects',
  'procedure',
  'circuit',
  'waveform',
  'identify',
  'source',
  'quantity',
];
/** Below this nothing knows files, clock, terminal, network or randomness. */
const FIRST_PURE_ROOM = HOUSE.indexOf('drill');
const MAY_USE_FILES = ['commands', 'records', 'log', 'files'];
const MAY_USE_SCREEN = ['commands', 'ui'];
const SCREEN_PACKAGES = ['ink', 'react'];
/** What reads text may use: places in YAML, and how wide a sign is. */
const IN_SOURCE = ['yaml', 'string-width'];
const EMPTY_NAMES = ['utils', 'helpers', 'common', 'types'];
/** Generated code comes from the schemas, and its only import is checked with them. */
const GENERATED = /(^|\/)generated\//;

interface Import {
  readonly file: string;
  readonly line: number;
  readonly from: string;
}

/** `src/circuit/solve-dc.ts:3: circuit must not import 'node:fs'` for each import that breaks a rule. */
function brokenImports(imports: readonly Import[]): string[] {
  return imports.flatMap(({ file, line, from }) => {
    const room = roomOf(file);
    const why = forbidden(room, from, file);
    return why === null ? [] : [`${file}:${line}: ${room} must not import '${from}'${why}`];
  });
}

function forbidden(room: string, from: string, file: string): string | null {
  const pure = HOUSE.indexOf(room) >= FIRST_PURE_ROOM;
  if (from.startsWith('.')) {
    const target = roomOf(normalize(join(dirname(file), from)));
    if (!/\.(ts|tsx|mjs)$/.test(from)) return ', which has no ending';
    if (HOUSE.indexOf(target) < 0) return ', which is no room of the house';
    return HOUSE.indexOf(target) < HOUSE.indexOf(room) ? '' : null;
  }
  if (from.startsWith('node:')) {
    if (pure) return '';
    return /^node:fs(\/|$)/.test(from) && !MAY_USE_FILES.includes(room) ? '' : null;
  }
  const name = from.split('/')[0]!;
  if (SCREEN_PACKAGES.includes(name) && !MAY_USE_SCREEN.includes(room)) return '';
  return pure && !(room === 'source' && IN_SOURCE.includes(from)) ? '' : null;
}

function roomOf(file: string): string {
  return file.replace(/^src\//, '').split('/')[0]!;
}

/** Every import, re-export and dynamic import of a file. */
function importsOf(file: string, text: string): Import[] {
  const found: Import[] = [];
  const pattern = /(?:^|[;\s}])(?:from\s*|import\s*\(\s*|import\s+)(['"])([^'"\n]+)\1/g;
  for (const match of text.matchAll(pattern)) {
    const before = text.slice(0, match.index + match[0].lastIndexOf(match[1]! + match[2]!));
    if (/^\s*(\*|\/\/)/.test(before.slice(before.lastIndexOf('\n') + 1))) continue;
    found.push({ file, line: before.split('\n').length, from: match[2]! });
  }
  return found;
}

/** Files that import each other, each circle in a line; what is only loaded later is none. Tarjan 1972. */
function circles(texts: ReadonlyMap<string, string>): string[] {
  const found: string[] = [];
  const low = new Map<string, number>();
  const open: string[] = [];
  const visit = (file: string): number => {
    const at = low.size;
    low.set(file, at);
    open.push(file);
    let least = at;
    for (const [, from] of (texts.get(file) ?? '').matchAll(
      /^(?:import|export)\b[^;]*?from '(\.[^']+)';/gm,
    )) {
      const next = normalize(join(dirname(file), from!));
      if (!texts.has(next)) continue;
      if (!low.has(next)) least = Math.min(least, visit(next));
      else if (open.includes(next)) least = Math.min(least, low.get(next)!);
    }
    low.set(file, least);
    if (least < at) return least;
    const circle = open.splice(open.indexOf(file));
    if (circle.length > 1) found.push(circle.sort().join(' '));
    return least;
  };
  for (const file of texts.keys()) if (!low.has(file)) visit(file);
  return found;
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder)
    .sort()
    .flatMap((name) => {
      const path = join(folder, name);
      return statSync(path).isDirectory() ? filesBelow(path) : [path];
    });
}

const SOURCES = filesBelow('src').filter((path) => /\.tsx?$/.test(path) && !GENERATED.test(path));
const TEXTS = new Map(SOURCES.map((path) => [path, readFileSync(path, 'utf8')]));

describe('imports', () => {
  test('run down the house only', () => {
    expect(brokenImports([...TEXTS].flatMap(([file, text]) => importsOf(file, text)))).toEqual([]);
  });

  test('are told with file, line and room when they run up', () => {
    const text =
      "/** Solver. */\nimport { x } from './nets.ts';\nimport { readFileSync } from 'node:fs';\n";
    expect(brokenImports(importsOf('src/circuit/solve-dc.ts', text))).toEqual([
      "src/circuit/solve-dc.ts:3: circuit must not import 'node:fs'",
    ]);
  });

  test.each([
    ['src/circuit/a.ts', '../suspects/b.ts', false],
    ['src/suspects/a.ts', '../circuit/b.ts', true],
    ['src/procedure/a.ts', 'yaml', false],
    ['src/source/a.ts', 'yaml', true],
    ['src/quantity/a.ts', '../source/b.ts', false],
    ['src/records/a.ts', 'ink', false],
    ['src/ui/a.ts', 'node:fs/promises', false],
    ['src/ui/a.ts', 'node:tty', true],
    ['src/drill/a.ts', 'node:crypto', false],
    ['src/log/a.ts', 'node:crypto', true],
    ['src/log/a.ts', '../records/b.ts', false],
    ['src/log/a.ts', './b', false],
    ['src/commands/a.ts', '../../scripts/b.ts', false],
  ])('%s may import %s: %s', (file, from, allowed) => {
    expect(brokenImports([{ file, line: 1, from }]).length === 0).toBe(allowed);
  });

  test('run in no circle, those of types neither', () => {
    expect(circles(TEXTS)).toEqual([]);
  });

  test('that run in a circle are told', () => {
    const files = new Map([
      ['src/circuit/a.ts', "import { b } from './b.ts';"],
      ['src/circuit/b.ts', "import type { C } from './c.ts';"],
      ['src/circuit/c.ts', "import { a } from './a.ts';\nimport { d } from './d.ts';"],
      ['src/circuit/d.ts', "const late = import('./a.ts');"],
    ]);
    expect(circles(files)).toEqual(['src/circuit/a.ts src/circuit/b.ts src/circuit/c.ts']);
  });

  test('every form of import is seen', () => {
    const text = [
      "import 'a';",
      "import b from 'b';",
      "import type { c } from 'c';",
      "export { d } from 'd';",
      "const e = () => import('e');",
      'import {',
      '  f,',
      "} from 'f';",
      "// import g from 'g';",
    ].join('\n');
    expect(importsOf('x.ts', text).map(({ from, line }) => `${from}${line}`)).toEqual([
      'a1',
      'b2',
      'c3',
      'd4',
      'e5',
      'f8',
    ]);
  });
});

/** Files and packages that a file loads at once, through what it imports; types and `import()` load nothing. */
function loadedWith(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  const text = TEXTS.get(file) ?? '';
  for (const [, from] of text.matchAll(/^(?:import|export)(?! type)[^;]*?from '([^']+)';/gm)) {
    if (from!.startsWith('.')) loadedWith(normalize(join(dirname(file), from!)), seen);
    else if (!from!.startsWith('node:')) seen.add(from!.split('/')[0]!);
  }
  return seen;
}

describe('the first frame', () => {
  test('waits for the screen alone: no YAML, no schemas, nothing that computes, measures or replays', () => {
    const loaded = [
      'src/cli.ts',
      'src/commands/run.ts',
      'src/commands/session/run-from-start.ts',
    ].flatMap((file) => [...loadedWith(file)]);
    const packages = new Set(loaded.filter((name) => !name.startsWith('src/')));
    expect([...packages].sort()).toEqual(['chalk', 'ink', 'react', 'string-width']);
    expect(loaded).not.toContain('src/files/load-library.ts');
    const rooms = new Set(loaded.filter((name) => name.startsWith('src/')).map(roomOf));
    for (const room of ['log', 'drill', 'session', 'proof', 'suspects', 'waveform'])
      expect(rooms, room).not.toContain(room);
    const inCircuit = loaded.filter((name) => name.startsWith('src/circuit/'));
    const words = ['src/circuit/look-words.ts', 'src/circuit/tools.ts'];
    expect(new Set(inCircuit)).toEqual(new Set(words));
    expect([...loadedWith('src/commands/session/open-desk.ts')]).toContain('yaml');
  });
});

describe('names', () => {
  test('no room or file is named for nothing in particular', () => {
    const parts = SOURCES.flatMap((path) =>
      path.split('/').map((part) => [part.replace(/\.tsx?$/, ''), path] as const),
    );
    expect(parts.filter(([name]) => EMPTY_NAMES.includes(name)).map(([, path]) => path)).toEqual(
      [],
    );
  });

  test('a type is called as no other one, in whichever room', () => {
    const homes = new Map<string, string[]>();
    for (const [file, text] of TEXTS)
      for (const [, name] of text.matchAll(/^(?:export )?(?:type|interface|class) (\w+)/gm))
        homes.set(name!, [...(homes.get(name!) ?? []), file]);
    const twice = [...homes].filter(([, files]) => files.length > 1).map(([name]) => name);
    expect(twice.sort()).toEqual([]);
  });

  test('a function that others use is called as no other one', () => {
    const homes = new Map<string, string[]>();
    for (const [file, text] of TEXTS)
      for (const [, name] of text.matchAll(/^export (?:async )?function\*? (\w+)/gm))
        homes.set(name!, [...(homes.get(name!) ?? []), file]);
    const twice = [...homes].filter(([, files]) => files.length > 1).map(([name]) => name);
    expect(twice.sort()).toEqual([]);
  });

  test('file names are small letters and hyphens', () => {
    expect(SOURCES.filter((path) => !/^[a-z0-9-]+\.tsx?$/.test(basename(path)))).toEqual([]);
  });

  test('no barrels: no index file, and no file that only passes on', () => {
    const barrels = [...TEXTS].filter(([path, text]) => {
      const body = text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '').trim();
      const rest = body
        .replace(/export\s+(type\s+)?(\*|\{[^}]*\})(\s+as\s+\w+)?\s+from\s+['"][^'"]+['"];?/g, '')
        .trim();
      return /^index\.tsx?$/.test(basename(path)) || (body !== '' && rest === '');
    });
    expect(barrels.map(([path]) => path)).toEqual([]);
  });

  test('the rooms are those of DEVELOPERS.md, in its order', () => {
    const page = readFileSync('DEVELOPERS.md', 'utf8');
    const listed = [...page.matchAll(/^ {2}([a-z.]+)\/? {2,}\S/gm)].map((match) => match[1]!);
    expect(listed.filter((name) => HOUSE.includes(name))).toEqual(HOUSE);
    expect(readdirSync('src').filter((name) => !HOUSE.includes(name))).toEqual([]);
  });
});

/** Functions of more lines than this are one thing by necessity, which the list below names. */
const LINES_MOST = 70;
/** They only become fewer and shorter: a name that is needed no more has to go. */
const LONG_FOR_A_REASON: Readonly<Record<string, string>> = {
  'src/circuit/feed-tests.ts feedTests': 'a list: the standard tests of a feed, in their order',
  'src/log/session-driver.ts driveSession': 'functions over one state that nobody else may touch',
  'src/log/session-writer.ts writerAt': 'functions over one open file and what is safe in it',
  'src/records/record-for-class.ts recordForClass': 'a list: every field that a class may see',
  'src/session/command-of.ts commandOf': 'one switch over all events',
  'src/session/evolve.ts fold': 'one switch over all events',
  'src/session/refusal.ts sentences': 'one switch over all refusals',
  'src/ui/app.tsx App': 'one switch over all screens, and what each leads to',
  'src/ui/screens/capture-flow.tsx CaptureFlow': 'one switch over the pages of a capture',
  'src/ui/term/key-decoder.ts createKeyDecoder': 'one state machine over bytes',
  'src/ui/term/keyboard.ts createKeyboard': 'functions over one queue of keys',
  'src/ui/term/terminal-session.ts openTerminal':
    'functions over one terminal, and every way out of it',
};

describe('what is exported', () => {
  test('has a comment that says more than its name', () => {
    const silent = [...TEXTS].flatMap(([file, text]) =>
      exportsOf(file, text)
        .filter((one) => !saysMore(one))
        .map(({ name, line }) => `${file}:${line}: ${name}`),
    );
    expect(silent).toEqual([]);
  });

  test('is found silent, or saying its name again, in each of its forms', () => {
    const text = [
      'export function listed(): void {}',
      '/** The row. */',
      'export interface Row {',
      '/** Ways, best first. */',
      "export const WAYS = ['a'] as const;",
      'export type Way = (typeof WAYS)[number];',
      'export type Bare = (typeof BARE)[number];',
      '/**',
      ' * Keeps rows, the newest first.',
      ' */',
      'export class Rows {',
      'interface Own {',
    ].join('\n');
    const silent = exportsOf('src/ui/a.ts', text).filter((one) => !saysMore(one));
    expect(silent.map(({ name, line }) => `${name}${line}`)).toEqual(['listed1', 'Row3', 'Bare7']);
  });

  test('of a component is explained by the header of its file', () => {
    const text =
      '/** A row that is typed. */\nexport interface RowViewProps {\nexport function RowView() {';
    expect(exportsOf('src/ui/row-view.tsx', text)).toEqual([]);
    expect(exportsOf('src/ui/row.tsx', text).map(({ name }) => name)).toEqual([
      'RowViewProps',
      'RowView',
    ]);
    expect(exportsOf('src/ui/row-view.tsx', text.slice(text.indexOf('export')))).toHaveLength(2);
  });
});

describe('a function', () => {
  test(`of more than ${LINES_MOST} lines is one thing by necessity`, () => {
    const long = [...TEXTS].flatMap(([file, text]) =>
      functionsOf(text)
        .filter(({ lines }) => lines > LINES_MOST)
        .map(({ name }) => `${file} ${name}`),
    );
    expect(long.sort()).toEqual(Object.keys(LONG_FOR_A_REASON).sort());
  });

  test('is measured from its first line to its closing brace, calls are not', () => {
    const text = [
      'export async function a(',
      '  b: B,',
      '): C {',
      '  call({',
      '    d,',
      '  });',
      '}',
      'class D {',
      '  private e({ f }: F): void {',
      '    if (f) {',
      '      g();',
      '    }',
      '  }',
      '}',
      'const h = (): I => {',
      '  return j;',
      '};',
    ].join('\n');
    expect(functionsOf(text)).toEqual([
      { name: 'a', line: 1, lines: 7 },
      { name: 'e', line: 9, lines: 5 },
      { name: 'h', line: 15, lines: 3 },
    ]);
  });
});

/** A `default:` hides from compiler and lint what a switch leaves out. These hide nothing: each with the reason. */
const DEFAULT_FOR_A_REASON: Readonly<Record<string, string>> = {
  'src/circuit/car-quantities.ts': 'what is left is handed on as a sensor, which the compiler sees',
  'src/circuit/element-curves.ts': 'over numbers in a typed array',
  'src/circuit/knowable.ts': 'what is left is handed on as a sensor, which the compiler sees',
  'src/circuit/read-part.ts': 'what is left is handed on as a sensor, which the compiler sees',
  'src/commands/completion/offers.ts': 'over words that anybody types',
  'src/commands/settings.ts': 'over words that anybody types',
  'src/log/canonical-json.ts': 'what is left is refused',
  'src/log/check-events.ts': 'over keywords of JSON Schema, which are no union',
  'src/log/upgrade-drill.ts': 'over events of a file that is not checked yet',
  'src/log/upgrade-events.ts': 'over events of a file that is not checked yet',
  'src/procedure/test-words.ts': 'what is left has two leads, which the compiler sees',
  'src/records/list-words.ts': 'over events of a file that is not checked yet',
  'src/source/schema-issues.ts': 'over keywords of JSON Schema, which are no union',
  'src/source/whole-yaml.ts':
    "over the parser's own mistakes: its words for those that we have none for",
  'src/ui/parts/text-field-state.ts': 'over keys, most of which do nothing in a text',
  'src/ui/screens/reading-prompt-state.ts': 'over keys, most of which do nothing in a prompt',
  'src/ui/screens/session-view.ts': 'what is left is drawn as it is, which the compiler sees',
  'src/ui/screens/settings-state.ts':
    'over keys of a form; one that is not there is a fault of ours',
};

test('a switch with a default is over no union, or the compiler sees what is left', () => {
  const found = [...TEXTS].flatMap(([file, text]) => (/^ *default:/m.test(text) ? [file] : []));
  expect(found).toEqual(Object.keys(DEFAULT_FOR_A_REASON).sort());
});

/** Classes that inherit from another of ours; what comes from an error or a library is not asked for. */
const INHERITS_FOR_A_REASON: Readonly<Record<string, string>> = {
  'src/circuit/solve-dc.ts Solver': 'the third layer of one solver over the same arrays: Newton',
  'src/circuit/walk-regions.ts WalkedRegions':
    'the second: regions; the first is what elements carry',
};
const FROM_OUTSIDE = ['Error', 'Unworkable', 'SharedProblem', 'EventEmitter', 'Component'];

test('no class inherits only to keep a file short', () => {
  const heirs = [...TEXTS].flatMap(([file, text]) =>
    [...text.matchAll(/^(?:export )?class (\w+)(?:<[^{]*>)? extends (\w+)/gm)]
      .filter(([, , parent]) => !FROM_OUTSIDE.includes(parent!))
      .map(([, name]) => `${file} ${name}`),
  );
  expect(heirs.sort()).toEqual(Object.keys(INHERITS_FOR_A_REASON).sort());
});

/** A file of fewer lines than this that only one other imports is folded into it, unless it is an idea of its own. */
const LINES_ALONE = 60;
/** What has a file by its form: a command, a kind among kinds, a screen, the state or a field of one, what is generated. */
const OWN_BY_FORM =
  /^src\/(?:cli\.ts|commands\/[a-z-]+\.ts|commands\/records\/|circuit\/instruments\/|circuit\/sensors\/)|\.tsx$|-(?:state|field)\.ts$/;
const OWN_IDEA: Readonly<Record<string, string>> = {
  'src/circuit/leaking-plug.ts': 'a fault of the plug, with its numbers and their source',
  'src/circuit/near-leads.ts': 'what hangs at the leads of a test, and what lies beyond',
  'src/circuit/pick-cars.ts': 'which cars are kept when many are drawn',
  'src/circuit/swapped-wires.ts': 'a fault of the plug, with its numbers and their source',
  'src/circuit/wire-roles.ts': 'what a wire carries, worked out from where it leads',
  'src/commands/check/quiet-cautions.ts': 'cautions that are too quiet for what they warn of',
  'src/commands/check/unshown-cautions.ts': 'cautions that nobody would ever read',
  'src/commands/drill/class-style.ts': 'the style sheet of a page',
  'src/commands/drill/drill-on-screen.ts': 'a drill on the screen, from services to exit code',
  'src/commands/drill/run-actions.ts': 'a file of actions, from reading to exit code',
  'src/commands/session/files-beside.ts': "one's own files before the library's",
  'src/commands/session/small-heap.ts': 'a setting of the engine, with its reason',
  'src/commands/session/voltage-limits.ts':
    'which volts are impossible, with the reason of its numbers',
  'src/drill/next-practice.ts': 'what to practise next: the sentences and their order',
  'src/proof/ambiguity-groups.ts': 'one finding of a proof',
  'src/proof/better-target.ts': 'what a step had better lead to',
  'src/proof/like-healthy.ts': 'one finding of a proof',
  'src/proof/retest-issues.ts': 'one finding of a proof',
  'src/records/drawing.ts': 'characters as a picture',
  'src/records/html-style.ts': 'the style sheet of a page',
  'src/records/pdf/transliterate.ts': 'signs that the fonts of a PDF have not',
  'src/records/record-cautions.ts': 'one part of the record',
  'src/records/record-known.ts': 'one part of the record',
  'src/session/tests-beside.ts': 'a lead put a pin too far',
  'src/session/view-suspects.ts': 'suspects as lists and reports show them',
  'src/suspects/huffman.ts': 'an algorithm with its source',
  'src/suspects/predicted-words.ts': 'what a suspect would show, in words',
  'src/ui/parts/big-words.ts': 'letters of several lines',
  'src/ui/plain/plain-known.ts': 'one word of the dialogue of lines',
  'src/ui/plain/plain-plan.ts': 'one word of the dialogue of lines',
  'src/ui/rpc/aid-methods.ts': 'calls that help and answer nothing, a table like the others',
  'src/ui/screens/retest-words.ts': 'sentences of the tests after the repair',
};

test('a small file that only one other needs, in its own room, is an idea of its own', () => {
  const importers = new Map<string, string[]>();
  for (const [file, text] of TEXTS)
    for (const { from } of importsOf(file, text))
      if (from.startsWith('.')) {
        const to = normalize(join(dirname(file), from));
        importers.set(to, [...(importers.get(to) ?? []), file]);
      }
  const alone = [...TEXTS].flatMap(([file, text]) => {
    const [by, another] = new Set(importers.get(file));
    const isSmall = text.split('\n').length - 1 < LINES_ALONE;
    const isOfRoom = by !== undefined && roomOf(by) === roomOf(file);
    return isSmall && isOfRoom && another === undefined && !OWN_BY_FORM.test(file) ? [file] : [];
  });
  expect(alone.sort()).toEqual(Object.keys(OWN_IDEA).sort());
  const unused = SOURCES.filter((file) => !importers.has(file) && file !== 'src/cli.ts');
  expect(unused).toEqual([]);
});

/** The one place that may load fast-check, and this file, which names what is not to be named. */
const MAY_DRAW = ['tests/seeded-check.ts', 'tests/tidy.test.ts'];

test('the test files that are to run first are there', () => {
  expect([...SMALL_FIRST, ...LONGEST].filter((file) => !existsSync(file))).toEqual([]);
});

test('no test takes its cases from the time or from chance, so that a red run can be repeated', () => {
  const drawn = filesBelow('tests')
    .filter((path) => /\.tsx?$/.test(path) && !MAY_DRAW.includes(path))
    .filter((path) => !path.startsWith('tests/bench/'))
    .filter((path) =>
      /Date\.now\(|new Date\(\)|Math\.random\(|from 'fast-check'/.test(readFileSync(path, 'utf8')),
    );
  expect(drawn).toEqual([]);
});

interface Schema {
  readonly title?: string;
  readonly description?: string;
  readonly const?: unknown;
  readonly properties?: Readonly<Record<string, Schema>>;
}

/** What the program writes: nobody needs an editor's help with it. */
const WRITTEN_BY_PROGRAM = ['record', 'session-event', 'rpc-answer'];
const WRITTEN_BY_PEOPLE = readdirSync('docs/schema').filter(
  (name) => !WRITTEN_BY_PROGRAM.includes(basename(name, '.schema.json')),
);

describe('schemas', () => {
  test.each(readdirSync('docs/schema'))('%s has a title and says what it describes', (name) => {
    const schema = JSON.parse(readFileSync(join('docs/schema', name), 'utf8')) as Schema;
    expect(schema.title).toBeTruthy();
    expect(schema.description).toBeTruthy();
  });

  test.each(WRITTEN_BY_PEOPLE)('%s explains every key', (name) => {
    const silent: string[] = [];
    const walk = (node: unknown, path: string) => {
      if (typeof node !== 'object' || node === null) return;
      for (const [key, value] of Object.entries((node as Schema).properties ?? {}))
        if (value.const === undefined && (!value.title || !value.description))
          silent.push(`${path}.${key}`);
      for (const [key, value] of Object.entries(node))
        if (key !== 'examples') walk(value, `${path}.${key}`);
    };
    walk(
      JSON.parse(readFileSync(join('docs/schema', name), 'utf8')),
      basename(name, '.schema.json'),
    );
    expect(silent).toEqual([]);
  });

  test('validators and types are those that the schemas give now', () => {
    const folder = mkdtempSync(join(tmpdir(), 'ohmward-schemas-'));
    try {
      execFileSync(process.execPath, ['scripts/schemas.mjs', '--to', folder], { stdio: 'pipe' });
      const made = filesBelow(folder).map((path) => relative(folder, path));
      expect(made.length).toBeGreaterThan(0);
      const stale = made.filter(
        (path) =>
          readFileSync(join(folder, path), 'utf8') !== readFileSync(join('src', path), 'utf8'),
      );
      expect(stale).toEqual([]);
      const kept = filesBelow('src')
        .filter((path) => GENERATED.test(path))
        .map((path) => relative('src', path));
      expect(kept).toEqual(made);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
