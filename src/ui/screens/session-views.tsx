/** How each view of a session is drawn: a table without rules. What a key does there is said in one word and decided by the reducer. */
import type { ReactNode } from 'react';
import { debriefLines, openingLines } from '../../drill/drill-words.ts';
import type { CarView } from '../../session/car-view.ts';
import { drivePlan } from '../../session/drive-plan.ts';
import { movesOdds } from '../../session/moves-odds.ts';
import { watchedAsked } from '../../session/watched-asked.ts';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { sentenceStart } from '../parts/sentence.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { lastFound } from './answer-words.ts';
import { testOfForm } from './any-test-form-state.ts';
import { AnyTestPage } from './any-test-page.tsx';
import { BY_HAND, type ChoiceItem, choiceList, typedItem } from './any-test-pages.ts';
import { asideWords } from './aside-words.ts';
import { CaptureFlow } from './capture-flow.tsx';
import { carLine, carTold } from './car-words.ts';
import { CautionScreen } from './caution-screen.tsx';
import { ConclusionScreen } from './conclusion-screen.tsx';
import { foundLines } from './conclusion-words.ts';
import { DiskProblemScreen } from './disk-problem-screen.tsx';
import { asideOf, diagnosisItems, handInOf } from './drill-views.ts';
import { FreeScreen } from './free-screen.tsx';
import { InstrumentsScreen } from './instruments-screen.tsx';
import { FROM_QUESTION, fromCheck, knownItems, valueCheck, valueQuestion } from './known-pages.ts';
import { MadeTestScreen } from './made-test-screen.tsx';
import { NextTestsScreen } from './next-tests-screen.tsx';
import { helpParagraphs, sketchParagraphs, sumsParagraphs } from './over-words.ts';
import { adviceOf, type Here, pageNamed } from './pages-state.ts';
import { PickScreen } from './pick-screen.tsx';
import { PicturePage } from './picture-page.tsx';
import { noteOf, planParagraphs } from './plan-words.ts';
import { cannotQuestion, reachItems } from './reach-pages.ts';
import { ReadingPage } from './reading-page.tsx';
import { RestScreen } from './rest-screen.tsx';
import { verdictParagraphs } from './retest-words.ts';
import { retestStep } from './session-actions.ts';
import {
  CLOSE_KEY,
  keysOfAction,
  type SessionAction,
  type SessionKey,
  withFooter,
} from './session-keys.ts';
import { type PageEvent, TELL_MOST } from './session-pages.ts';
import { outside, type View, type ViewParts } from './session-view.ts';
import { dropsCheck, dropsQuestion, shortItems } from './short-pages.ts';
import { StepScreen } from './step-screen.tsx';
import { SuspectsScreen } from './suspects-screen.tsx';
import { TakePage } from './take-page.tsx';
import { TestScreen } from './test-screen.tsx';
import { TextQuestion } from './text-question.tsx';
import {
  CANNOT_RETEST,
  CLIP,
  DRIVE,
  NOTE,
  OWN_WORDS,
  type Question,
  watchedQuestion,
  workQuestion,
} from './text-questions.ts';
import { WaitPage } from './wait-page.tsx';
import { WayScreen } from './way-screen.tsx';

/** Where a view is drawn. */
export interface Drawing {
  readonly here: Here;
  /** What is known in this state is still being weighed. */
  readonly isThinking: boolean;
  readonly clock: () => number;
  readonly send: (event: PageEvent) => void;
}

/** One view. */
export function drawView<N extends keyof ViewParts>(view: View<N>, at: Drawing): ReactNode {
  return VIEWS[view.name](view, at);
}

