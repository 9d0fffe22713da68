/** The pages on which any test is arranged: its form, its lists, and the way on to the test. No React. */
import { arrangedBy, arrangementOf, testFrom } from '../../circuit/arrange-test.ts';
import { type Circuit, inputTerminals } from '../../circuit/circuit.ts';
import { inspectable } from '../../circuit/instruments/eyes.ts';
import { instrumentOf } from '../../circuit/instruments.ts';
import { leads } from '../../circuit/refuse-test.ts';
import { standardTests } from '../../circuit/standard-tests.ts';
import type { Test } from '../../circuit/test.ts';
import { isOnlyOf } from '../../circuit/with-neighbours.ts';
import {
  instrumentWords,
  probeWhere,
  thingWords,
  vehicleWords,
} from '../../procedure/test-words.ts';
import { absentParts, isLookAt } from '../../session/absent-parts.ts';
import { pendingTestCautions } from '../../session/pending-cautions.ts';
import { nameOfTest, testsToChoose, testToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import { sentence, sentenceStart } from '../parts/sentence.ts';
import {
  clippedIn,
  connectorsToOpen,
  entered,
  formOfTest,
  placesFor,
  plugToggled,
  type TestChoice,
  type TestForm,
  type TestLine,
  testOfForm,
  withScope,
} from './any-test-form-state.ts';
import { minutesWords } from './conclusion-words.ts';
import {
  actOnBench,
  closePage,
  type Here,
  open,
  type Page,
  type PageParts,
  type PagesState,
  pageNamed,
  refusedTurn,
  stay,
  type Turn,
} from './pages-state.ts';
import type { PickScreenItem } from './pick-screen.tsx';

/** Enter on a line of the form. */
export function afterLine(state: PagesState, line: TestLine): Turn {
  const page = pageNamed(state, 'any-test');
  const to = page && entered(page.form, line);
  if (to === null) return stay(state);
  if (typeof to === 'object') return withForm(state, to);
  return open(state, to === 'clip' ? { name: 'clip' } : { name: 'choice', of: to });
}

/** The pages with a changed form in place of the old one, and no message. */
export function withForm(state: PagesState, form: TestForm): Turn {
  const over = state.over.map(
    (page): Page => (page.name === 'any-test' ? { ...page, form } : page),
  );
  return stay({ ...state, over, message: null });
}

/** What was typed to be clipped in. */
export function afterClip(state: PagesState, typed: string): Turn {
  const page = pageNamed(state, 'any-test');
  const { circuit } = state.session.opened;
  if (!page || !circuit) return closePage(state);
  const next = clippedIn(page.form, typed, circuit);
  return 'words' in next ? refusedTurn(state, next.words) : closeWith(state, next);
}

/** One of a list, by its id. A test of the circuit is gone on with at once, but a drill's bench waits to be told. */
export function afterChoice(here: Here, of: TestChoice, id: string): Turn {
  const { opened, state } = here;
  const { circuit } = state.session.opened;
  const page = pageNamed(state, 'any-test');
  if (!page || !circuit) return closePage(state);
  switch (of) {
    case 'red':
    case 'black':
      return closeWith(state, { ...page.form, [of]: id });
    case 'unplugged':
      return closeWith(state, plugToggled(page.form, id));
    case 'tests': {
      if (id === BY_HAND) return below(state);
      const test = testNamed(state, page.form, id);
      if (!test) return closePage(state);
      const turn = closeWith(below(state).state, formOfTest(page.form, test), 0);
      return opened.drill ? turn : measureForm({ opened, state: turn.state });
    }
  }
}

/** The form below the list, to be seen. */
function below(state: PagesState): Turn {
  return stay({ ...state, over: state.over.slice(0, -1), message: null });
}

/** In place of a test of the list: one is arranged by hand. */
export const BY_HAND = 'by hand';
/** Before words that stand for a test themselves. */
const TYPED = 'typed ';

/** A test of the list, or one that was typed as a drill takes it. */
function testNamed({ session }: PagesState, form: TestForm, id: string): Test | null {
  if (!id.startsWith(TYPED)) return testsToChoose(session)[Number(id)]?.test ?? null;
  const { circuit } = session.opened;
  const isDrill = session.opened.vehicle.kind === 'drill';
  return circuit && testTyped({ form, isDrill }, id.slice(TYPED.length), circuit);
}

/** `volts sensor.feed battery.negative`, with what arranges the rest before it: `state key-on; unplug sensor; volts ...` */
function testTyped(
  { form, isDrill }: { readonly form: TestForm; readonly isDrill: boolean },
  typed: string,
  circuit: Circuit,
): Test | null {
  const parts = typed.split(';').map((part) => part.trim());
  let arrangement = arrangementOf(testOfForm(form));
  for (const part of parts.slice(0, -1)) {
    const arranged = arrangedBy(arrangement, part, circuit);
    if (!arranged || 'words' in arranged) return null;
    arrangement = arranged.arrangement;
  }
  const made = testFrom(arrangement, parts.at(-1) ?? '');
  if ('words' in made || !isHere(made.test.probe, circuit)) return null;
  const isStateSaid = parts.some((part) => /^(?:state|moving|still)\b/.test(part));
  return isDrill || isStateSaid ? made.test : inUsualState(made.test, circuit);
}

/**
 * Where nobody says how the key stands and it stands off: as the usual test with these leads has it, else on for all that
 * is read on a live circuit. On a drill's bench the key stays as the student left it.
 */
function inUsualState(test: Test, circuit: Circuit): Test {
  const { setup, probe } = test;
  if (setup.state !== 'key-off' || instrumentOf(probe).isForDeadCircuit) return test;
  const line = instrumentOf(probe).words.line(probe);
  const usual = standardTests(circuit).find(
    (one) =>
      instrumentOf(one.test.probe).words.line(one.test.probe) === line &&
      one.test.setup.sensor === 'fitted',
  );
  const state = usual?.test.setup.state ?? 'key-on';
  const target = usual?.test.setup.target ?? setup.target;
  return { ...test, setup: { ...setup, state, target } };
}

/** Whether its places are on this circuit: words that are only looked for name none. */
function isHere(probe: Test['probe'], circuit: Circuit): boolean {
  if (probe.kind === 'inspect') return inspectable(circuit).includes(probe.of);
  if (probe.kind === 'counts') return inputTerminals(circuit).includes(probe.input);
  return leads(probe).every((id) => circuit.terminals.some((one) => one.id === id));
}

/** The item for words that stand for a test themselves; null where they stand for none. */
export function typedItem({ opened, state }: Here, typed: string): ChoiceItem | null {
  const page = pageNamed(state, 'any-test');
  const { circuit } = state.session.opened;
  const isDrill = opened.drill !== null;
  const test = page && circuit && testTyped({ form: page.form, isDrill }, typed, circuit);
  if (!test || !circuit) return null;
  const words = opened.bind(nameOfTest(state.session, test) ?? typed);
  return { text: words, about: aboutTest({ opened, state }, words, test), id: `${TYPED}${typed}` };
}

/** A test of the list that was made already: where it is written down. */
export function madeAlready({ opened, state }: Here, id: string): Turn {
  const page = pageNamed(state, 'any-test');
  const test = page && testNamed(state, page.form, id);
  if (!test || !opened.model) return refusedTurn(state, 'pick the test that was done');
  const toDo = testToDo(state.session, opened.model, test);
  if ('refused' in toDo) return refusedTurn(state, toDo.refused);
  return open(state, { name: 'made-test', toDo });
}

function closeWith(state: PagesState, form: TestForm, pages = 1): Turn {
  const over = state.over.slice(0, state.over.length - pages);
  return withForm({ ...state, over }, form);
}

/** On to the test of the form: its cautions, then what it shows. */
export function measureForm(here: Here): Turn {
  const page = pageNamed(here.state, 'any-test');
  return page ? toTest(here, page.form, 'make-test') : stay(here.state);
}

/** The scope of a drill's bench saves what it sees at the leads. */
export function captureForm({ opened, state }: Here): Turn {
  const page = pageNamed(state, 'any-test');
  const { circuit } = state.session.opened;
  if (!opened.drill || !page || !circuit) return stay(state);
  const form = withScope(page.form, circuit);
  return toTest({ opened, state: withForm(state, form).state }, form, 'capture');
}

function toTest({ opened, state }: Here, form: TestForm, by: PageParts['test']['by']): Turn {
  const { model, drill } = opened;
  if (!model) return stay(state);
  const test = testOfForm(form);
  const toDo = testToDo(state.session, model, test);
  // What a bench does not let be made, it says itself, and some of it counts.
  if ('refused' in toDo)
    return drill ? actOnBench(state, { type: by, test }) : refusedTurn(state, toDo.refused);
  if (drill && pendingTestCautions(state.session, test).length === 0)
    return actOnBench(state, { type: by, test });
  return open(state, { name: 'test', toDo, by });
}

/** A line of one of the form's lists. */
export interface ChoiceItem extends PickScreenItem {
  readonly id: string;
}

/** A list of the form: its title, and what stands in it. */
export function choiceList(
  { opened, state }: Here,
  of: TestChoice,
): { readonly title: string; readonly items: readonly ChoiceItem[]; readonly empty: string } {
  const { circuit } = state.session.opened;
  const page = pageNamed(state, 'any-test');
  const items = circuit && page ? ITEMS[of]({ opened, state }, circuit, page.form) : [];
  return { ...LISTS[of], items };
}

const LISTS: Readonly<Record<TestChoice, { readonly title: string; readonly empty: string }>> = {
  red: { title: 'Where does the red lead go?', empty: 'There is no place.' },
  black: { title: 'Where does the black lead go?', empty: 'There is no place.' },
  unplugged: {
    title: 'Which connector is unplugged, or plugged back in?',
    empty: 'There is no connector.',
  },
  tests: { title: 'Which test?', empty: 'There are no standard tests for this circuit.' },
};

type Items = (here: Here, circuit: Circuit, form: TestForm) => ChoiceItem[];

const ITEMS: Readonly<Record<TestChoice, Items>> = {
  red: places,
  black: places,
  unplugged: ({ state }, circuit, { setup }) =>
    ofThisCar(connectorsToOpen(circuit), circuit, state).map((part) => ({
      text: `${thingWords(part, circuit)}${setup.unplugged.includes(part) ? '  (off)' : ''}`,
      also: part,
      about: typedAs(part),
      id: part,
    })),
  tests: ({ opened, state }) => {
    const { job, circuit } = state.session.opened;
    const choices = testsToChoose(state.session);
    const named = choices.map(({ words }) => opened.bind(words));
    return choices.map(({ id, minutes, test }, index) => {
      const words = named[index]!;
      // Two steps of one title are told apart by where they are read.
      const isTwice = named.indexOf(words) !== named.lastIndexOf(words);
      const where = isTwice ? `: ${opened.bind(probeWhere(test.probe, job, circuit))}` : '';
      return {
        text: `${words}${where}`,
        also: foundBy(id, test, opened),
        about: `${aboutTest({ opened, state }, words, test)} ${minutesWords(minutes)}.`,
        id: String(index),
      };
    });
  },
};

function aboutTest({ opened, state }: Here, words: string, { setup, probe }: Test): string {
  const { job, circuit } = state.session.opened;
  const where = probeWhere(probe, job, circuit);
  return `${sentence(words)} ${sentenceStart(instrumentWords(probe))}: ${opened.bind(where)}. Vehicle: ${vehicleWords(setup, circuit)}.`;
}

/** What a test is found by besides its words: its name, the instrument, the places of the leads, the vehicle's state. */
export function foundBy(
  id: string,
  { setup, probe }: Test,
  { terminalWords }: OpenedSession,
): string {
  const at = leads(probe).flatMap((terminal) => [terminal, terminalWords(terminal)]);
  const off = setup.unplugged.map((part) => `unplugged ${part} unplugged`);
  return [id, instrumentWords(probe), probe.kind, ...at, setup.state, ...off].join(' ');
}

function places({ opened, state }: Here, circuit: Circuit, form: TestForm): ChoiceItem[] {
  const words = (id: string) =>
    form.instrument === 'inspect' ? thingWords(id, circuit) : opened.terminalWords(id);
  const ids = placesFor(form, circuit);
  const absent = absentParts(circuit, state.session.opened.job);
  const here =
    form.instrument === 'inspect'
      ? ids.filter((of) => !isLookAt(of, absent, circuit))
      : ofThisCar(ids, circuit, state);
  return here.map((id) => ({
    ...{ text: words(id), also: id },
    ...{ about: typedAs(id), id },
  }));
}

/** A test that is typed names it so. */
function typedAs(id: string): string {
  return `Typed as: ${id}`;
}

/** Parts and places without those of neighbours that this car does not have. */
function ofThisCar(
  names: readonly string[],
  circuit: Circuit,
  { session }: PagesState,
): readonly string[] {
  const absent = absentParts(circuit, session.opened.job);
  return names.filter((name) => !isOnlyOf(name, absent, circuit));
}
