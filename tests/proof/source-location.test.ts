/** Where a finding is shown: in the author's own file, at the decision that was written there. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  entriesOf,
  outcomeForAuthor,
  outcomeLocation,
  sourceLocation,
} from '../../src/proof/source-location.ts';
import { LIBRARY, link } from './library.ts';

const { linked } = link(LIBRARY.procedures.get('hall-no-signal')!, 4);
const tree = linked!;
const OWN = 'procedures/hall-no-signal.yaml';
const lines = (file: string) => readFileSync(file, 'utf8').split('\n');
/** `file: text of the line` that a place points to. */
const shown = ({ file, line, column }: { file: string; line: number; column: number }) =>
  `${file.replace(/^.*procedures/, 'procedures')}: ${lines(file)[line - 1]!.slice(column - 1)}`;

describe('the place', () => {
  test('of a step is its key, in the file that it stands in', () => {
    expect(shown(sourceLocation(tree, 'lift'))).toBe(`${OWN}: lift:`);
    expect(shown(sourceLocation(tree, 'feed/across'))).toMatch(
      /^procedures\/families\/feed-then-ground\.yaml: across:/,
    );
    expect(shown(sourceLocation(tree, 'lift', ['state']))).toBe(`${OWN}: state: cranking`);
    expect(() => sourceLocation(tree, 'nowhere')).toThrow(/no step "nowhere"/);
  });
  test('of an outcome inside is its own, of one that ends a sub-procedure the result of the caller', () => {
    expect(shown(outcomeLocation(tree, 'lift', 'follows'))).toMatch(/^\S+: follows: /);
    expect(shown(outcomeLocation(tree, 'feed/across', 'good'))).toBe(
      `${OWN}: good: picture, ground-bad: ground-own, swapped: leads-swapped, feed-low: way, feed-dark: feed-at-ground, feed-high: which-high, either: feed-or-ground, out-of-reach: picture }`,
    );
    expect(shown(outcomeLocation(tree, 'feed/across', 'low'))).toMatch(
      /^procedures\/families\/feed-then-ground\.yaml: low: /,
    );
    expect(shown(outcomeLocation(tree, 'prepare', null))).toMatch(/^\S+: go: /);
  });
});

describe('an outcome is named', () => {
  test.each<[string, string | null, string]>([
    ['lift', 'follows', '"follows" of "lift"'],
    ['prepare', null, '"prepare"'],
    ['feed/across', 'low', '"low" of "feed/across"'],
    ['feed/across', 'good', '"good" of "feed/across", result "good" of "feed"'],
    // two levels: the end of the inner sub-procedure is an end of the outer one
    [
      'ground/through/through',
      'high',
      '"high" of "ground/through/through", result "wire" of "ground"',
    ],
  ])('%s %s as %s', (step, outcome, words) => {
    expect(outcomeForAuthor(tree, step, outcome)).toBe(words);
  });
});

test('what the tree can lead to are its own steps, and the first steps of what it uses', () => {
  const entries = entriesOf(tree);
  expect(entries.get('lift')).toBe('lift');
  expect(entries.get('feed/across')).toBe('feed');
  expect(entries.get('signal-wire')).toBe('signal-wire');
  expect([...entries.keys()].every((id) => tree.procedure.steps[id] !== undefined)).toBe(true);
  expect(entries.has('feed/ground-drop')).toBe(false);
  expect([...entries.values()].some((name) => name.includes('/'))).toBe(false);
});
