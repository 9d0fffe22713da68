/** Any test on a session's circuit: the list to choose from, and what a person needs to know to make one. */
import { LOOK_WORDS } from '../circuit/look-words.ts';
import type { Model } from '../circuit/model.ts';
import { LOOKS, type Look, type Test } from '../circuit/test.ts';
import { testRefusalWords } from '../circuit/test-refusal.ts';
import { computedRange } from '../procedure/expected-range.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { expectedRangeWords } from '../procedure/test-words.ts';
import type { ExpectedShown } from './events.ts';
import { type TestEntry, testTable } from './test-table.ts';

export interface SessionTests {
  /** The tests of the procedure and the usual ones of the circuit, each once. */
  readonly entries: readonly TestEntry[];
  /** What a test is called. */
  readonly words: (test: Test) => string;
  /** The test as it is made here, or why it must not or cannot be. */
  readonly toDo: (test: Test) => TestToDo | { readonly refused: string };
}

/** A test that no step asks for, ready to be made; a proposal of the advisor is one with a reason. */
export interface TestToDo {
  readonly test: Test;
  readonly words: string;
  /** Why it was proposed; empty where nobody did. */
  readonly why: string;
  readonly kind: 'number' | 'look';
  /** What can be seen; empty for a number. */
  readonly looks: readonly Look[];
  /** What a sound circuit shows; null where nothing is known of it or it must not be told. */
  readonly expected: ExpectedShown | null;
  /** The same in words; empty for null. */
  readonly healthy: string;
}

/** The tests of a model's circuit and of a procedure, if there is one. */
export function sessionTests(model: Model, procedure: Procedure | null): SessionTests {
  const table = testTable(model.circuit, procedure, model.meter);
  const words = (test: Test) => table.entryOf(test).words;
  return {
    entries: table.entries,
    words,
    toDo: (test) => {
      const refusal = model.refusal(test);
      if (refusal !== null) return { refused: testRefusalWords(refusal) };
      const expected = expectedAt(model, test);
      const { kind } = test.probe;
      const isNumber = kind === 'volts' || kind === 'ohms';
      return {
        test,
        words: words(test),
        why: '',
        kind: isNumber ? 'number' : 'look',
        looks: isNumber ? [] : LOOKS[kind],
        expected,
        healthy: healthyWords(expected, kind === 'ohms' ? 'ohm' : 'V'),
      };
    },
  };
}

/** The range within the meter's and the model's allowance, as for a step of a procedure; the looks of the samples. */
function expectedAt(model: Model, test: Test): ExpectedShown {
  const range = computedRange(model, test);
  if (range) return { kind: 'number', low: range.low, high: range.high };
  const expected = model.expected(test);
  const looks = expected.kind === 'looks' ? expected.looks.map(({ look }) => look) : [];
  return { kind: 'look', looks };
}

function healthyWords(expected: ExpectedShown, unit: 'V' | 'ohm'): string {
  if (expected.kind === 'number')
    return expectedRangeWords({ ...expected, nominal: null, from: 'circuit' }, unit);
  return expected.looks.map((look) => LOOK_WORDS[look]).join(', or ');
}
