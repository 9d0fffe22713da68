/** After the repair, on the screen: the tests that must pass, one after the other, then before beside after. */
import { useState } from 'react';
import { takesCapture } from '../../session/capture-step.ts';
import type { Command } from '../../session/command.ts';
import type { Performed } from '../../session/driver.ts';
import { pendingCautions } from '../../session/pending-cautions.ts';
import {
  againCommand,
  closeCommand,
  LAST_WORD,
  type RetestLine,
  retestLines,
} from '../../session/retest.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import type { KeyBinding } from '../parts/key-hints.tsx';
import type { Paragraph } from '../parts/text-block.ts';
import { CaptureFlow } from './capture-flow.tsx';
import { CautionScreen } from './caution-screen.tsx';
import { answerAfter, askedAt, freshAnswer, type HalfAnswer } from './prompt-state.ts';
import { keysOf, type SessionAction, withFooter } from './session-keys.ts';
import { StepPage } from './step-page.tsx';
import { StepScreen } from './step-screen.tsx';
import { answerWords, nextLine, retestMark, retestWords } from './step-words.ts';
import { TakePage } from './take-page.tsx';
import { NO_REASON, TextQuestion } from './text-question.tsx';

export interface RetestFlowProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly clock: () => number;
  readonly perform: (command: Command) => Performed;
  /** Back to the session at rest; what was tested is saved. */
  readonly onClose: () => void;
}

const AGAIN: KeyBinding = { keys: keysOf('back'), show: 'F2', help: 'the last test again' };
const LATER: KeyBinding = { keys: ['escape', ...keysOf('pause')], show: 'Esc', help: 'not yet' };

type Over = 'help' | 'sketch' | 'sums' | 'capture' | 'cannot' | null;

/** The pages. */
export function RetestFlow({ opened, session, clock, perform, onClose }: RetestFlowProps) {
  const lines = retestLines(session);
  const [again, setAgain] = useState<string | null>(null);
  const [over, setOver] = useState<Over>(null);
  const [kept, setKept] = useState<HalfAnswer | null>(null);
  const [message, setMessage] = useState<string | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const place = lines.findIndex(({ step, after }) =>
    again === null ? after === null : step.id === again,
  );
  const line = lines[place];

  function back() {
    const last = session.retests.at(-1)?.step ?? null;
    if (last === null) return onClose();
    setAgain(last);
    setMessage('Test it again: the new result counts.');
  }

  if (!line)
    return (
      <TakePage
        title="After the repair"
        paragraphs={verdictParagraphs(opened, session, lines)}
        message={refused}
        clock={clock}
        enter="close the record with it"
        onTake={() => {
          const done = perform(closeCommand(session));
          if (done.ok) onClose();
          else setRefused(refusal(done));
        }}
        keys={[AGAIN, LATER]}
        onKey={(binding) => (binding === AGAIN ? back() : onClose())}
      />
    );

  const { step } = line;
  const progress = `test ${place + 1} of ${lines.length}`;
  const asking = `${step.id} ${session.retests.length}`;
  const half = kept?.asking === asking ? kept : { ...freshAnswer(session, step), asking };

  function send(command: Command) {
    const done = perform(command);
    if (!done.ok) return setMessage(refusal(done));
    setAgain(null);
    setOver(null);
    setMessage(LAST_WORDS[retestMark(done.session.retests.at(-1) ?? null)]);
  }

  function act(action: SessionAction) {
    setMessage(null);
    switch (action) {
      case 'back':
        return back();
      case 'pause':
        return onClose();
      case 'help':
      case 'sketch':
      case 'sums':
      case 'cannot':
        return setOver(action);
      case 'capture':
        return takesCapture(step)
          ? setOver('capture')
          : setMessage('! this test is not answered by a capture');
      default:
        return setMessage('! not in a test after the repair: F10 leaves it, and it goes on later');
    }
  }

  const close = () => setOver(null);
  switch (over) {
    case 'help':
    case 'sketch':
    case 'sums':
      return <StepPage page={over} opened={opened} step={step} onClose={close} />;
    case 'cannot':
      return (
        <TextQuestion
          title="This test cannot be made"
          question="Why not?"
          about="For example: the terminal cannot be reached any more. The record shows the reason, and that the cure is not shown by this test."
          empty={NO_REASON}
          message={message}
          onAnswer={(reason) => send({ type: 'cannot-retest', step: step.id, reason })}
          onClose={close}
        />
      );
    case 'capture':
      if (step.kind === 'ask') break;
      return (
        <CaptureFlow
          opened={opened}
          ask={{ kind: 'retest', step }}
          {...(opened.repaired ? { fault: opened.repaired.fault } : {})}
          message={message}
          clock={clock}
          onTake={send}
          onClose={close}
        />
      );
    case null:
      break;
  }

  const cautions = pendingCautions(session, step);
  if (cautions.length > 0)
    return (
      <CautionScreen
        key={asking}
        cautions={cautions}
        aside={`after the repair, ${progress}`}
        before={nextLine(opened.bind(step.title), step.setup)}
        message={message}
        clock={clock}
        keys={withFooter(['cannot', 'pause', 'help'])}
        onKey={({ action }) => act(action)}
        onAcknowledge={() => {
          const done = perform({ type: 'acknowledge-cautions', step: step.id });
          if (!done.ok) setMessage(refusal(done));
        }}
      />
    );
  const asked = askedAt(opened, session, step, half, opened.repaired?.answers(step) ?? null);
  return (
    <StepScreen
      key={asking}
      opened={opened}
      session={session}
      step={step}
      asked={asked}
      changed={null}
      again={{
        progress,
        before: line.before ? answerWords(line.before, session) : 'not measured',
      }}
      message={message}
      onAction={act}
      clock={clock}
      onPromptKey={(event, timing) => {
        const next = answerAfter(half, asked, event, timing);
        setKept(next.half);
        setMessage(next.note);
        const command = next.command && againCommand(step, next.command);
        if (command) send(command);
      }}
    />
  );
}

