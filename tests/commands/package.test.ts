import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSessionLog } from '../../src/log/read-session.ts';
import { isInstalled } from '../installed.ts';

/** What may be in the package, and nothing else. */
const ALLOWED = [
  /^dist\/ohmward\.mjs(\.map|\.LEGAL\.txt)?$/,
  /^dist\/THIRD-PARTY\.txt$/,
  /^dist\/parts\/[\w.-]+\.mjs(\.map|\.LEGAL\.txt)?$/,
  /^procedures\/([a-z]+\/)?[a-z0-9-]+\.(ya?ml|json|csv)$/,
  /^docs\/schema\/[a-z-]+\.schema\.json$/,
  /^docs\/[a-z-]+\.md$/,
  /^docs\/pictures\/[a-z-]+\.svg$/,
  /^man\/ohmward\.1$/,
  /^(README\.md|DEVELOPERS\.md|CHANGELOG\.md|LICENSE|package\.json)$/,
];
/** What has to be in it for the program to work and to be lawfully passed on. */
const NEEDED = [
  'LICENSE',
  'README.md',
  'package.json',
  'dist/ohmward.mjs',
  'dist/THIRD-PARTY.txt',
  'man/ohmward.1',
  'procedures/cautions.yaml',
  'procedures/hall-no-signal.yaml',
  'procedures/circuits/hall-module-fed.yaml',
  'docs/schema/procedure.schema.json',
];

interface About {
  readonly name: string;
  readonly version: string;
  readonly license: string;
}

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string; readonly mode: number }[];
}

let folder = '';
let packed: Packed;
let env: NodeJS.ProcessEnv;

const npm = (args: readonly string[], cwd: string) =>
  execFileSync('npm', [...args, '--ignore-scripts', '--no-audit', '--no-fund', '--offline'], {
    cwd,
    env,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });

