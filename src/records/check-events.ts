/**
 * Whether what stands in a session file has the shape of our events. A file may come from anywhere; only after this
 * are its events replayed. Of the circuit only what a report reads is looked at: no solver runs on a stored one.
 */
import { VEHICLE_STATES } from '../circuit/test.ts';
import type { StoredEvent } from '../log/event-line.ts';
import { CAPTURE_LEVELS, MEASURE_UNITS } from '../procedure/procedure.ts';
import { REPAIR_VERDICTS, type SessionEvent } from '../session/events.ts';
import { ENVELOPE_POINTS_MAX } from '../waveform/envelope.ts';
import { SIGNAL_KINDS } from '../waveform/measure-channel.ts';

/** What is wrong with one event: its number, and words without a full stop. */
export interface EventFlaw {
  readonly seq: number;
  readonly words: string;
}

/** Events up to the first that does not fit, and what is wrong with that one. */
export function checkEvents(stored: readonly StoredEvent[]): {
  readonly events: readonly SessionEvent[];
  readonly flaw: EventFlaw | null;
} {
  const events: SessionEvent[] = [];
  for (const event of stored) {
    const words = flawOf(event, events.length === 0);
    if (words !== null) return { events, flaw: { seq: event.seq, words } };
    const { seq: _seq, prev: _prev, ...own } = event;
    events.push(own as unknown as SessionEvent);
  }
  return { events, flaw: null };
}

function flawOf(event: StoredEvent, first: boolean): string | null {
  const shape = Object.hasOwn(SHAPES, event.type) ? SHAPES[event.type] : undefined;
  if (!shape) return `is of the unknown type "${event.type}"`;
  if ((event.type === 'session-opened') !== first)
    return first ? 'does not open the session' : 'opens the session a second time';
  const where = shape(event, '');
  return where === null ? null : `has no proper "${where || event.type}"`;
}

/** The place of the first value that does not fit, or null. */
type Shape = (value: unknown, at: string) => string | null;

const text: Shape = (value, at) => (typeof value === 'string' ? null : at);
const number: Shape = (value, at) =>
  typeof value === 'number' && Number.isFinite(value) ? null : at;
const flag: Shape = (value, at) => (typeof value === 'boolean' ? null : at);
const no: Shape = (value, at) => (value === false ? null : at);
const anything: Shape = () => null;
const orNull =
  (shape: Shape): Shape =>
  (value, at) =>
    value === null ? null : shape(value, at);
const optional =
  (shape: Shape): Shape =>
  (value, at) =>
    value === undefined ? null : shape(value, at);
const word =
  (...words: readonly string[]): Shape =>
  (value, at) =>
    words.includes(value as string) ? null : at;
const list =
  (shape: Shape): Shape =>
  (value, at) => {
    if (!Array.isArray(value)) return at;
    for (const [i, item] of value.entries()) {
      const where = shape(item, `${at}[${i}]`);
      if (where !== null) return where;
    }
    return null;
  };
const map =
  (shape: Shape): Shape =>
  (value, at) => {
    if (!isObject(value)) return at;
    for (const [key, item] of Object.entries(value)) {
      const where = shape(item, `${at}.${key}`);
      if (where !== null) return where;
    }
    return null;
  };
const object =
  (keys: Readonly<Record<string, Shape>>): Shape =>
  (value, at) => {
    if (!isObject(value)) return at;
    for (const [key, shape] of Object.entries(keys)) {
      const where = shape(value[key], at === '' ? key : `${at}.${key}`);
      if (where !== null) return where;
    }
    return null;
  };
/** One of several objects told apart by a key. */
const choice =
  (key: string, shapes: Readonly<Record<string, Shape>>): Shape =>
  (value, at) => {
    if (!isObject(value)) return at;
    const tag = value[key];
    const shape = typeof tag === 'string' && Object.hasOwn(shapes, tag) ? shapes[tag] : undefined;
    return shape ? shape(value, at) : `${at}.${key}`;
  };

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

const texts = list(text);
const twoLeads = object({ plus: text, minus: text });
const PROBE = choice('kind', {
  volts: twoLeads,
  ohms: twoLeads,
  light: twoLeads,
  lamp: twoLeads,
  pattern: twoLeads,
  timing: twoLeads,
  counts: object({ input: text }),
  inspect: object({ of: text }),
});
const SETUP = object({
  state: word(...VEHICLE_STATES),
  unplugged: texts,
  bridges: list(
    object({
      from: text,
      to: text,
      through: (value, at) =>
        text(value, at) === null ? null : object({ ohms: number })(value, at),
    }),
  ),
  sensor: word('fitted', 'spare'),
  target: word('still', 'moving'),
});
const OUTCOME = { name: text, words: text, go: text };
const TASK = {
  id: text,
  title: text,
  family: text,
  setup: SETUP,
  say: text,
  why: text,
  minutes: number,
  cautions: list(object({ id: text, word: text, say: text })),
  cannot: orNull(text),
};
const STEP = choice('kind', {
  measure: object({
    ...TASK,
    probe: orNull(PROBE),
    unit: word(...MEASURE_UNITS),
    level: optional(word(...CAPTURE_LEVELS)),
    expected: orNull(
      object({ low: orNull(number), high: orNull(number), from: word('circuit', 'author') }),
    ),
    outcomes: list(object({ ...OUTCOME, from: orNull(number), to: orNull(number) })),
  }),
  look: object({
    ...TASK,
    probe: PROBE,
    expected: texts,
    outcomes: list(object({ ...OUTCOME, looks: texts })),
  }),
  ask: object({ ...TASK, outcomes: list(object(OUTCOME)) }),
  act: object({ ...TASK, go: text }),
  conclude: object({
    id: text,
    title: text,
    faults: texts,
    say: text,
    repair: text,
    customer: text,
    cleared: optional(text),
    retest: texts,
  }),
});
const METER_FUNCTION = object({
  ranges: list(number),
  counts: number,
  ofReading: number,
  digits: number,
});
const METER = object({
  name: text,
  inputOhms: number,
  volts: METER_FUNCTION,
  ohms: METER_FUNCTION,
});
const JOB = object({
  name: text,
  complaint: text,
  codes: texts,
  vehicle: object({ words: text, vin: text, plate: text, odometer: text, drive: text }),
  order: text,
  customer: text,
  earlierRepairs: list(object({ words: text, part: orNull(text) })),
  terminals: map(object({ pin: text, colour: text })),
  notes: text,
});
const ANSWER = { step: text, go: text };
/** Points of a picture beyond these are no picture of ours. */
const points: Shape = (value, at) =>
  Array.isArray(value) && value.length > ENVELOPE_POINTS_MAX ? at : list(number)(value, at);
