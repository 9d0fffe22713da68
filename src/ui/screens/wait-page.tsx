/** Says that something takes a moment, and starts it only once that is on the screen: it may block everything. */
import { useEffect, useRef } from 'react';
import { Frame } from '../parts/frame.tsx';
import { Words } from '../parts/safe-words.tsx';

export interface WaitPageProps {
  readonly title: string;
  readonly words: string;
  /** Called once, after the page is drawn. */
  readonly onShown?: () => void;
}

/** The page. It has no keys. */
export function WaitPage({ title, words, onShown }: WaitPageProps) {
  const start = useRef(onShown);
  useEffect(() => {
    const soon = setImmediate(() => start.current?.());
    return () => clearImmediate(soon);
  }, []);
  return (
    <Frame title={title} keys={[]}>
      <Words>{words}</Words>
    </Frame>
  );
}
