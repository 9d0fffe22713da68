/** YAML as plain data with places, and what is refused. Lines and columns are counted by hand. */
import { describe, expect, test } from 'vitest';
import { MAX_CHARACTERS, parseYaml } from '../../src/source/parse-yaml.ts';

const TEXT = [
  'name: feed',
  'steps:',
  '  low: { go: next, looks: [dim, dark] }',
  '  high:',
  '    go: end',
  '',
].join('\n');

function codes(text: string): string[] {
  return parseYaml(text, 'x.yaml').issues.map(({ code, at }) => `${code} ${at.line}:${at.column}`);
}

describe('data', () => {
  test('is plain, in the order of the file, without prototype', () => {
    const { value, issues } = parseYaml(TEXT, 'x.yaml');
    expect(issues).toEqual([]);
    expect(JSON.stringify(value!.data)).toBe(
      '{"name":"feed","steps":{"low":{"go":"next","looks":["dim","dark"]},"high":{"go":"end"}}}',
    );
    expect(Object.getPrototypeOf(value!.data)).toBeNull();
  });

  test.each([
    // YAML 1.2 core: these words of YAML 1.1 are texts
    ['on: yes', { on: 'yes' }],
    ['time: 12:30', { time: '12:30' }],
    ['a: 010', { a: 10 }],
    ['a: 1e3', { a: 1000 }],
    ['a: "14.8"', { a: '14.8' }],
    ['a: ~', { a: null }],
  ])('%s', (text, data) => {
    expect(JSON.parse(JSON.stringify(parseYaml(text, 'x').value!.data))).toEqual(data);
  });
});

describe('places', () => {
  const { locate } = parseYaml(TEXT, 'x.yaml').value!;
  const place = (...args: Parameters<typeof locate>) => {
    const { line, column, endColumn } = locate(...args);
    return [line, column, endColumn];
  };

  test('of values, keys and items', () => {
    expect(place(['name'])).toEqual([1, 7, 11]);
    expect(place(['name'], 'key')).toEqual([1, 1, 5]);
    expect(place(['steps', 'low', 'go'])).toEqual([3, 14, 18]);
    expect(place(['steps', 'low', 'looks', 1])).toEqual([3, 33, 37]);
    expect(place(['steps', 'high'], 'key')).toEqual([4, 3, 7]);
  });

  test('of what is missing: the nearest thing that is there', () => {
    expect(place(['steps', 'high', 'why'], 'key')[0]).toBe(4);
    expect(place(['steps', 'middle', 'go'])[0]).toBe(2);
    expect(place(['steps', 'low', 'looks', 7])[0]).toBe(3);
  });
});

describe('refused', () => {
  test.each([
    ['a: 1\na: 2', ['repeated-key 2:1']],
    ['__proto__: 1', ['bad-key 1:1']],
    ['<<: { a: 1 }', ['bad-key 1:1']],
    ['a: &x 1\nb: *x', ['yaml-alias 1:7', 'yaml-alias 2:4']],
    ['a: .inf', ['bad-number 1:4']],
    ['a: "x\u200by"', ['invisible-character 1:4']],
    ['\ta: 1', ['yaml-syntax 1:1']],
    ['a: 1\n---\nb: 2', ['yaml-syntax 2:1']],
    ['a: [1, 2', ['yaml-syntax 1:9']],
    ['a: 1\nb: "two\nc: 3', ['yaml-syntax 2:4']],
    ["a: 1\nb: 'two\nc: 3\n", ['yaml-syntax 2:4']],
    ['? [a, b]\n: c', ['yaml-syntax 1:3']],
    [': c', ['bad-key 1:1']],
  ])('%j', (text, expected) => {
    expect(codes(text)).toEqual(expected);
  });

  test('tags', () => {
    expect(codes('a: !!binary aGk=').length).toBeGreaterThan(0);
  });

  test('too large, too deep, too many', () => {
    expect(codes('a'.repeat(MAX_CHARACTERS + 1))).toEqual(['file-too-large 1:1']);
    expect(codes(`${'['.repeat(40)}${']'.repeat(40)}`)[0]).toMatch(/^file-too-large/);
    expect(codes(`[${'1,'.repeat(20_001)}]`)[0]).toMatch(/^file-too-large/);
  });

  test('the first fifty findings tell enough', () => {
    const text = Array.from({ length: 300 }, () => 'a: 1').join('\n');
    expect(codes(text)).toHaveLength(50);
  });

  test('a bomb of aliases is not opened', () => {
    const bomb = [
      'a: &a [x, x, x, x, x, x, x, x, x]',
      ...'bcdefghi'
        .split('')
        .map(
          (name, index) =>
            `${name}: &${name} [${Array(9).fill(`*${'abcdefgh'[index]}`).join(', ')}]`,
        ),
    ].join('\n');
    const { value, issues } = parseYaml(bomb, 'x');
    expect(issues.every(({ code }) => code === 'yaml-alias')).toBe(true);
    expect(JSON.stringify(value!.data).length).toBeLessThan(1000);
  });
});
