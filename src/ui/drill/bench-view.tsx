/** The bench drawn: the form, the wiring, the last reading. */
import { Box } from 'ink';
import type { Circuit } from '../../circuit/circuit.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { useSize } from '../term/use-size.ts';
import {
  BENCH_LINES,
  type BenchForm,
  type BenchLine,
  benchLineWords,
  LINE_NAMES,
  turned,
} from './bench-form-state.ts';

export type BenchKey =
  | 'measure'
  | 'capture'
  | 'tests'
  | 'follow'
  | 'suspects'
  | 'readings'
  | 'diagnose'
  | 'leave';

export interface BenchViewProps {
  readonly form: BenchForm;
  readonly circuit: Circuit;
  readonly aside: string;
  readonly sketch: readonly string[];
  /** The last reading, and what a healthy circuit shows there. */
  readonly found: string | null;
  readonly good: string | null;
  readonly step: string | null;
  readonly message: string | null;
  readonly onForm: (form: BenchForm) => void;
  readonly onOpen: (line: BenchLine) => void;
  readonly onKey: (key: BenchKey) => void;
}

const KEYS: readonly (KeyBinding & { readonly key?: BenchKey })[] = [
  { keys: ['m'], show: 'm', help: 'measure', key: 'measure' },
  { keys: ['c'], show: 'c', help: 'capture', key: 'capture' },
  { keys: [], show: 'arrows', help: 'arrange' },
  { keys: ['return'], show: 'Enter', help: 'list' },
  { keys: ['t'], show: 't', help: 'tests', key: 'tests' },
  { keys: ['f'], show: 'f', help: 'procedure', key: 'follow' },
  { keys: ['s'], show: 's', help: 'suspects', key: 'suspects' },
  { keys: ['r'], show: 'r', help: 'readings', key: 'readings' },
  { keys: ['d'], show: 'd', help: 'diagnosis', key: 'diagnose' },
  { keys: ['escape'], show: 'Esc', help: 'leave', key: 'leave' },
];
const NAME_COLUMNS = 12;
/** What the bench has to say when it stops a test. */
const MESSAGE_ROWS = 5;

/** The view. Letters are keys, so nothing is typed here. */
export function BenchView(props: BenchViewProps) {
  const { form, circuit, onForm, onOpen, onKey } = props;
  const body = bodySize(useSize(), KEYS);
  const line = BENCH_LINES[form.marked] ?? 'state';
  const reading = [
    ...(props.found === null ? ['Nothing measured yet.'] : [props.found]),
    ...(props.good === null ? [] : [`Good is: ${props.good}`]),
    ...(props.step === null ? [] : [props.step]),
  ];
  const messageRows = props.message === null ? 0 : MESSAGE_ROWS;
  const room = body.rows - BENCH_LINES.length - reading.length - messageRows;
  // Half a drawing misleads: it is there whole or not at all.
  const sketch = props.sketch.length <= room ? props.sketch : [];

  useKeys((event) => {
    const label = keyLabel(event);
    const last = BENCH_LINES.length - 1;
    if (label === 'up') return onForm({ ...form, marked: Math.max(0, form.marked - 1) });
    if (label === 'down') return onForm({ ...form, marked: Math.min(last, form.marked + 1) });
    if (label === 'left' || label === 'right')
      return onForm(turned(form, line, label === 'right' ? 1 : -1, circuit));
    if (label === 'return') return onOpen(line);
    const key = bindingOf(event, KEYS)?.key;
    if (key) onKey(key);
  });

  return (
    <Frame title="Drill" aside={props.aside} keys={KEYS}>
      {BENCH_LINES.map((one, place) => (
        <Words key={one} inverse={place === form.marked} wrap="cut">
          {`${place === form.marked ? '> ' : '  '}${LINE_NAMES[one].padEnd(NAME_COLUMNS)}${benchLineWords(form, one)}`}
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
      {reading.map((text, place) => (
        <Words key={text} bold={place === 0} wrap="cut">
          {text}
        </Words>
      ))}
      {props.message === null ? null : (
        <Box height={MESSAGE_ROWS} flexDirection="column" overflow="hidden" flexShrink={0}>
          <Words bold>{props.message}</Words>
        </Box>
      )}
    </Frame>
  );
}
