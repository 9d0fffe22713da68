/** What was found of a capture as events keep it: plain JSON, few digits, short lists. */
import { describe, expect, it } from 'vitest';
import { canonicalJson } from '../../src/log/canonical-json.ts';
import { keptFinding, keptNumber, keptPhase } from '../../src/session/kept-finding.ts';
import { measureGiven } from '../../src/session/measure-capture.ts';
import type { Finding, FindingKind } from '../../src/waveform/finding.ts';
import { findingWords } from '../../src/waveform/finding-words.ts';
import { FINDINGS } from '../waveform/every-finding.ts';
import { fileOf, known, PULSES } from './drawn-capture.ts';
import { captureFlaw } from './event-flaw.ts';

const edge = (degrees: number) =>
  ({ degrees, direction: 'rising', plusMinus: 1 / 3, seen: 4 }) as const;

/** `value` with every number that is no whole one moved by less than is kept. */
function blurred<T>(value: T): T {
  return JSON.parse(JSON.stringify(value), (_, one) =>
    typeof one === 'number' && !Number.isInteger(one) ? one * (1 + 1e-9) : one,
  );
}

it('is what was found, to five digits, in JSON that reads back the same', () => {
  for (const [finding, words] of FINDINGS) {
    const kept = keptFinding(blurred(finding));
    expect(kept).toEqual(finding);
    expect(JSON.parse(canonicalJson(kept))).toEqual(kept);
    expect(findingWords(kept, 'crank')).toBe(words);
  }
});

it('is tried with every kind there is', () => {
  // by the type; the compiler asks for a new one here
  const every: Readonly<Record<FindingKind, true>> = {
    coarse: true,
    dead: true,
    'stuck-high': true,
    'stuck-low': true,
    'stuck-between': true,
    'low-not-low': true,
    'high-not-high': true,
    noisy: true,
    'drop-out': true,
    'extra-pulses': true,
    'contact-lost': true,
    pattern: true,
    'missing-teeth': true,
    weak: true,
    'weak-teeth': true,
    'run-out': true,
    inverted: true,
    currents: true,
    'slow-edges': true,
  };
  const given = new Set(FINDINGS.map(([{ kind }]) => kind));
  expect([...given].sort()).toEqual(Object.keys(every).sort());
});

it('has the form that a session file asks for', () => {
  const { capture } = measureGiven(fileOf([PULSES]), known(), 0)!;
  const findings = FINDINGS.map(([finding]) => keptFinding(finding));
  const edges = Array.from({ length: 96 }, (_, at) => edge(at));
  const phases = [keptPhase({ reference: 1, channel: 0, cycleDegrees: 360, edges })];
  expect(captureFlaw({ ...capture, findings, phases })).toBeNull();
  const said = [{ said: 'as an early version wrote it' }];
  expect(captureFlaw({ ...capture, findings: said, phases: said })).toBeNull();
});

describe('a long list', () => {
  const many = Array.from({ length: 1000 }, (_, at) => at + 1);
  it.each<[string, Finding]>([
    ['places', { kind: 'drop-out', seconds: many, pitch: null }],
    ['teeth', { kind: 'missing-teeth', teeth: many, seen: 3, of: 1003 }],
    [
      'contacts',
      {
        kind: 'contact-lost',
        unit: 'V',
        places: many.map((at) => ({ at, seconds: 0.02, from: 2, to: 0 })),
      },
    ],
  ])('of %s is cut and the rest counted, and says the same', (_, finding) => {
    const kept = keptFinding(finding);
    expect(kept).toMatchObject({ more: 976 });
    expect(canonicalJson(kept).length).toBeLessThan(1500);
    expect(findingWords(kept, 'crank')).toBe(findingWords(finding, 'crank'));
  });

  it('of just as many as are kept is whole', () => {
    const finding: Finding = { kind: 'weak-teeth', teeth: many.slice(0, 24) };
    expect(keptFinding(finding)).toEqual(finding);
    expect(keptFinding({ ...finding, teeth: many.slice(0, 25) })).toMatchObject({ more: 1 });
  });
});

describe('a pair of channels', () => {
  it('has its channels counted from 1, and its degrees to five digits', () => {
    const phase = { reference: 0, channel: 2, cycleDegrees: 720, edges: [edge(100 / 3)] } as const;
    expect(keptPhase(phase)).toEqual({
      reference: 1,
      channel: 3,
      cycleDegrees: 720,
      edges: [{ degrees: 33.333, direction: 'rising', plusMinus: 0.33333, seen: 4 }],
    });
  });
  it('keeps the first of many edges', () => {
    const edges = Array.from({ length: 96 }, (_, at) => edge(at));
    const kept = keptPhase({ reference: 1, channel: 0, cycleDegrees: 360, edges });
    expect(kept.edges).toHaveLength(24);
    expect(kept).toMatchObject({ reference: 2, channel: 1, more: 72 });
  });
});

it.each([
  [12.34567, 12.346],
  [-0.000123456, -0.00012346],
  [0, 0],
])('%d is kept as %d', (value, kept) => {
  expect(keptNumber(value)).toBe(kept);
});
