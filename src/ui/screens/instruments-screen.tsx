/** What the person has at hand, ticked off. */
import { useState } from 'react';
import { INSTRUMENTS, type Instrument } from '../../files/settings.ts';
import { type Form, formAfter } from '../parts/form-state.ts';
import { FormView } from '../parts/form-view.tsx';
import { bodySize, Frame } from '../parts/frame.tsx';
import type { KeyBinding } from '../parts/key-hints.tsx';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useSize } from '../term/use-size.ts';

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

/** Words of the instruments, for lists. */
export const INSTRUMENT_WORDS: Readonly<Record<Instrument, { words: string; about: string }>> = {
  meter: { words: 'Multimeter', about: 'Volts and ohms, 10 megohms input.' },
  'test-light': {
    words: 'LED test light',
    about: 'Draws about 32 mA at battery voltage: safe for module outputs.',
  },
  lamp: { words: 'Filament test lamp', about: 'Draws a quarter of an ampere: never on a module.' },
  scope: { words: 'Oscilloscope', about: 'For patterns and timing.' },
  'spare-sensor': { words: 'Spare sensor', about: 'Known to be good, for this vehicle.' },
  resistor: { words: 'Resistors', about: 'To pull a signal without a light.' },
  helper: { words: 'A helper', about: 'Somebody for the key and the starter.' },
};

/** Tick boxes for the instruments. */
export function instrumentFields(chosen: readonly string[]) {
  return INSTRUMENTS.map((name) => ({
    kind: 'check' as const,
    key: name,
    label: INSTRUMENT_WORDS[name].words,
    hint: INSTRUMENT_WORDS[name].about,
    on: chosen.includes(name),
  }));
}

/** The ticked instruments of a form. */
export function tickedIn(form: Form): Instrument[] {
  return INSTRUMENTS.filter((name) =>
    form.fields.some((field) => field.key === name && field.kind === 'check' && field.on),
  );
}

/** The screen. */
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
