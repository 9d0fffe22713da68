/** What speaks against a signal, in words. */
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/waveform/finding.ts';
import { findingWords } from '../../src/waveform/finding-words.ts';
import { FINDINGS } from './every-finding.ts';

const said = (finding: Finding) => findingWords(finding, 'crank');

test.each(FINDINGS)('%j', (finding, words) => {
  expect(said(finding)).toBe(words);
});

describe('five of a list are named and the rest is counted', () => {
  const teeth = [1, 2, 3, 4, 5, 6, 7];
  test('when all are listed', () => {
    expect(said({ kind: 'weak-teeth', teeth: teeth.slice(0, 5) })).toBe(
      'crank: teeth 1, 2, 3, 4, 5 are weaker than the others',
    );
    expect(said({ kind: 'weak-teeth', teeth })).toContain('teeth 1, 2, 3, 4, 5 and 2 more are');
  });

  test('when the list was cut before', () => {
    expect(said({ kind: 'weak-teeth', teeth, more: 10 })).toContain(' 5 and 12 more are');
    expect(said({ kind: 'drop-out', seconds: teeth, pitch: null, more: 3 })).toContain(
      ' at 1 s, 2 s, 3 s, 4 s, 5 s and 5 more',
    );
    const places = teeth.map((at) => ({ at, seconds: 0.02, from: 2, to: 0 }));
    expect(said({ kind: 'contact-lost', unit: 'V', places, more: 1 })).toMatch(/ and 3 more$/);
  });
});
