/** How many cars `check` and `predict` draw, and what they say of them to people and programs. */
import { afterAll, expect, test } from 'vitest';
import { command as check } from '../../src/commands/check.ts';
import { command as predict } from '../../src/commands/predict.ts';
import { CIRCUIT_TEXT, TREE_TEXT } from './example.ts';
import { folderWith, run } from './run-command.ts';

/** The example with a coil that counts as good up to 500 ohm only, which many good ones have more of. */
const SPOILED = TREE_TEXT.replace(
  `    measure: { ohms: [sensor.plus.pin, sensor.minus.pin] }
    expect: computed
    minutes: 3
    outcomes:
      low: { words: resistance too low, go: shorted-turns }
      good: { words: the coil is right, go: high-wire }
      high: { words: open or resistance too high, go: coil-bad }`,
  `    measure: { ohms: [sensor.plus.pin, sensor.minus.pin] }
    minutes: 3
    outcomes:
      low: { below: 400 ohm, words: resistance too low, go: shorted-turns }
      good: { from: 400 ohm, below: 700 ohm, words: the coil is right, go: high-wire }
      high: { from: 700 ohm, words: open or resistance too high, go: coil-bad }`,
);
const folder = folderWith({
  'rake-wheel-no-speed.yaml': SPOILED,
  'circuits/rake-wheel-pickup.yaml': CIRCUIT_TEXT,
});
afterAll(folder.remove);

interface Found {
  readonly code: string;
  readonly words: string;
  readonly cars?: readonly {
    readonly fault: string;
    readonly wrong: number;
    readonly of: number;
    readonly share: number;
    readonly value: { readonly key: string; readonly low: number } | null;
  }[];
}
const lostOf = (found: readonly Found[]) =>
  found.flatMap(({ cars = [] }) => cars).find(({ fault }) => fault === 'wire.high.open')!;

test('JSON and SARIF carry how many cars of how many, and the value that breaks them', async () => {
  expect(SPOILED).not.toBe(TREE_TEXT);
  const { code, out } = await run(check, [folder.path, '--json']);
  expect(code).toBe(1);
  const { issues } = JSON.parse(out) as { issues: Found[] };
  const lost = lostOf(issues);
  expect(lost.of).toBe(256);
  expect(lost.share).toBeCloseTo(lost.wrong / 256, 12);
  // 600 ohm +/- 15 % is 690 ohm at most, so what reads over 700 ohm is a warm coil of many ohms.
  expect(lost.value).toMatchObject({ key: expect.stringMatching(/^(sensor\.ohms|temperature)$/) });
  const sarif = JSON.parse((await run(check, [folder.path, '--sarif'])).out) as {
    runs: { results: { message: { text: string }; properties?: { cars: Found['cars'] } }[] }[];
  };
  const results = sarif.runs[0]!.results;
  const same = results.map(({ properties, message }) => ({
    code: '',
    words: message.text,
    cars: properties?.cars ?? [],
  }));
  expect(lostOf(same)).toEqual(lost);
  expect(same.some(({ words }) => /wire\.high\.open: \d+ of 256 cars/.test(words))).toBe(true);
});

test('--cars says another number, and only a number', async () => {
  const { out } = await run(check, [folder.path, '--json', '--cars', '100']);
  const { issues } = JSON.parse(out) as { issues: Found[] };
  expect(lostOf(issues).of).toBe(100);
  for (const wrong of ['0', '1.5', 'many', '99999', '-3']) {
    const said = await run(check, [folder.path, `--cars=${wrong}`]);
    expect(said.code).toBe(2);
    expect(said.err).toContain('--cars is a whole number from 1 to 10000');
  }
});

test('predict draws a range over the same cars, and more of them on demand', async () => {
  const circuit = `${folder.path}/circuits/rake-wheel-pickup.yaml`;
  const measure = [
    '--measure',
    'ohms sensor.plus.pin sensor.minus.pin',
    '--unplug',
    'sensor',
    '--json',
  ];
  const range = async (...more: string[]) => {
    const { out, err } = await run(predict, [circuit, ...measure, ...more]);
    expect(err).toBe('');
    return JSON.parse(out) as { low: number; high: number };
  };
  const few = await range('--cars', '4');
  const usual = await range();
  const many = await range('--cars', '2000');
  expect(await range('--cars', '256')).toEqual(usual);
  expect(usual.high - usual.low).toBeGreaterThan(few.high - few.low);
  expect(many.low).toBeLessThanOrEqual(usual.low);
  expect(many.high).toBeGreaterThan(usual.high);
  expect((await run(predict, [circuit, ...measure, '--cars', 'x'])).code).toBe(2);
});
