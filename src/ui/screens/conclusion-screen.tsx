/** What the readings come to, to be accepted, taken further or taken back. */
import { useState } from 'react';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { conclusionParagraphs, type Proposed, type Weighed } from './conclusion-words.ts';
import { CLOSE_KEY, type SessionAction, type SessionKey, withFooter } from './session-keys.ts';
import { useKeyTiming } from './use-key-timing.ts';

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

/** The screen; mount it anew for each conclusion. */
export function ConclusionScreen(props: ConclusionScreenProps) {
  const { opened, session, proposed, weighed, message } = props;
  const look = useLook();
  const timing = useKeyTiming(props.clock);
  const [top, setTop] = useState(0);
  const [remark, setRemark] = useState<string | null>(null);
  const accept: KeyBinding = { keys: ['return'], show: 'Enter', help: 'accept' };
  const own: KeyBinding = { keys: ['o'], show: 'o', help: 'my own conclusion' };
  const actions: SessionAction[] = [
    'back',
    ...(opened.thinker ? (['suspects', 'next-tests'] as const) : []),
    'help',
  ];
  const keys: (KeyBinding | SessionKey)[] = [
    accept,
    ...(proposed.isOwn ? [CLOSE_KEY] : [own]),
    ...withFooter(actions),
  ];
  const body = bodySize(useSize(), keys);
  const lines = textBlock(
    conclusionParagraphs(opened, session, proposed, weighed),
    body.columns,
    look,
  );
  const note = message ?? remark;
  const rows = Math.max(1, body.rows - (note === null ? 0 : 1));

  useKeys((event) => {
    const { isDeliberate } = timing();
    const to = scrollBy(keyLabel(event), { count: lines.length, rows, top });
    if (to !== null) return setTop(to);
    const binding = bindingOf(event, keys);
    if (!binding) return;
    if (binding === accept) {
      if (weighed === 'pending') setRemark('One moment: read the proof first.');
      else if (isDeliberate) props.onAccept();
      else setRemark('That Enter came too quickly: read the conclusion, then press Enter.');
    } else if (binding === own) props.onOwn();
    else if (binding === CLOSE_KEY) props.onClose();
    else if ('action' in binding) props.onAction(binding.action);
  });

  return (
    <Frame
      title={proposed.isOwn ? 'Your own conclusion' : 'Conclusion'}
      aside={opened.bind(session.opened.procedure.title)}
      keys={keys}
    >
      <ScrollText lines={lines} rows={rows} top={top} />
      {note === null ? null : (
        <Words bold wrap="cut">
          {note}
        </Words>
      )}
    </Frame>
  );
}
