/** A test as a program sends it: in the form of the session file, or in words as in a file of answers. */
import type { Test } from '../../circuit/test.ts';
import { draftedTest } from '../../circuit/test-draft.ts';
import { type TestToDo, testToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import type { TestForm } from './generated/rpc.mjs';
import { type CallFailure, invalidParam } from './json-rpc.ts';
import { refusedCall } from './refused.ts';

/** Keys of a test in words. */
const WORDED = [
  'measure',
  'capture',
  'test',
  'state',
  'unplug',
  'bridges',
  'spare',
  'moving',
] as const;
const AT = '/params/test';

/** The test, which need not be one that the circuit allows. */
export function sentTest({ model }: OpenedSession, form: TestForm): Test | CallFailure {
  if (!model)
    return refusedCall(
      'no-circuit',
      'this session has no circuit model to test',
      'write what was found in a note',
    );
  const { setup, probe, wiggle } = form;
  if (setup && probe) {
    const worded = WORDED.find((key) => form[key] !== undefined);
    if (worded !== undefined)
      return invalidParam(`${AT}/${worded}`, `"${worded}" does not go with setup and probe`);
    const unplugged = [...new Set(setup.unplugged)].sort();
    return { setup: { ...setup, unplugged }, probe, ...(wiggle ? { wiggle: true } : {}) };
  }
  const test = draftedTest(form, model.circuit);
  return 'code' in test ? invalidParam(AT, test.words, test.fix) : test;
}

/** What is to be done for a test that the circuit allows, or why it is refused. */
export function readyTest(
  { driver, model }: OpenedSession,
  made: Test | CallFailure,
): TestToDo | CallFailure {
  if ('fault' in made) return made;
  if (!model) throw new Error('sent-test: a test is sent only where there is a circuit');
  const toDo = testToDo(driver.session(), model, made);
  if (!('refused' in toDo)) return toDo;
  return refusedCall(
    'test-refused',
    toDo.refused,
    'change the leads, the state, or what is unplugged, and send it again',
  );
}
