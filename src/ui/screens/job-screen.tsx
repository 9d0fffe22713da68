/** The job sheet on the screen. */
import { useState } from 'react';
import type { Job } from '../../procedure/job.ts';
import { type Form, formAfter } from '../parts/form-state.ts';
import { FormView } from '../parts/form-view.tsx';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useSize } from '../term/use-size.ts';
import { jobOf, jobProblem, jobRemark, jobSheet } from './job-sheet-state.ts';

export interface JobScreenProps {
  readonly job: Job;
  readonly procedure: string;
  readonly terminals: readonly { id: string; words: string }[];
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

/** The screen. Enter runs through the fields and begins after the last. */
export function JobScreen(props: JobScreenProps) {
  const [sheet, setSheet] = useState<Form>(() => jobSheet(props.job, props.terminals));
  const [problem, setProblem] = useState<string | null>(null);
  const { rows } = bodySize(useSize(), KEYS);

  function begin() {
    const missing = jobProblem(sheet);
    if (missing === null) return props.onTake(jobOf(sheet, props.job));
    setProblem(missing);
    setSheet({ ...sheet, at: 0 });
  }

  useKeys((event) => {
    const label = keyLabel(event);
    if (label === 'escape') return props.onClose();
    const isLast = sheet.at === sheet.fields.length - 1;
    if (bindingOf(event, KEYS) === BEGIN || (label === 'return' && isLast)) return begin();
    setProblem(null);
    setSheet(formAfter(sheet, event));
  });

  return (
    <Frame title="Job sheet" aside={props.procedure} keys={KEYS}>
      <FormView form={sheet} rows={rows} remark={problem ?? jobRemark(sheet)} />
    </Frame>
  );
}
