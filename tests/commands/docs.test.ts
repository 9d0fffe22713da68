import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { loadJob } from '../../src/procedure/load-job.ts';
import { loadAnswers } from '../../src/session/answers-file.ts';
import { isInstalled } from '../installed.ts';
import { makePlace, type Place, runProgram, sessionFiles } from './program.ts';

const PAGES = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync('docs')
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
];

/** Files of the project that a text names. */
function namedIn(text: string): string[] {
  return [...text.matchAll(/\b(?:src|tests|docs|scripts)\/[\w./*-]*[\w*]/g)].map(([one]) => one);
}

it('most pages name files', () => {
  const naming = PAGES.filter((page) => namedIn(readFileSync(page, 'utf8')).length > 0);
  expect(naming.length).toBeGreaterThan(PAGES.length / 2);
});

describe.each(PAGES)('%s', (page) => {
  const text = readFileSync(page, 'utf8');

  it('names only files that are there', () => {
    const named = namedIn(text);
    const missing = [...new Set(named)].filter((path) =>
      path.includes('*')
        ? !readdirSync(dirname(path)).some((name) =>
            new RegExp(
              `^${path
                .slice(dirname(path).length + 1)
                .replaceAll('.', '\\.')
                .replace('*', '.*')}$`,
            ).test(name),
          )
        : !existsSync(path),
    );
    expect(missing).toEqual([]);
  });

  it('links only to pages that are there', () => {
    const links = [...text.matchAll(/\]\((?!https?:)([^)#]+)[^)]*\)/g)].map(([, to]) => to!);
    expect(links.filter((to) => !existsSync(join(dirname(page), to)))).toEqual([]);
  });
});

it('a page for users gives a source or says "common practice", and remembers nothing', () => {
  const trees = ['procedures', 'procedures/circuits', 'procedures/families', 'procedures/jobs'];
  const shipped = trees.flatMap((folder) => readdirSync(folder).map((name) => join(folder, name)));
  const pages = [...PAGES, 'man/ohmward.1', ...shipped.filter((path) => /\.(yaml|1)$/.test(path))];
  const remembered = pages
    .filter((page) => page !== 'DEVELOPERS.md')
    .flatMap((page) => {
      const lines = readFileSync(page, 'utf8').split('\n');
      const found = lines.findIndex((line) =>
        /from memory|recalled|at hand to check|no copy/i.test(line),
      );
      return found < 0 ? [] : [`${page}:${found + 1}`];
    });
  expect(remembered).toEqual([]);
});

it('every constant in docs/maths.md has the value that its file gives it', () => {
  const rows = [
    ...readFileSync('docs/maths.md', 'utf8').matchAll(/^\| (\w+) \| ([^|]+) \| (src\/[^|]+) \|/gm),
  ].map(([, name, value, file]) => ({ name: name!, value: value!, file: file! }));
  expect(rows.length).toBeGreaterThan(50);
  const wrong = rows.filter(({ name, value, file }) => {
    const written = new RegExp(`\\b${name}\\b(?:: \\w+)?\\s*[=:]\\s*([\\d._e+-]+)`).exec(
      readFileSync(file, 'utf8'),
    )?.[1];
    const plain = (number: string) => Number(number.replaceAll('_', ''));
    return written === undefined || plain(written) !== plain(value);
  });
  expect(wrong).toEqual([]);
});

it('the examples in docs/formats.md are a job and answers without a mistake', () => {
  const blocks = [...readFileSync('docs/formats.md', 'utf8').matchAll(/```yaml\n([\s\S]*?)```/g)];
  const [job, answers, ...more] = blocks.map(([, text]) => text!);
  expect(more).toEqual([]);
  expect(loadJob(job!, 'job.yaml')).toMatchObject({
    issues: [],
    value: { job: { codes: ['P0335'] } },
  });
  expect(loadAnswers(answers!, 'answers.yaml').issues).toEqual([]);
});

describe('the verifier in docs/formats.md', () => {
  let place: Place;
  beforeEach(() => {
    place = makePlace();
  });
  afterEach(() => place.remove());
  const script =
    /```python\n([\s\S]*?)```/.exec(readFileSync('docs/formats.md', 'utf8'))?.[1] ?? '';

  it('has at most twenty lines', () => {
    expect(script.trim().split('\n').length).toBeLessThanOrEqual(20);
    expect(script).toContain('sha256');
  });

  it.skipIf(!isInstalled('python3'))(
    'agrees on a session, and sees a changed digit',
    async () => {
      const verifier = join(place.home, 'verify.py');
      writeFileSync(verifier, script);
      await runProgram(place, [
        'run',
        'reluctor-no-signal',
        '--bench',
        'wire.plus.open',
        '--unattended',
      ]);
      const [path] = sessionFiles(place);
      const head = JSON.parse(
        (
          await runProgram(place, [
            'run',
            'reluctor-no-signal',
            '--bench',
            'healthy',
            '--unattended',
            '--json',
          ])
        ).out,
      ) as { head: { hash: string } };
      const second = sessionFiles(place).find((one) => one !== path)!;
      const run = (file: string) => {
        try {
          return execFileSync('python3', [verifier, file], { encoding: 'utf8', stdio: 'pipe' });
        } catch (error) {
          return (error as { stderr: string }).stderr;
        }
      };
      expect(run(second)).toContain(head.head.hash);
      const text = readFileSync(path!, 'utf8');
      expect(run(path!)).toMatch(/^whole: \d+ events/);
      // The first digit that was typed becomes another; which one it is hangs on the car that was drawn.
      const changed = text.replace(/("typed":")(\d)/, (_, before, digit) =>
        digit === '9' ? `${before}8` : `${before}${Number(digit) + 1}`,
      );
      expect(changed).not.toBe(text);
      writeFileSync(path!, changed);
      expect(run(path!)).toMatch(/line \d+/);
      writeFileSync(path!, text.slice(0, -20));
      expect(run(path!)).toMatch(/line \d+/);
    },
    60_000,
  );
});
