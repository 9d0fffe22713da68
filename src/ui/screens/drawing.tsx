/** What every view of a session is drawn with. */
import type { ReactNode } from 'react';
import type { Paragraph } from '../parts/text-block.ts';
import type { Here } from './pages-state.ts';
import { ReadingPage } from './reading-page.tsx';
import { keysOfAction, type SessionAction } from './session-keys.ts';
import type { PageEvent } from './session-pages.ts';
import type { View, ViewParts } from './session-view.ts';

/** Where a view is drawn, and where what happens on it goes. */
export interface Drawing {
  readonly here: Here;
  /** What is known in this state is still being weighed. */
  readonly isThinking: boolean;
  readonly clock: () => number;
  readonly send: (event: PageEvent) => void;
}

/** How each view of some names is drawn. */
export type ViewTable<N extends keyof ViewParts> = {
  readonly [K in N]: (view: View<K>, at: Drawing) => ReactNode;
};

/** Back to what lies below. */
export const CLOSE: PageEvent = { type: 'close' };

/** A page of paragraphs; Esc closes it, and so does the key that opened it. */
export function readPage(
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
