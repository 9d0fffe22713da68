/** The command `check`: what it finds between files, its forms, its exit codes. */
import { mkdirSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, test } from 'vitest';
import { Checker, type CheckReport } from '../../src/commands/check/check-files.ts';
import { type Gathered, gatherFiles } from '../../src/commands/check/gather-files.ts';
import { ISSUE_CODES } from '../../src/commands/check/issue-codes.ts';
import { watchFiles } from '../../src/commands/check/watch-files.ts';
import { command } from '../../src/commands/check.ts';
import { findSubject, linkSubject, openDesk } from '../../src/commands/session/open-desk.ts';
import { isProblem } from '../../src/source/problem.ts';
import { CIRCUIT_TEXT, TREE_TEXT } from './example.ts';
import { folderWith, run } from './run-command.ts';

const GOOD = {
  'rake-wheel-no-speed.yaml': TREE_TEXT,
  'circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT,
};
const BAD_TREE = TREE_TEXT.replace('go: high-wire }', 'go: coil-bad }');

let folder = folderWith({});
function files(wanted: Readonly<Record<string, string>>): string {
  folder.remove();
  folder = folderWith(wanted);
  return folder.path;
}
afterEach(() => folder.remove());
const jobs = folderWith({ ...GOOD, 'jobs/blue-baler.yaml': '' });
afterAll(() => jobs.remove());

/** One for all: it keeps the library, which would take a second to load and try with every fault each time. */
const shared = new Checker();

/** `code file:line` of everything found in a folder. */
function foundIn(path: string): string[] {
  const report = shared.check(gatherFiles([path], 'procedures'));
  return report.issues.map(
    ({ code, at }) => `${code} ${at.file.slice(path.length + 1)}:${at.line}`,
  );
}

describe('exit codes', () => {
  test('0 for files without findings', async () => {
    const { code, out } = await run(command, [files(GOOD)]);
    expect(out).toBe('2 files, 1 tree proved: no errors, no warnings\n');
    expect(code).toBe(0);
  });

  test('0 for warnings only', async () => {
    const path = files({
      ...GOOD,
      'rake-wheel-no-speed.yaml': TREE_TEXT.replace(/ +why: One wire and nothing else.\n/, ''),
    });
    const { code, out } = await run(command, [path]);
    expect(out).toContain('warning[missing-why]');
    expect(code).toBe(0);
  });

  test('1 for an error, with address, line and way out', async () => {
    const path = files({ ...GOOD, 'rake-wheel-no-speed.yaml': BAD_TREE });
    const { code, out } = await run(command, [join(path, 'rake-wheel-no-speed.yaml')]);
    expect(out).toMatch(
      /rake-wheel-no-speed\.yaml:73:7: error\[wrong-conclusion\] "good" of "coil" loses/,
    );
    expect(out).toMatch(/^ {5}\| {7}\^~~~$/m);
    expect(out).toContain('let it lead to "high-wire"');
    expect(code).toBe(1);
  });

  test('a circuit that cannot be used is told with the tree that names it, though only the tree was asked for', async () => {
    const path = files({
      ...GOOD,
      'circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT.replace('ohms: 600 ohm', 'ohms: 600 oh'),
    });
    const { code, out } = await run(command, [join(path, 'rake-wheel-no-speed.yaml')]);
    expect(out).toMatch(/circuits\/rake-wheel-pickup\.yaml:\d+:\d+: error\[bad-value\]/);
    expect(out).toMatch(/rake-wheel-no-speed\.yaml:4:10: error\[unknown-circuit\]/);
    expect(code).toBe(1);
  });

  test('what holds back the proof says that there is more to come', async () => {
    const path = files({
      ...GOOD,
      'rake-wheel-no-speed.yaml': BAD_TREE.replace('below: 1 Mohm', 'below: 1 V'),
    });
    const { out } = await run(command, [path]);
    expect(out).toMatch(
      /: 1 error, no warnings; 1 tree is not proved before its errors are fixed\n$/,
    );
    const broken = files({ ...GOOD, 'rake-wheel-no-speed.yaml': `${BAD_TREE}\n  x` });
    const { out: other } = await run(command, [broken]);
    expect(other).toMatch(/; 1 tree is not proved before its errors are fixed\n$/);
  });

  test('1 for a file that is not there', async () => {
    const { code, out } = await run(command, [join(files({}), 'none.yaml')]);
    expect(out).toContain('error[unreadable-file] there is no such file');
    expect(code).toBe(1);
  });

  test('2 for options that do not go together', async () => {
    expect((await run(command, ['--json', '--sarif'])).code).toBe(2);
    expect((await run(command, ['--color', 'pink'])).code).toBe(2);
  });
});

