/** The bench drawn: the form, the wiring, the last reading. */
import { Box } from 'ink';
import type { Circuit } from '../../circuit/circuit.ts';
import {
  DIAGNOSIS_POINTS,
  EVIDENCE_POINTS,
  SAFETY_POINTS,
  TIME_POINTS,
} from '../../drill/score.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import type { Paragraph } from '../parts/text-block.ts';
import { wrapWords } from '../parts/wrap-words.ts';
import {
  enterWords,
  LINE_NAMES,
  TEST_LINES,
  type TestForm,
  type TestLine,
  testLineWords,
  turned,
} from '../screens/any-test-form-state.ts';
import { keyLine } from '../screens/over-words.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { shownText, useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';

export type BenchKey =
  | 'measure'
  | 'capture'
  | 'tests'
  | 'follow'
  | 'suspects'
  | 'readings'
  | 'diagnose'
  | 'help'
  | 'leave';

export interface BenchViewProps {
  readonly form: TestForm;
  readonly circuit: Circuit;
  readonly aside: string;
  readonly sketch: readonly string[];
  /** The last reading, and what a healthy circuit shows there. */
  readonly found: string | null;
  readonly good: string | null;
  readonly step: string | null;
  /** The procedure has come to its conclusion. */
  readonly isAtEnd: boolean;
  readonly message: string | null;
  /** Keys that would do nothing now; they are not offered. */
  readonly useless: readonly BenchKey[];
  readonly onForm: (form: TestForm) => void;
  readonly onOpen: (line: TestLine) => void;
  readonly onKey: (key: BenchKey) => void;
}

const KEYS: readonly (KeyBinding & { readonly key?: BenchKey; readonly words: string })[] = [
  {
    keys: ['m'],
    show: 'm',
    help: 'measure',
    key: 'measure',
    words: 'Reads with the bench as it is arranged. Each reading takes minutes of the drill.',
  },
  {
    keys: ['c'],
    show: 'c',
    help: 'capture',
    key: 'capture',
    words: 'The scope saves what it sees and measures it; for the same minutes.',
  },
  {
    keys: [],
    show: 'arrows',
    help: 'arrange',
    words:
      'Up and Down choose a line of the bench, Left and Right turn it, Enter opens its list where it has one. Arranging takes minutes only with the next reading.',
  },
  {
    keys: ['t'],
    show: 't',
    help: 'tests',
    key: 'tests',
    words: 'The usual tests of such a circuit; taking one arranges the bench.',
  },
  {
    keys: ['f'],
    show: 'f',
    help: 'procedure',
    key: 'follow',
    words: 'Does the next step of the procedure; at its end, shows what it concludes.',
  },
  {
    keys: ['s'],
    show: 's',
    help: 'suspects',
    key: 'suspects',
    words: 'What it could be, on the level that shows it.',
  },
  {
    keys: ['r'],
    show: 'r',
    help: 'readings',
    key: 'readings',
    words: 'What was measured so far.',
  },
  {
    keys: ['d'],
    show: 'd',
    help: 'diagnosis',
    key: 'diagnose',
    words: 'What puts it right. It is read out in full before it ends the drill.',
  },
  { keys: ['?', 'f1'], show: '?', help: 'keys', key: 'help', words: 'This page.' },
  {
    keys: ['escape'],
    show: 'Esc',
    help: 'leave',
    key: 'leave',
    words:
      'Leaves the drill. Everything is saved, and it goes on with: ohmward drill --resume FILE',
  },
];
/** Keys that open the page of keys, and close it. */
export const HELP_KEYS = ['?', 'f1'];

/** The keys of the bench, and what costs points. */
export function benchHelp(): Paragraph[] {
  return [
    ...KEYS.map(({ show, words }) => keyLine(show, words)),
    { text: '' },
    {
      text: `Points: ${DIAGNOSIS_POINTS} for the right repair, ${EVIDENCE_POINTS} for readings that prove it, ${TIME_POINTS} for few minutes, ${SAFETY_POINTS} for safety. A dangerous test is stopped by the bench and costs points for safety, and so does a test whose cautions were passed over.`,
    },
  ];
}

const NAME_COLUMNS = 12;

/** The view. Letters are keys, so nothing is typed here. */
export function BenchView(props: BenchViewProps) {
  const { form, circuit, onForm, onOpen, onKey } = props;
  const look = useLook();
  const line = TEST_LINES[form.marked] ?? 'state';
  const onEnter = enterWords(form, line);
  const keys = [
    ...KEYS.filter(({ key }) => key === undefined || !props.useless.includes(key)).map((one) =>
      one.key === 'follow' && props.isAtEnd ? { ...one, help: 'conclusion' } : one,
    ),
    ...(onEnter === null ? [] : [{ keys: ['return'], show: 'Enter', help: onEnter }]),
  ];
  const body = bodySize(useSize(), keys);
  // The reading is what all is done for: it is wrapped and never cut.
  const lines = (text: string | null) =>
    text === null ? [] : wrapWords(shownText(text, look), body.columns);
  const found = lines(props.found ?? 'Nothing measured yet.');
  const message = lines(props.message);
  const must = [
    ...found,
    ...lines(props.good === null ? null : `Good is: ${props.good}`),
    ...message,
  ];
  const step = must.length + TEST_LINES.length < body.rows ? lines(props.step) : [];
  const formRows = Math.max(1, Math.min(TEST_LINES.length, body.rows - must.length));
  const first = Math.min(Math.max(0, form.marked - formRows + 1), TEST_LINES.length - formRows);
  const room = body.rows - TEST_LINES.length - must.length - step.length;
  // Half a drawing misleads: it is there whole or not at all.
  const sketch = props.sketch.length <= room ? props.sketch : [];
  const below = [
    ...must.slice(0, must.length - message.length).map((text, place) => ({
      text,
      bold: place < found.length,
    })),
    ...step.map((text) => ({ text, bold: false })),
    ...message.map((text) => ({ text, bold: true })),
  ];

  useKeys((event) => {
    const label = keyLabel(event);
    const last = TEST_LINES.length - 1;
    if (label === 'up') return onForm({ ...form, marked: Math.max(0, form.marked - 1) });
    if (label === 'down') return onForm({ ...form, marked: Math.min(last, form.marked + 1) });
    if (label === 'left' || label === 'right')
      return onForm(turned(form, line, label === 'right' ? 1 : -1, circuit));
    if (label === 'return') return onOpen(line);
    const binding = bindingOf(event, keys);
    if (binding && 'key' in binding && binding.key) onKey(binding.key);
  });

  return (
    <Frame title="Drill" aside={props.aside} keys={keys}>
      {TEST_LINES.slice(first, first + formRows).map((one) => (
        <Words key={one} inverse={one === line} wrap="cut">
          {`${one === line ? '> ' : '  '}${LINE_NAMES[one].padEnd(NAME_COLUMNS)}${testLineWords(form, one)}`}
        </Words>
      ))}
      <Box height={sketch.length} flexDirection="column" flexShrink={0}>
        {sketch.map((text, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of a drawing have no other name
          <Words key={place} wrap="cut">
            {text || ' '}
          </Words>
        ))}
      </Box>
      <Box flexGrow={1} />
      {below.map(({ text, bold }, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines of a text have no other name
        <Words key={place} bold={bold} wrap="cut">
          {text}
        </Words>
      ))}
    </Frame>
  );
}
