import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/log/canonical-json.ts';

describe('canonicalJson refuses what JSON cannot hold', () => {
  const cycle: Record<string, unknown> = {};
  cycle.self = cycle;
  const sparse: unknown[] = [];
  sparse[1] = 1;
  it.each<readonly [string, unknown]>([
    ['NaN', NaN],
    ['infinity', [-Infinity]],
    ['undefined', undefined],
    ['an undefined property', { a: undefined }],
    ['a hole in a list', sparse],
    ['a lone surrogate', 'a\ud800b'],
    ['a lone surrogate in a key', { '\udc00': 1 }],
    ['a big integer', 1n],
    ['a function', () => 1],
    ['a symbol', Symbol('s')],
    ['a date', new Date(0)],
    ['a map', new Map()],
    ['typed bytes', new Uint8Array(2)],
    ['a cycle', cycle],
  ])('%s', (_what, value) => expect(() => canonicalJson(value)).toThrow('canonicalJson: '));
});

it('sorts keys by UTF-16 code units, at every depth, and keeps the order of lists', () => {
  // By hand: 😂 is D83D DE02 in UTF-16 and so comes before FB33, though its code point is higher.
  expect(canonicalJson({ '\ufb33': 1, '😂': [2, 1], a: { c: 1, B: -0 } })).toBe(
    '{"a":{"B":0,"c":1},"😂":[2,1],"\ufb33":1}',
  );
});

it('takes objects without prototype and keeps a key named __proto__ as data', () => {
  const bare = Object.assign(Object.create(null), { b: 1 });
  expect(canonicalJson([bare, JSON.parse('{"__proto__":{"x":1}}')])).toBe(
    '[{"b":1},{"__proto__":{"x":1}}]',
  );
});
