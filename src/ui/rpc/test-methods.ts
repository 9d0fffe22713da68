/** Tests that no step asks for: listed, arranged, made, set aside, and what was seen while something was moved. */

import { looksShownBy, numberUnitOf } from '../../circuit/shown-by.ts';
import type { Look, MeterUnit, Test } from '../../circuit/test.ts';
import { expectedEnds } from '../../procedure/procedure.ts';
import { testTakesCapture } from '../../session/capture-step.ts';
import { stepNamed } from '../../session/decision.ts';
import type { TakenReading } from '../../session/driver.ts';
import { judgeTest } from '../../session/judge-step.ts';
import { asideCommand, reachBack, stateAsideCommand } from '../../session/out-of-reach.ts';
import {
  pendingCautions,
  pendingTestCautions,
  testCautionsInShort,
} from '../../session/pending-cautions.ts';
import { readWatched } from '../../session/read-watched.ts';
import type { Session } from '../../session/session.ts';
import { type TestToDo, testsToChoose, testToDo } from '../../session/session-tests.ts';
import { meansOf, situationOf } from '../../session/spent-minutes.ts';
import { testTable } from '../../session/test-table.ts';
import { watchedAsked } from '../../session/watched-asked.ts';
import { COSTS, testCost } from '../../suspects/test-cost.ts';
import type { TestEntry } from '../../suspects/test-entries.ts';
import type { OpenedSession } from '../app-services.ts';
import { possibleIn } from '../screens/prompt-state.ts';
import { scopeLines } from '../screens/step-words.ts';
import { type CallFailure, invalidParam, type Outcome, type Result } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { performCall, refusedCall } from './refused.ts';
import { ANSWER_KEYS, countSent, kept, readNumber, sendOneOf, silent } from './sent-answer.ts';
import { readyTest, sentTest } from './sent-test.ts';
import { cautionViews, hereView, readViews, rounded, standingView } from './state-view.ts';

export const TEST_METHODS: Methods<'prepare' | 'tests' | 'test' | 'aside' | 'watched'> = {
  prepare: { where: 'anywhere', run: prepare },
  tests: { where: 'anywhere', run: tests },
  test: { where: 'session', run: test },
  aside: { where: 'session', run: setAside },
  watched: { where: 'session', run: watched },
};

/** On a drill nothing is told of a test that its bench would stop: to see that is part of the drill. */
function prepare(opened: OpenedSession, { test: form }: Params<'prepare'>): Outcome {
  const { driver, drill, model, bind, benchShows } = opened;
  const session = driver.session();
  const test = sentTest(opened, form);
  if ('fault' in test) return test;
  const found = model && !drill ? testToDo(session, model, test) : null;
  const toDo = found && !('refused' in found) ? found : null;
  return {
    ...entryView(opened, entryOf(session, test)),
    refused: found && 'refused' in found ? found.refused : null,
    expected: toDo?.expected ?? null,
    good: toDo ? bind(toDo.healthy) : '',
    here: toDo ? hereView(opened, test) : null,
    looks: looksOf(test),
    ...standingView(session, test.setup, test),
    scope: scopeLines(opened, test)[0] ?? null,
    capture: testTakesCapture(test),
    cautions: cautionViews(opened, pendingTestCautions(session, test)),
    readEarlier: readViews(opened, testCautionsInShort(session, test)),
    shows: toDo ? (benchShows(test)?.words ?? null) : null,
  };
}

function tests(opened: OpenedSession): Outcome {
  const entries = testsToChoose(opened.driver.session());
  return { tests: entries.map((entry) => entryView(opened, entry)) };
}

/** Minutes from how things stand at the vehicle now. */
function entryView({ driver, bind }: OpenedSession, entry: TestEntry | null): Result {
  if (!entry) return {};
  const session = driver.session();
  const { id, words, test, needs, step } = entry;
  const { minutes } = testCost(entry, situationOf(session), COSTS, meansOf(session).helper);
  return { id, words: bind(words), test, minutes: rounded(minutes), needs, step };
}

function entryOf({ opened }: Session, test: Test): TestEntry | null {
  const { circuit, procedure, meter } = opened;
  return circuit ? testTable(circuit, procedure, meter).entryOf(test) : null;
}

function looksOf({ probe }: Test): readonly Look[] {
  return looksShownBy(probe);
}

