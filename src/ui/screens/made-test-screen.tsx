/** A test that was made already is written down: when, what it showed, a note. */
import { useState } from 'react';
import { probeWhere, setupWords } from '../../procedure/test-words.ts';
import type { Command } from '../../session/command.ts';
import type { TestToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import { type Form, formAfter, takesText } from '../parts/form-state.ts';
import { FormView } from '../parts/form-view.tsx';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { ScrollText } from '../parts/scroll-text.tsx';
import { textBlock } from '../parts/text-block.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { madeTestCommand, madeTestForm, madeTestRemark } from './made-test-state.ts';

export interface MadeTestScreenProps {
  readonly opened: OpenedSession;
  readonly toDo: TestToDo;
  /** Why the session refused it. */
  readonly message: string | null;
  readonly onTake: (command: Command) => void;
  readonly onClose: () => void;
}

const TAKE: KeyBinding = { keys: ['ctrl-s', 'f10'], show: 'Ctrl+S', help: 'into the record' };
const KEYS: readonly KeyBinding[] = [
  { keys: ['return'], show: 'Enter', help: 'next field' },
  TAKE,
  { keys: ['up', 'down'], show: 'Up/Down', help: 'move' },
  { keys: ['escape'], show: 'Esc', help: 'back' },
];

/** The screen. Enter after the last field takes it. */
export function MadeTestScreen({ opened, toDo, message, onTake, onClose }: MadeTestScreenProps) {
  const [form, setForm] = useState<Form>(() => madeTestForm(toDo));
  const [problem, setProblem] = useState<string | null>(null);
  const look = useLook();
  const { rows, columns } = bodySize(useSize(), KEYS);
  const { job, circuit } = opened.driver.session().opened;
  const { test } = toDo;
  const where = `${probeWhere(test.probe, job, circuit)}; ${setupWords(test.setup, job, circuit)}`;
  const head = textBlock(
    [{ text: opened.bind(toDo.words), bold: true }, `${where}.`, ''],
    columns,
    look,
  );

  function take() {
    const made = madeTestCommand(form, opened, toDo);
    if ('type' in made) return onTake(made);
    setProblem(made.words);
    setForm({ ...form, at: made.at });
  }

  useKeys(
    (event) => {
      const label = keyLabel(event);
      if (label === 'escape') return onClose();
      const isLast = form.at === form.fields.length - 1;
      if (bindingOf(event, KEYS) === TAKE || (label === 'return' && isLast)) return take();
      setProblem(null);
      setForm(formAfter(form, event));
    },
    { takesText: takesText(form) },
  );

  return (
    <Frame title="A test done already" keys={KEYS}>
      <ScrollText lines={head} rows={head.length} top={0} />
      <FormView
        form={form}
        rows={Math.max(1, rows - head.length)}
        remark={problem ?? message ?? madeTestRemark(form, opened, toDo)}
      />
    </Frame>
  );
}
