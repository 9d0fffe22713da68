/** What a drill shows beside the views of any session: the job, captures to look at, the repairs to name, the debrief. */
import { readingsGiven } from '../../drill/drill-act.ts';
import { debriefLines, handInLines, openingLines, repairChoices } from '../../drill/drill-words.ts';
import { countWords } from '../../quantity/count-words.ts';
import { spentMinutes } from '../../session/spent-minutes.ts';
import type { Paragraph } from '../parts/text-block.ts';
import { lastFound } from './answer-words.ts';
import { CLOSE, readPage, type ViewTable } from './drawing.tsx';
import type { Here } from './pages-state.ts';
import { PickScreen } from './pick-screen.tsx';
import { PicturePage } from './picture-page.tsx';
import { ReadingPage } from './reading-page.tsx';
import { CLOSE_KEY } from './session-keys.ts';
import { TakePage } from './take-page.tsx';

/** The views that only a drill has. */
export const DRILL_VIEWS: ViewTable<'opening' | 'picture' | 'diagnosis' | 'hand-in' | 'debrief'> = {
  opening: (_, at) =>
    readPage(at, 'The job', [
      ...openingLines(at.here.state.session),
      ...(at.here.opened.notice === undefined ? [] : ['', `! ${at.here.opened.notice}`]),
    ]),
  picture: ({ capture }, { here, send }) => (
    <PicturePage
      capture={capture}
      found={lastFound(here.opened, here.state.session)}
      onClose={() => send(CLOSE)}
    />
  ),
  diagnosis: ({ chosen }, { here, send }) => (
    <PickScreen
      key={chosen.length}
      title={chosen.length === 0 ? 'What fixes it?' : 'What else does it need?'}
      items={diagnosisItems(here, chosen)}
      empty=""
      onPick={({ repair }) => send({ type: 'repair', repair })}
      onClose={() => send(CLOSE)}
    />
  ),
  'hand-in': ({ chosen }, { here, clock, send }) => (
    <TakePage
      title="This ends the drill"
      paragraphs={handInOf(here, chosen)}
      message={here.state.message}
      clock={clock}
      enter={chosen.length === 0 ? 'give up' : 'hand it in'}
      onTake={() => send({ type: 'accept' })}
      keys={[GO_BACK]}
      onKey={() => send(CLOSE)}
    />
  ),
  debrief: ({ debrief }, { here, send }) => (
    <ReadingPage
      title="After the drill"
      paragraphs={[
        ...debriefLines(debrief).map((text, index) => ({ text, bold: index === 0, hang: 4 })),
        '',
        `Saved: ${here.opened.driver.path()}`,
      ]}
      onClose={() => send({ type: 'leave' })}
    />
  ),
};

const GO_BACK = { ...CLOSE_KEY, help: 'go back' };

/** A drill's level and how far it is; nothing in any other session. */
export function asideOf({ opened, state }: Here): string {
  if (!opened.drill) return '';
  const { session } = state;
  const minutes = Math.round(spentMinutes(session) * 10) / 10;
  return `level ${opened.drill.level.number}, ${countWords(readingsGiven(session), 'reading')}, ${minutes} min`;
}

/** The repairs that can still be named, and giving up. */
function diagnosisItems({ state }: Here, chosen: readonly string[]) {
  const { circuit } = state.session.opened;
  const left = (circuit ? repairChoices(circuit) : []).filter(
    ({ repair }) => !chosen.includes(repair),
  );
  return [
    ...left.map(({ repair, words }) => ({
      text: words,
      also: repair,
      about: `${words} (${repair})`,
      repair,
    })),
    { text: 'I give up', about: 'Ends the drill and shows the answer.', repair: null },
  ];
}

/** What is handed in when these repairs are chosen. */
function handInOf({ state }: Here, chosen: readonly string[]): Paragraph[] {
  const { circuit } = state.session.opened;
  const lines = circuit ? handInLines(circuit, chosen) : [];
  return lines.map((text, place) => ({ text, bold: place === 0 }));
}
