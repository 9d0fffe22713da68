/** Any test as a form: how the vehicle and the leads are arranged, the wiring with them, and the way on. */

import { Box } from 'ink';
import type { Circuit } from '../../circuit/circuit.ts';
import { thingWords } from '../../procedure/test-words.ts';
import { bodySize, Frame } from '../parts/frame.tsx';
import { bindingOf, type KeyBinding } from '../parts/key-hints.tsx';
import { Words } from '../parts/safe-words.tsx';
import { wrapWords } from '../parts/wrap-words.ts';
import { keyLabel } from '../term/key-decoder.ts';
import { useKeys } from '../term/use-keys.ts';
import { shownText, useLook } from '../term/use-look.ts';
import { useSize } from '../term/use-size.ts';
import {
  enterWords,
  LINE_NAMES,
  markedBy,
  TEST_LINES,
  type TestForm,
  type TestLine,
  testLineWords,
  turned,
} from './any-test-form-state.ts';
import { keysOfAction } from './session-keys.ts';

export interface AnyTestPageProps {
  readonly form: TestForm;
  readonly circuit: Circuit;
  readonly title: string;
  readonly aside: string;
  readonly sketch: readonly string[];
  /** What a drill's bench read last. */
  readonly found: string | null;
  readonly message: string | null;
  readonly terminalWords: (id: string) => string;
  /** A drill's bench saves captures; at a vehicle one is chosen when the test is made. */
  readonly canCapture: boolean;
  readonly onForm: (form: TestForm) => void;
  /** Enter on a line. */
  readonly onLine: (line: TestLine) => void;
  readonly onKey: (key: AnyTestKey) => void;
}

/** What a key of the page leads to. */
export type AnyTestKey = 'measure' | 'capture' | 'tests' | 'close';

type Binding = KeyBinding & { readonly key?: AnyTestKey };
const MEASURE: Binding = { keys: ['m'], show: 'm', help: 'do this test', key: 'measure' };
const CAPTURE: Binding = { keys: ['c'], show: 'c', help: 'capture', key: 'capture' };
const REST: readonly Binding[] = [
  { keys: ['t'], show: 't', help: 'the standard tests', key: 'tests' },
  { keys: [], show: 'arrows', help: 'arrange' },
  { keys: ['escape', ...keysOfAction('any-test')], show: 'Esc', help: 'close', key: 'close' },
];
const NAME_COLUMNS = 12;

/** The page. Letters are keys here, so nothing is typed. */
export function AnyTestPage(props: AnyTestPageProps) {
  const { form, circuit, onForm } = props;
  const look = useLook();
  const line = TEST_LINES[form.marked] ?? 'state';
  const keys = keysAt(form, line, props.canCapture);
  const body = bodySize(useSize(), keys);
  const below = [props.found, props.message].flatMap((text) =>
    text === null ? [] : wrapWords(shownText(text, look), body.columns),
  );
  const { first, rows, sketch } = layOut(props, body.rows - below.length);

  useKeys((event) => {
    const label = keyLabel(event);
    const marked = markedBy(form, label);
    if (marked !== form) return onForm(marked);
    const by = label === 'right' ? 1 : label === 'left' ? -1 : 0;
    if (by !== 0) return onForm(turned(form, line, by, circuit));
    if (label === 'return') return props.onLine(line);
    const key = bindingOf(event, keys)?.key;
    if (key) props.onKey(key);
  });

  return (
    <Frame title={props.title} aside={props.aside} keys={keys}>
      {TEST_LINES.slice(first, first + rows).map((one) => (
        <Words key={one} inverse={one === line} wrap="cut">
          {`${one === line ? '> ' : '  '}${LINE_NAMES[one].padEnd(NAME_COLUMNS)}${testLineWords(form, one, props.terminalWords, (name) => thingWords(name, circuit))}`}
        </Words>
      ))}
      <Drawn lines={sketch} />
      <Box flexGrow={1} />
      {below.length === 0 ? null : <Words bold>{below.join('\n')}</Words>}
    </Frame>
  );
}

function keysAt(form: TestForm, line: TestLine, canCapture: boolean): Binding[] {
  const enter = enterWords(form, line);
  return [
    MEASURE,
    ...(canCapture ? [CAPTURE] : []),
    ...REST,
    ...(enter === null ? [] : [{ keys: ['return'], show: 'Enter', help: enter }]),
  ];
}

/** The form around the marked line, and below it the drawing, whole or not at all: half of one misleads. */
function layOut({ form, sketch }: AnyTestPageProps, room: number) {
  const rows = Math.max(1, Math.min(TEST_LINES.length, room));
  const first = Math.min(Math.max(0, form.marked - rows + 1), TEST_LINES.length - rows);
  const fits = sketch.length > 0 && sketch.length < room - TEST_LINES.length;
  return { first, rows, sketch: fits ? ['', ...sketch] : [] };
}

function Drawn({ lines }: { lines: readonly string[] }) {
  return (
    <Box height={lines.length} flexDirection="column" flexShrink={0}>
      {lines.length === 0 ? null : (
        <Words wrap="cut">{lines.map((text) => text || ' ').join('\n')}</Words>
      )}
    </Box>
  );
}
