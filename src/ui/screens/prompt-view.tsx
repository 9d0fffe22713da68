/** The prompt at the foot of a step: view only. */
import { Box } from 'ink';
import { useBody } from '../parts/body-size.ts';
import { type Colour, Words } from '../parts/safe-words.tsx';
import { TextField } from '../parts/text-field.tsx';
import { isCut, WindowList } from '../parts/window-list.tsx';
import { windowTop } from '../parts/window-state.ts';
import { columnsOf, wrapWords } from '../parts/wrap-words.ts';
import type { DrawingStyle } from '../term/colour.ts';
import { shownText, useLook } from '../term/use-look.ts';
import type { Asked } from './prompt-state.ts';
import { choicesOf, type Remark, remarkOf } from './reading-prompt-state.ts';

type MeasureAsked = Extract<Asked, { kind: 'measure' }>;

/** More choices than this scroll. */
const CHOICE_ROWS_MAX = 6;
/** Rows for the marked choice in full, where the list cuts any. */
const FULL_ROWS = 2;
/** Rows kept for the remark under a number, so that typing seldom makes the screen jump. */
const REMARK_ROWS = 2;

export interface PromptViewProps {
  readonly asked: Asked;
  readonly message: string | null;
  readonly bind: (text: string) => string;
}

/** Rows the prompt takes, its rule included. */
export function promptRows(
  asked: Asked,
  message: string | null,
  columns: number,
  look: DrawingStyle,
  bind: (text: string) => string,
): number {
  return (
    1 + wrappedRows(notesOf(asked, message), columns, look) + answerRows(asked, columns, look, bind)
  );
}

function wrappedRows(notes: readonly string[], columns: number, look: DrawingStyle): number {
  return notes.flatMap((note) => wrapWords(shownText(note, look), columns)).length;
}

function answerRows(
  asked: Asked,
  columns: number,
  look: DrawingStyle,
  bind: (text: string) => string,
): number {
  switch (asked.kind) {
    case 'measure':
      return readingRows(asked, columns, look);
    case 'choice':
      return choiceRows(
        asked.choices.map(({ words }) => bind(words)),
        columns,
        look,
      );
    case 'act':
      return 1;
  }
}

function readingRows(
  { prompt, context }: MeasureAsked,
  columns: number,
  look: DrawingStyle,
): number {
  if (prompt.mode === 'doubt') {
    const words = choicesOf(prompt).map((choice) => choice.words);
    return 2 + choiceRows(words, columns, look);
  }
  return 1 + remarkRows(remarkOf(prompt, context), columns, look);
}

function choiceRows(words: readonly string[], columns: number, look: DrawingStyle): number {
  return listRows(words) + (cutsAny(words, columns, look) ? FULL_ROWS : 0);
}

function listRows(words: readonly string[]): number {
  return Math.min(CHOICE_ROWS_MAX, words.length);
}

function cutsAny(words: readonly string[], columns: number, look: DrawingStyle): boolean {
  return numbered(words).some((line) => isCut(line, columns, look));
}

function numbered(words: readonly string[]): string[] {
  return words.map((text, place) => (place < 9 ? `${place + 1}  ${text}` : `   ${text}`));
}

function remarkText({ tone, words }: Remark): string {
  return words === '' ? ' ' : `${SIGNS[tone]}${words}`;
}

function remarkRows(remark: Remark, columns: number, look: DrawingStyle): number {
  const lines = wrapWords(shownText(remarkText(remark), look), columns, { hang: 2 });
  return Math.max(REMARK_ROWS, lines.length);
}

function notesOf({ offered, standing }: Asked, message: string | null): string[] {
  return [
    ...(message === null ? [] : [message]),
    ...(offered === null ? [] : [`The simulated vehicle: ${offered}`]),
    ...(standing === null ? [] : [standing]),
  ];
}

/** A rule, what to know, and the field or list. */
export function PromptView({ asked, message, bind }: PromptViewProps) {
  const { columns } = useBody();
  const look = useLook();
  return (
    <Box flexDirection="column" flexShrink={0}>
      <Words>{(look.ascii ? '-' : '─').repeat(columns)}</Words>
      {notesOf(asked, message).map((note) => (
        <Words
          key={note}
          bold={note.startsWith('!')}
          colour={note.startsWith('!') ? 'red' : undefined}
        >
          {note}
        </Words>
      ))}
      <AnswerView asked={asked} bind={bind} />
    </Box>
  );
}

function AnswerView({ asked, bind }: { asked: Asked; bind: (text: string) => string }) {
  switch (asked.kind) {
    case 'measure':
      return <ReadingView asked={asked} />;
    case 'choice':
      return (
        <ChoiceView words={asked.choices.map(({ words }) => bind(words))} marked={asked.marked} />
      );
    case 'act':
      return <Words bold>{asked.words}</Words>;
  }
}

/** A short numbered list; longer than the room it scrolls. */
function ChoiceView({ words, marked }: { words: readonly string[]; marked: number }) {
  const { columns } = useBody();
  const look = useLook();
  const rows = listRows(words);
  const lines = numbered(words);
  const isMarkedCut = isCut(lines[marked] ?? '', columns, look);
  const top = windowTop({ count: words.length, rows, top: 0, keep: marked });
  return (
    <Box flexDirection="column" flexShrink={0}>
      <WindowList lines={lines} rows={rows} top={top} selected={marked} />
      {cutsAny(words, columns, look) ? (
        <Box height={FULL_ROWS} flexDirection="column" overflowY="hidden" flexShrink={0}>
          <Words>{isMarkedCut ? (words[marked] ?? ' ') : ' '}</Words>
        </Box>
      ) : null}
    </Box>
  );
}

/** The field with its judgement while typing, or the question what was meant. */
function ReadingView({ asked }: { asked: MeasureAsked }) {
  const { prompt, context, unit } = asked;
  const { columns } = useBody();
  const label = `Reading in ${unit}: `;
  const room = columns - columnsOf(label);
  return (
    <Box flexDirection="column" flexShrink={0}>
      <Box height={1} flexShrink={0}>
        <Words bold>{label}</Words>
        <TextField field={prompt.field} width={room} />
      </Box>
      {prompt.mode === 'doubt' ? (
        <>
          <Words>What does the meter show?</Words>
          <ChoiceView words={choicesOf(prompt).map(({ words }) => words)} marked={prompt.chosen} />
        </>
      ) : (
        <RemarkView remark={remarkOf(prompt, context)} />
      )}
    </Box>
  );
}

const SIGNS: Readonly<Record<Remark['tone'], string>> = {
  good: '= ',
  off: '! ',
  unsure: '? ',
  wrong: 'X ',
  quiet: '  ',
};
const COLOURS: Readonly<Record<Remark['tone'], Colour | undefined>> = {
  good: undefined,
  off: 'red',
  unsure: 'magenta',
  wrong: 'red',
  quiet: undefined,
};

function RemarkView({ remark }: { remark: Remark }) {
  const { columns } = useBody();
  const look = useLook();
  return (
    <Box height={remarkRows(remark, columns, look)} flexShrink={0} overflowY="hidden">
      <Words bold={remark.tone !== 'quiet'} colour={COLOURS[remark.tone]} hang={2}>
        {remarkText(remark)}
      </Words>
    </Box>
  );
}
