/** Tests that no step asks for, captures, the wiring and the sums. */

import { looksShownBy, numberUnitOf } from '../../circuit/shown-by.ts';
import type { Look, MeterUnit, Test } from '../../circuit/test.ts';
import { expectedEnds } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import {
  type CaptureAnswer,
  type CaptureAsk,
  type CaptureCommand,
  takesCapture,
  testTakesCapture,
} from '../../session/capture-step.ts';
import { stepNamed } from '../../session/decision.ts';
import { drivePlan } from '../../session/drive-plan.ts';
import type { TakenReading } from '../../session/driver.ts';
import { judgeTest } from '../../session/judge-step.ts';
import { asideCommand, reachBack, stateAsideCommand } from '../../session/out-of-reach.ts';
import {
  pendingCautions,
  pendingTestCautions,
  testCautionsInShort,
} from '../../session/pending-cautions.ts';
import { readWatched } from '../../session/read-watched.ts';
import { isRepeatable } from '../../session/retest.ts';
import { presentStep, type Session } from '../../session/session.ts';
import { type TestToDo, testsToChoose, testToDo } from '../../session/session-tests.ts';
import { meansOf, situationOf } from '../../session/spent-minutes.ts';
import { testTable } from '../../session/test-table.ts';
import { watchedAsked } from '../../session/watched-asked.ts';
import { COSTS, testCost } from '../../suspects/test-cost.ts';
import type { TestEntry } from '../../suspects/test-entries.ts';
import type { OpenedSession } from '../app-services.ts';
import { noteOf, planLines } from '../screens/plan-words.ts';
import { possibleIn } from '../screens/prompt-state.ts';
import { scopeLines } from '../screens/step-words.ts';
import { captureOnBench } from './drill-methods.ts';
import { type CallFailure, invalidParam, type Outcome, type Result } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { performCall, refusedCall } from './refused.ts';
import { ANSWER_KEYS, countSent, readNumber, sendOneOf, silent } from './sent-answer.ts';
import { sentTest } from './sent-test.ts';
import { cautionViews, hereView, readViews, rounded, standingView } from './state-view.ts';

/** Of the wiring, where nobody says how wide it may be: that of a usual terminal. */
const COLUMNS = 78;

export const TEST_METHODS: Methods<
  | 'prepare'
  | 'tests'
  | 'test'
  | 'aside'
  | 'watched'
  | 'drive-plan'
  | 'capture'
  | 'captures'
  | 'sketch'
  | 'sums'
  | 'calculate'
> = {
  prepare: { where: 'anywhere', run: prepare },
  tests: { where: 'anywhere', run: tests },
  test: { where: 'session', run: test },
  aside: { where: 'session', run: setAside },
  watched: { where: 'session', run: watched },
  'drive-plan': {
    where: 'session',
    run: ({ driver, bind }) => {
      const plan = drivePlan(driver.session());
      return plan
        ? { lines: planLines(plan, bind), note: noteOf(plan, bind).text }
        : refusedCall(
            'no-plan',
            'this procedure watches nothing that could be recorded on a drive',
          );
    },
  },
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
      return step
        ? { lines: await calculate(line, step) }
        : refusedCall('no-step', 'no step is open here', 'calculate with: ohmward calc');
    },
  },
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