describe('between files', () => {
  test('the kind of a file is read from its top keys', () => {
    expect(foundIn(files({ 'notes.yaml': 'procedur: x\n' }))).toEqual([
      'unknown-kind notes.yaml:1',
    ]);
    expect(foundIn(files({ 'list.yaml': '- 1\n' }))).toEqual(['unknown-kind list.yaml:1']);
    const set = (name: string) =>
      files({ 'w.yaml': `assignment: w\ndrills:\n  - { procedure: ${name}, level: named }\n` });
    expect(foundIn(set('nowhere'))).toEqual(['unknown-procedure w.yaml:3']);
  });

  test('answers and drill actions are checked as what they are, and named so', async () => {
    const path = files({
      'a.yaml': 'procedure: hall-no-signal\nanswers:\n  - { step: prepare, done: true }\n',
      'b.yaml':
        'procedure: hall-no-signal\nactions:\n  - { measure: volts sensor.feed battery.negative }\n',
      'c.yaml': 'answers:\n  - { reading: 4.9 V, wavelength: long }\n',
    });
    const { out } = await run(command, [path, '--json']);
    const { files: read, issues } = JSON.parse(out);
    expect(read.map(({ kind }: { kind: string }) => kind)).toEqual([
      'answers',
      'actions',
      'answers',
    ]);
    expect(issues).toMatchObject([{ code: 'unknown-key', line: 2 }]);
  });

  test('drill actions name tests, terminals and repairs that are there, each told at its line', () => {
    const told = (...actions: string[]) => {
      const text = [
        'procedure: hall-module-fed',
        'actions:',
        ...actions.map((one) => `  - ${one}`),
      ];
      const path = files({ 'a.yaml': `${text.join('\n')}\n` });
      return shared
        .check(gatherFiles([path], 'procedures'))
        .issues.map(({ code, severity, at, words, fix }) =>
          [severity, code, at.line, words, fix].join(' | '),
        );
    };
    expect(
      told(
        '{ test: sensor.feed.volts, acknowledge: true }',
        '{ test: sensor.feed.vols }',
        '{ measure: volts sensr.feed battery.negative }',
        '{ measure: vols sensor.feed battery.negative }',
        '{ measure: ohms sensor.feed battery.negative }',
        '{ measure: volts sensor.signal.pin battery.negative }',
        '{ follow: true }',
        '{ diagnose: [sensor.replce] }',
        '{ note: and then }',
      ),
    ).toEqual([
      'error | unknown-test | 4 | there is no test "sensor.feed.vols" | did you mean "sensor.feed.volts"?',
      expect.stringMatching(
        /^error \| refused-test \| 5 \| there is no terminal "sensr.feed"; did you mean/,
      ),
      expect.stringMatching(/^error \| bad-test \| 6 \| .*vols/),
      expect.stringMatching(
        /^warning \| refused-test \| 7 \| the bench stops this test: .* \| it costs safety points/,
      ),
      expect.stringMatching(/^error \| refused-test \| 8 \| /),
      expect.stringMatching(/^error \| nothing-to-follow \| 9 \| /),
      'error | unknown-repair | 10 | this circuit has no repair "sensor.replce" | did you mean "sensor.replace"?',
      expect.stringMatching(/^error \| after-the-end \| 11 \| /),
    ]);
  });

  test('answers and drill actions name a procedure that is there', () => {
    const answers = (name: string) =>
      foundIn(files({ 'a.yaml': `procedure: ${name}\nanswers:\n  - { conclude: true }\n` }));
    expect(answers('hall-no-signal')).toEqual([]);
    expect(answers('hall-no-signl')).toEqual(['unknown-procedure a.yaml:1']);
    expect(answers('bypass')).toEqual(['unknown-procedure a.yaml:1']); // a sub-procedure
    const actions = (name: string) =>
      foundIn(files({ 'a.yaml': `procedure: ${name}\nactions:\n  - { give-up: true }\n` }));
    expect(actions('hall-module-fed')).toEqual([]);
    expect(actions('nowhere')).toEqual(['unknown-procedure a.yaml:1']);
  });

  test('two files with one name, and a file named otherwise', () => {
    const found = foundIn(files({ ...GOOD, 'circuits/second.yaml': CIRCUIT_TEXT }));
    expect(found).toEqual([
      'repeated-name circuits/second.yaml:1',
      'file-name circuits/second.yaml:1',
    ]);
  });

  describe('a job', () => {
    const { path } = jobs;
    /** What is found of a job beside the good files, whose tree is proved once for all. */
    const told = (...lines: readonly string[]) => {
      const head = ['job: blue-baler', 'complaint: No speed is shown.'];
      const text = [...head, ...lines, ''].join('\n');
      writeFileSync(join(path, 'jobs/blue-baler.yaml'), text);
      return shared.check(gatherFiles([path], 'procedures')).issues;
    };
    const codes = (...lines: readonly string[]) =>
      told(...lines).map(({ code, at }) => `${code} ${at.file.slice(path.length + 1)}:${at.line}`);
    const TREE = 'procedure: rake-wheel-no-speed';

    test('names a procedure, terminals and parts that exist', () => {
      const rest = [
        'terminals:',
        '  sensor.plus: { pin: 1, colour: RD }',
        '  sensor.puls: { pin: 2 }',
        'earlier-repairs:',
        '  - { words: new pickup, part: pickup }',
      ];
      expect(codes(TREE, ...rest)).toEqual([
        'unknown-terminal jobs/blue-baler.yaml:6',
        'unknown-part jobs/blue-baler.yaml:8',
      ]);
      expect(codes('procedure: rake-wheel-no-sped', ...rest)).toEqual([
        'unknown-procedure jobs/blue-baler.yaml:3',
      ]);
    });

    test('is simulated with a fault that its circuit has, or healthy', () => {
      expect(codes(TREE, 'simulated-fault: wire.high.open')).toEqual([]);
      expect(codes(TREE, 'simulated-fault: healthy')).toEqual([]);
      expect(codes(TREE, 'simulated-fault: wire.high.open', 'intermittent: true')).toEqual([]);
      expect(codes(TREE, 'simulated-fault: healthy', 'intermittent: true')).toEqual([
        'missing-key jobs/blue-baler.yaml:5',
      ]);
      const unknown = told(TREE, 'simulated-fault: wire.hihg.open');
      expect(
        unknown.map(({ code, severity, at, words, fix }) => [
          ...[code, severity, at.line, at.column],
          ...[words, fix],
        ]),
      ).toEqual([
        [
          ...['unknown-fault', 'error', 4, 18],
          'circuit "rake-wheel-pickup" has no fault "wire.hihg.open"',
          'did you mean "wire.high.open"?',
        ],
      ]);
    });
  });

  test('a file is too large to be one that a person writes', () => {
    expect(
      foundIn(files({ 'big.yaml': `procedure: big\nsteps: [${'1, '.repeat(21_000)}]\n` })),
    ).toEqual(['file-too-large big.yaml:2']);
  });

  test('a single file finds its circuit beside it', () => {
    const path = files({ ...GOOD, 'circuits/broken.yaml': 'circuit: broken\n' });
    const report = shared.check(
      gatherFiles([join(path, 'rake-wheel-no-speed.yaml')], 'procedures'),
    );
    expect(report.issues).toEqual([]);
    expect(report.proofs).toHaveLength(1);
  });

  const broken = (name: string) => shipped(name).replace(/^title:/m, 'titel:');
  test.each([
    ['a broken circuit', 'circuits/hall-module-fed.yaml', broken],
    ['a broken sub-procedure', 'families/tap-at-plug.yaml', broken],
    ['a sub-procedure that is no YAML', 'families/tap-at-plug.yaml', () => 'procedure: [\n'],
  ])('no shipped file takes the place of %s', async (_, name, text) => {
    const path = files({
      'hall-no-signal.yaml': shipped('hall-no-signal.yaml'),
      [name]: text(name),
    });
    const tree = join(path, 'hall-no-signal.yaml');
    const { issues, proofs } = new Checker(2).check(gatherFiles([tree], 'procedures'));
    const errors = issues.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ at }) => at.file)).toContain(join(path, name));
    expect(proofs).toEqual([]);
    const desk = await openDesk({ env: {}, cwd: process.cwd() } as never, 'test', {
      file: tree,
      preview: true,
    });
    if (isProblem(desk)) throw new Error(desk.problem);
    const subject = findSubject(desk, tree);
    if (isProblem(subject)) throw new Error(subject.problem);
    expect(linkSubject(desk, subject, 'combustion')).toMatchObject({
      problem: expect.stringContaining(join(path, name)),
    });
  });

  test('a sub-procedure is checked through the trees that use it', () => {
    const one = readSub();
    const path = files({
      'families/one-wire.yaml': one,
      'tree.yaml': callerTree(),
      'circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT,
    });
    const report = shared.check(gatherFiles([join(path, 'families/one-wire.yaml')], 'procedures'));
    expect(
      report.issues.map(({ code, at }) => [code, at.file.endsWith('families/one-wire.yaml')]),
    ).toEqual([['range-gap', true]]);
  });
});

