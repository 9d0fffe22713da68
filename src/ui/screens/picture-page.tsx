/** What the scope of a drill's bench saved: what was found in it, then the picture. */
import { capturedFindingWords } from '../../session/capture-words.ts';
import type { StepCapture } from '../../session/events.ts';
import { bodySize } from '../parts/frame.tsx';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { capturePlot } from './capture-plot.ts';
import { ReadingPage } from './reading-page.tsx';

export interface PicturePageProps {
  readonly capture: StepCapture;
  /** What the reading came to, or null. */
  readonly found: string | null;
  readonly onClose: () => void;
}

export function PicturePage({ capture, found, onClose }: PicturePageProps) {
  const look = useLook();
  const { columns } = bodySize(useSize(), []);
  const drawn = capturePlot(capture, columns, look.ascii).map((text) => ({ text, drawn: true }));
  return (
    <ReadingPage
      title="The capture"
      paragraphs={[
        ...(found === null ? [] : [{ text: found, bold: true }]),
        ...capturedFindingWords(capture),
        '',
        ...drawn,
      ]}
      onClose={onClose}
    />
  );
}
