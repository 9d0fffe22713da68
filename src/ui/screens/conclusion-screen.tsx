/** What the readings come to, to be accepted, taken further or taken back. */
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { conclusionParagraphs, type Proposed, type Weighed } from './conclusion-words.ts';
import { CLOSE_KEY, type SessionAction, type SessionKey, withFooter } from './session-keys.ts';
import { TakePage } from './take-page.tsx';

export interface ConclusionScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly proposed: Proposed;
  /** `pending` while it is computed; null where there is nothing to weigh it with. */
  readonly weighed: Weighed | 'pending' | null;
  readonly message: string | null;
  readonly clock: () => number;
  readonly onAccept: () => void;
  /** Only for the tree's conclusion: name another one. */
  readonly onOwn: () => void;
  /** Only for one's own: leave it. */
  readonly onClose: () => void;
  readonly onAction: (action: SessionAction) => void;
}

const OWN: KeyBinding = { keys: ['o'], show: 'o', help: 'my own conclusion' };

/** The screen; mount it anew for each conclusion. */
export function ConclusionScreen(props: ConclusionScreenProps) {
  const { opened, session, proposed, weighed } = props;
  const actions: SessionAction[] = [
    'back',
    ...(opened.advisor ? (['suspects', 'next-tests'] as const) : []),
    'help',
  ];
  const keys: (KeyBinding | SessionKey)[] = [
    proposed.isOwn ? CLOSE_KEY : OWN,
    ...withFooter(actions),
  ];
  return (
    <TakePage
      title={proposed.isOwn ? 'Your own conclusion' : 'Conclusion'}
      aside={opened.bind(session.opened.procedure.title)}
      paragraphs={conclusionParagraphs(opened, session, proposed, weighed)}
      message={props.message}
      clock={props.clock}
      enter="accept"
      notYet={weighed === 'pending' ? 'One moment: read the proof first.' : null}
      onTake={props.onAccept}
      keys={keys}
      onKey={(binding) => {
        if (binding === OWN) props.onOwn();
        else if (binding === CLOSE_KEY) props.onClose();
        else if ('action' in binding) props.onAction(binding.action);
      }}
    />
  );
}
