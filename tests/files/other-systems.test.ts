/** What can be tried here of other systems: line ends, names that differ by capitals only, the rules of paths, how a checkout writes its files. */
import { readFileSync } from 'node:fs';
import { win32 } from 'node:path';
import { build } from 'esbuild';
import { execa } from 'execa';
import { describe, expect, it } from 'vitest';
import { loadCircuit } from '../../src/circuit/load-circuit.ts';
import { sessionFileName } from '../../src/files/safe-name.ts';
import { readSessionLog } from '../../src/log/read-session.ts';
import { loadCautions } from '../../src/procedure/cautions.ts';
import { loadJob } from '../../src/procedure/load-job.ts';
import { parseProcedure } from '../../src/procedure/parse-procedure.ts';
import { loadAnswers } from '../../src/session/answers-file.ts';
import fc from '../seeded-check.ts';

const asOnWindows = (text: string) => text.replaceAll('\n', '\r\n');

describe('a file with the line ends of Windows', () => {
  it.each<[string, (text: string, file: string) => unknown]>([
    ['procedures/circuits/hall-relay-fed.yaml', (text, file) => loadCircuit(text, file).value],
    [
      'procedures/hall-relay-no-signal.yaml',
      (text, file) => parseProcedure(text, file).value?.draft,
    ],
    [
      'procedures/families/track-sweep.yaml',
      (text, file) => parseProcedure(text, file).value?.draft,
    ],
    ['procedures/cautions.yaml', (text, file) => loadCautions(text, file).value],
    ['procedures/jobs/rainy-camshaft.yaml', (text, file) => loadJob(text, file).value],
    ['sessions/sample-rainy-camshaft.answers.yaml', (text, file) => loadAnswers(text, file).value],
  ])('%s says the same', (path, load) => {
    const text = readFileSync(path, 'utf8');
    const said = (of: string) => {
      // Beside what it says, what was read keeps the text itself.
      const { source: _, ...rest } = load(of, path) as { readonly source?: unknown };
      return JSON.stringify(rest);
    };
    expect(said(text).length).toBeGreaterThan(100);
    expect(said(asOnWindows(text))).toBe(said(text));
  });

  it('that is a session is another record, and is told as such', () => {
    const text = readFileSync('sessions/sample-rainy-camshaft.jsonl', 'utf8');
    expect(readSessionLog(Buffer.from(text)).verdict).toBe('whole');
    expect(readSessionLog(Buffer.from(asOnWindows(text)))).toMatchObject({
      verdict: 'damaged',
      firstBadLine: 1,
    });
  });
});

it('git writes a checkout with the same line ends everywhere, records among them', async () => {
  const files = ['sessions/sample-rainy-camshaft.jsonl', 'procedures/cautions.yaml', 'src/cli.ts'];
  const { stdout, failed } = await execa('git', ['check-attr', 'eol', '--', ...files], {
    reject: false,
  });
  // Without git the file that it reads stands for it.
  if (failed) expect(readFileSync('.gitattributes', 'utf8')).toContain('* text=auto eol=lf');
  else expect(stdout.split('\n').map((line) => line.split(': ')[2])).toEqual(['lf', 'lf', 'lf']);
});

it('no two sessions differ by capitals only, which some file systems do not tell apart', () => {
  fc.assert(
    fc.property(fc.string(), fc.string(), (one, other) => {
      const names = [one, other].map((words) =>
        sessionFileName('2031-05-06T09:08:09Z', words, '00000001'),
      );
      const [first, second] = names.map((name) => name.toLowerCase());
      expect(first === second).toBe(names[0] === names[1]);
    }),
  );
});

describe('paths by the rules of Windows', () => {
  const NAMES = Object.keys(win32).filter((name) => /^[a-z]+$/i.test(name));
  /** A module, with all that it loads, that reckons with drives and backslashes. */
  const onWindows = async <Module>(entry: string): Promise<Module> => {
    const rules = `import paths from 'path'; const rules = paths.win32; export default rules; export const { ${NAMES.join(', ')} } = rules;`;
    const { outputFiles } = await build({
      ...{ entryPoints: [entry], bundle: true, write: false, format: 'esm', platform: 'node' },
      plugins: [
        {
          name: 'paths of Windows',
          setup: ({ onResolve, onLoad }) => {
            onResolve({ filter: /^node:path$/ }, () => ({ path: 'win32', namespace: 'win32' }));
            onLoad({ filter: /./, namespace: 'win32' }, () => ({ contents: rules }));
          },
        },
      ],
    });
    const code = Buffer.from(outputFiles![0]!.contents).toString('base64');
    const made: Module = await import(`data:text/javascript;base64,${code}`);
    return made;
  };
  const folders = () =>
    onWindows<typeof import('../../src/files/folders.ts')>('src/files/folders.ts');

  it.each([
    ['shop', 'D:\\work\\shop'],
    ['~\\shop', 'C:\\Users\\r$$x\\shop'],
    ['~/shop', 'C:\\Users\\r$$x\\shop'],
    ['E:\\stick', 'E:\\stick'],
    ['\\\\server\\share\\jobs', '\\\\server\\share\\jobs'],
  ])('a folder typed as %s is %s', async (typed, folder) => {
    const { folderTyped, sessionsFolder } = await folders();
    const home = 'C:\\Users\\r$$x';
    expect(folderTyped(typed, { home, cwd: 'D:\\work' })).toBe(folder);
    const where = { env: { HOME: home }, cwd: 'D:\\work', settings: typed };
    expect(sessionsFolder(where)).toBe(folder.replace('D:\\work', () => home));
  });

  it('a folder of the system without its drive counts for nothing', async () => {
    const { dataFolder } = await folders();
    const data = (given: string) => dataFolder({ HOME: 'C:\\Users\\r', XDG_DATA_HOME: given });
    expect(data('E:\\data')).toBe('E:\\data\\ohmward');
    for (const given of ['data', 'E:data'])
      expect(data(given)).toBe('C:\\Users\\r\\.local\\share\\ohmward');
  });

  it('a tree on another drive lies below no folder, and one whose name begins with dots does', async () => {
    const { isBelow } =
      await onWindows<typeof import('../../src/files/is-below.ts')>('src/files/is-below.ts');
    const below = (file: string) => isBelow(file, 'D:\\lib');
    expect(['D:\\lib\\x.yaml', 'd:\\LIB\\..x\\y.yaml'].map(below)).toEqual([true, true]);
    expect(['C:\\lib\\x.yaml', 'D:\\library\\x.yaml', 'D:\\x.yaml', 'D:\\lib'].map(below)).toEqual([
      false,
      false,
      false,
      false,
    ]);
  });
});
