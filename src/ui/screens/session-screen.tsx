/**
 * A session on the screen. What is shown follows from the session's state; kept here is only what may be lost: the
 * page that lies over it, and the half-typed answer.
 */
import { useMemo, useState } from 'react';
import type { Proposal } from '../../session/advisor.ts';
import { type CaptureAsk, takesCapture } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import type { Performed } from '../../session/driver.ts';
import { pendingCautions } from '../../session/pending-cautions.ts';
import { presentStep } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { CaptureFlow } from './capture-flow.tsx';
import { CautionScreen } from './caution-screen.tsx';
import { ConclusionScreen } from './conclusion-screen.tsx';
import { fromSuspect, fromTree, fromWords, type Proposed } from './conclusion-words.ts';
import { DiskProblemScreen } from './disk-problem-screen.tsx';
import { ExtraFlow } from './extra-flow.tsx';
import { InstrumentsScreen } from './instruments-screen.tsx';
import { NextTestsScreen } from './next-tests-screen.tsx';
import { answerAfter, askedAt, askingOf, freshAnswer, type HalfAnswer } from './prompt-state.ts';
import { RestScreen } from './rest-screen.tsx';
import { RetestFlow } from './retest-flow.tsx';
import { type SessionAction, withFooter } from './session-keys.ts';
import { StepPage } from './step-page.tsx';
import { StepScreen } from './step-screen.tsx';
import { nextLine } from './step-words.ts';
import { SuspectsScreen } from './suspects-screen.tsx';
import { NO_REASON, TextQuestion } from './text-question.tsx';
import { useWeighed } from './use-weighed.ts';
import { WaitPage } from './wait-page.tsx';
import { WayScreen } from './way-screen.tsx';

export interface SessionScreenProps {
  readonly opened: OpenedSession;
  readonly clock: () => number;
  /** Begin with the tests after the repair. */
  readonly retest?: boolean;
  /** The session is at rest, or could not be saved: leave it. */
  readonly onHome: () => void;
}

/** The page that is shown; `now` is what the session itself asks for. */
type Page =
  | {
      readonly name:
        | 'now'
        | 'help'
        | 'suspects'
        | 'way'
        | 'sketch'
        | 'note'
        | 'cannot'
        | 'instruments'
        | 'own-words'
        | 'sums'
        | 'computing'
        | 'retest';
    }
  | { readonly name: 'next-tests'; readonly title: string; readonly proposals: readonly Proposal[] }
  | { readonly name: 'extra'; readonly proposal: Proposal }
  | { readonly name: 'own'; readonly proposed: Proposed }
  | { readonly name: 'capture'; readonly ask: CaptureAsk }
  | {
      readonly name: 'disk';
      readonly command: Command;
      readonly words: string;
      readonly fix: string;
    };

const NOW: Page = { name: 'now' };

const TELL_MOST = 'What would tell most now';
const NO_CIRCUIT = 'this procedure has no circuit behind it, so chances cannot be computed';

