/** What the readings come to, to be accepted, taken further or taken back. */
import { useMemo } from 'react';
import type { Advisor, Better, Proposal, SuspectRow, Weighed } from '../../session/advisor.ts';
import type { Session } from '../../session/session.ts';
import type { OpenedSession } from '../app-services.ts';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { conclusionParagraphs, DO_BETTER, type Proposed } from './conclusion-words.ts';
import { usefulKeys } from './pages-state.ts';
import { beforeLastTests, provenBeforeWords } from './proven-before.ts';
import { CLOSE_KEY, type SessionAction, type SessionKey } from './session-keys.ts';
import { sessionTitle } from './step-words.ts';
import { TakePage } from './take-page.tsx';
import { useLater } from './use-later.ts';

export interface ConclusionScreenProps {
  readonly opened: OpenedSession;
  readonly session: Session;
  readonly proposed: Proposed;
  readonly message: string | null;
  readonly clock: () => number;
  readonly onAccept: () => void;
  /** The test to make before: what it rests on once more, what tells most, or what would prove it. */
  readonly onFirst: (proposal: Proposal) => void;
  /** Takes the answer at a place of the way back, which its repeats contradict. */
  readonly onTakeBack: (place: number) => void;
  /** What the readings speak for instead. */
  readonly onInstead: (row: SuspectRow) => void;
  /** Only for the tree's conclusion: name another one; on a drill the diagnosis. */
  readonly onOwn: () => void;
  /** Only for one's own: leave it. */
  readonly onClose: () => void;
  readonly onAction: (action: SessionAction) => void;
}

const OWN: KeyBinding = { keys: ['o'], show: 'o', help: 'my own conclusion' };
/** Where Enter does what is better than to accept. */
const ALL_THE_SAME: KeyBinding = { keys: ['a'], show: 'a', help: 'accept anyway' };
const DIAGNOSIS: KeyBinding = { keys: ['c', 'o'], show: 'c', help: 'diagnosis' };

export function ConclusionScreen(props: ConclusionScreenProps) {
  const { opened, session, proposed } = props;
  const { advisor, drill } = opened;
  // What points to it on a drill is part of what is learned from it.
  const faults = drill ? null : proposed.faults;
  const asked = advisor && faults ? { advisor, faults } : null;
  const weighed = useLater<Weighed | null>(
    session,
    asked?.faults.join(' ') ?? null,
    () => asked?.advisor.weigh(session, asked.faults) ?? null,
    () => asked?.advisor.prepareWeigh(session, asked.faults) ?? null,
  );
  useProvenBefore(opened, session, { ...asked, title: proposed.title }, weighed);
  // Anew when the proof arrives: an Enter pressed before it does not count.
  const key = `${proposed.title} ${weighed === 'pending'}`;
  return <WeighedConclusion key={key} {...props} weighed={weighed} />;
}

/** After a resumption what was proven before is not known: it is weighed behind the page, whose words then say it. */
function useProvenBefore(
  opened: OpenedSession,
  session: Session,
  { advisor, faults, title }: Partial<AskedOfProof> & { readonly title: string },
  weighed: Weighed | 'pending' | null,
): void {
  const isOpen = weighed !== null && weighed !== 'pending' && !weighed.proven;
  const before = useMemo(
    () => (isOpen && faults ? beforeLastTests(opened, session, { faults, title }) : []),
    [isOpen, opened, session, faults, title],
  );
  const known = advisor && faults && before.length > 0 ? { advisor, faults } : null;
  useLater<null>(
    session,
    known && `before ${known.faults.join(' ')}`,
    () => null,
    () => known && weighedBefore(opened, { ...known, title }, before),
  );
}

/** Up to the last one that was proven. */
function* weighedBefore(
  opened: OpenedSession,
  { advisor, faults, title }: AskedOfProof & { readonly title: string },
  before: readonly Session[],
) {
  for (const session of before) {
    yield* advisor.prepare(session);
    yield* advisor.prepareWeigh(session, faults);
    const weighed = advisor.weigh(session, faults);
    provenBeforeWords(opened, session, title, weighed);
    if (weighed.proven) return;
  }
}

interface AskedOfProof {
  readonly advisor: Advisor;
  readonly faults: readonly string[];
}

type WeighedProps = ConclusionScreenProps & {
  /** `pending` while it is computed; null where there is nothing to weigh it with. */
  readonly weighed: Weighed | 'pending' | null;
};

function WeighedConclusion(props: WeighedProps) {
  const { opened, session, proposed, weighed } = props;
  const { drill } = opened;
  const known = weighed === 'pending' ? null : weighed;
  const better = known?.better ?? { kind: 'accept' };
  const keys = keysAt(props, better.kind !== 'accept');
  return (
    <TakePage
      title={drill ? TITLES.drill : proposed.own ? TITLES.own : TITLES.tree}
      aside={sessionTitle(opened, session)}
      paragraphs={conclusionParagraphs(opened, session, proposed, weighed)}
      message={props.message}
      clock={props.clock}
      enter={drill ? null : DO_BETTER[better.kind]}
      notYet={weighed === 'pending' ? 'One moment: read the proof first.' : null}
      onTake={() => take(props, better)}
      keys={keys}
      needsPause={[ALL_THE_SAME]}
      onKey={(binding) => {
        if (binding === OWN || binding === DIAGNOSIS) props.onOwn();
        else if (binding === ALL_THE_SAME) props.onAccept();
        else if (binding === CLOSE_KEY) props.onClose();
        else if ('action' in binding) props.onAction(binding.action);
      }}
    />
  );
}

function take(props: ConclusionScreenProps, better: Better): void {
  switch (better.kind) {
    case 'take-back':
      props.onTakeBack(better.overturned.place);
      break;
    case 'repeat':
    case 'first':
    case 'narrow':
    case 'prove':
      props.onFirst(better.proposal);
      break;
    case 'instead':
      props.onInstead(better.row);
      break;
    case 'accept':
      props.onAccept();
  }
}

const TITLES = {
  tree: 'Conclusion',
  own: 'Your own conclusion',
  drill: 'The procedure ends here',
} as const;

function keysAt(
  { opened, proposed }: WeighedProps,
  isBetter: boolean,
): (KeyBinding | SessionKey)[] {
  const first = opened.drill ? DIAGNOSIS : proposed.own ? CLOSE_KEY : OWN;
  const actions = ['back', 'suspects', 'next-tests', 'help'] as const;
  return [...(isBetter ? [ALL_THE_SAME] : []), first, ...usefulKeys(opened, actions)];
}
