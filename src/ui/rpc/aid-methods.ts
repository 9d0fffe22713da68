/** What helps at a step without answering it: the wiring with the leads on it, the sums, the plan of a drive. */
import { testOf } from '../../procedure/test-of.ts';
import { drivePlan } from '../../session/drive-plan.ts';
import { presentStep } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { noteOf, planLines } from '../screens/plan-words.ts';
import type { Outcome } from './json-rpc.ts';
import type { Methods, Params } from './method.ts';
import { refusedCall } from './refused.ts';
import { sentTest } from './sent-test.ts';

/** Of the wiring, where nobody says how wide it may be: that of a usual terminal. */
const COLUMNS = 78;

export const AID_METHODS: Methods<'drive-plan' | 'sketch' | 'sums' | 'calculate'> = {
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

function sketch(
  opened: OpenedSession,
  { test: form, columns = COLUMNS }: Params<'sketch'>,
): Outcome {
  const made = form ? sentTest(opened, form) : null;
  if (made && 'fault' in made) return made;
  const step = presentStep(opened.driver.session());
  return { lines: opened.sketch(made ?? (step && testOf(step)), columns, true) };
}