/** The screen. */
export function SessionScreen({ opened, clock, retest = false, onHome }: SessionScreenProps) {
  const { driver, advisor } = opened;
  const [session, setSession] = useState(driver.session);
  const [page, setPage] = useState<Page>(retest ? { name: 'retest' } : NOW);
  const [message, setMessage] = useState<string | null>(null);
  const [kept, setKept] = useState<HalfAnswer | null>(null);
  const suspects = useMemo(() => advisor?.suspects(session) ?? null, [advisor, session]);
  const step = presentStep(session);
  const proposed =
    page.name === 'own' ? page.proposed : step.kind === 'conclude' ? fromTree(session, step) : null;
  const faults = session.status === 'open' ? (proposed?.faults ?? null) : null;
  const weighed = useWeighed(advisor, session, faults === null ? null : faults.join(' '));

  function took(command: Command, done: Performed): void {
    if (done.ok) {
      setSession(done.session);
      setMessage(doneWords(command, opened));
      setPage(NOW);
    } else if (done.disk) setPage({ name: 'disk', command, words: done.words, fix: done.fix });
    else refuse(done.fix === '' ? done.words : `${done.words}: ${done.fix}`);
  }
  const refuse = (words: string) => setMessage(`! ${words}`);
  const send = (command: Command) => took(command, driver.perform(command));
  const open = (next: Page) => {
    setMessage(null);
    setPage(next);
  };
  const close = () => open(NOW);

  function act(action: SessionAction) {
    switch (action) {
      case 'back':
        return send({ type: 'go-back' });
      case 'pause':
        return send({ type: 'pause' });
      case 'cannot':
        if (step.kind === 'conclude' || step.cannot === null)
          return refuse(
            'this procedure has no way round this step: F6 shows other tests, F10 pauses here',
          );
        return open({ name: 'cannot' });
      case 'suspects':
        return advisor ? open({ name: 'suspects' }) : refuse(NO_CIRCUIT);
      case 'next-tests': {
        if (!advisor) return refuse(NO_CIRCUIT);
        const proving = weighed === null || weighed === 'pending' ? [] : weighed.wouldProve;
        return proving.length > 0
          ? open({ name: 'next-tests', title: 'What would prove it', proposals: proving })
          : open({ name: 'computing' });
      }
      case 'capture':
        return takesCapture(step)
          ? open({ name: 'capture', ask: { kind: 'step', step } })
          : refuse(NO_CAPTURE);
      case 'help':
      case 'sums':
      case 'note':
      case 'way':
      case 'sketch':
      case 'instruments':
        return open({ name: action });
    }
  }

  function conclude() {
    if (!proposed || weighed === 'pending') return;
    const { title, repair, isOwn } = proposed;
    send({
      type: 'conclude',
      ...(isOwn ? { own: { title, faults: proposed.faults ?? [], repair } } : {}),
      ...(weighed ? { weighed } : {}),
    });
  }

  switch (page.name) {
    case 'computing':
      return (
        <WaitPage
          title={TELL_MOST}
          words="One moment: every test that can be done here is being weighed."
          onShown={() =>
            open({
              name: 'next-tests',
              title: TELL_MOST,
              proposals: advisor?.nextTests(session) ?? [],
            })
          }
        />
      );
    case 'suspects':
      return suspects === null ? null : (
        <SuspectsScreen
          view={suspects}
          onClose={close}
          onConclude={(row) => open({ name: 'own', proposed: fromSuspect(row) })}
          onOwnWords={() => open({ name: 'own-words' })}
        />
      );
    case 'next-tests':
      return (
        <NextTestsScreen
          opened={opened}
          title={page.title}
          proposals={page.proposals}
          onClose={close}
          onChoose={(proposal) => open({ name: 'extra', proposal })}
        />
      );
    case 'extra':
      return (
        <ExtraFlow
          opened={opened}
          proposal={page.proposal}
          message={message}
          clock={clock}
          perform={(command) => {
            const done = driver.perform(command);
            if (done.ok) setSession(done.session);
            else took(command, done);
            return done.ok;
          }}
          onRecord={send}
          onClose={close}
        />
      );
    case 'retest':
      return (
        <RetestFlow
          opened={opened}
          session={session}
          clock={clock}
          perform={(command) => {
            const done = driver.perform(command);
            if (done.ok) setSession(done.session);
            else if (done.disk) took(command, done);
            return done;
          }}
          onClose={close}
        />
      );
    case 'way':
      return (
        <WayScreen
          opened={opened}
          session={session}
          onClose={close}
          onGoBack={(to) => send({ type: 'go-back', to })}
        />
      );
    case 'help':
    case 'sketch':
    case 'sums':
      return <StepPage page={page.name} opened={opened} step={step} onClose={close} />;
    case 'capture':
      return (
        <CaptureFlow
          opened={opened}
          ask={page.ask}
          message={message}
          clock={clock}
          onTake={send}
          onClose={close}
        />
      );
    case 'note':
      return (
        <TextQuestion
          title="Note"
          question="What did you see?"
          about="It goes into the record with its time and this step. It changes no answer."
          message={message}
          onAnswer={(text) => send({ type: 'add-note', text })}
          onClose={close}
        />
      );
    case 'cannot':
      return (
        <TextQuestion
          title="This step cannot be done"
          question="Why not?"
          about="For example: the terminal cannot be reached; the plug must not be opened. The record shows the reason."
          empty={NO_REASON}
          message={message}
          onAnswer={(reason) => send({ type: 'cannot-do', reason })}
          onClose={close}
        />
      );
    case 'own-words':
      return (
        <TextQuestion
          title="Your own conclusion"
          question="What is wrong, and what puts it right?"
          message={message}
          onAnswer={(words) => open({ name: 'own', proposed: fromWords(words) })}
          onClose={close}
        />
      );
    case 'instruments':
      return (
        <InstrumentsScreen
          instruments={session.instruments}
          onTake={(instruments) =>
            send({ type: 'change-instruments', instruments, meter: session.meter })
          }
          onClose={close}
        />
      );
    case 'disk':
      return (
        <DiskProblemScreen
          words={page.words}
          fix={page.fix}
          path={driver.path()}
          isElsewhere={driver.isElsewhere()}
          clock={clock}
          onRetry={() => send(page.command)}
          onFolder={(folder) => took(page.command, driver.continueIn(folder))}
          onLeave={onHome}
        />
      );
    case 'now':
    case 'own':
      break;
  }

  if (session.status !== 'open')
    return (
      <RestScreen
        opened={opened}
        session={session}
        message={message}
        onHome={onHome}
        onBack={() => act('back')}
        onRetest={() => open({ name: 'retest' })}
      />
    );
  if (proposed)
    return (
      <ConclusionScreen
        // Anew when the proof arrives: an Enter pressed before it does not count.
        key={`${proposed.isOwn} ${proposed.title} ${weighed === 'pending'}`}
        opened={opened}
        session={session}
        proposed={proposed}
        weighed={weighed}
        message={message}
        clock={clock}
        onAccept={conclude}
        onOwn={() => open(advisor ? { name: 'suspects' } : { name: 'own-words' })}
        onClose={close}
        onAction={act}
      />
    );
  if (step.kind === 'conclude') return null;

  const cautions = pendingCautions(session);
  if (cautions.length > 0)
    return (
      <CautionScreen
        key={`${step.id} ${session.trail.length}`}
        cautions={cautions}
        aside={`step ${session.trail.length}`}
        before={nextLine(opened.bind(step.title), step.setup)}
        message={message}
        clock={clock}
        keys={withFooter(['back', 'pause', 'help'])}
        onKey={({ action }) => act(action)}
        onAcknowledge={() => send({ type: 'acknowledge-cautions' })}
      />
    );

  const half = kept?.asking === askingOf(session) ? kept : freshAnswer(session, step);
  const asked = askedAt(opened, session, step, half);
  return (
    <StepScreen
      key={half.asking}
      opened={opened}
      session={session}
      step={step}
      asked={asked}
      changed={suspects?.changed ?? null}
      message={message}
      onAction={act}
      clock={clock}
      onPromptKey={(event, timing) => {
        const next = answerAfter(half, asked, event, timing);
        setKept(next.half);
        setMessage(next.note);
        if (next.command) send(next.command);
      }}
    />
  );
}

const NO_CAPTURE =
  'this step is not answered by a capture: pictures of a signal are, and its Hz, rpm, % and volts';

/** What a command that does not change the step has done, in words. */
function doneWords(command: Command, opened: OpenedSession): string | null {
  switch (command.type) {
    case 'add-note':
      return 'The note is in the record.';
    case 'change-instruments':
      return 'The instruments at hand are in the record.';
    case 'record-extra':
      return `In the record: ${opened.bind(command.words)}, ${command.typed}.`;
    default:
      return null;
  }
}
