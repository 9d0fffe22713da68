/** The bench of a drill: arrange, measure, look at what is known, name the fault. */

import { useState } from 'react';
import { arrangedBy } from '../../circuit/arrange-test.ts';
import { standardTests } from '../../circuit/standard-tests.ts';
import { pendingFor, presentDrillStep, stepTest } from '../../drill/decide-drill.ts';
import type { DrillMeasured } from '../../drill/drill-events.ts';
import type { DrillInHand, DrillPerformed } from '../../drill/drill-in-hand.ts';
import type { DrillTest } from '../../drill/drill-test.ts';
import {
  captureLines,
  conclusionLines,
  countWords,
  goodValue,
  handInLines,
  openingLines,
  readingLine,
  refusalLines,
  repairChoices,
  stepLine,
  suspectLines,
} from '../../drill/drill-words.ts';
import { bodySize } from '../parts/frame.tsx';
import type { Paragraph } from '../parts/text-block.ts';
import {
  connectorsOf,
  formOfTest,
  placesFor,
  plugToggled,
  type TestForm,
  type TestLine,
  testForm,
  testOfForm,
  withScope,
} from '../screens/any-test-form-state.ts';
import { capturePlot } from '../screens/capture-plot.ts';
import { CautionScreen } from '../screens/caution-screen.tsx';
import { PickScreen } from '../screens/pick-screen.tsx';
import { ReadingPage } from '../screens/reading-page.tsx';
import { TakePage } from '../screens/take-page.tsx';
import { TextQuestion } from '../screens/text-question.tsx';
import { useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import { type BenchKey, BenchView, benchHelp, HELP_KEYS } from './bench-view.tsx';

export interface DrillBenchProps {
  readonly hand: DrillInHand;
  readonly clock: () => number;
  readonly onEnded: () => void;
  readonly onLeave: () => void;
}

type Page =
  | { readonly name: 'bench' }
  | {
      readonly name: 'page';
      readonly title: string;
      readonly lines: readonly (Paragraph | string)[];
      readonly openedBy?: readonly string[];
    }
  | { readonly name: 'tests' | 'unplug' | 'clip' }
  | { readonly name: 'lead'; readonly line: 'red' | 'black' }
  | { readonly name: 'diagnosis' | 'hand-in'; readonly chosen: readonly string[] }
  | { readonly name: 'caution'; readonly test: DrillTest; readonly then: Then };
type Then = 'measure' | 'capture' | 'follow';

const SUSPECTS_SHOWN = 12;
const BENCH: Page = { name: 'bench' };

/** The screen, and the pages over it. */
export function DrillBench({ hand, clock, onEnded, onLeave }: DrillBenchProps) {
  const drill = hand.drill();
  const { circuit } = drill.opened;
  const [form, setForm] = useState<TestForm>(() => testForm(circuit));
  const [page, setPage] = useState<Page>(() => ({
    name: 'page',
    title: 'The job',
    lines: openingLines(drill),
  }));
  const [message, setMessage] = useState<string | null>(null);
  const look = useLook();
  const body = bodySize(useSize(), []);
  // The drill lives outside; a new reading must be drawn even when nothing else here changes.
  const [, setTurn] = useState(0);

  function told({ refused }: DrillPerformed): boolean {
    setMessage(refused ? refusalLines(refused).join(' ') : null);
    setTurn((turn) => turn + 1);
    return refused === null;
  }

  function attempt(test: DrillTest, then: Then): void {
    const canBeDone = hand.world.vehicle.model.refusal(test) === null;
    if (canBeDone && pendingFor(hand.drill(), test, hand.world).length > 0) {
      setPage({ name: 'caution', test, then });
      return;
    }
    const done = told(hand.perform(then === 'follow' ? { type: 'follow' } : { type: then, test }));
    const last = hand.drill().readings.at(-1);
    if (done && then === 'capture' && last) setPage(capturePage(last));
    else setPage(BENCH);
  }

  function capturePage(measured: DrillMeasured): Page {
    const lines = captureLines(measured);
    const plot = measured.capture ? capturePlot(measured.capture, body.columns, look.ascii) : [];
    const drawn = plot.map((text) => ({ text, drawn: true }));
    return { name: 'page', title: 'The capture', lines: [...lines, '', ...drawn] };
  }

  function follow(): void {
    const conclusion = conclusionLines(drill);
    const test = stepTest(drill);
    if (conclusion) show('The end of the procedure', conclusion);
    else if (test) {
      setForm(formOfTest(form, test));
      attempt(test, 'follow');
    } else told(hand.perform({ type: 'follow' }));
  }

  function openLine(line: TestLine): void {
    if (line === 'red' || line === 'black') setPage({ name: 'lead', line });
    else if (line === 'unplugged') setPage({ name: 'unplug' });
    else if (line === 'clipped-in') {
      if (form.setup.bridges.length > 0)
        setForm({ ...form, setup: { ...form.setup, bridges: [] } });
      else setPage({ name: 'clip' });
    }
  }

  const show = (title: string, lines: readonly string[]) => setPage({ name: 'page', title, lines });

  function onBenchKey(key: BenchKey) {
    setMessage(null);
    switch (key) {
      case 'measure':
        return attempt(testOfForm(form), 'measure');
      case 'capture': {
        const scoped = withScope(form, circuit);
        setForm(scoped);
        return attempt(testOfForm(scoped), 'capture');
      }
      case 'tests':
        return setPage({ name: 'tests' });
      case 'follow':
        return follow();
      case 'suspects':
        return show('Suspects', suspectLines(drill, hand.world, SUSPECTS_SHOWN));
      case 'readings':
        return show(
          'What you have measured',
          drill.readings.map((one, index) => `${index + 1}. ${readingLine(one, circuit)}`),
        );
      case 'diagnose':
        return setPage({ name: 'diagnosis', chosen: [] });
      case 'help':
        return setPage({
          name: 'page',
          title: 'All keys',
          lines: benchHelp(),
          openedBy: HELP_KEYS,
        });
      case 'leave':
        return onLeave();
    }
  }

  switch (page.name) {
    case 'bench': {
      const last = drill.readings.at(-1);
      const good = last ? goodValue(drill, last, hand.world) : null;
      const step = presentDrillStep(drill);
      return (
        <BenchView
          form={form}
          circuit={circuit}
          aside={`level ${drill.level.number}, ${countWords(drill.readings.length, 'reading')}, ${Math.round(drill.minutes * 10) / 10} min`}
          sketch={hand.sketch(testOfForm(form), 76)}
          found={last ? `${last.words}: ${last.found}` : null}
          good={good}
          step={stepLine(drill)}
          isAtEnd={step?.kind === 'conclude'}
          message={message}
          onForm={setForm}
          onOpen={openLine}
          useless={[
            ...(drill.level.suspects ? [] : (['suspects'] as const)),
            ...(step ? [] : (['follow'] as const)),
            ...(last ? [] : (['readings'] as const)),
          ]}
          onKey={onBenchKey}
        />
      );
    }
    case 'page':
      return (
        <ReadingPage
          title={page.title}
          paragraphs={page.lines}
          {...(page.openedBy ? { openedBy: page.openedBy } : {})}
          onClose={() => setPage(BENCH)}
        />
      );
    case 'tests':
      return (
        <PickScreen
          title="Which test?"
          items={standardTests(circuit).map(({ words, id, test }) => ({
            text: words,
            also: id,
            about: `${words}. Taking it arranges the bench; then measure.`,
            test,
          }))}
          empty="There is no standard test."
          onPick={({ test }) => {
            setForm(formOfTest(form, { ...test, wiggle: form.wiggle }));
            setPage(BENCH);
          }}
          onClose={() => setPage(BENCH)}
        />
      );
    case 'lead':
      return (
        <PickScreen
          title={
            page.line === 'red' ? 'Where does the red lead go?' : 'Where does the black lead go?'
          }
          items={placesFor(form, circuit).map((id) => ({
            text: id,
            about: circuit.terminals.find((one) => one.id === id)?.words ?? '',
            id,
          }))}
          empty="There is no place."
          onPick={({ id }) => {
            setForm({ ...form, [page.line]: id });
            setPage(BENCH);
          }}
          onClose={() => setPage(BENCH)}
        />
      );
    case 'unplug':
      return (
        <PickScreen
          title="Which connector comes off, or goes on again?"
          items={connectorsOf(circuit).map((part) => ({
            text: `${part}${form.setup.unplugged.includes(part) ? '  (off)' : ''}`,
            about: '',
            part,
          }))}
          empty="There is no connector."
          onPick={({ part }) => {
            setForm(plugToggled(form, part));
            setPage(BENCH);
          }}
          onClose={() => setPage(BENCH)}
        />
      );
    case 'clip':
      return (
        <TextQuestion
          title="Clip something in"
          question="From where, to where, and what: lead, test-light, lamp, or ohms?"
          about="For example: sensor.signal battery.negative 470 ohm"
          message={message}
          onAnswer={(text) => {
            const arranged = arrangedBy(
              { setup: form.setup, wiggle: form.wiggle },
              `clip ${text}`,
              circuit,
            );
            if (arranged === null || 'words' in arranged)
              return setMessage(arranged === null ? null : arranged.words);
            setMessage(null);
            setForm({ ...form, setup: arranged.arrangement.setup });
            setPage(BENCH);
          }}
          onClose={() => setPage(BENCH)}
        />
      );
    case 'diagnosis': {
      const more = drill.level.faults - page.chosen.length;
      return (
        <PickScreen
          key={page.chosen.length}
          title={more > 1 ? 'What puts it right? The first of two.' : 'What puts it right?'}
          items={[
            ...repairChoices(drill)
              .filter(({ repair }) => !page.chosen.includes(repair))
              .map(({ repair, words }) => ({
                text: words,
                also: repair,
                about: `${words} (${repair})`,
                repair,
              })),
            { text: 'I give up', about: 'Ends the drill and shows the answer.', repair: null },
          ]}
          empty=""
          onPick={({ repair }) => {
            if (repair === null) return setPage({ name: 'hand-in', chosen: [] });
            const chosen = [...page.chosen, repair];
            setPage({ name: more > 1 ? 'diagnosis' : 'hand-in', chosen });
          }}
          onClose={() => setPage(BENCH)}
        />
      );
    }
    case 'hand-in':
      return (
        <TakePage
          title="This ends the drill"
          paragraphs={handInLines(drill, page.chosen).map((text, place) => ({
            text,
            bold: place === 0,
          }))}
          message={null}
          clock={clock}
          enter={page.chosen.length === 0 ? 'give up' : 'hand it in'}
          onTake={() => {
            if (told(hand.perform({ type: 'diagnose', repairs: page.chosen }))) onEnded();
            else setPage(BENCH);
          }}
          keys={[{ keys: ['escape'], show: 'Esc', help: 'go back' }]}
          onKey={() => setPage({ name: 'diagnosis', chosen: [] })}
        />
      );
    case 'caution':
      return (
        <CautionScreen
          cautions={pendingFor(drill, page.test, hand.world)}
          aside={page.test.setup.state.replace('-', ' ')}
          before="This is a simulated vehicle; the caution is the one of a real one."
          message={null}
          clock={clock}
          onAcknowledge={() => {
            hand.perform({ type: 'acknowledge', test: page.test });
            attempt(page.test, page.then);
          }}
          keys={[{ keys: ['escape'], show: 'Esc', help: 'not now' }]}
          onKey={() => setPage(BENCH)}
        />
      );
  }
}
