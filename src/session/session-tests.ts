/** Any test on a session's circuit: the list to choose from, and what a person needs to know to make one. */
import { LOOK_WORDS } from '../circuit/look-words.ts';
import type { Model } from '../circuit/model.ts';
import { isNumberProbe, looksShownBy, unitShownBy } from '../circuit/shown-by.ts';
import type { Look, Test } from '../circuit/test.ts';
import { testRefusalWords } from '../circuit/test-refusal.ts';
import { expectedRangeWords } from '../procedure/test-words.ts';
import { absentParts, needsAny } from './absent-parts.ts';
import type { ExpectedShown } from './events.ts';
import { expectedShown } from './expected-shown.ts';
import { needsUnreached } from './out-of-reach.ts';
import type { Session } from './session.ts';
import { modelHere } from './step-here.ts';
import { type TestTable, testTable } from './test-table.ts';

/** A test that no step asks for, ready to be made; a proposal of the advisor is one with a reason. */
export interface TestToDo {
  readonly test: Test;
  readonly words: string;
  /** Why it was proposed; empty where nobody did. */
  readonly why: string;
  readonly kind: 'number' | 'look';
  /** Visible damage; empty for a number. */
  readonly looks: readonly Look[];
  /** What a sound circuit shows; null where nothing is known of it or a drill does not tell. */
  readonly expected: ExpectedShown | null;
  /** The same in words; empty for null. */
  readonly healthy: string;
}

/**
 * The tests of the procedure and the usual ones of the circuit, each once, but for those of neighbours that this car does
 * not have, and those that need a connector or a state out of reach; none without a circuit.
 */
export function testsToChoose(session: Session): TestTable['entries'] {
  const { circuit, procedure, meter, job } = session.opened;
  if (!circuit) return [];
  const { entries } = testTable(circuit, procedure, meter);
  const absent = absentParts(circuit, job);
  if (absent.length === 0 && session.unreached.length === 0) return entries;
  return entries.filter(
    ({ test }) => !needsAny(test, absent, circuit) && !needsUnreached(session, test),
  );
}

/** What a test is called; null where no circuit is known. */
export function nameOfTest({ opened }: Session, test: Test): string | null {
  const { circuit, procedure, meter } = opened;
  return circuit ? testTable(circuit, procedure, meter).entryOf(test).words : null;
}

/** The test as it is made here, or why it must not or cannot be, without a full stop. */
export function testToDo(
  session: Session,
  model: Model,
  test: Test,
): TestToDo | { readonly refused: string } {
  const refusal = model.refusal(test);
  if (refusal !== null) return { refused: testRefusalWords(refusal) };
  const expected = expectedShown(modelHere(session, model), test);
  return {
    test,
    words: nameOfTest(session, test) ?? '',
    why: '',
    kind: isNumberProbe(test.probe) ? 'number' : 'look',
    looks: looksShownBy(test.probe),
    expected,
    healthy: expectedShownWords(expected, test),
  };
}

/** What a sound circuit shows in a test, in words. */
export function expectedShownWords(expected: ExpectedShown, { probe }: Test): string {
  const unit = unitShownBy(probe);
  if (expected.kind === 'number' && unit !== null)
    return expectedRangeWords({ ...expected, nominal: null, from: 'circuit' }, unit);
  if (expected.kind === 'number') return '';
  return expected.looks.map((look) => LOOK_WORDS[look]).join(', or ');
}
