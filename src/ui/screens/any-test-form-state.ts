/**
 * Any test as a form: lines for vehicle state, instrument, leads and the rest; Left and Right turn a line, Enter opens
 * its list. No React.
 */
import {
  ARRANGEMENT,
  type Arrangement,
  arrangedBy,
  arrangedTest,
  arrangementOf,
  leadPlaces,
  targetIn,
} from '../../circuit/arrange-test.ts';
import { type Circuit, inputTerminals, moduleOf } from '../../circuit/circuit.ts';
import { inspectable } from '../../circuit/instruments/eyes.ts';
import { INSTRUMENTS, PROBE_KINDS } from '../../circuit/instruments.ts';
import { type Probe, TEST_STATES, type Test } from '../../circuit/test.ts';

export const TEST_LINES = [
  'state',
  'instrument',
  'red',
  'black',
  'unplugged',
  'clipped-in',
  'sensor',
  'target',
  'harness',
] as const;

/** A line of the form, by what is set on it. */
export type TestLine = (typeof TEST_LINES)[number];

/** The test as far as it is arranged, and the line that keys go to. */
export interface TestForm extends Arrangement {
  readonly instrument: Probe['kind'];
  readonly red: string;
  readonly black: string;
  readonly marked: number;
}

/** Key off, a voltmeter from the first place of the harness to the battery's negative. */
export function testForm(circuit: Circuit): TestForm {
  const places = leadPlaces(circuit);
  const first = places.find(({ id }) => !id.startsWith('battery.')) ?? places[0]!;
  return {
    ...ARRANGEMENT,
    instrument: 'volts',
    red: first.id,
    black: 'battery.negative',
    marked: 0,
  };
}

/** The arranged form as a test that the circuit model understands. */
export function testOfForm({ instrument, red, black, ...arrangement }: TestForm): Test {
  return arrangedTest(arrangement, probeOf(instrument, red, black));
}

function probeOf(instrument: Probe['kind'], red: string, black: string): Probe {
  if (instrument === 'inspect') return { kind: 'inspect', of: red };
  if (instrument === 'counts') return { kind: 'counts', input: red };
  return { kind: instrument, plus: red, minus: black };
}

/** The form arranged like a test. */
export function formOfTest(form: TestForm, test: Test): TestForm {
  const { probe } = test;
  const red =
    probe.kind === 'inspect' ? probe.of : probe.kind === 'counts' ? probe.input : probe.plus;
  const black = 'minus' in probe ? probe.minus : form.black;
  return { ...form, ...arrangementOf(test), instrument: probe.kind, red, black };
}

/** The form after something was typed to be clipped in, or what is wrong with that. */
export function clippedIn(
  form: TestForm,
  typed: string,
  circuit: Circuit,
): TestForm | { readonly words: string } {
  const arranged = arrangedBy(form, `clip ${typed}`, circuit);
  if (arranged === null) return form;
  return 'words' in arranged ? arranged : { ...form, ...arranged.arrangement };
}

/** The form with the scope in hand, its leads where they are if they can be. */
export function withScope(form: TestForm, circuit: Circuit): TestForm {
  return withInstrument(form, 'pattern', circuit);
}

/** The form with another line marked by Up or Down; the same one for any other key. */
export function markedBy(form: TestForm, label: string): TestForm {
  const by = label === 'up' ? -1 : label === 'down' ? 1 : 0;
  if (by === 0) return form;
  const marked = Math.max(0, Math.min(TEST_LINES.length - 1, form.marked + by));
  return { ...form, marked };
}

/** What each line shows; places and things with their words on this vehicle. */
export function testLineWords(
  form: TestForm,
  line: TestLine,
  terminalWords: (id: string) => string,
  thing: (name: string) => string,
): string {
  const { setup } = form;
  const place = (id: string) => (form.instrument === 'inspect' ? thing(id) : terminalWords(id));
  switch (line) {
    case 'state':
      return setup.state.replace('-', ' ');
    case 'instrument':
      return INSTRUMENTS[form.instrument].words.name;
    case 'red':
      return place(form.red);
    case 'black':
      return form.instrument === 'inspect' || form.instrument === 'counts'
        ? '-'
        : place(form.black);
    case 'unplugged':
      return setup.unplugged.map(thing).join(', ') || 'nothing';
    case 'clipped-in':
      return (
        setup.bridges
          .map(({ from, to, through }) => {
            const what = typeof through === 'object' ? `${through.ohms} ohm` : through;
            return `${what}: ${terminalWords(from)} to ${terminalWords(to)}`;
          })
          .join('; ') || 'nothing'
      );
    case 'sensor':
      return setup.sensor === 'spare' ? 'a good spare' : "the vehicle's own";
    case 'target':
      return setup.target === 'moving' ? 'passes the sensor' : 'stands still';
    case 'harness':
      return form.wiggle ? 'moved while reading' : 'left alone';
  }
}

