/** Instruments as tick boxes, and back. No React. */
import { INSTRUMENTS, type Instrument } from '../../files/settings.ts';
import type { Form } from '../parts/form-state.ts';

/** Words of the instruments, for lists. */
export const INSTRUMENT_WORDS: Readonly<Record<Instrument, { words: string; about: string }>> = {
  meter: { words: 'Multimeter', about: 'Volts and ohms, 10 megohms input.' },
  'test-light': {
    words: 'LED test light',
    about: 'Draws about 32 mA at battery voltage; each test works out whether an output bears it.',
  },
  lamp: { words: 'Filament test lamp', about: 'Draws a quarter of an ampere: never on a module.' },
  scope: {
    words: 'Oscilloscope',
    about: 'For patterns and timing. Its clip may be joined to the mains ground.',
  },
  'live-data': { words: 'Live data', about: 'A tester that shows what the module counts.' },
  'spare-sensor': { words: 'Spare sensor', about: 'Known to be good, for this vehicle.' },
  resistor: { words: 'Resistors', about: 'To pull a signal without a light.' },
  lead: {
    words: 'Jumper leads',
    about: 'With a fuse each, to lay a wire beside one that may be broken.',
  },
  milliammeter: {
    words: 'Milliammeter',
    about: 'A meter with a fused milliampere socket, to be put into an opened wire.',
  },
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