describe('forms', () => {
  test('JSON holds every issue with its place, and the table on demand', async () => {
    const path = files({ ...GOOD, 'rake-wheel-no-speed.yaml': BAD_TREE });
    const { out, code } = await run(command, [path, '--json', '--table']);
    expect(code).toBe(1);
    const json = JSON.parse(out) as {
      errors: number;
      issues: { code: string; line: number; column: number; file: string }[];
      proofs: {
        procedure: string;
        rows: { fault: string; ends: { step: string; share: number }[] }[];
      }[];
    };
    expect(json.errors).toBe(
      json.issues.filter(({ code: one }) => one === 'wrong-conclusion').length,
    );
    const wrong = json.issues.find(({ code: one }) => one === 'wrong-conclusion');
    expect(wrong).toMatchObject({ line: 73, column: 7 });
    const row = json.proofs[0]!.rows.find(({ fault }) => fault === 'wire.low.open')!;
    expect(row.ends).toMatchObject([{ step: 'coil-bad', share: 1 }]);
  });

  test('the table names what goes wrong', async () => {
    const path = files({ ...GOOD, 'rake-wheel-no-speed.yaml': BAD_TREE });
    const { out } = await run(command, [path, '--table']);
    expect(out).toMatch(/^wire\.low\.open +100 % +coil-bad +WRONG +3\.0 +18$/m); // by hand: bias, loop, coil; 8 + 4 + 6, the way to each among them
    expect(out).toMatch(/^healthy +100 % +no-fault +ok +4\.0 +17$/m); // 16.5: see prove-procedure.test.ts
  });

  test('colours only when asked for', async () => {
    const path = files({ 'notes.yaml': 'procedur: x\n' });
    expect((await run(command, [path])).out).not.toContain('\u001b');
    const coloured = (await run(command, [path, '--color', 'always'])).out;
    expect(coloured).toContain('\u001b[1;31merror[unknown-kind]\u001b[0m');
  });

  test('text of an author cannot drive the terminal', async () => {
    const { out } = await run(command, [
      files({ 'evil.yaml': 'procedure: "\\e[2J"\nx\u0007y: 1\n' }),
      '--color',
      'never',
    ]);
    expect([...out].filter((sign) => sign < ' ' && sign !== '\n')).toEqual([]);
  });

  test('what a tree costs beside what it could', async () => {
    const { out } = await run(command, [join(files(GOOD), 'rake-wheel-no-speed.yaml'), '--cost']);
    const [, tree, best, guided] = out
      .match(
        /: ([\d.]+) minutes in all on average \(with questions, preparations and cars with nothing wrong\), counted as for suggestions; .* takes ([\d.]+).* takes ([\d.]+)$/m,
      )!
      .map(Number);
    expect(best!).toBeLessThanOrEqual(guided! + 0.05);
    expect(best!).toBeLessThanOrEqual(tree! + 0.05);
  });
});

