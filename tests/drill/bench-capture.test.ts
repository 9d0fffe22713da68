/** The simulated vehicle's captures, measured again: the look found must be the look the circuit's model has. */
import { describe, expect, it } from 'vitest';
import { expectedSignal, signalTest } from '../../src/circuit/expected-signal.ts';
import type { Test } from '../../src/circuit/test.ts';
import { benchCapture } from '../../src/drill/bench-capture.ts';
import type { LookStep } from '../../src/procedure/procedure.ts';
import { captureAnswer } from '../../src/session/capture-step.ts';
import { csvOfCapture } from '../../src/waveform/write-csv.ts';
import { LONG } from '../campaign.ts';
import { setupOf } from '../circuit/setup.ts';
import { modelOf, NAMES } from '../circuit/shipped.ts';
import { readCsv } from '../waveform/read-csv-text.ts';

const LOOKS = ['full', 'weak', 'uneven', 'flat-high', 'flat-middle', 'flat-low'] as const;

function stepOf(test: Test): LookStep {
  if (test.probe.kind !== 'pattern') throw new Error('a pattern test is meant');
  return {
    id: 'picture',
    kind: 'look',
    title: 'Picture',
    family: 'pattern',
    setup: test.setup,
    say: '',
    why: '',
    minutes: 1,
    cautions: [],
    cannot: null,
    probe: test.probe,
    expected: ['full'],
    outcomes: LOOKS.map((look) => ({ name: look, words: look, looks: [look], go: 'end' })),
  };
}

function lookFound(name: string, fault: string, seed: number, state: 'cranking' | 'key-on') {
  const model = modelOf(name);
  const test = signalTest(model.circuit, setupOf({ state }));
  if (!test) throw new Error(`${name} has no input`);
  const made = benchCapture(model, { fault, seed, test });
  const known = expectedSignal(model, test, [model.pointOf(seed % model.samples, fault)]);
  const { capture } = readCsv(csvOfCapture(made));
  if (!capture) throw new Error('not read back');
  const answer = captureAnswer(
    { kind: 'step', step: stepOf(test) },
    { name: 'bench.csv', sha256: '0'.repeat(64), from: 'bench', capture },
    known,
  );
  const shown = model.shows(fault, test, seed % model.samples);
  const found =
    answer.ok && answer.command.type === 'choose-outcome' ? answer.command.look : answer;
  const { low, high } = model.levels(fault, test, seed % model.samples);
  const share = (high - low) / known.flat.swing;
  return { found, share, modelled: shown.kind === 'look' ? shown.look : null };
}

/** A swing this near to where a line counts as flat may be taken either way: the scope has noise. */
const FLAT_BORDER = 0.2;

describe.each(NAMES)('%s', (name) => {
  const model = modelOf(name);
  const every = LONG ? 1 : 18;
  const faults = ['healthy', ...model.circuit.faults.map(({ id }) => id)].flatMap((fault, seed) =>
    seed % every === 0 || /^(target|sensor)\./.test(fault) ? [{ fault, seed }] : [],
  );

  it('looks in a capture as the model says, under every fault tried', () => {
    const wrong = faults.flatMap(({ fault, seed }) => {
      const seen = lookFound(name, fault, seed, seed % 2 ? 'cranking' : 'key-on');
      const { found, modelled, share } = seen;
      return found === modelled || Math.abs(share - 1) < FLAT_BORDER
        ? []
        : [[fault, modelled, found]];
    });
    expect(wrong).toEqual([]);
  });
});

describe('a capture of the simulated vehicle', () => {
  const model = modelOf('hall-module-fed');
  const test = signalTest(model.circuit, setupOf({ state: 'cranking' }))!;
  const make = (seed: number, rpm?: number) =>
    csvOfCapture(benchCapture(model, { fault: 'healthy', seed, test, ...(rpm ? { rpm } : {}) }));

  it('is the same for the same seed and another for another', () => {
    expect(make(7)).toBe(make(7));
    expect(make(7)).not.toBe(make(8));
  });

  it('turns as fast as it is told', () => {
    const { capture } = readCsv(make(1, 1500));
    const answer = captureAnswer(
      {
        kind: 'step',
        step: {
          ...stepOf(test),
          kind: 'measure',
          probe: null,
          unit: 'rpm',
          expected: null,
          outcomes: [],
        },
      },
      { name: 'bench.csv', sha256: '0'.repeat(64), from: 'bench', capture: capture! },
      expectedSignal(model, test),
    );
    expect(answer.ok && answer.capture.measures.rpm).toBeCloseTo(1500, 0);
    // By hand: 60 pitches x 1500 / 60.
    expect(answer.ok && answer.capture.measures.hertz).toBeCloseTo(1500, 0);
  });
});