function test(opened: OpenedSession, { test: form, ...sent }: Params<'test'>): Outcome {
  const { driver } = opened;
  const session = driver.session();
  const toDo = readyTest(opened, sentTest(opened, form));
  if ('fault' in toDo) return toDo;
  const { made: when, note } = sent;
  if (countSent(sent, ANSWER_KEYS) !== 1) return sendOneOf(ANSWER_KEYS);
  const answer = shownIn(opened, toDo, sent);
  if ('fault' in answer) return answer;
  const { test: made, expected } = toDo;
  return performCall(
    opened,
    {
      type: 'record-test',
      ...{ test: made, expected, ...answer },
      ...(when === undefined ? {} : { made: when }),
      ...(note === undefined ? {} : { note }),
    },
    pendingTestCautions(session, made),
  );
}

/** A test that cannot be made here, or all that need a connector or a vehicle state. */
function setAside(opened: OpenedSession, params: Params<'aside'>): Outcome {
  const { test: form, connector: part, state, reason, aside = true } = params;
  const named = (['test', 'connector', 'state'] as const).filter(
    (key) => params[key] !== undefined,
  );
  if (named.length > 1)
    return invalidParam(`/params/${named[1]}`, `"${named.join('" and "')}" do not go together`);
  if (part !== undefined) {
    const said = asideCommand(opened.driver.session(), part, reason);
    return performCall(opened, aside ? said : reachBack({ part }));
  }
  if (state !== undefined)
    return performCall(opened, aside ? stateAsideCommand(state, reason) : reachBack({ state }));
  if (!form) return invalidParam('/params', 'send a "test", a "connector" or a "state"');
  if (reason !== undefined)
    return invalidParam('/params/reason', '"reason" goes with "connector" or "state"');
  const made = sentTest(opened, form);
  return 'fault' in made
    ? made
    : performCall(opened, { type: 'set-test-aside', test: made, aside });
}

type Answered = Pick<
  Extract<Parameters<typeof performCall>[1], { type: 'record-test' }>,
  'typed' | 'shown'
>;

/** What the test showed: a number as typed and understood, or a look. */
function shownIn(
  opened: OpenedSession,
  { test: made, kind, looks, expected }: TestToDo,
  { reading, choose, take, sure = false }: Omit<Params<'test'>, 'test'>,
): Answered | CallFailure {
  const shows = take ? opened.benchShows(made)?.answer : undefined;
  if (take && !shows) return silent();
  if (kind === 'look') {
    const name = shows?.kind === 'outcome' ? shows.look : choose;
    const look = looks.find((one) => one === name);
    if (look) return { typed: '', shown: { kind: 'look', look } };
    return refusedCall(
      'no-such-look',
      'this test has a fixed list of results',
      `one of: ${looks.join(', ')}`,
      {
        known: looks,
      },
    );
  }
  const unit = numberUnitOf(made);
  if (shows?.kind === 'reading') return numberShown(shows, unit);
  if (reading === undefined)
    return refusedCall('not-a-number', 'this test shows a number', 'send it as "reading"');
  const { meter } = opened.driver.session();
  const usual = expected?.kind === 'number' ? expectedEnds(expected) : null;
  const limit = opened.limits({ unit });
  const read = readNumber({
    reading,
    sure,
    expected: {
      unit,
      ...(usual ? { usual: { ...usual, low: Math.max(0, usual.low) } } : {}),
      ...(limit ? { limit } : {}),
    },
    judge: (value) =>
      expected && judgeTest({ kind: 'number', value: kept(value), unit }, expected, meter),
    possible: possibleIn(opened, opened.driver.session(), made),
  });
  return 'fault' in read ? read : numberShown(read, unit);
}

function numberShown({ typed, value }: TakenReading, unit: MeterUnit): Answered {
  return { typed, shown: { kind: 'number', value: kept(value), unit } };
}

function watched(opened: OpenedSession, { seen, step: named }: Params<'watched'>): Outcome {
  const session = opened.driver.session();
  const step = named === undefined ? undefined : (stepNamed(session, named) ?? null);
  const asked = watchedAsked(opened, session, step);
  if (!asked)
    return refusedCall(
      'no-waking',
      'nothing is wiggled or heated at this step',
      'send it as a note',
    );
  const read = readWatched(seen, asked);
  return 'type' in read
    ? performCall(
        opened,
        named === undefined ? read : { ...read, step: named },
        pendingCautions(session, step),
      )
    : refusedCall('bad-reading', read.words, read.fix);
}