beforeAll(() => {
  if (!existsSync('dist/ohmward.mjs')) throw new Error('build the program first: npm run build');
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'ohmward-package-')));
  const home = join(folder, 'home');
  mkdirSync(home);
  const { PATH } = process.env;
  env = { PATH, HOME: home, LANG: 'C.UTF-8', XDG_DATA_HOME: join(folder, 'data') };
  [packed] = JSON.parse(npm(['pack', '--json', '--pack-destination', folder], process.cwd()));
  mkdirSync(join(folder, 'empty'));
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the package', () => {
  it('holds the program, its library, the schemas, the man page and the licence, and nothing else', () => {
    const paths = packed.files.map(({ path }) => path);
    expect(paths.filter((path) => !ALLOWED.some((pattern) => pattern.test(path)))).toEqual([]);
    expect(NEEDED.filter((path) => !paths.includes(path))).toEqual([]);
    for (const kept of readdirSync('procedures/circuits'))
      expect(paths).toContain(`procedures/circuits/${kept}`);
  });

  it('holds what README and the pages of the guide link to', () => {
    const paths = packed.files.map(({ path }) => path);
    const pages = paths.filter((path) => path === 'README.md' || /^docs\/[a-z-]+\.md$/.test(path));
    expect(pages.length).toBeGreaterThan(8);
    const missing = pages.flatMap((page) =>
      [...readFileSync(page, 'utf8').matchAll(/\]\((?!https?:|#)([^)#\s]+)[^)]*\)/g)]
        .map(([, to]) => join(dirname(page), to!))
        .filter((to) => !paths.some((path) => path === to || path.startsWith(`${to}/`)))
        .map((to) => `${page}: ${to}`),
    );
    expect(missing).toEqual([]);
  });

  it('carries the licence of every package that is bundled', () => {
    const text = readFileSync('dist/THIRD-PARTY.txt', 'utf8');
    const maps = packed.files.filter(({ path }) => path.endsWith('.mjs.map'));
    const sources = maps.flatMap(
      ({ path }) => (JSON.parse(readFileSync(path, 'utf8')) as { sources: string[] }).sources,
    );
    const folders = sources.map(
      (one) => /node_modules\/(?:.*\/node_modules\/)?(?:@[^/]+\/)?[^/]+/.exec(one)?.[0],
    );
    const bundled = [...new Set(folders)]
      .filter((one) => one !== undefined)
      .map((one) => JSON.parse(readFileSync(join(one, 'package.json'), 'utf8')) as About)
      .map(({ name, version, license }) => `${name} ${version} (${license})`);
    expect(bundled.length).toBeGreaterThan(20);
    expect(bundled.filter((one) => !text.includes(`\n\n${one}\n\n`))).toEqual([]);
    // Licences that ask for no more than their own text.
    const asksForMore = bundled.filter((one) => !/\((MIT|ISC|BSD-3-Clause)\)$/.test(one));
    // The one that also asks for a NOTICE file, if it has one, comes with execa: text and notice must be there.
    expect(asksForMore).toEqual(['human-signals 8.0.1 (Apache-2.0)']);
    for (const name of readdirSync('node_modules/human-signals'))
      if (/^(licen[cs]e|notice)/i.test(name))
        expect(text).toContain(
          readFileSync(join('node_modules/human-signals', name), 'utf8').trim(),
        );
    expect(text).toContain('Apache License');
  });

  it('holds no path of the machine it was built on', () => {
    const paths = packed.files.map(({ path }) => path);
    const here = [process.cwd(), process.env['HOME'] ?? '/nowhere'].filter((one) => one.length > 3);
    const discriminating = paths.filter((path) => {
      const text = readFileSync(path, 'utf8');
      return here.some((one) => text.includes(one));
    });
    expect(paths.length).toBeGreaterThan(20);
    expect(discriminating).toEqual([]);
  });

  it('has no dependency to fetch and runs nothing while it is installed', () => {
    const about = JSON.parse(readFileSync('package.json', 'utf8')) as Record<string, unknown>;
    expect(about['dependencies'] ?? {}).toEqual({});
    expect(about['optionalDependencies'] ?? {}).toEqual({});
    expect(about['peerDependencies'] ?? {}).toEqual({});
    const scripts = Object.keys(about['scripts'] as object);
    expect(scripts.filter((name) => /^(pre|post)?install$/.test(name))).toEqual([]);
  });

  it('names the man page, so that "man ohmward" works after an installation', () => {
    const about = JSON.parse(readFileSync('package.json', 'utf8')) as Record<string, unknown>;
    expect([about['man']].flat()).toContain('./man/ohmward.1');
  });
});

describe('installed offline into an empty folder', () => {
  let program = '';
  beforeAll(() => {
    const place = join(folder, 'empty');
    writeFileSync(join(place, 'package.json'), '{}');
    npm(['install', join(folder, packed.filename)], place);
    program = join(place, 'node_modules', '.bin', 'ohmward');
  }, 120_000);
  const run = (...args: string[]) =>
    execFileSync(program, args, { cwd: join(folder, 'empty'), env, encoding: 'utf8' });

  it('it is alone there', () => {
    const modules = join(folder, 'empty', 'node_modules');
    expect(readdirSync(modules).filter((name) => !name.startsWith('.'))).toEqual(['ohmward']);
    expect(existsSync(join(modules, 'ohmward', 'node_modules'))).toBe(false);
  });

  it('it says its version', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(run('--version')).toBe(`ohmward ${version}\n`);
  });

  it('it shows its guide', () => {
    expect(run('help')).toMatch(/^ {2}formats +File formats$/m);
    expect(run('help', 'formats')).toMatch(/^FILE FORMATS\n/);
  });

  it('it finds its library, and a session lands whole in the data folder of the user', () => {
    const out = run('run', 'reluctor-no-signal', '--bench', 'wire.plus.open', '--unattended');
    const sessions = join(folder, 'data', 'ohmward', 'sessions');
    const [name, ...more] = readdirSync(sessions).filter((one) => one.endsWith('.jsonl'));
    expect(more).toEqual([]);
    expect(out).toContain(`Saved: ${join(sessions, name!)}`);
    const log = readSessionLog(readFileSync(join(sessions, name!)));
    expect(log.verdict).toBe('whole');
    expect(log.events.find(({ type }) => type === 'concluded')).toMatchObject({
      faults: expect.arrayContaining(['wire.plus.open']),
    });
    // Customers' data: nobody else may read it.
    expect(statSync(join(sessions, name!)).mode & 0o077).toBe(0);
    expect(statSync(sessions).mode & 0o077).toBe(0);
  }, 60_000);

  it('it computes what a meter shows in a circuit of its library', () => {
    expect(
      run(
        'predict',
        'hall-module-fed',
        '--measure',
        'volts sensor.feed battery.negative',
        '--json',
      ),
    ).toContain('"unit"');
  }, 60_000);
});

describe('the man page', () => {
  it('is what the command table says; make it with: node scripts/man.mjs', () => {
    const made = execFileSync(process.execPath, ['scripts/man.mjs', '--print'], {
      encoding: 'utf8',
    });
    expect(readFileSync('man/ohmward.1', 'utf8')).toBe(made);
  }, 60_000);

  it('has no line that begins with a request nobody knows', () => {
    const page = readFileSync('man/ohmward.1', 'utf8');
    const requests = page.split('\n').filter((line) => /^[.']/.test(line));
    expect(requests.length).toBeGreaterThan(20);
    const known = /^\.(\\"|(TH|SH|SS|TP|PP|B|RI|nf|fi|RS|RE)( |$))/;
    expect(requests.filter((line) => !known.test(line))).toEqual([]);
  });

  it.skipIf(!isInstalled('groff'))('is accepted by the formatter without a warning', () => {
    const script = 'groff -man -ww -Tutf8 man/ohmward.1 2>&1 >/dev/null';
    expect(execFileSync('sh', ['-c', script], { encoding: 'utf8' })).toBe('');
  });
});
