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

/** Rows for the marked choice in full, where the list cuts it. */
const FULL_ROWS = 2;
/** What the prompt may take of a screen. */
export interface PromptRoom {
  /** More choices than this scroll. */
  readonly choices: number;
  /** Rows kept for the remark under a number, so that typing seldom makes the screen jump. */
  readonly remark: number;
  /** Rows for the marked choice in full are kept where the list cuts any, and not only where it cuts that one. */
  readonly isSteady: boolean;
}
/** Where the text above it has its room. */
export const WHOLE_PROMPT: PromptRoom = { choices: 6, remark: 2, isSteady: true };

export interface PromptViewProps {
  readonly room?: PromptRoom;
  /** Said under a number while nothing is typed: its limit. */
  readonly untyped?: string;
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
  room: PromptRoom = WHOLE_PROMPT,
): number {
  const notes = wrappedRows(notesOf(asked, message), columns, look);
  return 1 + notes + answerRows(asked, columns, look, bind, room);
}

function wrappedRows(notes: readonly string[], columns: number, look: DrawingStyle): number {
  return notes.flatMap((note) => wrapWords(shownText(note, look), columns)).length;
}

function answerRows(
  asked: Asked,
  columns: number,
  look: DrawingStyle,
  bind: (text: string) => string,
  room: PromptRoom,
): number {
  switch (asked.kind) {
    case 'measure':
      return readingRows(asked, columns, look, room);
    case 'choice':
      return choiceRows(
        { words: asked.choices.map(({ words }) => bind(words)), marked: asked.marked, room },
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
  room: PromptRoom,
): number {
  if (prompt.mode === 'doubt') {
    const words = choicesOf(prompt).map((choice) => choice.words);
    return 2 + choiceRows({ words, marked: prompt.chosen, room }, columns, look);
  }
  return 1 + remarkRows(remarkOf(prompt, context), columns, look, room);
}

function choiceRows(choices: ChoiceViewProps, columns: number, look: DrawingStyle): number {
  return listRows(choices.words, choices.room) + fullRows(choices, columns, look);
}

function fullRows(
  { words, marked, room }: ChoiceViewProps,
  columns: number,
  look: DrawingStyle,
): number {
  const lines = numbered(words);
  const told = room.isSteady ? lines : lines.slice(marked, marked + 1);
  return told.some((line) => isCut(line, columns, look)) ? FULL_ROWS : 0;
}

function listRows(words: readonly string[], { choices }: PromptRoom): number {
  return Math.min(choices, words.length);
}

function numbered(words: readonly string[]): string[] {
  return words.map((text, place) => (place < 9 ? `${place + 1}  ${text}` : `   ${text}`));
}

function remarkText({ tone, words }: Remark): string {
  return words === '' ? ' ' : `${SIGNS[tone]}${words}`;
}

function remarkRows(remark: Remark, columns: number, look: DrawingStyle, room: PromptRoom): number {
  const lines = wrapWords(shownText(remarkText(remark), look), columns, { hang: 2 });
  return Math.max(room.remark, lines.length);
}

function notesOf({ offered, standing }: Asked, message: string | null): string[] {
  return [
    ...(message === null ? [] : [message]),
    ...(offered === null ? [] : [`The simulated vehicle: ${offered}`]),
    ...(standing === null ? [] : [standing]),
  ];
}

/** A rule, what to know, and the field or list. */
export function PromptView(props: PromptViewProps) {
  const { asked, message, bind, room = WHOLE_PROMPT, untyped = '' } = props;
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
      <AnswerView asked={asked} bind={bind} room={room} untyped={untyped} />
    </Box>
  );
}

interface AnswerViewProps {
  readonly asked: Asked;
  readonly bind: (text: string) => string;
  readonly room: PromptRoom;
  readonly untyped: string;
}

function AnswerView({ asked, bind, room, untyped }: AnswerViewProps) {
  switch (asked.kind) {
    case 'measure':
      return <ReadingView asked={asked} room={room} untyped={untyped} />;
    case 'choice': {
      const words = asked.choices.map((choice) => bind(choice.words));
      return <ChoiceView words={words} marked={asked.marked} room={room} />;
    }
    case 'act':
      return <Words bold>{asked.words}</Words>;
  }
}

interface ChoiceViewProps {
  readonly words: readonly string[];
  readonly marked: number;
  readonly room: PromptRoom;
}

/** A short numbered list; longer than the room it scrolls. */
function ChoiceView(props: ChoiceViewProps) {
  const { words, marked, room } = props;
  const { columns } = useBody();
  const look = useLook();
  const rows = listRows(words, room);
  const lines = numbered(words);
  const isMarkedCut = isCut(lines[marked] ?? '', columns, look);
  const top = windowTop({ count: words.length, rows, top: 0, keep: marked });
  const full = fullRows(props, columns, look);
  return (
    <Box flexDirection="column" flexShrink={0}>
      <WindowList lines={lines} rows={rows} top={top} selected={marked} />
      {full > 0 ? (
        <Box height={full} flexDirection="column" overflowY="hidden" flexShrink={0}>
          <Words>{isMarkedCut ? (words[marked] ?? ' ') : ' '}</Words>
        </Box>
      ) : null}
    </Box>
  );
}

interface ReadingViewProps {
  readonly asked: MeasureAsked;
  readonly room: PromptRoom;
  readonly untyped: string;
}

/** The field with its judgement while typing, or the question what was meant. */
function ReadingView({ asked, room: of, untyped }: ReadingViewProps) {
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
          <ChoiceView
            words={choicesOf(prompt).map(({ words }) => words)}
            marked={prompt.chosen}
            room={of}
          />
        </>
      ) : (
        <RemarkView remark={remarkAt(remarkOf(prompt, context), untyped)} room={of} />
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

/** What is said of nothing typed, where nothing else is. */
function remarkAt(remark: Remark, untyped: string): Remark {
  return remark.words === '' && untyped !== '' ? { tone: 'quiet', words: untyped } : remark;
}

function RemarkView({ remark, room }: { remark: Remark; room: PromptRoom }) {
  const { columns } = useBody();
  const look = useLook();
  return (
    <Box height={remarkRows(remark, columns, look, room)} flexShrink={0} overflowY="hidden">
      <Words bold={remark.tone !== 'quiet'} colour={COLOURS[remark.tone]} hang={2}>
        {remarkText(remark)}
      </Words>
    </Box>
  );
}
