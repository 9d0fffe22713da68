/** A kept capture in words: facts of today, sentences of early versions, and text that came from a file. */
import { describe, expect, it } from 'vitest';
import { capturedFindingWords, capturedPhaseWords } from '../../src/session/capture-words.ts';
import type { CapturedPhase, StepCapture } from '../../src/session/events.ts';
import { FINDINGS } from '../waveform/every-finding.ts';

const channel = (name: string) => ({ name, unit: 'V', from: 0, seconds: 1, points: [] }) as const;

function captureOf(part: Partial<StepCapture>): StepCapture {
  return {
    name: 'a.csv',
    sha256: '0'.repeat(64),
    from: 'file',
    measures: {
      kind: 'switched',
      unit: 'V',
      samples: 100,
      seconds: 1,
      low: 0,
      high: 5,
      hertz: null,
      duty: null,
      rpm: null,
    },
    findings: [],
    channels: [channel('crank')],
    ...part,
  };
}
const PHASE: CapturedPhase = {
  reference: 1,
  channel: 2,
  cycleDegrees: 720,
  edges: [
    { degrees: 90, direction: 'rising', plusMinus: 0, seen: 2 },
    { degrees: 190.04, direction: 'falling', plusMinus: 0.31, seen: 2 },
  ],
};

describe('what is against a signal', () => {
  it('is told of the channel that was judged', () => {
    const findings = FINDINGS.map(([finding]) => finding);
    expect(capturedFindingWords(captureOf({ findings }))).toEqual(FINDINGS.map(([, it]) => it));
    const two = captureOf({
      channel: 2,
      channels: [channel('crank'), channel('cam')],
      findings: [{ kind: 'stuck-high', volts: 5 }],
    });
    expect(capturedFindingWords(two)).toEqual(['cam is stuck high at 5 V: it never changes']);
  });

  it('is nothing where nothing was found', () => {
    expect(capturedFindingWords(captureOf({}))).toEqual([]);
  });

  it('stays as an early version wrote it', () => {
    const findings = [{ said: 'crank is dead: it stays at 2 V' }];
    expect(capturedFindingWords(captureOf({ findings }))).toEqual([findings[0]!.said]);
  });

  it('calls a channel of which nothing was kept by its number', () => {
    const gone = captureOf({ channel: 3, findings: [{ kind: 'stuck-low', volts: 0 }] });
    expect(capturedFindingWords(gone)[0]).toMatch(/^channel 3 is stuck low/);
  });
});

describe('a pair of channels', () => {
  it('is told in one line with both names', () => {
    const capture = captureOf({
      channels: [channel('crank'), channel('cam')],
      phases: [PHASE, { said: 'as it was written' }],
    });
    expect(capturedPhaseWords(capture)).toEqual([
      'cam in 720\u00b0 of crank, from the tooth after its gap: rises at 90.0\u00b0, falls at 190.0 \u00b10.3\u00b0',
      'as it was written',
    ]);
  });

  it('is none where no two turn together', () => {
    expect(capturedPhaseWords(captureOf({}))).toEqual([]);
  });

  it('counts the edges that are not named, and those that were not kept', () => {
    const edges = Array.from({ length: 10 }, () => PHASE.edges[0]!);
    const said = (part: Partial<CapturedPhase>) =>
      capturedPhaseWords(captureOf({ phases: [{ ...PHASE, edges, ...part }] }))[0];
    expect(said({})).toMatch(/ and 2 more$/);
    expect(said({ more: 72 })).toMatch(/ and 74 more$/);
    expect(said({ edges: edges.slice(0, 8) })).not.toContain('more');
  });

  it('calls channels of which nothing was kept by their numbers', () => {
    const gone = captureOf({ channels: [], phases: [PHASE] });
    expect(capturedPhaseWords(gone)[0]).toMatch(/^channel 2 in 720\u00b0 of channel 1, /);
  });
});

it('no text of a file moves the cursor', () => {
  const wild = '\u001b[2Jcrank\u202e';
  const capture = captureOf({
    channels: [channel(wild), channel(wild)],
    findings: [{ kind: 'stuck-high', volts: 5 }, { said: wild }],
    phases: [PHASE, { said: wild }],
  });
  const lines = [...capturedFindingWords(capture), ...capturedPhaseWords(capture)];
  expect(lines).toHaveLength(4);
  for (const line of lines) expect(line).not.toMatch(/[\u001b\u202e]/);
});