function verdictParagraphs(
  opened: OpenedSession,
  session: Session,
  lines: readonly RetestLine[],
): Paragraph[] {
  const { verdict, words } = closeCommand(session);
  return [
    { text: VERDICT_TITLES[verdict], bold: true },
    { text: `${sentenceStart(words)}.` },
    ...(verdict === 'cured' || verdict === 'not-shown' ? [{ text: LAST_WORD }] : []),
    ...(verdict === 'not-cured' || verdict === 'changed' || verdict === 'not-shown'
      ? [
          {
            text: 'Not the end yet? Esc keeps the record open: mend further, then test again. Once closed it stays closed, and what is left to find is a new session.',
          },
        ]
      : []),
    ...lines.flatMap(({ step, before, after }): Paragraph[] => [
      { text: '' },
      { text: `${sentenceStart(retestMark(after))}: ${opened.bind(step.title)}`, bold: true },
      {
        text: `Before: ${before ? answerWords(before, session) : 'not measured'}`,
        hang: 8,
      },
      { text: `After:  ${after ? retestWords(step, after) : 'not tested'}`, hang: 8 },
    ]),
  ];
}

const LAST_WORDS = {
  passes: 'The last test passes now.',
  FAILS: '! The last test does not pass.',
  'not made': 'The last test was not made.',
} as const;

const VERDICT_TITLES = {
  cured: 'The failed tests pass now',
  'not-cured': 'Not cured',
  changed: 'Changed',
  'not-shown': 'The cure is not shown',
  'no-retest': 'Nothing was tested',
} as const;

function refusal({ words, fix }: Extract<Performed, { ok: false }>): string {
  return `! ${words}${fix ? `: ${fix}` : ''}`;
}

function sentenceStart(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
}
