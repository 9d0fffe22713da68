/** What lies over a session: pages to read, and lists to choose from. */
import { drivePlan } from '../../session/drive-plan.ts';
import { movesOdds } from '../../session/moves-odds.ts';
import { asideWords } from './aside-words.ts';
import { carOf } from './asking-views.tsx';
import { CaptureFlow } from './capture-flow.tsx';
import { carTold } from './car-words.ts';
import { foundLines } from './conclusion-words.ts';
import { DiskProblemScreen } from './disk-problem-screen.tsx';
import { CLOSE, readPage, type ViewTable } from './drawing.tsx';
import { InstrumentsScreen } from './instruments-screen.tsx';
import { knownItems } from './known-pages.ts';
import { NextTestsScreen } from './next-tests-screen.tsx';
import { helpParagraphs, sketchParagraphs, sumsParagraphs } from './over-words.ts';
import { adviceOf } from './pages-state.ts';
import { PickScreen } from './pick-screen.tsx';
import { noteOf, planParagraphs } from './plan-words.ts';
import { reachItems } from './reach-pages.ts';
import { CLOSE_KEY } from './session-keys.ts';
import { TELL_MOST } from './session-pages.ts';
import { shortItems } from './short-pages.ts';
import { SuspectsScreen } from './suspects-screen.tsx';
import { TakePage } from './take-page.tsx';
import { WaitPage } from './wait-page.tsx';
import { WayScreen } from './way-screen.tsx';

/** The views that can be laid over any session. */
export const OVER_VIEWS: ViewTable<
  | 'help'
  | 'sketch'
  | 'sums'
  | 'readings'
  | 'way'
  | 'suspects'
  | 'computing'
  | 'next-tests'
  | 'reach'
  | 'instruments'
  | 'shorts'
  | 'known'
  | 'capture'
  | 'disk'
  | 'plan'
> = {
  help: (_, at) => readPage(at, 'All keys', helpParagraphs(at.here.opened), 'help'),
  sketch: ({ test }, at) =>
    readPage(at, 'Wiring', sketchParagraphs(at.here.opened, test), 'sketch'),
  sums: ({ step }, at) => readPage(at, 'Sums', sumsParagraphs(at.here.opened, step), 'sums'),
  readings: (_, at) =>
    readPage(at, 'What was read', foundLines(at.here.opened, at.here.state.session), 'way'),
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
  known: (_, { here, send }) => (
    <PickScreen
      title="What is known about this car"
      items={knownItems(here)}
      empty="Nothing can be set here: this session has no circuit model."
      onPick={({ id }) => send({ type: 'chosen', id })}
      onClose={() => send(CLOSE)}
    />
  ),
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
};

const NO_SUSPECTS = {
  rows: [],
  changed: null,
  intermittent: false,
  unexplained: null,
  unexplainedBy: null,
  group: null,
  groupRepairs: [],
};
