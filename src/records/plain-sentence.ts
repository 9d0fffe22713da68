/** What one reading says, in a sentence for the owner of the vehicle: of what was read, and of nothing else. */
import { LOOK_WORDS } from '../circuit/look-words.ts';
import { isMeterUnit, METER_UNITS } from '../circuit/meter-units.ts';
import type { Look } from '../circuit/test.ts';
import { formatQuantity } from '../quantity/format-quantity.ts';
import type { RecordLine, RecordTest } from './record-form.ts';
import { HARNESS_MOVED } from './record-lines.ts';

/** Where a value was watched while a hand moved the wires: no test by itself says what is right. */
const MOVED = 'This is what showed while the harness and its connectors were wiggled.';

/** Where a part was warmed, or whatever else brings on a fault that comes and goes. */
const PROVOKED = 'This is what showed while we tried to bring the fault on.';

/** Behind what was seen, where a capture gave a position. */
const DEGREES = /, \d+\.\d degrees (?:late|early)$/;

/** A sentence; empty where nothing is expected there, nothing was said and nothing moved. */
export function plainSentence(line: RecordLine | RecordTest): string {
  const { verdict, reading, found } = line;
  const said = 'outcome' in line ? line.outcome : '';
  if (verdict === null && said !== '' && said !== found) return asSentence(said);
  if (verdict === null) return wasMoved(line) ? MOVED : line.family === 'actuation' ? PROVOKED : '';
  if (verdict === 'borderline') return 'Too close to the limit to tell.';
  if (verdict === 'impossible') return 'No fault of this circuit explains this value.';
  if (verdict === 'as expected' || verdict === 'not as expected') {
    const seen = SEEN.get(found.replace(DEGREES, '')) ?? '';
    return `${seen} That is ${verdict === 'as expected' ? '' : 'not '}as it should be.`.trim();
  }
  // Where the range is wide, a fault can read inside it too.
  if (verdict === 'good')
    return `The ${wordFor(reading?.unit)} is in the range that it should be in.`;
  if (
    reading?.overLimit &&
    isMeterUnit(reading.unit) &&
    METER_UNITS[reading.unit].overLimitMeansOpen
  )
    return 'No current gets through.';
  const more = verdict === 'low' ? 'Less' : 'More';
  return `${more} ${wordFor(reading?.unit)} than there should be.`;
}

/** By how much the meter may be off: `meter: ± 0.03 V`; empty where that is not known. */
export function mayBeOffWords({ reading }: Pick<RecordLine, 'reading'>): string {
  const off = reading?.mayBeOff;
  if (!reading || off === undefined) return '';
  return `meter: ± ${formatQuantity({ value: off, unit: reading.unit }, { digits: 2 })}`;
}

/** A step that moves the harness, or a test by hand that did. */
function wasMoved({ family, setup }: Pick<RecordLine, 'family' | 'setup'>): boolean {
  return family === 'wiggle' || setup.endsWith(HARNESS_MOVED);
}

function wordFor(unit: string | undefined): string {
  return unit !== undefined && isMeterUnit(unit) ? METER_UNITS[unit].quantity : 'value';
}

function asSentence(words: string): string {
  if (words === '') return '';
  const first = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.!?]$/.test(first) ? first : `${first}.`;
}

const SENTENCES: Readonly<Record<Look, string>> = {
  lit: 'Current comes through.',
  dim: 'Some current comes through, but not enough.',
  dark: 'No current comes through.',
  full: 'The signal is full and even.',
  weak: 'The signal is there, but too small.',
  uneven: 'The signal has gaps or jumps.',
  'flat-high': 'There is no signal.',
  'flat-middle': 'There is no signal.',
  'flat-low': 'There is no signal.',
  follows: 'The control module sees the signal.',
  still: 'The control module sees no signal.',
  'in-step': 'The signal is in the right position.',
  shifted: 'The signal is in the wrong position.',
  'no-signal': 'There is no signal.',
  sound: 'Nothing wrong was seen or felt.',
  faulty: 'Something wrong was seen or felt.',
};
const SEEN: ReadonlyMap<string, string> = new Map(
  (Object.keys(SENTENCES) as Look[]).map((look) => [LOOK_WORDS[look], SENTENCES[look]]),
);