/** A test that the circuit allows. */
function readyTest(
  { driver, model }: OpenedSession,
  made: Test | CallFailure,
): TestToDo | CallFailure {
  if ('fault' in made) return made;
  if (!model) throw new Error('test-methods: a test is sent only where there is a circuit');
  const toDo = testToDo(driver.session(), model, made);
  if (!('refused' in toDo)) return toDo;
  return refusedCall(
    'test-refused',
    toDo.refused,
    'change the leads, the state, or what is unplugged, and send it again',
  );
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

/** OL as events keep it. */
function kept(value: number): number | null {
  return Number.isFinite(value) ? value : null;
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

async function capture(
  opened: OpenedSession,
  { file, second, against, channel, step: named, test: form, record }: Params<'capture'>,
): Promise<Outcome> {
  if (form && named !== undefined)
    return invalidParam('/params/test', '"step" and "test" do not go together');
  const made = form ? sentTest(opened, form) : null;
  if (made && 'fault' in made) return made;
  if (opened.drill) return captureOnBench(opened, made);
  const asked = askedFor(opened, named, made);
  if ('fault' in asked) return asked;
  const fault = named === undefined ? undefined : opened.repaired?.fault;
  let found = await opened.measureCapture(asked, file ?? null, {
    ...(fault === undefined ? {} : { fault }),
    ...(second === undefined ? {} : { second }),
    ...(against === undefined ? {} : { against }),
  });
  if (channel !== undefined && found.channels) found = found.channels.judge(channel - 1);
  else if (channel !== undefined && channel > 1)
    return refusedCall('no-channel', 'this capture has one channel', 'leave "channel" out');
  if (!found.ok)
    return refusedCall('no-capture', found.words, found.fix, {
      channels: channelsOf(found),
      lines: found.lines ?? [],
    });
  if (!record) return captureView(found);
  const session = opened.driver.session();
  const pending =
    asked.kind === 'test'
      ? pendingTestCautions(session, asked.test)
      : pendingCautions(session, asked.step);
  return performCall(opened, found.command, pending);
}

function askedFor(
  opened: OpenedSession,
  named: string | undefined,
  made: Test | null,
): CaptureAsk | CallFailure {
  const session = opened.driver.session();
  if (made) {
    const toDo = readyTest(opened, made);
    return 'fault' in toDo ? toDo : { kind: 'test', test: made, expected: toDo.expected };
  }
  const { procedure } = session.opened;
  if (named === undefined) {
    const step = presentStep(session);
    return step && takesCapture(step) ? { kind: 'step', step } : untaken();
  }
  const step = procedure && Object.hasOwn(procedure.steps, named) ? procedure.steps[named] : null;
  if (!step) return refusedCall('no-such-step', `the procedure has no step "${named}"`);
  return procedure && isRepeatable(procedure, step) && takesCapture(step)
    ? { kind: 'retest', step }
    : untaken();
}

function untaken(): CallFailure {
  return refusedCall('no-capture', "a capture can't answer this step", 'answer it by hand');
}

function captureView(found: Extract<CaptureAnswer, { ok: true }>): Result {
  const { command, capture: measured, lines } = found;
  return { lines, capture: measured, answer: shownBy(command), channels: channelsOf(found) };
}

/** What the capture would answer, before it is recorded. */
function shownBy(command: CaptureCommand): Result | null {
  switch (command.type) {
    case 'record-reading':
      return { reading: command.typed, value: kept(command.value) };
    case 'choose-outcome':
      return { outcome: command.outcome, look: command.look ?? null };
    case 'record-retest': {
      const { typed, value, outcome, look } = command;
      return { reading: typed, value, outcome, look };
    }
    case 'record-test':
      return { reading: command.typed, shown: command.shown };
    // A round of moving answers nothing by itself; its lines say what it showed.
    case 'watch-waking':
      return null;
  }
}

function channelsOf({ channels }: CaptureAnswer): Result | null {
  return channels ? { names: channels.names, judged: channels.judged + 1 } : null;
}

function captures({ captures: files }: OpenedSession, sent: Params<'captures'>): Outcome {
  const to =
    sent.folder === undefined ? files.begin() : files.follow(sent.folder, sent.name ?? '.');
  if ('file' in to) return { file: to.file };
  const { path, entries, leftOut, problem } = to;
  if (problem) return refusedCall('no-folder', problem.problem, problem.fix);
  return { folder: path, entries, leftOut };
}

function sketch(
  opened: OpenedSession,
  { test: form, columns = COLUMNS }: Params<'sketch'>,
): Outcome {
  const made = form ? sentTest(opened, form) : null;
  if (made && 'fault' in made) return made;
  const step = presentStep(opened.driver.session());
  return { lines: opened.sketch(made ?? (step && testOf(step)), columns, true) };
}
