/** A test that no step asks for: chosen, arranged, made, or made already. */
import { sentenceStart } from '../parts/sentence.ts';
import { lastFound } from './answer-words.ts';
import { testOfForm } from './any-test-form-state.ts';
import { AnyTestPage } from './any-test-page.tsx';
import { BY_HAND, type ChoiceItem, choiceList, typedItem } from './any-test-pages.ts';
import { CLOSE, type ViewTable } from './drawing.tsx';
import { asideOf } from './drill-views.tsx';
import { MadeTestScreen } from './made-test-screen.tsx';
import type { Here } from './pages-state.ts';
import { PickScreen } from './pick-screen.tsx';
import { keysOfAction } from './session-keys.ts';
import { outside } from './session-view.ts';
import { TestScreen } from './test-screen.tsx';

/** The views of a test that no step asks for. */
export const TEST_VIEWS: ViewTable<'test' | 'any-test' | 'made-test' | 'choice'> = {
  test: ({ toDo, prompt }, { here, clock, send }) => (
    <TestScreen
      key={prompt.half.asking}
      opened={here.opened}
      session={here.state.session}
      toDo={toDo}
      asked={prompt.asked}
      title={sentenceStart(outside(here.state))}
      aside={afterTest(here)}
      message={here.state.message}
      clock={clock}
      onPromptKey={(event, timing) => send({ type: 'key', event, timing })}
      onCapture={() => send({ type: 'capture' })}
      onClose={() => send(CLOSE)}
    />
  ),
  'any-test': ({ form }, { here, send }) => {
    const { circuit } = here.state.session.opened;
    return circuit === null ? null : (
      <AnyTestPage
        form={form}
        circuit={circuit}
        title="Any test"
        aside={asideOf(here)}
        sketch={here.opened.sketch(testOfForm(form), FORM_COLUMNS)}
        found={here.opened.drill && lastFound(here.opened, here.state.session)}
        message={here.state.message}
        terminalWords={here.opened.terminalWords}
        canCapture={here.opened.drill !== null}
        onForm={(next) => send({ type: 'form', form: next })}
        onLine={(line) => send({ type: 'line', line })}
        onKey={(type) => send({ type })}
      />
    );
  },
  'made-test': ({ toDo }, { here, send }) => (
    <MadeTestScreen
      opened={here.opened}
      toDo={toDo}
      message={here.state.message}
      onTake={(command) => send({ type: 'take', command })}
      onClose={() => send(CLOSE)}
    />
  ),
  choice: ({ of }, { here, send }) => (
    <PickScreen<ChoiceItem>
      {...choiceList(here, of)}
      {...(of === 'tests' && !here.opened.drill
        ? {
            others: [
              { key: MADE, onPick: (item) => item && send({ type: 'made', id: item.id }) },
              { key: ARRANGE, onPick: () => send({ type: 'chosen', id: BY_HAND }) },
            ],
            typed: (search: string) => typedItem(here, search),
          }
        : {})}
      onPick={({ id }) => send({ type: 'chosen', id })}
      onClose={() => send(CLOSE)}
    />
  ),
};

const MADE = { keys: ['tab'], show: 'Tab', help: 'made already' };
const ARRANGE = { keys: keysOfAction('any-test'), show: 'Ins', help: 'arrange one' };
const FORM_COLUMNS = 76;

function afterTest({ state }: Here): string {
  const isAsked = state.session.status === 'open' && state.session.trail.length > 0;
  return isAsked ? 'then back to the step' : '';
}