const VIEWS: {
  readonly [N in keyof ViewParts]: (view: View<N>, at: Drawing) => ReactNode;
} = {
  // What the session asks for.
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
  free: (_, { here, clock, send }) => (
    <FreeScreen
      opened={here.opened}
      session={here.state.session}
      message={here.state.message}
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

  // What lies over it.
  help: (_, at) => read(at, 'All keys', helpParagraphs(at.here.opened), 'help'),
  sketch: ({ test }, at) => read(at, 'Wiring', sketchParagraphs(at.here.opened, test), 'sketch'),
  sums: ({ step }, at) => read(at, 'Sums', sumsParagraphs(at.here.opened, step), 'sums'),
  readings: (_, at) =>
    read(at, 'What was read', foundLines(at.here.opened, at.here.state.session), 'way'),
  way: (_, { here, send }) => (
    <WayScreen
      opened={here.opened}
      session={here.state.session}
      onClose={() => send(CLOSE)}
      onGoBack={(to) => send({ type: 'go-back', to })}
    />
  ),
  suspects: (_, { here, send }) => (
    <SuspectsScreen
      view={adviceOf(here.opened)?.suspects(here.state.session) ?? NO_SUSPECTS}
      isTold={movesOdds(here.state.session.opened.job)}
      car={carTold(here.opened, here.state.session, carOf(here))}
      onClose={() => send(CLOSE)}
      onConclude={(row) => send({ type: 'suspect', row })}
      onOwnWords={() => send({ type: 'own-words' })}
      {...(here.opened.drill
        ? {}
        : {
            onValues: () => send({ type: 'known' }),
            onShorts: () => send({ type: 'shorts' }),
          })}
    />
  ),
  computing: (_, { send }) => (
    <WaitPage
      title={TELL_MOST}
      words="One moment: weighing every test you can do here."
      onShown={() => send({ type: 'drawn' })}
    />
  ),
  'next-tests': ({ title, proposals }, { here, send }) => (
    <NextTestsScreen
      opened={here.opened}
      title={title}
      proposals={proposals}
      onClose={() => send(CLOSE)}
      onChoose={(proposal) => send({ type: 'proposal', proposal })}
      onAnyTest={() => send({ type: 'action', action: 'any-test' })}
      {...(here.opened.drill
        ? {}
        : {
            aside: asideWords(here.opened, here.state.session),
            onAside: (test) => send({ type: 'aside', test }),
            onReach: (test) => send({ type: 'reach', test }),
            onBack: () => send({ type: 'aside-back' }),
          })}
    />
  ),
  reach: (page, { here, send }) => (
    <PickScreen
      title="What cannot be reached"
      items={reachItems(here.state, page)}
      empty="This test needs no connector, and the key is off."
      onPick={({ id }) => send({ type: 'chosen', id })}
      onClose={() => send(CLOSE)}
    />
  ),
  instruments: (_, { here, send }) => (
    <InstrumentsScreen
      instruments={here.state.session.instruments}
      onTake={(instruments) => send({ type: 'instruments', instruments })}
      onClose={() => send(CLOSE)}
    />
  ),
  shorts: (_, { here, send }) => (
    <PickScreen
      title="Location of a short"
      items={shortItems(here)}
      empty="There is no short in a wire to locate here."
      onPick={({ id }) => send({ type: 'chosen', id })}
      onClose={() => send(CLOSE)}
    />
  ),
  'short-drops': (page, at) =>
    asks(at, {
      ...dropsQuestion(at.here, page),
      check: (typed) => dropsCheck(at.here, page, typed),
    }),
  known: (_, { here, send }) => (
    <PickScreen
      title="What is known about this car"
      items={knownItems(here)}
      empty="Nothing can be set here: this session has no circuit model."
      onPick={({ id }) => send({ type: 'chosen', id })}
      onClose={() => send(CLOSE)}
    />
  ),
  'known-value': (page, at) =>
    asks(at, {
      ...valueQuestion(at.here, page),
      check: (typed) => valueCheck(at.here, page, typed),
    }),
  'known-from': (_, at) => asks(at, { ...FROM_QUESTION, check: fromCheck }),
  note: (_, at) => asks(at, NOTE),
  cannot: (_, at) => asks(at, isRetest(at) ? CANNOT_RETEST : cannotQuestion(at.here.state.session)),
  'own-words': (_, at) => asks(at, OWN_WORDS),
  capture: ({ ask }, { here, clock, send }) => (
    <CaptureFlow
      opened={here.opened}
      ask={ask}
      message={here.state.message}
      clock={clock}
      onTake={(command) => send({ type: 'take', command })}
      onClose={() => send(CLOSE)}
    />
  ),
  disk: ({ words, fix }, { here, clock, send }) => (
    <DiskProblemScreen
      words={words}
      fix={fix}
      path={here.opened.driver.path()}
      isElsewhere={here.opened.driver.isElsewhere()}
      clock={clock}
      onRetry={() => send({ type: 'retry' })}
      onFolder={(folder) => send({ type: 'folder', folder })}
      onLeave={() => send({ type: 'leave' })}
    />
  ),

  // Any test.
  test: ({ toDo, prompt }, { here, clock, send }) => (
    <TestScreen
      key={prompt.half.asking}
      opened={here.opened}
      session={here.state.session}
      toDo={toDo}
      asked={prompt.asked}
      title={sentenceStart(outside(here.state))}
      aside={afterTest(here)}
      message={here.state.message}
      clock={clock}
      onPromptKey={(event, timing) => send({ type: 'key', event, timing })}
      onCapture={() => send({ type: 'capture' })}
      onClose={() => send(CLOSE)}
    />
  ),
  'any-test': ({ form }, { here, send }) => {
    const { circuit } = here.state.session.opened;
    return circuit === null ? null : (
      <AnyTestPage
        form={form}
        circuit={circuit}
        title="Any test"
        aside={asideOf(here)}
        sketch={here.opened.sketch(testOfForm(form), FORM_COLUMNS)}
        found={here.opened.drill && lastFound(here.opened, here.state.session)}
        message={here.state.message}
        terminalWords={here.opened.terminalWords}
        canCapture={here.opened.drill !== null}
        onForm={(next) => send({ type: 'form', form: next })}
        onLine={(line) => send({ type: 'line', line })}
        onKey={(type) => send({ type })}
      />
    );
  },
  'made-test': ({ toDo }, { here, send }) => (
    <MadeTestScreen
      opened={here.opened}
      toDo={toDo}
      message={here.state.message}
      onTake={(command) => send({ type: 'take', command })}
      onClose={() => send(CLOSE)}
    />
  ),
  choice: ({ of }, { here, send }) => (
    <PickScreen<ChoiceItem>
      {...choiceList(here, of)}
      {...(of === 'tests' && !here.opened.drill
        ? {
            others: [
              { key: MADE, onPick: (item) => item && send({ type: 'made', id: item.id }) },
              { key: ARRANGE, onPick: () => send({ type: 'chosen', id: BY_HAND }) },
            ],
            typed: (search: string) => typedItem(here, search),
          }
        : {})}
      onPick={({ id }) => send({ type: 'chosen', id })}
      onClose={() => send(CLOSE)}
    />
  ),
  clip: (_, at) => asks(at, CLIP),
  plan: (_, { here, clock, send }) => {
    const plan = drivePlan(here.state.session);
    return (
      <TakePage
        title="Plan a drive"
        paragraphs={planParagraphs(plan, here.opened.bind)}
        message={here.state.message}
        clock={clock}
        enter={plan ? 'note it in the record' : null}
        onTake={() => plan && send({ type: 'take', command: noteOf(plan, here.opened.bind) })}
        keys={[CLOSE_KEY]}
        onKey={() => send(CLOSE)}
      />
    );
  },
  watched: (_, at) =>
    asks(
      at,
      watchedQuestion(
        watchedAsked(at.here.opened, at.here.state.session, retestStep(at.here) ?? undefined),
      ),
    ),
  drive: (_, at) => asks(at, DRIVE),
  work: (_, at) => {
    const { sentences, prices } = at.here.opened.call();
    return asks(at, workQuestion([...sentences, prices.join(' ')].filter(Boolean)));
  },

  // A drill.
  opening: (_, at) =>
    read(at, 'The job', [
      ...openingLines(at.here.state.session),
      ...(at.here.opened.notice === undefined ? [] : ['', `! ${at.here.opened.notice}`]),
    ]),
  picture: ({ capture }, { here, send }) => (
    <PicturePage
      capture={capture}
      found={lastFound(here.opened, here.state.session)}
      onClose={() => send(CLOSE)}
    />
  ),
  diagnosis: ({ chosen }, { here, send }) => (
    <PickScreen
      key={chosen.length}
      title={chosen.length === 0 ? 'What fixes it?' : 'What else does it need?'}
      items={diagnosisItems(here, chosen)}
      empty=""
      onPick={({ repair }) => send({ type: 'repair', repair })}
      onClose={() => send(CLOSE)}
    />
  ),
  'hand-in': ({ chosen }, { here, clock, send }) => (
    <TakePage
      title="This ends the drill"
      paragraphs={handInOf(here, chosen)}
      message={here.state.message}
      clock={clock}
      enter={chosen.length === 0 ? 'give up' : 'hand it in'}
      onTake={() => send({ type: 'accept' })}
      keys={[GO_BACK]}
      onKey={() => send(CLOSE)}
    />
  ),
  debrief: ({ debrief }, { here, send }) => (
    <ReadingPage
      title="After the drill"
      paragraphs={[
        ...debriefLines(debrief).map((text, index) => ({ text, bold: index === 0, hang: 4 })),
        '',
        `Saved: ${here.opened.driver.path()}`,
      ]}
      onClose={() => send({ type: 'leave' })}
    />
  ),
};

function cautionKeys(actions: readonly SessionAction[] | null): (KeyBinding | SessionKey)[] {
  return actions ? withFooter(actions) : [NOT_NOW];
}

const CLOSE: PageEvent = { type: 'close' };
const NOT_NOW = { ...CLOSE_KEY, help: 'not now' };
const GO_BACK = { ...CLOSE_KEY, help: 'go back' };
const AGAIN = { keys: keysOfAction('back'), show: 'F2', help: 'the last test again' };
const LATER = { keys: ['escape', ...keysOfAction('pause')], show: 'Esc', help: 'not yet' };
const MADE = { keys: ['tab'], show: 'Tab', help: 'made already' };
const ARRANGE = { keys: keysOfAction('any-test'), show: 'Ins', help: 'arrange one' };
const FORM_COLUMNS = 76;
const SIMULATED = 'This is a simulated vehicle; the caution is the one for a real one.';
const NO_SUSPECTS = {
  rows: [],
  changed: null,
  intermittent: false,
  unexplained: null,
  unexplainedBy: null,
  group: null,
  groupRepairs: [],
};

/** A page to read. */
function read(
  { send }: Drawing,
  title: string,
  paragraphs: readonly (Paragraph | string)[],
  openedBy?: SessionAction,
): ReactNode {
  return (
    <ReadingPage
      title={title}
      paragraphs={paragraphs}
      openedBy={openedBy ? keysOfAction(openedBy) : []}
      onClose={() => send(CLOSE)}
    />
  );
}

/** A question answered with a line of text. */
function asks({ here, send }: Drawing, question: Question): ReactNode {
  return (
    <TextQuestion
      key={question.question}
      {...question}
      message={here.state.message}
      onAnswer={(text) => send({ type: 'text', text })}
      onClose={() => send(CLOSE)}
    />
  );
}

function isRetest({ here }: Drawing): boolean {
  return pageNamed(here.state, 'retest') !== null;
}

function carOf({ opened, state }: Here): CarView | null {
  return adviceOf(opened)?.diagnosis(state.session).car ?? null;
}

/** In place of what the last reading changed, while that is not known yet. */
function stillWeighed({ state: { session } }: Here): string | null {
  return session.answers.length + session.tests.length === 0 ? null : 'still being weighed.';
}

function changedBy({ opened, state }: Here): string | null {
  return adviceOf(opened)?.suspects(state.session).changed ?? null;
}

function afterTest({ state }: Here): string {
  const isAsked = state.session.status === 'open' && state.session.trail.length > 0;
  return isAsked ? 'then back to the step' : '';
}
