/** Twenty mistakes in one file are told in one round, and one in a `with:` once, where its author wrote it. */
import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { Checker } from '../../src/commands/check/check-files.ts';
import { gatherFiles } from '../../src/commands/check/gather-files.ts';
import { CIRCUIT_TEXT, TREE_TEXT } from './example.ts';
import { folderWith } from './run-command.ts';

const checker = new Checker(32);
const folders: { remove: () => void }[] = [];
afterAll(() => {
  for (const { remove } of folders) remove();
});

/** Findings of a tree in a folder of its own: `code line`, only of that file. */
function found(name: string, text: string, others: Readonly<Record<string, string>> = {}) {
  const folder = folderWith({ [name]: text, ...others });
  folders.push(folder);
  const { issues } = checker.check(gatherFiles([`${folder.path}/${name}`], 'procedures'));
  return issues.map((issue) => ({
    ...issue,
    place: `${issue.code} ${issue.at.line}`,
    file: issue.at.file.slice(folder.path.length + 1),
  }));
}
const inTree = (text: string) =>
  found('rake-wheel-no-speed.yaml', text, { 'circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT }).map(
    ({ place }) => place,
  );

/** Each a mistake that a person makes, of every kind: shape, names, one step, the tree, the proof. */
const MISTAKES: readonly (readonly [string, string])[] = [
  // Shape, read as it was meant.
  [
    '    test: signal\n    state: key-on\n    say: Back-probe',
    '    tset: signal\n    state: key-on\n    say: Back-probe',
  ],
  [
    'minutes: 4\n    outcomes:\n      low: { words: resistance too low, go: shorted-turns }',
    'minuts: 4\n    outcomes:\n      low: { words: resistance too low, go: shorted-turns }',
  ],
  ['state: key-on\n    say: Turn', 'state: kye-on\n    say: Turn'],
  ['test: comparison', 'test: comparisn'],
  // Names.
  ['go: picture }', 'go: pictur }'],
  ['go: loop }', 'go: lopo }'],
  ['volts: [module.pickup-high,', 'volts: [module.pickup-hihg,'],
  [
    'unplug: [module, sensor]\n    say: Move the harness',
    'unplug: [modul, sensor]\n    say: Move the harness',
  ],
  ['conclude: [wire.high.short-to-battery]', 'conclude: [wire.high.short-to-batery]'],
  ['say: Hold the tips well', 'say: Hold the tips on {sensor.pluss.pin} well'],
  ['looks: [weak,', 'looks: [waek,'],
  // One step.
  ['    say: The resistance of the coil is too low.\n', '\n'],
  ['    repair: Repair or replace the low wire.\n', '\n'],
  ['    why: One wire and nothing else.\n', '\n'],
  ['say: Only the leads', 'say: Key on. Only the leads'],
  // The tree and its proof.
  ['go: high-to-ground }', 'go: controller-input }'],
  ['go: wheel-damaged }', 'go: no-fault }'],
  ['go: controller-ground }', 'go: low-broken }'],
  ['go: shifted-signal }', 'go: gap-wide }'],
  ['retest: [bias, counts]', 'retest: [bias, plug]'],
];

describe('twenty mistakes at once', () => {
  const all = MISTAKES.reduce((text, [right, wrong]) => {
    expect(text).toContain(right);
    return text.replace(right, wrong);
  }, TREE_TEXT);
  const together = inTree(all);

  test.each(MISTAKES)('what "%s" as "%s" tells alone is told among the others', (right, wrong) => {
    const alone = inTree(TREE_TEXT.replace(right, wrong));
    expect(alone.length).toBeGreaterThan(0);
    for (const one of alone) expect(together).toContain(one);
  });
});

test('a step that cannot be read hides no mistake elsewhere, and brings none of its own', () => {
  const text = TREE_TEXT.replace('below: 1 Mohm', 'below: 1')
    .replace('measure: { counts: module.pickup-high }', 'measure: [counts]')
    .replace('go: coil-low }', 'go: nowhere }')
    .replace('    repair: Repair or replace the low wire.\n', '\n');
  expect(inTree(text)).toEqual([
    'unknown-step 17',
    'wrong-type 45',
    'wrong-type 118',
    'missing-repair 172',
  ]);
});

test('a step that stands there twice hides no mistake of the shape elsewhere', () => {
  const text = TREE_TEXT.replace('  low-wire:\n', '  high-wire:\n')
    .replace('minutes: 1\n', 'minutes: 1 min\n')
    .replace(
      '    cautions: [raised-wheel]\n    minutes: 4',
      '    cautions: [raised-wheel]\n    minutes: 4 min',
    );
  const lineOf = (part: string) => text.slice(0, text.lastIndexOf(part)).split('\n').length;
  const told = inTree(text);
  expect(told).toContain(`repeated-key ${lineOf('  high-wire:')}`);
  expect(told).toContain(`wrong-type ${lineOf('minutes: 4 min')}`);
});

test('where not all names of a long tree are listed, it is said how many there are besides', () => {
  const text = TREE_TEXT.replace('go: coil-low }', 'go: nowhere }');
  const steps = [...TREE_TEXT.matchAll(/^ {2}[a-z-]+:$/gm)].length;
  const [issue] = found('rake-wheel-no-speed.yaml', text, {
    'circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT,
  });
  expect(issue?.fix).toMatch(new RegExp(`^known steps: bias, .* and ${steps - 12} more$`));
});

test('a decimal comma in a limit is answered with the point', () => {
  const [issue] = found(
    'rake-wheel-no-speed.yaml',
    TREE_TEXT.replace('battery: { from: 5 V', "battery: { from: '5,5 V'"),
    { 'circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT },
  );
  expect(issue?.fix).toBe('write it with a point: 5.5 V');
});

describe('a slip in "with" is told once, at its line', () => {
  const HALL = readFileSync('procedures/hall-no-signal.yaml', 'utf8');
  const lineOf = (text: string) => HALL.slice(0, HALL.indexOf(text)).split('\n').length;

  test.each([
    // A terminal that the sub-procedure puts leads on and names in its texts, and one that it hands on.
    [
      'source: module.reference',
      'source: module.refrence',
      'unknown-terminal',
      'did you mean "module.reference"?',
    ],
    // A plug that is taken off.
    [
      'ground: sensor.ground, sensor: sensor }',
      'ground: sensor.ground, sensor: sensr }',
      'unknown-part',
      'did you mean "sensor"?',
    ],
    // What is looked at.
    ['connector: connector.sensor', 'connector: connector.sensr', 'unknown-sight', ''],
    // No terminal at all.
    ['input: module.signal, sensor', 'input: nowhere at all, sensor', 'unknown-terminal', ''],
  ])('%s as "%s"', (right, wrong, code, fix) => {
    const issues = found('hall-no-signal.yaml', HALL.replace(right, wrong));
    expect(issues.map(({ file, place }) => `${file} ${place}`)).toEqual([
      `hall-no-signal.yaml ${code} ${lineOf(right)}`,
    ]);
    if (fix !== '') expect(issues[0]?.fix).toBe(fix);
  });
});

test('steps inside calls that a conclusion names wrongly are told beside all else', () => {
  const hall = readFileSync('procedures/hall-no-signal.yaml', 'utf8');
  const text = hall
    .replace('requires: [feed/light]', 'requires: [feed/lihgt]')
    .replace('retest: [level/at-plug, counts/live]', 'retest: [level/at-plgu, counts/live]')
    .replace('cannot: signal-lost', 'cannot: signal-lots');
  const errors = found('hall-no-signal.yaml', text).filter(({ severity }) => severity === 'error');
  expect(errors.map(({ words, fix }) => [words, fix])).toEqual([
    ['no step named "signal-lots"', 'did you mean "signal-lost"?'],
    ['no step named "feed/lihgt"', 'did you mean "feed/light"?'],
    ['no step named "level/at-plgu"', 'did you mean "level/at-plug"?'],
  ]);
});
