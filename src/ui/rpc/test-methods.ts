/** Tests that no step asks for, captures, the wiring and the sums. */
import { keptOf } from '../../circuit/shown-of.ts';
import { LOOKS, type Look, type Test } from '../../circuit/test.ts';
import { testRefusalWords } from '../../circuit/test-refusal.ts';
import { testOf } from '../../procedure/test-of.ts';
import type { CaptureAnswer, CaptureAsk } from '../../session/capture-step.ts';
import { takesCapture, testTakesCapture } from '../../session/capture-step.ts';
import { judgeTest } from '../../session/judge-step.ts';
import { pendingCautions, pendingTestCautions, testCautions } from '../../session/pending-cautions.ts';
import { isRepeatable } from '../../session/retest.ts';
import { presentStep } from '../../session/session.ts';
import { type TestToDo, testsToChoose, testToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import { type Fault, invalidParam, type Outcome, type Result } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { perform, refused } from './refused.ts';
import { ANSWER_KEYS, oneOf, readNumber, type SentAnswer } from './sent-answer.ts';
import { sentTest } from './sent-test.ts';
import { cautionViews, rounded, standingView } from './state-view.ts';

/** Of the wiring, where nobody says how wide it may be: that of a usual terminal. */
const COLUMNS = 78;

export const TEST_METHODS: Methods<
  'prepare' | 'tests' | 'test' | 'capture' | 'captures' | 'sketch' | 'sums' | 'calculate'
> = {
  prepare: { where: 'anywhere', run: prepare },
  tests: { where: 'anywhere', run: tests },
  test: { where: 'session', run: test },
  capture: { where: 'anywhere', run: capture },
  captures: { where: 'anywhere', run: captures },
  sketch: { where: 'anywhere', run: sketch },
  sums: {
    where: 'anywhere',
    run: ({ sums, driver }) => {
      const step = presentStep(driver.session());
      return { sums: step ? sums(step) : [] };
    },
  },
  calculate: {
    where: 'anywhere',
    run: async ({ calculate, driver }, { line }) => {
      const step = presentStep(driver.session());
      if (!step) return refused('no-step', 'no step is asked here');
      return { lines: await calculate(line, step) };
    },
  },
};

/** On a drill nothing is told of a test that its bench will stop: to see that is part of the drill. */
function prepare(opened: OpenedSession, { test: form }: Params<'prepare'>): Outcome {
  const { driver, drill, model, bind } = opened;
  const session = driver.session();
  const test = sentTest(opened, form);
  if ('fault' in test) return test;
  const toDo = model && !drill ? testToDo(session, model, test) : null;
  const refusal = toDo && 'refused' in toDo ? toDo.refused : null;
  const known = toDo && !('refused' in toDo) ? toDo : null;
  return {
    ...entryView(opened, entryOf(session, test)),
    refused: refusal,
    expected: known?.expected ?? null,
    good: known ? bind(known.healthy) : '',
    looks: looksOf(test),
    ...standingView(session, test.setup, test),
    capture: testTakesCapture(test),
    cautions: cautionViews(opened, pendingTestCautions(session, test)),
    shows: known ? (opened.benchShows(test)?.words ?? null) : null,
  };
}