/** What Enter does on a line, in a word or two; null where there is nothing to choose from. */
export function enterWords({ setup }: TestForm, line: TestLine): string | null {
  switch (line) {
    case 'red':
    case 'black':
    case 'unplugged':
      return 'list';
    case 'clipped-in':
      return setup.bridges.length > 0 ? 'take it off' : 'clip in';
    case 'state':
    case 'instrument':
    case 'sensor':
    case 'target':
    case 'harness':
      return null;
  }
}

export const LINE_NAMES: Readonly<Record<TestLine, string>> = {
  state: 'Vehicle',
  instrument: 'Instrument',
  red: 'Red lead',
  black: 'Black lead',
  unplugged: 'Unplugged',
  'clipped-in': 'Clipped in',
  sensor: 'Sensor',
  target: 'Target',
  harness: 'Harness',
};

/** The form with one line turned on by `by`; the same form for a line that has a list instead. */
export function turned(form: TestForm, line: TestLine, by: 1 | -1, circuit: Circuit): TestForm {
  const { setup } = form;
  switch (line) {
    case 'state': {
      const state = turn(TEST_STATES, setup.state, by);
      return {
        ...form,
        setup: { ...setup, state, target: targetIn(circuit, state, setup.target) },
      };
    }
    case 'instrument':
      return withInstrument(form, turn(PROBE_KINDS, form.instrument, by), circuit);
    case 'red':
      return { ...form, red: turn(placesFor(form, circuit), form.red, by) };
    case 'black':
      return { ...form, black: turn(placesFor(form, circuit), form.black, by) };
    case 'sensor':
      return {
        ...form,
        setup: { ...setup, sensor: setup.sensor === 'spare' ? 'fitted' : 'spare' },
      };
    case 'target':
      return {
        ...form,
        setup: { ...setup, target: setup.target === 'moving' ? 'still' : 'moving' },
      };
    case 'harness':
      return { ...form, wiggle: !form.wiggle };
    case 'unplugged':
    case 'clipped-in':
      return form;
  }
}

/** Places the red (or black) end can be at with the instrument in hand. */
export function placesFor({ instrument }: TestForm, circuit: Circuit): readonly string[] {
  if (instrument === 'inspect') return inspectable(circuit);
  if (instrument === 'counts') return inputTerminals(circuit);
  return leadPlaces(circuit).map(({ id }) => id);
}

/** Connectors that come off. */
export function connectorsToOpen(circuit: Circuit): readonly string[] {
  const module = moduleOf(circuit).name;
  return circuit.connectors
    .filter(({ unplugs }) => unplugs)
    .map(({ part }) => part)
    .sort((a, b) => Number(a === module) - Number(b === module));
}

/** The form with a connector taken off, or put on again. */
export function plugToggled(form: TestForm, part: string): TestForm {
  const { setup } = form;
  const off = setup.unplugged.includes(part);
  const unplugged = off
    ? setup.unplugged.filter((one) => one !== part)
    : [...setup.unplugged, part].sort();
  return { ...form, setup: { ...setup, unplugged } };
}

function withInstrument(form: TestForm, instrument: Probe['kind'], circuit: Circuit): TestForm {
  const next = { ...form, instrument };
  const places = placesFor(next, circuit);
  const black = leadPlaces(circuit).some(({ id }) => id === form.black)
    ? form.black
    : 'battery.negative';
  return { ...next, black, red: places.includes(form.red) ? form.red : (places[0] ?? form.red) };
}

function turn<T>(list: readonly T[], now: T, by: 1 | -1): T {
  const at = list.indexOf(now);
  return list[(at + by + list.length) % list.length] ?? now;
}

/** What is chosen from a list: where a lead goes, which connector comes off, or one of the circuit's tests. */
export const TEST_CHOICES = ['red', 'black', 'unplugged', 'tests'] as const;
export type TestChoice = (typeof TEST_CHOICES)[number];

/** What Enter on a line comes to: a list, something to be typed, or the form without what was clipped in; null for nothing. */
export function entered(form: TestForm, line: TestLine): TestForm | TestChoice | 'clip' | null {
  switch (line) {
    case 'red':
    case 'black':
    case 'unplugged':
      return line;
    case 'clipped-in':
      if (form.setup.bridges.length === 0) return 'clip';
      return { ...form, setup: { ...form.setup, bridges: [] } };
    case 'instrument':
    case 'state':
    case 'target':
    case 'sensor':
    case 'harness':
      return null;
  }
}
