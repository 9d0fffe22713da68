/** At the vehicle of a drill: its tests, the procedure's steps, the diagnosis and the debrief. */
import type { Test } from '../../circuit/test.ts';
import type { DrillAction } from '../../drill/drill-act.ts';
import { debriefLines, repairChoices } from '../../drill/drill-words.ts';
import { testOf } from '../../procedure/test-of.ts';
import { pendingCautions, pendingTestCautions } from '../../session/pending-cautions.ts';
import { presentStep } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import type { Outcome } from './json-rpc.ts';
import type { Methods } from './method.ts';
import { changedSince, refusedByDisk, refusedCall } from './refused.ts';
import { sentTest } from './sent-test.ts';
import { cautionViews } from './state-view.ts';

export const DRILL_METHODS: Methods<'measure' | 'follow' | 'repairs' | 'diagnose' | 'debrief'> = {
  measure: {
    where: 'drill',
    run: (opened, { test: form }) => {
      const test = sentTest(opened, form);
      return 'fault' in test ? test : act(opened, { type: 'make-test', test });
    },
  },
  follow: { where: 'drill', run: (opened) => act(opened, { type: 'do-step' }) },
  repairs: {
    where: 'drill',
    run: ({ driver, bind }) => {
      const { circuit } = driver.session().opened;
      const choices = circuit ? repairChoices(circuit) : [];
      return { repairs: choices.map(({ repair, words }) => ({ repair, words: bind(words) })) };
    },
  },
  diagnose: {
    where: 'drill',
    run: (opened, { repairs }) => act(opened, { type: 'diagnose', repairs }),
  },
  debrief: { where: 'drill', run: debrief },
};

/** The scope of a drill saves at the leads of a test, or where the procedure asks for a picture. */
export function captureOnBench(opened: OpenedSession, test: Test | null): Outcome {
  const step = presentStep(opened.driver.session());
  const asked = test ?? (step && testOf(step));
  if (asked) return act(opened, { type: 'capture', test: asked });
  return refusedCall('no-capture', 'the procedure does not ask for a capture now', 'name a test');
}

/** What a bench stops and what is passed over stands in the record too: the refusal then has the new state with it. */
function act(opened: OpenedSession, action: DrillAction): Outcome {
  const { driver, drill } = opened;
  if (!drill) throw new Error('drill-methods: this session is not a drill');
  const session = driver.session();
  const { refused: why } = drill.act(action);
  if (!why) return changedSince(opened, session.events.length);
  if (why.disk) return refusedByDisk(opened, why);
  const pending =
    action.type === 'make-test' || action.type === 'capture'
      ? pendingTestCautions(session, action.test)
      : pendingCautions(session);
  const changed = driver.session().events.length > session.events.length;
  return refusedCall(why.code, why.words, why.fix, {
    ...(why.code === 'caution-passed-over' ? { cautions: cautionViews(opened, pending) } : {}),
    ...(changed ? changedSince(opened, session.events.length) : {}),
  });
}

function debrief({ driver, drill }: OpenedSession): Outcome {
  const found = drill?.debrief();
  const { revealed } = driver.session();
  if (!found || !revealed)
    return refusedCall('not-revealed', 'this drill has not ended', 'give the diagnosis first');
  const { faults, repairs, right, score, points, minutes, yardstickMinutes, late } = revealed;
  return {
    ...{ faults, repairs, right, score, points, minutes, yardstickMinutes, late },
    lines: debriefLines(found),
  };
}
