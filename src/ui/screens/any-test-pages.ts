/** The pages on which any test is arranged: its form, its lists, and the way on to the test. No React. */
import type { Circuit } from '../../circuit/circuit.ts';
import { leads } from '../../circuit/refuse-test.ts';
import type { Test } from '../../circuit/test.ts';
import { instrumentWords, vehicleWords } from '../../procedure/test-words.ts';
import { pendingTestCautions } from '../../session/pending-cautions.ts';
import { testsToChoose, testToDo } from '../../session/session-tests.ts';
import type { OpenedSession } from '../app-services.ts';
import {
  clippedIn,
  connectorsOf,
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
  act,
  close,
  type Here,
  open,
  type Page,
  type PageParts,
  type PagesState,
  pageNamed,
  refuse,
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

/** The form as it was turned. */
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
  if (!page || !circuit) return close(state);
  const next = clippedIn(page.form, typed, circuit);
  return 'words' in next ? refuse(state, next.words) : closeWith(state, next);
}

/** One of a list, by its id. A test of the circuit is gone on with at once, but a drill's bench waits to be told. */
export function afterChoice(here: Here, of: TestChoice, id: string): Turn {
  const { opened, state } = here;
  const { circuit } = state.session.opened;
  const page = pageNamed(state, 'any-test');
  if (!page || !circuit) return close(state);
  switch (of) {
    case 'red':
    case 'black':
      return closeWith(state, { ...page.form, [of]: id });
    case 'unplugged':
      return closeWith(state, plugToggled(page.form, id));
    case 'tests': {
      const entry = testsToChoose(state.session)[Number(id)];
      if (!entry) return close(state);
      const turn = closeWith(state, formOfTest(page.form, entry.test));
      return opened.drill ? turn : measureForm({ opened, state: turn.state });
    }
  }
}

function closeWith(state: PagesState, form: TestForm): Turn {
  return withForm(close(state).state, form);
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
    return drill ? act(state, { type: by, test }) : refuse(state, toDo.refused);
  if (drill && pendingTestCautions(state.session, test).length === 0)
    return act(state, { type: by, test });
  return open(state, { name: 'test', toDo, by });
}

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
    title: 'Which connector comes off, or goes on again?',
    empty: 'There is no connector.',
  },
  tests: { title: 'Which test?', empty: 'There is no usual test of this circuit.' },
};

type Items = (here: Here, circuit: Circuit, form: TestForm) => ChoiceItem[];

const ITEMS: Readonly<Record<TestChoice, Items>> = {
  red: places,
  black: places,
  unplugged: (_, circuit, { setup }) =>
    connectorsOf(circuit).map((part) => ({
      text: `${part}${setup.unplugged.includes(part) ? '  (off)' : ''}`,
      about: '',
      id: part,
    })),
  tests: ({ opened, state }, circuit) =>
    testsToChoose(state.session).map(({ words, id, minutes, test }, index) => ({
      text: opened.bind(words),
      also: foundBy(id, test, opened),
      about: `${opened.bind(words)}. Vehicle: ${vehicleWords(test.setup, circuit)}. ${minutesWords(minutes)}.`,
      id: String(index),
    })),
};

/** What a test is found by besides its words: its name, the instrument, the places of the leads, the vehicle's state. */
function foundBy(id: string, { setup, probe }: Test, { terminalWords }: OpenedSession): string {
  const at = leads(probe).flatMap((terminal) => [terminal, terminalWords(terminal)]);
  return [id, instrumentWords(probe), probe.kind, ...at, setup.state].join(' ');
}

function places({ opened }: Here, circuit: Circuit, form: TestForm): ChoiceItem[] {
  return placesFor(form, circuit).map((id) => ({ text: id, about: opened.terminalWords(id), id }));
}