const CHANNEL_UNIT = word('V', 'A', '1');
const CAPTURE = object({
  name: text,
  sha256: (value, at) => (typeof value === 'string' && /^[0-9a-f]{64}$/.test(value) ? null : at),
  from: word('file', 'bench'),
  channel: optional(number),
  measures: object({
    kind: word(...SIGNAL_KINDS),
    unit: CHANNEL_UNIT,
    samples: number,
    seconds: number,
    low: number,
    high: number,
    mean: optional(number),
    ac: optional(number),
    hertz: orNull(number),
    duty: orNull(number),
    rpm: orNull(number),
  }),
  words: texts,
  pairs: optional(texts),
  channels: list(object({ name: text, unit: CHANNEL_UNIT, from: number, seconds: number, points })),
});
const JUDGEMENT = object({
  verdict: word('good', 'low', 'high', 'borderline', 'impossible'),
  chance: number,
  words: text,
});

const SHAPES: Readonly<Record<string, Shape>> = {
  'session-opened': object({
    format: (value, at) => (value === 1 ? null : at),
    program: text,
    id: text,
    from: optional(text),
    person: text,
    shop: text,
    instruments: texts,
    meter: METER,
    job: JOB,
    procedure: object({
      name: text,
      title: text,
      about: text,
      circuit: orNull(text),
      codes: texts,
      start: text,
      steps: map(STEP),
    }),
    circuit: orNull(
      object({
        title: text,
        parts: list(object({ name: text, words: text })),
        connectors: list(object({ part: text, words: text })),
        terminals: list(object({ id: text, words: text })),
        faults: list(object({ id: text, words: text })),
      }),
    ),
    vehicle: choice('kind', {
      real: anything,
      bench: object({ fault: text, seed: number }),
      drill: object({ commitment: text }),
    }),
  }),
  'caution-acknowledged': object({
    step: text,
    state: text,
    cautions: list(object({ id: text, word: text, text })),
  }),
  'reading-recorded': object({
    ...ANSWER,
    typed: text,
    value: orNull(number),
    unit: word(...MEASURE_UNITS),
    instrument: text,
    judgement: orNull(JUDGEMENT),
    outcome: text,
    capture: optional(CAPTURE),
  }),
  'look-recorded': object({
    ...ANSWER,
    look: orNull(text),
    outcome: text,
    capture: optional(CAPTURE),
  }),
  'step-done': object(ANSWER),
  'step-impossible': object({ ...ANSWER, reason: text }),
  'step-reopened': object({ step: text, answer: number }),
  'extra-reading': object({
    test: object({ setup: SETUP, probe: PROBE }),
    words: text,
    typed: text,
    shown: choice('kind', {
      number: object({ value: orNull(number), unit: word('V', 'ohm') }),
      look: object({ look: text }),
    }),
    expected: optional(
      choice('kind', {
        number: object({ low: orNull(number), high: orNull(number) }),
        look: object({ looks: texts }),
      }),
    ),
    judgement: optional(JUDGEMENT),
    capture: optional(CAPTURE),
  }),
  'note-added': object({ step: text, text }),
  'instruments-changed': object({ instruments: texts, meter: METER }),
  'session-paused': anything,
  'session-resumed': object({ program: text }),
  concluded: object({
    conclusion: orNull(text),
    title: text,
    faults: texts,
    repair: text,
    evidence: list(
      object({ test: text, where: text, found: text, pointsTo: text, counted: optional(no) }),
    ),
    ruledOut: list(object({ words: text, by: text })),
    proven: orNull(flag),
  }),
  'retest-recorded': object({
    step: text,
    typed: text,
    value: orNull(number),
    look: orNull(text),
    outcome: text,
    passed: flag,
    capture: optional(CAPTURE),
  }),
  'retest-impossible': object({ step: text, reason: text }),
  'session-closed': object({
    verdict: word(...REPAIR_VERDICTS),
    words: text,
  }),
  recovered: anything,
  'segment-continued': anything,
};