describe('watching', () => {
  test('a save is checked again, a touch is not, only what changed is computed, and the end leaves nothing open', async () => {
    const twin = TREE_TEXT.replace('procedure: rake-wheel-no-speed', 'procedure: twin');
    const path = files({ ...GOOD, 'twin.yaml': twin });
    const tree = join(path, 'rake-wheel-no-speed.yaml');
    const proofOf = (report: CheckReport, name: string) =>
      report.proofs.find(({ path: file }) => file.endsWith(name))?.proof;
    const watchers = () =>
      process.getActiveResourcesInfo().filter((name) => name === 'FSEventWrap').length;
    const watchersBefore = watchers();
    const reports: CheckReport[] = [];
    const stop = new AbortController();
    const checker = new Checker();
    let came: () => void = () => {};
    const watching = watchFiles<Gathered>({
      read: () => {
        came();
        return gatherFiles([path], 'procedures');
      },
      foldersOf: ({ folders }) => folders,
      contentOf: ({ files: all }) => JSON.stringify(all),
      changed: (gathered) => reports.push(checker.check(gathered)),
      signal: stop.signal,
    });
    const readAgain = () => new Promise<void>((resolve) => (came = resolve));
    expect(reports.map(({ issues }) => issues.length)).toEqual([0]);
    const touched = readAgain();
    utimesSync(tree, new Date(1e12), new Date(1e12));
    await touched;
    expect(reports).toHaveLength(1);
    const saved = readAgain();
    writeFileSync(tree, BAD_TREE);
    await saved;
    expect(reports).toHaveLength(2);
    expect(proofOf(reports[1]!, 'twin.yaml')).toBe(proofOf(reports[0]!, 'twin.yaml'));
    expect(proofOf(reports[1]!, 'no-speed.yaml')).not.toBe(proofOf(reports[0]!, 'no-speed.yaml'));
    expect(reports.at(-1)!.issues.map(({ code }) => code)).toContain('wrong-conclusion');
    const made = readAgain();
    mkdirSync(join(path, 'jobs'));
    await made;
    rmSync(join(path, 'jobs'), { recursive: true });
    expect(watchers()).toBeGreaterThan(watchersBefore);
    stop.abort();
    await watching;
    await expect.poll(watchers, { timeout: 15_000 }).toBe(watchersBefore);
  });
});

