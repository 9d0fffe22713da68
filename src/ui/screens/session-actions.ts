/** What each action of the key table does: in a session, and in the tests after the repair. No React. */
import { isTask } from '../../procedure/procedure.ts';
import { testOf } from '../../procedure/test-of.ts';
import { takesCapture, testTakesCapture } from '../../session/capture-step.ts';
import { drivePlan } from '../../session/drive-plan.ts';
import { presentStep } from '../../session/session.ts';
import { standingSetup } from '../../session/standing-setup.ts';
import { wakesHere } from '../../session/watched-asked.ts';
import { formOfTest, testForm } from './any-test-form-state.ts';
import {
  actOnBench,
  adviceOf,
  closePage,
  type Here,
  noAdviceWords,
  open,
  type Page,
  pageNamed,
  refusedTurn,
  send,
  stay,
  type Turn,
  topOf,
} from './pages-state.ts';
import type { SessionAction } from './session-keys.ts';
import { retestPlace } from './session-prompt.ts';

type Act = (here: Here) => Turn;

/** The state after an action's key. */
export function afterAction(here: Here, action: SessionAction): Turn {
  if (topOf(here.state)?.name === 'retest') return (AGAIN[action] ?? notInRetest)(here);
  return ACTIONS[action](here);
}

const ACTIONS: Readonly<Record<SessionAction, Act>> = {
  back: ({ state }) => send(state, { type: 'go-back' }),
  pause: ({ state }) => send(state, { type: 'pause' }),
  cannot: ({ opened, state }) => {
    const step = presentStep(state.session);
    if (!step || !isTask(step) || step.cannot === null)
      return refusedTurn(state, noWayRound(adviceOf(opened) !== null));
    return open(state, { name: 'cannot' });
  },
  suspects,
  'next-tests': advised((state) => open(state, { name: 'computing' })),
  'any-test': anyTest,
  capture,
  plan: ({ state }) =>
    drivePlan(state.session) ? open(state, { name: 'plan' }) : refusedTurn(state, NO_PLAN),
  watch: ({ state }) =>
    wakesHere(state.session)
      ? open(state, { name: 'watched' })
      : refusedTurn(state, 'nothing is wiggled or heated at this step'),
  sketch: ({ state }) => {
    const step = presentStep(state.session);
    return open(state, { name: 'sketch', test: step && testOf(step) });
  },
  sums: ({ state }) => open(state, { name: 'sums', step: presentStep(state.session) }),
  ...opening('help', 'note', 'way', 'instruments'),
};

/** Where no tests are suggested, any test can be made all the same. */
function noWayRound(isAdvised: boolean): string {
  const others = isAdvised ? 'F6 shows other tests' : 'Ins does another test';
  return `this procedure has no alternative to this step: ${others}, F10 pauses here`;
}
const NO_PLAN = 'this procedure watches nothing that could be recorded on a drive';
const NO_CAPTURE =
  "a capture can't answer this step: it can only give the shape of a signal, its Hz, rpm, % or volts";

type PlainPage = 'help' | 'note' | 'way' | 'instruments';
function opening<N extends PlainPage>(...names: readonly N[]): Record<N, Act> {
  const entries = names.map((name): [N, Act] => [
    name,
    ({ state }) => open(state, { name } as Page<PlainPage>),
  ]);
  return Object.fromEntries(entries) as Record<N, Act>;
}

/** On a level of a drill that shows none, the list of what a diagnosis can name. */
function suspects(here: Here): Turn {
  const { opened, state } = here;
  if (opened.drill && !adviceOf(opened)) return open(state, { name: 'diagnosis', chosen: [] });
  return advised((now) => open(now, { name: 'suspects' }))(here);
}

function capture({ opened, state }: Here): Turn {
  const step = presentStep(state.session);
  if (!step || !takesCapture(step)) return refusedTurn(state, NO_CAPTURE);
  if (!opened.drill) return open(state, { name: 'capture', ask: { kind: 'step', step } });
  const test = testOf(step);
  return test ? actOnBench(state, { type: 'capture', test }) : refusedTurn(state, NO_CAPTURE);
}

function advised(then: (state: Here['state']) => Turn): Act {
  return ({ opened, state }) =>
    adviceOf(opened) ? then(state) : refusedTurn(state, noAdviceWords(opened));
}

/** The form begins as the present step has it, else as the vehicle was left. */
function anyTest({ opened, state }: Here): Turn {
  const { session } = state;
  const { circuit } = session.opened;
  if (!circuit || !opened.model) return refusedTurn(state, NO_TESTS);
  const form = testForm(circuit);
  const step = presentStep(session);
  const asked = step && testOf(step);
  const standing = standingSetup(session);
  const begun = asked ? formOfTest(form, asked) : { ...form, setup: standing ?? form.setup };
  const arranged: Page = { name: 'any-test', form: begun };
  if (opened.drill) return open(state, arranged);
  // At a vehicle the tests have names, and few are arranged by hand.
  const over = [...state.over, arranged, { name: 'choice', of: 'tests', alone: true } as const];
  return stay({ ...state, over, message: null });
}

const NO_TESTS = 'this session has no circuit model, so no other test can be set up';

const AGAIN: Readonly<Partial<Record<SessionAction, Act>>> = {
  back: lastAgain,
  pause: ({ state }) => closePage(state),
  help: ACTIONS.help,
  cannot: ({ state }) => open(state, { name: 'cannot' }),
  sketch: (here) => {
    const step = retestStep(here);
    return open(here.state, { name: 'sketch', test: step && testOf(step) });
  },
  sums: (here) => open(here.state, { name: 'sums', step: retestStep(here) }),
  watch: (here) =>
    wakesHere(here.state.session, retestStep(here))
      ? open(here.state, { name: 'watched' })
      : refusedTurn(here.state, 'nothing is wiggled or heated at this test'),
  capture: (here) => {
    const step = retestStep(here);
    if (!step || !takesCapture(step))
      return refusedTurn(here.state, "a capture can't answer this test");
    return open(here.state, { name: 'capture', ask: { kind: 'retest', step } });
  },
};

/** The step that is tested after the repair; null once all are. */
export function retestStep({ state }: Here) {
  const page = pageNamed(state, 'retest');
  return page ? (retestPlace(state.session, page.again)?.step ?? null) : null;
}

/** The last test once more; with none made yet, back to the session at rest. */
export function lastAgain({ state }: Here): Turn {
  const last = state.session.retests.at(-1)?.step ?? null;
  if (last === null) return closePage(state);
  const over = [...state.over.slice(0, -1), { name: 'retest', again: last } as const];
  return stay({ ...state, over, message: 'Test it again: the new result counts.' });
}

function notInRetest({ state }: Here): Turn {
  return refusedTurn(state, 'not while testing after the repair: F10 leaves it for later');
}

/** The capture that is to answer the test on top. */
export function captureOfTest({ state }: Here): Turn {
  const page = topOf(state);
  if (page?.name !== 'test' || !testTakesCapture(page.toDo.test))
    return refusedTurn(state, "a capture can't answer this test");
  const { test, expected } = page.toDo;
  return open(state, { name: 'capture', ask: { kind: 'test', test, expected } });
}
