/** What a session itself asks for or says: the step, its cautions, free order, the conclusion, and what comes after it. */
import type { CarView } from '../../session/car-view.ts';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { carLine } from './car-words.ts';
import { CautionScreen } from './caution-screen.tsx';
import { ConclusionScreen } from './conclusion-screen.tsx';
import { CLOSE, type ViewTable } from './drawing.tsx';
import { FreeScreen } from './free-screen.tsx';
import { adviceOf, type Here } from './pages-state.ts';
import { RestScreen } from './rest-screen.tsx';
import { verdictParagraphs } from './retest-words.ts';
import {
  CLOSE_KEY,
  keysOfAction,
  type SessionAction,
  type SessionKey,
  withFooter,
} from './session-keys.ts';
import { StepScreen } from './step-screen.tsx';
import { TakePage } from './take-page.tsx';

/** The views of a session with no page over it. */
export const ASKING_VIEWS: ViewTable<
  'step' | 'caution' | 'free' | 'conclusion' | 'rest' | 'verdict'
> = {
  step: ({ asking, step, prompt, again }, { here, isThinking, clock, send }) => (
    <StepScreen
      key={asking}
      opened={here.opened}
      session={here.state.session}
      step={step}
      asked={prompt.asked}
      changed={again ? null : isThinking ? stillWeighed(here) : changedBy(here)}
      car={again || isThinking ? null : carLine(carOf(here))}
      again={again}
      message={here.state.message}
      onAction={(action) => send({ type: 'action', action })}
      clock={clock}
      onPromptKey={(event, timing) => send({ type: 'key', event, timing })}
    />
  ),
  caution: ({ asking, cautions, read, aside, before, actions }, { here, clock, send }) => (
    <CautionScreen
      key={asking}
      cautions={cautions}
      read={read}
      aside={aside}
      before={here.opened.drill ? SIMULATED : before}
      message={here.state.message}
      clock={clock}
      keys={cautionKeys(actions)}
      onKey={(binding) =>
        send('action' in binding ? { type: 'action', action: binding.action } : CLOSE)
      }
      onAcknowledge={() => send({ type: 'acknowledge' })}
    />
  ),
  free: (_, { here, isThinking, clock, send }) => (
    <FreeScreen
      opened={here.opened}
      session={here.state.session}
      message={here.state.message}
      changed={isThinking ? stillWeighed(here) : changedBy(here)}
      clock={clock}
      onProposal={(proposal) => send({ type: 'proposal', proposal })}
      onAction={(action) => send({ type: 'action', action })}
      onConclude={() => send({ type: 'own-conclusion' })}
    />
  ),
  conclusion: ({ proposed }, { here, clock, send }) => (
    <ConclusionScreen
      opened={here.opened}
      session={here.state.session}
      proposed={proposed}
      message={here.state.message}
      clock={clock}
      onAccept={() => send({ type: 'accept' })}
      onFirst={(proposal) => send({ type: 'proposal', proposal })}
      onTakeBack={(to) => send({ type: 'go-back', to })}
      onInstead={(row) => send({ type: 'suspect', row })}
      onOwn={() => send({ type: 'own-conclusion' })}
      onClose={() => send(CLOSE)}
      onAction={(action) => send({ type: 'action', action })}
    />
  ),
  rest: (_, { here, send }) => (
    <RestScreen
      opened={here.opened}
      session={here.state.session}
      message={here.state.message}
      onHome={() => send({ type: 'leave' })}
      onBack={() => send({ type: 'action', action: 'back' })}
      onRetest={() => send({ type: 'retest' })}
      onDrive={() => send({ type: 'drive' })}
      onCustomer={() => send({ type: 'work' })}
      onAnyTest={() => send({ type: 'action', action: 'any-test' })}
    />
  ),
  verdict: ({ lines }, { here, clock, send }) => (
    <TakePage
      title="After the repair"
      paragraphs={verdictParagraphs(here.opened, here.state.session, lines)}
      message={here.state.message}
      clock={clock}
      enter="close the record with it"
      onTake={() => send({ type: 'accept' })}
      keys={[AGAIN, LATER]}
      onKey={(binding) => send(binding === AGAIN ? { type: 'last-again' } : CLOSE)}
    />
  ),
};

const NOT_NOW = { ...CLOSE_KEY, help: 'not now' };
const AGAIN = { keys: keysOfAction('back'), show: 'F2', help: 'the last test again' };
const LATER = { keys: ['escape', ...keysOfAction('pause')], show: 'Esc', help: 'not yet' };
const SIMULATED = 'This is a simulated vehicle; the caution is the one for a real one.';

/** A capture would be an answer, which waits until the cautions have been read. */
function cautionKeys(actions: readonly SessionAction[] | null): (KeyBinding | SessionKey)[] {
  return actions ? withFooter(actions).filter(({ action }) => action !== 'capture') : [NOT_NOW];
}

/** The car as the readings show it; null where nothing is weighed. */
export function carOf({ opened, state }: Here): CarView | null {
  return adviceOf(opened)?.diagnosis(state.session).car ?? null;
}

/** In place of what the last reading changed, while that is not known yet. */
function stillWeighed({ state: { session } }: Here): string | null {
  return session.answers.length + session.tests.length === 0 ? null : 'still being weighed.';
}

function changedBy({ opened, state }: Here): string | null {
  return adviceOf(opened)?.suspects(state.session).changed ?? null;
}
