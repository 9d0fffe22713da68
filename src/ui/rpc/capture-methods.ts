/** Saved captures as answers: of the step, of a test after the repair, of a test that no step asks for. */
import type { Test } from '../../circuit/test.ts';
import {
  type CaptureAnswer,
  type CaptureAsk,
  type CaptureCommand,
  takesCapture,
} from '../../session/capture-step.ts';
import { pendingCautions, pendingTestCautions } from '../../session/pending-cautions.ts';
import { isRepeatable } from '../../session/retest.ts';
import { presentStep } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { captureOnBench } from './drill-methods.ts';
import { type CallFailure, invalidParam, type Outcome, type Result } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { performCall, refusedCall } from './refused.ts';
import { kept } from './sent-answer.ts';
import { readyTest, sentTest } from './sent-test.ts';

export const CAPTURE_METHODS: Methods<'capture' | 'captures'> = {
  capture: { where: 'anywhere', run: capture },
  captures: { where: 'anywhere', run: captures },
};

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
