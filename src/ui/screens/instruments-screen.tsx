/** What the person has at hand, ticked off. */
import { useState } from 'react';
import { type Form, formAfter } from '../parts/form-state.ts';
import { FormView } from '../parts/form-view.tsx';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useSize } from '../term/use-size.ts';
import { instrumentFields, tickedIn } from './instruments-state.ts';

export interface InstrumentsScreenProps {
  readonly instruments: readonly string[];
  readonly onTake: (instruments: readonly string[]) => void;
  readonly onClose: () => void;
}

const KEYS: readonly KeyBinding[] = [
  { keys: ['space'], show: 'Space', help: 'tick or untick' },
  { keys: ['return'], show: 'Enter', help: 'that is what I have' },
  { keys: ['escape'], show: 'Esc', help: 'leave it' },
];

export function InstrumentsScreen({ instruments, onTake, onClose }: InstrumentsScreenProps) {
  const [form, setForm] = useState<Form>(() => ({ fields: instrumentFields(instruments), at: 0 }));
  const { rows } = bodySize(useSize(), KEYS);
  useKeys((event) => {
    const label = keyLabel(event);
    if (label === 'escape') onClose();
    else if (label === 'return') onTake(tickedIn(form));
    else setForm(formAfter(form, event));
  });
  return (
    <Frame title="Instruments at hand" keys={KEYS}>
      <FormView form={form} rows={rows} />
    </Frame>
  );
}
