/** The job sheet on the screen. */
import { useState } from 'react';
import type { Circuit } from '../../circuit/circuit.ts';
import type { Job } from '../../procedure/job.ts';
import type { Replaceable } from '../../procedure/read-repair.ts';
import { type Form, formAfter, takesText } from '../parts/form-state.ts';
import { FormView } from '../parts/form-view.tsx';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText, scrollBy } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import {
  type Doubt,
  fieldProblem,
  jobDoubts,
  jobOf,
  jobProblem,
  jobRemark,
  jobSheet,
} from './job-sheet-state.ts';
import { withPins } from './pin-fields.ts';
import { useKeyTiming } from './use-key-timing.ts';

export interface JobScreenProps {
  readonly job: Job;
  readonly procedure: string;
  readonly terminals: readonly { id: string; words: string }[];
  /** Parts of the circuit that can have been replaced before. */
  readonly parts: readonly Replaceable[];
  /** Of which values can be known; null for a procedure without one. */
  readonly circuit: Circuit | null;
  /** Monotonic ms: an Enter typed ahead does not pass over what is doubtful. */
  readonly clock: () => number;
  readonly onTake: (job: Job) => void;
  readonly onClose: () => void;
}

const BEGIN: KeyBinding = { keys: ['ctrl-s', 'f10'], show: 'Ctrl+S', help: 'begin' };
const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'next field' },
  BEGIN,
  { keys: ['up', 'down'], show: 'Up/Down', help: 'move' },
  { keys: ['escape'], show: 'Esc', help: 'back' },
];

const ALL_THE_SAME: KeyBinding = { keys: ['return'], show: 'Enter', help: 'begin all the same' };
const CORRECT: KeyBinding = { keys: ['escape'], show: 'Esc', help: 'correct it' };
const DOUBT_KEYS: readonly KeyBinding[] = [ALL_THE_SAME, CORRECT];

/** The screen. Enter runs through the fields and begins after the last; what is doubtful is shown first. */
export function JobScreen(props: JobScreenProps) {
  const [sheet, setSheet] = useState<Form>(() =>
    jobSheet(props.job, props.terminals, props.circuit, props.parts),
  );
  const [problem, setProblem] = useState<string | null>(null);
  const [doubts, setDoubts] = useState<readonly Doubt[]>([]);
  const { rows } = bodySize(useSize(), KEYS);

  function begin() {
    const missing = jobProblem(sheet);
    if (missing !== null) {
      setProblem(missing);
      setSheet({ ...sheet, at: 0 });
      return;
    }
    const wrong = fieldProblem(sheet, props.circuit);
    if (wrong !== null) {
      setProblem(wrong.words);
      setSheet({ ...sheet, at: wrong.at });
      return;
    }
    const found = jobDoubts(sheet);
    if (found.length === 0 || doubts.length > 0)
      return props.onTake(jobOf(sheet, props.job, props.parts, props.circuit));
    setDoubts(found);
  }

  useKeys(
    (event) => {
      const label = keyLabel(event);
      if (doubts.length > 0) return;
      if (label === 'escape') return props.onClose();
      const isLast = sheet.at === sheet.fields.length - 1;
      if (bindingOf(event, KEYS) === BEGIN || (label === 'return' && isLast)) return begin();
      setProblem(null);
      const next = formAfter(sheet, event);
      setSheet(withPins(next, props.terminals, props.circuit, props.job));
    },
    { takesText: doubts.length === 0 && takesText(sheet) },
  );

  if (doubts.length > 0)
    return (
      <DoubtsPage
        doubts={doubts}
        procedure={props.procedure}
        clock={props.clock}
        onTake={begin}
        onClose={() => {
          setSheet({ ...sheet, at: doubts[0]?.at ?? 0 });
          setDoubts([]);
        }}
      />
    );
  return (
    <Frame title="Job sheet" aside={props.procedure} keys={KEYS}>
      <FormView
        form={sheet}
        rows={rows}
        remark={problem ?? jobRemark(sheet, props.parts, props.circuit)}
      />
    </Frame>
  );
}

interface DoubtsPageProps extends Pick<JobScreenProps, 'procedure' | 'clock' | 'onClose'> {
  readonly doubts: readonly Doubt[];
  readonly onTake: () => void;
}

/** What may be a mistake on the sheet, before the session begins. */
function DoubtsPage({ doubts, procedure, clock, onTake, onClose }: DoubtsPageProps) {
  const timing = useKeyTiming(clock);
  const look = useLook();
  const { rows, columns } = bodySize(useSize(), DOUBT_KEYS);
  const [top, setTop] = useState(0);
  const paragraphs = [
    { text: 'Before the session begins: is this right?', bold: true },
    ...doubts.flatMap(({ words }) => ['', words]),
  ];
  const lines = textBlock(paragraphs, columns, look);

  useKeys((event) => {
    const { isDeliberate } = timing(event);
    const key = bindingOf(event, DOUBT_KEYS);
    if (key === CORRECT) onClose();
    else if (key === ALL_THE_SAME && isDeliberate) onTake();
    const to = scrollBy(keyLabel(event), { count: lines.length, rows, top });
    if (to !== null) setTop(to);
  });

  return (
    <Frame title="Job sheet" aside={procedure} keys={DOUBT_KEYS}>
      <ScrollText lines={lines} rows={rows} top={top} />
    </Frame>
  );
}