function shipped(name: string): string {
  return readFileSync(join('procedures', name), 'utf8');
}

function readSub(): string {
  return [
    'procedure: one-wire',
    'title: Does a wire carry?',
    'needs: { here: one end, there: the other end }',
    'start: through',
    'steps:',
    '  through:',
    '    state: key-off',
    '    unplug: [sensor, module]',
    '    say: One lead on {here}, one on {there}.',
    '    why: One wire and nothing else.',
    '    measure: { ohms: [$here, $there] }',
    '    outcomes:',
    '      good: { below: 2 ohm, go: carries }',
    '      high: { from: 3 ohm, go: broken }',
    '  carries: { result: carries }',
    '  broken: { result: broken }',
    '',
  ].join('\n');
}

function callerTree(): string {
  return [
    'procedure: tree',
    'title: Calls the other',
    'circuit: rake-wheel-pickup',
    'start: wire',
    'steps:',
    '  wire:',
    '    use: one-wire',
    '    with: { here: sensor.plus, there: module.pickup-high }',
    '    results: { carries: sound, broken: broken }',
    '  broken: { conclude: [wire.high.open], say: It does not carry., repair: Mend it., retest: [wire/through] }',
    '  sound: { conclude: [], say: It carries., repair: None. }',
    '',
  ].join('\n');
}

test('every code that is told is explained in the list of codes', () => {
  const folders = ['src/source', 'src/procedure', 'src/proof', 'src/commands/check'];
  const told = folders
    .flatMap((one) => readdirSync(one).map((name) => join(one, name)))
    .filter((path) => path.endsWith('.ts') && !path.endsWith('issue-codes.ts'))
    .flatMap((path) => [
      ...readFileSync(path, 'utf8').matchAll(
        /(?:code: |add\(\s*(?:step\.id,\s*)?|refused\(\s*whole,\s*)'([a-z]+-[a-z-]+)'/g,
      ),
    ])
    .map((match) => match[1]!);
  expect(told.length).toBeGreaterThan(60);
  expect([...new Set(told)].filter((code) => ISSUE_CODES[code] === undefined)).toEqual([]);
});
